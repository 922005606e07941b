"""The rule variant-mixed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import WholeInstrument
from basinside.model.instrument import Instrument
from basinside.problem import Level

Verdict = tuple[bool, frozenset[str]]


@rule(level=Level.STOP)
def check_variant_mixed(checked: Checked) -> Iterator[Finding]:
    """Models that look alike and survive different things are told apart, and never share a way.

    Why: a bag of vinyl looks like one of silicone until it has been boiled. A page, a mark or a
    step that is for both sends one of them into the wrong pot.
    Where the routes of an instrument and of its `variant_of` have different verdicts, each has its
    own `applies_to`, each names the other in `look_alikes`, no mark stands in `units` of both, and
    no procedure of the one leads (`see`) to a procedure of the other.
    Bad: a variant that takes `applies_to` over from its sibling.
    Good: `marked: No moulded S on the neck.` here, `marked: A moulded S on the neck.` there.
    Source: the makers' instructions, cited at each part; common practice.
    """
    families: dict[str, list[str]] = {}
    for name, whole in checked.derived.instruments.items():
        families.setdefault(whole.instrument.variant_of or name, []).append(name)
    verdicts: dict[str, Mapping[str, Verdict]] = {}
    for names in families.values():
        if len(names) > 1:
            verdicts.update((name, _verdicts(checked.derived.instruments[name])) for name in names)
            for one, other in combinations(names, 2):
                yield from _alike(checked, one, other, verdicts)
    yield from _led_astray(checked, verdicts)


def _verdicts(whole: WholeInstrument) -> Mapping[str, Verdict]:
    """Return for each of the clinic's routes whether it may be used, and for which parts."""
    return {
        each.route.name: (each.permitted, frozenset(part.part for part in each.fit))
        for each in whole.verdicts
    }


def _alike(
    checked: Checked, one: str, other: str, verdicts: Mapping[str, Mapping[str, Verdict]]
) -> Iterator[Finding]:
    differ = [name for name, verdict in verdicts[one].items() if verdicts[other][name] != verdict]
    if not differ:
        return
    first, second = checked.content.instruments[one], checked.content.instruments[other]
    also = (first.place, second.place)
    why = f"have different verdicts for {listed(differ)}"
    if _marked(first) == _marked(second) or not _marked(first) or not _marked(second):
        yield Finding(
            second.place.at("applies_to"),
            f"{one} and {other} {why}, and “applies_to” does not tell them apart",
            "Write at each what shows that it is this model.",
            also,
        )
    for here, there in ((first, second), (second, first)):
        if all(alike.instrument != there.instrument for alike in here.look_alikes):
            yield Finding(
                here.place.at("look_alikes"),
                f"{one} and {other} {why}, and {here.instrument} does not name"
                f" {there.instrument} as one that looks like it",
                "Name it in “look_alikes”, and say how they are told apart.",
                also,
            )
    shared = [mark for mark in first.units if mark in second.units]
    if shared:
        yield Finding(
            second.place.at("units"),
            f"{one} and {other} {why}, and the mark {listed(shared)} stands at both",
            "Give each unit a mark of its own.",
            also,
        )


def _marked(instrument: Instrument) -> str:
    return instrument.applies_to.marked if instrument.applies_to else ""


def _led_astray(
    checked: Checked, verdicts: Mapping[str, Mapping[str, Verdict]]
) -> Iterator[Finding]:
    if not verdicts:
        return
    procedures = checked.derived.procedures
    for whole in procedures.values():
        own = whole.instrument
        if own is None or own.instrument not in verdicts:
            continue
        for placed in whole.steps:
            led = procedures.get(placed.step.see) if placed.step.see else None
            there = led.instrument if led else None
            if there is None or there.instrument not in verdicts:
                continue
            family = {own.variant_of or own.instrument, there.variant_of or there.instrument}
            if len(family) == 1 and verdicts[own.instrument] != verdicts[there.instrument]:
                yield Finding(
                    placed.step.place.at("see"),
                    f"{whole.procedure.procedure} leads in {placed.step.step} from"
                    f" {own.instrument} to a procedure of {there.instrument}, which has other"
                    " verdicts",
                    "Lead to a procedure of the same model.",
                    (whole.procedure.place, placed.step.place),
                )
