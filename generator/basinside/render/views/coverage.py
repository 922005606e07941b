"""The coverage map: each step, what the self-tests ask about it, and whether it is watched.

Only the self-tests stand here. What assessments ask is said to authors alone
(``basinside coverage``).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from basinside.model.content import AskedItem
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.render.view_types import (
    CellView,
    CoverageRowView,
    CoverageTableView,
    CoverageView,
    CoveredView,
    FactView,
    LinkView,
    SpanView,
    plain,
)
from basinside.render.views.self_tests import topic_title
from basinside.render.views.spot import Desk, Spot, fact, present
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, listed, n_, sentence

MOST_TOGETHER: Final = 24
"""Procedures on one page; more have a page each, as a page of 150 kB is slow on an old tablet."""


def coverage_apart(desk: Desk) -> bool:
    """Whether each procedure has a page of its own."""
    return len(desk.content.procedures) > MOST_TOGETHER


def coverage_view(spot: Spot) -> CoverageView:
    """Return the map: all procedures in one table, then each with its steps, or a way to them."""
    apart = coverage_apart(spot.desk)
    covered = [_Covered(spot=spot, name=name) for name in spot.desk.content.procedures]
    return CoverageView(
        title=_("Coverage map"),
        lead=plain(
            _(
                "For each step: which self-test asks about it, and whether it is watched. Where"
                " nothing asks about a safety step, it says “Not asked”."
            )
        ),
        notes=(
            plain(
                _(
                    "“Elsewhere” means: the same sentence stands in another procedure, and a"
                    " self-test asks about it there."
                )
            ),
            plain(_("What the assessments ask is not shown here, so that they stay fair.")),
        )
        if covered
        else (plain(_("No procedure is written yet.")),),
        table=_summary(covered) if covered else None,
        procedures=() if apart else tuple(each.view() for each in covered),
    )


def covered_view(spot: Spot, name: str) -> CoverageView:
    """Return the page of one procedure, where there are too many for one page."""
    covered = _Covered(spot=spot, name=name)
    return CoverageView(
        title=_("Coverage: {title}").format(title=procedure_title(covered.whole)),
        lead=(SpanView(kind="link", text=_("All procedures"), href=spot.link("coverage.html")),),
        notes=(),
        table=None,
        procedures=(covered.view(),),
    )


def covered_by(desk: Desk, name: str) -> tuple[tuple[object, ...], ...]:
    """Return what the page of one procedure is made from: its entries, and items here and there."""
    content = desk.content
    whole = desk.whole(name)
    paths = [name]
    for placed in whole.steps:
        path = f"{name}/{placed.step.step}"
        paths.append(
            path if path in desk.asked_about else desk.asked_sentences.get(placed.step.do, "")
        )
    return (
        (whole.procedure, whole.instrument, content.observations.get(name)),
        tuple(item.item for path in paths for item in desk.asked_about.get(path, ())),
    )


def _summary(covered: Iterable[_Covered]) -> CoverageTableView:
    return CoverageTableView(
        caption=_("All procedures, in numbers"),
        columns=(
            _("Procedure"),
            _("Steps"),
            _("Safety steps"),
            _("Asked about"),
            _("Watched"),
            _("Gaps"),
        ),
        rows=tuple(each.row() for each in covered),
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class _Covered:
    """One procedure and what covers it."""

    spot: Spot
    name: str

    @property
    def whole(self) -> WholeProcedure:
        return self.spot.desk.whole(self.name)

    @cached_property
    def safety(self) -> list[PlacedStep]:
        return [each for each in self.whole.steps if each.step.safety]

    @cached_property
    def watched(self) -> dict[str, int]:
        """The lines of the checklist that are steps, each with its number."""
        lines = self.spot.desk.derived.checklists[self.name].lines
        return {each.line: n for n, each in enumerate(lines, start=1) if each.placed}

    def items(self, placed: PlacedStep) -> tuple[AskedItem, ...]:
        return self.spot.desk.asked_about.get(f"{self.name}/{placed.step.step}", ())

    def other(self, placed: PlacedStep) -> str:
        """Return the like step of another procedure that is asked about, or nothing."""
        return self.spot.desk.asked_sentences.get(placed.step.do, "")

    def row(self) -> CoverageRowView:
        """Return the procedure's line of the summary."""
        here = sum(bool(self.items(each)) for each in self.safety)
        watched = sum(each.step.step in self.watched for each in self.safety)
        gaps = [each for each in self.safety if not self.items(each) and not self.other(each)]
        there = len(self.safety) - here - len(gaps)
        said = _("{n}, {more} elsewhere").format(n=here, more=there) if there else str(here)
        return CoverageRowView(
            name=procedure_title(self.whole),
            href=self.spot.link(f"coverage/{self.name}.html")
            if coverage_apart(self.spot.desk)
            else f"#{self.name}",
            cells=(
                CellView(text=str(len(self.whole.steps))),
                CellView(text=str(len(self.safety))),
                CellView(text=said),
                CellView(text=str(watched))
                if self.spot.desk.watched(self.name)
                else CellView(text=_("Nothing"), gap=True),
                CellView(text=n_("1 not asked", "{n} not asked", len(gaps)), gap=True)
                if gaps
                else CellView(text=_("None")),
            ),
        )

    def view(self) -> CoveredView:
        """Return the procedure with its safety steps and the steps that something asks about."""
        shown = [each for each in self.whole.steps if each.step.safety or self.items(each)]
        rest = len(self.whole.steps) - len(shown)
        return CoveredView(
            anchor=self.name,
            heading=procedure_title(self.whole),
            facts=self._facts(),
            table=CoverageTableView(
                caption=_("Safety steps, and steps that are asked about"),
                columns=(_("Step"), _("Self-test"), _("Watched")),
                rows=tuple(self._step(each) for each in shown),
            )
            if shown
            else None,
            rest=n_(
                "One more step is no safety step, and no self-test asks about it.",
                "{n} more steps are no safety steps, and no self-test asks about them.",
                rest,
            )
            if rest
            else "",
        )

    def _facts(self) -> tuple[FactView, ...]:
        spot, name = self.spot, self.name
        whole = self.spot.desk.asked_about.get(name, ())
        lines = len(spot.desk.derived.checklists[name].lines)
        steps = (
            SpanView(kind="link", text=_("All steps"), href=spot.link(f"procedures/{name}.html")),
        )
        watched = plain(_("Nothing is watched: it has no safety step and no checklist line."))
        if lines:
            safety, more = len(self.watched), lines - len(self.watched)
            parts = (
                n_("one safety step", "{n} safety steps", safety) if safety else "",
                n_("one thing more to see", "{n} things more to see", more) if more else "",
            )
            said = sentence(listed([each for each in parts if each]))
            watched = (
                SpanView(kind="link", text=said, href=spot.link(f"print/observation-{name}.html")),
            )
        asked = tuple(
            span
            for link in self._topics(whole)
            for span in (SpanView(kind="link", text=link.text, href=link.href), *plain(" "))
        )
        return present(
            fact(_("Procedure"), steps),
            fact(_("Checklist"), watched),
            fact(_("Asked about the whole"), asked),
        )

    def _step(self, placed: PlacedStep) -> CoverageRowView:
        step = placed.step
        line = self.watched.get(step.step)
        return CoverageRowView(
            number=str(placed.number),
            name=self.spot.words(step.do),
            href=self.spot.link(f"procedures/{self.name}.html#{step.step}"),
            mark=_("Safety step") if step.safety else "",
            cells=(
                self._asked(placed),
                CellView(text=_("Line {n}").format(n=line) if line else _("No")),
            ),
        )

    def _asked(self, placed: PlacedStep) -> CellView:
        items = self.items(placed)
        if items:
            return CellView(links=self._topics(items))
        other = self.other(placed)
        if other:
            return CellView(
                text=_("Elsewhere:"), links=self._topics(self.spot.desk.asked_about[other])
            )
        return CellView(text=_("Not asked"), gap=True)

    def _topics(self, items: Iterable[AskedItem]) -> tuple[LinkView, ...]:
        """Return the self-tests that ask, each once, leading to its first question."""
        found: dict[str, list[AskedItem]] = {}
        for each in items:
            found.setdefault(each.topic, []).append(each)
        return tuple(
            LinkView(
                text=topic_title(self.spot, topic)
                if len(several) == 1
                else _("{topic} ({n})").format(topic=topic_title(self.spot, topic), n=len(several)),
                href=self.spot.link(f"self-tests/{topic}.html#{several[0].item.item}"),
            )
            for topic, several in found.items()
        )
