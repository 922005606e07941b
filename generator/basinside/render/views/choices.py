"""Where sources differ: what is done here, who chose it, and the other views."""

from __future__ import annotations

from basinside.model.figure import Choice
from basinside.render.view_types import ChoicesView, ChoiceView, LinkView, plain
from basinside.render.views.spot import Spot, basis_words, day_words, fact, present
from basinside.render.wording import _, listed, sentence


def choices_view(spot: Spot) -> ChoicesView:
    """Return the page of every choice between sources."""
    choices = spot.desk.content.choices
    return ChoicesView(
        title=_("Where sources differ, and what we chose"),
        lead=plain(
            _(
                "Published sources do not agree on these. Two people chose for this clinic, and"
                " a day is set to look again. The other view stands beside ours."
            )
        ),
        jump_label=_("On this page"),
        jump=tuple(
            LinkView(text=sentence(choice.is_), href=f"#{name}") for name, choice in choices.items()
        ),
        choices=tuple(_choice(spot, name, choice) for name, choice in choices.items()),
    )


def _choice(spot: Spot, name: str, choice: Choice) -> ChoiceView:
    return ChoiceView(
        anchor=name,
        is_=spot.prose(sentence(choice.is_)),
        chosen=fact(_("Here"), spot.prose(sentence(choice.chosen)), spot.citation(choice.source)),
        because=fact(_("Because"), spot.prose(choice.because)),
        others=tuple(
            fact(
                _("The other view"),
                spot.prose(other.what),
                spot.citation(other.source) or (basis_words(other.basis) if other.basis else ""),
            )
            for other in choice.not_chosen
        ),
        facts=present(
            fact(_("Chosen by"), sentence(listed(tuple(filter(None, (choice.by, choice.second)))))),
            fact(_("On"), day_words(choice.on)),
            fact(_("Look again"), day_words(choice.look_again) if choice.look_again else ""),
        ),
    )
