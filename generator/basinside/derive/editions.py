"""An edition in the clear, and what changed between two of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from basinside.derive.checklists import line_digests
from basinside.derive.edition_evidence import edition_evidence, pairs_of, scope_changes
from basinside.derive.meanings import (
    procedure_meanings,
    sequence_digest,
    sequence_of,
    step_digest,
)
from basinside.derive.scopes import find_scope, procedure_scope_digest
from basinside.derive.steps import place_steps
from basinside.model.content import Content
from basinside.model.derived import Change, ChangeKind

EDITION_FORMAT = "basinside/edition/1"
WORDING = frozenset({"do", "wall"})


def edition_document(content: Content) -> dict[str, Any]:
    """Return everything that counts in an edition: meanings, sequences, values, choices."""
    handbook = content.handbook
    procedures: dict[str, Any] = {}
    for name in sorted(content.procedures):
        whole = place_steps(content, content.procedures[name])
        meanings = procedure_meanings(content, whole)
        sequence = sequence_of(whole)
        lines = line_digests(content, whole)
        reworded = {
            placed.step.step: placed.step.wording_only.since
            for placed in whole.steps
            if placed.step.wording_only
        }
        procedures[name] = {
            **({"instrument": instrument} if (instrument := whole.procedure.instrument) else {}),
            "sequence": sequence,
            "sequence_digest": sequence_digest(sequence),
            "scope_digest": procedure_scope_digest(content, name),
            "steps": meanings,
            "step_digests": {step: step_digest(meaning) for step, meaning in meanings.items()},
            "lines": lines,
            **({"wording_only_since": reworded} if reworded else {}),
        }
    scopes = {}
    for name in sorted(handbook.scopes) if handbook else ():
        scope = find_scope(content, name)
        if scope is not None:
            scopes[name] = {"procedures": list(scope.procedures), "digest": scope.digest}
    return {
        "format": EDITION_FORMAT,
        "handbook": handbook.handbook if handbook else "",
        "edition": handbook.edition if handbook else "",
        "values": {
            name: {"base": figure.value.base_text(), "shown": figure.value.text(), "is": figure.is_}
            for name, figure in sorted(content.figures.items())
        },
        "choices": {name: choice.chosen for name, choice in sorted(content.choices.items())},
        "procedures": procedures,
        "scopes": scopes,
        **edition_evidence(content),
    }


def differs(old: Mapping[str, Any], new: Mapping[str, Any]) -> bool:
    """Whether two documents of one edition differ in anything that counts."""
    return any(old.get(key) != new.get(key) for key in ("values", "choices", "procedures"))


def compare(old: Mapping[str, Any], new: Mapping[str, Any]) -> tuple[Change, ...]:
    """Return what changed from one edition document to another, values first."""
    changes: list[Change] = []
    for name, before, after in pairs_of(old.get("values", {}), new.get("values", {})):
        if before is None:
            changes.append(Change(kind="value-new", id=name, new=after["shown"]))
        elif after is None:
            changes.append(Change(kind="value-gone", id=name, old=before["shown"]))
        elif before["base"] != after["base"]:
            changes.append(
                Change(kind="value-changed", id=name, old=before["shown"], new=after["shown"])
            )
    for name, before, after in pairs_of(old.get("choices", {}), new.get("choices", {})):
        if before != after:
            kind: ChangeKind = (
                "choice-new"
                if before is None
                else "choice-gone"
                if after is None
                else "choice-changed"
            )
            changes.append(Change(kind=kind, id=name, old=before, new=after))
    for name, before, after in pairs_of(old.get("procedures", {}), new.get("procedures", {})):
        if before is None:
            changes.append(Change(kind="procedure-new", id=name))
        elif after is None:
            changes.append(Change(kind="procedure-gone", id=name))
        else:
            changes.extend(_procedure_changes(name, before, after, str(old.get("edition", ""))))
    return tuple(changes)


def _procedure_changes(
    name: str, old: Mapping[str, Any], new: Mapping[str, Any], old_edition: str
) -> list[Change]:
    changes: list[Change] = []
    reworded = new.get("wording_only_since", {})
    for step, before, after in pairs_of(old["steps"], new["steps"]):
        where = f"{name}/{step}"
        if before is None:
            changes.append(Change(kind="step-new", id=where, safety=bool(after.get("safety"))))
            continue
        if after is None:
            changes.append(Change(kind="step-gone", id=where, safety=bool(before.get("safety"))))
            continue
        members = [key for key, was, now in pairs_of(before, after) if was != now]
        only_words = set(members) <= WORDING and _since(reworded.get(step, ""), old_edition)
        safety = bool(before.get("safety") or after.get("safety"))
        changes.extend(
            Change(
                kind="step-reworded" if only_words else "step-changed",
                id=where,
                member=key,
                old=before.get(key),
                new=after.get(key),
                safety=safety,
            )
            for key in members
        )
    kept_old = [step for _, step in old["sequence"] if step in new["steps"]]
    kept_new = [step for _, step in new["sequence"] if step in old["steps"]]
    stages_old = {step: stage for stage, step in old["sequence"]}
    stages_new = {step: stage for stage, step in new["sequence"]}
    moved_stage = [step for step in kept_old if stages_old[step] != stages_new[step]]
    if kept_old != kept_new or moved_stage:
        changes.append(Change(kind="steps-moved", id=name, old=kept_old, new=kept_new))
    return changes


def _since(since: str, old_edition: str) -> bool:
    return bool(since) and edition_key(since) <= edition_key(old_edition or since)


def edition_key(edition: str) -> tuple[int, int]:
    """Return the order of an edition id: year, then number."""
    year, _, number = edition.partition(".")
    return (int(year) if year.isdigit() else 0, int(number) if number.isdigit() else 0)


def scopes_to_refresh(
    old: Mapping[str, Any], new: Mapping[str, Any], changes: tuple[Change, ...]
) -> dict[str, tuple[str, ...]]:
    """Return, for each scope certified on the old edition, the steps to learn again."""
    counted = [
        each
        for each in changes
        if each.kind in {"step-changed", "step-new", "step-gone", "steps-moved", "procedure-new"}
    ]
    out: dict[str, tuple[str, ...]] = {}
    scopes = {name: each["procedures"] for name, each in old.get("scopes", {}).items()}
    scopes.update({name: [name] for name in old.get("procedures", {})})
    joined = {each.id: tuple(each.new) for each in scope_changes(old, new)}
    for scope, procedures in scopes.items():
        members = set(procedures) | set(new.get("scopes", {}).get(scope, {}).get("procedures", ()))
        steps = [each.id for each in counted if each.id.split("/")[0] in members]
        steps += joined.get(scope, ())
        if steps:
            out[scope] = tuple(dict.fromkeys(steps))
    return out
