"""Where something is used, in the words of those who work there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from basinside.model.content import AskedItem, Content
from basinside.model.procedure import Stage, Step
from basinside.model.prose import Words, read_prose
from basinside.model.use import Meant, Owner, Use
from basinside.quantity import NO_BREAK_SPACE
from basinside.render.use_roles import GROUP_OF, GROUPS, KINDS, role_words
from basinside.render.wording import _, n_


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """One use with the line and column it stands at."""

    use: Use
    line: int
    column: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One thing that an id names, its uses, and what follows for people and paper.

    ``hangs`` are prints that show it and hang somewhere, ``watched`` the safety steps among its
    steps, ``scopes`` who is certified on them.
    """

    meant: Meant
    where: str
    uses: tuple[Used, ...]
    hangs: tuple[str, ...] = ()
    watched: tuple[str, ...] = ()
    scopes: tuple[str, ...] = ()


class UseWords:
    """Words for the uses in one clinic's content."""

    def __init__(self, content: Content) -> None:
        self._content = content
        self._steps: dict[str, tuple[Stage, Step]] = {
            f"{name}/{step.step}": (stage, step)
            for name, procedure in content.procedures.items()
            for stage, step in procedure.steps
        }
        self._items: dict[str, AskedItem] = {each.item.item: each for each in content.items()}

    def lines(self, found: Found) -> list[str]:
        """Return one thing and all its uses, line by line."""
        meant = found.meant
        head = _("{id} is {kind}").format(id=meant.id, kind=_(KINDS[meant.kind]))
        said = self._says(meant)
        where = f" ({found.where})" if found.where else ""
        lines = [head + (f": {said}" if said else "") + where]
        if not found.uses:
            nobody = _("  No waiver names it.") if meant.kind == "rule" else _("  Nothing uses it.")
            return [*lines, nobody]
        count = n_("used once", "used {n} times", len(found.uses))
        lines.append(f"  {count[:1].upper()}{count[1:]}:")
        for group, uses in self._groups(found.uses).items():
            lines.append(f"  {_(GROUPS[group])} ({len(uses)})")
            lines += [f"    {_at(each)}: {self.sentence(each.use)}" for each in uses]
        for heading, names in (
            (_("Shown on paper that hangs"), found.hangs),
            (_("Watched at sign-off, as safety steps"), found.watched),
            (_("Certified in"), found.scopes),
        ):
            if names:
                lines.append(f"  {heading} ({len(names)})")
                lines += [f"    {each}" for each in names]
        return lines

    def data(self, found: Found) -> dict[str, Any]:
        """Return one thing and all its uses for a tool."""
        return {
            "kind": found.meant.kind,
            "id": found.meant.id,
            "where": found.where,
            "count": len(found.uses),
            "uses": [
                {
                    "file": each.use.place.file,
                    "line": each.line,
                    "column": each.column,
                    "group": self._group(each.use.owners[0]),
                    "by": [{"kind": owner.kind, "id": owner.id} for owner in each.use.owners],
                    "role": [str(key) for key in each.use.role],
                    "prose": each.use.prose,
                    "says": self.sentence(each.use),
                }
                for each in found.uses
            ],
            "hangs": list(found.hangs),
            "watched": list(found.watched),
            "scopes": list(found.scopes),
        }

    def sentence(self, use: Use) -> str:
        """Return one use: ``bag-mask-boil/start-timing, disinfection, safety step: how long``."""
        first, *more = use.owners
        shared = _(" (so too {others})").format(others=", ".join(each.id for each in more))
        role = role_words(use)
        return f"{self._owner(first)}{shared if more else ''}" + (f": {role}" if role else "")

    def _owner(self, owner: Owner) -> str:
        if owner.kind == "step" and owner.id in self._steps:
            stage, step = self._steps[owner.id]
            safety = _(", safety step") if step.safety else ""
            return f"{owner.id}, {stage.stage}{safety}"
        if owner.kind == "item" and owner.id in self._items:
            asked = self._items[owner.id]
            return _("{item}, topic {topic}").format(item=owner.id, topic=asked.topic)
        if owner.kind in {"handbook", "vessel", "contact", "observation", "assessment", "standard"}:
            return {
                "handbook": _("the handbook"),
                "vessel": _("vessel {id}"),
                "contact": _("contact {id}"),
                "observation": _("observation of {id}"),
                "assessment": _("assessment {id}"),
                "standard": _("ratings for {id}"),
            }[owner.kind].format(id=owner.id)
        return owner.id

    def _groups(self, uses: Iterable[Used]) -> dict[str, list[Used]]:
        found: dict[str, list[Used]] = {}
        for each in uses:
            found.setdefault(self._group(each.use.owners[0]), []).append(each)
        return {name: found[name] for name in GROUPS if name in found}

    def _group(self, owner: Owner) -> str:
        if owner.kind == "item":
            asked = self._items.get(owner.id)
            return "practice" if asked is None or asked.pool == "practice" else "assessment-item"
        if owner.kind == "scenario":
            pools = {
                each.pool
                for each in self._items.values()
                if each.scenario and each.scenario.scenario == owner.id
            }
            return "practice" if "practice" in pools else "assessment-item"
        return GROUP_OF.get(owner.kind, owner.kind)

    def _settled(self, text: str) -> str:
        """Return a sentence with its values in their places."""
        figures = self._content.figures
        said = "".join(
            span.text
            if isinstance(span, Words)
            else figures[span.figure].value.text()
            if span.figure in figures
            else span.figure
            for span in read_prose(text)
        )
        return said.replace(NO_BREAK_SPACE, " ")

    def _says(self, meant: Meant) -> str:
        """What the thing itself says, in a few words."""
        content, name = self._content, meant.id
        if meant.kind == "value" and name in content.figures:
            figure = content.figures[name]
            return f"{self._settled(figure.is_)}, {self._settled(f'{{{{ {name} }}}}')}"
        if meant.kind == "choice" and name in content.choices:
            return self._settled(content.choices[name].chosen)
        if meant.kind == "step" and name in self._steps:
            return self._settled(self._steps[name][1].do)
        if meant.kind == "item" and name in self._items:
            return self._settled(self._items[name].item.stem)
        named: Mapping[str, Mapping[str, Any]] = {
            "agent": content.agents,
            "route": content.routes,
            "equipment": content.equipment,
            "incident": content.incidents,
            "instrument": content.instruments,
        }
        entry = named.get(meant.kind, {}).get(name)
        if entry is not None:
            return str(entry.name)
        if meant.kind == "source" and name in content.sources:
            source = content.sources[name]
            return f"{source.by}, {source.title}"
        return ""


def _at(used: Used) -> str:
    return f"{used.use.place.file}:{used.line}:{used.column}"


def unknown_id_lines(written: str, near: Sequence[Meant]) -> list[str]:
    """Return that nothing has an id, and the nearest of every kind."""
    if written.endswith((".yaml", ".yml")):
        return [_("“{id}” is a file; ask for an id that stands in it.").format(id=written)]
    if not near:
        return [
            _("Nothing is called “{id}” in this clinic's files.").format(id=written),
            _("A value is asked for as boil.hold, a step as bag-mask-boil/start-timing."),
        ]
    lines = [_("Nothing is called “{id}” here. The nearest:").format(id=written)]
    return [*lines, *(f"  {each.id}, {_(KINDS[each.kind])}" for each in near)]
