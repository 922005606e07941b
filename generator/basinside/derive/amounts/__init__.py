"""The calculators: what was typed, on what this clinic stands on, to an answer or a refusal."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from basinside.derive.amounts.boiling import boiling
from basinside.derive.amounts.discard import discard
from basinside.derive.amounts.gauge import gauge
from basinside.derive.amounts.liquid import liquid
from basinside.derive.amounts.load import load
from basinside.derive.amounts.out_time import out_time
from basinside.derive.amounts.powder import powder
from basinside.derive.amounts.sets import sets
from basinside.derive.amounts.tablets import tablets
from basinside.derive.amounts.typed import Reader, RefusedInputError
from basinside.model.amounts import CAUTIONS, SOURCES, AmountKind, Answer, Ground, Typed

CALCULATORS: Final[dict[AmountKind, Callable[[Ground, Reader], Answer]]] = {
    "liquid": liquid,
    "powder": powder,
    "tablets": tablets,
    "boiling": boiling,
    "gauge": gauge,
    "out-time": out_time,
    "discard": discard,
    "load": load,
    "sets": sets,
}


def answer(ground: Ground, kind: AmountKind, typed: Typed) -> Answer:
    """Return what a calculator answers.

    Args:
        ground: what this clinic's calculators stand on.
        kind: which calculator.
        typed: the fields of its form as somebody typed them; a missing one is empty.
    """
    read = Reader(typed)
    try:
        found = CALCULATORS[kind](ground, read)
    except RefusedInputError as refused:
        return Answer(
            kind=kind,
            inputs=tuple(read.notes),
            cautions=CAUTIONS[kind],
            sources=SOURCES[kind],
            refusal=refused.reason,
            would_do=refused.would_do,
        )
    return replace(found, inputs=(*found.inputs, *read.notes))
