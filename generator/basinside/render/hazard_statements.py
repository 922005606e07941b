"""What the hazard statements on a label say, by their code.

Phrases: United Nations, Globally Harmonized System of Classification and Labelling of Chemicals
(GHS), annex 3, section 1; those with EUH: Regulation (EC) No 1272/2008, annex III. From memory.
"""

from __future__ import annotations

from typing import Final

from basinside.render.wording import _, later

STATEMENTS: Final[dict[str, str]] = {
    "H226": later("Flammable liquid and vapour."),
    "H242": later("Heating may cause a fire."),
    "H270": later("May cause or intensify fire; oxidiser."),
    "H271": later("May cause fire or explosion; strong oxidiser."),
    "H272": later("May intensify fire; oxidiser."),
    "H290": later("May be corrosive to metals."),
    "H301": later("Toxic if swallowed."),
    "H302": later("Harmful if swallowed."),
    "H311": later("Toxic in contact with skin."),
    "H312": later("Harmful in contact with skin."),
    "H314": later("Causes severe skin burns and eye damage."),
    "H315": later("Causes skin irritation."),
    "H317": later("May cause an allergic skin reaction."),
    "H318": later("Causes serious eye damage."),
    "H319": later("Causes serious eye irritation."),
    "H330": later("Fatal if inhaled."),
    "H331": later("Toxic if inhaled."),
    "H332": later("Harmful if inhaled."),
    "H334": later("May cause allergy or asthma symptoms or breathing difficulties if inhaled."),
    "H335": later("May cause respiratory irritation."),
    "H400": later("Very toxic to aquatic life."),
    "H410": later("Very toxic to aquatic life with long lasting effects."),
    "H411": later("Toxic to aquatic life with long lasting effects."),
    "H412": later("Harmful to aquatic life with long lasting effects."),
    "EUH031": later("Contact with acids liberates toxic gas."),
    "EUH071": later("Corrosive to the respiratory tract."),
}


def statement_words(code: str) -> str:
    """Return what a hazard statement says; for a code that is not here, where to read it."""
    known = STATEMENTS.get(code)
    return _(known) if known else _("Read it on the label or the safety sheet.")
