"""The rule contacts-present."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.procedure import Danger
from basinside.model.words import DangerKind, IncidentKind
from basinside.problem import Level

_HARM: Final[frozenset[IncidentKind]] = frozenset(
    {
        "eye splash",
        "skin splash",
        "swallowed",
        "breathed in",
        "blood exposure",
        "sharps injury",
        "burn",
        "used unprocessed",
    }
)
"""Kinds of incident in which somebody is hurt."""
_AFTER: Final[dict[DangerKind, tuple[IncidentKind, ...]]] = {
    "hot": ("burn",),
    "steam under pressure": ("burn",),
    "sharp": ("sharps injury",),
    "corrosive": ("skin splash", "eye splash"),
    "gas": ("breathed in",),
    "infection": ("blood exposure",),
}
"""What happens to somebody whom a danger meets."""


@rule(level=Level.STOP, of_all=True)
def check_contacts_present(checked: Checked) -> Iterator[Finding]:
    """Whoever is hurt finds a page, and on it whom to ring by day and by night.

    Why: medicine after blood in the eye works best within hours, and at night the list on the
    office wall helps nobody. Each danger that a step names has an incident of its kind, and an
    incident of harm names a contact, which says day and night.
    Bad: an incident with `kinds: [burn]` and no `contact`; or `danger: {kind: hot, ...}` and no
    incident of the kind `burn`.
    Good: `kinds: [burn]` with `contact: clinical-officer`.
    Source: WHO, Guidelines on drawing blood, 2010, annex (report at once); common practice for day
    and night.
    """
    there: set[IncidentKind] = set()
    for incident in checked.content.incidents.values():
        there.update(incident.kinds)
        harm = [kind for kind in incident.kinds if kind in _HARM]
        if harm and incident.contact is None:
            yield Finding(
                incident.place,
                f"the incident {incident.incident} is about harm ({listed(harm)}) and names nobody"
                " to ring",
                "Write “contact:” with one of the handbook's contacts.",
            )
    handbook = checked.content.handbook
    for kinds, (danger, where) in _dangers(checked).items():
        if not there.intersection(kinds):
            yield Finding(
                danger.place,
                f"{where} warns of “{danger.kind}”, and no incident says what is done about"
                f" {' or '.join(kinds)}",
                f"Write an incident with “kinds: [{kinds[0]}]”.",
                (handbook.place,) if handbook else (),
            )


def _dangers(checked: Checked) -> dict[tuple[IncidentKind, ...], tuple[Danger, str]]:
    """Return what can follow from the dangers that steps name, with where one is named first."""
    found: dict[tuple[IncidentKind, ...], tuple[Danger, str]] = {}
    for name, whole in checked.derived.procedures.items():
        for placed in whole.steps:
            danger = placed.danger
            if danger is not None and danger.kind in _AFTER:
                found.setdefault(_AFTER[danger.kind], (danger, f"{placed.step.step} of {name}"))
    return found
