"""The list of rules is whole, and a rule cannot be made wrongly."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from basinside.check import rules
from basinside.check.checked import Checked
from basinside.check.registry import RULE_BY_ID, RULES
from basinside.check.rule import Finding, rule, run_rules
from basinside.problem import Level, Place, one_line
from tests.check.clinic import base_files, look_at

FOLDER = Path(rules.__path__[0])
NEVER = {
    "vessel-cannot-reach",
    "gauge-wrong-here",
    "incompatible-agents",
    "single-use-reprocessed",
    "regulator-never-altered",
    "single-patient-shared",
    "needles-reprocessed",
    "boiling-is-not-sterilization",
}
DATED = {"review-overdue", "choice-expired", "checked-too-long-ago"}
CLINIC_WARN = set(
    """
    at-use-state-stated biological-indicator-schedule brushes-and-basins-processed
    dirty-clean-apart figure-unused instrument-without-procedure procedure-unobserved
    route-without-procedure safety-step-untested source-unused storage-conditions-stated
    storage-life-stated transport-closed-and-labelled carried-closed-to-cleaning unlikely-size
    soiled-box-washed vessel-emptied
    """.split()
)
WARN = {
    *DATED,
    *CLINIC_WARN,
    "wall-chart-overflows",
    "print-without-place",
    "posted-print-unknown",
    "reading-level",
    "sentence-too-long",
    "undefined-abbreviation",
    "avoided-word",
}
WARN |= set(
    """
    loose-figure metal-in-chlorine source-superseded spent-liquid-and-waste-route stock-aged
    water-named-for-use
    """.split()
)

ORDER_WARN = {"bench-wiped-between", "dry-before-bath", "soak-before-brushing", "stages-complete"}
ITEMS_WARN = set(
    """
    abbreviation-undefined absolutes-in-distractors asked-twice blank-in-the-middle colour-alone
    feedback-leads-nowhere form-time-too-short item-cues-another item-hard-to-read key-echoes-stem
    longest-option-is-right longest-too-often-right negative-unmarked none-of-these
    number-recall-share numbers-out-of-order observer-line-not-observable option-without-reason
    options-three-to-five question-about-what-we-do-not-own right-option-same-place
    stem-without-question belief-not-named
    """.split()
)
INFO = {
    "article-gives-key-away",
    "asks-for-opinion",
    "options-not-parallel",
    "true-too-often",
    "vague-frequency",
}


def test_every_file_of_a_rule_is_in_the_list() -> None:
    files = {path.stem.replace("_", "-") for path in FOLDER.rglob("*.py")} - {"--init--"}
    assert files == {each.id for each in RULES}
    assert len(RULE_BY_ID) == len(RULES)


def test_levels_are_those_that_were_agreed() -> None:
    assert {each.id for each in RULES if each.level is Level.NEVER} == NEVER
    assert {each.id for each in RULES if each.level is Level.WARN} == WARN | ITEMS_WARN | ORDER_WARN
    assert {each.id for each in RULES if each.level is Level.INFO} == INFO


def test_only_rules_about_days_ask_for_the_day() -> None:
    assert {each.id for each in RULES if each.dated} == DATED


def test_a_rule_is_named_check_and_has_a_page() -> None:
    def find(checked: Checked) -> Iterator[Finding]:
        """A page."""
        yield Finding(Place("a"), "b")

    def check_without_page(checked: Checked) -> Iterator[Finding]:
        yield Finding(Place("a"), "b")

    with pytest.raises(TypeError, match="find"):
        rule(level=Level.STOP)(find)
    with pytest.raises(TypeError, match="check_without_page"):
        rule(level=Level.STOP)(check_without_page)


def test_findings_are_sorted_and_each_is_said_once() -> None:
    @rule(level=Level.STOP)
    def check_twice(checked: Checked) -> Iterator[Finding]:
        """A page."""
        for file, path in (("b", ()), ("a", (2,)), ("a", (10,)), ("a", ()), ("a", ("k",))):
            yield Finding(Place(file, path), "a\x1b[31m\nb")
            yield Finding(Place(file, path), "a\x1b[31m\nb")

    looked = look_at(base_files())
    checked = Checked(content=looked.content, derived=looked.derived)
    problems = run_rules(checked, [check_twice])
    assert [each.place[:2] for each in problems] == [
        ("a", ()),
        ("a", ("k",)),
        ("a", (2,)),
        ("a", (10,)),
        ("b", ()),
    ]
    assert {each.message for each in problems} == {"a [31m b"}
    assert {each.rule for each in problems} == {"twice"}


def test_an_authors_words_stay_on_one_line() -> None:
    assert one_line("a\n\tb\u2028c\u202ed") == "a b c d"
    assert len(one_line("a" * 9_000)) == 600
