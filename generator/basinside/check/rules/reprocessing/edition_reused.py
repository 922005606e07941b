"""The rule edition-reused."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import Change
from basinside.problem import Level
from basinside.quantity import NO_BREAK_SPACE

MOST_NAMED = 3


@rule(level=Level.STOP)
def check_edition_reused(checked: Checked) -> Iterator[Finding]:
    """Content that changes gets a new edition; a closed one stays as it was.

    Why: completion records and refresh lists name the edition. When its content changes under
    the same name, nobody can tell who learned what.
    Bad: `edition: 2026.2` after `basinside edition close`, and boil.hold is another value now.
    Good: `edition: 2026.3`.
    Source: common practice.
    """
    handbook = checked.content.handbook
    since = checked.derived.since.get(handbook.edition) if handbook else None
    if handbook is None or since is None or since.same:
        return
    distinct = list(dict.fromkeys(_named(change) for change in since.changes))
    more = len(distinct) - MOST_NAMED
    shown = [*distinct[:MOST_NAMED], *([f"{more} more"] if more > 0 else [])]
    yield Finding(
        handbook.place.at("edition"),
        f"{handbook.edition} was closed and its content has changed since:"
        f" {listed(shown) or 'the words of a value or a line'}",
        "Give the handbook a new edition.",
    )


def _named(change: Change) -> str:
    if change.kind == "value-changed":
        return f"{change.id} {change.old} -> {change.new}".replace(NO_BREAK_SPACE, " ")
    what = {"new": "is new", "gone": "is gone", "moved": "has other places for its steps"}
    return f"{change.id} {what.get(change.kind.rsplit('-', 1)[-1], 'changed')}"
