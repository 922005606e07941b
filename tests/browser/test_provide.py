"""Where a browser is looked for."""

from pathlib import Path
from typing import Any

import pytest

from tests.browser import chromium, firefox


@pytest.mark.parametrize(
    ("module", "named"), [(chromium, "BASINSIDE_CHROMIUM"), (firefox, "BASINSIDE_FIREFOX")]
)
def test_the_named_one_goes_before_path_and_a_wrong_name_is_not_forgiven(
    tmp_path: Path, module: Any, named: str
) -> None:
    own = tmp_path / "own"
    own.touch()
    on_path = tmp_path / module.NAMES[-1]
    on_path.touch(mode=0o755)
    path = {"PATH": str(tmp_path)}
    assert module.find(path) == on_path
    assert module.find({**path, named: str(own)}) == own
    assert module.find({**path, named: str(tmp_path / "missing")}) is None
    assert module.find({"PATH": str(tmp_path / "empty")}) is None
