"""The rule checked-too-long-ago."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.constants import LOOK_UP_AGAIN_DAYS
from basinside.problem import Level


@rule(level=Level.WARN, dated=True)
def check_checked_too_long_ago(checked: Checked) -> Iterator[Finding]:
    """A value is looked up in its source again within two years.

    Why: sources get new editions, labels new numbers, and a slip in copying is found only by who
    opens the source again.
    This is judged only when the day is given: `basinside check --today 2026-11-20`.
    Bad: `checked: 2024-09-14` in November 2026.
    Good: looked up again, and `checked: 2026-11-20`.
    Source: common practice.
    """
    today = checked.today
    if today is None:
        return
    for name, figure in checked.content.figures.items():
        if figure.checked and (today - figure.checked).days > LOOK_UP_AGAIN_DAYS:
            yield Finding(
                figure.place.at("checked"),
                f"{name} was last looked up on {figure.checked} ({checked.cited(figure.source)})",
                "Look it up again, then write the new day.",
                (figure.place,),
            )
