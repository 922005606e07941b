"""The pages of a handbook folder: which there are, what each depends on, how each is made."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from basinside.model.content import AskedItem, Content
from basinside.model.derived import Derived, WholeProcedure
from basinside.model.entry import Waiver
from basinside.model.rule_card import RuleCard
from basinside.render.environment import Theme, inline_json
from basinside.render.paper_pages import paper_pages
from basinside.render.problem_pages import NO_BANNERS, PageBanners
from basinside.render.reference_pages import reference_pages, view_about
from basinside.render.views.amounts import amounts_data, amounts_view
from basinside.render.views.chrome import chrome_view, waived_banners
from basinside.render.views.instrument import instrument_view
from basinside.render.views.learning import examine_view, observation_sheet_view, start_view
from basinside.render.views.phrases import page_phrases
from basinside.render.views.procedure import procedure_view
from basinside.render.views.procedure_index import procedure_index_view
from basinside.render.views.search import folder_index, search_view
from basinside.render.views.self_tests import (
    self_test_data,
    self_test_index_view,
    self_test_view,
)
from basinside.render.views.spot import Desk, Spot
from basinside.render.views.timers import timers_data
from basinside.render.views.today import today_view
from basinside.render.views.today_data import today_data
from basinside.render.wording import _

SEARCH_INDEX = "assets/search-index.js"

RestsOn = tuple[tuple[object, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PageMaker:
    """A file of the folder: ``rests_on`` are groups of the very objects it is made from.

    When all of them are the same objects as last time, the page need not be made again.
    """

    path: str
    rests_on: RestsOn
    make: Callable[[], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Folder:
    """What a folder is made of besides the model.

    ``rules`` are the tables by which its page examines records, ``rule_cards`` the rules that
    the check holds it to.
    """

    content: Content
    derived: Derived
    theme: Theme
    trust: Mapping[str, Any] | None = None
    rules: Mapping[str, Any] | None = None
    rule_cards: tuple[RuleCard, ...] = ()
    banners: PageBanners = NO_BANNERS
    preview: bool = False


def pages(folder: Folder) -> Iterator[PageMaker]:
    """Yield every page of a handbook folder, in a fixed order."""
    book = _Book(folder)
    yield book.page(
        "index.html",
        start_view,
        panel=True,
        data=lambda _spot: page_phrases("capability"),
        rests_on=(book.everything, folder.content.questions),
    )
    yield from _instruments(book)
    yield from _procedures(book)
    yield from _today(book)
    if folder.content.handbook:
        yield book.page(
            "amounts.html",
            amounts_view,
            section="amounts",
            data=amounts_data,
            rests_on=(book.everything,),
        )
    yield from paper_pages(book.desk, book.page, book.everything)
    yield from _self_tests(book)
    yield from reference_pages(book.desk, book.page, book.everything)
    yield book.page(
        "examine.html",
        examine_view,
        section="examine",
        data=lambda _spot: {
            "trust": folder.trust,
            "examine": folder.rules,
            **page_phrases("examine"),
        },
        rests_on=((folder.trust,),),
    )
    yield from _search(book)
    yield PageMaker(
        path="store.html", rests_on=(book.shared,), make=lambda: _store(folder, book.desk)
    )


class _Book:
    """What the pages of one folder share while they are listed."""

    def __init__(self, folder: Folder) -> None:
        content = folder.content
        self.folder = folder
        self.content = content
        self.desk = Desk(
            content=content,
            derived=folder.derived,
            theme=folder.theme,
            rule_cards=folder.rule_cards,
        )
        self.shared = (
            folder.theme,
            bool(content.procedures),  # what the navigation names
            bool(self.desk.practice_topics),
            self.desk.has_ways,
            *_shared(content),
        )
        self.everything = (*content.procedures.values(), *content.instruments.values())

    def page(
        self,
        path: str,
        view_of: Callable[[Spot], Any],
        *,
        section: str = "",
        data: Callable[[Spot], dict[str, Any]] | None = None,
        panel: bool = False,
        more_scripts: tuple[str, ...] = (),
        waived: tuple[Waiver, ...] = (),
        rests_on: RestsOn = (),
    ) -> PageMaker:
        """Return one page, which is made when it is asked for."""
        folder = self.folder
        problems = folder.banners.on(path)

        def make() -> str:
            spot = Spot(desk=self.desk, path=path)
            view = view_of(spot)
            timers = _shows_timers(path)
            chrome = chrome_view(
                spot,
                view.title,
                section=section,
                data=_with_phrases(data(spot) if data else {}, timers=timers),
                banners=(*problems, *waived_banners(spot, waived)),
                panel=panel,
                more_scripts=more_scripts,
                timers=timers,
                preview=folder.preview,
            )
            return folder.theme.page(view, chrome)

        return PageMaker(path=path, rests_on=(self.shared, problems, *rests_on), make=make)


def _instruments(book: _Book) -> Iterator[PageMaker]:
    content = book.content
    for name, instrument in content.instruments.items():
        yield book.page(
            f"instruments/{name}.html",
            view_about(instrument_view, instrument),
            section="procedures",
            rests_on=(
                (
                    instrument,
                    *(content.procedures[each] for each in book.desk.procedures_of(name)),
                    *(content.instruments.get(each.instrument) for each in instrument.look_alikes),
                ),
            ),
        )


def _procedures(book: _Book) -> Iterator[PageMaker]:
    content = book.content
    about = _files_about(content)
    for name, procedure in content.procedures.items():
        instrument = content.instrument_of(procedure)
        observation = content.observations.get(name)
        led_to = {step.see for _stage, step in procedure.steps if step.see}
        beside = book.desk.procedures_of(instrument.instrument) if instrument else ()
        alike = instrument.look_alikes if instrument else ()
        yield book.page(
            f"procedures/{name}.html",
            view_about(procedure_view, book.desk.whole(name)),
            section="procedures",
            data=partial(_timers_json, book.desk.whole(name)),
            rests_on=(
                (procedure, instrument, observation, *about.get(name, ())),
                tuple(content.procedures.get(each) for each in (*sorted(led_to), *beside)),
                tuple(content.instruments.get(each.instrument) for each in alike),
            ),
        )
        if not book.desk.watched(name):
            continue
        yield book.page(
            f"print/observation-{name}.html",
            view_about(observation_sheet_view, book.folder.derived.checklists[name]),
            section="procedures",
            waived=observation.waive if observation else (),
            rests_on=((procedure, instrument, observation),),
        )
    if content.procedures:
        yield book.page(
            "procedures/index.html",
            procedure_index_view,
            section="procedures",
            rests_on=(book.everything, tuple(content.observations.values())),
        )


def _today(book: _Book) -> Iterator[PageMaker]:
    if book.desk.has_ways:
        yield book.page(
            "today.html",
            today_view,
            section="today",
            data=lambda spot: {"today": today_data(spot), **page_phrases("today")},
            rests_on=(book.everything,),
        )


def _self_tests(book: _Book) -> Iterator[PageMaker]:
    content = book.content
    topics = book.desk.practice_topics
    names = tuple(topics)
    for topic, asked in topics.items():
        yield book.page(
            f"self-tests/{topic}.html",
            view_about(self_test_view, topic, asked),
            section="self-tests",
            waived=tuple(waiver for each in asked for waiver in each.item.waive),
            data=partial(_self_test_json, topic, asked),
            rests_on=(tuple(each.item for each in asked), names, _led_back_to(content, asked)),
        )
    if topics:
        yield book.page(
            "self-tests/index.html",
            self_test_index_view,
            section="self-tests",
            rests_on=(content.questions,),
        )


def _search(book: _Book) -> Iterator[PageMaker]:
    """Yield the page that finds, and its index as a script that no other page waits for."""
    desk = book.desk
    yield book.page(
        "search.html",
        search_view,
        section="search",
        data=lambda _spot: page_phrases("search"),
        more_scripts=(SEARCH_INDEX,),
    )
    yield PageMaker(
        path=SEARCH_INDEX,
        rests_on=(book.shared, book.everything, book.content.questions),
        make=lambda: _index_script(Spot(desk=desk, path="search.html")),
    )


def _index_script(spot: Spot) -> str:
    return f"Basinside.searchIndex = {inline_json(folder_index(spot))};\n"


def _shows_timers(path: str) -> bool:
    """Whether staff may be on a page while a time runs: not on paper, not at a visitor's record."""
    return not path.startswith("print/") and path != "examine.html"


