"""The words that rules about items look for, by language.

A language without a list has none: its items are judged by what is not words. A list is written
for one language by somebody who reads it well; it is no translation of another.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property
from typing import Final

Words = frozenset[str]


@dataclass(frozen=True, kw_only=True)
class ItemWords:
    """What a language's items say when they give a key away or say nothing, all in small letters.

    ``names_others``: an option that speaks of other options. ``names_others_with``: one of these
    words is in it whenever it does. ``none_of_these``: one that speaks of all of them without
    naming any, always with one of ``none_of_these_with``. ``harmless``: phrases in which a word of
    ``absolutes`` claims nothing. ``counts``: numbers in words. ``asks_for``: a request for so many
    options, the number being its first group. ``opinion``: asks what somebody thinks, or jokes,
    always with one of ``opinion_with``. ``colour_alone``: tells a thing by one of the
    ``colours``. ``here``: says that the question is about this clinic. ``not_seen``: what a person
    has inside, where nobody can look.
    ``before_vowel``, ``before_other``: the last word of a stem that must fit an option's sound.
    ``endings``: of words, taken off to compare them; the longest first. ``ranges``: how less than,
    at most, more than and at least are said before a number; ``after_ranges`` behind one;
    ``to`` stands between two. ``doing``: how a word for what is being done ends; ``not_doing``:
    others that end so.
    """

    names_others: re.Pattern[str]
    names_others_with: Words
    none_of_these: re.Pattern[str]
    none_of_these_with: Words
    negatives: Words
    absolutes: Words
    harmless: re.Pattern[str]
    vague: Words
    empty: Words
    counts: dict[str, int]
    asks_for: re.Pattern[str]
    opinion_with: Words
    opinion: re.Pattern[str]
    colours: Words
    colour_alone: re.Pattern[str]
    here: re.Pattern[str]
    not_seen: re.Pattern[str]
    before_vowel: Words
    before_other: Words
    vowels: str
    truths: Words
    falsehoods: Words
    endings: tuple[str, ...]
    ranges: dict[str, str]
    after_ranges: dict[str, str]
    to: re.Pattern[str]
    doing: str
    not_doing: Words

    @cached_property
    def looked_for(self) -> Words:
        """Every word without which none of the rules about words has anything to say."""
        return (
            self.names_others_with
            | self.none_of_these_with
            | self.negatives
            | self.absolutes
            | self.vague
            | self.colours
            | self.opinion_with
        )


def _any(*phrases: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{'|'.join(phrases)})(?!\w)", re.IGNORECASE)


_COUNTS: Final = {"two": 2, "three": 3, "four": 4, "five": 5, "2": 2, "3": 3, "4": 4, "5": 5}

_COLOURS: Final = "red|green|blue|yellow|orange|white|black|grey|gray|brown|purple|pink"

_ENGLISH: Final = ItemWords(
    names_others=_any(
        "(?:all|none|both|any|neither|either|two) of the (?:above|below|options|answers)",
        "(?:both|neither|either|only)? ?[a-f] (?:and|or|nor) [a-f]",
        "(?:option|answer)s? [a-f]",
        "the (?:first|second|third|last|other) (?:option|answer)s?",
    ),
    names_others_with=frozenset("above below option options answer answers b c d e f".split()),
    none_of_these=_any("(?:none|all|any|neither|both) of (?:these|them|those)", "none", "all"),
    none_of_these_with=frozenset("none all any neither both".split()),
    negatives=frozenset("not no except never least without incorrect cannot nor neither".split())
    | frozenset(
        f"{word}{sign}t"
        for word in "don doesn isn aren can won mustn shouldn didn".split()
        for sign in "'’"
    ),
    absolutes=frozenset("always never only all none every must".split()),
    harmless=_any("(?:not )?at all", "above all", "all right", "all the same"),
    vague=frozenset("usually often sometimes mostly generally frequently rarely".split()),
    empty=frozenset(
        "about above after again along already among another because before behind being below"
        " beside between could doing during every first have having other others should since"
        " something still their there these thing things those through under until where whether"
        " which while whose would comes goes takes makes happens needs right wrong next what when"
        " does your with from into that this they them then than".split()
    ),
    counts=_COUNTS,
    asks_for=_any(
        rf"(?:choose|select|mark|tick|pick|name|which|what)(?: the| these| any)?"
        rf" ({'|'.join(_COUNTS)})"
        r"(?= (?:of|are|things|options|answers|steps|signs|reasons|faults)\b|[.?:])"
    ),
    opinion_with=frozenset("you your would just kidding haha".split()),
    opinion=_any(
        "do you (?:think|feel|believe|like|prefer)",
        "in your (?:opinion|view)",
        "what would you rather",
        "just kidding",
        "haha",
    ),
    colours=frozenset(_COLOURS.split("|")),
    colour_alone=_any(
        f"the (?:{_COLOURS}) (?:ones?|parts?|lines?|boxe?s?|arrows?|dots?|marks?|areas?)",
        f"(?:shown|marked|printed|drawn) in (?:{_COLOURS})",
    ),
    here=_any("here", "in this clinic", "our", "ours", "this clinic's", "this clinic"),
    not_seen=_any(
        "(?:knows?|knew|understands?|understood|appreciates?|believes?|thinks?|remembers?|realises?"
        "|realizes?|intends?|recognises?|recognizes?|feels? (?:sure|confident|safe))",
        "(?:is|are|becomes?|seems?) (?:aware|sure|confident|familiar|convinced|motivated)",
        "has (?:a|the) (?:right|good) (?:attitude|understanding)",
    ),
    before_vowel=frozenset({"an"}),
    before_other=frozenset({"a"}),
    vowels="aeiou",
    truths=frozenset({"true", "yes", "right", "correct"}),
    falsehoods=frozenset({"false", "no", "wrong", "incorrect"}),
    endings=("nesses", "ness", "ings", "ing", "ers", "er", "ed", "es", "ly", "s", "e"),
    ranges={
        "less than": "<",
        "fewer than": "<",
        "under": "<",
        "below": "<",
        "at most": "<=",
        "up to": "<=",
        "no more than": "<=",
        "more than": ">",
        "over": ">",
        "above": ">",
        "at least": ">=",
        "no less than": ">=",
        "from": ">=",
    },
    after_ranges={"or less": "<=", "or fewer": "<=", "or more": ">=", "or longer": ">="},
    to=re.compile(r"\s+to\s+|\s*–\s*|(?<=[0-9])-(?=[0-9])"),
    doing="ing",
    not_doing=frozenset("nothing something anything everything ring bring during".split()),
)

ITEM_WORDS: Final[dict[str, ItemWords]] = {"en": _ENGLISH}
"""Language, without its region -> its words."""
