"""What is shipped: the three packages and the assets, and nothing else."""

from __future__ import annotations

import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PACKAGES = ("geometry", "exercises", "trainer")


def built(target: str, folder: Path) -> Path:
    """Build one target of the project into `folder`; return the file."""
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", target, "-d", str(folder)],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    [file] = folder.iterdir()
    return file


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built("wheel", tmp_path_factory.mktemp("wheel"))


def names(wheel: Path) -> set[str]:
    with zipfile.ZipFile(wheel) as archive:
        return {name for name in archive.namelist() if ".dist-info/" not in name}


def test_wheel_holds_every_module_and_every_asset_but_readmes_pictures(wheel: Path) -> None:
    modules = {
        path.relative_to(ROOT).as_posix()
        for package in PACKAGES
        for pattern in ("*.py", "py.typed", "*.json")
        for path in (ROOT / package).rglob(pattern)
    }
    assets = {
        "trainer/_assets/" + path.relative_to(ROOT / "assets").as_posix()
        for path in (ROOT / "assets").rglob("*")
        if path.is_file() and "pictures" not in path.parts
    }
    assert assets
    assert names(wheel) == modules | assets


def test_wheel_takes_no_top_level_name_but_the_packages(wheel: Path) -> None:
    assert {name.partition("/")[0] for name in names(wheel)} == set(PACKAGES)


def test_wheel_asks_for_a_qt_that_is_sound_on_this_python(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        [file] = [name for name in archive.namelist() if name.endswith(".dist-info/METADATA")]
        asked = archive.read(file).decode().splitlines()
        [entry] = [name for name in archive.namelist() if name.endswith("entry_points.txt")]
        assert "toe-and-throat = trainer.__main__:main" in archive.read(entry).decode()
    assert "Requires-Python: >=3.11" in asked
    assert "Requires-Dist: pyside6-essentials<6.12,>=6.8; python_version < '3.12'" in asked
    assert "Requires-Dist: pyside6-essentials>=6.8; python_version >= '3.12'" in asked


def test_source_archive_holds_what_the_wheel_is_built_from(tmp_path: Path) -> None:
    with tarfile.open(built("sdist", tmp_path / "sdist")) as archive:
        shown = {name.split("/")[1] for name in archive.getnames()}
    assert shown >= {*PACKAGES, "assets", "tests", "pyproject.toml", "README.md", "LICENSE"}
