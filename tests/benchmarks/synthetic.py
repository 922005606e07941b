"""Synthetic handbooks of any size, made from the demo, and the same text as plain Markdown."""

from __future__ import annotations

import random
import re
import shutil
from html.parser import HTMLParser
from pathlib import Path

import yaml

CHECKOUT = Path(__file__).resolve().parents[2]
PROCEDURES_AN_INSTRUMENT = 10
ITEMS_A_PROCEDURE = 10
PROCEDURES_A_TOPIC = 10
BLOCKS = frozenset("p li h1 h2 h3 h4 td th dt dd summary figcaption caption legend".split())
SEEN = (
    "apron bag basin bench board bottle bowl box broom brush bucket candle card chair clamp clock"
    " cloth coat cord cup curtain dish door drain drum fan filter flask funnel gauze glass gown"
    " hook jar jug kettle key kit knife ladle lamp lid list log mat mirror mop mug nail net oven"
    " pad pan paper peg pen pipe plate rack radio rag rail ring rope rug sack scale screen sheet"
    " shelf shoe sieve sink soap sock sponge stand stool stove strap string table tap tape tile"
    " tin tongs towel tray tub tube vest wall watch wax whistle wick window wire wool"
).split()
SEEN_AT_ONCE = 10
OPTIONS = (
    (
        '      - right: "{{ boil.hold }} after the water boils again"',
        "        because: Every part needs the whole time, and the late one began it again.",
    ),
    (
        "      - wrong: When the first parts have had their time",
        "        because: The late mask would have had a part of its time and no more.",
        "        shows: time counts for the load and not for each part",
        "        unsafe: yes",
    ),
    (
        "      - wrong: At once, if the late mask is boiled alone",
        "        because: Reaching in cools the water and can soil what is clean.",
        "        shows: the load is not touched by what joins it",
    ),
)
SILENT = frozenset({"script", "style", "title", "head", "svg"})


