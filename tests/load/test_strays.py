"""A file in the wrong place, or under the wrong name, is told where it belongs, once."""

import pytest

from tests.plain.clinic import base_files, read

SOAK = "content/procedures/bulb-soak.yaml"


def moved(old: str, new: str) -> list[str]:
    files = dict(base_files())
    files[new] = files.pop(old)
    return [each.removesuffix(" [file-misplaced]") for each in read(files).lines]


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        (SOAK, "content/instruments/bulb-soak.yaml",
         "this file holds a procedure, which belongs in content/procedures/; move it there"),
        (SOAK, "content/procedure/bulb-soak.yaml",
         ("this file holds a procedure and lies where nothing is read; name it"
         " content/procedures/bulb-soak.yaml")),
        (SOAK, "content/procedures/bulb-soak.yml",
         "this file is not read because of its name; name it bulb-soak.yaml"),
        (SOAK, "content/procedures/bulb-soak.yaml.txt",
         "this file is not read because of its name; name it bulb-soak.yaml"),
        (SOAK, "content/procedures/bulb-soak.YAML",
         "this file is not read because of its name; name it bulb-soak.yaml"),
        ("content/handbook.yaml", "content/handbok.yaml",
         ("this file holds the handbook's card and lies where nothing is read; name it"
         " content/handbook.yaml")),
        ("content/sources.yaml", "content/figures/sources.yaml",
         "this file holds sources, which belongs in content/sources.yaml; move it there"),
    ],
)  # fmt: skip
def test_a_file_that_is_not_read_is_told_once(old: str, new: str, line: str) -> None:
    place, _, said = moved(old, new)[0].partition(": ")
    assert (place.rsplit(":", 2)[0], said) == (new, line)
    after = [each for each in moved(old, new) if "unknown-id" in each or "file-missing" in each]
    assert after == []


def test_a_note_beside_the_files_is_nobody_s_mistake() -> None:
    files = dict(base_files())
    files["content/notes.txt"] = b"procedure: call the maker\n"
    files["content/procedures/read-me.md"] = b"procedure: see above\n"
    assert read(files).lines == read(base_files()).lines
