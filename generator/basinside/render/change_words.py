"""Changes between two editions in plain words, and who has to refresh what."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

from basinside.model.derived import Change
from basinside.render.wording import _

MEMBERS = {
    "do": "what to do",
    "hold": "how long",
    "longest": "the longest wait",
    "wall": "the line on the wall chart",
    "soil_state": "state before the step",
    "parts_are": "parts together or apart",
    "instrument_lines": "the instrument's own lines",
    "in": "where",
    "with": "with what",
}


def change_sentence(change: Change) -> str:
    """Return one change as a line: ``boil.hold: 20 min -> 25 min``."""
    safety = _(" (safety step)") if change.safety else ""
    old, new = _differing(change.old, change.new)
    return _template(change).format(
        id=change.id,
        member=MEMBERS.get(change.member, change.member.replace("_", " ")),
        old=_shown(old),
        new=_shown(new),
        moved=", ".join(_moved(change)),
    ) + (safety if change.kind.startswith("step-") else "")


def _template(change: Change) -> str:
    return {
        "value-changed": _("{id}: {old} -> {new}"),
        "value-new": _("{id}: new value, {new}"),
        "value-gone": _("{id}: value gone, was {old}"),
        "procedure-new": _("{id}: new procedure"),
        "procedure-gone": _("{id}: procedure gone"),
        "step-changed": _("{id}: {member} changed: {old} -> {new}"),
        "step-reworded": _("{id}: only the wording changed: {old} -> {new}"),
        "step-new": _("{id}: new step"),
        "step-gone": _("{id}: step gone"),
        "steps-moved": _("{id}: steps moved: {moved}"),
        "choice-changed": _("{id}: another choice was made: {old} -> {new}"),
        "choice-new": _("{id}: new choice, {new}"),
        "choice-gone": _("{id}: choice gone, was {old}"),
    }[change.kind]


def _moved(change: Change) -> list[str]:
    """The steps that stand after another one than before, or in another stage."""
    if change.kind != "steps-moved":
        return []
    old, new = list(change.old or ()), list(change.new or ())
    if old == new:
        return [_("to another stage")]
    before = dict(zip(old, [None, *old], strict=False))
    after = dict(zip(new, [None, *new], strict=False))
    return [step for step in new if before.get(step) != after.get(step)]


def _differing(old: Any, new: Any) -> tuple[Any, Any]:
    """Of two mappings only the members that differ; anything else as it is."""
    if not isinstance(old, Mapping) or not isinstance(new, Mapping):
        return old, new
    names = [name for name in dict.fromkeys((*old, *new)) if old.get(name) != new.get(name)]
    return {name: old.get(name) for name in names}, {name: new.get(name) for name in names}


def _time(text: str) -> str:
    """Seconds as people read them: editions keep them in base units."""
    seconds = re.fullmatch(r"([0-9]{3,9}) s", text)
    if seconds is None or int(seconds[1]) % 60:
        return text
    return f"{int(seconds[1]) // 60} min"


def _shown(value: Any) -> str:
    if value is None:
        return _("nothing")
    if isinstance(value, bool):
        return _("yes") if value else _("no")
    if isinstance(value, str):
        return _time(value.replace("\N{NO-BREAK SPACE}", " "))
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {_shown(each)}" for key, each in value.items())
    if isinstance(value, list | tuple):
        return ", ".join(_shown(each) for each in value)
    return json.dumps(value)


def change_lines(
    old: str, new: str, changes: Sequence[Change], refresh: Mapping[str, Sequence[str]]
) -> list[str]:
    """Return a whole comparison, line by line.

    Args:
        old: what the older side is called.
        new: what the newer side is called.
        changes: what differs.
        refresh: for each scope, the steps that whoever is certified on it learns again.
    """
    lines = [_("From {old} to {new}:").format(old=old, new=new)]
    if not changes:
        return [*lines, _("  Nothing changed.")]
    lines += [f"  {change_sentence(each)}" for each in changes]
    if not refresh:
        return [*lines, _("Nobody has to refresh anything.")]
    lines.append(_("Who was certified before has to refresh:"))
    lines += [f"  {scope}: {', '.join(steps)}" for scope, steps in refresh.items()]
    return lines


def change_data(
    changes: Sequence[Change], refresh: Mapping[str, Sequence[str]]
) -> dict[str, object]:
    """Return a comparison for a tool."""
    return {
        "changes": [
            {
                "kind": each.kind,
                "id": each.id,
                "member": each.member,
                "old": each.old,
                "new": each.new,
                "safety": each.safety,
                "says": change_sentence(each),
            }
            for each in changes
        ],
        "refresh": {scope: list(steps) for scope, steps in refresh.items()},
    }
