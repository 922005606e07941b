"""The rule drawing-parts-both-ways."""

from __future__ import annotations

import re
from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.instrument import Instrument
from basinside.model.picture import Picture
from basinside.problem import Level


@rule(level=Level.STOP)
def check_drawing_parts_both_ways(checked: Checked) -> Iterator[Finding]:
    """Each part of an instrument is an element of its drawing, and each id there is a part.

    Why: the page lights up a part in the drawing when its name is touched. A part that is not
    drawn looks as if it were not there, and is then left unwashed.
    The id of the element is the id of the part. Elements that `use` refers to may have an id too.
    What is wrong with a drawing that a variant shares is told once, at its sibling.
    Bad: `part: leaf-valve`, and the drawing has no element with `id="leaf-valve"`.
    Good: the shape of the leaf valve has `id="leaf-valve"`.
    Source: common practice.
    """
    for instrument in checked.content.instruments.values():
        sibling = checked.content.instruments.get(instrument.variant_of or "")
        shared = sibling is not None and sibling.drawing == instrument.drawing
        told = {part.part for part in sibling.parts} if sibling is not None and shared else set()
        if instrument.drawing is None:
            continue
        picture = checked.content.pictures.get(instrument.drawing)
        if picture is None and shared:
            continue
        if picture is None:
            yield _finding(
                instrument,
                f"content/pictures/ holds no drawing {instrument.drawing} that can be used",
                "Put it there as an .svg file; if it is there, its own line says what was refused.",
            )
        else:
            yield from _both_ways(instrument, picture, told, shared=shared)


def _both_ways(
    instrument: Instrument, picture: Picture, told: set[str], *, shared: bool
) -> Iterator[Finding]:
    """Yield findings both ways, but for what is told at the sibling that shares the drawing."""
    parts = [part.part for part in instrument.parts]
    drawn = set(picture.ids)
    for part in parts:
        if part not in drawn and part not in told:
            yield _finding(
                instrument,
                f"the drawing {instrument.drawing} has no element with the id of the part {part}",
                f'Give its outline id="{part}".',
            )
    prefix = re.escape(picture.id_prefix)
    referred = set(re.findall(f'href="#{prefix}([^"]*)"', picture.markup))
    for drawn_id in picture.ids:
        unknown = drawn_id not in parts and drawn_id not in referred
        if unknown and (not shared or drawn_id in told):
            yield _finding(
                instrument,
                f"the drawing {instrument.drawing} has an element “{drawn_id}”, and"
                f" {instrument.instrument} has no such part",
                "Add the part, or delete the id in the drawing.",
            )


def _finding(instrument: Instrument, message: str, hint: str) -> Finding:
    return Finding(instrument.place.at("drawing"), message, hint, (instrument.place,))
