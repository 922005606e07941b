"""What an observer looks for: every safety step, then the lines that only an author can add."""

from __future__ import annotations

from basinside.derive.meanings import line_digest, settled_text, step_digest, step_meaning
from basinside.model.content import Content
from basinside.model.derived import Checklist, ChecklistLine, WholeProcedure


def checklist_for(content: Content, whole: WholeProcedure) -> Checklist:
    """Return the checklist of a procedure."""
    name = whole.procedure.procedure
    lines = [
        ChecklistLine(line=placed.step.step, text=placed.step.do, placed=placed)
        for placed in whole.steps
        if placed.step.safety
    ]
    written = content.observations.get(name)
    for line in written.lines if written else ():
        lines.append(ChecklistLine(line=line.line, text=line.see, placed=None))
    return Checklist(
        procedure=name,
        lines=tuple(lines),
        cues=written.cues if written else (),
        who_may_observe=(written.who_may_observe or "") if written else "",
    )


def line_digests(content: Content, whole: WholeProcedure) -> dict[str, str]:
    """Return, for each line, the digest that binds a verdict to what the line means.

    A safety step has its step meaning, another line its id and text.
    """
    return {
        line.line: step_digest(step_meaning(content, whole, line.placed))
        if line.placed
        else line_digest(line.line, settled_text(line.text, content.figures))
        for line in checklist_for(content, whole).lines
    }
