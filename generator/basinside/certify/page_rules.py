"""What the page that examines records needs from here, as data for its inline JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from basinside.constants import NAMESPACE
from basinside.model.record import RECORD_CONTEXT, CompletionRecord
from basinside.model.trust_list import TrustList

_SAID_ONLY = frozenset({"title", "description"})


def page_rules(words: Sequence[str]) -> dict[str, object]:
    """Return the rules by which the page's script examines, so that it repeats none of them.

    Args:
        words: the 2,048 words of phrases and fingerprints, in order.

    Returns:
        ``context`` of every record, ``namespace`` of record ids, ``words``, and the shapes of a
        ``record`` and of a ``trust`` list as JSON Schema (2020-12).
    """
    return {
        "context": list(RECORD_CONTEXT),
        "namespace": str(NAMESPACE),
        "words": list(words),
        "record": _bare(CompletionRecord.model_json_schema(by_alias=True)),
        "trust": _bare(TrustList.model_json_schema(by_alias=True)),
    }


def _bare(schema: dict[str, Any]) -> dict[str, Any]:
    """A schema without the words that say nothing to a program."""
    return {
        key: _properties(each) if key in {"properties", "$defs"} else _inside(each)
        for key, each in schema.items()
        if key not in _SAID_ONLY
    }


def _properties(named: dict[str, Any]) -> dict[str, Any]:
    return {name: _bare(each) for name, each in named.items()}


def _inside(value: Any) -> Any:
    if isinstance(value, dict):
        return _bare(value)
    if isinstance(value, list):
        return [_inside(each) for each in value]
    return value
