"""How many lines a text takes, at most: words are broken into lines by the widths of their letters.

The widths are those of the widest of the usual faces, set narrow as print is; a letter that is not
listed is taken for as wide as its size. Source: advance widths of DejaVu Sans Condensed and its
bold, release 2.37, rounded up to a hundredth of the size.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Final

_REGULAR: Final = {
    25: "'ijl", 27: "IJ", 29: " ,.’‘·\u00a0", 31: "/:;\\|", 32: "f", 33: "-", 36: "()[]t",
    37: "!r²³", 42: '"', 45: "*_`–°", 47: "s“”", 48: "?z", 50: "cç", 51: "L", 52: "F", 53: "k",
    54: "vxy", 55: "PTY", 56: "aeoéèáàö", 57: "Eß", 58: "$0123456789Sbdghnpqu{}ñüµ", 59: "K",
    62: "ABVXZ", 63: "CR", 66: "U", 68: "HN", 70: "DG", 71: "&OQ", 74: "w", 76: "#+<=>^~×±",
    78: "M", 86: "%", 88: "m½", 89: "W", 90: "@—…",
}  # fmt: skip
_BOLD: Final = {
    28: "'", 31: "ijl", 32: " \u00a0", 33: "/\\|", 34: "IJ", 35: ",.’‘·", 36: ":;", 38: "-",
    40: "f²³", 42: "!()[]", 44: "t", 45: "_`r–°", 47: '"', 48: "*", 53: "?z", 54: "csç", 58: "L",
    59: "vxy", 60: "k“”", 61: "aáà", 62: "EFTeoéèö", 63: "$0123456789", 65: "Sbdghnpqu{}ñüß",
    66: "PYZ", 67: "Cµ", 69: "B", 70: "AKRVX", 74: "GU", 75: "D", 76: "#+<=>HN^~×±", 77: "OQ",
    79: "&", 84: "w", 90: "@M—…", 91: "%", 94: "m½", 100: "W",
}  # fmt: skip
WIDTHS: Final = {letter: width for width, letters in _REGULAR.items() for letter in letters}
BOLD_WIDTHS: Final = {letter: width for width, letters in _BOLD.items() for letter in letters}
UNKNOWN: Final = 110
"""Of a letter that is not listed: as wide as its size, and a tenth more."""


@lru_cache(maxsize=20_000)
def width(word: str, *, bold: bool = False) -> int:
    """Return the width of a word in hundredths of its size."""
    table = BOLD_WIDTHS if bold else WIDTHS
    return sum(table.get(letter, UNKNOWN) for letter in word)


def lines_of(widths: Iterable[int], room: int, space: int = WIDTHS[" "]) -> int:
    """Return how many lines words take that are set one after another, each on the first that fits.

    Args:
        widths: the width of each word.
        room: the width of a line, in the same unit.
        space: the width of the space between two words.
    """
    lines, used = 1, -space
    for word in widths:
        if used + space + word <= room:
            used += space + word
            continue
        if used >= 0:
            lines += 1
        over = -(-word // room) - 1  # a word that is longer than a line is broken
        lines += over
        used = word - over * room
    return lines


def text_lines(text: str, room: int, *, bold: bool = False) -> int:
    """Return how many lines a text takes, its words parted by common spaces."""
    table = BOLD_WIDTHS if bold else WIDTHS
    return lines_of((width(word, bold=bold) for word in text.split(" ")), room, table[" "])
