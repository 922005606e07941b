"""The parts of an instrument: what each touches, needs and stands, and when its life is over."""

from __future__ import annotations

from basinside.model.derived import NeededLevel
from basinside.model.instrument import Instrument, Part
from basinside.model.words import Contact
from basinside.render.view_types import FactView, PartView, Prose, plain
from basinside.render.views.chemicals import chemical_span
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def spaulding(contact: Contact) -> str:
    """Return the class that belongs to a contact (Spaulding, as CDC 2008 prints it)."""
    if contact in {"sterile tissue", "blood stream"}:
        return _("critical")
    if contact in {"mucous membrane", "broken skin"}:
        return _("semi-critical")
    if contact == "whole skin":
        return _("non-critical")
    return _("no contact")


def drawn_parts(instrument: Instrument) -> str:
    """Return the parts as the words of their drawing: how many, and which never go under water."""
    named = []
    for part in instrument.parts:
        warn = never_under(part)
        named.append(counted(part) + (f" ({warn.lower()})" if warn else ""))
    return listed(named)


def numbered_parts(instrument: Instrument) -> str:
    """Return the parts by number, in the order in which they come off, each with its count."""
    off = [each for name in instrument.take_apart if (each := instrument.part_named(name))]
    if not off:
        return _("Nothing comes apart: {parts}.").format(parts=drawn_parts(instrument))
    rest = [each for each in instrument.parts if each not in off]
    return _("Taken apart, in this order: {parts}.").format(
        parts=", ".join(f"{n}.\u00a0{counted(each)}" for n, each in enumerate([*off, *rest], 1))
    )


def counted(part: Part) -> str:
    """Return the name of a part, with how many there are when there is more than one."""
    return f"{part.count} ×\u00a0{part.shown_name}" if part.count > 1 else part.shown_name


def never_under(part: Part) -> str:
    """Return the warning of a part that may never be put under; nothing for all others."""
    under = part.immersion
    if under is None or "never" not in (under.boiling, under.chemical):
        return ""
    if under.boiling == under.chemical:
        return _("Never under water")
    if under.boiling == "never":
        return _("Never in boiling water")
    return _("Never in a bath")


def part_view(spot: Spot, instrument: Instrument, part: Part) -> PartView:
    """Return one part: what it touches, needs and stands, and what is done to it."""
    needed = spot.desk.instrument(instrument).needed[part.part]
    tools, under = part.tools, part.immersion
    warn = never_under(part)
    return PartView(
        anchor=part.part,
        name=sentence(part.shown_name),
        count=n_("one", "{n} of them", part.count),
        warn=(warn,) if warn else (),
        facts=present(
            fact(_("Touches"), sentence(listed(part.touches))),
            fact(_("Needs at least"), sentence(needed.level), _why_level(needed)),
            fact(_("Hollow inside"), _("Yes: fill it, flush it, look through it"))
            if part.lumen
            else None,
            fact(_("When boiled"), _under(under.boiling)) if under else None,
            fact(_("In a chemical bath"), _under(under.chemical)) if under else None,
            fact(_("Use only"), sentence(listed(tools.use))) if tools else None,
            fact(_("Never use"), sentence(listed(tools.never))) if tools else None,
            _lubricated(spot, part),
        ),
        waivers=waiver_views(spot, part.waive),
    )


def _under(immersion: str | None) -> str:
    """Return how a part is put under, when it differs from its instrument."""
    return _("Never") if immersion == "never" else sentence(immersion or "")


def _lubricated(spot: Spot, part: Part) -> FactView | None:
    oil = part.lubricate
    if oil is None:
        return None
    return fact(
        _("Lubricate with"),
        (
            chemical_span(spot, oil.with_),
            *plain(": "),
            *spot.prose(oil.amount),
            *plain(", "),
            *spot.prose(oil.when),
        ),
        _("never {what}").format(what=oil.never) if oil.never else "",
    )


def _why_level(needed: NeededLevel) -> str:
    if needed.decided is None:
        return spaulding(needed.contact)
    return _("decided by {by} and {second}; the other view: {view}").format(
        by=needed.decided.by,
        second=needed.decided.second or "?",
        view=needed.decided.other_view,
    )


def retire_facts(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    """Return the signs that a part's life is over, by part, each with what then."""
    then = {
        "retire whole": _("Retire the whole instrument."),
        "replace part": _("Replace the part."),
        "repair": _("Send it for repair."),
    }
    gathered: dict[tuple[str, str], list[str]] = {}
    for part in instrument.parts:
        for sign in part.retire_when:
            gathered.setdefault((sign.sign, then[sign.then]), []).append(part.shown_name)
    by_parts: dict[str, list[Prose]] = {}
    for (seen, what), names in gathered.items():
        said = (*spot.prose(state(seen)), *plain(f" {what} "))
        by_parts.setdefault(sentence(listed(names)), []).append(said)
    return tuple(
        fact(names, tuple(span for said in signs for span in said))
        for names, signs in by_parts.items()
    )
