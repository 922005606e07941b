"""Waivers: a rule that does not hold at one node for a while, by two names.

A waiver stands at the node it concerns, and covers findings inside that node and findings that
say they are about it. A rule of level ``never`` cannot be waived, nor can a problem of form.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from datetime import date
from typing import NamedTuple

from basinside.check.rule import Finding, Found, Rule
from basinside.model.content import Content
from basinside.model.entry import Waivable, Waiver
from basinside.model.waived import waived
from basinside.problem import Level, Place, Problem, one_line


class WaiverAt(NamedTuple):
    """A waiver, the place of the node it is written at, and that entry itself."""

    waiver: Waiver
    place: Place
    owner: Waivable

    def covers(self, finding: Finding) -> bool:
        """Whether a finding lies inside the node, or says that it is about it."""
        there, here = finding.place, self.place
        inside = there.file == here.file and there.path[: len(here.path)] == here.path
        return inside or any(each[:2] == here[:2] for each in finding.also)


def all_waivers(content: Content) -> tuple[WaiverAt, ...]:
    """Return every waiver with where it stands, in the order of the kinds of entry."""
    return tuple(WaiverAt(each.waiver, each.owner.place, each.owner) for each in waived(content))


def apply_waivers(
    found: Iterable[Found],
    waivers: Iterable[WaiverAt],
    rules: Mapping[str, Rule],
    forms: Iterable[str],
    today: date | None,
    silent: frozenset[str] = frozenset(),
) -> list[Problem]:
    """Return the findings as problems, waived ones marked, and what is wrong with the waivers.

    Args:
        found: what the rules object to.
        waivers: every waiver of the content.
        rules: the rules by id.
        forms: the ids of problems of form, which no waiver can take away.
        today: the day, when it is given; then waivers that have ended count no more.
        silent: the rules that could not say all; a waiver of one may have an effect yet.
    """
    problems: list[Problem] = []
    counting: list[WaiverAt] = []
    for each in waivers:
        said = _wrong_with(each.waiver, rules, frozenset(forms))
        if said is not None:
            problems.append(said)
        elif today is not None and each.waiver.until is not None and each.waiver.until < today:
            problems.append(_ended(each.waiver))
        else:
            counting.append(each)
    used: set[int] = set()
    for one in found:
        covering = [
            n
            for n, each in enumerate(counting)
            if each.waiver.rule == one.rule.id and each.covers(one.finding)
        ]
        used.update(covering)
        problems.append(one.problem(_words(counting[covering[0]].waiver) if covering else ""))
    for n, each in enumerate(counting):
        if n not in used and each.waiver.rule not in silent:
            problems.append(_without_effect(each.waiver))
    return problems


def _words(waiver: Waiver) -> str:
    return f"waived by {waiver.by} and {waiver.second} until {waiver.until}: {waiver.because}"


def _wrong_with(waiver: Waiver, rules: Mapping[str, Rule], forms: frozenset[str]) -> Problem | None:
    """Return why a waiver cannot count, or None."""
    name = waiver.rule
    if name not in rules and name not in forms:
        near = difflib.get_close_matches(name, [*rules, *forms], 1, 0.6)
        hint = f"Did you mean “{near[0]}”?" if near else "Its id stands in brackets."
        return _never(waiver, "rule", "waiver-unknown-rule", f"there is no rule “{name}”", hint)
    if name in forms or rules[name].level is Level.NEVER:
        message = f"nobody can waive {name}"
        return _never(waiver, "rule", "waiver-of-never", message, "Mend what it found.")
    second = (waiver.second or "").strip()
    if not second:
        message = f"the waiver of {name} names one person only"
        return _never(waiver, "by", "waiver-incomplete", message, "Write “second:”.")
    if second.casefold() == waiver.by.strip().casefold():
        message = f"the waiver of {name} names {second} twice; a second person agrees to it"
        return _never(waiver, "second", "waiver-incomplete", message)
    if waiver.until is None:
        message = f"the waiver of {name} has no last day"
        return _never(waiver, "rule", "waiver-incomplete", message, "Write “until:”.")
    if waiver.until < waiver.on:
        message = f"the waiver of {name} ends on {waiver.until}, before it begins on {waiver.on}"
        return _never(waiver, "until", "waiver-incomplete", message)
    return None


def _never(waiver: Waiver, key: str, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(
        place=waiver.place.at(key),
        rule=rule,
        level=Level.NEVER,
        message=one_line(message),
        hint=one_line(hint),
    )


def _ended(waiver: Waiver) -> Problem:
    return Problem(
        place=waiver.place.at("until"),
        rule="waiver-ended",
        level=Level.STOP,
        message=f"the waiver of {waiver.rule} ended on {waiver.until}",
        hint="Mend what it waived, or let two people decide again.",
    )


def _without_effect(waiver: Waiver) -> Problem:
    return Problem(
        place=waiver.place.at("rule"),
        rule="waiver-without-effect",
        level=Level.WARN,
        message=f"{waiver.rule} finds nothing here, so this waiver does nothing",
        hint="Delete it.",
    )
