"""Plain data to a typed entry, and what pydantic objects to in the words of an author."""

from __future__ import annotations

import difflib
import typing
from functools import lru_cache
from typing import Any, Final, TypeVar

from pydantic import BaseModel, ValidationError

from basinside.model.entry import PLACE_KEY
from basinside.problem import Level, Place, Problem

E = TypeVar("E", bound=BaseModel)

MOST_PROBLEMS: Final = 100
"""Problems told of one file; whoever has more has one mistake at the root of them."""
KEY_ITSELF: Final = "[key]"
"""Last word of a location where pydantic objects to a key of a mapping."""
UNION_TAGS: Final = frozenset({"item", "scenario"})
"""Words that pydantic puts into a location where an entry is one of several kinds."""

CUT_IN_BRACKETS: Final = (
    "Inside brackets a comma begins a new entry; did it cut a sentence? Then write one entry to a"
    " line, each after “- ”."
)


def read_entry(model: type[E], data: Any, file: str) -> tuple[E | None, tuple[Problem, ...]]:
    """Return the entry, or every problem of its shape."""
    if not isinstance(data, dict):
        first = next(name for name in model.model_fields if name != "place")
        message = f"the file must hold keys such as “{first}:”"
        return None, (_problem(Place(file), "wrong-shape", message),)
    try:
        return model.model_validate(data), ()
    except ValidationError as error:
        told = error.errors(include_url=False)[:MOST_PROBLEMS]
        found = (_translate(model, data, file, each) for each in told)
        return None, tuple(dict.fromkeys(each for each in found if each is not None))


def _translate(model: type[BaseModel], data: Any, file: str, error: Any) -> Problem | None:
    """Return what pydantic objects to, or None where the reader of YAML said it already."""
    loc = _without_tag(error["loc"])
    if loc[-1:] == (KEY_ITSELF,):  # an id that an author chose, not what stands under it
        place, _, holder = _walk(data, loc[:-1], file)
        given: Any = str(loc[-2])
    else:
        place, given, holder = _walk(data, loc, file)
    kind = error["type"]
    if given is None and kind != "missing":
        return None
    name = next((part for part in reversed(loc) if isinstance(part, str)), "")
    if kind == "extra_forbidden":
        return _problem(place, "unknown-key", *_unknown_key(model, loc, holder))
    if kind == "missing":
        said_already = isinstance(holder, dict) and name in holder
        return None if said_already else _missing(place, name)
    if not isinstance(given, str):
        return _problem(place, "wrong-shape", _wrong_shape(kind, name))
    given = shown(given)
    if kind == "literal_error":
        return _problem(place, "unknown-word", *_unknown_word(given, _allowed(error), name))
    in_list, pattern = isinstance(holder, tuple), error.get("ctx", {}).get("pattern", "")
    if kind == "string_pattern_mismatch":
        return _problem(place, "bad-id", *_bad_pattern(given, pattern, in_list=in_list))
    if kind == "value_error":
        mend = _as_sentence(shown(str(error["ctx"]["error"]), 300))
        return _problem(place, "bad-value", f"{shown(name)} cannot be “{given}”", mend)
    if kind == "string_too_long":
        return _problem(place, "bad-value", f"{name} is longer than a note may be; shorten it")
    if kind == "string_too_short":
        return _problem(place, "bad-value", f"{name} is empty; write something or delete the key")
    return _problem(place, "wrong-shape", _wrong_shape(kind, name))


def shown(written: str, most: int = 80) -> str:
    """Return an author's words as they can stand in a line: one space each, signs, cut short."""
    flat = " ".join("".join(sign if sign.isprintable() else " " for sign in written).split())
    return flat if len(flat) <= most else f"{flat[: most - 1]}…"


def _as_sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + ("" if words.endswith((".", "…")) else ".")


def _missing(place: Place, name: str) -> Problem:
    return _problem(place, "missing-key", f"“{name}” is missing here")


