"""A private key in its envelope: the only form in which a key is ever stored."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import StringConstraints

from basinside.model.machine_file import DayText, DidKey, Part, StaffCode
from basinside.model.sealed import Envelope


class KeyFile(Part):
    """``*.key.json``: the public name of a key, whose it is, and the sealed private half.

    A root key has no staff code and no role. What counts is the key inside; ``did`` only says
    which one.
    """

    format: Literal["basinside/key/1"] = "basinside/key/1"
    did: DidKey
    staff_code: StaffCode | None = None
    role: Annotated[str, StringConstraints(min_length=1, max_length=80)] | None = None
    made: DayText
    demo: Literal[True] | None = None
    envelope: Envelope
    note: Annotated[str, StringConstraints(max_length=4_000)] | None = None
