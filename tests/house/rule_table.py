"""The table of rules that DEVELOPERS.md shows: ``python -m tests.house.rule_table`` prints it."""

from collections.abc import Iterable

from basinside.check.registry import RULES
from basinside.check.rule import Rule

# Numbers of the writing guide for items that our rules answer to: Haladyna, Downing and Rodriguez,
# A review of multiple-choice item-writing guidelines, 2002, and what a linter can see of them.
WRITING_GUIDE = {"one-right-option": "L01"}


def table(rules: Iterable[Rule]) -> str:
    """Return the rules as a Markdown table: id, level, number of the guide, summary line."""
    rows = [
        f"| {each.id} | {each.level.name.lower()}{', with a day' if each.dated else ''} |"
        f" {WRITING_GUIDE.get(each.id, '')} | {' '.join(each.page.partition(chr(10))[0].split())} |"
        for each in rules
    ]
    return "\n".join(["| id | level | guide | says |", "| --- | --- | --- | --- |", *rows]) + "\n"


if __name__ == "__main__":
    print(table(RULES), end="")
