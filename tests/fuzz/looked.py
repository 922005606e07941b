"""A spoiled clinic read, checked and, where nothing stops it, built; what must hold of it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Final

import html5lib

from basinside.check.run import check
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.pipeline.build import open_theme
from basinside.problem import any_stop
from basinside.render.environment import Theme
from basinside.render.site import Folder, pages

_LOADS: Final = frozenset({"src", "href", "srcset", "data", "action", "formaction", "poster"})
_NEVER: Final = frozenset({"object", "embed", "iframe", "base", "foreignobject", "applet"})


@cache
def _theme() -> Theme:
    return open_theme()


def look(files: Mapping[str, bytes]) -> int:
    """Read, check and build a clinic; return how many pages were built.

    Raises:
        AssertionError: when a problem is not one printable line, or a page acts or loads what no
            author may make it act or load.
    """
    content, problems = load(files)
    derived = derive(content)
    problems = [*problems, *check(content, derived)]
    for each in problems:
        text = f"{each.place.file} {each.message} {each.hint}"
        assert "\n" not in text, text
    if any_stop(problems):
        return 0
    made = 0
    for page in pages(Folder(content=content, derived=derived, theme=_theme())):
        text = page.make()
        made += 1
        if page.path.endswith(".html"):
            inert(page.path, text)
    return made


def inert(path: str, text: str) -> None:
    """See that nothing on a page acts or loads.

    Raises:
        AssertionError: when an element, an event or an address does.
    """
    for element in html5lib.parse(text, namespaceHTMLElements=False).iter():
        if not isinstance(element.tag, str):
            continue
        assert element.tag.lower() not in _NEVER, f"{path}: {element.tag}"
        for name, value in element.attrib.items():
            assert not str(name).lower().startswith("on"), f"{path}: {element.tag} {name}"
            if str(name).lower() in _LOADS:
                scheme = value.strip().partition(":")[0].lower()
                assert scheme not in {"javascript", "data", "vbscript", "http", "https"}, value
