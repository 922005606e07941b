"""Codes that people read aloud, write down and type: words and short symbols.

A phrase, a marking code and a root fingerprint are six words out of 2,048 whose first four
letters differ (66 bits); an opening code is nine symbols (45 bits). Codes are drawn, never chosen.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable
from functools import cache
from importlib import resources
from typing import Final

from basinside.constants import OPENING_CODE_SYMBOLS, PHRASE_WORDS, SLIP_ALPHABET

WORD_BITS: Final = 11
SYMBOL_BITS: Final = 5
TELLING_LETTERS: Final = 4
"""Letters of a word that tell it from every other word of the list."""

RandomBytes = Callable[[int], bytes]


class CodeError(Exception):
    """What was typed is not a code or phrase of ours; the sentence says which part."""


@cache
def word_list() -> tuple[str, ...]:
    """Return our 2,048 words in order."""
    text = resources.files("basinside.seal").joinpath("words.txt").read_text(encoding="ascii")
    return tuple(text.split())


@cache
def _by_telling_letters() -> dict[str, int]:
    return {word[:TELLING_LETTERS]: number for number, word in enumerate(word_list())}


def new_phrase(random_bytes: RandomBytes) -> str:
    """Return six fresh words with spaces between them: 66 bits of ``random_bytes``."""
    return _words(_bits(random_bytes(9), PHRASE_WORDS * WORD_BITS))


def new_opening_code(random_bytes: RandomBytes) -> str:
    """Return nine fresh symbols in three groups, as in ``K7M-2PX-HRA``: 45 bits."""
    number = _bits(random_bytes(6), OPENING_CODE_SYMBOLS * SYMBOL_BITS)
    symbols = "".join(
        SLIP_ALPHABET[number >> SYMBOL_BITS * place & 31]
        for place in reversed(range(OPENING_CODE_SYMBOLS))
    )
    return show_opening_code(symbols)


def show_opening_code(symbols: str) -> str:
    """Return the nine symbols of an opening code in groups of three."""
    return "-".join(symbols[start : start + 3] for start in range(0, len(symbols), 3))


def root_fingerprint(did: str) -> str:
    """Return the six words that stand for a root key.

    They are the first 66 bits of the SHA-256 of its did:key text.
    """
    return _words(_bits(hashlib.sha256(did.encode("utf-8")).digest(), PHRASE_WORDS * WORD_BITS))


def read_phrase(typed: str) -> str:
    """Return a typed phrase as we write it: six whole words, one space between them.

    Capitals, hyphens, commas and extra spaces do not matter, and the first four letters of a word
    are enough. Raises ``CodeError`` naming the word that is not on the list, or the count.
    """
    parts = [part for part in re.split(r"[^a-z]+", typed.casefold()) if part]
    words = [_read_word(part) for part in parts]
    if len(words) != PHRASE_WORDS:
        raise CodeError(f"A phrase has {PHRASE_WORDS} words; this one has {len(words)}.")
    return " ".join(words)


def read_opening_code(typed: str) -> str:
    """Return a typed opening code as its nine symbols, capitals without hyphens.

    Raises ``CodeError`` naming the symbol that no code has, or the count.
    """
    symbols = re.sub(r"[\s\-.–—]+", "", typed).upper()
    for symbol in symbols:
        if symbol not in SLIP_ALPHABET:
            hint = " Codes have no 0, O, 1 or I." if symbol in "0O1I" else ""
            raise CodeError(f'"{symbol}" is in no opening code.{hint}')
    if len(symbols) != OPENING_CODE_SYMBOLS:
        raise CodeError(
            f"An opening code has {OPENING_CODE_SYMBOLS} symbols; this one has {len(symbols)}."
        )
    return symbols


def _read_word(part: str) -> str:
    number = _by_telling_letters().get(part[:TELLING_LETTERS])
    if number is not None:
        word = word_list()[number]
        if word.startswith(part):
            return word
    shown = part if len(part) <= 20 else part[:19] + "…"
    raise CodeError(f'"{shown}" is not a word of our list; look at the phrase again.')


def _bits(data: bytes, count: int) -> int:
    return int.from_bytes(data, "big") >> (len(data) * 8 - count)


def _words(number: int) -> str:
    words = word_list()
    return " ".join(
        words[number >> WORD_BITS * place & 2_047] for place in reversed(range(PHRASE_WORDS))
    )
