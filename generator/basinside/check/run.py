"""One handbook, all rules, waivers applied: the only door into this room."""

from __future__ import annotations

from datetime import date

from basinside.check.checked import Checked
from basinside.check.explain import FORM_IDS
from basinside.check.registry import RULE_BY_ID, RULES
from basinside.check.rule import find, in_order
from basinside.check.waivers import all_waivers, apply_waivers
from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.problem import Problem


def check(content: Content, derived: Derived, today: date | None = None) -> list[Problem]:
    """Return everything that the rules object to, waived problems marked, in a fixed order.

    Args:
        content: the model as far as it could be read; gaps are no objection here.
        derived: what follows from it.
        today: the day, for the rules that depend on it; without it they are not asked, and
            waivers count however old they are.
    """
    checked = Checked(content=content, derived=derived, today=today)
    found = find(checked, RULES)
    waivers = all_waivers(content)
    silent = frozenset(each.id for each in RULES if content.unread or not each.asked_of(checked))
    return in_order(apply_waivers(found, waivers, RULE_BY_ID, FORM_IDS, today, silent))
