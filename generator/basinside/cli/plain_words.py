"""What the command line's own library objects to, in the words of whoever types."""

from __future__ import annotations

import re
from typing import Final

import click

_PLAINER: Final[tuple[tuple[re.Pattern[str], str], ...]] = (
    (
        re.compile(r"Got unexpected extra arguments? \((?P<words>.*)\)", re.DOTALL),
        "“{words}” is more than was asked for here. Words with spaces stand in quotes.",
    ),
    (
        re.compile(r"Option '(?P<option>[^']*)' requires an argument\."),
        "Write something after {option}.",
    ),
    (re.compile(r"Missing argument '(?P<what>[^']*)'\."), "{what} is missing."),
    (re.compile(r"Missing option '(?P<what>[^']*)'\."), "{what} is missing."),
    (
        re.compile(r"(?P<before>.*)Directory '(?P<path>.*)' does not exist\.", re.DOTALL),
        "{before}There is no folder “{path}”.",
    ),
    (
        re.compile(r"(?P<before>.*)Directory '(?P<path>.*)' is a file\.", re.DOTALL),
        "{before}“{path}” is a file; a folder is needed.",
    ),
    (
        re.compile(r"(?P<before>.*)File '(?P<path>.*)' does not exist\.", re.DOTALL),
        "{before}There is no file “{path}”.",
    ),
    (
        re.compile(r"(?P<before>.*)File '(?P<path>.*)' is a directory\.", re.DOTALL),
        "{before}“{path}” is a folder; a file is needed.",
    ),
    (
        re.compile(r"(?P<before>.*)'(?P<given>.*)' is not a valid integer\.", re.DOTALL),
        "{before}“{given}” is no whole number.",
    ),
    (
        re.compile(r"No such command '(?P<given>[^']*)'\.(?: Did you mean '(?P<near>[^']*)'\?)?"),
        "There is no command “{given}”.{near}",
    ),
    (
        re.compile(r"No such option '(?P<given>[^']*)'\.?(?P<near>.*)", re.DOTALL),
        "There is no option {given}.{near}",
    ),
)


def in_plain_words(message: str) -> str:
    """Return a message of the library in plain words; any other message as it is."""
    for pattern, plainer in _PLAINER:
        found = pattern.fullmatch(message.strip())
        if found is not None:
            words = {name: text or "" for name, text in found.groupdict().items()}
            near = words.get("near", "").strip()
            if near:
                asked = near if near.startswith(("(", "Did")) else f"Did you mean “{near}”?"
                words["near"] = f" {asked.strip('()')}"
            return plainer.format(**words)
    return message


def plainer(error: click.UsageError) -> click.UsageError:
    """Return an error of usage with its words made plain."""
    return click.UsageError(in_plain_words(error.format_message()), error.ctx)
