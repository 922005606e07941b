"""Mistakes that a tired author makes, each one small change of one file."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from typing import Final, NamedTuple

import yaml

from basinside.quantity import parse_quantity
from basinside.units import Kind
from tests.mutations.cuts import (
    Span,
    entries_of,
    exchanged,
    instead,
    line_of_key,
    lines_of,
    root_of,
    steps_of,
    value_of,
    without,
    word_of,
)

FACTORS: Final = (Fraction(3, 4), Fraction(5, 4))
"""A value a quarter too small and a quarter too great."""
UNITS: Final[Mapping[str, str]] = {
    "s": "min",
    "min": "s",
    "h": "min",
    "days": "weeks",
    "day": "week",
    "weeks": "days",
    "months": "days",
    "mL": "L",
    "L": "mL",
    "m": "ft",
}
"""Units that are mistaken for one another; values in other units keep theirs."""
_AMOUNT = re.compile(r"(?P<number>[0-9]+(?:\.[0-9]+)?) (?P<unit>\S.*)\Z")


class Mutation(NamedTuple):
    """One mistake: of which kind and about what, in which file, and the file with it."""

    kind: str
    about: str
    file: str
    what: str
    text: str


Files = Mapping[str, str]


def dropped_steps(files: Files) -> Iterator[Mutation]:
    """Yield each procedure without one of its steps."""
    for file, text in _below(files, "content/procedures/"):
        for stage, step, of in steps_of(text):
            action = word_of(value_of(step, "action"))
            if not action:
                continue  # a change of a sibling's step; the sibling's own is dropped
            span = lines_of(text, stage if of == 1 else step)
            yield Mutation(
                "drop step",
                action,
                file,
                f"without {word_of(value_of(step, 'step'))}",
                without(text, span),
            )


def swapped_steps(files: Files) -> Iterator[Mutation]:
    """Yield each procedure with two steps of different stages or actions in each other's place."""
    for file, text in _below(files, "content/procedures/"):
        spans = [
            (lines_of(text, step), step)
            for _, step, _ in steps_of(text)
            if word_of(value_of(step, "action"))
        ]
        for n, (one, first) in enumerate(spans):
            for other, second in spans[n + 1 : n + 7]:
                actions = [word_of(value_of(each, "action")) for each in (first, second)]
                if actions[0] == actions[1]:
                    continue
                names = [word_of(value_of(each, "step")) for each in (first, second)]
                yield Mutation(
                    "swap steps",
                    " and ".join(actions),
                    file,
                    f"{names[1]} and {names[0]} in each other's place",
                    exchanged(text, one, other),
                )


def changed_values(files: Files) -> Iterator[Mutation]:
    """Yield each value a quarter off, to both sides."""
    for file, text, name, node in values_of(files):
        found = _AMOUNT.match(node.value)
        if not found:
            continue
        for factor in FACTORS:
            yield Mutation(
                "change value",
                name,
                file,
                f"{name} times {float(factor)}",
                instead(text, node, scaled(node.value, factor)),
            )


def changed_units(files: Files) -> Iterator[Mutation]:
    """Yield each value in a unit that it is easily mistaken for."""
    for file, text, name, node in values_of(files):
        found = _AMOUNT.match(node.value)
        if found and found["unit"] in UNITS:
            wrong = f"{found['number']} {UNITS[found['unit']]}"
            yield Mutation(
                "change unit", name, file, f"{name} as {wrong}", instead(text, node, wrong)
            )


def dropped_protection(files: Files) -> Iterator[Mutation]:
    """Yield each step, and each chemical, without what is worn."""
    for file, text in _below(files, "content/procedures/"):
        for _, step, _ in steps_of(text):
            if word_of(value_of(step, "action")):
                yield from _unworn(file, text, step, word_of(value_of(step, "step")))
    for file, text in _below(files, "content/agents/"):
        yield from _unworn(file, text, root_of(text), "the chemical")


