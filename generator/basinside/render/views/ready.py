"""What is laid out before a procedure begins: things, chemicals, and what is worn."""

from __future__ import annotations

from basinside.model.derived import WholeProcedure
from basinside.render.view_types import NoteView, Prose, plain
from basinside.render.views.chemicals import chemical_span
from basinside.render.views.spot import Spot, ended
from basinside.render.wording import _, listed, n_, sentence


def ready_note(spot: Spot, whole: WholeProcedure) -> NoteView | None:
    """Return all that a procedure needs, with what is to be known about each; None for nothing."""
    equipment = spot.desk.content.equipment
    names: dict[str, None] = {}
    for placed in whole.steps:
        step = placed.step
        names.update(dict.fromkeys(each for each in (step.in_, *step.with_, *step.needs) if each))
    things = [equipment[name] for name in names if name in equipment]
    lines: list[Prose] = [
        (*plain(ended(sentence(each.name))), *plain(" "), *spot.prose(each.note))
        if each.note
        else plain(ended(sentence(each.name)))
        for each in things
    ]
    lines += [(chemical_span(spot, each), *plain(".")) for each in _chemicals(whole)]
    worn = dict.fromkeys(each for placed in whole.steps for each in placed.wear)
    count = len(lines)
    if worn:
        lines.append(plain(_("To wear: {what}.").format(what=listed(tuple(worn)))))
    if not lines:
        return None
    return NoteView(
        summary=n_(
            "Have one thing ready before you begin",
            "Have {n} things ready before you begin",
            count,
        )
        if count
        else _("What you wear"),
        lines=tuple(lines),
    )


def _chemicals(whole: WholeProcedure) -> tuple[str, ...]:
    """Return the chemicals of the steps, and the lubricant of each part that gets some."""
    names: dict[str, None] = {}
    for placed in whole.steps:
        if placed.step.agent:
            names[placed.step.agent] = None
        if placed.step.action == "lubricate":
            names.update(
                dict.fromkeys(part.lubricate.with_ for part in whole.parts if part.lubricate)
            )
    return tuple(names)
