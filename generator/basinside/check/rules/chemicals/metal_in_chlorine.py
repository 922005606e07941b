"""The rule metal-in-chlorine."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.problem import Level


@rule(level=Level.WARN)
def check_metal_in_chlorine(checked: Checked) -> Iterator[Finding]:
    """Metal in chlorine has a longest time and is rinsed afterwards, or takes another way.

    Why: chlorine pits even stainless steel, and what is pitted can no longer be cleaned. Bleach on
    everything was seen to damage the instruments of whole hospitals.
    Bad: a part with `made_of: metal` in a chlorine bath that has no `no_longer_than`.
    Good: `no_longer_than: {figure: chlorine.longest}` at the time, and a step with `action: rinse`
    after it; or boiling.
    Source: MSF, Cholera guideline, appendix 15 (rinse stainless steel after chlorine); Fast and
    others, BMJ Global Health 2017;2(Suppl 4):e000428 (bleach on everything).
    """
    for each in checked.sound:
        agent = checked.content.agents.get(each.route.agent or "")
        metal = [part for part in each.whole.parts if part.made_of == "metal"]
        if agent is None or agent.family != "chlorine" or not metal or not each.level_steps:
            continue
        names = listed(part.shown_name for part in metal)
        also = (each.whole.procedure.place, *(part.place for part in metal))
        for placed in each.level_steps:
            if placed.hold is None or placed.hold.no_longer_than is None:
                yield Finding(
                    placed.step.place,
                    f"{each.name} has metal ({names}) in {agent.name} in {placed.step.step}, and"
                    " nothing says for how long at most",
                    "Write “no_longer_than:” at its time, or choose another route.",
                    also,
                )
        last = each.level_steps[-1]
        if all(later.action != "rinse" for later in each.whole.steps[last.number :]):
            yield Finding(
                last.step.place,
                f"{each.name} has metal ({names}) in {agent.name} and does not rinse it after"
                f" {last.step.step}",
                "Put a step with “action: rinse” after it.",
                also,
            )
