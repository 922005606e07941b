"""The theme: templates, style sheet, script and signs, and the engine that fills the templates.

Only our own templates meet the engine, never an author's text; everything is escaped and an
undefined name is an error.
"""

from __future__ import annotations

import fnmatch
import json
import re
from collections.abc import Iterable, Mapping
from typing import Any

import yaml
from jinja2 import BaseLoader, DictLoader, Environment, StrictUndefined
from markupsafe import Markup, escape

from basinside.render.view_types import PAGE_TEMPLATES, ChromeView, SpanView


def engine(loader: BaseLoader) -> Environment:
    """Return the template engine: strict, escaping, with ``prose`` to place a sentence."""
    made = Environment(
        loader=loader,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["prose"] = prose
    made.globals["inline_json"] = inline_json
    return made


def prose(spans: Iterable[SpanView]) -> Markup:
    """Return a sentence as markup: text escaped, values as data elements, links with their words.

    Not a template macro: a page has some hundred sentences, and a call here costs a fifth.
    """
    parts: list[str] = []
    for span in spans:
        text = str(escape(span.text))
        if span.kind == "value":
            text = f'<data value="{escape(span.machine)}">{text}</data>'
        elif span.kind == "typed":
            text = f"<code>{text}</code>"
        if span.href:
            kind = ' class="to-value"' if span.kind == "value" else ""
            text = f'<a{kind} href="{escape(span.href)}">{text}</a>'
        parts.append(text)
    return Markup("".join(parts))  # noqa: S704 - every piece was escaped


_COMMENT_LINES = re.compile(
    r"^[ \t]*(?:/\*(?:(?!\*/).)*\*/|//[^\n]*)[ \t]*\n", re.MULTILINE | re.DOTALL
)


class Theme:
    """The files of the theme, by relative path, and what is made of them once."""

    def __init__(self, files: Mapping[str, str]) -> None:
        self._files = files
        self._engine = engine(DictLoader(dict(files)))
        self._templates = {
            view: self._engine.get_template(name) for view, name in PAGE_TEMPLATES.items()
        }
        self._signs: dict[str, dict[str, Any]] = yaml.safe_load(files["signs/signs.yaml"])

    def made_of(self, files: Mapping[str, str]) -> bool:
        """Whether the theme was made of these very texts."""
        return self._files == files

    def page(self, view: object, chrome: ChromeView) -> str:
        """Return the HTML of one page."""
        return self._templates[type(view)].render(view=view, chrome=chrome) + "\n"

    def store_page(self, chrome: ChromeView) -> str:
        """Return the page that keeps drafts for all others."""
        return self._engine.get_template("templates/store.html").render(chrome=chrome) + "\n"

    def stylesheet(self) -> str:
        """Return all style sheets as one: tokens, elements, components, print."""
        names = [
            name
            for pattern in self._files["css/order.txt"].split()
            for name in fnmatch.filter(sorted(self._files), pattern)
        ]
        return "\n".join(self._files[name].strip() for name in names) + "\n"

    def script(self, order_file: str) -> str:
        """Return the scripts that an order file lists, joined to one classic script."""
        folder = order_file.rsplit("/", 1)[0]
        names = self._files[order_file].split()
        return joined_script(self._files[f"{folder}/{name}"] for name in names)

    def sign(self, kind: str, word: str) -> str:
        """Return the name of the sign for a word (``worn``, ``danger``, ``hazard``, ``mark``)."""
        name: str = self._signs[kind][word]["file"].removesuffix(".svg")
        return name

    @staticmethod
    def placed_sign(name: str) -> Markup:
        """Return a sign as it stands in a page that has it in its sprite."""
        return Markup(
            '<svg viewBox="0 0 64 64" aria-hidden="true"><use href="#sign-{}"/></svg>'
        ).format(name)

    def sprite(self, names: Iterable[str]) -> Markup:
        """Return the drawings of signs once for a page, from where each place draws them."""
        symbols = "".join(
            f'<symbol id="sign-{name}" viewBox="0 0 64 64">{self._sign_inside(name)}</symbol>'
            for name in sorted(names)
        )
        if not symbols:
            return Markup("")
        return Markup(f'<svg class="sprite" aria-hidden="true">{symbols}</svg>')  # noqa: S704

    def _sign_inside(self, name: str) -> str:
        text = self._files[f"signs/{name}.svg"]
        return text[text.index(">", text.index("<svg")) + 1 : text.rindex("</svg>")].strip()


def joined_script(scripts: Iterable[str]) -> str:
    """Return scripts as one, without the comments that have lines of their own.

    They are a third of the text, and a page from a slow stick is better without them.
    """
    return "\n".join(_COMMENT_LINES.sub("", each).strip() for each in scripts) + "\n"


def inline_json(value: Any) -> Markup:
    """Return JSON that can stand inside a script element of type application/json."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c"))  # noqa: S704
