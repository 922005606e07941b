"""Drawings are untrusted: only elements and attributes of an allow-list pass into a page.

The file is parsed, never copied: what is not named here is a problem, and the markup that leaves
is written anew from the parsed tree. References are to ids of the same drawing only.
"""

from __future__ import annotations

import re
from typing import Final
from xml.etree import ElementTree
from xml.sax.saxutils import escape, quoteattr

from basinside.load.marked_yaml import decode
from basinside.model.picture import Picture
from basinside.problem import Level, Place, Problem

LARGEST_PICTURE_BYTES: Final = 200_000
"""A line drawing of a part is 2 to 20 kB (our own cap)."""
MOST_ELEMENTS: Final = 4_000
DEEPEST: Final = 30

SVG: Final = "{http://www.w3.org/2000/svg}"
ELEMENTS: Final = frozenset(
    "svg g path circle ellipse rect line polyline polygon title desc text tspan defs use".split()
)
ATTRIBUTES: Final = frozenset(
    "viewBox id class d cx cy r rx ry x y x1 y1 x2 y2 points width height fill stroke stroke-width"
    " stroke-linecap stroke-linejoin stroke-dasharray stroke-miterlimit transform opacity"
    " fill-opacity stroke-opacity fill-rule font-size font-weight text-anchor role aria-label"
    " aria-hidden href".split()
)
_ID = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*\Z")
_VALUE = re.compile(r"[-+A-Za-z0-9_#%.,:;()/ \n\t'’“”–…?!&°]*\Z")
_REFERENCE = re.compile(r"#[a-z][a-z0-9-]*\Z")
_DOCTYPE = re.compile(r"<!\s*(DOCTYPE|ENTITY)|<\?xml-stylesheet", re.IGNORECASE)


def clean_picture(raw: bytes, file: str) -> tuple[Picture | None, tuple[Problem, ...]]:
    """Return the drawing as markup of our own, or every reason why it may not stand in a page."""
    place = Place(file)
    if len(raw) > LARGEST_PICTURE_BYTES:
        limit = LARGEST_PICTURE_BYTES // 1000
        return None, (_refuse(place, f"the drawing is larger than {limit} kB"),)
    text, problems = decode(raw, file)
    if problems:
        return None, problems
    if _DOCTYPE.search(text):
        return None, (_refuse(place, "a drawing may hold no DOCTYPE, ENTITY or style sheet"),)
    try:
        root = ElementTree.fromstring(text)
    except ElementTree.ParseError as error:
        line, column = error.position
        message = "this is no well-formed SVG; open it in a drawing program and save it again"
        return None, (_refuse(Place(file, (), (line, column + 1)), message),)
    cleaner = _Cleaner(place, _prefix(file))
    markup = cleaner.element(root, 0) if root.tag == f"{SVG}svg" else ""
    if not markup and not cleaner.problems:
        cleaner.refuse("the outermost element must be svg in the SVG name space")
    if cleaner.problems:
        return None, tuple(dict.fromkeys(cleaner.problems))
    picture = Picture(place=place, markup=markup, ids=tuple(cleaner.ids), id_prefix=_prefix(file))
    return picture, ()


def _prefix(file: str) -> str:
    return "d-" + re.sub(r"[^a-z0-9]+", "-", file.rsplit("/", 1)[-1].removesuffix(".svg")) + "-"


class _Cleaner:
    def __init__(self, place: Place, prefix: str) -> None:
        self.place = place
        self.prefix = prefix
        self.ids: list[str] = []
        self.problems: list[Problem] = []
        self.count = 0

    def refuse(self, message: str) -> None:
        self.problems.append(_refuse(self.place, message))

    def element(self, node: ElementTree.Element, depth: int) -> str:
        self.count += 1
        if self.count > MOST_ELEMENTS or depth > DEEPEST:
            self.refuse("the drawing has too many or too deeply nested elements; simplify it")
            return ""
        name = node.tag.removeprefix(SVG)
        if name not in ELEMENTS or not node.tag.startswith(SVG):
            self.refuse(f"the element “{name.split('}')[-1]}” may not stand in a drawing")
            return ""
        attributes = "".join(self.attribute(key, value) for key, value in node.attrib.items())
        inner = escape(node.text or "") if name in {"title", "desc", "text", "tspan"} else ""
        for child in node:
            inner += self.element(child, depth + 1)
            if name in {"text", "tspan"}:
                inner += escape(child.tail or "")
        return f"<{name}{attributes}>{inner}</{name}>"

    def attribute(self, key: str, value: str) -> str:
        if key == "{http://www.w3.org/1999/xlink}href":
            key = "href"
        if key not in ATTRIBUTES:
            self.refuse(f"the attribute “{key.split('}')[-1]}” may not stand in a drawing")
            return ""
        if key == "id":
            if not _ID.match(value) or value in self.ids:
                self.refuse(f"the id “{value}” is repeated or not lower-case words with hyphens")
                return ""
            self.ids.append(value)
            value = self.prefix + value
        elif key == "href":
            if not _REFERENCE.match(value):
                self.refuse("a drawing may refer only to its own elements, as #id")
                return ""
            value = f"#{self.prefix}{value[1:]}"
        elif (
            "url(" in value.lower()
            or "javascript" in value.lower()
            or not (key in {"role", "aria-label"} or _VALUE.match(value))
        ):
            self.refuse(f"the value of “{key}” may not stand in a drawing")
            return ""
        return f" {key}={quoteattr(value)}"


def _refuse(place: Place, message: str) -> Problem:
    return Problem(place=place, rule="picture-refused", level=Level.NEVER, message=message)
