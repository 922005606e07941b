"""What is said of clinics that are wrong in every way: every rule speaks, and as a person reads."""

import pytest

from basinside.check.form_pages import FORM_PAGES
from basinside.check.registry import RULES
from tests.wrong.reports import CLINICS, kept, named, report, told

ACCEPT = "python -m tests.wrong accept"


@pytest.mark.parametrize("clinic", CLINICS)
def test_a_report_is_as_it_was_read(clinic: str) -> None:
    assert report(clinic) == kept(clinic).read_text(encoding="utf-8"), f"read it, then {ACCEPT}"


def test_every_rule_speaks_in_the_report() -> None:
    assert {rule.id for rule in RULES} <= named("clinic")


def test_every_mistake_of_form_is_in_the_report() -> None:
    assert set(FORM_PAGES) <= named("form") | named("clinic")


def test_every_finding_of_a_rule_has_its_mend() -> None:
    rules = {rule.id for rule in RULES}
    assert [each for each in told("clinic") if each["rule"] in rules and not each["hint"]] == []
