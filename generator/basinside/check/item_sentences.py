"""Every sentence of the items as it stands in their files: stories, wrong options, reasons.

None of them is the clinic's own say; what is right, and why, is told by `sentences` besides.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.sentences import Sentence
from basinside.model.content import Content
from basinside.model.entry import Entry
from basinside.model.quiz import Item, QuestionFile, Scenario

_ASKED: Final = frozenset({"situation", "stem", "right", "wrong"})
_PAIRS: Final = "pairs"
_Said = tuple[Entry, str, str | None]


def item_sentences(content: Content) -> Iterator[Sentence]:
    """Yield every sentence of every item, a scenario's situation once."""
    for questions in content.questions:
        for entry, key, text in _in_file(questions):
            if text:
                yield Sentence(entry.place, key, text, own=False)


def item_texts(questions: QuestionFile) -> list[str]:
    """Return the texts alone of one file, for those who ask all of them and seldom where."""
    return [text for _, _, text in _in_file(questions) if text]


def is_asked(said: Sentence) -> bool:
    """Return whether a sentence of `item_sentences` is the situation, the stem or an option."""
    return not said.own and said.key in _ASKED and _PAIRS not in said.entry.path


def _in_file(questions: QuestionFile) -> list[_Said]:
    said: list[_Said] = []
    for each in questions.items:
        if isinstance(each, Scenario):
            said.append((each, "situation", each.situation))
            for item in each.items:
                said += _of_item(item)
        else:
            said += _of_item(each)
    return said


def _of_item(item: Item) -> list[_Said]:
    said: list[_Said] = [
        (item, "situation", item.situation),
        (item, "stem", item.stem),
        (item, "because", item.because),
        (item, "picture_shows", item.picture_shows),
    ]
    for option in item.options:
        said.append(
            (option, "wrong", option.wrong) if option.wrong else (option, "right", option.right)
        )
        said.append((option, "because", option.because))
    said += [(entry, "text", entry.text) for entry in item.entries]
    said += [(matter, "because", matter.because) for matter in item.matters]
    if item.number:
        said.append((item.number, "because", item.number.because))
        said += [(each, "because", each.because) for each in item.number.mistakes]
    for pair in item.pairs:
        said += [(pair, "left", pair.left), (pair, "right", pair.right)]
        said.append((pair, "because", pair.because))
        said += [(each, "because", each.because) for each in pair.mistakes]
    said += [(item, "extra", extra) for extra in item.extra]
    return said
