"""A fixed sample of what ``make fuzz`` does, and what no memory stick or page may be made to do."""

import pytest
from hypothesis import HealthCheck, given, settings

from tests.check.clinic import base_files, look_at
from tests.fuzz.looked import inert, look
from tests.fuzz.spoiled import HOSTILE, Spoil, spoiled, spoils


@settings(max_examples=60, suppress_health_check=list(HealthCheck), derandomize=True)
@given(spoils(base_files()))
def test_a_spoiled_clinic_gives_lines_or_pages(changes: list[Spoil]) -> None:
    look(spoiled(base_files(), changes))


def test_the_clinic_that_is_spoiled_is_built() -> None:
    assert look(base_files()) > 10


@pytest.mark.parametrize("words", HOSTILE[:5])
def test_hostile_words_where_a_name_stands_are_words_on_the_page(words: str) -> None:
    files = dict(base_files())
    name = "content/instruments/bulb.yaml"
    quoted = '"' + words.replace('"', '\\"') + '"'
    files[name] = files[name].replace(b"name: Suction bulb", f"name: {quoted}".encode())
    assert look(files) > 10


@pytest.mark.parametrize(
    "page",
    [
        "<p><img src=x onerror=alert(1)></p>",
        '<p><a href="javascript:alert(1)">x</a></p>',
        '<p><a href=" JavaScript:alert(1)">x</a></p>',
        '<p><img src="https://example.org/x.png"></p>',
        '<iframe src="x.html"></iframe>',
    ],
)
def test_a_page_that_acts_is_seen(page: str) -> None:
    with pytest.raises(AssertionError):
        inert("x.html", page)


@pytest.mark.parametrize("folder", ["content/pictures/", "content/procedures/", "content/agents/"])
def test_names_that_differ_by_case_only_are_told(folder: str) -> None:
    files = dict(base_files())
    file = next(each for each in sorted(files) if each.startswith(folder))
    files[folder + file.removeprefix(folder).upper()] = files[file]
    assert [line for line in look_at(files).lines if "by its case only" in line]


@pytest.mark.parametrize(
    "name", ["../../up.svg", "..\\up.svg", "/etc/up.svg", "https://example.org/up.svg", "C:up.svg"]
)
def test_a_picture_is_a_file_of_its_folder(name: str) -> None:
    files = dict(base_files())
    instrument = "content/instruments/bulb.yaml"
    said = f"drawing: '{name}'".encode()
    files[instrument] = files[instrument].replace(b"drawing: bulb.svg", said)
    assert [line for line in look_at(files).lines if "holds no drawing" in line]


def test_braces_in_a_name_are_told() -> None:
    """Found by fuzzing: a rule that looks for values in every text read them as a reference."""
    changes = [Spoil("content/routes/chlorine-bath.yaml", 3, "hostile word", 6)]
    spoilt = spoiled(base_files(), changes)
    assert b"7 * 7" in spoilt["content/routes/chlorine-bath.yaml"]
    assert [line for line in look_at(spoilt).lines if "[bad-value]" in line]


def test_an_id_that_is_none_does_not_hide_its_file() -> None:
    """Found by fuzzing: the file was passed over without a word."""
    changes = [Spoil("content/figures/care.yaml", 1, "word", 0)]
    looked = look_at(spoiled(base_files(), changes))
    assert [line for line in looked.lines if "content/figures/care.yaml" in line]
