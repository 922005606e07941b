"""Every id that can be printed has a page."""

import re
from pathlib import Path

import pytest

from basinside.check import waivers
from basinside.check.explain import FORM_IDS, all_ids, explain
from basinside.check.registry import RULES
from basinside.load import content

ID = re.compile(r'"([a-z]+(?:-[a-z]+)+)"')
NO_ID = frozenset({"aria-label"})  # words with a hyphen in load/ that are no ids
LOAD = Path(content.__file__).parent


def ids_in(path: Path) -> set[str]:
    text = path.read_text(encoding="utf-8")
    return set(ID.findall(text)) - NO_ID


def test_every_problem_of_form_has_a_page() -> None:
    used = set().union(*(ids_in(path) for path in LOAD.glob("*.py")))
    assert len(used) > 15
    assert used - set(FORM_IDS) == set()


def test_every_page_of_form_is_of_something_printed() -> None:
    used = set().union(*(ids_in(path) for path in LOAD.glob("*.py")))
    used |= ids_in(Path(waivers.__file__))
    assert set(FORM_IDS) - used == set()


@pytest.mark.parametrize("name", all_ids())
def test_a_page_shows_the_mend(name: str) -> None:
    page = explain(name)
    assert page is not None
    assert page.startswith(f"{name} (")
    assert re.search(r"^(Good|Bad): ", page, re.MULTILINE)
    assert all(len(line) <= 100 for line in page.splitlines())


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rules_page_has_its_five_parts(rule: object) -> None:
    page = getattr(rule, "page", "")
    summary, _, rest = page.partition("\n")
    assert summary.endswith(".")
    assert [word for word in ("Why:", "Bad:", "Good:", "Source:") if word not in rest] == []


def test_an_unknown_id_has_no_page() -> None:
    assert explain("no-such-rule") is None
