"""The rule picture-missing."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level, Place


@rule(level=Level.STOP)
def check_picture_missing(checked: Checked) -> Iterator[Finding]:
    """A picture that an entry names is there.

    Why: a step or a question that speaks of a picture cannot be understood without it.
    Bad: `picture: water-mark.svg`, and content/pictures/ holds no such file.
    Good: the file lies in content/pictures/ and passed its check.
    Source: common practice.
    """
    for picture, place, node in _named(checked):
        if picture not in checked.content.pictures:
            yield Finding(
                place,
                f"content/pictures/ holds no picture {picture} that can be used",
                "Put it there as an .svg file; if it is there, its own line says what was refused.",
                (node,),
            )


def _named(checked: Checked) -> Iterator[tuple[str, Place, Place]]:
    for instrument in checked.content.instruments.values():
        sibling = checked.content.instruments.get(instrument.variant_of or "")
        shared = sibling is not None and sibling.assembled == instrument.assembled
        if instrument.assembled is not None and not shared:
            yield instrument.assembled, instrument.place.at("assembled"), instrument.place
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            if placed.step.picture is not None:
                yield placed.step.picture, placed.step.place.at("picture"), placed.step.place
    for read in checked.items:
        if read.picture is not None:
            yield read.picture, read.item.place.at("picture"), read.item.place
