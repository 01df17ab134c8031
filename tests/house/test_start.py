"""The start guard: our own packages, from any folder; what is missing is named, not thrown."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from trainer.start import (
    StartError,
    check_packages,
    check_platform_libraries,
    check_siblings,
    explain_missing_library,
    explain_missing_package,
)

ROOT = Path(__file__).resolve().parents[2]

ASK = """
from trainer.start import StartError, check_siblings
try:
    check_siblings()
except StartError as error:
    print("refused:", error)
else:
    import exercises, geometry, geometry.lengths
    print(geometry.__file__, exercises.__file__, geometry.lengths.__file__, sep="\\n")
"""


def ask(*folders: Path, before: str = "", cwd: Path) -> list[str]:
    """Run `ASK` with `folders` at the front of the search path; return the lines it prints.

    Nothing that is installed is on that path, or it would answer as well.
    """
    code = f"import sys\nsys.path[:0] = {[str(folder) for folder in folders]!r}\n{before}\n{ASK}"
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", code],
        cwd=cwd,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout.splitlines()


def finds_none(_library: str) -> bool:
    """Be a system that lacks every library."""
    return False


def other_package(folder: Path, name: str) -> Path:
    """Make a package that isn't ours and would say so if it were run."""
    (folder / name).mkdir(parents=True)
    (folder / name / "__init__.py").write_text("ours = False\n", encoding="utf-8")
    return folder


@pytest.mark.parametrize("name", ["geometry", "exercises"])
def test_another_package_in_front_is_passed_over(tmp_path: Path, name: str) -> None:
    lines = ask(other_package(tmp_path, name), ROOT, cwd=tmp_path)
    assert lines == [
        str(ROOT / "geometry/__init__.py"),
        str(ROOT / "exercises/__init__.py"),
        str(ROOT / "geometry/lengths.py"),
    ]


def test_a_plain_module_in_front_is_passed_over(tmp_path: Path) -> None:
    (tmp_path / "geometry.py").write_text("raise SystemExit('run')\n", encoding="utf-8")
    assert ask(tmp_path, ROOT, cwd=tmp_path)[0] == str(ROOT / "geometry/__init__.py")


def test_another_package_that_is_loaded_already_is_refused_by_place(tmp_path: Path) -> None:
    other_package(tmp_path, "geometry")
    lines = ask(tmp_path, ROOT, before="import geometry", cwd=tmp_path)
    assert lines[0] == (
        f"refused: another package is called 'geometry': {tmp_path / 'geometry/__init__.py'}"
    )
    assert str(ROOT / "geometry") in lines[1]


def test_a_folder_without_init_is_refused_once_it_is_loaded(tmp_path: Path) -> None:
    (tmp_path / "geometry").mkdir()
    before = f"sys.path.remove({str(ROOT)!r}); import geometry; sys.path.append({str(ROOT)!r})"
    lines = ask(tmp_path, ROOT, before=before, cwd=tmp_path)
    assert lines[0] == "refused: another package is called 'geometry': None"


def test_a_missing_sibling_is_refused_even_if_another_answers(tmp_path: Path) -> None:
    installed, elsewhere = tmp_path / "installed", tmp_path / "elsewhere"
    (installed / "trainer").mkdir(parents=True)
    for name in ("__init__.py", "start.py"):
        text = (ROOT / "trainer" / name).read_text(encoding="utf-8")
        (installed / "trainer" / name).write_text(text, encoding="utf-8")
    other_package(elsewhere, "geometry")
    lines = ask(installed, elsewhere, cwd=tmp_path)
    assert lines[0].startswith(f"refused: {installed / 'geometry'} is missing")


def test_siblings_that_are_ours_pass_twice() -> None:
    check_siblings()
    check_siblings()


@pytest.mark.parametrize(
    ("said", "package"),
    [
        ("libGL.so.1: cannot open shared object file: No such file or directory", "libgl1"),
        ("libglib-2.0.so.0: cannot open shared object file: No such file", "libglib2.0-0"),
        ("libEGL.so.1: cannot open shared object file", "libegl1"),
        ("libsomething-new.so.7.1: cannot open shared object file", "libxkbcommon0"),
    ],
)
def test_a_missing_library_is_explained_with_its_packages(said: str, package: str) -> None:
    text = explain_missing_library(ImportError(said))
    assert text is not None
    assert said.partition(":")[0] in text
    assert package in text.splitlines()[-1].split()


def test_qt_not_installed_is_explained() -> None:
    text = explain_missing_library(ModuleNotFoundError("no", name="PySide6.QtWidgets"))
    assert text is not None
    assert "PySide6-Essentials" in text


