"""How far a handbook can be relied on: what is asked and watched, rules, waivers, what is due."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.text import FactView, LinkView, PastView, Prose, WaiverView


@dataclass(frozen=True, slots=True, kw_only=True)
class CellView:
    """One cell: words, ways on, or a gap, which is said in words too."""

    text: str = ""
    links: tuple[LinkView, ...] = ()
    gap: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverageRowView:
    """A procedure or a step: where it stands, and what is asked and watched of it."""

    number: str = ""
    name: str
    href: str
    mark: str = ""
    cells: tuple[CellView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverageTableView:
    """Rows under columns; the first column is the one the rows are named in."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[CoverageRowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveredView:
    """One procedure of the map: what is said of it as a whole, its steps, and how many more."""

    anchor: str
    heading: str
    facts: tuple[FactView, ...]
    table: CoverageTableView | None = None
    rest: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverageView:
    """``coverage.html``: steps by self-test questions and by what is watched."""

    title: str
    lead: Prose
    notes: tuple[Prose, ...]
    table: CoverageTableView | None
    procedures: tuple[CoveredView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleLineView:
    """A rule in the list of all."""

    link: LinkView
    level: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleListView:
    """The rules of one group, in their order."""

    link: LinkView
    rules: tuple[RuleLineView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RulesView:
    """``rules/index.html``: every rule in force."""

    title: str
    lead: Prose
    levels: tuple[FactView, ...]
    groups: tuple[RuleListView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleView:
    """The page of one rule."""

    anchor: str
    level: str
    says: Prose
    more: Prose
    facts: tuple[FactView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleGroupView:
    """``rules/GROUP.html``: the pages of the rules of one group."""

    title: str
    lead: Prose
    back: LinkView
    rules: tuple[RuleView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WaiversView:
    """``waivers.html``: every waiver, or that there is none."""

    title: str
    lead: Prose
    notes: tuple[Prose, ...]
    waivers: tuple[WaiverView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DueRowView:
    """Something that is due on a day; ``several`` are what it is about, when it is about many."""

    past: PastView
    what: LinkView
    note: Prose = ()
    several_label: str = ""
    several: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DueDayView:
    """What is due on one day."""

    day: str
    machine: str
    rows: tuple[DueRowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DueView:
    """``due.html``: every day that somebody has to look at something again, in order."""

    title: str
    lead: Prose
    notes: tuple[Prose, ...]
    days: tuple[DueDayView, ...]
    undated_heading: str = ""
    undated_lead: Prose = ()
    undated: tuple[LinkView, ...] = ()
