"""Everything that an id may name, and each place that uses it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Final

from basinside.load.named import Named
from basinside.load.owners import Leaf, Owners, leaves, models_below, owned
from basinside.model.content import Content
from basinside.model.entry import Waiver
from basinside.model.prose import references
from basinside.model.use import Meant, Owner, Use
from basinside.problem import Place

_PICTURE_KEYS: Final = frozenset({"picture", "drawing", "assembled"})
_WHOLE_OF: Final = {"procedure": "step", "instrument": "part"}
"""A kind whose parts have ids that begin with its own: what uses a part uses the whole."""
_AT_ITS_BASE: Final = {"chemical": "agent"}
"""What `named` calls a kind where several may stand."""


class Uses:
    """A clinic's ids and what uses each.

    Args:
        content: the model.
        named: the ids that its files name outside sentences.
        rules: the ids of the rules, which waivers name.
    """

    def __init__(
        self,
        content: Content,
        named: Iterable[tuple[Named, ...]],
        rules: Iterable[str],
    ) -> None:
        self._content = content
        self._owners = Owners(content)
        self._leaves = tuple(
            leaf for owner, entry in owned(content) for leaf in leaves(owner, entry)
        )
        self._named: dict[str, dict[Named, None]] = {}
        for each in (one for some in named for one in some):
            for name in {each.id, each.id.partition("/")[0]}:
                self._named.setdefault(name, {})[each] = None
        self._known = _known(content, rules)

    @property
    def known(self) -> Mapping[str, tuple[Meant, ...]]:
        """Every id that can be asked for, with what it names."""
        return self._known

    def meant(self, written: str) -> tuple[Meant, ...]:
        """Return everything that an id names; nothing for one that is none."""
        return self._known.get(written, ())

    def of(self, meant: Meant) -> tuple[Use, ...]:
        """Return every use of one thing, by place."""
        found = [*self._by_name(meant), *self._by_text(meant)]
        if meant.kind == "rule":
            found.extend(self._waivers(meant.id))
        unique: dict[tuple[str, tuple[str | int, ...]], Use] = {}
        for use in found:
            key = (use.place.file, use.place.path)
            first = unique.setdefault(key, use)
            owners = dict.fromkeys((*first.owners, *use.owners))
            unique[key] = first._replace(owners=tuple(owners))
        return tuple(unique.values())

    def _by_name(self, meant: Meant) -> Iterator[Use]:
        inner = _WHOLE_OF.get(meant.kind, "")
        own = Owner(meant.kind, meant.id)
        for named in self._named.get(meant.id, ()):
            kinds = {_AT_ITS_BASE.get(each, each) for each in named.kind.split(" or ")}
            written = "step" in kinds and "line" in kinds
            inside = bool(inner) and inner in kinds and named.id.startswith(f"{meant.id}/")
            if not inside and not (named.id == meant.id and (written or meant.kind in kinds)):
                continue
            for use in self._at(named.place, prose=False):
                if inside and _belongs(use.owners[0], own):
                    continue
                yield use

    def _by_text(self, meant: Meant) -> Iterator[Use]:
        says = _BY_TEXT.get(meant.kind)
        if says is None:
            return
        asked = says(self._content, meant.id)
        for leaf in self._leaves:
            if asked(leaf) and leaf.owner != Owner(meant.kind, meant.id):
                yield Use((leaf.owner,), leaf.role, leaf.place, meant.kind in {"value", "word"})

    def _waivers(self, rule: str) -> Iterator[Use]:
        for owner, entry in owned(self._content):
            for below in models_below(owner, entry):
                if isinstance(below.model, Waiver) and below.model.rule == rule:
                    yield Use((owner,), below.role, below.model.place, prose=False)

    def _at(self, place: Place, *, prose: bool) -> Iterator[Use]:
        found = self._owners.of(place)
        if found:
            yield Use(tuple(owner for owner, _ in found), found[0][1], place, prose)


def _belongs(owner: Owner, whole: Owner) -> bool:
    """Whether an entry is the whole itself or a part of it."""
    return owner == whole or owner.id.startswith(f"{whole.id}/")


def _value_in(_content: Content, name: str) -> Callable[[Leaf], bool]:
    return lambda leaf: (
        "{{" in leaf.text and any(each.figure == name for each in references(leaf.text))
    )


def _picture_in(_content: Content, name: str) -> Callable[[Leaf], bool]:
    return lambda leaf: leaf.text == name and leaf.role[-1] in _PICTURE_KEYS


def _source_in(_content: Content, name: str) -> Callable[[Leaf], bool]:
    return lambda leaf: leaf.role[-1] == "source" and leaf.text.split(" ", 1)[0] == name


def _word_in(content: Content, name: str) -> Callable[[Leaf], bool]:
    entry = content.words[name]
    terms = "|".join(re.escape(each) for each in (entry.word, *entry.also))
    term = re.compile(rf"(?<![\w-])(?:{terms})(?![\w-])", re.IGNORECASE)
    return lambda leaf: bool(term.search(leaf.text))


_BY_TEXT: Final = {
    "value": _value_in,
    "picture": _picture_in,
    "source": _source_in,
    "word": _word_in,
}
"""What is used by what a text says, besides being named."""


def _known(content: Content, rules: Iterable[str]) -> dict[str, tuple[Meant, ...]]:
    """Return what each id names; a part or a step also by its last word alone."""
    out: dict[str, dict[Meant, None]] = {}
    seen: set[Owner] = set()
    for owner, entry in owned(content):
        if owner.kind in {"observation", "standard"} or owner in seen:
            continue  # they have the id of what they are of; a topic has several files
        seen.add(owner)
        meant = Meant(owner.kind, owner.id, entry.place)
        out.setdefault(owner.id, {})[meant] = None
        if owner.kind in {"part", "step", "line"}:
            out.setdefault(owner.id.rpartition("/")[2], {})[meant] = None
    handbook = content.handbook
    for scope in handbook.scopes if handbook else ():
        place = handbook.place.at("scopes", scope) if handbook else None
        out.setdefault(scope, {})[Meant("scope", scope, place)] = None
    for picture in content.pictures:
        place = Place(f"content/pictures/{picture}")
        out.setdefault(picture, {})[Meant("picture", picture, place)] = None
    for rule in rules:
        out.setdefault(rule, {})[Meant("rule", rule, None)] = None
    return {name: tuple(each) for name, each in out.items()}
