"""Where prints are written to: prints that lie there are replaced, and nothing else is."""

from pathlib import Path

from tests.built import CHECKOUT
from tests.cli.run import basinside


def test_prints_replace_prints_and_nothing_else(tmp_path: Path) -> None:
    for name, text in (("letter.html", "<p>keep</p>"), ("page.html", "<!doctype html>\n" * 900)):
        (tmp_path / name).write_text(text)
        told = basinside("print", "dilution-card", "--into", tmp_path / name, "--folder", CHECKOUT)
        assert told.code == 1
        assert "something else lies there" in told.said
        assert (tmp_path / name).read_text() == text
    (tmp_path / "empty.html").write_text("")
    for name in ("new.html", "new.html", "empty.html"):
        told = basinside("print", "dilution-card", "--into", tmp_path / name, "--folder", CHECKOUT)
        assert told.code == 0, told.said
