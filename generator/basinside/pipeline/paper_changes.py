"""Which paper on the walls has to be hung anew when one edition follows another."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from basinside.derive.everything import derive
from basinside.model.content import Content
from basinside.model.derived import Change
from basinside.model.handbook import Posted
from basinside.model.words import PRINTS_OF
from basinside.pipeline.build import open_theme
from basinside.quantity import QuantityError, parse_quantity
from basinside.render.sheets_compared import (
    Sheets,
    at_the_same_edition,
    hung_anew,
    posted_words,
    sheets_of,
)

if TYPE_CHECKING:
    from basinside.pipeline.editions import Side


def paper_changes(before: Side, after: Side, changes: Iterable[Change]) -> tuple[Change, ...]:
    """Return what is to be hung anew, hung for the first time, and taken down.

    Where both sides have their content, their sheets are compared. Where one is a closed edition,
    its values are put into the other's sheets, and each chart of a procedure whose steps differ
    counts. Two closed editions say nothing of walls.
    """
    here = after.content or before.content
    if here is None or here.handbook is None:
        return ()
    posted = here.handbook.posted
    anew = [*_by_sheets(before, after, posted), *_by_steps(posted, before, after, changes)]
    out = [_change("print-anew", each) for each in posted if each in anew]
    if before.content and after.content and before.content.handbook and after.content.handbook:
        was, now = (_named(side.content) for side in (before, after) if side.content)
        out = [each for each in out if each.id in was and each.id in now]
        out += [_change("print-new", each) for name, each in now.items() if name not in was]
        out += [_change("print-gone", each) for name, each in was.items() if name not in now]
    return tuple(dict.fromkeys(out))


def _by_sheets(before: Side, after: Side, posted: tuple[Posted, ...]) -> list[Posted]:
    one, other = before.content, after.content
    if one is None and other is not None:
        one = _with_values(other, before.document["values"])
    elif other is None and one is not None:
        other = _with_values(one, after.document["values"])
    if one is None or other is None or other.handbook is None:
        return []
    theme = open_theme()
    sheets: list[Sheets] = [
        sheets_of(each, derive(each), theme)
        for each in (at_the_same_edition(one, other.handbook), other)
    ]
    return list(hung_anew(posted, *sheets))


def _with_values(content: Content, values: Mapping[str, Any]) -> Content:
    """Return content with the values that a closed edition kept."""
    figures = dict(content.figures)
    for name, kept in values.items():
        figure = figures.get(name)
        if figure is None or kept["base"] == figure.value.base_text():
            continue
        try:
            was = parse_quantity(kept["shown"].replace("\N{NO-BREAK SPACE}", " "))
        except QuantityError:
            continue
        figures[name] = figure.model_copy(update={"value": was})
    return replace(content, figures=figures)


def _by_steps(
    posted: tuple[Posted, ...], before: Side, after: Side, changes: Iterable[Change]
) -> list[Posted]:
    if before.content and after.content:
        return []  # their sheets were compared
    touched = {
        each.id.partition("/")[0] for each in changes if each.kind.startswith(("step", "procedure"))
    }
    return [each for each in posted if PRINTS_OF.get(each.print) and each.of in touched]


def _named(content: Content) -> dict[str, Posted]:
    handbook = content.handbook
    return {posted_words(each): each for each in (handbook.posted if handbook else ())}


def _change(kind: Any, posted: Posted) -> Change:
    return Change(kind=kind, id=posted_words(posted))
