"""The rule choice-unmade."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import DISINFECTANTS
from basinside.check.rule import Finding, rule
from basinside.model.prose import references
from basinside.problem import Level


@rule(level=Level.STOP)
def check_choice_unmade(checked: Checked) -> Iterator[Finding]:
    """Where sources differ the clinic has chosen, says against what, and when it looks again.

    Why: two people who each follow a good book do two things, and neither is wrong. Three things
    show that sources differ: a value with an `other_view` is named in what a choice has chosen; a
    choice has something that was not chosen, and a day to look again; and a disinfectant before
    cleaning names the choice behind it, as it is off unless chosen and never counts as a level.
    Bad: `other_view: Other guidance asks for a bath five times as strong.`, and no choice; or
    `action: soak` with chlorine before the first `action: clean`, without `choice`.
    Good: a choice with `chosen: "{{ chlorine.hld-strength }} for {{ chlorine.hold }}"`.
    Source: IARC, Colposcopy and treatment of cervical intraepithelial neoplasia, 2003, chapter 14
    (soak in 0.5 %) against WHO and PAHO, 2016, from memory (no soak before cleaning).
    """
    content = checked.content
    chosen = {
        each.figure for choice in content.choices.values() for each in references(choice.chosen)
    }
    for name, figure in content.figures.items():
        if figure.other_view and name not in chosen:
            yield Finding(
                figure.place.at("other_view"),
                f"sources differ about {name}, and no choice says what is done here",
                f"Write a choice that refers to {name} in “chosen:”.",
                (figure.place,),
            )
    for name, choice in content.choices.items():
        if not choice.not_chosen:
            said = f"the choice {name} names nothing that was not chosen"
            yield Finding(choice.place, said, "Write the other view under “not_chosen:”.")
        if choice.look_again is None and choice.until is None:
            said = f"the choice {name} is for ever"
            yield Finding(choice.place, said, "Write the day to look at it again: “look_again:”.")
    yield from _before_cleaning(checked)


def _before_cleaning(checked: Checked) -> Iterator[Finding]:
    for each in checked.sound:
        for placed in each.whole.steps:
            step, agent = placed.step, placed.agent
            if placed.action == "clean":
                break
            if agent is None or agent.family not in DISINFECTANTS or step.choice:
                continue
            if placed.action in {"soak", "wet", "wipe", "hold", "expose"}:
                yield Finding(
                    step.place,
                    f"{each.name} has {agent.name} on soiled parts in {step.step}; sources differ"
                    " about that, and no choice stands behind it",
                    "Leave it out, or write “choice:” with the choice that was made.",
                    (each.whole.procedure.place,),
                )
