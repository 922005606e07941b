"""What several commands ask for: days, the clinic's folder, phrases that never stand on screen."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

import click

from basinside.model.entry import STAFF_CODE_PATTERN

HERE = click.Path(exists=True, file_okay=False, path_type=Path)
FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
NEW = click.Path(path_type=Path)

F = TypeVar("F", bound=Callable[..., Any])


class Day(click.ParamType[date]):
    """A civil day, typed as 2026-11-20."""

    name = "DATE"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> date:
        """Return the day, or fail with how to write it."""
        if isinstance(value, date):
            return value
        try:
            return date.fromisoformat(str(value))
        except ValueError:
            self.fail(f"“{value}” is no day; write it as 2026-11-20.", param, ctx)


DAY = Day()


class StaffCode(click.ParamType[str]):
    """Who a person is, typed as M-12; asked before anything else is typed in."""

    name = "CODE"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> str:
        """Return the code, or fail with how to write it."""
        if not re.match(STAFF_CODE_PATTERN, str(value)):
            said = f"“{value}” is no staff code; write capital letters, a hyphen and a number"
            self.fail(f"{said}, as M-12.", param, ctx)
        return str(value)


STAFF_CODE = StaffCode()


class Clock(click.ParamType[str]):
    """A time of the day, typed as 09:10 or 9:10."""

    name = "HH:MM"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> str:
        """Return the time with two figures for the hour, or fail with how to write it."""
        found = re.fullmatch(r"([01]?[0-9]|2[0-3]):([0-5][0-9])", str(value))
        if found is None:
            self.fail(f"“{value}” is no time; write it as 09:10.", param, ctx)
        return f"{int(found[1]):02}:{found[2]}"


CLOCK = Clock()


def on_option(text: str) -> Callable[[F], F]:
    """Add ``--on DATE``; today by default."""
    return click.option("--on", type=DAY, help=f"{text} Today by default.")


def day_or_today(day: date | None) -> date:
    """Return the day given, or today by this machine's clock."""
    return day or date.today()  # noqa: DTZ011 - a civil day, where the person sits


def folder_option(function: F) -> F:
    """Add ``--folder``, the clinic's folder."""
    return click.option(
        "--folder", type=HERE, default=".", help="The clinic's folder; here by default."
    )(function)


def phrase_option(name: str, environment: str, text: str) -> Callable[[F], F]:
    """Add an option for a phrase; asked for, unseen, when neither it nor the variable is set."""
    return click.option(
        name,
        envvar=[environment, "BASINSIDE_PHRASE"] if environment else "BASINSIDE_PHRASE",
        metavar="WORDS",
        help=f"{text} Asked for when it is not given; or set BASINSIDE_PHRASE.",
    )


def phrase_of(given: str | None, ask: str) -> str:
    """Return a phrase as typed, asked for without showing it when it was not given."""
    if given is not None:
        return given
    typed: str = click.prompt(ask, hide_input=True)
    return typed


def say(*lines: str) -> None:
    """Print lines."""
    for line in lines:
        click.echo(line)
