"""What a step means, and the digests on which evidence, editions and refresh lists stand.

A meaning is a plain object with the members of the table in the digests' specification, absent
ones left out, references replaced by their value in base units. A newer program that hashes
more must go on computing version 1 for what version 1 signed.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from typing import Any

from basinside.canonical import digest
from basinside.model.content import Content
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.entry import FigureRef
from basinside.model.figure import Figure
from basinside.model.instrument import Instrument
from basinside.model.procedure import Hold
from basinside.model.prose import Words, read_prose

Meaning = dict[str, Any]


def settled_text(text: str, figures: Mapping[str, Figure]) -> str:
    """Return a sentence in NFC, white space collapsed, each reference as its value."""
    parts = []
    for span in read_prose(text):
        if isinstance(span, Words):
            parts.append(span.text)
        else:
            figure = figures.get(span.figure)
            parts.append(figure.value.base_text() if figure else f"{{{{ {span.figure} }}}}")
    return unicodedata.normalize("NFC", " ".join("".join(parts).split()))


def _value(reference: FigureRef | None, figures: Mapping[str, Figure]) -> str | None:
    if reference is None:
        return None
    figure = figures.get(reference.figure)
    return figure.value.base_text() if figure else None


def _present(members: Meaning) -> Meaning:
    return {
        key: value for key, value in members.items() if value not in (None, "", (), [], {}, False)
    }


def _hold(hold: Hold | None, figures: Mapping[str, Figure]) -> Meaning:
    if hold is None:
        return {}
    return _present(
        {
            "value": _value(hold, figures),
            "from": hold.from_ and settled_text(hold.from_, figures),
            "if_interrupted": hold.if_interrupted and settled_text(hold.if_interrupted, figures),
            "no_longer_than": _value(hold.no_longer_than, figures),
        }
    )


def step_meaning(content: Content, whole: WholeProcedure, placed: PlacedStep) -> Meaning:
    """Return what one step means, as plain data for canonical JSON."""
    step, figures = placed.step, content.figures
    longest = step.longest and _present(
        {"value": _value(step.longest, figures), "before": step.longest.before}
    )
    return _present(
        {
            "step": step.step,
            "action": step.action,
            "do": settled_text(step.do, figures),
            "safety": step.safety,
            "hold": _hold(step.hold, figures),
            "longest": longest,
            "wait": _value(step.wait, figures),
            "wall": step.wall and settled_text(step.wall, figures),
            "agent": step.agent,
            "strength": _value(step.strength, figures),
            "temperature": _value(step.temperature, figures),
            "danger": step.danger and step.danger.kind,
            "wear": sorted(placed.wear),
            "parts": list(step.parts),
            "parts_are": step.parts_are,
            "soil_state": placed.before,
            "needs": list(step.needs),
            "route": whole.procedure.route,
            "vessel": whole.procedure.vessel,
            "water": step.water,
            "in": step.in_,
            "with": list(step.with_),
            "wrap": None if step.wrap is None else ("yes" if step.wrap else "no"),
            "instrument_lines": _instrument_lines(content, whole.instrument, step.action),
        }
    )


def _instrument_lines(content: Content, instrument: Instrument | None, action: str) -> list[Any]:
    """Return the instrument's own lines that a test, take-apart or lubricate step uses."""
    if instrument is None:
        return []
    figures = content.figures
    if action == "take apart":
        return list(instrument.take_apart)
    if action == "test":
        return [
            _present(
                {
                    "do": settled_text(line.do, figures),
                    "wait": _value(line.wait, figures),
                    "expect": settled_text(line.expect, figures),
                    "if_not": settled_text(line.if_not, figures),
                }
            )
            for line in instrument.function_test
        ]
    if action == "lubricate":
        return [
            _present(
                {
                    "part": part.part,
                    "with": part.lubricate.with_,
                    "amount": settled_text(part.lubricate.amount, figures),
                    "when": settled_text(part.lubricate.when, figures),
                    "never": part.lubricate.never,
                }
            )
            for part in instrument.parts
            if part.lubricate
        ]
    return []


def step_digest(meaning: Meaning) -> str:
    """Return ``step-v1:...`` of a step's meaning."""
    return digest("step", meaning)


def sequence_of(whole: WholeProcedure) -> list[list[str]]:
    """Return the ordered list of (stage, step id) of a procedure."""
    return [[placed.stage.stage, placed.step.step] for placed in whole.steps]


def sequence_digest(sequence: list[list[str]]) -> str:
    """Return ``sequence-v1:...`` of a procedure's sequence."""
    return digest("sequence", sequence)


def line_digest(line: str, text: str) -> str:
    """Return ``line-v1:...`` of an observation line that is no step."""
    return digest("line", {"id": line, "text": text})


def procedure_meanings(content: Content, whole: WholeProcedure) -> dict[str, Meaning]:
    """Return the meaning of every step of a procedure, by step id."""
    return {placed.step.step: step_meaning(content, whole, placed) for placed in whole.steps}


def scope_digest(content: Content, wholes: list[WholeProcedure]) -> str:
    """Return ``scope-v1:...`` over the meanings and the sequence of each procedure in a scope."""
    return digest(
        "scope",
        {
            whole.procedure.procedure: {
                "sequence": sequence_of(whole),
                "steps": procedure_meanings(content, whole),
            }
            for whole in wholes
        },
    )
