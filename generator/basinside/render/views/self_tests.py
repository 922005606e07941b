"""Self-tests: their list, and one page a topic that reads with and without a script."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any, Final

from basinside.model.content import AskedItem
from basinside.render.view_types import (
    BuiltOnView,
    LinkView,
    MatchView,
    NumberView,
    OptionView,
    OrderView,
    PlaceView,
    Prose,
    QuestionView,
    SelfTestIndexView,
    SelfTestView,
    SpanView,
    plain,
)
from basinside.render.views.answers import (
    answer_data,
    match_view,
    number_view,
    order_view,
    spans_for_script,
)
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, n_, sentence

_FOR_THE_LIST: Final = frozenset({"mixed", "rights", "left_word", "right_word", "ask"})


def topic_title(spot: Spot, topic: str) -> str:
    """Return the title of a topic: the first that a file of it writes, or its id in words."""
    return spot.desk.topic_titles.get(topic) or sentence(topic.replace("-", " "))


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
        lead=plain(_("Give your answer, then check it. You see the reasons for it.")),
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
        questions=_questions(spot, topic, asked),
        related_heading=_("Other self-tests"),
        related=tuple(
            LinkView(text=topic_title(spot, other), href=spot.link(f"self-tests/{other}.html"))
            for other in spot.desk.practice_topics
            if other != topic
        ),
    )


def _questions(spot: Spot, topic: str, asked: list[AskedItem]) -> tuple[QuestionView, ...]:
    """Return the questions of a topic; the list without a script and the player say the same."""
    known = spot.desk.questions
    if topic not in known:
        known[topic] = tuple(_question(spot, n, each) for n, each in enumerate(asked, start=1))
    return known[topic]


def _question(spot: Spot, number: int, asked: AskedItem) -> QuestionView:
    return QuestionView(
        anchor=asked.item.item,
        number=str(number),
        situation=spot.prose(asked.situation),
        stem=spot.prose(asked.item.stem),
        options=tuple(
            OptionView(
                text=_as_read(spot.prose(option.text)),
                verdict=_("Right") if option.is_right else _("Wrong"),
                because=spot.prose(option.because),
            )
            for option in asked.item.options
        ),
        order=order_view(spot, asked.item),
        amount=number_view(spot, asked.item),
        match=match_view(spot, asked.item),
        reveal=_("Show the answer"),
        built_on=_built_on(spot, asked),
        lead_back=_leads(spot, asked),
    )


def _as_read(prose: Prose) -> Prose:
    """Return an option as text alone: a value that leads on would tell which option is right."""
    return plain("".join(span.text for span in prose))


def _built_on(spot: Spot, asked: AskedItem) -> BuiltOnView | None:
    """Return what was published that an item was built on; a scenario's stands at its last item.

    It is shown with the answer and never before, for it may give the answer away.
    """
    found = asked.item.built_on
    scenario = asked.scenario
    if found is None and scenario is not None and scenario.items[-1] is asked.item:
        found = scenario.built_on
    if found is None:
        return None
    return BuiltOnView(
        word=_("This has happened:"),
        says=spot.prose(found.says),
        source=plain(_("Source: {source}").format(source=spot.citation(found.source))),
    )


def _leads(spot: Spot, asked: AskedItem) -> tuple[LinkView, ...]:
    """Return where an item leads back to; items about the same have the same links."""
    known = spot.desk.leads
    if asked.item.about not in known:
        known[asked.item.about] = tuple(_links_to(spot, asked.item.about))
    return known[asked.item.about]


def _links_to(spot: Spot, about: tuple[str, ...]) -> list[LinkView]:
    links = []
    content = spot.desk.content
    for each in about:
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
            links.append(
                LinkView(
                    text=procedure_title(spot.desk.whole(each)),
                    href=spot.link(f"procedures/{each}.html"),
                )
            )
        elif each in content.instruments:
            links.append(
                LinkView(
                    text=content.instruments[each].name, href=spot.link(f"instruments/{each}.html")
                )
            )
        elif each in content.agents:
            links.append(
                LinkView(text=content.agents[each].name, href=spot.link(f"agents/{each}.html"))
            )
        elif each in content.incidents:
            links.append(
                LinkView(
                    text=content.incidents[each].name, href=spot.link(f"incidents.html#{each}")
                )
            )
        elif each in content.figures or each in content.choices:
            entry = content.figures.get(each) or content.choices[each]
            page = "values.html" if each in content.figures else "choices.html"
            links.append(LinkView(text=sentence(entry.is_), href=spot.link(f"{page}#{each}")))
        elif each in content.routes:
            links.append(
                LinkView(text=content.routes[each].name, href=spot.link(f"routes.html#{each}"))
            )
        elif each in content.words:
            links.append(
                LinkView(
                    text=sentence(content.words[each].word), href=spot.link(f"words.html#{each}")
                )
            )
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
        "items": [
            _player_item(spot, each, question)
            for each, question in zip(asked, _questions(spot, topic, asked), strict=True)
        ],
    }


def _player_item(spot: Spot, asked: AskedItem, question: QuestionView) -> dict[str, Any]:
    item = asked.item
    answered = question.order or question.amount or question.match
    return {
        "item": item.item,
        "kind": item.kind,
        "critical": item.critical,
        "scenario": asked.scenario.scenario if asked.scenario else "",
        "situation": spans_for_script(question.situation),
        "stem": spans_for_script(question.stem),
        "options": [
            {
                "text": spans_for_script(shown.text),
                "because": spans_for_script(shown.because),
                "right": option.is_right,
                "unsafe": option.unsafe,
            }
            for option, shown in zip(item.options, question.options, strict=True)
        ],
        **({"answer": {**_for_script(answered), **answer_data(spot, item)}} if answered else {}),
        "plan": spot.desk.derived.plans[item.item],
        "built_on": _happened(question.built_on),
        "lead": [{"text": each.text, "href": each.href} for each in question.lead_back],
    }


def _happened(built_on: BuiltOnView | None) -> dict[str, Any] | None:
    if built_on is None:
        return None
    return {
        "word": built_on.word,
        "says": spans_for_script(built_on.says),
        "source": spans_for_script(built_on.source),
    }


def _for_script(view: OrderView | NumberView | MatchView) -> dict[str, Any]:
    """Return what a view says, for the player, which mixes what it shows itself."""
    told = {field.name: getattr(view, field.name) for field in fields(view)}
    return {name: _said(each) for name, each in told.items() if name not in _FOR_THE_LIST}


def _said(part: Any) -> Any:
    if isinstance(part, tuple):
        if all(isinstance(each, SpanView) for each in part):
            return spans_for_script(part)
        return [_said(each) for each in part]
    if is_dataclass(part) and not isinstance(part, type):
        return {each.name: _said(getattr(part, each.name)) for each in fields(part)}
    return part
