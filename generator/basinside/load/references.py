"""Every id that an entry names must name something; a wrong one gets the nearest known."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from itertools import chain
from typing import Any, Final

from basinside.load.entries import CUT_IN_BRACKETS
from basinside.load.mentions import Mention
from basinside.load.named import Named
from basinside.model.content import Content
from basinside.model.words import ALL_LISTS
from basinside.problem import Level, Place, Problem
from basinside.quantity import QuantityError


def reference_problems(
    content: Content,
    named: Iterable[tuple[Named, ...]],
    mentions: Mapping[str, tuple[Mention, ...]],
    unread: Iterable[str] = (),
) -> list[Problem]:
    """Return a problem for every id that names nothing, and for units that do not fit.

    Args:
        content: the model.
        named: the ids that each file names outside prose.
        mentions: file -> the values that its sentences refer to.
        unread: files that could not be read; an id that may stand in one of them is not missed.
    """
    known = _known(content)
    hidden = _Hidden(unread)
    problems: list[Problem] = []
    for each in chain.from_iterable(named):
        if each.kind == "part" and each.id.split("/", 1)[0] not in content.instruments:
            continue  # the instrument is what is missing, and that is said
        if each.id not in known[each.kind] and not hidden.may_hold(each):
            problems.append(_unknown(each, known[each.kind]))
    for file, mentioned in mentions.items():
        for mention in mentioned:
            place = Place(file, (), mention.mark)
            figure = content.figures.get(mention.figure)
            if figure is None:
                missed = Named("value", mention.figure, place)
                if not hidden.may_hold(missed):
                    problems.append(_unknown(missed, known["value"]))
            elif mention.unit:
                try:
                    figure.value.in_unit(mention.unit)
                except QuantityError:
                    kind = figure.value.kind
                    said = f"{mention.figure} is {kind} and cannot be shown in “{mention.unit}”"
                    problems.append(_problem(place, "bad-value", said, f"Name a unit of {kind}"))
    return problems


class _Hidden:
    """Where an id may stand that was not found, because a file could not be read."""

    def __init__(self, unread: Iterable[str]) -> None:
        self.unread = frozenset(unread)
        self.folders = {file.rsplit("/", 1)[0] for file in self.unread}

    def may_hold(self, named: Named) -> bool:
        """Return whether a file that could not be read may hold the id."""
        if not self.unread:
            return False
        own = named.id.split("/", 1)[0]
        for place in _HOMES[named.kind]:
            if place in self.unread or f"{place}/{own}.yaml" in self.unread:
                return True
            if place in _MANY_IN_A_FILE and place in self.folders:
                return True
        return False


def _known(content: Content) -> dict[str, Any]:
    steps = {
        f"{procedure.procedure}/{step.step}"
        for procedure in content.procedures.values()
        for _, step in procedure.steps
    }
    lines = {
        f"{each.observation}/{line.line}"
        for each in content.observations.values()
        for line in each.lines
    }
    handbook = content.handbook
    vessels = {each.vessel for each in handbook.clinic.vessels} if handbook else set()
    contacts = {each.contact for each in handbook.contacts} if handbook else set()
    scopes = set(handbook.scopes) if handbook else set()
    topics = {each.topic for each in content.questions}
    return {
        "value": content.figures,
        "choice": content.choices,
        "source": content.sources,
        "agent": content.agents,
        "chemical or family": set(content.agents) | set(ALL_LISTS["family"]),
        "route": content.routes,
        "equipment": content.equipment,
        "incident": dict.fromkeys(content.incidents),
        "instrument": content.instruments,
        "procedure": content.procedures,
        "part": {
            f"{name}/{part.part}"
            for name, instrument in content.instruments.items()
            for part in instrument.parts
        },
        "step": steps,
        "step or line": steps
        | lines
        | set(content.agents)
        | set(content.incidents)
        | set(content.routes)
        | set(content.instruments)
        | set(content.figures)
        | set(content.choices)
        | set(content.procedures)
        | set(content.equipment),
        "vessel": vessels,
        "contact": contacts,
        "scope or procedure": scopes | set(content.procedures) | {"all"},
        "topic": topics,
        "assessment": content.assessments,
        "item": {asked.item.item for asked in content.items("assessment")},
    }


def _unknown(named: Named, known: Any) -> Problem:
    kind, written = named.kind, named.id
    if kind == "part":
        own, _, written = named.id.partition("/")
        known = [each.removeprefix(f"{own}/") for each in known if each.startswith(f"{own}/")]
    if kind == "step or line":
        kind, sign = _meant(written)
        known = [each for each in known if _meant(each)[1] == sign]
    near = _near(written, known)
    in_list = bool(named.place.path) and isinstance(named.place.path[-1], int)
    if near:
        hint = f"Did you mean “{near[0]}”?"
    elif in_list and not {"-", "/", "."} & set(written):
        hint = CUT_IN_BRACKETS
    else:
        hint = f"Write it {_WRITTEN[kind]}, or name another."
    return _problem(named.place, "unknown-id", f"there is no {kind} “{written}”", hint)


def _near(written: str, known: Any) -> list[str]:
    """Return the id that may have been meant; of steps of one procedure only their own names."""
    own, sign, step = written.partition("/")
    within = [each.removeprefix(f"{own}/") for each in known if each.startswith(f"{own}/")]
    if not sign or not within:
        return difflib.get_close_matches(written, list(known), 1, 0.6)
    return [f"{own}/{each}" for each in difflib.get_close_matches(step, within, 1, 0.6)]


def _meant(written: str) -> tuple[str, str]:
    """Return the kind that an id is of by how it is written, and the sign that says so."""
    if "." in written:
        return "value", "."
    return ("step", "/") if "/" in written else ("entry", "")


def _problem(place: Place, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message, hint=hint)


_PROCEDURES: Final = "content/procedures"
_INSTRUMENTS: Final = "content/instruments"
_FIGURES: Final = "content/figures"
_QUESTIONS: Final = "quizzes/questions"
_HANDBOOK: Final = "content/handbook.yaml"
_EQUIPMENT: Final = "content/equipment.yaml"
_INCIDENTS: Final = "content/incidents.yaml"
_MANY_IN_A_FILE: Final = frozenset({_FIGURES, _QUESTIONS})

_WRITTEN: Final[dict[str, str]] = {
    "value": "in a file of content/figures/",
    "choice": "in a file of content/figures/",
    "source": "in content/sources.yaml",
    "agent": "in content/agents/",
    "chemical or family": "in content/agents/",
    "route": "in content/routes/",
    "equipment": f"in {_EQUIPMENT}",
    "incident": f"in {_INCIDENTS}",
    "instrument": "in content/instruments/",
    "procedure": "in content/procedures/",
    "part": "among the parts of the instrument",
    "step": "in its procedure",
    "entry": "in a file of its kind",
    "vessel": f"among the vessels of {_HANDBOOK}",
    "contact": f"among the contacts of {_HANDBOOK}",
    "scope or procedure": f"among the scopes of {_HANDBOOK}",
    "topic": "in quizzes/questions/",
    "assessment": "in quizzes/assessments/",
    "item": "in a file of quizzes/questions/ that has “pool: assessment”",
}
"""Kind of id -> where an author writes one."""

_HOMES: Final[dict[str, tuple[str, ...]]] = {
    "value": (_FIGURES,),
    "choice": (_FIGURES,),
    "source": ("content/sources.yaml",),
    "agent": ("content/agents",),
    "chemical or family": ("content/agents",),
    "route": ("content/routes",),
    "equipment": (_EQUIPMENT,),
    "incident": (_INCIDENTS,),
    "instrument": (_INSTRUMENTS,),
    "procedure": (_PROCEDURES,),
    "part": (_INSTRUMENTS,),
    "step": (_PROCEDURES,),
    "step or line": (
        _PROCEDURES,
        "quizzes/observations",
        "content/agents",
        "content/routes",
        _INSTRUMENTS,
        _FIGURES,
        _EQUIPMENT,
        _INCIDENTS,
    ),
    "vessel": (_HANDBOOK,),
    "contact": (_HANDBOOK,),
    "scope or procedure": (_HANDBOOK, _PROCEDURES),
    "topic": (_QUESTIONS,),
    "assessment": ("quizzes/assessments",),
    "item": (_QUESTIONS,),
}
"""Kind of id -> the files, or the folders of files named after the id, that may hold it."""
