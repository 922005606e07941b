"""Each slip that an author makes in a text editor has its own line, its place and its mend."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.plain.clinic import patched, read

SLIPS: list[dict[str, Any]] = yaml.safe_load(
    Path(__file__).with_name("messages.yaml").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("slip", SLIPS, ids=[each["slip"] for each in SLIPS])
def test_the_author_of(slip: dict[str, Any]) -> None:
    lines = read(patched({"replace": [slip]})).lines
    told = [each for each in lines if each.startswith(f"{slip['file']}:")]
    assert told == [f"{slip['file']}:{each}" for each in slip["says"]]


def test_a_file_that_cannot_be_read_hides_nothing_but_itself() -> None:
    files = patched({})
    files["content/procedures/bulb-soak.yaml"] = b"procedure: [\n"
    looked = read(files)
    assert len([each for each in looked.lines if "[yaml-syntax]" in each]) == 1
    assert not [each for each in looked.lines if "[unknown-id]" in each]


@pytest.mark.parametrize(
    ("file", "line"),
    [
        ("content/sources.yaml", "source"),
        ("content/figures/all.yaml", "value"),
        ("content/equipment.yaml", "equipment"),
        ("content/agents/chlorine.yaml", "agent"),
        ("content/instruments/bulb.yaml", "instrument"),
        ("content/routes/chlorine-bath.yaml", "route"),
    ],
)
def test_what_names_into_a_broken_file_is_not_called_unknown(file: str, line: str) -> None:
    files = patched({})
    without = {name: raw for name, raw in files.items() if name != file}
    missed = [each for each in read(without).lines if f"there is no {line} " in each]
    files[file] += b"\n: ["
    kept = [each for each in read(files).lines if f"there is no {line} " in each]
    assert missed
    assert kept == []
