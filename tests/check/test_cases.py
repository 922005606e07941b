"""Every rule on its cases: what it says, word for word, with line and column.

A case shows the lines of its own rule and of every other rule that its `expect` names: what one
mistake means to further rules is told by their own cases.
"""

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from basinside.check.explain import all_ids
from basinside.check.registry import RULES
from tests.check.clinic import base_files, look_at, patched

CASES = Path(__file__).parent / "cases"
NO_RULE = "waived"  # its cases show problems that are waived
RULE_IN = re.compile(r" \[([a-z0-9-]+)\]")
FILES = sorted(CASES.glob("*/*.yaml"))


def read(path: Path) -> dict[str, Any]:
    case: dict[str, Any] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return case


def test_the_valid_clinic_has_no_problem() -> None:
    assert look_at(base_files()).lines == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_case(path: Path) -> None:
    case = read(path)
    looked = look_at(patched(case), case.get("today"))
    expected = [line.strip() for line in case["expect"]]
    shown = {path.parent.name, *(name for line in expected for name in RULE_IN.findall(line))}
    assert [line for line in looked.lines if shown & set(RULE_IN.findall(line))] == expected
    not_waived = [each for each in looked.problems if not each.waived_by]
    if path.stem.startswith("good-"):
        assert [each for each in not_waived if each.rule in shown] == []
    else:
        assert not_waived
        found = {each.rule for each in looked.problems}
        assert path.parent.name in found | {NO_RULE} or "missing-key" in found


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_has_cases(rule: Any) -> None:
    names = [path.stem for path in FILES if path.parent.name == rule.id]
    assert sum(name.startswith("good-") for name in names) >= 1
    assert sum(name.startswith("bad-") for name in names) >= 2


def test_no_case_belongs_to_nothing() -> None:
    assert {path.parent.name for path in FILES} <= {*all_ids(), NO_RULE}
    assert [path for path in FILES if not path.stem.startswith(("good-", "bad-"))] == []
