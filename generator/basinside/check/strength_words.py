"""Words about the strength of chlorine that can be read in two ways, by language.

Signs that every language shares stand in `RATIO` and `DEGREES`. A language without a list is
judged by those alone. What stands in quotation marks is spoken about, and is not looked at.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

QUOTED: Final = re.compile(r"“[^”]*”|«[^»]*»|\"[^\"]*\"")
RATIO: Final = re.compile(
    r"(?<![\d:.,])1 ?: ?(?:[2-9]|[1-9]\d{1,4})(?![\d:])(?! ?(?:h|am|pm|o['’]clock)\b)"
)
"""One to so many, as in 1:10; a clock time before noon is written 01:30."""
DEGREES: Final = re.compile(r"° ?chl", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class StrengthWords:
    """What a language calls it.

    ``degrees``: degrees of chlorine, in which ``degree`` always stands. ``product``: a per cent of
    a product instead of what is available in it. ``available``: the words that make a strength
    exact. ``added``: so much to a litre of water, which may be added to a whole one. ``made_up``:
    says that it is not.
    """

    degree: str
    degrees: re.Pattern[str]
    product: re.Pattern[str]
    available: re.Pattern[str]
    added: re.Pattern[str]
    made_up: re.Pattern[str]


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


def _product(names: str) -> re.Pattern[str]:
    return _words(
        rf"\d ?% (?:of )?(?:\w+ )?(?:{names})\b|\b(?:{names})\b[^.;]{{0,12}}?\d+(?:[.,]\d+)? ?%"
    )


STRENGTH_WORDS: Final[dict[str, StrengthWords]] = {
    "en": StrengthWords(
        degree="egree",
        degrees=_words(r"\bdegrees? (?:of )?chlor\w+|\bchloro?metric degrees?"),
        product=_product("bleach|hypochlorite|chlorine"),
        available=_words(r"\bavailable chlorine\b"),
        added=_words(
            r"\b(?:to|in|into|with|per) (?:(?:a|one|each|every|1) )?(?:whole )?lit(?:re|er)"
            r" of (?:\w+ )?water\b"
        ),
        made_up=_words(r"\b(?:made|filled|topped) up\b|\bfill\w* (?:up )?to\b|\bup to\b"),
    ),
    "fr": StrengthWords(
        degree="egré",
        degrees=_words(r"\bdegrés? (?:de )?chlor\w+"),
        product=_product("javel|hypochlorite|chlore"),
        available=_words(r"\bchlore (?:actif|disponible)\b"),
        added=_words(r"\b(?:à|dans|par) (?:(?:un|chaque|1) )?litre d['’]eau\b"),
        made_up=_words(r"\bcompl[ée]t\w+|\bjusqu['’]à\b"),
    ),
    "es": StrengthWords(
        degree="rado",
        degrees=_words(r"\bgrados? (?:de )?clor\w+"),
        product=_product("lejía|hipoclorito|cloro"),
        available=_words(r"\bcloro (?:activo|disponible)\b"),
        added=_words(r"\b(?:a|en|por) (?:(?:un|cada|1) )?litro de agua\b"),
        made_up=_words(r"\bcomplet\w+|\bhasta\b"),
    ),
}
"""Language, without its region -> its words."""
