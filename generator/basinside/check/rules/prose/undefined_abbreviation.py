"""The rule undefined-abbreviation."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_sentences import is_asked
from basinside.check.known_words import explained_forms, is_explained, said_loudly, short_forms
from basinside.check.rule import Finding, rule
from basinside.check.strength_words import QUOTED
from basinside.problem import Level


@rule(level=Level.WARN)
def check_undefined_abbreviation(checked: Checked) -> Iterator[Finding]:
    """A short form of capitals stands in the glossary, or is explained in brackets beside it.

    Units, what is part of a name that the handbook gives, and what stands in quotation marks need
    no explaining. A word that the handbook also writes in small letters is no short form but said
    loudly, as on a label. Of questions, reasons are read here; what they ask is read by
    abbreviation-undefined.
    Why: who does not know what the letters stand for skips the sentence that holds them.
    Bad: `why: HLD is not enough here.`
    Good: `why: High-level disinfection is not enough here.`
    Source: common practice.
    """
    reader, explained = checked.reader, explained_forms(checked.content)
    capitals = [piece for piece in reader.pieces if not piece.islower()]
    shorts = {short for piece in capitals for short in short_forms(piece)}
    sought = {short for short in shorts if not is_explained(short, explained, "")}
    sought -= said_loudly(sought, "\n".join(reader.pieces)) if sought else set()
    if not sought:
        return
    saying = {text for text in reader if any(short in text for short in sought)}
    for each in checked.prose if saying else ():
        if each.text not in saying:
            continue
        for short in dict.fromkeys(short_forms(QUOTED.sub(" ", each.text))):
            if short in sought and not is_asked(each) and f"({short}" not in each.text:
                yield Finding(
                    each.place,
                    f"“{short}” stands here, and the glossary does not have it",
                    "Write it out, or put it into content/words.yaml.",
                    (each.entry,),
                )
