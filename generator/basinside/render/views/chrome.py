"""The frame of every page: what exists, who is responsible, what comes first, whom to ring."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any, Final

from basinside.model.entry import Waiver
from basinside.render.view_types import (
    BannerView,
    ChromeView,
    FactView,
    InlineData,
    LinkView,
    NavItem,
    plain,
)
from basinside.render.views.spot import Spot, day_words, fact
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, sentence

POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
    " font-src 'self' data:; frame-src 'self'; worker-src blob:; media-src 'self';"
    " connect-src 'none'; form-action 'none'; base-uri 'none'; object-src 'none';"
    " require-trusted-types-for 'script'; trusted-types 'none'"
)
"""The content policy of every built page."""

PREVIEW_POLICY: Final = POLICY.replace(
    "script-src 'self'", "script-src 'self' 'unsafe-inline'"
).replace("connect-src 'none'", "connect-src 'self'")
"""Under preview alone: the live reload script stands in the page and asks its own server."""


def chrome_view(
    spot: Spot,
    title: str,
    *,
    section: str = "",
    data: Mapping[str, Any] | None = None,
    banners: tuple[BannerView, ...] = (),
    panel: bool = False,
    script: str = "assets/basinside.js",
    more_scripts: tuple[str, ...] = (),
    timers: bool = False,
    preview: bool = False,
) -> ChromeView:
    """Return the frame of a page.

    Args:
        spot: where the page lies.
        title: the page's own title.
        section: the navigation entry that is current.
        data: JSON for the page's script, by element id.
        banners: what the whole page has to own up to, besides what the handbook owns up to.
        panel: whether the capability panel has its place here.
        script: the page's script, as a path in the folder.
        more_scripts: what runs after it, where a page brings more than all others.
        timers: whether the times that run are shown, and their phrases brought along.
        preview: whether the page is shown by the preview server.
    """
    handbook = spot.desk.content.handbook
    site = handbook.title if handbook else _("Handbook")
    frame = _frame(spot, site, section, preview=preview)
    return replace(
        frame,
        title=title if title == site else _("{title} · {site}").format(title=title, site=site),
        scripts=tuple(map(spot.link, (script, *more_scripts))),
        banners=tuple(sorted((*frame.banners, *banners), key=lambda each: each.kind != "problem")),
        panel="capability" if panel else "",
        timers=timers,
        up=spot.up,
        sprite=spot.desk.theme.sprite(spot.signs),
        data=(
            *frame.data,
            *(InlineData(anchor=name, value=value) for name, value in (data or {}).items()),
        ),
    )


def _frame(spot: Spot, site: str, section: str, *, preview: bool) -> ChromeView:
    """Return what the pages of one section at one depth share; made once."""
    key = (spot.up, section, preview)
    if key not in spot.desk.frames:
        spot.desk.frames[key] = _shared_frame(spot, site, section, preview=preview)
    return spot.desk.frames[key]


def _shared_frame(spot: Spot, site: str, section: str, *, preview: bool) -> ChromeView:
    handbook = spot.desk.content.handbook
    return ChromeView(
        language=handbook.language if handbook else "en",
        policy=PREVIEW_POLICY if preview else POLICY,
        title=site,
        stylesheet=spot.link("assets/basinside.css"),
        site_title=site,
        home=spot.link("index.html"),
        skip=_("Go to the text"),
        nav_label=_("Main"),
        nav=tuple(
            NavItem(text=text, href=spot.link(href), current=name == section)
            for name, text, href in navigation(spot)
        ),
        alarm=LinkView(text=_("Something went wrong"), href=spot.link("incidents.html")),
        banners_label=_("Please note"),
        banners=_handbook_banners(spot),
        facts=edition_facts(spot),
        cautions=(
            plain(
                _(
                    "The manufacturer's instructions and local policy come first. This handbook"
                    " supports them and the judgement of licensed staff; it never replaces them."
                )
            ),
            plain(
                _(
                    "This work can hurt people: sharps, heat, steam, chemicals, infection. Wear"
                    " what the step says. Stop and ask when something is not as it should be."
                )
            ),
        ),
        paper=_paper(spot),
        data=(InlineData(anchor="page", value=_page_data(spot)),),
    )


def navigation(spot: Spot) -> tuple[tuple[str, str, str], ...]:
    """Return (section, words, address) of what exists, in the order of use."""
    content = spot.desk.content
    entries = []
    if content.procedures:
        entries.append(("procedures", _("Procedures"), "procedures/index.html"))
    if spot.desk.has_ways:
        entries.append(("today", _("Use today"), "today.html"))
    if content.handbook:
        entries.append(("amounts", _("Amounts"), "amounts.html"))
    if content.handbook:
        entries.append(("paper", _("Paper"), "print/index.html"))
    if spot.desk.practice_topics:
        entries.append(("self-tests", _("Test yourself"), "self-tests/index.html"))
    entries.append(("reference", _("Reference"), "reference.html"))
    entries.append(("search", _("Search"), "search.html"))
    entries.append(("examine", _("Examine"), "examine.html"))
    return tuple(entries)


def _page_data(spot: Spot) -> dict[str, Any]:
    handbook = spot.desk.content.handbook
    return {
        "handbook": handbook.handbook if handbook else "",
        "edition": handbook.edition if handbook else "",
        "language": handbook.language if handbook else "en",
        "store": spot.link("store.html"),
        "dated": [{"anchor": "review-overdue", "after": handbook.review_by.isoformat()}]
        if handbook
        else [],
    }


def _handbook_banners(spot: Spot) -> tuple[BannerView, ...]:
    handbook = spot.desk.content.handbook
    if handbook is None:
        return ()
    banners = []
    if handbook.demonstration:
        banners.append(
            BannerView(
                kind="demonstration",
                word=_("Demonstration, not a real clinic."),
                text=plain(handbook.demonstration),
            )
        )
    banners.append(
        BannerView(
            kind="overdue",
            word=_("Review overdue"),
            text=plain(
                _(
                    "This edition was to be reviewed by {day}. Ask the {who} before you rely on it."
                ).format(day=day_words(handbook.review_by), who=handbook.responsible)
            ),
            anchor="review-overdue",
            hidden=True,
        )
    )
    return (*banners, *waived_banners(spot, handbook.waive))


def waived_banners(spot: Spot, waivers: Iterable[Waiver]) -> tuple[BannerView, ...]:
    """Return the waivers that a whole page has to own up to."""
    return tuple(
        BannerView(
            kind="waived",
            word=each.word,
            text=(
                *each.because,
                *plain(" (" + "; ".join(f"{f.label}: {f.text[0].text}" for f in each.facts) + ")"),
            ),
        )
        for each in waiver_views(spot, waivers)
    )


def edition_facts(spot: Spot) -> tuple[FactView, ...]:
    """Return which edition this is, when it is looked at again and who answers for it."""
    handbook = spot.desk.content.handbook
    if handbook is None:
        return ()
    return (
        fact(
            _("Edition"),
            handbook.edition,
            _("issued {day}").format(day=day_words(handbook.issued)),
        ),
        fact(_("Review due"), day_words(handbook.review_by)),
        fact(_("Responsible"), sentence(handbook.responsible)),
    )


def _paper(spot: Spot) -> tuple[FactView, ...]:
    handbook = spot.desk.content.handbook
    if handbook is None:
        return ()
    ring = handbook.contacts[0] if handbook.contacts else None
    return (
        fact(
            _("Edition"),
            _("{edition}, issued {day}").format(
                edition=handbook.edition, day=day_words(handbook.issued)
            ),
        ),
        fact(_("Review due"), day_words(handbook.review_by)),
        fact(_("Responsible"), sentence(handbook.responsible)),
        fact(_("Void after"), day_words(handbook.review_by)),
        *(
            (
                fact(
                    _("Ring"),
                    _("{who}: by day {day}, by night {night}").format(
                        who=sentence(ring.who), day=ring.day, night=ring.night
                    ),
                ),
            )
            if ring
            else ()
        ),
    )
