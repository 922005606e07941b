"""The rule source-unused."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_source_unused(checked: Checked) -> Iterator[Finding]:
    """A source that is listed is cited somewhere.

    Why: a list of sources is read as what the handbook rests on. One that nothing cites makes it
    look better founded than it is, or was meant for a value that now stands without. What replaces
    a source that is still cited is told by source-superseded.
    Bad: `who-2030` in content/sources.yaml, and no `source: who-2030 ...`.
    Good: cite it, or delete it.
    Source: common practice.
    """
    sources = checked.content.sources
    followed = {each.superseded_by for name, each in sources.items() if name in checked.named}
    for name, source in sources.items():
        if name not in checked.named and name not in followed:
            yield Finding(
                source.place,
                f"nothing cites {name} ({source.by}, {source.title})",
                "Cite it where it belongs, or delete it.",
            )
