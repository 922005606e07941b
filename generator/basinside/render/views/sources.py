"""The documents behind the values, and what has none."""

from __future__ import annotations

from basinside.model.words import BASES, BASES_WITHOUT_SOURCE
from basinside.render.view_types import LinkView, SourcesView, SourceView, plain
from basinside.render.views.spot import Spot, basis_words, fact, present
from basinside.render.wording import _, n_, sentence


def sources_view(spot: Spot) -> SourcesView:
    """Return the page of sources, and of what has none."""
    content = spot.desk.content
    used: dict[str, list[LinkView]] = {}
    for name, figure in content.figures.items():
        if figure.source:
            source = figure.source.split(" ", 1)[0]
            used.setdefault(source, []).append(
                LinkView(text=figure.is_, href=spot.link(f"values.html#{name}"))
            )
    return SourcesView(
        title=_("Sources"),
        lead=plain(
            _(
                "The manufacturer's instructions and local policy come first. These are the"
                " documents behind the values, and where our copy is."
            )
        ),
        sources=tuple(
            SourceView(
                anchor=name,
                title=source.title,
                facts=present(
                    fact(_("By"), source.by),
                    fact(_("Year"), source.year or ""),
                    fact(_("Held"), sentence(source.held or _("no copy held here"))),
                    fact(_("Address"), source.address or ""),
                ),
                used_label=n_("One value from it", "{n} values from it", len(used.get(name, ()))),
                used=tuple(used.get(name, ())),
            )
            for name, source in content.sources.items()
        ),
        bases_heading=_("What a value can stand on"),
        bases=tuple(fact(sentence(each), _means(each)) for each in BASES),
        unsourced_anchor="unsourced",
        unsourced_heading=_("Values without a published source"),
        unsourced=tuple(
            LinkView(
                text=figure.is_,
                href=spot.link(f"values.html#{name}"),
                note=basis_words(figure.basis),
            )
            for name, figure in content.figures.items()
            if figure.basis in BASES_WITHOUT_SOURCE
        ),
    )


def _means(basis: str) -> str:
    return {
        "manufacturer": _("The maker's instructions for this very model say it."),
        "published": _("A guideline, standard or study says it, and we read it there."),
        "published (read second-hand)": _("We read it where another text repeats it."),
        "computed": _("Worked out from a published formula and our own values."),
        "local policy": _("Decided in this clinic, with names and a day to look again."),
        "common practice": _("Widely done; we know of no published source."),
        "from memory": _("Written from memory; still to be checked against a source."),
    }[basis]
