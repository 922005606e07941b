"""What a record can cover: one procedure, or a group that is certified together."""

from __future__ import annotations

from basinside.derive.meanings import scope_digest
from basinside.derive.steps import place_steps
from basinside.model.content import Content
from basinside.model.derived import Policy, Scope
from basinside.model.handbook import PolicyLine


def find_scope(content: Content, scope: str) -> Scope | None:
    """Return a scope by its id, or None when neither a group nor a procedure has it."""
    handbook = content.handbook
    if handbook is not None and scope in handbook.scopes:
        procedures = handbook.scopes[scope]
    elif scope in content.procedures:
        procedures = (scope,)
    else:
        return None
    known = [content.procedures[each] for each in procedures if each in content.procedures]
    wholes = [place_steps(content, each) for each in known]
    return Scope(id=scope, procedures=procedures, digest=scope_digest(content, wholes))


def procedure_scope_digest(content: Content, procedure: str) -> str:
    """Return the scope digest of one procedure, as observation files carry it."""
    return scope_digest(content, [place_steps(content, content.procedures[procedure])])


def policy_for(content: Content, scope: Scope) -> Policy:
    """Return the policy for a scope: read downwards, a later match replaces what it writes.

    A line matches a scope when it names ``all``, the scope itself, or one of its procedures.
    """
    lines: list[PolicyLine] = []
    wanted = {"all", scope.id, *scope.procedures}
    for line in content.handbook.policy if content.handbook else ():
        if wanted.intersection(line.scope):
            lines.append(line)
    out = Policy()
    for line in lines:
        out = Policy(
            knowledge=line.knowledge or out.knowledge,
            after_last_attempt=line.after_last_attempt or out.after_last_attempt,
            practice=line.practice or out.practice,
            lasts=line.lasts or out.lasts,
            lapses_if_not_done_for=line.lapses_if_not_done_for or out.lapses_if_not_done_for,
            way_back=line.way_back or out.way_back,
        )
    return out
