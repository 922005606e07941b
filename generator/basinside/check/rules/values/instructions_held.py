"""The rule instructions-held."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.problem import Level


@rule(level=Level.STOP)
def check_instructions_held(checked: Checked) -> Iterator[Finding]:
    """The maker's instructions of each instrument in use lie here, in a language read here.

    Why: which part survives what is written nowhere else, and a copy nobody can read is none. In
    one review of 40 studies missing instructions were among what had let infections through. An
    instrument without a copy is out of use, and has no procedure. What is read here stands in
    `languages_read`; without it the language of the handbook counts.
    Bad: an instrument with a procedure and no `instructions_held`.
    Good: `instructions_held: {where: cupboard 3, languages: [en]}`
    Source: Stuckey and Benowitz, 2019 (failure to follow the instructions for use); common
    practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    read = handbook.languages_read or (handbook.language,)
    seen: set[str] = set()
    for each in checked.sound:
        instrument = each.instrument
        if instrument.instrument in seen:
            continue
        seen.add(instrument.instrument)
        held = instrument.instructions_held
        if held is None:
            yield Finding(
                instrument.place,
                f"{instrument.instrument} is in use and no copy of its instructions is held",
                "Write “instructions_held:” with where and languages, or take it out of use.",
            )
        elif not {_plain(each) for each in held.languages} & {_plain(each) for each in read}:
            yield Finding(
                held.place.at("languages"),
                f"the instructions of {instrument.instrument} are held in"
                f" {listed(held.languages)}; read here: {listed(read)}",
                "Get a copy that can be read, or take it out of use.",
                (instrument.place,),
            )


def _plain(language: str) -> str:
    return language.strip().casefold().partition("-")[0]