def make_clinic(
    folder: Path, procedures: int, *, procedures_a_topic: int = PROCEDURES_A_TOPIC
) -> None:
    """Write a clinic of so many procedures, ten items each, no two procedures alike in words."""
    content = CHECKOUT / "content"
    shutil.copytree(
        content,
        folder / "content",
        ignore=shutil.ignore_patterns("procedures", "instruments", "editions", "trust.json"),
    )
    pattern = (content / "procedures" / "bag-mask-silicone-boil.yaml").read_text()
    instrument = (content / "instruments" / "bag-mask-silicone.yaml").read_text()
    handbook = (content / "handbook.yaml").read_text()
    (folder / "content" / "procedures").mkdir()
    (folder / "content" / "instruments").mkdir()
    (folder / "quizzes" / "questions").mkdir(parents=True)
    instruments = -(-procedures // PROCEDURES_AN_INSTRUMENT)
    for n in range(instruments):
        text = instrument.replace("instrument: bag-mask-silicone\n", f"instrument: kit-{n}\n")
        text = re.sub(r"look_alikes:\n(  .*\n)+", "", text)
        (folder / "content" / "instruments" / f"kit-{n}.yaml").write_text(text)
    for n in range(procedures):
        name = f"work-{n:04d}"
        text = pattern.replace("procedure: bag-mask-silicone-boil", f"procedure: {name}")
        text = text.replace(
            "instrument: bag-mask-silicone\n", f"instrument: kit-{n // PROCEDURES_AN_INSTRUMENT}\n"
        )
        text = re.sub(r"(        why: [^>\n].*)", rf"\1 Case {n} of the synthetic ward.", text)
        (folder / "content" / "procedures" / f"{name}.yaml").write_text(text)
        (folder / "quizzes" / "questions" / f"{name}.yaml").write_text(
            _items(n, name, f"topic-{n // procedures_a_topic}")
        )
    (folder / "content" / "handbook.yaml").write_text(_handbook(handbook, instruments))
    shutil.copy(CHECKOUT / "mkdocs.yml", folder / "mkdocs.yml")


def _handbook(text: str, instruments: int) -> str:
    """Return the demonstration's handbook with what names its own instruments and procedures."""
    card = yaml.safe_load(text)
    for key in ("posted", "scopes", "policy"):
        del card[key]
    clinic, kits = card["clinic"], [f"kit-{n}" for n in range(instruments)]
    del clinic["cases_per_year"]
    clinic["ready_reserve"] = dict.fromkeys(kits, 1)
    rule = {"on" if key is True else key: each for key, each in clinic["emergency"][0].items()}
    clinic["emergency"] = [{**rule, "for": kits}]
    return yaml.safe_dump(card, sort_keys=False, allow_unicode=True)


def _items(n: int, name: str, topic: str) -> str:
    lines = [f"topic: {topic}", "pool: practice", "items:"]
    for k in range(ITEMS_A_PROCEDURE):
        drawn = random.Random(f"{name}-{k}")  # no two ask the same, and few words are frequent
        beside = ("-".join(drawn.sample(SEEN, 2)) for _ in range(SEEN_AT_ONCE))
        lines += [
            f"  - item: {name}-{k}",
            "    kind: choice",
            "    thinking: apply",
            "    objective: timing a boil",
            f"    about: [{name}/start-timing]",
            "    rests_on:",
            "      read_in: 2026.2",
            "      values:",
            "        boil.hold: 20 min",
            "    situation: >-",
            f"      On day {k} in ward {n} the pot boils. Beside it: {', '.join(beside)}.",
            "      A colleague drops in a mask that was left, and stirs with a spoon.",
            "    stem: When may you lift the load of this ward out of the pot?",
            "    options:",
        ]
        lines += [line for m in range(3) for line in OPTIONS[(m + n + k) % 3]]
    return "\n".join(lines) + "\n"


class _Text(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.blocks: list[tuple[str, str]] = []
        self.now: list[str] = []
        self.tag = "p"
        self.silent = 0

    def handle_starttag(self, tag: str, attrs: object) -> None:  # noqa: ARG002
        if tag in SILENT:
            self.silent += 1
        if tag in BLOCKS:
            self._close()
            self.tag = tag

    def handle_endtag(self, tag: str) -> None:
        if tag in SILENT:
            self.silent -= 1
        if tag in BLOCKS or tag in {"ul", "ol", "dl", "table", "section", "div"}:
            self._close()

    def handle_data(self, data: str) -> None:
        if not self.silent:
            self.now.append(data)

    def _close(self) -> None:
        text = " ".join("".join(self.now).split())
        if text:
            self.blocks.append((self.tag, text))
        self.now, self.tag = [], "p"


def blocks_of(html: str) -> list[tuple[str, str]]:
    """Return (element, text) of every block of text of a page, in order."""
    reader = _Text()
    reader.feed(html)
    reader._close()
    return reader.blocks


def words_of(html: str) -> list[str]:
    """Return every word that a page shows, in order."""
    return " ".join(text for _, text in blocks_of(html)).split()


def make_markdown(built: Path, folder: Path) -> None:
    """Write the text of a built folder as static Markdown pages with a bare theme."""
    docs, theme = folder / "docs", folder / "theme"
    theme.mkdir(parents=True)
    (theme / "main.html").write_text(
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        "<title>{{ page.title }}</title></head><body>{{ page.content }}</body></html>\n"
    )
    for page in sorted(built.rglob("*.html")):
        target = docs / page.relative_to(built).with_suffix(".md")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(_as_markdown(blocks_of(page.read_text())))
    (folder / "mkdocs.yml").write_text(
        "site_name: bare\nuse_directory_urls: false\ntheme: {name: null, custom_dir: theme}\n"
        "plugins: []\nvalidation: {omitted_files: ignore}\n"
    )


def _as_markdown(blocks: list[tuple[str, str]]) -> str:
    out = []
    for tag, text in blocks:
        safe = re.sub(r"([\\`*_{}\[\]<>#])", r"\\\1", text)
        safe = re.sub(r"^(\d+)\.", r"\1\\.", safe)
        safe = re.sub(r"^([-+=])", r"\\\1", safe)
        mark = {"h1": "# ", "h2": "## ", "h3": "### ", "h4": "#### ", "li": "- "}.get(tag, "")
        out.append(mark + safe)
    return "\n\n".join(out) + "\n"
