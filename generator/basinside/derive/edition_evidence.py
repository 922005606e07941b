"""What an edition rests on besides its steps: bases, sources, assessments, groups; and its changes.

None of it changes what a step means; it is kept so that a later edition can say what changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from basinside.model.content import Content
from basinside.model.derived import Change
from basinside.model.quiz import Assessment

Document = Mapping[str, Any]


def edition_evidence(content: Content) -> dict[str, Any]:
    """Return the bases of values, the sources and what each assessment is made of."""
    return {
        "bases": {
            name: {"basis": figure.basis, **({"source": figure.source} if figure.source else {})}
            for name, figure in sorted(content.figures.items())
        },
        "sources": {
            name: ", ".join(filter(None, (source.by, source.title, source.year)))
            for name, source in sorted(content.sources.items())
        },
        "assessments": {
            name: _assessment(each) for name, each in sorted(content.assessments.items())
        },
    }


def _assessment(assessment: Assessment) -> dict[str, Any]:
    """Return what a candidate is asked for; no question and no key is in it."""
    return {
        "title": assessment.title,
        "version": assessment.version,
        "items": assessment.items,
        "forms": assessment.forms,
        "pass": f"{assessment.pass_.percent} %, critical: {assessment.pass_.critical}",
        "attempts": assessment.attempts,
        **({"minutes": assessment.minutes} if assessment.minutes else {}),
        "topics": {name: f"{share} %" for name, share in assessment.blueprint.topics.items()},
        "at least": {name: f"{share} %" for name, share in assessment.blueprint.at_least.items()},
    }


def compare_evidence(old: Document, new: Document) -> tuple[Change, ...]:
    """Return what changed in bases, sources, assessments and groups, where both sides have them."""
    changes: list[Change] = []
    if None not in (old.get("bases"), new.get("bases")):
        for name, before, after in pairs_of(old["bases"], new["bases"]):
            if before and after and before != after:
                changes.append(Change(kind="basis-changed", id=name, old=before, new=after))
    if None not in (old.get("sources"), new.get("sources")):
        for name, before, after in pairs_of(old["sources"], new["sources"]):
            if before is None:
                changes.append(Change(kind="source-new", id=name, new=after))
            elif after is None:
                changes.append(Change(kind="source-gone", id=name, old=before))
            elif before != after:
                changes.append(Change(kind="source-changed", id=name, old=before, new=after))
    if None not in (old.get("assessments"), new.get("assessments")):
        changes.extend(_assessment_changes(old["assessments"], new["assessments"]))
    changes.extend(scope_changes(old, new))
    return tuple(changes)


def _assessment_changes(old: Document, new: Document) -> list[Change]:
    changes: list[Change] = []
    for name, before, after in pairs_of(old, new):
        if before is None:
            changes.append(Change(kind="assessment-new", id=name))
        elif after is None:
            changes.append(Change(kind="assessment-gone", id=name))
        else:
            changes.extend(
                Change(kind="assessment-changed", id=name, member=key, old=was, new=now)
                for key, was, now in pairs_of(before, after)
                if was != now
            )
    return changes


def scope_changes(old: Document, new: Document) -> tuple[Change, ...]:
    """Return the groups whose procedures are others; ``new`` are those that joined.

    A procedure that is new itself is no news here: it is a change of its own.
    """
    changes = []
    for name, before, after in pairs_of(old.get("scopes", {}), new.get("scopes", {})):
        if before is None or after is None:
            continue
        was, now = before["procedures"], after["procedures"]
        joined = [each for each in now if each not in was and each in old.get("procedures", {})]
        left = [each for each in was if each not in now and each in new.get("procedures", {})]
        if joined or left:
            changes.append(Change(kind="scope-changed", id=name, old=left, new=joined))
    return tuple(changes)


def pairs_of(old: Document, new: Document) -> list[tuple[str, Any, Any]]:
    """Return each name of either side with what it has there; None where it has none."""
    names = dict.fromkeys((*old, *new))
    return [(name, old.get(name), new.get(name)) for name in names]
