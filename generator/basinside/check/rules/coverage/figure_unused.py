"""The rule figure-unused."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_figure_unused(checked: Checked) -> Iterator[Finding]:
    """A value that is kept is used somewhere.

    Why: a value that nothing refers to is one that somebody forgot to put into a step, or a left
    over that the next reader takes for the rule here.
    A value is used when a field, a sentence, another value or an item refers to it.
    Bad: `rinse.time` in content/figures, and no step with `{figure: rinse.time}`.
    Good: use it, or delete it.
    Source: common practice.
    """
    used = checked.named
    for name, figure in checked.content.figures.items():
        if name not in used:
            yield Finding(
                figure.place,
                f"nothing uses the value {name}, {figure.is_}",
                "Use it where it belongs, or delete it.",
            )
