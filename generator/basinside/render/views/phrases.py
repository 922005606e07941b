"""What the pages' scripts say, by key; scripts themselves hold no words.

Holes stand in braces. A page brings only the sections that its script asks for.
"""

from __future__ import annotations

from typing import Final

from basinside.render.amount_phrases import AMOUNT_PHRASES
from basinside.render.findings import finding_phrases
from basinside.render.views.today_phrases import TODAY
from basinside.render.wording import _, later

PHRASES: Final[dict[str, dict[str, str]]] = {
    "amounts": AMOUNT_PHRASES,
    "capability": {
        # The panel on first opening. A heading when all works, or when something does not.
        "capability.whole": later("This browser can do all that this handbook asks for"),
        "capability.part": later("This browser cannot do everything here"),
        # One line each: a word, then what it is about.
        "capability.can": later("Can:"),
        "capability.cannot": later("Cannot:"),
        "capability.keep": later("keep your answers while you work, on this device"),
        "capability.keep.instead": later(
            "keep your answers when the page closes. Save them to a file before you close "
            "it, or use paper."
        ),
        "capability.save": later("save your attempt to a file"),
        "capability.save.instead": later(
            "save a file. Copy the text that the page shows into a message or a note."
        ),
        "capability.sign": later("check signatures and sign"),
        "capability.sign.instead": later(
            "check signatures or sign. Use a newer browser, or the basinside command on a computer."
        ),
        "capability.print": later("print wall charts, sheets and records"),
        "capability.print.instead": later(
            "print from here. Open the folder on a computer that has a printer."
        ),
        "capability.close": later("Close this note"),
    },
    "staff-code": {
        "staff-code.none": later(
            "Nobody has said who is learning here. Answers last only while this page is open."
        ),
        "staff-code.is": later("Staff code {code}"),
        "staff-code.give": later("Give my staff code"),
        "staff-code.change": later("Change the staff code"),
        "staff-code.leave": later("I am done here"),
        # Deletes the drafts of this person on this device; asked once more before it happens.
        "staff-code.delete": later("Delete what this device keeps for {code}"),
        "staff-code.sure": later(
            "Delete all drafts of {code} from this device? Files that you saved stay."
        ),
        "staff-code.label": later("Staff code"),
        "staff-code.help": later(
            "One to three letters, a hyphen, two to four numbers, as in N-014. No names."
        ),
        "staff-code.wrong": later(
            "This is not a staff code. It has one to three letters, a hyphen and two to "
            "four numbers, as in N-014."
        ),
        "staff-code.use": later("Use this code"),
        "staff-code.cancel": later("Not now"),
    },
    "save": {
        "save.done": later(
            "The file {name} is saved. Look in the folder where your browser puts downloads."
        ),
        "save.cannot": later(
            "This browser cannot save a file. Copy the text below into a message or a note "
            "named {name}."
        ),
        "save.by-hand": later("No file came? Copy the text"),
        "save.text": later("The text of {name}"),
        "save.copy": later("Copy the text"),
        "save.copied": later("Copied."),
        "save.copy-yourself": later("The text is marked. Copy it with your browser's own copy."),
    },
    "search": {
        "search.label": later("What are you looking for?"),
        "search.ready": later("The whole handbook is searched, on this device alone."),
        "search.nothing": later(
            "Nothing here is called “{query}”. Try fewer words, or only the beginning of one."
        ),
        "search.one": later("Found on one page."),
        "search.some": later("Found on {n} pages."),
        "search.many": later("Found on {n} pages; the best {shown} are shown. Add a word."),
        "search.more": later("and at {n} more places of this page"),
    },
    "print": {"print.now": later("Print this sheet")},
    "today": TODAY,
    "timer": {
        "timer.heading": later("Times that are running"),
        "timer.start": later("Start the time: {time}"),
        "timer.start-another": later("Start another time: {time}"),
        "timer.name": later("Name this time"),
        "timer.name.label": later("What is in it"),
        "timer.full": later("{n} times are running on this device. End one first."),
        "timer.not-kept": later(
            "This browser keeps no times. Close the page and they are gone: write them on the log."
        ),
        "timer.running": later("Out at {out}. The wall clock counts, this is a courtesy."),
        "timer.log": later("Write on the log: in {began}, out {out}."),
        "timer.latest": later("No later than {latest}."),
        "timer.reached": later("Time reached at {out}."),
        "timer.too-long": later(
            "Too long: it should have been out by {latest}. Look at each part, and tell the lead."
        ),
        "timer.interrupted": later("Interrupted at {broken}. This time does not count."),
        "timer.pause": later("Interrupted at {broken}. Put it right, then go on."),
        "timer.paused": later("It stood still for {pause}: the end is that much later."),
        "timer.again": later("Start the time again from the beginning."),
        "timer.clock-changed": later(
            "The clock of this device was set back. Go by the wall clock, or start again."
        ),
        "timer.tomorrow": later("{time} tomorrow"),
        "timer.yesterday": later("{time} yesterday"),
        "timer.days": later("{time}, {n} days away"),
        "timer.alarm": later("{name}: the time is reached."),
        "timer.hush": later("Stop the sound"),
        # Before the title of the page while an alarm is on.
        "timer.title": later("({n}) time reached · {title}"),
        "timer.do.broken": later("It was interrupted"),
        "timer.do.out": later("It is out"),
        "timer.do.on": later("Go on"),
        "timer.do.again": later("Start it again now"),
        "timer.do.drop": later("Do not count it"),
    },
    "self-test": {
        "self-test.question": later("Question {number} of {count}"),
        # A question whose wrong answer could hurt somebody.
        "self-test.critical": later("Safety question"),
        "self-test.one": later("Choose one answer."),
        "self-test.many": later("Choose every answer that is right."),
        "self-test.choose-first": later("Choose an answer first."),
        "self-test.order": later("Move each line up or down until the order is right."),
        "self-test.order-up": later("Up"),
        "self-test.order-down": later("Down"),
        "self-test.order-place": later("{line}: place {place} of {count}."),
        "self-test.order-end": later("{line} cannot go further: place {place} of {count}."),
        "self-test.order-first": later("As it stands the order is not right. Move a line first."),
        "self-test.order-reasons": later("What is right about the order"),
        "self-test.order-kept": later("Pairs in the right order: {kept} of {count} that matter."),
        "self-test.order-yours": later("Your order"),
        "self-test.order-right": later("A right order"),
        "self-test.number": later("Your number"),
        "self-test.number-in": later("Your number, in {unit}"),
        "self-test.number-help": later("With a decimal point or a decimal comma."),
        "self-test.number-help-unit": later(
            "With a decimal point or a decimal comma. If you work in another unit, write it after "
            "the number."
        ),
        # How a typed number was understood; {read} has its unit.
        "self-test.number-echo": later("You wrote {typed}, read as {read}."),
        "self-test.number-none": later("Write one number, as in 20 or 0.5."),
        "self-test.number-long": later("This number has too many figures."),
        # A mark that could be a decimal mark or one for thousands.
        "self-test.number-mark": later(
            "Is it {whole} or {part}? Write it like that, so that it can be read one way only."
        ),
        "self-test.number-unit": later("“{typed}” is not read here. Answer in {unit}."),
        "self-test.number-bare": later("“{typed}” is not read here. Write the number alone."),
        "self-test.number-right": later("Right:"),
        "self-test.number-reasons": later("How the number comes about"),
        "self-test.match": later("Choose one for each. One may fit several, or none."),
        "self-test.match-choose": later("Choose"),
        "self-test.match-first": later("Still to be chosen: {count}"),
        "self-test.match-right": later("You chose it."),
        "self-test.match-wrong": later("You chose:"),
        "self-test.match-reasons": later("What belongs together, and why"),
        # Three things to do with an answer; what is chosen counts for nothing.
        "self-test.sure": later("What would you do with this answer? You may leave this open."),
        "self-test.sure-now": later("Do it now"),
        "self-test.sure-look": later("Look it up first"),
        "self-test.sure-ask": later("Ask someone first"),
        "self-test.sure-wrong": later(
            "You would have done it now. Read the steps before you next do this."
        ),
        "self-test.check": later("Check my answer"),
        "self-test.next": later("Next question"),
        "self-test.previous": later("Previous question"),
        "self-test.over": later("Look over my answers"),
        "self-test.reasons": later("The reason for each answer"),
        "self-test.lead": later("Read again:"),
        # What each option was, before its reason.
        "self-test.right-chosen": later("Right, and you chose it."),
        "self-test.right-left": later("Right, but you did not choose it."),
        "self-test.wrong-chosen": later("Not right, but you chose it."),
        "self-test.wrong-left": later("Not right."),
        "self-test.unsafe-chosen": later("Unsafe, and you chose it."),
        "self-test.unsafe-left": later("Unsafe."),
        # How the answer as a whole went.
        "self-test.result-right": later("Your answer is right."),
        "self-test.result-wrong": later("Your answer is not right yet."),
        "self-test.result-safety": later("Your answer is not right. This could hurt someone."),
        "self-test.result-unsafe": later("Your answer is unsafe. This could hurt someone."),
        # The line of questions: its name, and each question's name to a screen reader.
        "self-test.line": later("Questions"),
        "self-test.line-open": later("{number}, not answered"),
        "self-test.line-chosen": later("{number}, answered, not checked"),
        "self-test.line-checked": later("{number}, checked"),
        # The look over everything before the end.
        "self-test.review": later("Before you finish"),
        "self-test.review-open": later("Questions without an answer: {count}"),
        "self-test.review-whole": later("Every question has an answer."),
        "self-test.review-rest": later("Answered"),
        "self-test.state-open": later("No answer yet."),
        "self-test.state-chosen": later("Answered, not checked."),
        "self-test.state-checked": later("Checked."),
        "self-test.go": later("Go to question {number}"),
        "self-test.back": later("Back to the question"),
        "self-test.finish": later("Finish"),
        # The end.
        "self-test.end": later("What to repeat"),
        "self-test.tally": later("Right: {right} of {count}"),
        "self-test.repeat": later("Repeat these first"),
        # What somebody would have done at once, and it was not right; then the others.
        "self-test.repeat-sure": later("You would have done these now: repeat them first"),
        "self-test.repeat-too": later("Repeat these as well"),
        "self-test.nothing-to-repeat": later(
            "Nothing to repeat here. Do the steps with someone who watches."
        ),
        "self-test.why-unsafe": later("You chose an unsafe answer."),
        "self-test.why-safety": later("Safety question, not right."),
        "self-test.why-wrong": later("Not right."),
        "self-test.why-open": later("Not answered."),
        "self-test.save-heading": later("Keep this attempt"),
        "self-test.save-why": later(
            "The file holds your answers and no marks. It is practice: it does not count "
            "towards sign-off."
        ),
        "self-test.save": later("Save my attempt to a file"),
        "self-test.code-first": later(
            "Give your staff code first: the file says whose answers these are."
        ),
        "self-test.over-again": later("Look over my answers"),
        "self-test.again": later("Start again with fresh questions"),
        # How keeping on this device went.
        "self-test.kept": later("Kept on this device for {code}."),
        "self-test.not-kept": later(
            "This browser does not keep answers. Save your attempt to a file before you "
            "close this page."
        ),
        "self-test.elsewhere": later(
            "This self-test is open for {code} in another window, and that one is kept. "
            "Close this one, or save it to a file."
        ),
    },
    "examine": {
        # The form.
        "examine.cannot": later(
            "This browser cannot check signatures. Use a newer browser, or the basinside "
            "command on a computer."
        ),
        "examine.file": later("Record file"),
        "examine.drop": later("You can also drop the file here."),
        "examine.text": later("Or paste the text of the record"),
        "examine.words": later("Six words of the root fingerprint"),
        "examine.words-help": later(
            "From paper, or from someone you trust; never from this folder. Leave it empty "
            "if you have none."
        ),
        "examine.words-stray": later(
            "“{word}” is not a word of our list. Look at the six words again."
        ),
        "examine.words-count": later("The fingerprint has six words; you typed {count}."),
        "examine.day": later("Judge on this day"),
        "examine.day-help": later("The clock of this device may be wrong."),
        "examine.examine": later("Examine the record"),
        "examine.nothing": later("Choose a record file, or paste its text."),
        "examine.failed": later(
            "This page failed while it examined the record. Nothing can be said about it."
        ),
        # Why a text cannot be read at all; then where it stopped.
        "examine.read.too-large": later("The file is too large to be a record."),
        "examine.read.not-utf8": later("The file is not text."),
        "examine.read.not-json": later("This is not a record: the text cannot be read."),
        "examine.read.not-object": later("This is not a record."),
        "examine.read.not-whole": later(
            "This is not a record: it holds a number that our records never hold."
        ),
        "examine.read.half-pair": later("This is not a record: it holds half of a letter."),
        "examine.read.too-deep": later("This is not a record: it is nested too deep."),
        "examine.read.repeated-key": later(
            "The same member stands twice. Two readers could understand this record differently."
        ),
        "examine.read-place": later("Line {line}, column {column}."),
        "examine.folder": later(
            "This page cannot vouch for its own folder. If the person examined brought it, "
            "use a folder of your own."
        ),
        # What the record says.
        "examine.says": later("What the record says"),
        "examine.says.for": later("Staff code"),
        "examine.says.name": later("Name of the record"),
        "examine.says.scope": later("For"),
        "examine.says.procedures": later("Procedures"),
        "examine.says.level": later("Level"),
        "examine.says.steps": later("Steps"),
        "examine.says.limits": later("Limits"),
        "examine.says.override": later("Override"),
        "examine.says.edition": later("Edition"),
        "examine.says.from": later("Counts from"),
        "examine.says.until": later("Counts until"),
        "examine.says.by": later("Signed as"),
        "examine.says.id": later("Record number"),
        "examine.level.alone": later("may do this alone"),
        "examine.level.beside": later("may work beside a named person"),
        # The findings: a word here; the sentences are those of the command line.
        "examine.findings": later("What was looked at"),
        "examine.verdict.holds": later("Holds."),
        "examine.verdict.fails": later("Fails."),
        "examine.verdict.unknown": later("Not known."),
    },
}


def page_phrases(*sections: str) -> dict[str, dict[str, str]]:
    """Return the phrases of some sections as a page's inline JSON: key to text with {holes}.

    The page that examines says each finding, and how the record stands, as the command line does.
    """
    findings = finding_phrases() if "examine" in sections else {}
    own = {key: _(text) for section in sections for key, text in PHRASES[section].items()}
    return {"phrases": {**findings, **own}}
