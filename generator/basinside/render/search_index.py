"""The inverted index of the folder: which word stands at which place, as data for search.html.

A place is an anchor of a page. Sentences that stand at many places (the same step in ten
procedures) are indexed once, and so is a title that stands above many texts. The page looks words
up by their beginning and knows which words mean the same (`words.yaml`); this file decides what
is found, the script only looks it up.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

_WORD = re.compile(r"[^\W_]+(?:[.,]\d+)*")


class _Bare(dict[int, int | None]):
    """Letters without the accents that follow them, for `str.translate`; filled as they come."""

    def __missing__(self, letter: int) -> int | None:
        self[letter] = None if unicodedata.combining(chr(letter)) else letter
        return self[letter]


_BARE = _Bare()


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
    if not text.isascii():
        text = unicodedata.normalize("NFKD", text).translate(_BARE)
    return _WORD.findall(text.lower())


def search_index(entries: Iterable[Entry], same: Iterable[tuple[str, ...]]) -> dict[str, Any]:
    """Return the index.

    Args:
        entries: every place, in the order in which equal finds are shown.
        same: groups of words and phrases that mean the same.

    Returns:
        ``pages`` [address, name, kind]; ``titles``; ``texts`` [title, [page, anchor]...]; ``terms``
        sorted; for each term ``in_titles`` and ``in_texts``, the numbers of the titles and of the
        texts under another title that have it, each as the difference from the one before;
        ``same`` groups of phrases, each a list of words.
    """
    pages: dict[Page, int] = {}
    titles: dict[tuple[str, str], int] = {}
    texts: dict[tuple[int, str], int] = {}
    places: list[list[list[Any]]] = []
    named: list[tuple[str, ...]] = []
    in_titles, in_texts = _Rising(), _Rising()
    for each in entries:
        page = pages.setdefault(each.page, len(pages))
        title = titles.setdefault((each.title, each.also), len(titles))
        if title == len(named):
            named.append(tuple(set(folded(f"{each.title} {each.also}"))))
            in_titles.add(named[title], title)
        text = texts.setdefault((title, each.text), len(texts))
        if text == len(places):
            places.append([])
            in_texts.add(set(folded(each.text)).difference(named[title]), text)
        places[text].append([page, each.anchor] if each.anchor else [page])
    terms = sorted(in_titles.differences.keys() | in_texts.differences.keys())
    return {
        "pages": [[page.href, page.name, page.kind] for page in pages],
        "titles": [title for title, _also in titles],
        "texts": [[title, *places[n]] for (title, _text), n in texts.items()],
        "terms": terms,
        "in_titles": [in_titles.differences.get(term, []) for term in terms],
        "in_texts": [in_texts.differences.get(term, []) for term in terms],
        "same": [group for group in map(_group, same) if len(group) > 1],
    }


class _Rising:
    """Words to rising numbers, kept as the difference of each from the one before.

    Most differences are small, and a small number takes no room of its own.
    """

    def __init__(self) -> None:
        self.differences: dict[str, list[int]] = {}
        self._last: dict[str, int] = {}

    def add(self, words: Iterable[str], number: int) -> None:
        """Add a number, which is greater than all before, to each of the words."""
        for word in words:
            self.differences.setdefault(word, []).append(number - self._last.get(word, 0))
            self._last[word] = number


def _group(phrases: tuple[str, ...]) -> list[list[str]]:
    unique: dict[tuple[str, ...], None] = dict.fromkeys(tuple(folded(each)) for each in phrases)
    return [list(each) for each in unique if each]
