"""Where sentences for readers come from: gettext, with the source language as it is written."""

from __future__ import annotations

import gettext

_catalogue = gettext.NullTranslations()

_ = _catalogue.gettext
"""Return a sentence in the language of the page."""


def later(text: str) -> str:
    """Mark a sentence for translation that is fetched later, when its page is made."""
    return text


def n_(one: str, many: str, number: int) -> str:
    """Return the sentence for a number of things, with ``{n}`` filled in."""
    return _catalogue.ngettext(one, many, number).format(n=number)


def listed(words: list[str] | tuple[str, ...]) -> str:
    """Return words as a list in a sentence: ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return _("{first} and {last}").format(first=", ".join(words[:-1]), last=words[-1])


def sentence(text: str) -> str:
    """Return words with a capital at the beginning."""
    return text[:1].upper() + text[1:]
