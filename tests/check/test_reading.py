"""Sentences, words and syllables are counted as published examples count them."""

import doctest

import pytest

from basinside.check import inflections, reading
from basinside.check.item_sentences import item_sentences, item_texts
from basinside.check.reading import Counted, Reader, sentences_of, together
from basinside.science.reading_ease import SyllableCounts
from tests.check.clinic import base_files, look_at
from tests.science.test_reading_ease import WASHER

READER = Reader({}, SyllableCounts())


def test_the_examples_of_the_pages() -> None:
    assert doctest.testmod(reading) == (0, 2)
    assert doctest.testmod(inflections) == (0, 1)


def test_a_sentence_that_others_counted() -> None:
    counted = READER.count("The cat sat on the mat.")
    assert counted == Counted(1, 6, 6, 6)
    assert counted.grade == pytest.approx(-1.45, abs=1e-4)


def test_a_text_of_six_sentences() -> None:
    counted = READER.count(WASHER)
    assert (counted.sentences, counted.words) == (6, 43)
    assert 64 <= counted.syllables <= 68  # by hand 66
    exact = counted._replace(syllables=66)
    assert exact.grade == pytest.approx(5.3166, abs=1e-4)
    assert together(Counted(1, *_of(each)) for each in sentences_of(WASHER)) == counted


def _of(sentence: str) -> tuple[int, int, int]:
    return READER.count(sentence)[1:]


def test_words_without_an_end_are_no_sentence_but_have_a_length() -> None:
    counted = READER.count("in a covered tray")
    assert counted == Counted(0, 0, 0, 4)
    assert counted.grade == 0.0
    assert together([]) == Counted()


def test_known_words_count_as_short() -> None:
    known = Reader({}, SyllableCounts({"decontamination": 1}))
    text = "Decontamination is a long word."
    assert READER[text].syllables - known[text].syllables == 5


def test_a_dash_alone_is_no_word() -> None:
    assert READER.count("Gloves off – wash hands.") == Counted(1, 4, 4, 4)


def test_texts_of_items_are_read_whether_or_not_their_place_is_asked() -> None:
    content = look_at(base_files(), rules=False).content
    texts = [text for questions in content.questions for text in item_texts(questions)]
    assert texts == [each.text for each in item_sentences(content)]
    assert {each.item.stem for each in content.items()} <= set(texts)


def test_a_sentence_may_end_with_per_cent() -> None:
    assert READER.count("Take 5 %. Wait.") == Counted(2, 4, 4, 3)
