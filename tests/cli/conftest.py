"""A clinic with its evidence, made once a run; a signed record of it."""

from pathlib import Path

import pytest

from tests.cli.run import evidence, make_clinic, sign


@pytest.fixture(scope="session")
def clinic(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demonstration clinic; not to be changed."""
    return make_clinic(tmp_path_factory.mktemp("clinic"))


@pytest.fixture(scope="session")
def record(clinic: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A record for M-12, signed with the demonstration key; not to be changed."""
    into = tmp_path_factory.mktemp("records")
    ran = sign(clinic, into, evidence(clinic))
    assert ran.code == 0, ran.said
    return into / "M-12-bag-masks-2026-11-20.record.json"
