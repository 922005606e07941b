"""What the calculators say, by code; the page's script and the prompt say the very same.

Holes stand in braces. Those named ``field``, ``measure`` and ``unit`` are filled by a phrase of
their own, those that end in ``day`` by a day in words (``amount_words``).
"""

from __future__ import annotations

from typing import Final

from basinside.render.wording import later

_FORM: Final = {
    "work": later("Work it out"),
    "answer": later("The answer"),
    "refused": later("No answer"),
    "would-do": later("What would do"),
    "do-now": later("Do this now"),
    "measured": later("In our own measures"),
    "strength": later("True strength"),
    "strength-is": later("{percent} % available chlorine, or {ppm} ppm"),
    "working": later("How it is worked out"),
    "reckoned": later("Reckoned with"),
    "cautions": later("Take care"),
    "sources": later("Source"),
    "day": later("{day} {month} {year}"),
    "failed": later("This page failed while it worked that out. Use the table, or ask the lead."),
}

_FIELDS: Final = {
    "label": later("What the label says"),
    "strength": later("Strength on the label"),
    "wanted": later("Wanted strength"),
    "volume": later("Volume of the whole bath"),
    "unit": later("Unit"),
    "grams": later("Available chlorine in one tablet"),
    "altitude": later("Altitude"),
    "vessel": later("Vessel"),
    "mark": later("Highest pressure that its plate allows"),
    "temperature": later("Temperature of the steam"),
    "start": later("Went in at"),
    "hold": later("What is held"),
    "time": later("Time that it is held"),
    "made": later("Made or opened on"),
    "product": later("Solution"),
    "life": later("How long it keeps"),
    "strip": later("Strip failed on"),
    "cloudy": later("Cloudy or dirty on"),
    "log": later("Log of the load"),
    "minute": later("A minute of the log"),
    "reading": later("A temperature of the log"),
    "minutes": later("Time that is needed"),
    "cases": later("Cases on a day"),
    "turnaround": later("Time until a set is ready again"),
    "hours": later("Hours in which somebody works"),
    "reserve": later("Sets of the ready reserve"),
}

_UNITS: Final = {
    "tablets": later("tablets"),
    "tablets.one": later("tablet"),
    "sets": later("sets"),
    "sets.one": later("set"),
    "held": later("Held long enough"),
    "not-held": later("Not held long enough"),
    "degrees": later("degrees"),
    "kpa-gauge": later("kPa gauge"),
}

_MEASURES: Final = {
    "jug": later("jug"),
    "syringe": later("syringe"),
    "spoon": later("spoon"),
    "cup": later("cup"),
    "bucket": later("bucket"),
}

_MONTHS: Final = {
    "1": later("January"),
    "2": later("February"),
    "3": later("March"),
    "4": later("April"),
    "5": later("May"),
    "6": later("June"),
    "7": later("July"),
    "8": later("August"),
    "9": later("September"),
    "10": later("October"),
    "11": later("November"),
    "12": later("December"),
}

_CAUTIONS: Final = {
    "gas": later("Never with acid, ammonia or soap: they set poisonous gas free."),
    "burns": later("It burns skin and eyes. Heavy gloves, eye protection, apron, open window."),
    "water-first": later("Water first, then the product. Label it with strength, date and time."),
    "plastic": later("Plastic basin, plastic or wooden stirrer. Metal rusts and uses it up."),
    "strip": later("Dip a strip before each use. It decides, whatever the arithmetic says."),
    "fire": later("Dry powder sets cloth, paper and oil on fire."),
    "settle": later("Let the lime settle. Use the clear liquid only."),
    "whole-tablets": later("Only whole tablets. Wait until no piece is left, then stir."),
    "much-stronger": later(
        "This is more than twice as strong as wanted. Make more of it at once, or measure finer."
    ),
    "measures-coarse": later(
        "No measure of ours is fine enough. Make more of it at once, or use a smaller syringe."
    ),
    "many-pours": later("That is many pours. Count aloud, or use a larger jug."),
    "scald": later("Boiling water and steam scald. Lift the lid away from you."),
    "not-sterile": later("Boiling is high-level disinfection. It never sterilizes."),
    "instruments-only": later("This is for instruments. Drinking water has rules of its own."),
    "steady-steam": later(
        "A gauge tells the temperature only after steady steam: all air must be out."
    ),
    "never-above-mark": later("Never above the mark of the vessel."),
    "never-alter": later("Never alter, load or tie down a weight or a valve."),
    "wall-clock": later("Write the clock time on the log. The wall clock counts."),
    "interrupted": later("Something put in, lid off, boil lost: the time begins again."),
    "whichever-first": later("The first of these counts: the date, a failed strip, cloudy."),
    "release": later(
        "A load is released only when all is right: time, temperature, indicator, dry packs."
    ),
    "between-readings": later("Between two readings nobody knows. Read often."),
    "no-f0": later("F0 is for the trainer and never releases a load."),
    "least-number": later(
        "The least number: cases never come evenly. The reserve is for emergencies alone."
    ),
}

