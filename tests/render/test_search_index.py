"""What the index holds: each title once, each text once, however many places it has."""

import json

from basinside.render.search_index import Entry, Page, folded, search_index

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
    assert index["titles"] == ["Rinse it."]
    assert index["texts"] == [[0, [0, "rinse"], [1, "rinse"]]]
    assert index["pages"][1] == ["procedures/soak.html", "Bag-mask: soaking", "Procedure"]
    assert index["terms"] == sorted({"rinse", "it", "so", "that", "is", "clean"})


def test_a_word_is_noted_at_its_titles_and_at_texts_whose_title_has_it_not() -> None:
    index = search_index(
        [
            Entry(page=BOIL, title="Wash", text="water", anchor="a"),
            Entry(page=BOIL, title="Water", text="wash, then wash", anchor="b"),
            Entry(page=SOAK, title="Wash", text="Wash in a basin of water.", anchor="c"),
        ],
        (),
    )
    in_titles = dict(zip(index["terms"], index["in_titles"], strict=True))
    in_texts = dict(zip(index["terms"], index["in_texts"], strict=True))
    assert (in_titles["wash"], in_titles["water"], in_titles["basin"]) == ([0], [1], [])
    assert (in_texts["wash"], in_texts["basin"]) == ([1], [2])
    assert in_texts["water"] == [0, 2]  # the second is the difference from the first


def test_one_title_with_another_name_besides_is_another_title() -> None:
    index = search_index(
        [Entry(page=BOIL, title="Steam"), Entry(page=BOIL, title="Steam", also="autoclave")], ()
    )
    assert index["titles"] == ["Steam", "Steam"]


def test_words_that_mean_the_same_are_phrases_without_repeats() -> None:
    same = [("steam sterilizer", "autoclave", "Autoclave"), ("alone",), ("…", "x")]
    assert search_index([], same)["same"] == [[["steam", "sterilizer"], ["autoclave"]]]


def test_an_entry_without_an_anchor_stands_for_its_page() -> None:
    index = search_index([Entry(page=BOIL, title=BOIL.name)], ())
    assert index["texts"] == [[0, [0]]]
    assert json.loads(json.dumps(index)) == index
