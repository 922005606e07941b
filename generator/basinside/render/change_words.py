"""Changes between two editions in plain words, and who has to refresh what."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any, Final

from basinside.model.derived import Change
from basinside.render.wording import _, later, listed

_SAID_BY_ITSELF = frozenset({"value", "basis", "source"})

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


_POOLS = {"practice": later("practice"), "assessment": later("assessment")}

HEADINGS: Final[tuple[tuple[str, tuple[str, ...]], ...]] = (
    (later("Values"), ("value-changed", "value-new", "value-gone", "basis-changed")),
    (later("Choices"), ("choice-changed", "choice-new", "choice-gone")),
    (later("Sources"), ("source-changed", "source-new", "source-gone")),
    (
        later("Steps that count as changed"),
        ("procedure-new", "procedure-gone", "step-changed", "step-new", "step-gone", "steps-moved"),
    ),
    (later("Steps that were only reworded, as two people say"), ("step-reworded",)),
    (later("Groups that are certified together"), ("scope-changed",)),
    (
        later("Questions"),
        (
            "item-key",
            "item-reworded",
            "item-rests-on",
            "item-values",
            "item-steps",
            "item-new",
            "item-gone",
        ),
    ),
    (
        later("Assessments"),
        ("assessment-changed", "assessment-items", "assessment-new", "assessment-gone"),
    ),
    (later("Paper to hang anew"), ("print-anew", "print-new", "print-gone")),
)
"""Headings and the kinds of change below each, in the order in which they are printed."""

_UNKNOWN = {
    "bases": later("what values rest on"),
    "sources": later("sources"),
    "assessments": later("assessments"),
    "questions": later("the words and keys of questions"),
    "prints": later("what hangs on the walls"),
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
        pool=_(_POOLS.get(change.member, change.member)),
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
        "basis-changed": _("{id}: rests on something else: {old} -> {new}"),
        "source-changed": _("{id}: {old} -> {new}"),
        "source-new": _("{id}: new source, {new}"),
        "source-gone": _("{id}: source gone, was {old}"),
        "scope-changed": _(
            "{id}: other procedures are certified together; joined: {new}; left: {old}"
        ),
        "item-new": _("{id} ({pool}): new question"),
        "item-gone": _("{id} ({pool}): question gone"),
        "item-key": _("{id} ({pool}): another answer is right now"),
        "item-reworded": _("{id} ({pool}): other words: {old} -> {new}"),
        "item-rests-on": _("{id} ({pool}): its key rests on something else now"),
        "item-values": _("{id} ({pool}): read it again, it names {new}"),
        "item-steps": _("{id} ({pool}): read it again, its key rests on {new}"),
        "assessment-changed": _("{id}: {member} changed: {old} -> {new}"),
        "assessment-new": _("{id}: new assessment"),
        "assessment-gone": _("{id}: assessment gone"),
        "assessment-items": _("{id}: seal new forms, questions of its topics changed: {new}"),
        "print-anew": _("{id}"),
        "print-new": _("{id} (hangs there for the first time)"),
        "print-gone": _("{id} (take it down)"),
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
        return ", ".join(
            _shown(each) if key in _SAID_BY_ITSELF else f"{key.replace('_', ' ')} {_shown(each)}"
            for key, each in value.items()
        )
    if isinstance(value, list | tuple):
        return ", ".join(_shown(each) for each in value) or _("nothing")
    return json.dumps(value)


def change_lines(
    old: str,
    new: str,
    changes: Sequence[Change],
    refresh: Mapping[str, Sequence[str]],
    *,
    unknown: Sequence[str] = (),
) -> list[str]:
    """Return a whole comparison, line by line.

    Args:
        old: what the older side is called.
        new: what the newer side is called.
        changes: what differs.
        refresh: for each scope, the steps that whoever is certified on it learns again.
        unknown: what a side does not keep, so that nothing is said of it.
    """
    lines = [_("From {old} to {new}:").format(old=old, new=new)]
    for heading, kinds in HEADINGS:
        below = [each for kind in kinds for each in changes if each.kind == kind]
        if below:
            said = _joined(below)
            lines.append(f"{_(heading)} ({len(said)})")
            lines += [f"  {each}" for each in said]
    if not changes:
        lines.append(_("  Nothing changed."))
    if unknown:
        named = listed([_(_UNKNOWN[each]) for each in unknown])
        lines.append(
            _("Not compared, as a closed edition does not keep it: {what}.").format(what=named)
        )
    if not changes:
        return lines
    if not refresh:
        return [*lines, _("Nobody has to refresh anything.")]
    lines.append(_("Who was certified before has to refresh:"))
    lines += [f"  {scope}: {', '.join(steps)}" for scope, steps in refresh.items()]
    return lines


def _joined(changes: Sequence[Change]) -> list[str]:
    """Return a line for each change; what is said of one question stands in one line."""
    lines: dict[str, str] = {}
    for each in changes:
        said = change_sentence(each)
        if not each.kind.startswith("item-"):
            lines[said] = said
        elif each.id in lines:
            lines[each.id] += "; " + said.partition(": ")[2].removeprefix(_("read it again, "))
        else:
            lines[each.id] = said
    return list(lines.values())


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
