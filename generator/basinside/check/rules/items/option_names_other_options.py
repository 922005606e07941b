"""The rule option-names-other-options."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_option_names_other_options(checked: Checked) -> Iterator[Finding]:
    """No option speaks of other options: “all of the above”, “both A and B”.

    Why: options are mixed anew for every learner and every form, so that nothing stands above and
    no option is A. Who knows that one option is wrong also knows that “all” is.
    Bad: `wrong: All of the above`
    Good: `kind: multiple`, where each option is judged by itself.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guidelines 9, 25 and 26.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.names_others_with.isdisjoint(read.said):
            continue
        for each in read.options:
            if words.names_others_with.isdisjoint(each.words):
                continue
            found = words.names_others.search(each.text)
            if found:
                yield Finding(
                    each.option.place,
                    f"an option of {read.name} speaks of other options: “{found[0].strip()}”",
                    "Say what is meant, or write “kind: multiple”.",
                    (read.item.place,),
                )
