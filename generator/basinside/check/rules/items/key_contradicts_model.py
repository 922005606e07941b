"""The rule key-contradicts-model."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.limits import outside
from basinside.check.number_bounds import number_bounds
from basinside.check.option_numbers import numbers_in
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.derived import Change, WholeProcedure
from basinside.model.item_kinds import pairs_that_matter
from basinside.model.quiz import Item, RestsOn
from basinside.problem import Level

_SECONDS = re.compile(r"([0-9]{2,7}) s")  # as digests write a time


@rule(level=Level.STOP)
def check_key_contradicts_model(checked: Checked) -> Iterator[Finding]:
    """What the key of an item rests on still holds.

    Why: when a time or a step changes, a key that was right becomes wrong, and nobody notices
    until a learner does. `rests_on` says what a person had in mind when the key was written:
    `values` as they were, `steps` as they stood in the edition `read_in`, and `orders` of steps.
    In an order each word is the id of a step or else an action, and the first of each counts.
    A number that follows a value (`right: {figure: ...}`) is compared with what is accepted
    around it, and entries that name their `step` with the order of these steps. A wrong option
    that is a number is compared with the right one, and a choice that an item is `about` with the
    edition `read_in`, which is one that there has been.
    When something changed a person reads the item again, mends it where needed, and then writes
    the new value or the new `read_in`.
    Bad: `values: {boil.hold: 20 min}` while boil.hold is 25 min.
    Good: the item was read again, and says `values: {boil.hold: 25 min}`.
    Source: common practice.
    """
    handbook = checked.content.handbook
    edition = handbook.edition if handbook else ""
    for read in checked.items:
        item, rest = read.item, read.rests_on
        if read.in_figures > 1 and read.kind == "choice" and len(read.right) == 1:
            yield from _right_by_now(read)
        if rest is not None:
            if rest.values:
                yield from _values(checked, item, rest)
            if checked.derived.since:
                yield from _steps(checked, item, rest)
                yield from _choices(checked, item, rest)
            if rest.orders:
                yield from _orders(checked, item, rest)
            if edition and rest.read_in != edition:
                yield from _read_too_late(item, rest, edition)
        if read.options_only:
            continue
        if item.number is not None:
            for said in number_bounds(checked, item.number):
                if said.of_value:
                    text = f"in {item.item} {said.text}"
                    yield Finding(said.place, text, said.hint, (item.place,))
        if item.entries:
            yield from _entries(checked, item)


def _values(checked: Checked, item: Item, rest: RestsOn) -> Iterator[Finding]:
    for name, was in rest.values.items():
        figure = checked.content.figures.get(name)
        if figure is None or figure.value == was:
            continue
        now = amount(figure.value)
        if figure.value.kind is not was.kind:
            said = f"rests on {name} of {amount(was)}, which cannot be compared with {now}"
        else:
            said = f"was written when {name} was {amount(was)}; it is {now}"
        told = figure.source_says is not None and outside(figure.value, figure.source_says)
        basis = checked.cited(figure.source) if figure.source else figure.basis
        yield Finding(
            rest.place.at("values", name),
            f"{item.item} {said} ({basis})",
            f"Mend {name} first: its source says something else."
            if told
            else f"Read the item again, then write “{name}: {now}” and the new read_in.",
            (item.place,),
        )


def _choices(checked: Checked, item: Item, rest: RestsOn) -> Iterator[Finding]:
    since = checked.derived.since.get(rest.read_in)
    if since is None:
        return
    changed = {each.id: each for each in since.changes if each.kind == "choice-changed"}
    for n, name in enumerate(item.about):
        if name in changed:
            yield Finding(
                item.place.at("about", n),
                f"{item.item} was read in {rest.read_in}, when {name} was"
                f" {_shown(changed[name].old)}; now it is {_shown(changed[name].new)}",
                "Read the item again, then write the new read_in.",
                (item.place,),
            )


def _read_too_late(item: Item, rest: RestsOn, edition: str) -> Iterator[Finding]:
    if _edition(rest.read_in) > _edition(edition):
        yield Finding(
            rest.place.at("read_in"),
            f"{item.item} was read in {rest.read_in}; the handbook's edition is {edition}",
            "Write the edition in which it was read.",
            (item.place,),
        )


def _edition(name: str) -> tuple[int, ...]:
    return tuple(int(each) for each in name.split("."))


def _right_by_now(read: ReadItem) -> Iterator[Finding]:
    """Yield wrong options whose number is the right one, said in another unit."""
    if not read.right[0].text[:1].isdigit():
        return
    right = numbers_in(read.right[0].text, None)
    for each in read.wrong if right else ():
        if numbers_in(each.text, None) == right and each.words != read.right[0].words:
            yield Finding(
                each.option.place,
                f"“{each.text}” is wrong in {read.name} and is the same as the right"
                f" “{read.right[0].text}”",
                "Read the item again, then mend one of them.",
                (read.item.place,),
            )


def _steps(checked: Checked, item: Item, rest: RestsOn) -> Iterator[Finding]:
    since = checked.derived.since.get(rest.read_in)
    if since is None:
        return
    for n, path in enumerate(rest.steps):
        changes = since.of_step(path)
        if changes:
            yield Finding(
                rest.place.at("steps", n),
                f"{item.item} was read in {rest.read_in}; since then {path} {_changed(changes)}",
                "Read the item again, then write the new read_in.",
                (item.place,),
            )


def _changed(changes: tuple[Change, ...]) -> str:
    if any(not change.member for change in changes):
        return "was written new"
    return "changed: " + "; ".join(
        said for change in changes for said in _differences(change.member, change.old, change.new)
    )


def _differences(member: str, old: Any, new: Any) -> Iterator[str]:
    if isinstance(old, Mapping) and isinstance(new, Mapping):
        for key in dict.fromkeys((*old, *new)):
            if old.get(key) != new.get(key):
                yield from _differences(f"{member} {key}", old.get(key), new.get(key))
    else:
        yield f"{member.replace('_', ' ')} was {_shown(old)} and is {_shown(new)}"


def _shown(value: Any) -> str:
    if value is None:
        return "not stated"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {_shown(each)}" for key, each in value.items())
    if isinstance(value, list | tuple):
        return ", ".join(_shown(each) for each in value)
    seconds = _SECONDS.fullmatch(str(value))
    if seconds and int(seconds[1]) % 60 == 0:
        return f"{int(seconds[1]) // 60} min"
    return f"“{value}”"


def _orders(checked: Checked, item: Item, rest: RestsOn) -> Iterator[Finding]:
    named = dict.fromkeys(each.partition("/")[0] for each in (*rest.steps, *item.about))
    names = [name for name in named if name in checked.derived.procedures]
    if not names and all(name in checked.content.instruments for name in named):
        yield Finding(
            rest.place.at("orders"),
            f"{item.item} rests on an order of steps and names no procedure to find them in",
            "Name its steps under “steps:” or “about:”.",
            (item.place,),
        )
    for n, order in enumerate(rest.orders):
        for name in names:
            said = _broken(checked.derived.procedures[name], order)
            if said:
                yield Finding(
                    rest.place.at("orders", n),
                    f"{item.item} rests on the order {', '.join(order)}; in {name} {said}",
                    "Read the item again, then write the order as it is.",
                    (item.place,),
                )


def _broken(whole: WholeProcedure, order: tuple[str, ...]) -> str:
    """Return what an order of words no longer finds in a procedure, or nothing."""
    found: list[tuple[int, str]] = []
    for word in order:
        steps = [placed.number for placed in whole.steps if placed.step.step == word]
        steps = steps or [placed.number for placed in whole.steps if placed.action == word]
        earlier = sum(word == other for _, other in found)
        if len(steps) <= earlier:
            return f"there is no step “{word}”" + (" any more" if not earlier else " so often")
        found.append((steps[earlier], word))
    for (one, first), (other, second) in pairwise(found):
        if other <= one:
            return f"“{second}” comes before “{first}”"
    return ""


def _entries(checked: Checked, item: Item) -> Iterator[Finding]:
    """Yield entries whose steps stand in another order in their procedure."""
    for pair in pairs_that_matter(item.entries, item.matters):
        first, then = item.entries[pair.first], item.entries[pair.then]
        one, other = _found(checked, first.step), _found(checked, then.step)
        if one is None or other is None or one[0] is not other[0] or one[1] < other[1]:
            continue
        yield Finding(
            then.place.at("step"),
            f"{item.item} puts “{first.entry}” before “{then.entry}”; in"
            f" {one[0].procedure.procedure} that is step {one[1]} and step {other[1]}",
            "Read the item again, then write the order as it is.",
            (item.place,),
        )


def _found(checked: Checked, path: str | None) -> tuple[WholeProcedure, int] | None:
    """Return the procedure and the number of a step."""
    name, _, step = (path or "").partition("/")
    whole = checked.derived.procedures.get(name)
    numbers = [each.number for each in whole.steps if each.step.step == step] if whole else []
    return (whole, numbers[0]) if whole and numbers else None
