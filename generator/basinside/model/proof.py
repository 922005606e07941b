"""A proof of the cryptosuite ecdsa-jcs-2019, as it stands in a signed document."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, StringConstraints

from basinside.model.machine_file import Moment, Part


class Proof(Part):
    """W3C Verifiable Credential Data Integrity 1.0, section 2.1, for the one suite we sign with."""

    context: tuple[object, ...] | None = Field(default=None, alias="@context")
    type: Literal["DataIntegrityProof"]
    cryptosuite: Literal["ecdsa-jcs-2019"]
    created: Moment
    verification_method: Annotated[str, StringConstraints(max_length=300)] = Field(
        alias="verificationMethod"
    )
    proof_purpose: Literal["assertionMethod"] = Field(alias="proofPurpose")
    proof_value: Annotated[
        str, StringConstraints(pattern=r"^z[1-9A-HJ-NP-Za-km-z]+$", max_length=200)
    ] = Field(alias="proofValue")
