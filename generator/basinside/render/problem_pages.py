"""On which page of a preview each problem stands: the one it concerns, else the start page."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import islice
from typing import Final

from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.problem import Level, Place, Placed
from basinside.render.environment import Theme
from basinside.render.report import problem_view
from basinside.render.view_types import BannerView, LinkView, plain
from basinside.render.views.chrome import chrome_view
from basinside.render.views.spot import Desk, Spot
from basinside.render.wording import _, n_

MOST_BANNERS: Final = 20
START: Final = "index.html"

_OF_ONE: Final = {
    "content/procedures": "procedures/{}.html",
    "content/instruments": "instruments/{}.html",
    "content/agents": "agents/{}.html",
    "quizzes/observations": "print/observation-{}.html",
}
"""Folders of which each file has a page of its own."""
_OF_ALL: Final = {
    "content/figures": "values.html",
    "content/routes": "routes.html",
    "content/sources.yaml": "sources.html",
    "content/incidents.yaml": "incidents.html",
    "content/words.yaml": "words.html",
}
"""Folders and files that make one page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PageBanners:
    """What each page of a preview says of problems; ``stopped`` when it shows an older edition."""

    by_page: Mapping[str, tuple[BannerView, ...]] = field(default_factory=dict)
    stopped: int = 0

    def on(self, path: str) -> tuple[BannerView, ...]:
        """Return the banners of one page; the very same objects while they say the same."""
        own = self.by_page.get(path, ())
        if not self.stopped or path == START:
            return own
        return (*own, _older(self.stopped, "../" * path.count("/") + START))


NO_BANNERS: Final = PageBanners()


def problem_page(derived: Derived, theme: Theme, problems: Iterable[Placed]) -> str:
    """Return the page that preview shows while there is no good edition to show."""
    spot = Spot(desk=Desk(content=Content(), derived=derived, theme=theme), path=START)
    view = problem_view()
    stops = [each for each in problems if each.problem.stops]
    return theme.page(view, chrome_view(spot, view.title, banners=shown(stops), preview=True))


def page_banners(placed: Iterable[Placed], content: Content, pages: Collection[str]) -> PageBanners:
    """Return what each page says of the problems that it concerns.

    Args:
        placed: the problems; what is waived or only information is left out.
        content: what could be read, to find what a file is about.
        pages: the pages that there are.
    """
    found: dict[str, list[Placed]] = {}
    stopped = 0
    for each in placed:
        problem = each.problem
        if problem.waived_by or problem.level is Level.INFO:
            continue
        stopped += problem.stops
        path = page_of(problem.place, content)
        found.setdefault(path if path in pages else START, []).append(each)
    by_page = {path: shown(several) for path, several in found.items()}
    elsewhere = [
        _elsewhere(path, len(several)) for path, several in sorted(found.items()) if path != START
    ]
    if elsewhere:
        by_page[START] = (*by_page.get(START, ()), *elsewhere)
    return PageBanners(by_page=by_page, stopped=stopped)


def shown(placed: Iterable[Placed]) -> tuple[BannerView, ...]:
    """Return problems as the top of a page shows them, what stops first, and how many more."""
    ordered = sorted(placed, key=lambda each: (not each.problem.stops, each.order))
    banners = [
        _banner(_("To mend") if each.problem.stops else _("To look at"), str(each))
        for each in islice(ordered, MOST_BANNERS)
    ]
    if len(ordered) > MOST_BANNERS:
        more = n_("and one more problem", "and {n} more problems", len(ordered) - MOST_BANNERS)
        banners.append(_banner(_("To mend"), more))
    return tuple(banners)


def page_of(place: Place, content: Content) -> str:
    """Return the path of the page that a place concerns; nothing when it concerns none."""
    folder, _slash, name = place.file.rpartition("/")
    stem = name.rpartition(".")[0]
    if folder in _OF_ONE:
        return _OF_ONE[folder].format(stem)
    if folder == "content/figures" and place.path[:1] == ("choices",):
        return "choices.html"
    if folder == "content/pictures":
        return _page_with_picture(name, content)
    if folder == "quizzes/questions":
        topics = (each.topic for each in content.questions if each.place.file == place.file)
        return f"self-tests/{next(topics, stem)}.html"
    if place.file == "content/handbook.yaml" and place.path[:1] == ("posted",):
        return "print/index.html"
    return _OF_ALL.get(place.file) or _OF_ALL.get(folder, "")


def _page_with_picture(picture: str, content: Content) -> str:
    for name, instrument in content.instruments.items():
        if picture in {instrument.drawing, instrument.assembled}:
            return f"instruments/{name}.html"
    for name, procedure in content.procedures.items():
        if any(step.picture == picture for _stage, step in procedure.steps):
            return f"procedures/{name}.html"
    return ""


@lru_cache(maxsize=4_096)
def _banner(word: str, text: str) -> BannerView:
    return BannerView(kind="problem", word=word, text=plain(text))


@lru_cache(maxsize=256)
def _elsewhere(path: str, number: int) -> BannerView:
    text = n_("1 problem stands on the page", "{n} problems stand on the page", number)
    link = LinkView(text=path, href=path)
    return BannerView(kind="problem", word=_("To mend"), text=plain(text), link=link)


@lru_cache(maxsize=64)
def _older(number: int, start: str) -> BannerView:
    text = n_(
        "1 problem stops the handbook; this is the page as it was before.",
        "{n} problems stop the handbook; this is the page as it was before.",
        number,
    )
    link = LinkView(text=_("See where"), href=start)
    return BannerView(
        kind="problem", word=_("Not what you wrote last"), text=plain(text), link=link
    )