def _without_tag(loc: tuple[Any, ...]) -> tuple[Any, ...]:
    """Return a location without the words for one of several kinds of entry."""
    loc = tuple(each for each in loc if not str(each).startswith(PLACE_KEY))
    if loc[:1] == ("items",) and loc[2:3] and loc[2] in UNION_TAGS:
        return (*loc[:2], *loc[3:])
    return loc


def _walk(data: Any, loc: tuple[Any, ...], file: str) -> tuple[Place, Any, Any]:
    node, holder = data, data
    place: Place = Place(file)
    if isinstance(data, dict):
        place = data.get(PLACE_KEY, place)
    for part in loc:
        holder = node
        if isinstance(node, dict):
            place = node.get(PLACE_KEY, place).at(part)
            node = node.get(part)
        elif isinstance(node, tuple) and isinstance(part, int) and part < len(node):
            place = place.at(part)
            node = node[part]
    return place, node, holder


def _unknown_key(model: type[BaseModel], loc: tuple[Any, ...], holder: Any) -> tuple[str, str]:
    name = str(loc[-1])
    beside = set(holder) - {PLACE_KEY, name} if isinstance(holder, dict) else set()
    known = _models_below(model)
    best = max(known, key=lambda each: (len(_keys_of(each) & beside), each is model))
    near = difflib.get_close_matches(name, sorted(_keys_of(best) - beside), 1, 0.6)
    hint = f"Did you mean “{near[0]}”?" if near else ""
    if not near and isinstance(holder, dict) and isinstance(holder.get(name), str):
        hint = "A sentence with “: ” or a comma inside braces can look like a key."
    return f"there is no key “{shown(name)}” here", hint


def _unknown_word(given: str, allowed: tuple[str, ...], name: str) -> tuple[str, str]:
    near = difflib.get_close_matches(given, allowed, 1, 0.5)
    name = shown(name)
    if near:
        return f"{name}: “{given}” is not a word of the list", f"Did you mean “{near[0]}”?"
    return f"{name}: “{given}” is not one of: {', '.join(allowed)}", ""


def _allowed(error: Any) -> tuple[str, ...]:
    said: str = error["ctx"]["expected"]
    return tuple(part.strip().strip("'\"") for part in said.replace(" or ", ", ").split(", "))


def _bad_pattern(given: str, pattern: str, *, in_list: bool) -> tuple[str, str]:
    if "[0-9]{4}" in pattern:
        return f"“{given}” is no edition; write it as 2026.2", ""
    if "[^,]" in pattern:
        return f"“{given}” is no citation; write a source id, one space and the place, no comma", ""
    if "\\." in pattern:
        said = f"“{given}” is no id of a value; write lower-case words with dots, as boil.hold"
        return said, ""
    if "/" in pattern:
        return f"“{given}” names no step; write procedure/step", ""
    hint = CUT_IN_BRACKETS if in_list and " " in given else ""
    return f"“{given}” is no id; write lower-case words with hyphens", hint


def _wrong_shape(kind: str, name: str) -> str:
    shown = name or "this"
    if kind in {"tuple_type", "too_short", "too_long"}:
        return f"{shown} must be a list: entries with “- ” or in brackets"
    if kind in {"model_type", "model_attributes_type", "dict_type"}:
        return f"{shown} must be keys with values, not a sentence or a list"
    if kind.startswith(("string", "literal")):
        return f"{shown} must be a sentence or a word, not keys or a list"
    return f"{shown} has the wrong shape"


@lru_cache(maxsize=64)
def _models_below(model: type[BaseModel]) -> tuple[type[BaseModel], ...]:
    found: dict[type[BaseModel], None] = {}
    waiting: list[Any] = [model]
    while waiting:
        each = waiting.pop()
        if isinstance(each, type) and typing.get_origin(each) is None:
            if issubclass(each, BaseModel) and each not in found:
                found[each] = None
                waiting.extend(field.annotation for field in each.model_fields.values())
        else:
            waiting.extend(typing.get_args(each))
    return tuple(found)


@lru_cache(maxsize=256)
def _keys_of(model: type[BaseModel]) -> frozenset[str]:
    return frozenset(
        field.alias or name for name, field in model.model_fields.items() if name != "place"
    )


def _problem(place: Place, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message, hint=hint)
