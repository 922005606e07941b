"""What the documents say of commands, rules and files is so."""

import re

import pytest
from click import Group

from basinside.check.registry import RULES
from basinside.cli import main
from tests.built import CHECKOUT
from tests.house import rule_table

DOCUMENTS = ("README.md", "DEVELOPERS.md", "CHANGELOG.md")
FENCED = re.compile(r"^```[a-z]*\n(.*?)^```", re.DOTALL | re.MULTILINE)
CODE = re.compile(r"`([^`\n]+)`")
LINK = re.compile(r"\]\(([^)#]+)\)")
# Paths that stand for what somebody makes, not for what is here.
MADE = ("build/", "site/", "my-clinic", "dist/", "basinside/demo/", "tests/check/cases/ID/")


def text_of(name: str) -> str:
    return (CHECKOUT / name).read_text(encoding="utf-8")


def said_in_code(text: str) -> list[str]:
    """Return each line of the fenced blocks without its remark, and each piece of inline code."""
    lines = [line for block in FENCED.findall(text) for line in block.splitlines()]
    inline = CODE.findall(FENCED.sub("", text))
    return [re.sub(r"\s{2,}#.*", "", each).strip() for each in [*lines, *inline]]


def commands(text: str, program: str) -> set[str]:
    """Return the words that follow a program's name, such as the targets that ``make`` is given."""
    found = (
        re.match(rf"{program} ([a-z][a-z-]*)$|{program} ([a-z][a-z-]*) ", each + " ")
        for each in said_in_code(text)
    )
    return {match[1] or match[2] for match in found if match}


def make_targets() -> set[str]:
    return set(re.findall(r"^([a-z]+):.*?## ", text_of("Makefile"), re.MULTILINE))


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_command_that_a_document_names_is_there(name: str) -> None:
    assert isinstance(main, Group)
    assert commands(text_of(name), "make") <= make_targets()
    assert commands(text_of(name), "basinside") <= set(main.commands)


def test_the_readme_names_the_commands_that_begin_everything() -> None:
    assert {"demo", "test"} <= commands(text_of("README.md"), "make")
    assert {"demo", "new", "check", "build", "preview"} <= commands(
        text_of("README.md"), "basinside"
    )


def test_every_command_stands_in_the_changes() -> None:
    assert isinstance(main, Group)
    spoken = set(re.findall(r"[a-z-]+", " ".join(CODE.findall(text_of("CHANGELOG.md")))))
    assert set(main.commands) - spoken == set()


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_file_that_a_document_names_is_there(name: str) -> None:
    text = text_of(name)
    named = {each for each in CODE.findall(text) if re.fullmatch(r"[\w.-]+(/[\w.-]+)*/?", each)}
    paths = {each for each in named if "/" in each and not each.startswith(MADE)}
    linked = {each for each in LINK.findall(text) if "//" not in each}
    roots = (CHECKOUT, CHECKOUT / "generator" / "basinside")
    missing = {each for each in paths | linked if not any((r / each).exists() for r in roots)}
    assert missing == set()


def test_the_table_of_rules_is_the_registry() -> None:
    text = text_of("DEVELOPERS.md")
    assert rule_table.table(RULES) in text, "python -m tests.house.rule_table prints it"


def test_the_table_of_the_guide_names_a_rule_for_each_of_its_numbers() -> None:
    text = text_of("DEVELOPERS.md")
    assert rule_table.guide_table(RULES) in text, "python -m tests.house.rule_table prints it"
    assert list(rule_table.GUIDE) == [f"L{number:02}" for number in range(1, 33)]
    assert len(rule_table.GUIDE_OF) == sum(len(names) for names in rule_table.GUIDE.values())


def test_a_command_that_is_not_there_would_be_found() -> None:
    text = "Try `make tea`.\n```\nbasinside brew it  # now\nmake demo      # all\n```\n"
    assert commands(text, "make") == {"tea", "demo"}
    assert commands(text, "basinside") == {"brew"}


def test_decisions_are_numbered_without_a_gap_and_have_their_four_parts() -> None:
    folder = CHECKOUT / "generator" / "basinside" / "decisions"
    files = sorted(folder.glob("[0-9]*.md"))
    assert [int(path.name[:4]) for path in files] == list(range(1, len(files) + 1))
    for path in files:
        text = path.read_text(encoding="utf-8")
        assert text.startswith(f"# {path.name[:4]}: ")
        for part in ("**Context.**", "**Choice.**", "**Consequence.**"):
            assert part in text, path.name
