"""The first page, self-tests, observation sheets, and the page that examines a record."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from basinside.model.content import AskedItem
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
    OptionView,
    PlaceView,
    Prose,
    QuestionView,
    SelfTestIndexView,
    SelfTestView,
    StartView,
    plain,
)
from basinside.render.views.instrument import spaulding
from basinside.render.views.procedure import procedure_title
from basinside.render.views.spot import Spot
from basinside.render.wording import _, n_, sentence


def start_view(spot: Spot) -> StartView:
    """Return the first page: what do you want to do, and the instruments of this clinic."""
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
    if spot.desk.practice_topics:
        jobs.append(
            LinkView(
                text=_("Test yourself"),
                href="self-tests/index.html",
                note=_("Practise with reasons. Nothing is sent anywhere."),
            )
        )
    if content.figures:
        jobs.append(
            LinkView(
                text=_("Look up a value"),
                href="values.html",
                note=_("Every time, strength and limit, with its source."),
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
    return StartView(
        title=_("Safe instruments, every time, whoever is on shift."),
        lead=plain(_("What do you want to do?")),
        jobs_label=_("What do you want to do?"),
        jobs=tuple(jobs),
        bench_heading=_("Our instruments"),
        bench_note=_bench_note(spot),
        bench=tuple(_bench_item(spot, name) for name in content.instruments),
    )


def _bench_note(spot: Spot) -> str:
    labels = [each.label for each in spot.desk.content.instruments.values()]
    refused = labels.count("single use")
    in_use = n_("one in use", "{n} in use", len(labels) - refused)
    if not refused:
        return in_use
    return _("{in_use}, {refused}").format(
        in_use=in_use, refused=n_("one never to be used again", "{n} never to be used again",
                                  refused)
    )


def _bench_item(spot: Spot, name: str) -> BenchItemView:
    instrument = spot.desk.content.instruments[name]
    if instrument.label == "single use":
        note, word = _("one use only"), _("Never again")
    else:
        routes = [
            each.route.name[:1].lower() + each.route.name[1:]
            for each in spot.desk.verdicts(instrument)
            if each.permitted
        ]
        note = _("{kind} · {routes}").format(
            kind=spaulding(spot.desk.instrument(instrument).gravest),
            routes=" · ".join(routes) if routes else _("no way permitted"),
        )
        word = ""
    return BenchItemView(
        name=instrument.name,
        note=note,
        href=f"instruments/{name}.html",
        state_word=word,
        picture=spot.picture(instrument.assembled or instrument.drawing, ""),
    )


def topic_title(spot: Spot, topic: str) -> str:
    """Return the title of a topic: the first that a file of it writes, or its id in words."""
    for questions in spot.desk.content.questions:
        if questions.topic == topic and questions.title:
            return questions.title
    return sentence(topic.replace("-", " "))


def self_test_index_view(spot: Spot) -> SelfTestIndexView:
    """Return the list of self-tests."""
    return SelfTestIndexView(
        title=_("Test yourself"),
        lead=plain(
            _(
                "Practice with reasons. Answers stay on this device until you save them to a"
                " file yourself."
            )
        ),
        topics=tuple(
            LinkView(
                text=topic_title(spot, topic),
                href=spot.link(f"self-tests/{topic}.html"),
                note=n_("one question", "{n} questions", len(asked)),
            )
            for topic, asked in spot.desk.practice_topics.items()
        ),
    )


def self_test_view(spot: Spot, topic: str, asked: list[AskedItem]) -> SelfTestView:
    """Return the self-test of one topic; without a script its questions read as text."""
    return SelfTestView(
        title=topic_title(spot, topic),
        lead=plain(
            _("Pick an answer, then check it. You see the reason for every answer given.")
        ),
        facts=(),
        place=PlaceView(
            anchor="player",
            component="self-test",
            data="self-test",
            label=_("Self-test"),
            without_script=plain(
                _("This page works best with scripts on. Without them, read the questions below.")
            ),
        ),
        questions_heading=_("Questions"),
        questions=tuple(_question(spot, n + 1, each) for n, each in enumerate(asked)),
        related_heading=_("Other self-tests"),
        related=tuple(
            LinkView(text=topic_title(spot, other), href=spot.link(f"self-tests/{other}.html"))
            for other in spot.desk.practice_topics
            if other != topic
        ),
    )


def _question(spot: Spot, number: int, asked: AskedItem) -> QuestionView:
    return QuestionView(
        anchor=asked.item.item,
        number=str(number),
        situation=spot.prose(asked.situation),
        stem=spot.prose(asked.item.stem),
        options=tuple(
            OptionView(
                text=spot.prose(option.text),
                verdict=_("Right") if option.is_right else _("Wrong"),
                because=spot.prose(option.because),
            )
            for option in asked.item.options
        ),
        reveal=_("Show the answer"),
        lead_back=_leads(spot, asked),
    )


def _leads(spot: Spot, asked: AskedItem) -> tuple[LinkView, ...]:
    known = spot.desk.leads  # the list of questions and the player ask for the same
    if asked.item.item not in known:
        known[asked.item.item] = tuple(_links_about(spot, asked))
    return known[asked.item.item]


def _links_about(spot: Spot, asked: AskedItem) -> list[LinkView]:
    links = []
    content = spot.desk.content
    for each in asked.item.about:
        procedure, slash, step = each.partition("/")
        if slash and procedure in content.procedures:
            whole = spot.desk.whole(procedure)
            placed = next((p for p in whole.steps if p.step.step == step), None)
            if placed:
                links.append(
                    LinkView(
                        text=_("{title}, step {n}").format(
                            title=procedure_title(whole), n=placed.number
                        ),
                        href=spot.link(f"procedures/{procedure}.html#{step}"),
                    )
                )
        elif each in content.procedures:
            links.append(LinkView(text=procedure_title(spot.desk.whole(each)),
                                  href=spot.link(f"procedures/{each}.html")))
        elif each in content.instruments:
            links.append(LinkView(text=content.instruments[each].name,
                                  href=spot.link(f"instruments/{each}.html")))
        elif each in content.agents:
            links.append(LinkView(text=content.agents[each].name,
                                  href=spot.link(f"agents/{each}.html")))
        elif each in content.incidents:
            links.append(LinkView(text=content.incidents[each].name,
                                  href=spot.link(f"incidents.html#{each}")))
        elif each in content.figures or each in content.choices:
            entry = content.figures.get(each) or content.choices[each]
            links.append(LinkView(text=sentence(entry.is_), href=spot.link(f"values.html#{each}")))
    return links


def self_test_data(spot: Spot, topic: str, asked: list[AskedItem]) -> dict[str, Any]:
    """Return what the player needs: items with open keys, each with its marking plan."""
    handbook = spot.desk.content.handbook
    return {
        "handbook": handbook.handbook if handbook else "",
        "edition": handbook.edition if handbook else "",
        "language": handbook.language if handbook else "en",
        "topic": topic,
        "title": topic_title(spot, topic),
        "items": [_player_item(spot, each) for each in asked],
    }


def _player_item(spot: Spot, asked: AskedItem) -> dict[str, Any]:
    item = asked.item
    return {
        "item": item.item,
        "kind": item.kind,
        "critical": item.critical,
        "scenario": asked.scenario.scenario if asked.scenario else "",
        "situation": _spans(spot.prose(asked.situation)),
        "stem": _spans(spot.prose(item.stem)),
        "options": [
            {
                "text": _spans(spot.prose(option.text)),
                "because": _spans(spot.prose(option.because)),
                "right": option.is_right,
                "unsafe": option.unsafe,
            }
            for option in item.options
        ],
        "plan": spot.desk.derived.plans[item.item],
        "lead": [{"text": each.text, "href": each.href} for each in _leads(spot, asked)],
    }


def _spans(prose: Prose) -> list[Any]:
    """Return a sentence for a script: text as it is, a value with its machine form."""
    return [
        {"text": span.text, "value": span.machine} if span.kind == "value" else span.text
        for span in prose
    ]


def observation_sheet_view(spot: Spot, checklist: Checklist) -> ObservationSheetView:
    """Return the sheet of one procedure: one side, to tick and to sign."""
    whole = spot.desk.whole(checklist.procedure)
    numbered = list(enumerate(checklist.lines, start=1))
    stages = groupby(numbered, lambda each: _watched_in(each[1]))
    settings = {"real": _("real"), "simulated": _("simulated"), "remote": _("remote")}
    verdicts = {
        "met": _("Met"), "met with help": _("Met with help"), "not met": _("Not met"),
        "not seen": _("Not seen"),
    }
    return ObservationSheetView(
        title=_("Observation: {title}").format(title=procedure_title(whole)),
        lead=plain(
            _("Watch the whole procedure. Step in at once when someone could be hurt.")
        ),
        print_hint=plain(
            _("Print this sheet. Type the ticks in later, or keep the signed sheet: it is valid by"
              " itself.")
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
                        safety_word=_("Safety step") if line.placed else "",
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
                spot.prose(checklist.who_may_observe),
                plain(
                    _("One sheet is one run. The supervisor decides on several runs together.")
                ),
            )
            if each
        ),
    )


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


