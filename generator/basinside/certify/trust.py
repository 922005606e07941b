"""The trust list: who may sign, from when, who stopped, whose key was lost; signed by the root.

Nothing is taken off the list: a key that no longer counts stays with the day on which it stopped.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, cast

from cryptography.hazmat.primitives.asymmetric import ec

from basinside.certify.multikey import MultikeyError, both_forms, did_key, public_key
from basinside.certify.secure import secure, verify_signature_only
from basinside.model.finding import Finding, Verdict, fails, holds
from basinside.model.machine_file import MachineFileError
from basinside.model.trust_list import PublicKey, Signer, TrustList

TRUST_LIST_SIGNATURE: Final = "trust-list-signature"
"""The code of the finding that this file makes."""


class TrustError(ValueError):
    """A change that the trust list cannot take, in a plain sentence."""


def new_trust_list(
    *, handbook: str, root: ec.EllipticCurvePublicKey, issued: str, demo: bool = False
) -> TrustList:
    """Return an empty list under a root key, not yet signed."""
    return TrustList(
        handbook=handbook, issued=issued, root=both_forms(root), demo=True if demo else None
    )


def add_signer(
    trust: TrustList, did: str, *, staff_code: str, role: str, from_: str, demo: bool = False
) -> TrustList:
    """Return the list with one more key; whoever had a key in use must retire it first.

    Raises ``TrustError`` for a key that is listed, is the root key, or is no P-256 did:key, and
    for a staff code whose earlier key is still in use.
    """
    try:
        key = both_forms(public_key(did))
    except MultikeyError:
        raise TrustError("This is not the did:key of a P-256 key.") from None
    if did == trust.root.did:
        raise TrustError("The root key signs the trust list and nothing else.")
    if any(each.did == did for each in trust.signers):
        raise TrustError("This key is listed already.")
    if _in_use(trust, staff_code):
        raise TrustError(f"{staff_code} has a key in use; retire it or report it lost first.")
    entry: dict[str, object] = {
        "staff_code": staff_code,
        "role": role,
        **key.plain(),
        "from": from_,
    }
    if demo:
        entry["demo"] = True
    return _with_signers(trust, (*trust.signers, Signer.from_plain(entry)))


def retire(trust: TrustList, staff_code: str, *, on: str) -> TrustList:
    """Return the list with the person's key in use retired: what it signed until ``on`` stays good.

    Raises ``TrustError`` when the person has no key in use, or when ``on`` is before it began.
    """
    return _end(trust, staff_code, "retired", on)


def lose(trust: TrustList, staff_code: str, *, on: str) -> TrustList:
    """Return the list with the person's newest key marked as lost: nothing it signed counts.

    A retired key can be lost too. Raises ``TrustError`` when the person has no key to lose.
    """
    return _end(trust, staff_code, "lost", on)


def sign_trust_list(
    trust: TrustList, root: ec.EllipticCurvePrivateKey, *, issued: str
) -> TrustList:
    """Return the list signed by its root key on the day ``issued``.

    Raises ``TrustError`` when the key is not the list's root key.
    """
    if did_key(root.public_key()) != trust.root.did:
        raise TrustError("This key is not the root key of the list.")
    plain = {**trust.plain(), "issued": issued}
    return TrustList.from_plain(secure(plain, root, created=f"{issued}T00:00:00Z"))


def verify_trust_list(plain: object) -> tuple[TrustList | None, Finding]:
    """Return a trust list as read, and whether its own root key signed it as it stands."""
    try:
        trust = TrustList.from_plain(plain)
    except MachineFileError as error:
        return None, fails(TRUST_LIST_SIGNATURE, reason="not-a-trust-list", detail=error.lines[0])
    # What was signed is the file as it came, not as we would write it.
    found = verify_signature_only(cast("Mapping[str, object]", plain))
    if found.verdict is not Verdict.HOLDS:
        return trust, fails(TRUST_LIST_SIGNATURE, reason=found.data["reason"])
    if found.data["key"] != trust.root.did:
        return trust, fails(TRUST_LIST_SIGNATURE, reason="not-by-root")
    if not all(_forms_agree(each) for each in (trust.root, *trust.signers)):
        return trust, fails(TRUST_LIST_SIGNATURE, reason="key-forms-differ")
    names = [trust.root.did, *(each.did for each in trust.signers)]
    if len(set(names)) != len(names):
        return trust, fails(TRUST_LIST_SIGNATURE, reason="key-listed-twice")
    return trust, holds(TRUST_LIST_SIGNATURE, root=trust.root.did, issued=trust.issued)


def _forms_agree(key: PublicKey) -> bool:
    try:
        return both_forms(public_key(key.did)).jwk.plain() == key.jwk.plain()
    except MultikeyError:
        return False


def _in_use(trust: TrustList, staff_code: str) -> Signer | None:
    for each in trust.signers:
        if each.staff_code == staff_code and each.retired is None and each.lost is None:
            return each
    return None


def _end(trust: TrustList, staff_code: str, member: str, on: str) -> TrustList:
    ending = _in_use(trust, staff_code)
    if ending is None and member == "lost":
        kept = [
            each for each in trust.signers if each.staff_code == staff_code and each.lost is None
        ]
        ending = kept[-1] if kept else None
    if ending is None:
        raise TrustError(f"{staff_code} has no key in use on this list.")
    if on < ending.from_:
        raise TrustError(f"The key of {staff_code} counts from {ending.from_}, which is later.")
    ended = Signer.from_plain({**ending.plain(), member: on})
    return _with_signers(
        trust, tuple(ended if each.did == ending.did else each for each in trust.signers)
    )


def _with_signers(trust: TrustList, signers: tuple[Signer, ...]) -> TrustList:
    """The list with other signers, and without the proof that no longer fits."""
    plain = {key: value for key, value in trust.plain().items() if key != "proof"}
    return TrustList.from_plain({**plain, "signers": [each.plain() for each in signers]})
