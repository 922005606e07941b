"""The rule strength-words-exact."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.check.strength_words import DEGREES, QUOTED, RATIO, STRENGTH_WORDS, StrengthWords
from basinside.model.equipment import Agent
from basinside.model.prose import references
from basinside.problem import Level, Place
from basinside.quantity import Quantity
from basinside.units import Kind


@rule(level=Level.STOP)
def check_strength_words_exact(checked: Checked) -> Iterator[Finding]:
    """The strength of chlorine is said in one exact way, in values and in sentences.

    Why: “1:10” is one part in ten or one part and ten. From a bottle of 5 % that is 0.5 % or
    0.45 %. A degree is about 0.3 % available chlorine; a label of 5.25 % sodium hypochlorite holds
    5 % available chlorine; 100 mL of 5 % added to a litre make 0.45 %, made up to a litre 0.5 %.
    Values of chlorine are in % or ppm available chlorine. Words in quotation marks are spoken
    about and are not judged, nor is a language that has no list here.
    Bad: `do: Mix bleach 1:10.`, `do: Take 5 % bleach.`, `strength: 5 % w/v` at chlorine.
    Good: `do: Take one part and {{ chlorine.water-parts }} of water.`,
    `strength: 5 % available chlorine`, an amount for each litre “made up to one litre”.
    Source: CDC, Best practices for environmental cleaning, appendix E, examples 1 and 3 and
    footnote 2; Stanford University, Biosafety manual, bleach solutions (1:10 as one in ten).
    """
    yield from _values(checked)
    handbook = checked.content.handbook
    language = handbook.language.partition("-")[0].casefold() if handbook else ""
    words = STRENGTH_WORDS.get(language)
    per_litre = _liquid_amounts(checked)
    ambiguous = {
        text: said
        for text in checked.sentence_texts
        if (said := _ambiguous(checked, words, text, per_litre))
    }
    for each in checked.sentences if ambiguous else ():
        if each.text in ambiguous:
            yield Finding(each.place, *ambiguous[each.text])


def _values(checked: Checked) -> Iterator[Finding]:
    """Yield findings for strengths of chlorine that are not in available chlorine."""
    agents = checked.content.agents
    for agent in agents.values():
        if agent.family != "chlorine":
            continue
        if agent.product and agent.product.strength:
            place = agent.product.place.at("strength")
            yield from _kind(place, agent, agent.product.strength)
        limit = agent.strength_check.at_least if agent.strength_check else None
        figure = checked.figure(limit)
        if limit and figure:
            yield from _kind(limit.place.at("figure"), agent, figure.value)
    for route in checked.content.routes.values():
        by = agents.get(route.agent or "")
        figure = checked.figure(route.strength)
        if by and by.family == "chlorine" and route.strength and figure:
            yield from _kind(route.strength.place.at("figure"), by, figure.value)
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            strength = placed.step.strength
            if strength and placed.agent and placed.agent.family == "chlorine":
                figure = checked.figure(strength)
                if figure:
                    yield from _kind(strength.place.at("figure"), placed.agent, figure.value)


def _kind(place: Place, agent: Agent, value: Quantity) -> Iterator[Finding]:
    if value.kind is not Kind.CHLORINE:
        yield Finding(
            place,
            f"the strength of {agent.name} is {amount(value)}, which does not say how much chlorine"
            " is available in it",
            "Write it in % or ppm available chlorine.",
            (agent.place,),
        )


def _liquid_amounts(checked: Checked) -> frozenset[str]:
    """Return the values that say how much liquid chlorine goes into each litre."""
    agents = checked.content.agents
    found = set()
    for name, figure in checked.content.figures.items():
        worked = figure.worked_out
        of = agents.get(worked.of) if worked and worked.of and worked.in_ is None else None
        if of and of.family == "chlorine" and figure.value.kind is Kind.VOLUME:
            found.add(name)
    return frozenset(found)


def _ambiguous(
    checked: Checked, words: StrengthWords | None, text: str, per_litre: frozenset[str]
) -> tuple[str, str] | None:
    """Return what can be read in two ways and its mend, or None; in most texts no sign of it is."""
    if "“" in text or '"' in text or "«" in text:
        text = QUOTED.sub("", text)
    if ":" in text:
        ratio = RATIO.search(text)
        if ratio:
            return (
                f"“{ratio.group()}” can mean one part in all or one part and so many of water",
                "Write one part and how many parts of water.",
            )
    if "°" in text and DEGREES.search(text):
        return _degrees()
    if words is None:
        return None
    if words.degree in text and words.degrees.search(text) and not _exact(checked, words, text):
        return _degrees()
    if "%" in text:
        found = words.product.search(text)
        if found and not words.available.search(text):
            return (
                f"“{found.group()}” does not say how much chlorine is available in it",
                "Write % available chlorine, or refer to the value.",
            )
    if per_litre and "{{" in text and "lit" in text:  # a litre, in every language of the list
        named = next((each.figure for each in references(text) if each.figure in per_litre), None)
        if named and words.added.search(text) and not words.made_up.search(text):
            said = (
                f"{named} is made up to a litre; here it can be read as added to a litre of water"
            )
            return said, "Write “made up to one litre”."
    return None


def _degrees() -> tuple[str, str]:
    said = "degrees of chlorine stand here without how much available chlorine that is"
    return said, "Refer to the value of one degree in % available chlorine."


def _exact(checked: Checked, words: StrengthWords, text: str) -> bool:
    if words.available.search(text):
        return True
    figures = checked.content.figures
    return any(
        each.figure in figures and figures[each.figure].value.kind is Kind.CHLORINE
        for each in references(text)
    )
