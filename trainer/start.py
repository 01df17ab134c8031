"""What must hold before a window can open: the packages are ours, the system has its libraries.

Nothing here imports Qt, since its task is to explain why Qt can't be imported. Nothing here imports
`geometry` or `exercises` by name either, since another folder's may answer to it.
"""

from __future__ import annotations

import ctypes
import importlib.util
import os
import re
import sys
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Final

__all__ = [
    "StartError",
    "check_packages",
    "check_platform_libraries",
    "check_siblings",
    "explain_missing_library",
    "explain_missing_package",
    "explained",
]

_SIBLINGS: Final = ("geometry", "exercises")

_PACKAGES: Final = ("numpy", "shapely", "pydantic", "platformdirs")
"""What the core is made of; neither the commands nor the window do without."""

_IMPORT_LIBRARIES: Final[Mapping[str, str]] = {
    "libGL.so.1": "libgl1",
    "libEGL.so.1": "libegl1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libxkbcommon.so.0": "libxkbcommon0",
}
"""What the Qt modules link against, and the Debian package that has it."""

_PLATFORM_LIBRARIES: Final[Mapping[str, Mapping[str, str]]] = {
    "xcb": {
        "libxcb-cursor.so.0": "libxcb-cursor0",
        "libxcb-icccm.so.4": "libxcb-icccm4",
        "libxcb-image.so.0": "libxcb-image0",
        "libxcb-keysyms.so.1": "libxcb-keysyms1",
        "libxcb-randr.so.0": "libxcb-randr0",
        "libxcb-render-util.so.0": "libxcb-render-util0",
        "libxcb-shape.so.0": "libxcb-shape0",
        "libxcb-xkb.so.1": "libxcb-xkb1",
        "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    },
    "wayland": {
        "libwayland-client.so.0": "libwayland-client0",
        "libwayland-cursor.so.0": "libwayland-cursor0",
        "libwayland-egl.so.1": "libwayland-egl1",
    },
}
"""What the plug-in for each window system links against beyond that. Without one of them Qt aborts
the process, so it has to be found out beforehand."""


class StartError(Exception):
    """The program can't start; the text says why and what would help, without a traceback."""


def check_siblings() -> None:
    """Make sure that `geometry` and `exercises` are the packages beside this one.

    ``python -m trainer`` looks in the current folder first, so a ``geometry`` that happens to lie
    there would be taken for ours. Where it would, ours is loaded from its own place; the search
    path stays as it was. Call this before anything imports the two.

    Raises
    ------
    StartError
        If one of them doesn't lie beside this package, or another of that name is loaded already.

    Examples
    --------
    >>> check_siblings()
    """
    home = Path(__file__).resolve().parents[1]
    for name in _SIBLINGS:
        loaded = sys.modules.get(name)
        if loaded is not None:
            _refuse_stranger(name, loaded.__file__, home)
            continue
        spec = importlib.util.find_spec(name)
        if spec is None or not _is_sibling(spec.origin, name, home):
            _load(name, home)


def _is_sibling(file: str | None, name: str, home: Path) -> bool:
    """Return whether `file` is the ``__init__.py`` of our package of that name."""
    return file is not None and Path(file).resolve() == home / name / "__init__.py"


def _refuse_stranger(name: str, file: str | None, home: Path) -> None:
    """Raise if a loaded package of that name isn't ours; too late to change it then."""
    if not _is_sibling(file, name, home):
        raise StartError(
            f"another package is called {name!r}: {file}\n"
            f"The one that belongs to this program is {home / name}. "
            "Start the program from another folder, or with the command toe-and-throat."
        )


def _load(name: str, home: Path) -> None:
    """Load our package of that name from `home`, whatever the search path says."""
    file = home / name / "__init__.py"
    spec = importlib.util.spec_from_file_location(name, file) if file.is_file() else None
    if spec is None or spec.loader is None:
        raise StartError(
            f"{file.parent} is missing: this installation is incomplete.\n"
            "Install the program again: its packages geometry, exercises and trainer lie side by "
            "side."
        )
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module
    spec.loader.exec_module(module)


def check_packages(names: Iterable[str] = _PACKAGES) -> None:
    """Make sure that the packages the core is made of are installed; none of them is loaded.

    Raises
    ------
    StartError
        If some aren't: the text names them all, and says how to get them.

    Examples
    --------
    >>> check_packages()
    >>> check_packages(["numpy", "no_such_package"])
    Traceback (most recent call last):
    trainer.start.StartError: The program can't start: no_such_package isn't installed.
    """
    missing = [name for name in names if not _is_installed(name)]
    if missing:
        raise StartError(_package_advice(missing, "isn't installed", "aren't installed"))


def _is_installed(name: str) -> bool:
    try:
        return importlib.util.find_spec(name) is not None
    except (ImportError, ValueError):
        return False


def explain_missing_package(error: ImportError) -> str | None:
    """Return what to do when the core couldn't be imported, or None if a package isn't why.

    Parameters
    ----------
    error
        As raised by an import of `geometry` or `exercises`. A package that is there can fail all
        the same, if it was installed for another Python or lacks a library.

    Examples
    --------
    >>> text = explain_missing_package(ModuleNotFoundError("no", name="pydantic_core._pydantic"))
    >>> print(text.splitlines()[0])
    The program can't start: pydantic is damaged, or was made for another Python.
    >>> explain_missing_package(ImportError("cannot import name 'Bead'", name="geometry")) is None
    True
    """
    name = (error.name or "").partition(".")[0]
    if not name or name not in (*_PACKAGES, "pydantic_core", "annotated_types"):
        name = _raised_in(error)
    package = {"pydantic_core": "pydantic", "annotated_types": "pydantic"}.get(name, name)
    if package not in _PACKAGES:
        return None
    if not _is_installed(package):
        return _package_advice([package], "isn't installed", "")
    return _package_advice([package], "is damaged, or was made for another Python", "")


@contextmanager
def explained() -> Iterator[None]:
    """Within this a package that can't be loaded is told in words.

    Raises
    ------
    StartError
        In place of its ImportError.
    """
    try:
        yield
    except ImportError as error:
        words = explain_missing_package(error)
        if words is None:
            raise
        raise StartError(words) from error


def _raised_in(error: ImportError) -> str:
    """The package whose file raised it, from the last of the calls that one of them is in."""
    trace, found = error.__traceback__, ""
    while trace is not None:
        package = str(trace.tb_frame.f_globals.get("__name__", "")).partition(".")[0]
        if package in (*_PACKAGES, "pydantic_core"):
            found = package
        trace = trace.tb_next
    return found


def _package_advice(names: Sequence[str], one: str, several: str) -> str:
    """What is wrong with packages, and the command that mends it."""
    return (
        f"The program can't start: {' and '.join(names)} {one if len(names) == 1 else several}.\n"
        "Installing the program again brings what it needs; or, with the Python that starts it:\n"
        f"    {sys.executable} -m pip install --force-reinstall {' '.join(names)}"
    )


def explain_missing_library(error: ImportError) -> str | None:
    """Return what to install when an import of Qt failed, or None if that isn't why it failed.

    Parameters
    ----------
    error
        As raised by the import of a PySide6 module.

    Examples
    --------
    >>> text = explain_missing_library(ImportError("libGL.so.1: cannot open shared object file"))
    >>> print(text.splitlines()[0])
    The window can't open: this system lacks libGL.so.1.
    >>> explain_missing_library(ImportError("cannot import name 'QWidget'")) is None
    True
    """
    if isinstance(error, ModuleNotFoundError):
        if (error.name or "").partition(".")[0] != "PySide6":
            return None
        return (
            "The window can't open: PySide6 isn't installed.\n"
            "The commands check, measure, read, grade and schema work without it; the window needs "
            "the package PySide6-Essentials."
        )
    found = re.search(r"(lib[\w.+-]+\.so(?:\.\d+)*): cannot open shared object", str(error))
    # The loader names one library at a time; so all of the group are advised.
    return _advice([found[1]], _IMPORT_LIBRARIES.values()) if found else None


def _loads(library: str) -> bool:
    """Return whether the system's loader finds the library of that name."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _bundled() -> bool:
    """Return whether Qt comes from a wheel, which brings Qt but not the system's libraries.

    Other distributions have package managers that see to those, in places of their own.
    """
    spec = importlib.util.find_spec("PySide6")
    places = spec.submodule_search_locations if spec is not None else None
    return any(Path(place, "Qt", "plugins", "platforms").is_dir() for place in places or ())


def check_platform_libraries(
    environ: Mapping[str, str] = os.environ,
    *,
    system: str = sys.platform,
    bundled: Callable[[], bool] = _bundled,
    loads: Callable[[str], bool] = _loads,
) -> None:
    """Make sure that Qt and its plug-in for this window system will load; call it before Qt starts.

    Parameters
    ----------
    environ
        Says which window system there is: ``QT_QPA_PLATFORM``, ``WAYLAND_DISPLAY``, ``DISPLAY``.
    system
        As `sys.platform`; only Linux leaves these libraries to the system.
    bundled
        Whether this Qt leaves them to the system.
    loads
        Whether a shared library of that name can be loaded.

    Raises
    ------
    StartError
        If there is no display, or a library is missing: the text names the Debian packages.

    Examples
    --------
    >>> check_platform_libraries({"QT_QPA_PLATFORM": "offscreen"}, system="linux")
    >>> check_platform_libraries({}, system="linux")
    Traceback (most recent call last):
    trainer.start.StartError: The window can't open: there is no display here.
    Start the program in a desktop session, or set DISPLAY to an X server's.
    """
    if system != "linux":
        return
    platforms = _platforms(environ)
    if not platforms:
        raise StartError(
            "The window can't open: there is no display here.\n"
            "Start the program in a desktop session, or set DISPLAY to an X server's."
        )
    if not bundled():
        return
    lacking = []
    for platform in platforms:
        needed = {**_IMPORT_LIBRARIES, **_PLATFORM_LIBRARIES.get(platform, {})}
        lacking.append({lib: package for lib, package in needed.items() if not loads(lib)})
    # Qt tries one plug-in after the other, so a single one that is complete will do.
    if all(lacking):
        raise StartError(_advice(lacking[0], lacking[0].values()))


def _platforms(environ: Mapping[str, str]) -> list[str]:
    """Return the names of the plug-ins that Qt will try here, in its order."""
    chosen = environ.get("QT_QPA_PLATFORM")
    if chosen:
        return [name.partition(":")[0] for name in chosen.split(";")]
    return [
        name
        for name, variable in (("wayland", "WAYLAND_DISPLAY"), ("xcb", "DISPLAY"))
        if environ.get(variable)
    ]


def _advice(missing: Collection[str], packages: Iterable[str]) -> str:
    """Return a message that names the missing libraries and the packages to install."""
    return (
        f"The window can't open: this system lacks {', '.join(missing)}.\n"
        f"On Debian and Ubuntu this brings {'it' if len(missing) == 1 else 'them'}:\n"
        f"    sudo apt install {' '.join(packages)}"
    )