_SOURCES: Final = {
    "cdc-appendix-e": later(
        "CDC, Best practices for environmental cleaning in global healthcare facilities with"
        " limited resources, appendix E: parts of water, grams in a litre, degrees."
    ),
    "who-table-12": later(
        "WHO, Laboratory biosafety manual, table 12: whole tablets for each litre."
    ),
    "house-measures": later(
        "Putting an amount together from jug, syringe and spoon is common practice."
    ),
    "icao-atmosphere": later("ICAO, Manual of the standard atmosphere, Doc 7488, 1993."),
    "iapws-if97": later("IAPWS-IF97, region 4: steam and boiling water."),
    "iarc-boiling": later("IARC reference manual, p. 130: how long it is boiled, at any altitude."),
    "wall-clock": later("Arithmetic of the clock. The time itself has its own source."),
    "calendar": later("Counting days is common practice. The life itself has its own source."),
    "held-cycle": later(
        "Time counts from when the temperature is reached. That it begins anew after a break is"
        " common practice."
    ),
    "sets-in-turn": later("Counting sets in turn is common practice."),
}

_OF: Final = {
    "of-liquid": later("from the bottle of {percent} % available chlorine"),
    "of-water": later("of water, so that it is {number} {unit} in all"),
    "of-powder": later(
        "of powder with {percent} % available chlorine, on a scale that shows whole grams"
    ),
    "of-finer-measure": later("would do with a finer measure"),
    "of-finer-scale": later("would do on a finer scale"),
    "of-tablets": later("in {number} {unit} of water"),
    "of-rolling-boil": later("at a rolling boil, lid on, every part under water"),
    "of-boiling-water": later("is where water boils there, rounded down"),
    "of-gauge": later("or more, for {celsius} °C, and never above {limit} kPa"),
    "out-same-day": later("is when it is out: the same day, {out_day}"),
    "out-next-day": later("is when it is out: the next day, {out_day}"),
    "out-days-later": later("is when it is out: {days} days later, {out_day}"),
    "latest-same-day": later("is the latest: the same day, {out_day}"),
    "latest-next-day": later("is the latest: the next day, {out_day}"),
    "latest-days-later": later("is the latest: {days} days later, {out_day}"),
    "discard-days": later("is the day to throw it away: its days are over"),
    "discard-months": later("is the day to throw it away: its months are over"),
    "discard-strip": later("is the day to throw it away: the failed strip comes first"),
    "discard-cloudy": later("is the day to throw it away: cloudy or dirty comes first"),
    "of-held": later("at {celsius} °C or more without a break"),
    "of-not-held": later("at {celsius} °C or more without a break"),
    "of-longest": later("was the longest stretch at {celsius} °C or more"),
    "of-sets": later("at least, the reserve among them"),
}

