"""Key files, and the trust list that says whose signatures count."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from cryptography.hazmat.primitives.asymmetric import ec

from basinside import files
from basinside.certify.keys import (
    KeyContentError,
    new_private_key,
    private_key,
    private_key_bytes,
)
from basinside.certify.multikey import did_key
from basinside.certify.trust import (
    TrustError,
    add_signer,
    lose,
    new_trust_list,
    retire,
    sign_trust_list,
    verify_trust_list,
)
from basinside.model.finding import Verdict
from basinside.model.key_file import KeyFile
from basinside.model.trust_list import TrustList
from basinside.pipeline.build import TRUST_FILE
from basinside.pipeline.forms import is_demonstration, sound_clinic
from basinside.pipeline.machine_files import as_part, read_object, read_part
from basinside.pipeline.refusal import RefusedError
from basinside.render.findings import finding_sentence
from basinside.seal.codes import CodeError, root_fingerprint
from basinside.seal.envelope import SealError
from basinside.seal.keys import KeyPurpose, open_key, seal_key

RandomBytes = Callable[[int], bytes]
PrivateKey = ec.EllipticCurvePrivateKey


@dataclass(frozen=True, slots=True, kw_only=True)
class Owner:
    """Whose key it is: a signer has a staff code and a role, the root key neither."""

    purpose: KeyPurpose
    staff_code: str | None = None
    role: str | None = None


def make_key(
    path: Path,
    owner: Owner,
    *,
    phrase: str,
    made: date,
    random_bytes: RandomBytes,
    clinic: Path | None = None,
    private: PrivateKey | None = None,
) -> KeyFile:
    """Make a key and write it sealed; an earlier file is never overwritten.

    Args:
        path: the file to write.
        owner: whose it is and what for.
        phrase: the key phrase, drawn, as typed.
        made: the day.
        random_bytes: where the envelope's salt and iv come from.
        clinic: the clinic's folder, when the key is for one; an invented clinic marks its keys.
        private: the key itself when it was made elsewhere; a fresh one by default.

    Raises:
        FolderError: when the file is there already or cannot be written.
        RefusedError: when the phrase or the staff code is none.
    """
    handbook, demo = None, False
    if clinic is not None:
        whole = sound_clinic(clinic)
        handbook = whole.content.handbook.handbook if whole.content.handbook else None
        demo = is_demonstration(whole)
    key = private or new_private_key()
    try:
        sealed = seal_key(
            private_key_bytes(key),
            purpose=owner.purpose,
            did=did_key(key.public_key()),
            made=made.isoformat(),
            phrase=phrase,
            random_bytes=random_bytes,
            handbook=handbook,
            demo=demo,
        )
    except CodeError as error:
        raise RefusedError(str(error)) from None
    named = {"staff_code": owner.staff_code, "role": owner.role}
    plain = {**sealed.plain(), **{key: value for key, value in named.items() if value}}
    key_file = as_part(plain, KeyFile, "The key file")
    files.write_new_file(path, key_file.text(), private=True)
    return key_file


def unlock(path: Path, phrase: str, purpose: KeyPurpose) -> tuple[KeyFile, PrivateKey]:
    """Return a key file and the key inside, in memory only.

    Raises:
        RefusedError: when the phrase does not open it, or another key is inside.
    """
    key_file = read_part(path, KeyFile)
    try:
        return key_file, private_key(open_key(key_file, phrase, purpose), key_file.did)
    except (CodeError, SealError, KeyContentError) as error:
        raise RefusedError(f"{path.name}: {error}") from None


def read_trust(root: Path) -> TrustList:
    """Return the clinic's trust list.

    Raises:
        RefusedError: when there is none, or it is not as its root key signed it.
    """
    path = root / TRUST_FILE
    if files.read_if_there(path) is None:
        raise RefusedError(f"{path}: there is no trust list yet; “basinside trust init” makes it.")
    trust, signed = verify_trust_list(read_object(path))
    if trust is None or signed.verdict is not Verdict.HOLDS:
        raise RefusedError(f"{path}: {finding_sentence(signed)}")
    return trust


def begin_trust(root: Path, root_key: Path, phrase: str, on: date) -> TrustList:
    """Write a first trust list with nobody on it, signed by the root key.

    Raises:
        FolderError: when there is one already.
        RefusedError: when the root key does not open.
    """
    clinic = sound_clinic(root)
    handbook = clinic.content.handbook
    key_file, private = unlock(root_key, phrase, "root-key")
    trust = new_trust_list(
        handbook=handbook.handbook if handbook else "",
        root=private.public_key(),
        issued=on.isoformat(),
        demo=key_file.demo is True or is_demonstration(clinic),
    )
    signed = sign_trust_list(trust, private, issued=on.isoformat())
    files.write_new_file(root / TRUST_FILE, signed.text())
    return signed


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSigner:
    """A key to be listed: its did:key, whose it is, and from when it counts."""

    did: str
    staff_code: str
    role: str
    from_: date
    demo: bool = False


def signer_of(path: Path, from_: date, role: str | None = None) -> NewSigner:
    """Return a key file as a signer to be listed; its phrase is not needed.

    Raises:
        RefusedError: when it is a root key, or says neither whose it is nor its role.
    """
    key_file = read_part(path, KeyFile)
    named = role or key_file.role
    if key_file.staff_code is None or named is None:
        raise RefusedError(
            f"{path.name}: the file does not say whose key it is and in which role; a root key"
            " is never listed, and --role names a role."
        )
    return NewSigner(
        did=key_file.did,
        staff_code=key_file.staff_code,
        role=named,
        from_=from_,
        demo=key_file.demo is True,
    )


def list_signer(root: Path, root_key: Path, phrase: str, signer: NewSigner, on: date) -> TrustList:
    """Put a signer on the trust list and sign it anew.

    Raises:
        RefusedError: when the list cannot take the key, or the root key does not open.
    """
    return _changed(
        root,
        root_key,
        phrase,
        on,
        lambda trust: add_signer(
            trust,
            signer.did,
            staff_code=signer.staff_code,
            role=signer.role,
            from_=signer.from_.isoformat(),
            demo=signer.demo,
        ),
    )


def end_signer(
    root: Path, root_key: Path, phrase: str, staff_code: str, *, lost: bool, on: date
) -> TrustList:
    """Mark a person's key as retired or as lost, and sign the list anew.

    Raises:
        RefusedError: when the person has no such key, or the root key does not open.
    """
    end = lose if lost else retire
    return _changed(
        root, root_key, phrase, on, lambda trust: end(trust, staff_code, on=on.isoformat())
    )


def fingerprint_of(trust: TrustList) -> str:
    """Return the six words of the root key."""
    return root_fingerprint(trust.root.did)


def _changed(
    root: Path,
    root_key: Path,
    phrase: str,
    on: date,
    change: Callable[[TrustList], TrustList],
) -> TrustList:
    trust = read_trust(root)
    _, private = unlock(root_key, phrase, "root-key")
    try:
        signed = sign_trust_list(change(trust), private, issued=on.isoformat())
    except TrustError as error:
        raise RefusedError(str(error)) from None
    files.write_file(root / TRUST_FILE, signed.text())
    return signed
