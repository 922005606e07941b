"""What every sheet of paper carries: title, edition, dates, where it hangs, whom to ring."""

from __future__ import annotations

from dataclasses import replace

from basinside.model.handbook import Contact, Handbook
from basinside.quantity import in_words
from basinside.render.view_types import FactView, Prose, SpanView, plain
from basinside.render.views.spot import Spot, day_words, fact, present
from basinside.render.wording import _, listed, sentence


def unlinked(prose: Prose) -> Prose:
    """Return a sentence without its ways on: paper leads nowhere."""
    return tuple(replace(span, href="") if span.href else span for span in prose)


def breakable(prose: Prose) -> Prose:
    """Return a sentence whose values may be broken between their words."""
    return tuple(
        replace(span, text=in_words(span.text)) if span.kind == "value" else span for span in prose
    )


def paper_prose(spot: Spot, text: str | None) -> Prose:
    """Return an author's sentence for paper."""
    return unlinked(spot.prose(text))


def value_words(spot: Spot, name: str) -> Prose:
    """Return a value for paper; nothing when it is not there."""
    figure = spot.desk.content.figures.get(name)
    return unlinked((spot.value(name, figure),)) if figure else ()


def joined(*parts: Prose | str) -> Prose:
    """Return pieces of a sentence as one."""
    spans: list[SpanView] = []
    for part in parts:
        spans.extend(plain(part) if isinstance(part, str) else part)
    return tuple(spans)


def print_hint() -> Prose:
    """Return the line that only a screen shows."""
    return plain(_("Print this page on A4 or Letter, on one side, in black."))


def notices(spot: Spot) -> tuple[FactView, ...]:
    """Return what each sheet has to own up to."""
    handbook = spot.desk.content.handbook
    if handbook is None or not handbook.demonstration:
        return ()
    return (fact(_("Demonstration"), handbook.demonstration),)


def hangs(spot: Spot, kind: str, of: str = "") -> str:
    """Return where a print hangs, as a sentence part; nothing when it hangs nowhere."""
    handbook = spot.desk.content.handbook
    places = [
        each.at
        for each in (handbook.posted if handbook else ())
        if each.print == kind and (each.of or "") == of
    ]
    return listed(list(dict.fromkeys(places)))


def foot(
    spot: Spot, kind: str, of: str = "", *, ring: str = "", chemical: str = ""
) -> tuple[FactView, ...]:
    """Return the strip at the foot of a sheet.

    Args:
        spot: the page.
        kind: the print's kind, as handbooks write it under ``posted``.
        of: the procedure or instrument it is about.
        ring: the id of the contact to name; the first of the handbook when it is not there.
        chemical: the id of the contact to name besides, for a chemical; nothing when empty.
    """
    handbook = spot.desk.content.handbook
    if handbook is None:
        return ()
    contact = contact_named(handbook, ring)
    besides = contact_named(handbook, chemical) if chemical else None
    if besides is contact:
        besides = None
    issued = day_words(handbook.issued)
    return present(
        fact(
            _("Edition"),
            _("{edition}, issued {day}").format(edition=handbook.edition, day=issued),
        ),
        fact(_("Review due"), day_words(handbook.review_by)),
        fact(_("Void after"), day_words(handbook.review_by)),
        fact(_("Ask"), sentence(handbook.responsible)),
        fact(_("Hangs"), hangs(spot, kind, of)),
        fact(_("Ring"), _ring_words(contact)) if contact else None,
        fact(_("Splashed by a chemical"), _ring_words(besides)) if besides else None,
        fact(_("Handbook"), handbook.title),
        fact(_("First of all"), _("the manufacturer's instructions and local policy.")),
    )


def contact_named(handbook: Handbook, name: str) -> Contact | None:
    """Return a contact by its id, or the first one."""
    known = {each.contact: each for each in handbook.contacts}
    return known.get(name) or next(iter(handbook.contacts), None)


def _ring_words(contact: Contact) -> str:
    return _("{who}: by day {day}, by night {night}").format(
        who=sentence(contact.who), day=contact.day, night=contact.night
    )
