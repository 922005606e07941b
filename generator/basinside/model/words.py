"""The closed lists: every word that a field may take, in the order in which it is shown.

Levels and verdicts rise; other lists have no order that means anything. Printed by
``basinside schemas``. An author's word that is not here is a problem naming the nearest.
"""

from __future__ import annotations

from typing import Final, Literal, get_args

Label = Literal["several patients", "single patient", "single use"]
Contact = Literal[
    "sterile tissue",
    "blood stream",
    "mucous membrane",
    "broken skin",
    "whole skin",
    "never the patient",
]
CareLevel = Literal[
    "clean and dry",
    "low-level disinfection",
    "intermediate-level disinfection",
    "high-level disinfection",
    "sterile",
]
StageName = Literal[
    "point of use",
    "preparation",
    "cleaning",
    "disinfection",
    "drying",
    "inspection and maintenance",
    "packaging",
    "sterilization",
    "storage",
    "transport",
]
Action = Literal[
    "wet",
    "wipe",
    "soak",
    "take apart",
    "clean",
    "rinse",
    "dry",
    "inspect",
    "test",
    "lubricate",
    "assemble",
    "pack",
    "load",
    "expose",
    "unload",
    "release",
    "cool",
    "handle",
    "hold",
    "store",
    "transport",
    "mix",
    "measure strength",
    "label",
    "count",
    "record",
    "report",
    "put on",
    "take off",
    "wash hands",
    "discard",
]
VesselKind = Literal["gravity steam", "vacuum steam", "dry heat oven"]
RegulatorKind = Literal["dial and stopcock", "fixed weight", "automatic"]
ProductKind = Literal["liquid", "powder", "tablets", "ready to use"]
RouteKind = Literal["boiling", "steam", "chemical", "wiping", "dry heat"]
Family = Literal[
    "chlorine",
    "aldehyde",
    "peroxide",
    "peracetic",
    "acid",
    "ammonia",
    "detergent",
    "enzyme",
    "alcohol",
    "lubricant",
    "water",
    "saline",
]
Hazard = Literal[
    "corrosive",
    "irritant",
    "toxic",
    "sensitiser",
    "oxidiser",
    "flammable",
    "health hazard",
    "gas with acid",
    "harms water life",
]
DangerKind = Literal[
    "hot",
    "steam under pressure",
    "sharp",
    "corrosive",
    "gas",
    "infection",
    "electricity",
    "slip",
]
Worn = Literal[
    "heavy gloves",
    "thin gloves",
    "waterproof heat gloves",
    "eye protection",
    "face shield",
    "mask",
    "apron",
    "closed shoes",
]
EquipmentKind = Literal[
    "heat",
    "vessel",
    "water",
    "protection",
    "strip or indicator",
    "wrapping",
    "container",
    "brush or tool",
]
PartsAre = Literal["apart", "together"]
MakesSure = Literal[
    "sharps out",
    "all open",
    "all under",
    "no bubbles",
    "nothing touching",
    "nothing added",
    "air from outside",
    "bath still good",
    "water in the vessel",
    "valve and gasket looked at",
    "regulator left alone",
    "room for steam",
    "air out first",
    "air removal tested",
    "no pressure left",
    "wet or torn set aside",
    "indicator inside",
    "indicator read",
    "cool enough to touch",
    "clean cover on",
    "dry and closed",
    "surface wiped between",
]
Writes = Literal[
    "item",
    "unit mark",
    "date",
    "use-by date",
    "load number",
    "staff code",
    "time in",
    "time out",
    "strength",
    "temperature",
    "pressure",
    "indicator",
    "dryness",
    "uses",
    "result",
    "what was done",
]
PartKind = Literal[
    "valve",
    "relief valve",
    "seal",
    "light",
    "battery",
    "hinge",
    "cutting edge",
    "needle",
    "gauge",
    "bag",
]
Material = Literal["metal", "silicone", "rubber", "vinyl", "hard plastic", "glass", "textile"]
Side = Literal["dirty", "clean", "both"]
IncidentKind = Literal[
    "eye splash",
    "skin splash",
    "swallowed",
    "breathed in",
    "blood exposure",
    "sharps injury",
    "burn",
    "spill",
    "failed load",
    "failed bath",
    "recall",
    "vessel fault",
    "power or water cut",
    "used unprocessed",
    "wrong mixture",
    "failed instrument",
    "damaged pack",
    "other",
]
Water = Literal["drinking", "boiled", "sterile"]
Immersion = Literal["floating allowed", "all under", "all under and filled", "never"]
ThenWhat = Literal["retire whole", "replace part", "repair"]
Thinking = Literal["remember", "understand", "apply", "analyse"]
Setting = Literal["real", "simulated", "remote"]
LineVerdict = Literal["met", "met with help", "not met", "not seen"]
Basis = Literal[
    "manufacturer",
    "published",
    "published (read second-hand)",
    "computed",
    "local policy",
    "common practice",
    "from memory",
]
ItemKind = Literal["choice", "multiple", "order", "numeric", "match"]
UnsafeSide = Literal["below", "above", "both", "neither"]
Pool = Literal["practice", "assessment"]
PrintOfClinic = Literal[
    "exposure-card",
    "chemical-accident-card",
    "dilution-card",
    "boiling-and-gauge-card",
    "soak-log",
    "boiling-log",
    "load-record",
    "test-log",
    "cleaning-log",
    "strength-check-log",
    "solution-label",
]
PrintOfProcedure = Literal["wall-chart", "observation"]
PrintOfInstrument = Literal["use-tally"]

