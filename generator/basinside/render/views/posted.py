"""What hangs where, each as a way to its sheet."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.model.handbook import Posted
from basinside.render.view_types import Prose, SpanView, plain
from basinside.render.views.prints.catalogue import Print, kind_words, prints
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, sentence

OBSERVATION = "observation"


def posted_prints(spot: Spot) -> Iterator[tuple[str, Prose]]:
    """Yield the place of each print that hangs somewhere, and its name with ways to its sheets."""
    handbook = spot.desk.content.handbook
    known = tuple(prints(spot))
    for each in handbook.posted if handbook else ():
        yield each.at, _named(spot, each, known)


def _named(spot: Spot, posted: Posted, known: tuple[Print, ...]) -> Prose:
    kind, of = posted.print, posted.of or ""
    if kind == OBSERVATION and of in spot.desk.content.procedures and spot.desk.watched(of):
        sheets = [(procedure_title(spot.desk.whole(of)), f"print/{OBSERVATION}-{of}.html")]
        return _linked(spot, _("Observation sheet"), sheets)
    found = [each for each in known if (each.kind, each.of) == (kind, of)]
    if not found:
        return plain(sentence(kind.replace("-", " ")))
    name = kind_words(kind)
    if of:
        return _linked(spot, name, [(each.short, each.path) for each in found])
    first, *more = found
    return (
        SpanView(kind="link", text=name, href=spot.link(first.path)),
        *(
            span
            for n, each in enumerate(more, 2)
            for span in (
                *plain(", "),
                SpanView(kind="link", text=str(n), href=spot.link(each.path)),
            )
        ),
    )


def _linked(spot: Spot, name: str, sheets: list[tuple[str, str]]) -> Prose:
    spans: list[SpanView] = []
    for text, path in sheets:
        spans.extend(plain(", ") if spans else ())
        spans.append(SpanView(kind="link", text=text, href=spot.link(path)))
    return (*plain(_("{print}: ").format(print=name)), *spans)
