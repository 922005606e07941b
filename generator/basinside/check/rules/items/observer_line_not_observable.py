"""The rule observer-line-not-observable."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_observer_line_not_observable(checked: Checked) -> Iterator[Finding]:
    """What an observer is asked to see can be seen or heard: no “knows”, no “understands”.

    Looked at: the lines of observations and their cues.
    Why: two people who look at the same pair of hands must write down the same. What somebody
    knows shows in what the hands do, or in an answer.
    Bad: `see: Understands why the lid is lifted away from the face.`
    Good: `see: Lifts the far edge of the lid first.`
    Source: Miller, The assessment of clinical skills, competence, performance, 1990 (from memory).
    """
    words = checked.item_words
    if words is None:
        return
    for name, observation in checked.content.observations.items():
        lines = [
            *((f"line {each.line}", each.see, each.place.at("see")) for each in observation.lines),
            *(
                ("a cue", text, observation.place.at("cues", n))
                for n, text in enumerate(observation.cues)
            ),
        ]
        for what, text, place in lines:
            found = words.not_seen.search(text)
            if found:
                yield Finding(
                    place,
                    f"{what} of {name} asks for what nobody can see: “{found[0]}”",
                    "Say what the hands do, or what is answered.",
                    (observation.place,),
                )
