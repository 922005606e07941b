"""The theme: templates, style sheet, script and signs, and the engine that fills the templates.

Only our own templates meet the engine, never an author's text; everything is escaped and an
undefined name is an error.
"""

from __future__ import annotations

import fnmatch
import json
from collections.abc import Mapping
from typing import Any

import yaml
from jinja2 import DictLoader, Environment, StrictUndefined
from markupsafe import Markup

from basinside.render.view_types import PAGE_TEMPLATES, ChromeView


class Theme:
    """The files of the theme, by relative path, and what is made of them once."""

    def __init__(self, files: Mapping[str, str]) -> None:
        self._files = files
        self._engine = Environment(
            loader=DictLoader(dict(files)),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        self._templates = {
            view: self._engine.get_template(name) for view, name in PAGE_TEMPLATES.items()
        }
        self._signs: dict[str, dict[str, Any]] = yaml.safe_load(files["signs/signs.yaml"])

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
        return "\n".join(self._files[f"{folder}/{name}"].strip() for name in names) + "\n"

    def sign(self, kind: str, word: str) -> Markup:
        """Return the sign for a word of a list (``worn``, ``danger``, ``hazard``, ``mark``)."""
        entry = self._signs[kind][word]
        return Markup(self._files[f"signs/{entry['file']}"].strip())  # noqa: S704


def inline_json(value: Any) -> Markup:
    """Return JSON that can stand inside a script element of type application/json."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c"))  # noqa: S704
