"""The rule choice-expired."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.entry import Decided
from basinside.problem import Level


@rule(level=Level.WARN, dated=True)
def check_choice_expired(checked: Checked) -> Iterator[Finding]:
    """A decision by name is looked at again on the day it names.

    Why: who chose between sources chose for a while. The next look finds new guidance, another
    product, or that the choice did not work. The same holds for a level decided for one part, for
    a value accepted though the maker asks for more, and for what is done when no route is
    permitted.
    This is judged only when the day is given: `basinside check --today 2026-11-20`.
    Bad: `look_again: 2026-09-20` on a later day.
    Good: two people decided again and wrote `on:` and `look_again:` anew.
    Source: common practice.
    """
    today = checked.today
    if today is None:
        return
    for name, decided in _decisions(checked):
        for key in ("look_again", "until"):
            day = getattr(decided, key)
            if day is not None and day < today:
                yield Finding(
                    decided.place.at(key),
                    f"{name} was to be decided again by {day}",
                    "Decide again, then write the new days.",
                )


def _decisions(checked: Checked) -> Iterator[tuple[str, Decided]]:
    content = checked.content
    for name, choice in content.choices.items():
        yield f"the choice {name}", choice
    for instrument in content.instruments.values():
        for part in instrument.parts:
            if part.level_decided is not None:
                yield f"the level of the {part.shown_name}", part.level_decided
    for name, figure in content.figures.items():
        if figure.accepted is not None:
            yield f"what was accepted for {name}", figure.accepted
    for emergency in content.handbook.clinic.emergency if content.handbook else ():
        yield "what to do in an emergency", emergency