LABELS: Final[tuple[Label, ...]] = get_args(Label)
CARE_LEVELS: Final[tuple[CareLevel, ...]] = get_args(CareLevel)
STAGES: Final[tuple[StageName, ...]] = get_args(StageName)
SETTINGS: Final[tuple[Setting, ...]] = get_args(Setting)
LINE_VERDICTS: Final[tuple[LineVerdict, ...]] = get_args(LineVerdict)
THINKING: Final[tuple[Thinking, ...]] = get_args(Thinking)

FORM_KINDS: Final[frozenset[ItemKind]] = frozenset({"choice", "multiple"})
"""Kinds that a sealed form, its answer strip and its slip can hold."""

BASES: Final[tuple[Basis, ...]] = get_args(Basis)
BASES_WITHOUT_SOURCE: Final[frozenset[Basis]] = frozenset({"common practice", "from memory"})

PRINTS_OF_CLINIC: Final[tuple[PrintOfClinic, ...]] = get_args(PrintOfClinic)
"""Prints about the whole clinic; a log has the id of the equipment that steps write in."""
PRINTS_OF: Final[dict[str, str]] = {
    **dict.fromkeys(get_args(PrintOfProcedure), "procedure"),
    **dict.fromkeys(get_args(PrintOfInstrument), "instrument"),
}
"""Prints about one thing of a kind, whose id is written beside them."""

LEVEL_FOR_CONTACT: Final[dict[Contact, CareLevel]] = {
    # Spaulding's classes as CDC 2008 and WHO print them: critical, semi-critical, non-critical.
    "sterile tissue": "sterile",
    "blood stream": "sterile",
    "mucous membrane": "high-level disinfection",
    "broken skin": "high-level disinfection",
    "whole skin": "low-level disinfection",
    "never the patient": "clean and dry",
}
CONTACT_GRAVITY: Final[tuple[Contact, ...]] = get_args(Contact)
"""Contacts from the gravest to the lightest; the gravest decides."""

ALL_LISTS: Final[dict[str, tuple[str, ...]]] = {
    "label": LABELS,
    "touches": CONTACT_GRAVITY,
    "level": CARE_LEVELS,
    "stage": STAGES,
    "action": get_args(Action),
    "vessel kind": get_args(VesselKind),
    "regulator kind": get_args(RegulatorKind),
    "product kind": get_args(ProductKind),
    "route kind": get_args(RouteKind),
    "family": get_args(Family),
    "hazards": get_args(Hazard),
    "danger kind": get_args(DangerKind),
    "wear": get_args(Worn),
    "equipment kind": get_args(EquipmentKind),
    "parts_are": get_args(PartsAre),
    "makes_sure": get_args(MakesSure),
    "writes": get_args(Writes),
    "part kind": get_args(PartKind),
    "made_of": get_args(Material),
    "side": get_args(Side),
    "incident kind": get_args(IncidentKind),
    "water": get_args(Water),
    "immersion": get_args(Immersion),
    "then": get_args(ThenWhat),
    "thinking": THINKING,
    "setting": SETTINGS,
    "line verdict": LINE_VERDICTS,
    "basis": BASES,
    "item kind": get_args(ItemKind),
    "unsafe": get_args(UnsafeSide),
    "pool": get_args(Pool),
}


def at_least(level: CareLevel, needed: CareLevel) -> bool:
    """Return whether ``level`` reaches ``needed``."""
    return CARE_LEVELS.index(level) >= CARE_LEVELS.index(needed)


def lower_of(one: CareLevel, other: CareLevel) -> CareLevel:
    """Return the lower of two levels."""
    return min(one, other, key=CARE_LEVELS.index)
