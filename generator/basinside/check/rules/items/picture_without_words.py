"""The rule picture-without-words."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_picture_without_words(checked: Checked) -> Iterator[Finding]:
    """An item with a picture says in `picture_shows` what can be seen on it.

    Why: who cannot see the picture, or has it as a bad photocopy, could not answer.
    Bad: `picture: boil-rolling.svg` alone.
    Good: besides, `picture_shows: A pot whose water rolls over its whole face.`
    Source: W3C, Web Content Accessibility Guidelines 2.2, 1.1.1.
    """
    for read in checked.items:
        if read.picture and not read.item.picture_shows:
            yield Finding(
                read.item.place.at("picture"),
                f"{read.name} has a picture and does not say what it shows",
                "Write “picture_shows:”, without giving the answer away.",
                (read.item.place,),
            )