def copied_items(files: Files) -> Iterator[Mutation]:
    """Yield each question asked a second time under another id."""
    for file, text, item in _items(files):
        span = lines_of(text, item)
        piece = text[span.start : span.end]
        name = word_of(value_of(item, "item"))
        again = re.sub(rf"(item: ){re.escape(name)}\b", rf"\g<1>{name}-again", piece, count=1)
        gap = "" if text[: span.end].endswith("\n") else "\n"
        yield Mutation(
            "copy item",
            word_of(value_of(item, "kind")),
            file,
            f"{name} twice",
            text[: span.end] + gap + again + text[span.end :],
        )


def broken_keys(files: Files) -> Iterator[Mutation]:
    """Yield each question whose right option became wrong, or whose wrong one became right."""
    for file, text, item in _items(files):
        kind = word_of(value_of(item, "kind"))
        name = word_of(value_of(item, "item"))
        for n, option in enumerate(entries_of(value_of(item, "options"))):
            assert isinstance(option, yaml.MappingNode)
            key = next((k for k, _ in option.value if k.value in {"right", "wrong"}), None)
            if key is None or (kind == "multiple" and n):
                continue
            other = "wrong" if key.value == "right" else "right"
            yield Mutation(
                "break key",
                f"{kind}: {key.value} as {other}",
                file,
                f"{name}: option {n + 1} is {other}",
                instead(text, key, other),
            )


def changed_tolerances(files: Files) -> Iterator[Mutation]:
    """Yield each instrument with one part that stands, or does not stand, a route otherwise."""
    for file, text in _below(files, "content/instruments/"):
        for part in entries_of(value_of(root_of(text), "parts")):
            routes = value_of(value_of(part, "survives") or part, "routes")
            if not isinstance(routes, yaml.MappingNode):
                continue
            for route, stands in routes.value:
                other = "no" if stands.value == "yes" else "yes"
                yield Mutation(
                    "change tolerance",
                    f"to {other}",
                    file,
                    f"{word_of(value_of(part, 'part'))} and {route.value}: {other}",
                    instead(text, stands, other),
                )


KINDS: Final[Mapping[str, Callable[[Files], Iterator[Mutation]]]] = {
    "drop step": dropped_steps,
    "swap steps": swapped_steps,
    "change value": changed_values,
    "change unit": changed_units,
    "drop protection": dropped_protection,
    "copy item": copied_items,
    "break key": broken_keys,
    "change tolerance": changed_tolerances,
}


def values_of(files: Files) -> Iterator[tuple[str, str, str, yaml.ScalarNode]]:
    """Yield each value of a clinic: file, its text, the value's id and where it is written."""
    for file, text in _below(files, "content/figures/"):
        figures = value_of(root_of(text), "figures")
        if isinstance(figures, yaml.MappingNode):
            for name, figure in figures.value:
                value = value_of(figure, "value")
                if isinstance(value, yaml.ScalarNode):
                    yield file, text, name.value, value


def scaled(amount: str, factor: Fraction) -> str:
    """Return a written amount times a factor, in the same unit.

    Days and what is counted stay whole: they move by one at least.
    """
    found = _AMOUNT.match(amount)
    assert found, amount
    number = Fraction(found["number"]) * factor
    if parse_quantity(amount).kind in {Kind.DAYS, Kind.MONTHS, Kind.COUNT}:
        number = Fraction(math.ceil(number) if factor > 1 else math.floor(number))
    return f"{float(round(number, 6)):.6f}".rstrip("0").rstrip(".") + f" {found['unit']}"


def _unworn(file: str, text: str, node: yaml.Node, name: str) -> Iterator[Mutation]:
    assert isinstance(node, yaml.MappingNode)
    span: Span | None = line_of_key(text, node, "wear")
    if span is not None and word_of(value_of(node, "action")) != "put on":
        yield Mutation(
            "drop protection",
            word_of(value_of(node, "action")) or "chemical",
            file,
            f"{name} without what is worn",
            without(text, span),
        )


def _items(files: Files) -> Iterator[tuple[str, str, yaml.Node]]:
    for file, text in _below(files, "quizzes/questions/"):
        for entry in entries_of(value_of(root_of(text), "items")):
            if value_of(entry, "item") is not None:
                yield file, text, entry
            for item in entries_of(value_of(entry, "items")):
                yield file, text, item


def _below(files: Files, folder: str) -> Iterator[tuple[str, str]]:
    return ((file, text) for file, text in sorted(files.items()) if file.startswith(folder))
