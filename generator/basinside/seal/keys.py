"""A private key in an envelope: sealed under a phrase, opened into memory and nowhere else."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from basinside.model.key_file import KeyFile
from basinside.model.sealed import EnvelopeHeader
from basinside.seal.codes import read_phrase
from basinside.seal.envelope import AlteredFileError, open_with_code, seal_with_code

KeyPurpose = Literal["supervisor-key", "root-key"]


def seal_key(
    pkcs8: bytes,
    *,
    purpose: KeyPurpose,
    did: str,
    made: str,
    phrase: str,
    random_bytes: Callable[[int], bytes],
    staff_code: str | None = None,
    handbook: str | None = None,
    demo: bool = False,
) -> KeyFile:
    """Return the key file of a private key.

    ``pkcs8`` is the unencrypted PKCS #8 DER of the key, ``did`` its public name, ``made`` a day,
    ``phrase`` as typed (``codes.new_phrase`` makes one). Raises ``CodeError`` for a phrase that
    is none of ours: phrases are drawn, never chosen.
    """
    mark: Literal[True] | None = True if demo else None
    header = EnvelopeHeader(
        format="basinside/key/1", purpose=purpose, handbook=handbook, demo=mark, iv="A" * 16
    )
    return KeyFile(
        did=did,
        staff_code=staff_code,
        made=made,
        demo=mark,
        envelope=seal_with_code(pkcs8, read_phrase(phrase), header, random_bytes),
    )


def open_key(key_file: KeyFile, phrase: str, purpose: KeyPurpose) -> bytes:
    """Return the PKCS #8 DER inside.

    Whether it is the key that ``did`` names is for ``certify.keys`` to say. Raises ``CodeError``
    when ``phrase`` is none, ``SealError`` when it does not open the file.
    """
    if key_file.demo != key_file.envelope.header.demo:
        raise AlteredFileError("The file and its envelope disagree whether this is a demo key.")
    return open_with_code(key_file.envelope, read_phrase(phrase), purpose)
