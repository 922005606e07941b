"""What several commands ask for: days, the clinic's folder, phrases that never stand on screen."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

import click

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
