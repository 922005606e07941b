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
        "  bag-mask-silicone-boil/start-timing: how long changed: 20 min -> 25 min (safety step)"
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


def changed_file(folder: Path, name: str, old: str, new: str) -> None:
    path = folder / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def below(ran: Ran, heading: str) -> list[str]:
    """The lines below a heading, which says how many they are."""
    lines = ran.said.splitlines()
    at = next(n for n, line in enumerate(lines) if line.startswith(heading))
    found = []
    for line in lines[at + 1 :]:
        if not line.startswith("  "):
            break
        found.append(line.strip())
    assert f"({len(found)})" in lines[at] or lines[at].endswith(":")
    return found


HANGING = [
    "Boiling and gauge card, beside the stove",
    "Wall chart of bag-mask-silicone-boil, beside the stove",
    "Wall chart of suction-bulb-boil, beside the stove",
    "Wall chart of uterine-aspirator-heatproof-boil, beside the stove",
    "Wall chart of speculum-boil, beside the stove",
    "Wall chart of brushes-and-basins, sink 1",
]


@pytest.mark.parametrize("closed", [True, False])
def test_a_changed_value_is_followed_to_questions_assessments_and_walls(
    own: Path, clinic: Path, closed: bool
) -> None:
    if closed:
        basinside("edition", "close", "--folder", own)
    hold_longer(own)
    ran = changes(own, "2026.2" if closed else clinic, own)
    assert below(ran, "Paper to hang anew") == HANGING
    questions = below(ran, "Questions")
    assert (
        "boiling-up-here (practice): read it again, it names boil.hold;"
        " its key rests on bag-mask-silicone-boil/start-timing"
    ) in questions
    assert any(line.startswith("cannulas-that-float (assessment): ") for line in questions)
    (assessment,) = below(ran, "Assessments")
    assert assessment.startswith("core: seal new forms, questions of its topics changed: ")
    assert assessment.endswith("first-moment-that-counts, cannulas-that-float")
    left_out = "does not keep it: the words and keys of questions."
    assert (left_out in ran.said) is closed


def test_questions_are_compared_where_both_sides_have_them(own: Path, clinic: Path) -> None:
    file = "quizzes/questions/disinfection.yaml"
    path = own / file
    text = path.read_text(encoding="utf-8")
    first_right = next(line for line in text.splitlines() if "- right: " in line)
    changed_file(own, file, first_right, first_right.replace("- right: ", "- right: Here, "))
    ran = changes(own, clinic, own)
    (said,) = below(ran, "Questions")
    assert ": other words: " in said
    assert "another answer is right" not in said
    path.write_text(text, encoding="utf-8")
    swapped = text.replace("- wrong: ", "- RIGHT: ", 1).replace("- right: ", "- wrong: ", 1)
    path.write_text(swapped.replace("- RIGHT: ", "- right: "), encoding="utf-8")
    (said,) = below(changes(own, clinic, own), "Questions")
    assert "(practice): another answer is right now" in said
    assert ran.lines[-1] == "Nobody has to refresh anything."


def test_choices_sources_groups_and_walls_are_told(own: Path, clinic: Path) -> None:
    changed_file(own, "content/sources.yaml", "    title: ", "    title: New, ")
    changed_file(
        own, "content/handbook.yaml", "  bag-masks: [", "  bag-masks: [suction-bulb-boil, "
    )
    hung = "  - {print: wall-chart, of: suction-bulb-boil, at: beside the stove}\n"
    changed_file(own, "content/handbook.yaml", hung, "")
    ran = changes(own, clinic, own)
    assert len(below(ran, "Sources")) == 1
    (group,) = below(ran, "Groups")
    assert group.startswith("bag-masks: other procedures are certified together; ")
    assert group.endswith("joined: suction-bulb-boil; left: nothing")
    gone = "Wall chart of suction-bulb-boil, beside the stove (take it down)"
    assert below(ran, "Paper") == [gone]
    assert ran.lines[-1] == "  bag-masks: suction-bulb-boil"
    told = json.loads(changes(own, clinic, own, "--json").said)
    assert told["refresh"] == {"bag-masks": ["suction-bulb-boil"]}
    assert set(told["scopes"]) == {"bag-masks"}
    assert told["scopes"]["bag-masks"]["new"].startswith("scope-v1:")


def test_a_digest_that_changed_is_a_refresh_or_a_wording_that_two_people_signed(
    own: Path, clinic: Path
) -> None:
    name = "content/procedures/bag-mask-silicone-boil.yaml"
    text = (own / name).read_text(encoding="utf-8")
    lines = text.splitlines(keepends=True)
    do = next(n for n, line in enumerate(lines) if line.startswith("        do: "))
    for new in (
        lines[do].replace("do: ", "do: Now. "),
        lines[do] + "        safety: yes\n"
        if "safety: yes" not in "".join(lines[do : do + 4])
        else lines[do].replace("do: ", "do: Then. "),
    ):
        changed = "".join([*lines[:do], new, *lines[do + 1 :]])
        (own / name).write_text(changed, encoding="utf-8")
        told = json.loads(changes(own, clinic, own, "--json").said)
        assert set(told["scopes"]) == set(told["refresh"])
        assert "bag-mask-silicone-boil" in told["refresh"]


def test_an_edition_closed_by_an_earlier_program_is_compared_as_far_as_it_goes(own: Path) -> None:
    basinside("edition", "close", "--folder", own)
    path = own / "content/editions/2026.2.json"
    document = json.loads(path.read_text(encoding="utf-8"))
    for name in ("bases", "sources", "assessments"):
        del document[name]
    path.write_text(json.dumps(document), encoding="utf-8")
    assert basinside("check", "--folder", own, "--rule", "edition-reused").code == 0
    hold_longer(own)
    ran = changes(own, "2026.2", own)
    assert "  boil.hold: 20 min -> 25 min" in ran.lines
    assert "what values rest on, sources, assessments and the words and keys" in ran.said


def test_why_a_side_is_none_is_said(
    own: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = changes(own, "2031.9", own).said
    assert "it is no git revision: " in said
    assert "No edition was closed here yet" in said
    basinside("edition", "close", "--folder", own)
    assert "Closed editions here: 2026.2." in changes(own, "2031.9", own).said
    subprocess.run(["git", "-C", str(own), "init", "-q"], check=True)
    assert "git knows none of that name" in changes(own, "2031.9", own).said
    monkeypatch.setenv("PATH", str(tmp_path))
    assert "git is not installed here" in changes(own, "2031.9", own).said


def test_content_that_cannot_be_read_is_named_with_its_first_mistake(own: Path) -> None:
    changed_file(own, BOILING, "basis:", "bsis:")
    ran = changes(own, own, "2026.2")
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert f"({BOILING}: “basis” is missing here)" in ran.said


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
