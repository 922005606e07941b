"""The words that rules look for: each pattern holds a word by which an item is picked out first."""

import pytest

from basinside.check.item_texts import words_of
from basinside.check.item_words import ITEM_WORDS, ItemWords

ENGLISH = ITEM_WORDS["en"]
NAMES_OTHERS = (
    "All of the above",
    "none of the below",
    "Two of the options",
    "Both A and B",
    "neither b nor c",
    "Option D",
    "answers a",
    "the last option",
    "The first answers",
)
OPINION = ("What do you think?", "In your opinion", "in your view", "What would you rather", "haha")
COLOURS = ("the red one", "the green boxes", "marked in blue", "the grey area", "drawn in pink")


@pytest.mark.parametrize("text", NAMES_OTHERS)
def test_what_names_other_options_is_found_and_picked_out(text: str) -> None:
    assert ENGLISH.names_others.search(text)
    assert not ENGLISH.names_others_with.isdisjoint(words_of(text))


@pytest.mark.parametrize("text", OPINION)
def test_an_opinion_is_found_and_picked_out(text: str) -> None:
    assert ENGLISH.opinion.search(text)
    assert not ENGLISH.opinion_with.isdisjoint(words_of(text))


@pytest.mark.parametrize("text", COLOURS)
def test_a_colour_alone_is_found_and_picked_out(text: str) -> None:
    assert ENGLISH.colour_alone.search(text)
    assert not ENGLISH.colours.isdisjoint(words_of(text))


@pytest.mark.parametrize(
    "text",
    ["A kind of bulb", "Vitamin A and zinc", "Shown to the lead", "the red paint", "Both parts"],
)
def test_plain_words_are_not_found(text: str) -> None:
    assert not ENGLISH.names_others.search(text)
    assert not ENGLISH.opinion.search(text)
    assert not ENGLISH.colour_alone.search(text)


@pytest.mark.parametrize("words", ITEM_WORDS.values())
def test_lists_are_in_small_letters_and_looked_for(words: ItemWords) -> None:
    for some in (words.negatives, words.absolutes, words.vague, words.colours):
        assert some
        assert all(word == word.casefold() for word in some)
        assert some <= words.looked_for
    assert all(word == word.casefold() for word in (*words.ranges, *words.after_ranges))


def test_words_are_cut_at_what_stands_between_them() -> None:
    text = "It's “well-kept” (so far): don’t lift, 0.5 kPa; then… wait—now."
    assert words_of(text) == (
        "it's", "well-kept", "so", "far", "don’t", "lift", "0", "5", "kpa", "then", "wait", "now",
    )  # fmt: skip
