"""One thing that was found: what was asked, how it stands, and the particulars; no sentence."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType


class Verdict(StrEnum):
    """How a question stands: it holds, it fails, or it cannot be known from what is at hand.

    ``not judged`` is for lines of a policy that only a register could decide.
    """

    HOLDS = "holds"
    FAILS = "fails"
    UNKNOWN = "unknown"
    NOT_JUDGED = "not judged"


@dataclass(frozen=True, slots=True)
class Finding:
    """A question's code, its verdict, and plain data for the sentence that ``render`` makes."""

    code: str
    verdict: Verdict
    data: Mapping[str, str]


def holds(code: str, **data: str) -> Finding:
    """Return a finding that something holds."""
    return Finding(code, Verdict.HOLDS, MappingProxyType(data))


def fails(code: str, **data: str) -> Finding:
    """Return a finding that something fails; ``reason`` says why, in a word or two."""
    return Finding(code, Verdict.FAILS, MappingProxyType(data))


def unknown(code: str, **data: str) -> Finding:
    """Return a finding that something cannot be known here."""
    return Finding(code, Verdict.UNKNOWN, MappingProxyType(data))


def not_judged(code: str, **data: str) -> Finding:
    """Return a finding that is left open until there is a register."""
    return Finding(code, Verdict.NOT_JUDGED, MappingProxyType(data))
