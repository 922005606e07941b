"""The only list of people whose signatures count, signed by the handbook's root key."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, StringConstraints

from basinside.model.machine_file import Base64Url, DayText, DidKey, Name, Part, StaffCode
from basinside.model.proof import Proof

Coordinate = Annotated[Base64Url, StringConstraints(min_length=43, max_length=43)]


class Jwk(Part):
    """A P-256 public key as older browsers take it (RFC 7517, RFC 7518 section 6.2)."""

    kty: Literal["EC"] = "EC"
    crv: Literal["P-256"] = "P-256"
    x: Coordinate
    y: Coordinate


class PublicKey(Part):
    """One public key, written twice: as did:key and as a JWK."""

    did: DidKey
    jwk: Jwk


class Signer(PublicKey):
    """A key that signs, whose it is, and from when to when it counts.

    ``retired`` is the last day on which it signed: what it signed before stays good. ``lost`` is
    the day on which it got into other hands: nothing it signed can be relied on, until a register
    head shows what was there before.
    """

    staff_code: StaffCode
    role: Annotated[str, StringConstraints(min_length=1, max_length=80)]
    from_: DayText = Field(alias="from")
    retired: DayText | None = None
    lost: DayText | None = None
    demo: Literal[True] | None = None


class TrustList(Part):
    """``trust.json``. ``issued`` is the day of this signing, so that an old copy shows."""

    format: Literal["basinside/trust/1"] = "basinside/trust/1"
    handbook: Name
    issued: DayText
    root: PublicKey
    demo: Literal[True] | None = None
    signers: Annotated[tuple[Signer, ...], Field(max_length=2_000)] = ()
    proof: Proof | None = None
