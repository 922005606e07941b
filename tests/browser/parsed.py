"""A page as html5lib reads it: its parse errors, its elements, what it would load."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib

# Attributes whose value a browser may fetch or go to.
ADDRESSES = frozenset(
    [
        "action",
        "archive",
        "background",
        "cite",
        "classid",
        "codebase",
        "data",
        "formaction",
        "href",
        "icon",
        "longdesc",
        "manifest",
        "ping",
        "poster",
        "profile",
        "src",
        "srcset",
        "usemap",
    ]
)
CSS_ADDRESS = re.compile(r"""url\(\s*["']?([^"')]*)|@import\s+["']([^"']*)""", re.IGNORECASE)
ELSEWHERE = re.compile(r"\s*(?:[a-z][a-z0-9+.-]*:)?//|\s*(?:https?|wss?|ftp):", re.IGNORECASE)


@dataclass(frozen=True, kw_only=True)
class Parsed:
    """A parsed page; `errors` are sentences with line and column."""

    root: Element
    errors: tuple[str, ...]

    def elements(self, name: str = "*") -> Iterator[Element]:
        """Every element of a name, or of any; comments left out."""
        for element in self.root.iter():
            tag: object = element.tag  # a comment's is a function
            if isinstance(tag, str) and name in ("*", tag):
                yield element


def parse(path: Path) -> Parsed:
    """Parse a page as a browser would."""
    parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"), namespaceHTMLElements=False)
    root = parser.parse(path.read_bytes(), transport_encoding="utf-8")
    errors = tuple(
        f"line {place[0]}, column {place[1]}: {kind} {details}"
        for place, kind, details in parser.errors
    )
    return Parsed(root=root, errors=errors)


def local(name: str) -> str:
    """Return a tag's or attribute's name without its namespace."""
    return name.rpartition("}")[2].rpartition(":")[2]


def addresses(page: Parsed) -> Iterator[tuple[str, str]]:
    """Yield (where, address) for all that the page's elements and inline styles refer to."""
    for element in page.elements():
        tag = local(element.tag)
        for name, value in element.attrib.items():
            if local(name) in ADDRESSES:
                yield f"<{tag} {name}>", value
            if local(name) == "style":
                yield from css_addresses(f"<{tag} style>", value)
        if tag == "style":
            yield from css_addresses("<style>", element.text or "")


def css_addresses(where: str, css: str) -> Iterator[tuple[str, str]]:
    """Yield (where, address) for each url() and @import of a style sheet."""
    for match in CSS_ADDRESS.finditer(css):
        yield where, match[1] or match[2] or ""


def leads_elsewhere(address: str) -> bool:
    """Return whether an address names a host, whatever the scheme."""
    return ELSEWHERE.match(address) is not None


def policy(page: Parsed) -> dict[str, frozenset[str]]:
    """Return the page's content policy, directive by directive; empty when it has none."""
    for element in page.elements("meta"):
        if element.get("http-equiv", "").lower() == "content-security-policy":
            parts = (part.split() for part in element.get("content", "").split(";"))
            return {words[0]: frozenset(words[1:]) for words in parts if words}
    return {}
