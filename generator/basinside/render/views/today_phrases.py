"""What the script of the page of today says, by key."""

from __future__ import annotations

from typing import Final

from basinside.render.wording import later

TODAY: Final[dict[str, str]] = {
    "today.heading": later("What works this shift"),
    "today.open": later("What is open now"),
    "today.all": later("All of it works"),
    "today.over": later("The shift is over"),
    "today.print": later("Print this for the shift"),
    "today.vessels": later("Steam vessels"),
    "today.holds": later("These ticks hold until {time}. The next shift begins with none."),
    "today.holds-nothing": later("Ticks end with the shift, after {hours} hours at the latest."),
    "today.not-kept": later(
        "This browser keeps no ticks. Close the page and they are gone: print them, or tick again."
    ),
    # A bath: what is asked, and beside it what it has to be.
    "today.bath.made": later("Made on"),
    "today.bath.made-today": later("Today"),
    "today.bath.life": later("It lasts {life}. The day it was made does not count."),
    "today.bath.life-short": later("It lasts {life}: look at the time on the lid."),
    "today.bath.strip": later("Strip read today"),
    "today.bath.strip.unread": later("Not read"),
    "today.bath.strip.passed": later("Passed"),
    "today.bath.strip.failed": later("Failed"),
    "today.bath.cloudy": later("Cloudy or dirty? Then it failed, whatever the strip shows."),
    "today.bath.heat": later("Temperature in °C"),
    "today.bath.least": later("{least} or more"),
    # Why a bath cannot be used, and what would do.
    "today.bath.unmade": later(
        "No bath is made, as far as this page knows. Make one or give its day."
    ),
    "today.bath.future": later("The day on which the bath was made lies ahead. Correct it."),
    "today.bath.yesterday": later("The bath was made yesterday. It lasts {life}. Make a new one."),
    "today.bath.days-old": later(
        "The bath was made {n} days ago. It lasts {life}. Make a new one."
    ),
    "today.bath.unread": later("No strip was read today. Read one now and tick what it shows."),
    "today.bath.failed": later("The strip failed. Pour the bath away and make a new one."),
    "today.bath.unmeasured": later(
        "Nobody measured how warm the bath is. Measure it and write it down."
    ),
    "today.bath.no-heat": later(
        "“{heat}” is no temperature of a bath. Write a number such as 21.5."
    ),
    "today.bath.cold": later(
        "The bath is too cold: {heat} °C. It needs {least} or more. Make it new and measure again."
    ),
    "today.bath.make": later("How:"),
    "today.bath.go": later("Go to the bath"),
    # What a way lacks; the names follow.
    "today.lacks": later("Not ticked:"),
    "today.lacks.one": later("Tick it once you have it."),
    "today.lacks.some": later("Tick each once you have it."),
    "today.lacks.vessel": later("No vessel for it works. Tick it once it does: {vessels}."),
    "today.way-parts": later("{way}, for {parts}"),
    "today.state.whole": later("Open."),
    "today.state.parts": later("Open for some parts only. Not for: {parts}."),
    "today.state.none": later("Nothing is open."),
    "today.see": later("See what is open"),
    # In the list of all instruments, after its name.
    "today.glance.whole": later("open: {ways}"),
    "today.glance.parts": later("open for some parts only: {ways}"),
    "today.glance.none": later("nothing is open"),
    "today.needed": later("Needs at least: {level}"),
    "today.ready": later("about {about}, ready about {time}"),
    "today.tomorrow": later("{time} tomorrow"),
    "today.reaches": later("Reaches: {level}."),
    "today.reaches-parts": later("Only for {parts}. Reaches: {level}."),
    "today.never": later("Never for it here: {ways}"),
    "today.emergency": later("When it cannot wait"),
    # What changed, read out.
    "today.nothing": later("Nothing is ticked yet, so nothing is open."),
    "today.gone": later("The shift is over, and its ticks are gone."),
    "today.from.elsewhere": later("Ticks were changed in another window."),
    "today.from.midnight": later("A new day has begun: read each strip again."),
    "today.count": later("Instruments that can be made ready: {n} of {all}."),
    "today.ways": later("Open ways: {n}."),
    "today.more": later("Now also: {names}."),
    "today.less": later("No longer: {names}."),
    # On paper.
    "today.stamp": later(
        "For this shift. Printed {time} on {day}. It holds until {until}, then throw it away."
    ),
    "today.absent": later("Not there this shift: {names}."),
    "today.all-there": later(
        "All that was asked for is there, apart from what is said of the baths."
    ),
    "today.day": later("{day} {month} {year}"),
    "today.months": later(
        "January|February|March|April|May|June|July|August|September|October|November|December"
    ),
}
