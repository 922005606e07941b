"""What is asked before somebody may work alone, line by line, in words."""

from __future__ import annotations

from basinside.model.handbook import KnowledgeNeed, PolicyLine, PracticeNeed
from basinside.render.view_types import FactView, Prose, plain
from basinside.render.views.spot import Spot, ended, fact
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, listed, n_, sentence


def policy_facts(spot: Spot) -> tuple[FactView, ...]:
    """Return each line of the policy: for what it holds, and what it asks."""
    handbook = spot.desk.content.handbook
    return tuple(
        fact(_scope(spot, line), _asked(spot, line))
        for line in (handbook.policy if handbook else ())
    )


def _scope(spot: Spot, line: PolicyLine) -> str:
    named = []
    for each in line.scope:
        if each == "all":
            named.append(_("every procedure"))
        elif each in spot.desk.content.procedures:
            named.append(procedure_title(spot.desk.whole(each)))
        else:
            named.append(each.replace("-", " "))
    return sentence(listed(named))


def _asked(spot: Spot, line: PolicyLine) -> Prose:
    said = []
    if line.knowledge:
        said.append(_knowledge(spot, line.knowledge))
    if line.practice:
        said.append(_practice(line.practice))
    if line.lasts:
        said.append(_("The record lasts {time}.").format(time=line.lasts.text()))
    if line.lapses_if_not_done_for:
        said.append(
            _("It lapses when the work was not done for {time}.").format(
                time=line.lapses_if_not_done_for.text()
            )
        )
    if line.way_back:
        back = line.way_back
        said.append(
            _("The way back: {runs}, {real} in real work.").format(
                runs=n_("one run watched", "{n} runs watched", back.runs), real=back.of_which_real
            )
        )
    text = plain(" ".join(said))
    if line.after_last_attempt:
        more = spot.prose(ended(line.after_last_attempt))
        text = (*text, *plain(_(" After the last attempt failed: ")), *more)
    return text


def _knowledge(spot: Spot, need: KnowledgeNeed) -> str:
    assessment = spot.desk.content.assessments.get(need.assessment)
    name = assessment.title if assessment else need.assessment
    if need.not_older_than is None:
        return _("The assessment “{name}” passed.").format(name=name)
    return _("The assessment “{name}” passed, not more than {time} ago.").format(
        name=name, time=need.not_older_than.text()
    )


def _practice(need: PracticeNeed) -> str:
    said = [n_("Watched once", "Watched {n} times", need.runs)]
    if need.of_which_real:
        said.append(n_("once in real work", "{n} times in real work", need.of_which_real))
    if need.by_observers > 1:
        said.append(_("by {n} different people").format(n=need.by_observers))
    if need.on_days > 1:
        said.append(_("on {n} different days").format(n=need.on_days))
    if need.not_older_than:
        said.append(_("not more than {time} ago").format(time=need.not_older_than.text()))
    return ended(", ".join(said))
