"""The first page, observation sheets, and the page that examines a record."""

from __future__ import annotations

from itertools import groupby

from basinside.model.derived import Checklist, ChecklistLine
from basinside.model.words import LINE_VERDICTS, SETTINGS
from basinside.render.view_types import (
    BenchItemView,
    BlankView,
    ExamineView,
    LinkView,
    ObservationLineView,
    ObservationSheetView,
    ObservationStageView,
    PlaceView,
    StartView,
    plain,
)
from basinside.render.views.partly import for_parts, never_heat
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, n_, sentence


def start_view(spot: Spot) -> StartView:
    """Return the first page: what do you want to do, and the instruments of this clinic."""
    content = spot.desk.content
    return StartView(
        title=_("Safe instruments, every time, whoever is on shift."),
        lead=plain(_("What do you want to do?")),
        jobs_label=_("What do you want to do?"),
        jobs=_jobs(spot),
        bench_heading=_("Our instruments"),
        bench_note=_bench_note(spot),
        bench=tuple(_bench_item(spot, name) for name in content.instruments),
        around_heading=_("Work around the basin"),
        around=tuple(
            LinkView(
                text=procedure_title(spot.desk.whole(name)),
                href=f"procedures/{name}.html",
                note=_("about {time}").format(time=spot.desk.whole(name).about.text()),
            )
            for name, procedure in content.procedures.items()
            if procedure.instrument is None
        ),
    )


def _jobs(spot: Spot) -> tuple[LinkView, ...]:
    """Return what there is to do here, in the order of use."""
    content = spot.desk.content
    jobs = []
    if content.procedures:
        jobs.append(
            LinkView(
                text=_("Do it now"),
                href="procedures/index.html",
                note=_("Find the instrument in your hand and follow its steps."),
            )
        )
    if spot.desk.has_ways:
        jobs.append(
            LinkView(
                text=_("What can I use today?"),
                href="today.html",
                note=_("Tick what works this shift. See which ways are open."),
            )
        )
    if content.handbook:
        jobs.append(
            LinkView(
                text=_("Find an amount or a time"),
                href="amounts.html",
                note=_("Chlorine, boiling, gauge, when it is out, when it is thrown away."),
            )
        )
    if spot.desk.practice_topics:
        jobs.append(
            LinkView(
                text=_("Test yourself"),
                href="self-tests/index.html",
                note=_("Practise with reasons. Nothing is sent anywhere."),
            )
        )
    jobs.append(
        LinkView(
            text=_("Look something up"),
            href="reference.html",
            note=(
                _("Values, chemicals, ways, words, sources.")
                if content.words
                else _("Values, chemicals, ways, sources.")
            ),
        )
    )
    if content.procedures:
        jobs.append(
            LinkView(
                text=_("Watch someone work"),
                href="procedures/index.html#observe",
                note=_("Observation sheets to print, tick and sign."),
            )
        )
    jobs.append(
        LinkView(
            text=_("Examine a completion record"),
            href="examine.html",
            note=_("Who signed it, for what, until when."),
        )
    )
    return tuple(jobs)


def _bench_note(spot: Spot) -> str:
    labels = [each.label for each in spot.desk.content.instruments.values()]
    refused = labels.count("single use")
    in_use = n_("one in use", "{n} in use", len(labels) - refused)
    if not refused:
        return in_use
    return _("{in_use}, {refused}").format(
        in_use=in_use,
        refused=n_("one never to be used again", "{n} never to be used again", refused),
    )


def _bench_item(spot: Spot, name: str) -> BenchItemView:
    instrument = spot.desk.content.instruments[name]
    if instrument.label == "single use":
        note, word = _("one use only"), _("Never again")
    else:
        routes = [
            each.route.name[:1].lower() + each.route.name[1:]
            for each in spot.desk.verdicts(instrument)
            if each.permitted or for_parts(spot, each)
        ]
        note = _("at least {level} · {routes}").format(
            level=spot.desk.instrument(instrument).highest,
            routes=" · ".join(routes) if routes else _("no way permitted"),
        )
        never = never_heat(spot, instrument)
        word = never.label if never else ""
    return BenchItemView(
        name=instrument.name,
        note=note,
        href=f"instruments/{name}.html",
        state_word=word,
        picture=spot.picture(instrument.assembled or instrument.drawing, ""),
    )


