"""Two builds of one tree are identical, whatever the day, the folder and the hash seed."""

import subprocess
import sys
from pathlib import Path

from tests import built

# Runs mkdocs on a day far from today: every clock Python has is shifted before it is imported.
ANOTHER_DAY = """
import datetime, sys, time
SHIFT = 400 * 86400
now, Day, Moment = time.time, datetime.date, datetime.datetime
time.time = lambda: now() + SHIFT
for name in ("gmtime", "localtime"):
    def shifted(seconds=None, read=getattr(time, name)):
        return read(time.time() if seconds is None else seconds)
    setattr(time, name, shifted)
class LaterMoment(Moment):
    @classmethod
    def now(cls, tz=None): return Moment.fromtimestamp(time.time(), tz)
    @classmethod
    def utcnow(cls): return Moment.now(datetime.timezone.utc).replace(tzinfo=None)
    @classmethod
    def today(cls): return Moment.fromtimestamp(time.time())
class LaterDay(Day):
    @classmethod
    def today(cls): return Day.fromtimestamp(time.time())
datetime.datetime, datetime.date = LaterMoment, LaterDay
from mkdocs.__main__ import cli
cli()
"""


def test_two_builds_are_the_same_file_by_file(built_demo: Path, tmp_path: Path) -> None:
    built.build(tmp_path / "again", hash_seed="1")
    first, second = built.files(built_demo), built.files(tmp_path / "again")
    assert first.keys() == second.keys()
    assert [name for name in first if first[name] != second[name]] == []


def test_a_build_on_another_day_is_the_same(built_demo: Path, tmp_path: Path) -> None:
    out = tmp_path / "later"
    config = built.CHECKOUT / "mkdocs.yml"
    command = [sys.executable, "-c", ANOTHER_DAY, "build", "--strict", "-f", str(config)]
    done = subprocess.run(
        [*command, "-d", str(out)], check=False, capture_output=True, text=True, cwd=built.CHECKOUT
    )
    assert done.returncode == 0, done.stderr
    first, second = built.files(built_demo), built.files(out)
    assert first.keys() == second.keys()
    assert [name for name in first if first[name] != second[name]] == []


def test_the_other_day_is_another_day() -> None:
    asked = ANOTHER_DAY.replace("from mkdocs.__main__ import cli\ncli()", "")
    asked += "print(datetime.date.today().isoformat(), time.strftime('%Y-%m-%d', time.gmtime()))"
    asked += "\nprint(Moment.now().date().isoformat())"
    told = subprocess.run(
        [sys.executable, "-c", asked], check=True, capture_output=True, text=True
    ).stdout.split()
    assert told[0] == told[1]
    assert told[0] > told[2]
