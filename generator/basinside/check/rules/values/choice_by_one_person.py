"""The rule choice-by-one-person."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.taken_over import taken_over
from basinside.model.content import Content
from basinside.model.entry import Decided
from basinside.problem import Level, Place


@rule(level=Level.STOP)
def check_choice_by_one_person(checked: Checked) -> Iterator[Finding]:
    """What is decided by name is decided by two different people.

    Why: who chooses alone has nobody to object, and is the only one who knows why. It holds for a
    choice between sources, for a level that differs from a part's contact, and for what is done
    in an emergency.
    Bad: `by: infection-prevention lead` without `second`, or the same role twice.
    Good: `by: infection-prevention lead` and `second: midwife in charge`
    Source: common practice.
    """
    for what, decided, owner in _decided(checked.content):
        second = (decided.second or "").strip()
        if not second:
            said = f"{what} was decided by {decided.by} alone"
            mend = "Let a second person decide it too, and write “second:”."
            yield Finding(decided.place, said, mend, (owner,))
        elif second.casefold() == decided.by.strip().casefold():
            yield Finding(
                decided.place.at("second"),
                f"{what} was decided by {decided.by}, named twice",
                "Let a second person decide it too, and write that one under “second:”.",
                (owner,),
            )


def _decided(content: Content) -> Iterator[tuple[str, Decided, Place]]:
    for name, choice in content.choices.items():
        yield f"the choice {name}", choice, choice.place
    for instrument in content.instruments.values():
        for part in instrument.parts:
            decided = part.level_decided
            if decided is not None and not taken_over(instrument, decided.place):
                what = f"the level of the {part.shown_name} of {instrument.instrument}"
                yield what, decided, part.place
    handbook = content.handbook
    for emergency in handbook.clinic.emergency if handbook else ():
        yield f"what to do when {emergency.when}", emergency, emergency.place