_ECHO: Final = {
    "echo-available": later("{number} % available chlorine in the bottle"),
    "echo-degrees": later("{number} degrees on the label"),
    "echo-hypochlorite": later("{number} % sodium hypochlorite on the label"),
    "echo-powder": later("{number} % available chlorine in the powder"),
    "echo-tablets": later("{number} g available chlorine in each tablet"),
    "echo-wanted": later("{percent} % wanted, which is {ppm} ppm"),
    "echo-volume": later("{number} {unit} in all"),
    "echo-altitude": later("{number} m above the sea"),
    "echo-vessel": later("{vessel}, up to {limit} kPa"),
    "echo-other-vessel": later("a vessel marked up to {limit} kPa"),
    "echo-temperature": later("{celsius} °C"),
    "echo-start": later("in at {time} on {start_day}"),
    "echo-hold": later("held for {number} {unit}"),
    "echo-own-hold": later("held for {number} min, as this handbook says"),
    "echo-made": later("made or opened on {made_day}"),
    "echo-life-day": later("days that it keeps at most: {number}"),
    "echo-life-week": later("weeks that it keeps at most: {number}"),
    "echo-life-month": later("months that it keeps at most: {number}"),
    "echo-strip": later("strip failed on {strip_day}"),
    "echo-cloudy": later("cloudy or dirty on {cloudy_day}"),
    "echo-needed": later("{minutes} min at {celsius} °C needed"),
    "echo-log": later("readings in the log: {count}"),
    "echo-cases": later("cases on a day: {number}"),
    "echo-turnaround": later("ready again after {number} {unit}"),
    "echo-hours": later("hours of work a day: {number}"),
    "echo-reserve": later("{number} in the ready reserve"),
    "read-comma": later("“{typed}” was read as {number}"),
}

_WORK: Final = {
    "pour-full": later("{times} × {measure}, full ({amount} {unit})"),
    "pour-to-mark": later("{times} × {measure}, filled to {amount} {unit}"),
    "work-measured": later("These measures make {total} {unit}."),
    "work-degrees": later(
        "{number} degrees × {each} % = {percent} %. By another view a degree is {other} %;"
        " the lower figure is the safe side."
    ),
    "work-hypochlorite": later("{number} % × 70.906 ÷ 74.442 = {percent} %, rounded down"),
    "work-liquid": later("{product} mL = {number} {unit} × {wanted} % ÷ {stock} %"),
    "work-liquid-up": later("{product} mL = {number} {unit} × {wanted} % ÷ {stock} %, rounded up"),
    "work-parts": later("That is 1 part from the bottle to {parts} parts of water."),
    "work-neat": later("Use it as it is, without water."),
    "work-powder": later("{product} g = {number} {unit} × {wanted} % ÷ {active} %"),
    "work-powder-up": later("{product} g = {number} {unit} × {wanted} % ÷ {active} %, rounded up"),
    "work-per-litre": later("That is {grams} g in each litre."),
    "work-whole-grams": later("In whole grams, rounded up: {grams} g"),
    "work-each-litre": later("Each litre: {wanted} % ÷ {grams} g, in whole tablets: {count}"),
    "work-tablets": later("{count} = {number} {unit} × {each} in each litre, in whole tablets"),
    "work-height": later("Reckoned at {metres} m: the altitude, up to the next 50 m."),
    "work-boils": later("Water boils there at {celsius} °C."),
    "work-hot-enough": later(
        "{celsius} °C is above {enough} °C, which is hot enough. No extra time for altitude."
    ),
    "work-gauge": later(
        "Steam {steam} kPa − air {air} kPa = {needed} kPa, rounded up to {shown} kPa"
    ),
    "work-dials": later("{kpa} kPa = {bar} bar = {psi} psi = {kgf} kgf/cm², each rounded up"),
    "work-weight": later("Its weight lifts at {limit} kPa, so it reaches that by itself."),
    "work-out": later("{start} + {minutes} min = {out}"),
    "work-days": later("Days after {made_day}: {number}. The day it was made does not count."),
    "work-months": later("Months after {made_day}: {number}. The same day, or that month's last."),
    "work-reached": later("Temperature reached at {at}"),
    "work-broken": later("Fell below at {at}, before the time was complete"),
    "work-held-from": later("The stretch that counts began at {at}"),
    "work-never-reached": later("The temperature was never reached."),
    "work-sets": later("{cases} × {minutes} min ÷ {open} min = {share}, so {turning} in turn"),
    "work-reserve": later("{turning} in turn + {reserve} in reserve = {total}"),
}

