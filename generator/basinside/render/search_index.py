"""The inverted index of the folder: which word stands at which place, as data for search.html.

A place is an anchor of a page. Sentences that stand at many places (the same step in ten
procedures) are indexed once. The page looks words up by their beginning and knows which words
mean the same (`words.yaml`); this file decides what is found, the script only looks it up.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Final

_WORD = re.compile(r"[^\W_]+(?:[.,]\d+)*")
IN_TITLE: Final = 2
"""Weight of a word of the title; one of the text behind it weighs 1."""
WEIGHTS: Final = 4
"""A posting is ``text * WEIGHTS + weight``, written as the difference from the one before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page that can be found: its address, its name, and what it is (an instrument, a value)."""

    href: str
    name: str
    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A place that can be found.

    ``title`` is what the list of results shows, ``also`` what it is called besides, ``text`` what
    is searched besides; an entry without an anchor stands for its page.
    """

    page: Page
    title: str
    also: str = ""
    text: str = ""
    anchor: str = ""


def folded(text: str) -> list[str]:
    """Return the words of a text as they are looked up: small letters without accents.

    >>> folded("Émail, 0.5 % at 121 °C")
    ['email', '0.5', 'at', '121', 'c']
    """
    plain = unicodedata.normalize("NFKD", text)
    bare = "".join(each for each in plain if not unicodedata.combining(each))
    return _WORD.findall(bare.lower())


def search_index(entries: Iterable[Entry], same: Iterable[tuple[str, ...]]) -> dict[str, Any]:
    """Return the index.

    Args:
        entries: every place, in the order in which equal finds are shown.
        same: groups of words and phrases that mean the same.

    Returns:
        ``pages`` [address, name, kind]; ``texts`` [title, [page, anchor]...]; ``terms`` sorted;
        ``postings`` for each term; ``same`` groups of phrases, each a list of words.
    """
    pages: dict[Page, int] = {}
    texts: dict[tuple[str, str], int] = {}
    places: list[list[list[Any]]] = []
    found: dict[str, dict[int, int]] = {}
    for each in entries:
        page = pages.setdefault(each.page, len(pages))
        text = texts.setdefault((each.title, f"{each.also} {each.text}"), len(texts))
        if text == len(places):
            places.append([])
            for weight, said in ((IN_TITLE, f"{each.title} {each.also}"), (1, each.text)):
                for word in folded(said):
                    found.setdefault(word, {}).setdefault(text, weight)
        places[text].append([page, each.anchor] if each.anchor else [page])
    terms = sorted(found)
    return {
        "pages": [[page.href, page.name, page.kind] for page in pages],
        "texts": [[title, *places[n]] for (title, _text), n in texts.items()],
        "terms": terms,
        "postings": [list(_differences(found[term])) for term in terms],
        "same": [group for group in map(_group, same) if len(group) > 1],
    }


def _differences(found: dict[int, int]) -> Iterator[int]:
    before = 0
    for number in sorted(text * WEIGHTS + weight for text, weight in found.items()):
        yield number - before
        before = number


def _group(phrases: tuple[str, ...]) -> list[list[str]]:
    unique: dict[tuple[str, ...], None] = dict.fromkeys(tuple(folded(each)) for each in phrases)
    return [list(each) for each in unique if each]
