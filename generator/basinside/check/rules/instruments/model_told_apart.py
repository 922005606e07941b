"""The rule model-told-apart."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step, cleaned_at
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_model_told_apart(checked: Checked) -> Iterator[Finding]:
    """Where a look-alike would be ruined by the route, a step looks which model it is.

    Why: two models lie in one box, one is boiled for years and the other melts the first time. By
    then it lies in the pot.
    Asked of an instrument with a `look_alikes` entry for another that does not survive the same
    route, or of which nothing says so: before the parts are cleaned a step with `action: inspect`
    looks at the model.
    Bad: put on, take apart, count, clean.
    Good: put on, `action: inspect` with “Find the raised ring.”, take apart.
    Source: the makers' instructions, cited at `survives`; common practice.
    """
    for each in checked.sound:
        others = [name for name in _look_alikes(each) if not _may(checked, name, each)]
        cleaned = cleaned_at(each)
        if not others or not cleaned:
            continue
        if not any(one.step.action == "inspect" for one in each.whole.steps[: cleaned - 1]):
            yield at_step(
                each,
                each.whole.steps[cleaned - 1],
                f"{each.name} does not look which model it is before {each.route.route} ruins"
                f" {checked.content.instruments[others[0]].name}, which looks like it",
                "Put a step with “action: inspect” before the cleaning.",
            )


def _look_alikes(each: Sound) -> list[str]:
    return [alike.instrument for alike in each.instrument.look_alikes]


def _may(checked: Checked, name: str, each: Sound) -> bool:
    """Return whether the other stands the same route; what is not known counts as if it did."""
    other = checked.content.instruments.get(name)
    if other is None or other.label == "single use":
        return True
    return all(part.stands(each.route.route) for part in other.parts)
