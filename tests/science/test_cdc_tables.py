"""Figures of the demonstration that cite a table of CDC 2008 say what that table prints."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from basinside.quantity import Quantity, QuantityError, parse_quantity

CHECKOUT = Path(__file__).resolve().parents[2]
TABLES: dict[str, Any] = yaml.safe_load(
    (CHECKOUT / "tests/reference/cdc_tables.yaml").read_text(encoding="utf-8")
)
FIGURES: dict[str, dict[str, Any]] = {
    name: figure
    for path in sorted((CHECKOUT / "content/figures").glob("*.yaml"))
    for name, figure in (
        yaml.safe_load(path.read_text(encoding="utf-8")).get("figures") or {}
    ).items()
}


def table_of(figure: dict[str, Any]) -> str | None:
    """Return the table that a figure cites, whatever stands behind its number."""
    cited = re.match(r"cdc-2008 (table \d+)\b", str(figure.get("source", "")), re.IGNORECASE)
    return cited[1].lower() if cited and cited[1].lower() in TABLES else None


CITING = {name: table for name, each in FIGURES.items() if (table := table_of(each))}


def quantities(cell: object) -> list[Quantity]:
    """Return the one or two amounts of a cell; none for a cell that is no amount."""
    read = []
    for each in cell if isinstance(cell, list) else [cell]:
        try:
            read.append(parse_quantity(str(each)))
        except QuantityError:
            return []
    return read


def cells(name: str, table: dict[str, Any]) -> list[list[Quantity]]:
    """Return the cells that may stand behind a figure: its own, or its row's, or the table's."""
    if own := table["figures"].get(name):
        return [quantities(table["rows"][own["row"]][own["cell"]])]
    agent, _, cell = name.partition(".")
    rows = [row for row in table["rows"].values() if row["agent"] == agent]
    if rows and cell in rows[0]:
        return [quantities(rows[0][cell])]
    of = rows or table["rows"].values()
    return [found for row in of for each in row.values() if (found := quantities(each))]


def same(one: Quantity, other: Quantity) -> bool:
    return one.kind is other.kind and one.base == other.base


def disagreement(name: str, figure: dict[str, Any], table: dict[str, Any]) -> str | None:
    """Return what is wrong with a figure that cites the table; None when a cell agrees."""
    says: dict[str, Any] = figure.get("source_says") or {}
    if not says:
        return f"{name} cites the table and does not say what it prints"
    value = parse_quantity(str(figure["value"]))
    for cell in cells(name, table):
        low, high = cell[0], cell[-1]
        printed = [each for said in says.values() for each in quantities(said)]
        whole = "between" not in says or (
            same(printed[0], low) and same(printed[-1], high) and len(cell) == len(printed)
        )
        if not whole or not all(any(same(each, end) for end in cell) for each in printed):
            continue
        least = "at_least" not in says or value.base >= low.base
        most = "at_most" not in says or value.base <= high.base
        inside = {"at_least", "at_most"} & set(says) or low.base <= value.base <= high.base
        if value.kind is low.kind and least and most and inside:
            return None
    return f"{name}: {figure['value']}, {says} is not in the table"


def test_both_tables_are_cited() -> None:
    assert set(CITING.values()) == set(TABLES)
    assert len(CITING) >= 3


@pytest.mark.parametrize("name", CITING)
def test_a_figure_that_cites_the_table_agrees_with_its_row(name: str) -> None:
    assert disagreement(name, FIGURES[name], TABLES[CITING[name]]) is None


@pytest.mark.parametrize(
    ("name", "table", "value", "says"),
    [
        ("glutaraldehyde.hold", "table 4", "12 min", {"at_least": "12 min"}),  # another agent's
        ("glutaraldehyde.life", "table 4", "14 days", {"between": ["14 days", "28 days"]}),
        ("glutaraldehyde.life", "table 4", "31 days", {"between": ["14 days", "30 days"]}),
        ("peroxide.hold", "table 4", "20 min", {"at_least": "30 min"}),
        ("opa.strength-limit", "table 4", "0.3 % w/w", {"at_least": "0.3 % w/w"}),
        ("opa.hold", "table 4", "12 min", {}),
        ("peracetic.hold", "table 4", "30 min", {"at_least": "30 min"}),  # the table prints none
        ("unopened.life", "table 4", "3 years", {"at_most": "3 years"}),
        ("steam.hold-wrapped", "table 7", "15 min", {"at_least": "15 min"}),  # that of 132 °C
        ("steam.something", "table 7", "7 min", {"exactly": "7 min"}),
    ],
)
def test_a_wrong_figure_would_be_found(
    name: str, table: str, value: str, says: dict[str, Any]
) -> None:
    assert disagreement(name, {"value": value, "source_says": says}, TABLES[table])


@pytest.mark.parametrize(
    ("name", "table", "value", "says"),
    [
        ("glutaraldehyde.hold", "table 4", "45 min", {"between": ["20 min", "90 min"]}),
        ("peroxide.life", "table 4", "20 days", {"at_most": "3 weeks"}),
        ("steam.hold-wrapped", "table 7", "35 min", {"at_least": "30 min"}),
        ("steam.gravity-textiles", "table 7", "25 min", {"exactly": "25 min"}),
    ],
)
def test_a_right_figure_would_pass(name: str, table: str, value: str, says: dict[str, Any]) -> None:
    assert disagreement(name, {"value": value, "source_says": says}, TABLES[table]) is None
