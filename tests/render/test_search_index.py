"""What the index holds: each word once a text, each text once, however many places it has."""

import json

from basinside.render.search_index import IN_TITLE, WEIGHTS, Entry, Page, folded, search_index

BOIL = Page(href="procedures/boil.html", name="Bag-mask: boiling", kind="Procedure")
SOAK = Page(href="procedures/soak.html", name="Bag-mask: soaking", kind="Procedure")


def test_words_are_folded_as_they_are_looked_up() -> None:
    assert folded("Émail, 0.5 % at 121 °C") == ["email", "0.5", "at", "121", "c"]
    assert folded("Rinse—then DRY; ½ cup, naïve_word") == [
        "rinse", "then", "dry", "1", "2", "cup", "naive", "word",
    ]  # fmt: skip
    assert folded("") == []


def test_a_sentence_of_many_places_is_kept_once() -> None:
    index = search_index(
        [
            Entry(page=page, title="Rinse it.", text="So that it is clean.", anchor="rinse")
            for page in (BOIL, SOAK)
        ],
        (),
    )
    assert index["texts"] == [["Rinse it.", [0, "rinse"], [1, "rinse"]]]
    assert index["pages"][1] == ["procedures/soak.html", "Bag-mask: soaking", "Procedure"]
    assert index["terms"] == sorted({"rinse", "it", "so", "that", "is", "clean"})


def test_postings_are_differences_of_text_and_weight() -> None:
    index = search_index(
        [
            Entry(page=BOIL, title="Wash", text="water", anchor="a"),
            Entry(page=BOIL, title="Water", text="wash", anchor="b"),
        ],
        (),
    )
    postings = dict(zip(index["terms"], index["postings"], strict=True))
    assert postings["wash"] == [IN_TITLE, WEIGHTS + 1 - IN_TITLE]
    assert postings["water"] == [1, WEIGHTS + IN_TITLE - 1]


def test_words_that_mean_the_same_are_phrases_without_repeats() -> None:
    same = [("steam sterilizer", "autoclave", "Autoclave"), ("alone",), ("…", "x")]
    assert search_index([], same)["same"] == [[["steam", "sterilizer"], ["autoclave"]]]


def test_an_entry_without_an_anchor_stands_for_its_page() -> None:
    index = search_index([Entry(page=BOIL, title=BOIL.name)], ())
    assert index["texts"] == [["Bag-mask: boiling", [0]]]
    assert json.loads(json.dumps(index)) == index