@pytest.mark.parametrize(
    "error",
    [
        ImportError("cannot import name 'QPush' from 'PySide6.QtWidgets'"),
        ModuleNotFoundError("No module named 'numpy'", name="numpy"),
    ],
)
def test_our_own_bugs_are_not_explained_away(error: ImportError) -> None:
    assert explain_missing_library(error) is None


def check(environ: dict[str, str], absent: str, *, system: str = "linux") -> None:
    """Check as on a system that lacks every library whose name has `absent` in it."""
    check_platform_libraries(
        environ, system=system, bundled=lambda: True, loads=lambda name: absent not in name
    )


@pytest.mark.parametrize(
    ("environ", "absent", "package"),
    [
        ({"DISPLAY": ":0"}, "libxcb-cursor.so.0", "libxcb-cursor0"),
        ({"DISPLAY": ":0"}, "libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
        ({"DISPLAY": ":0"}, "libGL.so.1", "libgl1"),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "libwayland-egl.so.1", "libwayland-egl1"),
        ({"QT_QPA_PLATFORM": "xcb"}, "libxcb-icccm.so.4", "libxcb-icccm4"),
        ({"QT_QPA_PLATFORM": "offscreen"}, "libglib-2.0.so.0", "libglib2.0-0"),
    ],
)
def test_a_missing_library_is_found_before_qt_aborts(
    environ: dict[str, str], absent: str, package: str
) -> None:
    with pytest.raises(StartError) as caught:
        check(environ, absent)
    lines = str(caught.value).splitlines()
    assert lines[0].endswith(f"lacks {absent}.")
    assert lines[-1].split() == ["sudo", "apt", "install", package]


def test_all_that_is_missing_is_named_at_once() -> None:
    with pytest.raises(StartError) as caught:
        check({"DISPLAY": ":0"}, "lib")
    asked = str(caught.value).splitlines()[-1].split()
    assert {"libgl1", "libegl1", "libxcb-cursor0", "libxkbcommon-x11-0"} < set(asked)


def test_one_complete_window_system_will_do() -> None:
    both = {"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}
    check(both, "xcb")
    check(both, "wayland")
    with pytest.raises(StartError):
        check(both, "lib")


@pytest.mark.parametrize("system", ["win32", "darwin"])
def test_other_systems_bring_their_own_libraries(system: str) -> None:
    check({}, "lib", system=system)


def test_a_qt_that_a_package_manager_installed_is_left_to_it() -> None:
    check_platform_libraries(
        {"DISPLAY": ":0"}, system="linux", bundled=lambda: False, loads=finds_none
    )


def test_no_display_is_no_crash() -> None:
    with pytest.raises(StartError, match="no display"):
        check({}, "nothing")


CORE = ("numpy", "shapely", "pydantic")

# What stands as None among the modules can't be imported: as if it had never been installed.
WITHOUT = """
import runpy, sys
sys.modules[sys.argv.pop(1)] = None
sys.argv[0] = "trainer"
runpy.run_module("trainer", run_name="__main__", alter_sys=True)
"""


@pytest.mark.parametrize("words", [(), ("schema",), ("check", "no.tray.json")])
@pytest.mark.parametrize("package", [*CORE, "platformdirs"])
def test_a_package_that_is_missing_is_named_and_nothing_is_thrown(
    package: str, words: tuple[str, ...]
) -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT, package, *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout) == (2, "")
    first, *_, last = done.stderr.splitlines()
    assert first == f"The program can't start: {package} isn't installed."
    assert last.endswith(f"-m pip install --force-reinstall {package}")
    assert "Traceback" not in done.stderr


def test_all_packages_that_are_missing_are_named_at_once() -> None:
    with pytest.raises(StartError, match="no_a and no_b aren't installed"):
        check_packages(["no_a", "no_b"])


BROKEN = """
import sys
sys.path.insert(0, {folder!r})
sys.path.insert(0, {root!r})
from trainer.__main__ import main
sys.exit(main(["schema"]))
"""


@pytest.mark.parametrize("package", CORE)
def test_a_package_that_cannot_be_loaded_is_named(tmp_path: Path, package: str) -> None:
    """As when it was made for another Python: it is there, and its compiled part isn't."""
    (tmp_path / package).mkdir()
    code = "raise ImportError('no compiled part: wrong ELF class')\n"
    (tmp_path / package / "__init__.py").write_text(code, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", BROKEN.format(folder=str(tmp_path), root=str(ROOT))],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith(f"The program can't start: {package} is damaged")
    assert "Traceback" not in done.stderr


def test_an_import_that_is_our_own_bug_is_not_explained_away() -> None:
    for name in ("geometry.nothing", "exercises", None):
        assert explain_missing_package(ImportError("no", name=name)) is None
