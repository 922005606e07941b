"""A mapping whose values are made when somebody first asks for them, and then kept."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import TypeVar

Value = TypeVar("Value")


class OnUse(Mapping[str, Value]):
    """What follows for each of many things, for pages and rules that ask only for some of it.

    Args:
        names: the keys, in their order; no other key is in the mapping.
        make: what makes the value of a key, the same however often it is asked.
    """

    def __init__(self, names: Collection[str], make: Callable[[str], Value]) -> None:
        self._names = names
        self._make = make
        self._made: dict[str, Value] = {}

    def __getitem__(self, name: str) -> Value:
        if name not in self._made:
            if name not in self._names:
                raise KeyError(name)
            self._made[name] = self._make(name)
        return self._made[name]

    def __contains__(self, name: object) -> bool:
        return name in self._names

    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    def __len__(self) -> int:
        return len(self._names)
