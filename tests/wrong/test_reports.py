"""What is said of clinics that are wrong in every way: every rule speaks, and as a person reads."""

import pytest

from basinside.check.form_pages import FORM_PAGES
from basinside.check.registry import RULES
from tests.wrong.reports import CLINICS, COLUMNS, kept, named, report

ACCEPT = "python -m tests.wrong accept"


@pytest.mark.parametrize("clinic", CLINICS)
def test_a_report_is_as_it_was_read(clinic: str) -> None:
    assert report(clinic) == kept(clinic).read_text(encoding="utf-8"), f"read it, then {ACCEPT}"


def test_every_rule_speaks_in_the_report() -> None:
    assert {rule.id for rule in RULES} <= named("clinic")


def test_every_mistake_of_form_is_in_the_report() -> None:
    assert set(FORM_PAGES) <= named("form")


@pytest.mark.parametrize("clinic", CLINICS)
def test_the_same_is_not_said_twice_at_one_place(clinic: str) -> None:
    said: list[str] = []
    for block in report(clinic).split("\n\n"):
        file, _, rest = block.partition("\n")
        entries = rest.replace("\n    ", " ").split("]\n")
        said += [f"{file} {' '.join(entry.split())}" for entry in entries if entry.strip()]
    assert len(said) == len(set(said))
