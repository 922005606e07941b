"""The wheel, the sdist and an editable checkout each work from a folder of somebody else's."""

import zipfile
from collections.abc import Mapping
from pathlib import Path

import pytest

from tests import built
from tests.packaging import installed
from tests.packaging.installed import Environment

# One worker builds and installs for all of them.
pytestmark = [pytest.mark.packaging, pytest.mark.xdist_group("packaging")]

WAYS = ("wheel", "sdist", "editable")
WHERE = "import basinside, basinside.theme; print(basinside.__file__, basinside.theme.__file__)"


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel built straight from the checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    return installed.build("wheel", installed.copy_checkout(folder), folder)


@pytest.fixture(scope="module")
def unpacked_sdist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sdist built from the checkout, unpacked."""
    folder = tmp_path_factory.mktemp("sdist")
    sdist = installed.build("sdist", installed.copy_checkout(folder), folder)
    return installed.unpack(sdist, tmp_path_factory.mktemp("unpacked"))


@pytest.fixture(scope="module")
def wheel_of_sdist(unpacked_sdist: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel built from the unpacked sdist, as pip does it."""
    return installed.build("wheel", unpacked_sdist, tmp_path_factory.mktemp("wheel-of-sdist"))


@pytest.fixture(scope="module")
def environments(
    wheel: Path, wheel_of_sdist: Path, tmp_path_factory: pytest.TempPathFactory
) -> Mapping[str, Environment]:
    """Basinside installed each way."""
    homes = {way: tmp_path_factory.mktemp(way) for way in WAYS}
    copy = installed.copy_checkout(tmp_path_factory.mktemp("editable-checkout"))
    return {
        "wheel": installed.install(homes["wheel"] / "env", wheel),
        "sdist": installed.install(homes["sdist"] / "env", wheel_of_sdist),
        "editable": installed.install(homes["editable"] / "env", "--editable", copy),
    }


def contents(wheel: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(wheel) as archive:
        return {name: archive.read(name) for name in archive.namelist() if not name.endswith("/")}


def carried(wheel: Path, folder: str, inside: str) -> None:
    """Assert that a wheel holds every file of a folder of the checkout, byte by byte."""
    held = contents(wheel)
    wanted = {
        name: content
        for name, content in built.files(built.CHECKOUT / folder).items()
        if "__pycache__" not in name and ".egg-info" not in name
    }
    assert wanted
    assert [name for name, content in wanted.items() if held.get(inside + name) != content] == []


def test_the_wheel_holds_the_package_the_theme_and_the_demo(wheel: Path) -> None:
    carried(wheel, "generator/basinside", "basinside/")
    carried(wheel, "site_theme", "basinside/theme/")
    carried(wheel, "content", "basinside/demo/content/")
    carried(wheel, "quizzes", "basinside/demo/quizzes/")
    assert "basinside/demo/mkdocs.yml" in contents(wheel)


def test_the_wheel_holds_nothing_else(wheel: Path) -> None:
    others = [
        name
        for name in contents(wheel)
        if not name.startswith(("basinside/", "basinside-")) or name.endswith(".pyc")
    ]
    assert others == []


def test_a_wheel_of_the_sdist_is_the_wheel(wheel: Path, wheel_of_sdist: Path) -> None:
    def without_record(path: Path) -> dict[str, bytes]:
        return {n: c for n, c in contents(path).items() if not n.endswith("/RECORD")}

    assert without_record(wheel) == without_record(wheel_of_sdist)


def test_the_sdist_can_be_developed_in(unpacked_sdist: Path) -> None:
    for name in ("Makefile", "requirements.lock", "REUSE.toml", "tests/conftest.py", ".ci/run"):
        assert (unpacked_sdist / name).is_file(), name


@pytest.mark.parametrize("way", WAYS)
def test_what_runs_is_what_was_installed(
    environments: Mapping[str, Environment], way: str, tmp_path: Path
) -> None:
    told = installed.run([environments[way].python, "-c", WHERE], tmp_path).split()
    inside = [Path(place).is_relative_to(environments[way].home) for place in told]
    assert inside == ([False, False] if way == "editable" else [True, True])
    assert not any(Path(place).is_relative_to(built.CHECKOUT) for place in told)


@pytest.mark.parametrize("way", WAYS)
def test_a_new_clinic_builds_from_a_foreign_folder(
    environments: Mapping[str, Environment], way: str, tmp_path: Path
) -> None:
    environment = environments[way]
    installed.run([environment.script("basinside"), "new", "my-clinic"], tmp_path)
    clinic = tmp_path / "my-clinic"
    environment.run("mkdocs", "build", "--strict", "-f", clinic / "mkdocs.yml", folder=tmp_path)
    pages = built.pages(clinic / "site")
    assert clinic / "site" / "index.html" in pages


@pytest.mark.parametrize("way", WAYS)
def test_the_demo_runs_without_a_checkout_at_hand(
    environments: Mapping[str, Environment], way: str, tmp_path: Path
) -> None:
    told = environments[way].run("basinside", "demo", "out", folder=tmp_path)
    assert told.strip()
    assert [page for page in built.pages(tmp_path / "out") if page.name == "index.html"]