def observation_sheet_view(spot: Spot, checklist: Checklist) -> ObservationSheetView:
    """Return the sheet of one procedure: one side, to tick and to sign."""
    whole = spot.desk.whole(checklist.procedure)
    numbered = list(enumerate(checklist.lines, start=1))
    stages = groupby(numbered, lambda each: _watched_in(each[1]))
    settings = {"real": _("real"), "simulated": _("simulated"), "remote": _("remote")}
    verdicts = {
        "met": _("Met"),
        "met with help": _("Met with help"),
        "not met": _("Not met"),
        "not seen": _("Not seen"),
    }
    return ObservationSheetView(
        title=_("Observation: {title}").format(title=procedure_title(whole)),
        lead=plain(_("Watch the whole procedure. Step in at once when someone could be hurt.")),
        print_hint=plain(
            _(
                "Print this sheet. Type the ticks in later, or keep the signed sheet: it is valid"
                " by itself."
            )
        ),
        head=(
            BlankView(label=_("Staff code of the learner")),
            BlankView(label=_("Staff code of the observer")),
            BlankView(label=_("Date")),
            BlankView(label=_("Start")),
            BlankView(label=_("End")),
            BlankView(label=_("Setting"), width=2, ticks=tuple(settings[s] for s in SETTINGS)),
            BlankView(label=_("Told beforehand"), ticks=(_("yes"), _("no"))),
        ),
        number_word=_("No."),
        see_word=_("You see"),
        verdicts=tuple(verdicts[each] for each in LINE_VERDICTS),
        why=_("Why, if not met"),
        stages=tuple(
            ObservationStageView(
                name=name,
                lines=tuple(
                    ObservationLineView(
                        number=str(n),
                        see=spot.prose(line.text),
                        safety_word=_("Safety step {n}").format(n=line.placed.number)
                        if line.placed
                        else "",
                    )
                    for n, line in lines
                ),
            )
            for name, lines in stages
        ),
        cues_heading=_("Look for:"),
        cues=tuple(spot.prose(each) for each in checklist.cues),
        foot=(
            BlankView(label=_("Help needed"), width=2),
            BlankView(label=_("Signature of the observer"), width=2),
            BlankView(label=_("Signature of the learner"), width=2),
            BlankView(label=_("Second observer, if any"), width=2),
        ),
        notes=tuple(
            each
            for each in (
                spot.prose(_may_observe(checklist)),
                plain(_("One sheet is one run. The supervisor decides on several runs together.")),
            )
            if each
        ),
    )


def _may_observe(checklist: Checklist) -> str:
    who = checklist.who_may_observe
    return _("Who may observe: {who}").format(who=who[:1].lower() + who[1:]) if who else ""


def _watched_in(line: ChecklistLine) -> str:
    return sentence(line.placed.stage.stage) if line.placed else _("Also to be seen")


def examine_view(_spot: Spot) -> ExamineView:
    """Return the page that examines a completion record, and says what it cannot know."""
    return ExamineView(
        title=_("Examine a completion record"),
        lead=plain(
            _("Open the record file. This page says what holds, what fails and who signed.")
        ),
        place=PlaceView(
            anchor="examiner",
            component="examine",
            data="trust",
            label=_("Record to examine"),
            without_script=plain(
                _("This page needs its script. The command “basinside examine” does the same.")
            ),
        ),
        limits_heading=_("What this page cannot know"),
        limits=(
            plain(
                _(
                    "Whether this folder is the clinic's own. Somebody who brings you a folder"
                    " can also bring you a page that lies. Bring your own folder, or compare the"
                    " six words of the root fingerprint with those you got another way."
                )
            ),
            plain(_("Whether the record was withdrawn after this folder was made.")),
            plain(_("Who really sat at the screen, and who really stood at the basin.")),
        ),
    )
