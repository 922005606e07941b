"""Sizes, names and words of our files."""

import re
from collections.abc import Iterator

from tests.built import CHECKOUT
from tests.house.source_files import kept, named, ours

LONGEST = 400
DRAWERS = frozenset(("utils", "util", "helpers", "helper", "common", "misc", "manager", "base"))
# Written apart, so that this file does not find itself.
UNFINISHED = re.compile(r"\b(TO" r"DO|FIX" r"ME|X" r"XX|NotImplemented" r"Error)\b")
NOT_RUN = re.compile(r"pytest\.(mark\.)?(sk" r"ip|xf" r"ail|import" r"orskip)")
# Nothing here hangs on one machine, one tracker or one address: paths of a home, hosts of
# registries, numbers of a list of work.
ELSEWHERE = re.compile(
    r"(?<![\w.}])/(?:wo"
    r"rk|fa"
    r"rm|ho"
    r"me|Us"
    r"ers|ro"
    r"ot|m"
    r"nt)/\w"
    r"|py"
    r"pi\.org|python"
    r"hosted\.org|npm"
    r"js\.org|proxy\.go"
    r"lang\.org|git"
    r"hub\.com"
    r"|\btrans"
    r"cript\b|\bsub-?"
    r"agent|\bchat"
    r"bot|(?<!-)\biss"
    r"ue #?\d",
    re.IGNORECASE,
)
TEXT = (".py", ".js", ".css", ".html", ".yaml", ".yml", ".md", ".toml", ".svg")


def lines_with(pattern: re.Pattern[str], *suffixes: str) -> Iterator[str]:
    for path in ours(*suffixes):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if pattern.search(line):
                yield f"{named(path)}:{number}"


def test_no_file_is_longer_than_a_reader_can_hold() -> None:
    lengths = {named(p): len(p.read_bytes().splitlines()) for p in ours(".py", ".js", ".css")}
    assert lengths
    assert {name: length for name, length in lengths.items() if length > LONGEST} == {}


def test_no_module_is_a_drawer() -> None:
    assert [named(p) for p in ours(".py", ".js", ".html") if p.stem.lower() in DRAWERS] == []


def test_nothing_is_unfinished() -> None:
    assert list(lines_with(UNFINISHED, *TEXT)) == []


def test_no_test_is_left_out() -> None:
    assert list(lines_with(NOT_RUN, ".py")) == []


def test_nothing_hangs_on_one_machine_or_one_address() -> None:
    assert list(lines_with(ELSEWHERE, *TEXT, ".json", ".txt", ".lock")) == []


def test_no_word_of_our_rules_finds_nothing() -> None:
    assert ELSEWHERE.search("see /ho" + "me/me/notes or iss" + "ue 12")
    assert not ELSEWHERE.search("boil/home-made, reissue 2 of /work")
    assert UNFINISHED.search("# TO" + "DO: later")
    assert NOT_RUN.search("@pytest.mark.sk" + "ip")


def test_names_are_the_same_on_every_disk() -> None:
    """A stick's file system may not tell cases apart and may not hold every letter."""
    names = kept()
    assert len({name.lower() for name in names}) == len(names)
    assert [name for name in names if not re.fullmatch(r"[A-Za-z0-9._/-]+", name)] == []


def test_our_text_ends_lines_one_way() -> None:
    assert [named(path) for path in ours(*TEXT) if b"\r" in path.read_bytes()] == []


def test_every_licence_that_we_name_is_there_whole() -> None:
    named_there = set(re.findall(r'SPDX-License-Identifier = "([^"]+)"', reuse_toml()))
    assert named_there == {"Apache-2.0", "CC-BY-4.0"}
    for name, ends in (("Apache-2.0", "limitations under the License."), ("CC-BY-4.0", "org.")):
        text = (CHECKOUT / "LICENSES" / f"{name}.txt").read_text(encoding="utf-8").rstrip()
        assert len(text) > 11_000
        assert text.endswith(ends)
    assert (CHECKOUT / "LICENSE").read_text() == (CHECKOUT / "LICENSES/Apache-2.0.txt").read_text()


def reuse_toml() -> str:
    return (CHECKOUT / "REUSE.toml").read_text(encoding="utf-8")
