"""Find words where there should be none: in templates and in scripts.

Every word a reader sees is made in ``render/views``. A template places words; a script takes its
phrases from the page's inline JSON.
"""

import re
from collections.abc import Iterator
from html.parser import HTMLParser

HUMAN = frozenset(
    [
        "alt",
        "title",
        "placeholder",
        "label",
        "summary",
        "abbr",
        "aria-label",
        "aria-description",
        "aria-roledescription",
        "aria-valuetext",
        "aria-placeholder",
        "download",
    ]
)
JINJA = re.compile(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", re.DOTALL)
JINJA_TEXT = re.compile(r""""([^"\\]*)"|'([^'\\]*)'""")
KIND = re.compile(r"\{%-? block kind -?%\}[a-z-]+\{%-? endblock -?%\}")  # goes into a class name
LETTER = re.compile(r"[^\W\d_]")
TWO_WORDS = re.compile(r"[^\W\d_]{2,},? [^\W\d_]{2,}")
SENTENCE = re.compile(r"^[^\W\d_].*[.?!:…]$|^[A-Z][^\W\d_]+,? [^\W\d_]")


class _Shown(HTMLParser):
    """Collects what a reader would see: text, and the attributes that are read out or shown."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.shown: list[tuple[int, str]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002
        kept = {name: value or "" for name, value in attrs}
        for name, value in kept.items():
            described = name == "content" and kept.get("name") == "description"
            pressed = name == "value" and kept.get("type") in ("button", "submit", "reset")
            if name in HUMAN or described or pressed:
                self.shown.append((self.getpos()[0], value))

    def handle_data(self, data: str) -> None:
        self.shown.append((self.getpos()[0], data))


def in_template(source: str) -> list[str]:
    """Return the words that a template itself holds, each with its line."""

    def blank(match: re.Match[str]) -> str:
        return "\n" * match[0].count("\n")

    reader = _Shown()
    reader.feed(JINJA.sub(blank, KIND.sub(blank, source)))
    reader.close()
    found = [f"line {line}: {text.strip()}" for line, text in reader.shown if LETTER.search(text)]
    for code in JINJA.finditer(source):
        if code[0].startswith("{#"):
            continue
        line = source.count("\n", 0, code.start()) + 1
        texts = (match[1] or match[2] or "" for match in JINJA_TEXT.finditer(code[0]))
        found += [f"line {line}: {text}" for text in texts if SENTENCE.search(text)]
    return found


# A script, piece by piece: comments and regular expressions are passed over, texts are kept.
PIECE = re.compile(
    r"""(?P<comment>//[^\n]*|/\*.*?\*/)
      | (?P<text>"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)
      | (?P<pattern>(?<=[=(,:;!&|?{}\[\n])\s*
          /(?![*/])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n\[])+/[a-z]*)
    """,
    re.DOTALL | re.VERBOSE,
)
# What a text may be in spite of two words: a selector, or a message for whoever mends the script.
TO_OTHERS = re.compile(
    r"(?:querySelector(?:All)?|matches|closest)\(\s*$|"
    r"(?:new \w*Error|console\.(?:error|warn|info))\([^;]*$"
)
HOLES = re.compile(r"\$\{[^}]*\}")


def texts(script: str) -> Iterator[tuple[int, str, str]]:
    """Yield (position, text, code since the last statement) for every text of a script."""
    for piece in PIECE.finditer(script):
        if piece["text"]:
            before = re.split(r"[;{}]", script[max(0, piece.start() - 200) : piece.start()])[-1]
            yield piece.start(), piece["text"][1:-1], before


def in_script(script: str) -> list[str]:
    """Return the sentences that a script itself holds, each with its line."""
    return [
        f"line {script.count(chr(10), 0, position) + 1}: {text}"
        for position, text, before in texts(script)
        if TWO_WORDS.search(HOLES.sub("", text))
        and text != "use strict"
        and not TO_OTHERS.search(before)
    ]


def code_alone(script: str) -> str:
    """Return a script without its comments and texts, lines kept."""

    def blank(match: re.Match[str]) -> str:
        kept = match[0] if match["pattern"] else ""
        return kept + "\n" * (match[0].count("\n") - kept.count("\n"))

    return PIECE.sub(blank, script)
