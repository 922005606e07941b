"""requirements.lock holds hashes, no addresses, and all that the project asks for."""

import re
import tomllib

from tests.built import CHECKOUT

LOCK = (CHECKOUT / "requirements.lock").read_text(encoding="utf-8")
PINNED = re.compile(r"^([A-Za-z0-9._-]+)==(\S+)( ; [^\\]+)? \\$")


def normal(name: str) -> str:
    return re.sub(r"[-_.]+", "-", re.split(r"[<>=!~;\[ ]", name, maxsplit=1)[0]).lower()


def test_every_line_is_a_pin_or_a_hash() -> None:
    for line in LOCK.splitlines():
        assert PINNED.match(line) or re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", line), (
            line
        )


def test_every_pin_has_a_hash() -> None:
    entries = re.split(r"\n(?! )", LOCK.strip())
    assert all("--hash=sha256:" in entry for entry in entries)


def test_it_names_no_host() -> None:
    assert not re.search(r"://|index-url|find-links|@ |\.(com|org|net|io|dev)\b", LOCK)


def test_it_pins_what_the_project_asks_for() -> None:
    project = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))
    asked = [
        *project["build-system"]["requires"],
        *project["project"]["dependencies"],
        *project["project"]["optional-dependencies"]["test"],
    ]
    pinned = {normal(m[1]) for line in LOCK.splitlines() if (m := PINNED.match(line))}
    assert {normal(name) for name in asked} <= pinned