def _with_phrases(data: dict[str, Any], *, timers: bool) -> dict[str, Any]:
    """Return a page's data, with the words of the times that run where they are shown."""
    if not timers:
        return data
    return {**data, "phrases": {**data.get("phrases", {}), **page_phrases("timer")["phrases"]}}


def _self_test_json(topic: str, asked: list[AskedItem], spot: Spot) -> dict[str, Any]:
    return {
        "self-test": self_test_data(spot, topic, asked),
        **page_phrases("self-test", "staff-code", "save"),
    }


def _timers_json(whole: WholeProcedure, spot: Spot) -> dict[str, Any]:
    return {"timers": timers_data(spot, whole)}


def _store(folder: Folder, desk: Desk) -> str:
    spot = Spot(desk=desk, path="store.html")
    chrome = chrome_view(spot, _("Drafts"), script="assets/store.js", preview=folder.preview)
    return folder.theme.store_page(chrome)


def _shared(content: Content) -> tuple[object, ...]:
    """Return what every page may rest on: the handbook, values, sources, words, pictures."""
    return (
        content.handbook,
        *content.figures.values(),
        *content.choices.values(),
        *content.sources.values(),
        *content.routes.values(),
        *content.agents.values(),
        *content.equipment.values(),
        *content.incidents.values(),
        *content.words.values(),
        *content.pictures.values(),
    )


def _files_about(content: Content) -> dict[str, list[object]]:
    """Return, for each procedure, the practice items about it."""
    about: dict[str, list[object]] = {}
    for asked in content.items("practice"):
        for each in asked.item.about:
            about.setdefault(each.split("/")[0], []).append(asked.item)
    return about


def _led_back_to(content: Content, asked: list[AskedItem]) -> tuple[object, ...]:
    """Return what a self-test's links name: procedures by title and step, and instruments."""
    about = dict.fromkeys(each.partition("/")[0] for one in asked for each in one.item.about)
    procedures = [content.procedures[name] for name in about if name in content.procedures]
    return (
        *procedures,
        *(content.instrument_of(each) for each in procedures),
        *(content.instruments.get(name) for name in about),
    )


def assets(theme: Theme) -> dict[str, str]:
    """Return the style sheet and the script, by path."""
    return {
        "assets/basinside.css": theme.stylesheet(),
        "assets/basinside.js": theme.script("js/order.txt"),
        "assets/store.js": theme.script("js/store_order.txt"),
    }
