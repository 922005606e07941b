"""What the kinds of ids are called, and as what something is used by an entry."""

from __future__ import annotations

from typing import Final

from basinside.model.use import Use
from basinside.render.wording import _, later

KINDS: Final[dict[str, str]] = {
    "value": later("a value"),
    "choice": later("a choice between sources"),
    "source": later("a source"),
    "agent": later("a chemical"),
    "route": later("a route"),
    "equipment": later("equipment"),
    "incident": later("an incident"),
    "word": later("a word of the trade"),
    "instrument": later("an instrument"),
    "part": later("a part of an instrument"),
    "procedure": later("a procedure"),
    "step": later("a step"),
    "line": later("a line to watch"),
    "assessment": later("an assessment"),
    "topic": later("a topic of questions"),
    "item": later("a question"),
    "scenario": later("a situation with questions"),
    "scope": later("a group that is certified together"),
    "vessel": later("a vessel"),
    "contact": later("somebody to ring"),
    "picture": later("a picture"),
    "rule": later("a rule"),
    "handbook": later("the handbook"),
}
"""What each kind of id is called."""

GROUPS: Final[dict[str, str]] = {
    "step": later("Steps"),
    "procedure": later("Procedures"),
    "value": later("Values"),
    "choice": later("Choices"),
    "agent": later("Chemicals"),
    "route": later("Routes"),
    "instrument": later("Instruments"),
    "part": later("Parts of instruments"),
    "equipment": later("Equipment"),
    "incident": later("What to do when something went wrong"),
    "practice": later("Questions for practice"),
    "assessment-item": later("Questions of assessments"),
    "assessment": later("Assessments"),
    "standard": later("What judges expect"),
    "line": later("What observers watch"),
    "handbook": later("The handbook's own card and its policy"),
    "word": later("Words of the trade"),
    "source": later("Sources"),
}
"""Headings, in the order in which they are printed."""

GROUP_OF: Final = {
    "observation": "line",
    "topic": "practice",
    "contact": "handbook",
    "vessel": "handbook",
}
"""Kinds that stand under the heading of another."""

_ROLES: Final[dict[str, str]] = {
    "hold": later("how long it is held"),
    "no_longer_than": later("how long at most"),
    "longest": later("how long it may wait"),
    "wait": later("how long to wait"),
    "strength": later("its strength"),
    "temperature": later("its temperature"),
    "agent": later("its chemical"),
    "in": later("where it is done"),
    "with": later("with what it is done"),
    "needs": later("what must be ready"),
    "choice": later("the choice it follows"),
    "see": later("the procedure it leads to"),
    "picture": later("its picture"),
    "drawing": later("the drawing of its parts"),
    "assembled": later("the drawing of it put together"),
    "do": later("what to do"),
    "wall": later("the line on the wall chart"),
    "why": later("why"),
    "say": later("the caution"),
    "from": later("from when it is timed"),
    "if_interrupted": later("what if it is interrupted"),
    "before": later("what it waits for"),
    "about": later("what it is about"),
    "objective": later("what it is for"),
    "stem": later("the question itself"),
    "situation": later("its situation"),
    "right": later("the right answer"),
    "wrong": later("a wrong answer"),
    "because": later("the reason given"),
    "shows": later("what the answer shows"),
    "accept": later("which answers are accepted"),
    "source": later("where it comes from"),
    "worked_out": later("what it is worked out from"),
    "other_view": later("the other view"),
    "chosen": later("what was chosen"),
    "not_chosen": later("what was not chosen"),
    "means": later("what it means"),
    "survives": later("which routes it survives"),
    "reaches": later("which level a route reaches"),
    "take_apart": later("what comes off"),
    "at_use": later("its state at use"),
    "function_test": later("its function test"),
    "use_limit": later("how many uses"),
    "lubricate": later("how it is lubricated"),
    "keep_moist_with": later("what keeps it moist"),
    "look_alikes": later("what looks like it"),
    "level_decided": later("the level that was decided"),
    "first_aid": later("first aid"),
    "life": later("how long the bath keeps"),
    "stock_life": later("how long the stock keeps"),
    "air_limit": later("how much may be in the air"),
    "strength_check": later("how its strength is checked"),
    "first_minute": later("the first minute"),
    "then": later("what comes then"),
    "within": later("how soon"),
    "contact": later("whom to ring"),
    "has": later("the routes that the clinic has"),
    "cases_per_year": later("cases a year"),
    "ready_reserve": later("the ready reserve"),
    "emergency": later("what to do in an emergency"),
    "posted": later("what hangs on the walls"),
    "scopes": later("who is certified together"),
    "policy": later("the policy"),
    "avoid_words": later("the words to avoid"),
    "blueprint": later("what its forms are made of"),
    "observation": later("what to watch in it"),
    "standard": later("what judges expect of it"),
    "judges": later("a judge's rating"),
    "see_line": later("what to watch"),
    "cues": later("the cues"),
    "waive": later("a waiver"),
    "built_on": later("the event it is built on"),
    "instrument": later("its instrument"),
    "route": later("its route"),
    "vessel": later("its vessel"),
    "parts": later("the parts it covers"),
    "is": later("what it is"),
    "danger": later("its danger"),
}
"""Key -> what an author's sentence calls it; the first of a role that is known here is said."""

_RESTS: Final = {
    "values": later("a value that its key rests on"),
    "steps": later("a step that its key rests on"),
    "orders": later("an order that its key rests on"),
}
_LEADING: Final = frozenset(
    ("hold", "danger", "options", "entries", "number", "pairs", "matters", "accept", "clinic")
)
"""Keys that say less than the one below them, where there is one."""


def role_words(use: Use) -> str:
    """Return as what something is used there: ``how long it is held``."""
    keys = [key for key in use.role if isinstance(key, str)]
    if not keys:
        return ""
    if keys[0] == "rests_on" and len(keys) > 1 and keys[1] in _RESTS:
        return _(_RESTS[keys[1]])
    if keys[0] == "see" and use.owners[0].kind == "line":
        return _(_ROLES["see_line"])
    known = [key for key in keys if key in _ROLES]
    if keys[0] in _LEADING:
        deeper = [key for key in known if key != keys[0]]
        known = deeper or known
    if not known:
        return keys[0].replace("_", " ")
    words = _(_ROLES[known[0]])
    if use.role[0] == "options" and isinstance(use.role[1], int):
        words = _("option {n}, {words}").format(n=use.role[1] + 1, words=words)
    return _("in {words}").format(words=words) if use.prose else words