_REFUSALS: Final = {
    "missing": later("{field}: nothing is written there."),
    "too-long": later("{field}: that is too long for a number."),
    "not-a-number": later("{field}: “{typed}” is not a plain number."),
    "below-nought": later("{field}: “{typed}” is below nought."),
    "two-ways": later("{field}: “{typed}” can be {whole} or {part}."),
    "too-many-figures": later("{field}: more than {most} figures. Nobody can measure that."),
    "out-of-range": later("{field}: {number} {unit} is not between {low} and {high} {unit}."),
    "not-whole": later("{field}: {number} is not a whole number."),
    "not-a-choice": later("{field}: “{typed}” is not among the choices."),
    "not-a-day": later("{field}: “{typed}” is no day that we can reckon with."),
    "not-a-moment": later("{field}: “{typed}” is no day with a time."),
    "above-product": later(
        "{wanted} % cannot be made from {product} %. Water only makes it weaker."
    ),
    "cannot-reach": later(
        "This vessel cannot reach {celsius} °C at this altitude. It would need {needed} kPa, and"
        " its mark is {limit} kPa."
    ),
    "weight-too-early": later(
        "This vessel cannot reach {celsius} °C at this altitude. It would need {needed} kPa, and"
        " its weight lifts at {limit} kPa."
    ),
    "no-mark": later("Nobody has written down which pressure the {vessel} allows."),
    "no-steam-in-oven": later("The {vessel} is an oven. It has no steam and no gauge."),
    "before-made": later("{field}: {seen_day} is before it was made, {made_day}."),
    "log-too-short": later("A log needs at least two readings."),
    "log-too-long": later("A log has at most {most} readings here."),
    "log-line": later("Line {line}, “{typed}”: not one time and one temperature."),
    "log-mixed": later("Line {line}: clock times and minutes are mixed."),
    "log-order": later("Line {line}: its time is not after the one before, or a day later."),
}

_WOULD_DO: Final = {
    "write-number": later("Write a number with the figures 0 to 9, such as 5 or 0.5."),
    "write-one-way": later("Write {whole}, or write {part}."),
    "write-whole": later("Write a whole number, such as 2."),
    "round-it": later("Write it with at most {most} figures."),
    "altitude-metres": later(
        "Write metres above the sea, not feet: 1000 feet are 305 m. Higher up no table holds here."
    ),
    "check-unit": later("Look at the number and at its unit again."),
    "choose-one": later("Choose one of those that are offered."),
    "not-a-day-write": later("Write the day as 2026-11-20."),
    "not-a-moment-write": later("Write day and time as 2026-11-20 14:05."),
    "use-stronger": later("A product of at least {percent} % available chlorine would do."),
    "use-liquid": later("Our bottle of {percent} % would do."),
    "use-powder": later("Our powder of {percent} % would do."),
    "use-tablets": later("Our tablets would do."),
    "other-vessel": later("The {vessel} reaches it."),
    "boil-if-allowed": later(
        "Does the instrument need high-level disinfection only? Then boil it, if it stands that."
    ),
    "never-alter": later("Never alter a weight or a valve, and never pass the mark."),
    "only-reaches": later(
        "It reaches {reached} °C at this altitude. No time at that heat is given here."
    ),
    "barely-boils": later("It does not even reach 100 °C at this altitude."),
    "choose-steam-vessel": later("Choose a vessel that makes steam."),
    "read-plate": later(
        "Read the plate on the vessel, and choose “another vessel”. No plate: do not use it."
    ),
    "write-log": later("One reading a line: the time, a space, the temperature. Earlier first."),
    "check-days": later("Look at both days again."),
    "load-not-released": later("Do not release this load. Nothing of it is used."),
    "load-run-again": later("Pack it anew with new indicators, and run it again in full."),
    "load-tell": later("Tell the lead. If it happens twice, the vessel is out of use."),
}


def _with(start: str, phrases: dict[str, str]) -> dict[str, str]:
    return {f"amounts.{start}{name}": text for name, text in phrases.items()}


AMOUNT_PHRASES: Final[dict[str, str]] = {
    **_with("", _FORM),
    **_with("field.", _FIELDS),
    **_with("unit.", _UNITS),
    **_with("measure.", _MEASURES),
    **_with("month.", _MONTHS),
    **_with("caution.", _CAUTIONS),
    **_with("source.", _SOURCES),
    **_with("said.", {**_OF, **_ECHO, **_WORK, **_REFUSALS, **_WOULD_DO}),
}
"""Every phrase of the calculators, by key."""
