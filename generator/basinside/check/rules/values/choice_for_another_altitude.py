"""The rule choice-for-another-altitude."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.figure import Choice
from basinside.model.prose import references
from basinside.problem import Level
from basinside.units import Kind


@rule(level=Level.STOP)
def check_choice_for_another_altitude(checked: Checked) -> Iterator[Finding]:
    """What is chosen up to an altitude is chosen by a clinic that lies lower than that.

    Why: water boils cooler the higher one is, and time without an extra minute is right up to an
    altitude only. A height in feet that was typed as metres, or the choice of another clinic,
    is seen by nobody at the pot.
    Asked of each choice that a step names in `choice`: an altitude that its reasons refer to is not
    below the clinic's.
    Bad: `altitude: 2350 m` and a choice because of `{{ boil.no-extra-below }}`, which is 1500 m.
    Good: the same with a value of 5500 m.
    Source: IARC, Reference manual for screening, 2005, appendix C (no extra time below an
    altitude).
    """
    handbook = checked.content.handbook
    if handbook is None or handbook.clinic.altitude.kind is not Kind.LENGTH:
        return
    altitude = handbook.clinic.altitude
    too_low = [
        (name, choice, figure)
        for name, choice in checked.content.choices.items()
        for figure in _heights(checked, choice)
        if checked.content.figures[figure].value < altitude
    ]
    used = _used(checked) if too_low else frozenset()
    for name, choice, figure in too_low:
        if name in used:
            up_to = checked.content.figures[figure]
            yield Finding(
                choice.place.at("because"),
                f"{name} is chosen for what lies below {amount(up_to.value)} ({figure};"
                f" {checked.cited(up_to.source)}); the clinic lies at {amount(altitude)}",
                "Choose again, or look at the unit.",
                (choice.place, up_to.place),
            )


def _used(checked: Checked) -> frozenset[str]:
    """Return the choices that steps name."""
    wholes = checked.derived.procedures.values()
    named = (placed.step.choice for whole in wholes for placed in whole.steps)
    return frozenset(each for each in named if each)


def _heights(checked: Checked, choice: Choice) -> list[str]:
    figures = checked.content.figures
    return [
        each.figure
        for each in references(choice.because)
        if each.figure in figures and figures[each.figure].value.kind is Kind.LENGTH
    ]
