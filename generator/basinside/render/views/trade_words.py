"""The words of the trade: what each means, what else it is called, what it is not."""

from __future__ import annotations

from basinside.render.view_types import WordsView, WordView, plain
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, sentence


def words_view(spot: Spot) -> WordsView:
    """Return the page of words, in the order of the alphabet."""
    words = spot.desk.content.words
    return WordsView(
        title=_("Words"),
        lead=plain(_("What the words of this work mean here, and what they are taken for.")),
        words=tuple(
            WordView(
                anchor=name,
                word=sentence(word.word),
                means=spot.prose(word.means),
                facts=present(
                    fact(_("Also called:"), ", ".join(word.also)),
                    fact(_("Easily mistaken:"), spot.prose(word.not_)),
                ),
            )
            for name, word in sorted(words.items(), key=lambda each: each[1].word.casefold())
        ),
    )
