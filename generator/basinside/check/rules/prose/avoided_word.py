"""The rule avoided-word."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.inflections import bare
from basinside.check.reading import words_in
from basinside.check.rule import Finding, rule
from basinside.check.strength_words import QUOTED
from basinside.problem import Level


@rule(level=Level.WARN)
def check_avoided_word(checked: Checked) -> Iterator[Finding]:
    """No sentence says what the clinic does not want said: `avoid_words: [sterile soak]`.

    Whole words count, in any form that they take in a sentence (in English), such as sterile soaks.
    What stands in quotation marks is spoken about, and may be said.
    Why: a clinic avoids a word because people here took it for something else.
    Bad: `why: The sterile soak takes longer.`
    Good: `why: The soak in glutaraldehyde takes longer.`
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None or not handbook.avoid_words:
        return
    language = handbook.language.partition("-")[0].casefold()
    avoided = [(each, _bare_words(each, language)) for each in handbook.avoid_words]
    begins = [tuple(word[:-1] or word for word in words) for _, words in avoided if words]
    near = [text for text in checked.reader if _has_any(text.casefold(), begins)]
    saying: dict[str, list[str]] = {}
    for text in near:
        said = _bare_words(QUOTED.sub(" 0 ", text), language)
        for written, words in avoided:
            if words and _holds(said, words):
                saying.setdefault(text, []).append(written)
    for each in checked.prose if saying else ():
        for written in saying.get(each.text, ()):
            yield Finding(
                each.place,
                f"“{written}” stands here, which this clinic avoids",
                "Say it in other words.",
                (each.entry,),
            )


def _has_any(small: str, begins: list[tuple[str, ...]]) -> bool:
    """Return whether a text may say one of them; the last letter of a word may change."""
    return any(each[0] in small and all(begin in small for begin in each) for each in begins)


def _bare_words(text: str, language: str) -> tuple[str, ...]:
    return tuple(bare(word, language) for word in words_in(text.replace("-", " ")))


def _holds(said: tuple[str, ...], sought: tuple[str, ...]) -> bool:
    size = len(sought)
    return any(said[n : n + size] == sought for n in range(len(said) - size + 1))
