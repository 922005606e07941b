"""The table of rules that DEVELOPERS.md shows: ``python -m tests.house.rule_table`` prints it."""

from collections.abc import Iterable

from basinside.check.registry import RULES
from basinside.check.rule import Rule

GUIDE: dict[str, tuple[str, ...]] = {
    "L01": ("one-right-option",),
    "L02": ("option-said-twice",),
    "L03": ("options-three-to-five",),
    "L04": ("option-names-other-options", "none-of-these"),
    "L05": ("negative-unmarked",),
    "L06": ("double-negative",),
    "L07": ("absolutes-in-distractors",),
    "L08": ("longest-option-is-right", "longest-too-often-right"),
    "L09": ("right-option-same-place",),
    "L10": ("numbers-out-of-order",),
    "L11": ("ranges-overlap",),
    "L12": ("key-echoes-stem",),
    "L13": ("article-gives-key-away",),
    "L14": ("options-not-parallel",),
    "L15": ("stem-without-question",),
    "L16": ("blank-in-the-middle",),
    "L17": ("item-hard-to-read",),
    "L18": ("vague-frequency",),
    "L19": ("item-rests-on-nothing",),
    "L20": ("option-without-reason",),
    "L21": ("asked-twice",),
    "L22": ("item-cues-another",),
    "L23": ("asks-for-another-number",),
    "L24": ("number-without-tolerance", "numeric-tolerance-on-unsafe-side"),
    "L25": ("critical-order-says-what-matters",),
    "L26": ("critical-topic-never-asked",),
    "L27": ("blueprint-unfillable",),
    "L28": ("asks-for-opinion",),
    "L29": ("true-too-often",),
    "L30": ("picture-without-words", "colour-alone"),
    "L31": ("abbreviation-undefined",),
    "L32": ("source-changed-since-read",),
}
"""What a linter can see of a guide for writing items (Haladyna, Downing and Rodriguez, A review of
multiple-choice item-writing guidelines, 2002) and of what an assessment needs besides, numbered by
us: number -> our rules."""

GUIDE_OF = {rule: number for number, rules in GUIDE.items() for rule in rules}


def table(rules: Iterable[Rule]) -> str:
    """Return the rules as a Markdown table: id, level, number of the guide, summary line."""
    rows = [
        f"| {each.id} | {each.level.name.lower()}{', with a day' if each.dated else ''} |"
        f" {GUIDE_OF.get(each.id, '')} | {' '.join(each.page.partition(chr(10))[0].split())} |"
        for each in rules
    ]
    return "\n".join(["| id | level | guide | says |", "| --- | --- | --- | --- |", *rows]) + "\n"


def guide_table(rules: Iterable[Rule]) -> str:
    """Return the numbers of the guide as a Markdown table: number, our rule, its level."""
    by_id = {each.id: each for each in rules}
    rows = [
        f"| {number} | {name} | {by_id[name].level.name.lower()} |"
        for number, names in GUIDE.items()
        for name in names
    ]
    return "\n".join(["| guide | id | level |", "| --- | --- | --- |", *rows]) + "\n"


if __name__ == "__main__":
    print(table(RULES))
    print(guide_table(RULES), end="")
