"""Closing an edition, comparing two, and the schemas of all files."""

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from basinside.pipeline.schemas import AUTHORED_KINDS, schema_text, schemas
from tests.built import CHECKOUT
from tests.cli.run import Ran, basinside, evidence

BOILING = "content/figures/boiling.yaml"


@pytest.fixture
def own(clinic: Path, tmp_path: Path) -> Path:
    folder = tmp_path / "own"
    for name in ("content", "quizzes"):
        shutil.copytree(clinic / name, folder / name)
    return folder


def hold_longer(folder: Path) -> None:
    """Boil for 25 minutes instead of 20, wherever that stands."""
    path = folder / BOILING
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("    value: 20 min", "    value: 25 min", 1), encoding="utf-8")


def changes(own: Path, old: object, new: object, *more: object) -> Ran:
    return basinside("changes", old, new, "--folder", own, *more)


def test_an_edition_is_closed_once(own: Path) -> None:
    assert basinside("edition", "close", "--folder", own).code == 0
    path = own / "content/editions/2026.2.json"
    before = path.read_bytes()
    again = basinside("edition", "close", "--folder", own)
    assert again.code == 0
    assert "closed before" in again.said
    assert path.read_bytes() == before


def test_a_closed_edition_takes_no_other_content(own: Path) -> None:
    basinside("edition", "close", "--folder", own)
    hold_longer(own)
    assert basinside("edition", "close", "--folder", own).code == 1


def test_a_changed_value_is_said_with_who_refreshes(own: Path) -> None:
    basinside("edition", "close", "--folder", own)
    hold_longer(own)
    ran = changes(own, "2026.2", own)
    assert ran.code == 0, ran.said
    assert "  boil.hold: 20 min -> 25 min" in ran.lines
    assert (
        "  bag-mask-silicone-boil/start-timing: how long changed: value 20 min -> value 25 min"
        " (safety step)"
    ) in ran.lines
    assert "  bag-masks: bag-mask-silicone-boil/start-timing" in ran.lines


def test_all_four_ways_to_name_a_side_agree(own: Path, clinic: Path) -> None:
    basinside("edition", "close", "--folder", own)
    hold_longer(own)
    file = own / "content/editions/2026.2.json"
    told = [
        json.loads(changes(own, old, own, "--json").said)["changes"]
        for old in ("2026.2", file, clinic)
    ]
    who = ["-c", "user.name=Author", "-c", "user.email=author@example.invalid"]
    for arguments in (["init", "-q"], ["add", "."], [*who, "commit", "-q", "-m", "Longer"]):
        subprocess.run(["git", "-C", str(own), *arguments], check=True)
    back = json.loads(changes(own, clinic, "HEAD", "--json").said)["changes"]
    assert told[0] == told[1] == told[2] == back
    assert told[0][0]["says"] == "boil.hold: 20 min -> 25 min"


def test_nothing_changed_is_said(own: Path, clinic: Path) -> None:
    assert changes(own, clinic, own).lines[-1] == "  Nothing changed."


@pytest.mark.parametrize("side", ["2031.9", "--exec=touch x", "-x", "content/handbook.yaml"])
def test_a_side_that_is_none_is_refused(own: Path, side: str) -> None:
    ran = basinside("changes", "--folder", own, "--", side, own)
    assert (ran.code, len(ran.lines)) in {(1, 1), (2, 1)}


def test_every_schema_is_the_one_in_the_tree() -> None:
    for name, schema in schemas().items():
        kept = CHECKOUT / "schemas" / name
        assert kept.read_text(encoding="utf-8") == schema_text(schema), (
            "write them again: basinside schemas --into schemas"
        )


def test_schemas_are_schemas_and_hold_no_noise() -> None:
    for name, schema in schemas().items():
        jsonschema.Draft202012Validator.check_schema(schema)
        text = schema_text(schema)
        assert '"@"' not in text
        assert '"null"' not in text
        assert not [key for key in schema if key == "title"], name


class Yaml12(yaml.SafeLoader):
    """Reads plain words as editors do, by YAML 1.2: `on` is a word and a day is a text."""


Yaml12.yaml_implicit_resolvers = {
    letter: [
        (tag, pattern)
        for tag, pattern in known
        if tag in {"tag:yaml.org,2002:int", "tag:yaml.org,2002:float", "tag:yaml.org,2002:null"}
    ]
    for letter, known in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def authored() -> list[Path]:
    places = ("content", "quizzes", "generator/basinside/starter")
    return sorted(path for each in places for path in (CHECKOUT / each).rglob("*.yaml"))


def schema_of(path: Path) -> tuple[Path, dict[str, Any]]:
    """Where the first line of a file says its schema lies, and the schema."""
    first = path.read_text(encoding="utf-8").splitlines()[0]
    line = "# yaml-language-server: $schema="
    assert first.startswith(line), path
    named = (path.parent / first.removeprefix(line)).resolve()
    return named, schemas()[named.name]


@pytest.mark.parametrize("path", authored(), ids=lambda path: path.relative_to(CHECKOUT).as_posix())
def test_every_authored_file_fits_its_schema_and_no_unknown_key_does(path: Path) -> None:
    named, schema = schema_of(path)
    if "starter" not in path.parts:
        assert named.is_file()
    value = yaml.load(path.read_text(encoding="utf-8"), Loader=Yaml12)  # noqa: S506
    check = jsonschema.Draft202012Validator(schema)
    assert [error.message for error in check.iter_errors(value)] == []
    assert list(check.iter_errors({**value, "nobody-knows": "this"}))


def test_the_demonstrations_own_files_fit_their_schemas(clinic: Path, record: Path) -> None:
    made = schemas()
    samples = clinic / "quizzes/sample-evidence"
    pairs = [
        ("record", record),
        ("trust", clinic / "content/trust.json"),
        ("sealed", clinic / "quizzes/sealed/core-A.json"),
        ("key", samples / "S-01.key.json"),
        ("key", samples / "root.key.json"),
        *(
            ("attempt" if ".attempt." in each.name else "observation", each)
            for each in evidence(clinic)
        ),
    ]
    for kind, path in pairs:
        value = json.loads(path.read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator(made[f"machine/{kind}.schema.json"]).validate(value)
        value["format"] = "something-else"
        if kind != "record":
            with pytest.raises(jsonschema.ValidationError):
                jsonschema.validate(value, made[f"machine/{kind}.schema.json"])


def test_schemas_are_printed_whole() -> None:
    told = json.loads(basinside("schemas").said)
    assert {f"{name}.schema.json" for name in AUTHORED_KINDS} <= set(told)
