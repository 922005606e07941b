"""The rule article-gives-key-away."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.INFO)
def check_article_gives_key_away(checked: Checked) -> Iterator[Finding]:
    """A stem that ends in “a” or “an” fits all its options.

    Why: “It is kept in an ...” leaves only what begins with a vowel, whatever is right.
    Bad: `stem: The blade is kept in an` with `right: open tray` and `wrong: closed box`
    Good: `stem: The blade is kept in`, and the article stands in the options.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 28c.
    """
    words = checked.item_words
    if words is None:
        return
    articles = words.before_vowel | words.before_other
    for read in checked.items:
        last = read.stem_words[-1] if read.stem_words else ""
        if last not in articles:
            continue
        vowel = last in words.before_vowel
        unfit = [
            each
            for each in read.wrong
            if each.text[:1].casefold().startswith(tuple(words.vowels)) != vowel
        ]
        if unfit:
            yield Finding(
                unfit[0].option.place,
                f"“{unfit[0].text}” does not fit the “{last}” at the end of {read.name}",
                "Put the article into the options.",
                (read.item.place,),
            )
