"""All files become one model; ids are unique, files lie and are named where they should."""

import json
from collections.abc import Mapping
from pathlib import Path

import pytest

from basinside.load.content import kind_of, load
from basinside.load.memory import Memory
from basinside.problem import Problem
from tests.plain.clinic import CLOSED, base_files, closed_edition

CHECKOUT = Path(__file__).resolve().parents[2]
BULB = "content/instruments/bulb.yaml"
BATH = "quizzes/questions/bath.yaml"


def with_files() -> dict[str, bytes]:
    return dict(base_files())


def said(files: Mapping[str, bytes], memory: Memory | None = None) -> list[tuple[str, str, str]]:
    _, problems = load(files, memory)
    return [(each.place.file, each.rule, each.message) for each in problems]


def demo_files() -> dict[str, bytes]:
    return {
        path.relative_to(CHECKOUT).as_posix(): path.read_bytes()
        for top in ("content", "quizzes")
        for path in sorted((CHECKOUT / top).rglob("*"))
        if path.suffix in {".yaml", ".svg"}
    }


def test_the_demonstration_loads_whole() -> None:
    content, problems = load(demo_files())
    assert problems == []
    assert content.handbook is not None
    assert content.handbook.edition == "2026.2"
    assert {"bag-mask-silicone", "bag-mask-vinyl", "mucus-extractor"} < set(content.instruments)
    assert None not in content.procedures.values()
    assert all(content.procedures[each].steps for each in content.procedures)


def test_a_figure_and_a_procedure_are_read_where_they_were_written() -> None:
    content, _ = load(base_files())
    assert content.figures["bath.hold"].value.base_text() == "1200 s"
    assert content.figures["bath.hold"].place.file == "content/figures/all.yaml"
    step = content.procedures["bulb-soak"].steps[0][1]
    assert step.place.path == ("stages", 0, "steps", 0)


def test_a_file_is_named_after_what_it_holds() -> None:
    files = with_files()
    files["content/instruments/pump.yaml"] = files.pop(BULB)
    assert (
        "content/instruments/pump.yaml",
        "file-name",
        "the file is named pump.yaml but holds “bulb”; name it bulb.yaml",
    ) in said(files)


def test_an_id_is_given_once_whatever_its_case() -> None:
    files = with_files()
    files["content/figures/more.yaml"] = (
        b"figures:\n  bath.hold: {is: x, value: 1 min, basis: from memory}\n"
    )
    assert (
        "content/figures/more.yaml",
        "repeated-id",
        "“bath.hold” is written twice, here and in content/figures/all.yaml; keep one",
    ) in said(files)


def test_an_item_is_given_once_in_all_files() -> None:
    files = with_files()
    files["quizzes/questions/bath-again.yaml"] = files[BATH]
    twice = {each for each in said(files) if each[1] == "repeated-id"}
    assert {each[0] for each in twice} == {BATH}


def test_a_stray_file_is_told_where_files_lie() -> None:
    files = with_files()
    files["content/notes.yaml"] = b"a: b\n"
    files["quizzes/questions/old.yml"] = b"a: b\n"
    strays = {each[0] for each in said(files) if each[1] == "file-misplaced"}
    assert strays == {"content/notes.yaml", "quizzes/questions/old.yml"}


def test_a_clinic_without_a_handbook_is_told_how_to_begin() -> None:
    assert [each[1:] for each in said({})] == [
        ("file-missing", "there is no content/handbook.yaml; begin with “basinside new FOLDER”")
    ]


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (b"{", "this is no JSON"),
        (b"[]", "this is no closed edition; “basinside edition close” writes them"),
        (b'{"format": "basinside/edition/1"}', "this is no closed edition"),
    ],
)
def test_a_closed_edition_must_be_one(raw: bytes, message: str) -> None:
    found = [each for each in said({**base_files(), CLOSED: raw}) if each[0] == CLOSED]
    assert [each[1] for each in found] == ["file-unreadable"]
    if raw != b"{":
        assert found[0][2].startswith(message)


def test_a_closed_edition_is_read_and_named_after_itself() -> None:
    content, problems = load({**base_files(), CLOSED: closed_edition()})
    assert problems == []
    assert content.editions["2026.1"] == json.loads(closed_edition())
    other = "content/editions/2026.9.json"
    assert said({**base_files(), other: closed_edition()}) == [
        (other, "file-unreadable", "this is the closed edition 2026.1; name it 2026.1.json")
    ]


def test_what_is_read_here_and_what_is_not() -> None:
    kinds = {file: kind_of(file) for file in demo_files()}
    assert all(kind for file, kind in kinds.items() if file.endswith(".yaml"))
    assert kind_of("content/pages/a.yaml") is None
    assert kind_of("content/procedures/a.json") is None


def problems_of(files: Mapping[str, bytes], memory: Memory | None) -> list[Problem]:
    return load(files, memory)[1]


def test_a_memory_changes_nothing_but_what_is_read_again() -> None:
    memory = Memory()
    files = demo_files()
    first, _ = load(files, memory)
    second, _ = load(files, memory)
    assert second == first
    name = "content/procedures/bag-mask-silicone-boil.yaml"
    files[name] = files[name].replace(b"instrument: bag-mask-silicone\n", b"instrument: nothing\n")
    assert problems_of(files, memory) == problems_of(files, None) != []
    files[name] = b"procedure: ["
    assert problems_of(files, memory) == problems_of(files, None) != []
    third, problems = load(demo_files(), memory)
    assert problems == []
    assert third == first
    anew = {key for key in first.procedures if third.procedures[key] is not first.procedures[key]}
    boil = "bag-mask-silicone-boil"
    # What is written as its difference is made again with it, and nothing else is.
    its_own = {key for key, each in first.procedures.items() if each.variant_of == boil}
    assert its_own
    assert anew == {boil, *its_own}


def test_a_parent_that_changes_changes_its_variant() -> None:
    memory = Memory()
    files = demo_files()
    load(files, memory)
    parent = "content/instruments/bag-mask-silicone.yaml"
    files[parent] = files[parent].replace(b"count: 1", b"count: 2")
    content, _ = load(files, memory)
    assert {part.count for part in content.instruments["bag-mask-vinyl"].parts} >= {2}
    assert content == load(files)[0]


def test_a_lost_handbook_hides_nothing_but_itself() -> None:
    files = {name: raw for name, raw in demo_files().items() if name != "content/handbook.yaml"}
    missed = {each.rule for each in problems_of(files, None)}
    assert missed == {"file-missing"}
