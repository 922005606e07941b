"""The rule question-about-what-we-do-not-own."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_question_about_what_we_do_not_own(checked: Checked) -> Iterator[Finding]:
    """No item is about a route, or a procedure of a route, that this clinic does not have.

    Looked at: `about` and the steps of `rests_on`.
    Why: nobody here can practise it, and room for what is done every day is lost.
    Bad: an item about a steam procedure while `clinic: {has: [boil]}`.
    Good: the item waits until the vessel is there.
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    held = frozenset(handbook.clinic.has)
    gone: dict[str, str] = {name: name for name in checked.content.routes if name not in held}
    for name, procedure in checked.content.procedures.items():
        if procedure.route is not None and procedure.route in gone:
            gone[name] = procedure.route
    if not gone:
        return
    for read in checked.items:
        steps = read.rests_on.steps if read.rests_on else ()
        for key, named in (("about", read.about), ("rests_on", steps)):
            found = next((each for each in named if each.partition("/")[0] in gone), None)
            if found is not None:
                route = gone[found.partition("/")[0]]
                yield Finding(
                    read.item.place.at(key),
                    f"{read.name} is about {found}; this clinic does not have the route {route}",
                    "Delete the item, or write the route into “has:” of content/handbook.yaml.",
                    (read.item.place,),
                )
                break
