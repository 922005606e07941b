"""Make the demonstration's keys, sealed form, trust list, attempts and observations again.

    python tests/make_sample_evidence.py [FOLDER]

Everything is the same in every run as long as the content is: what is drawn comes from a fixed
text. All of it is marked as a demonstration, and its phrases lie beside it in the clear.
"""

from __future__ import annotations

import hashlib
import shutil
import sys
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from basinside.pipeline import entering, forms, keys

CHECKOUT = Path(__file__).resolve().parents[1]
MADE_ON = date(2026, 10, 1)
SAT_ON = date(2026, 11, 16)
LEARNER, OTHER_LEARNER = "M-12", "M-15"
PROCEDURES = (
    "bag-mask-silicone-boil",
    "bag-mask-silicone-steam",
    "bag-mask-silicone-soak",
    "bag-mask-vinyl-soak",
)
RUNS = (
    ("S-01", date(2026, 11, 4), "real"),
    ("S-02", date(2026, 11, 9), "real"),
    ("S-02", date(2026, 11, 13), "simulated"),
)
STARTS = ("09:10", "10:40", "13:20", "15:05")
PHRASES = """\
DEMONSTRATION ONLY. These open the demonstration's own files and prove nothing.
A real clinic writes its phrases on paper and keeps them away from its folder.

Marking phrase          {marking}
Opening code, core A    {opening_code}
Marking code, core A    {marking_code}
Key phrase of S-01      {supervisor}
Root key phrase         {root}
Root fingerprint        {fingerprint}
"""


def drawn(name: str) -> Callable[[int], bytes]:
    """Octets that look random and are the same in every run."""

    def more() -> Iterator[int]:
        number = 0
        while True:
            yield from hashlib.sha256(f"demonstration {name} {number}".encode()).digest()
            number += 1

    stream = more()
    return lambda count: bytes(next(stream) for _ in range(count))


def key_of(name: str) -> ec.EllipticCurvePrivateKey:
    secret = int.from_bytes(drawn(f"key {name}")(31), "big") + 1  # below the order of the curve
    return ec.derive_private_key(secret, ec.SECP256R1())


def right_answers(root: Path, phrase: str) -> list[list[int]]:
    """The right positions of each item, as the demonstration's own keys have them."""
    opened = forms.opened_keys(root, "core", "A", phrase)
    return [
        [each["has"] for each in item["plan"]["pass_all"] if "has" in each]
        for item in opened["items"]
    ]


def wrong_answers(root: Path, phrase: str) -> list[list[int]]:
    """One wrong option at each item, an unsafe one where there is one."""
    opened = forms.opened_keys(root, "core", "A", phrase)
    out = []
    for item in opened["items"]:
        plan = item["plan"]
        unsafe = [each["has"] for each in plan["fail_any"]]
        wrong = [each["hasnt"] for each in plan["pass_all"] if "hasnt" in each]
        out.append([(unsafe or wrong)[0]])
    return out


def make_keys(root: Path, into: Path, phrases: dict[str, str]) -> None:
    owners = {
        "root": keys.Owner(purpose="root-key"),
        "S-01": keys.Owner(purpose="supervisor-key", staff_code="S-01", role="supervisor"),
    }
    for name, owner in owners.items():
        keys.make_key(
            into / f"{name}.key.json",
            owner,
            phrase=phrases[name],
            made=MADE_ON,
            random_bytes=drawn(f"envelope {name}"),
            clinic=root,
            private=key_of(name),
        )


def make_attempts(root: Path, into: Path, phrase: str) -> None:
    form = forms.opened_form(root, "core", "A", phrase=phrase)
    right, wrong = right_answers(root, phrase), wrong_answers(root, phrase)
    for learner, given in ((LEARNER, right), (OTHER_LEARNER, right[:7] + wrong[7:])):
        answers = tuple(tuple(sorted(each)) for each in given)
        attempt = entering.attempt_of(form, answers, learner=learner, on=SAT_ON, language="en")
        entering.save(attempt, into)


def make_observations(root: Path, into: Path) -> None:
    for procedure, start in zip(PROCEDURES, STARTS, strict=True):
        clinic, lines = entering.checklist(root, procedure)
        met = {each.number: entering.Seen(verdict="met") for each in lines}
        for observer, day, setting in RUNS:
            about = observed(LEARNER, observer, day, start, setting)
            made = entering.observation_of(clinic, procedure, lines, met, about)
            entering.save(made, into)
    clinic, lines = entering.checklist(root, PROCEDURES[0])
    seen = {each.number: entering.Seen(verdict="met") for each in lines}
    seen[1] = entering.Seen(verdict="not met", why="Did not look before reaching for it.")
    about = observed(OTHER_LEARNER, "S-01", RUNS[0][1], "11:00", "real")
    entering.save(entering.observation_of(clinic, PROCEDURES[0], lines, seen, about), into)


def observed(learner: str, observer: str, day: date, start: str, setting: str) -> dict[str, Any]:
    return {
        "learner_staff_code": learner,
        "observer_staff_code": observer,
        "date": day.isoformat(),
        "start": start,
        "setting": setting,
        "announced": True,
        "help": False,
    }


def make(root: Path) -> None:
    """Make everything again in a clinic's folder; what was made before is removed."""
    into = root / "quizzes" / "sample-evidence"
    shutil.rmtree(into, ignore_errors=True)
    for old in (root / "content" / "trust.json", forms.sealed_path(root, "core", "A")):
        old.unlink(missing_ok=True)
    phrases = {
        name: forms.draw_phrase(drawn(f"phrase {name}")) for name in ("marking", "root", "S-01")
    }
    sealing = forms.seal_assessment(
        root, "core", "A", phrase=phrases["marking"], random_bytes=drawn("form core A")
    )
    make_keys(root, into, phrases)
    keys.begin_trust(root, into / "root.key.json", phrases["root"], MADE_ON)
    signer = keys.signer_of(into / "S-01.key.json", MADE_ON)
    listed = keys.list_signer(root, into / "root.key.json", phrases["root"], signer, MADE_ON)
    make_attempts(root, into, phrases["marking"])
    make_observations(root, into)
    (into / "DEMO-PHRASES.txt").write_text(
        PHRASES.format(
            marking=phrases["marking"],
            supervisor=phrases["S-01"],
            root=phrases["root"],
            opening_code=sealing.codes.opening_code,
            marking_code=sealing.codes.marking_code,
            fingerprint=keys.fingerprint_of(listed),
        ),
        encoding="utf-8",
    )


if __name__ == "__main__":
    make(Path(sys.argv[1]) if len(sys.argv) > 1 else CHECKOUT)
