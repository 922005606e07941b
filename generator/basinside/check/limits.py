"""Whether a value keeps to what somebody asks for, in words for a message."""

from __future__ import annotations

from basinside.check.saying import amount
from basinside.model.figure import SourceSays
from basinside.quantity import Quantity


def outside(value: Quantity, says: SourceSays) -> str:
    """Return what is asked for that the value does not keep, or nothing when it keeps it."""
    given = [says.at_least, says.at_most, says.exactly, says.between]
    if sum(each is not None for each in given) != 1:
        return "must say one of at_least, at_most, exactly or between"
    printed = says.between or tuple(each for each in given[:3] if isinstance(each, Quantity))
    if any(each.kind is not value.kind for each in printed):
        return f"says {amount(printed[0])}, which cannot be compared with it"
    if says.between is not None:
        low, high = says.between
        if low > high:
            return f"says between {amount(low)} and {amount(high)}, the smaller must come first"
        fits = low <= value <= high
        return "" if fits else f"says between {amount(low)} and {amount(high)}"
    (limit,) = printed
    if says.at_least is not None:
        return "" if value >= limit else f"asks for at least {amount(limit)}"
    if says.at_most is not None:
        return "" if value <= limit else f"allows at most {amount(limit)}"
    return "" if value == limit else f"says exactly {amount(limit)}"
