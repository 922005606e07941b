"""Slips at the prompt: each gets one plain line that says what to do, and no traceback."""

from pathlib import Path

import pytest

from tests.cli.run import basinside

ASK = "Did you mean"


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("slips") / "own"
    basinside("new", folder)
    return folder


@pytest.mark.parametrize(
    ("typed", "code", "says"),
    [
        ("chekc", 2, "There is no command “chekc”. Did you mean “check”?"),
        ("edition clsoe", 2, "There is no command “clsoe”. Did you mean “close”?"),
        ("check content", 2, "“content” is more than was asked for here."),
        ("check --onyl content", 2, "There is no option --onyl. Did you mean"),
        ("check --thefolder .", 2, "There is no option --thefolder. Did you mean '--folder'?"),
        ("check --today", 2, "Write something after --today."),
        ("check --rule", 2, "Write something after --rule."),
        ("check --explain", 2, "Write something after --explain."),
        ("check --today tomorrow", 2, "“tomorrow” is no day; write it as 2026-11-20."),
        ("check --today 20.11.2026", 2, "“20.11.2026” is no day; write it as 2026-11-20."),
        ("check --today 2026-02-30", 2, "“2026-02-30” is no day; write it as 2026-11-20."),
        ("check --rule source_missing", 2, "Did you mean “source-missing”?"),
        ("check --rule [source-missing]", 2, "Did you mean “source-missing”?"),
        ("check --explain Source-Missing", 2, "Did you mean “source-missing”?"),
        ("check --explain xyzzy", 2, "There is no rule “xyzzy”. “--explain all” lists every one."),
        ("check --folder nope", 2, "There is no folder “nope”."),
        ("check --folder mkdocs.yml", 2, "“mkdocs.yml” is a file; a folder is needed."),
        ("check --folder content", 2, "there is no content folder here; go to your clinic's"),
        ("check --only ..", 2, "There is no file of this clinic below “..”."),
        ("check --only contnt", 2, "There is no file of this clinic below “contnt”."),
        ("where", 2, "ID is missing."),
        ("where boil hold", 2, "“hold” is more than was asked for here."),
        ("where content/figures/boiling.yaml", 1, "is a file; ask for an id that stands in it."),
        ("where {{}}", 2, "Name an id, such as boil.hold."),
        ("where boil.hodl", 1, "  boil.hold, a value"),
        ("where BOIL.HOLD", 1, "  boil.hold, a value"),
        ("changes", 2, "OLD is missing."),
        ("changes 2026.7", 1, "No edition was closed here yet"),
        ("changes nope .", 1, "“nope” is no closed edition, no edition file and no folder"),
        ("changes content/handbook.yaml", 1, "those are .json files in content/editions."),
        ("changes .. .", 2, "there is no content folder here"),
        ("edition close now", 2, "“now” is more than was asked for here."),
        ("preview --port abc", 2, "“abc” is no whole number."),
        ("build --into content", 2, "the clinic's own files lie there"),
        ("print", 2, "“basinside print --list” shows what there is."),
        ("print wall-charts", 1, "Did you mean “wall-chart”?"),
        ("schemas --into", 2, "Write something after --into."),
        ("new", 2, "FOLDER is missing."),
        ("new .", 2, "is there already and not empty; name a new folder"),
        ("amount liqiud", 2, "There is no command “liqiud”. Did you mean “liquid”?"),
        ("score", 2, "is missing."),
        ("score nothing.json", 2, "There is no file “nothing.json”."),
    ],
)
def test_a_slip_gets_a_plain_line(
    own: Path, monkeypatch: pytest.MonkeyPatch, typed: str, code: int, says: str
) -> None:
    monkeypatch.chdir(own)
    told = basinside(*typed.split(" "))
    assert says in told.said
    assert told.code == code
    assert "Traceback" not in told.said
    assert len(told.lines) <= 4 or ASK in told.said or "nearest" in told.said


@pytest.mark.parametrize("typed", ["boil.hold ", "{{ boil.hold }}", "[boil.hold]", "“boil.hold”"])
def test_an_id_copied_with_its_signs_is_understood(own: Path, typed: str) -> None:
    told = basinside("where", typed, "--folder", own)
    assert told.code == 0
    assert told.said.startswith("boil.hold is a value")
