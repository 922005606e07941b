"""Every value of the demonstration, compared with what its source prints, typed a second time."""

from __future__ import annotations

from typing import Any

import pytest
import yaml

from basinside.quantity import parse_quantity
from tests.content.demo import CHECKOUT, content, printed

TYPED: dict[str, Any] = yaml.safe_load(
    (CHECKOUT / "tests/reference/demo_values.yaml").read_text(encoding="utf-8")
)
FIGURES, CHOICES = TYPED["figures"], TYPED["choices"]
LEAST_VALUES = 25

SECOND_HAND = "published (read second-hand)"
UNSOURCED = {"common practice", "from memory"}
# What a value may claim, by how well its row in the table of facts was read; less is allowed.
ALLOWED = {
    "V": {"published", "computed", SECOND_HAND, *UNSOURCED},
    "C": {"computed", *UNSOURCED},
    "V2": {SECOND_HAND, *UNSOURCED},
    "M": {"from memory"},
    "CP": {"common practice"},
}


def typed(says: dict[str, Any]) -> dict[str, Any]:
    return {
        key: tuple(map(parse_quantity, said)) if isinstance(said, list) else parse_quantity(said)
        for key, said in says.items()
    }


def cited(citation: str | None) -> tuple[str, str]:
    """Return who stands behind a citation and the place in it."""
    if citation is None:
        return "", ""
    source, _, place = citation.partition(" ")
    return content().sources[source].by, place


def assert_sourced(row: dict[str, Any], basis: str | None, citation: str | None) -> None:
    by, place = cited(citation)
    assert basis == row["basis"]
    assert basis in ALLOWED[row["status"]]
    assert (basis in UNSOURCED) == (citation is None)
    assert row.get("by", "") in by
    assert place == row.get("at", "")


def test_the_table_has_each_value_and_each_choice_and_no_other() -> None:
    assert set(content().figures) == set(FIGURES)
    assert set(content().choices) == set(CHOICES)
    assert len(FIGURES) >= LEAST_VALUES


@pytest.mark.parametrize("name", FIGURES)
def test_value_is_what_its_source_allows(name: str) -> None:
    row, figure = FIGURES[name], content().figures[name]
    assert figure.value == parse_quantity(row["value"])
    assert printed(figure.source_says) == typed(row.get("says", {}))
    assert_sourced(row, figure.basis, figure.source)
    assert bool(row.get("says")) == (figure.basis not in UNSOURCED)
    assert (figure.checked is None) == (figure.source is None)


@pytest.mark.parametrize("name", FIGURES)
def test_typed_value_keeps_what_the_typed_source_asks_for(name: str) -> None:
    value, says = parse_quantity(FIGURES[name]["value"]), typed(FIGURES[name].get("says", {}))
    assert says.get("at_least", value) <= value <= says.get("at_most", value)
    assert says.get("exactly", value) == value
    low, high = says.get("between", (value, value))
    assert low <= value <= high


@pytest.mark.parametrize("name", FIGURES)
def test_a_row_without_a_place_in_the_facts_claims_no_source(name: str) -> None:
    row = FIGURES[name]
    assert row["row"] != "none" or row["status"] in {"M", "CP"}
    assert ("by" in row) == (row["basis"] not in UNSOURCED)


@pytest.mark.parametrize("name", CHOICES)
def test_choice_names_both_sides_with_their_sources(name: str) -> None:
    row, choice = CHOICES[name], content().choices[name]
    assert choice.chosen == row["chosen"]
    assert_sourced(row["ours"], choice.basis, choice.source)
    assert choice.not_chosen
    for other, typed_other in zip(choice.not_chosen, row["others"], strict=True):
        assert_sourced(typed_other, other.basis, other.source)
    assert choice.by != choice.second


def test_invented_makers_teach_no_science() -> None:
    invented = {name for name, each in content().sources.items() if each.by == "invented maker"}
    assert invented
    science = [figure.source for figure in content().figures.values()]
    science += [choice.source for choice in content().choices.values()]
    science += [
        reached.source
        for instrument in content().instruments.values()
        for reached in instrument.reaches.values()
    ]
    assert not [each for each in science if each and each.partition(" ")[0] in invented]
    assert not [name for name, each in content().figures.items() if each.basis == "manufacturer"]
