"""The demonstration's model, read from the checkout."""

from functools import cache
from pathlib import Path
from typing import Any

from basinside.files import read_authored
from basinside.load.content import load
from basinside.model.content import Content
from basinside.model.figure import SourceSays
from basinside.model.handbook import Clinic, Regulator
from basinside.quantity import Quantity

CHECKOUT = Path(__file__).resolve().parents[2]


@cache
def raw() -> dict[str, bytes]:
    """Return the files of the demonstration; not to be changed."""
    return read_authored(CHECKOUT)


@cache
def content() -> Content:
    """Return the model of the demonstration, which must load without a problem."""
    model, problems = load(raw())
    assert problems == []
    return model


def printed(says: SourceSays | None) -> dict[str, Any]:
    """Return what the content says that its source prints, without absent keys."""
    if says is None:
        return {}
    keys = ("at_least", "at_most", "exactly", "between")
    return {key: getattr(says, key) for key in keys if getattr(says, key) is not None}


def clinic() -> Clinic:
    """Return the demonstration's clinic."""
    handbook = content().handbook
    assert handbook is not None
    return handbook.clinic


def regulator(vessel: str) -> Regulator:
    """Return what holds the pressure of a vessel."""
    owned = content().vessel(vessel)
    assert owned is not None
    assert owned.regulator is not None
    return owned.regulator


def stock_strength() -> Quantity:
    """Return the strength of the chlorine in the bottle."""
    product = content().agents["chlorine"].product
    assert product is not None
    assert product.strength is not None
    return product.strength
