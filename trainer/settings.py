"""What one person prefers, and how they left the window, kept between starts. No Qt here."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Final, Literal, NamedTuple

from trainer.placement import Placement, kept_placement

__all__ = [
    "MOST_RECENT",
    "Appearance",
    "FolderOf",
    "Kept",
    "LengthUnit",
    "Settings",
    "SymbolStandard",
    "load_settings",
    "read_settings",
    "save_settings",
]

Appearance = Literal["system", "light", "dark"]
LengthUnit = Literal["mm", "in"]
SymbolStandard = Literal["a2.4", "iso-a", "iso-b"]
FolderOf = Literal["trays", "pictures", "intake", "sittings"]
"""What a file dialog is for: trays, pictures to save, pictures and drawings to take in, sittings.
"""

MOST_RECENT: Final = 8
"""Trays that the menu remembers."""

_CHOICES: Final[dict[str, tuple[object, ...]]] = {
    "appearance": ("system", "light", "dark"),
    "unit": ("mm", "in", None),
    # "qps" is the pseudo-locale: for looking, so no menu offers it.
    "language": ("en", "es", "qps", None),
    "symbols": ("a2.4", "iso-a", "iso-b", None),
    "loupe": (True, False),
    "less_motion": (True, False),
    "first_start_seen": (True, False),
    "guide_done": (True, False),
}


@dataclass(frozen=True, slots=True)
class Settings:
    """Preferences, replaced whole.

    Parameters
    ----------
    appearance
        Light, dark, or as the system has it.
    unit
        What lengths are shown in; None is the unit of the coupon's own callout.
    language
        The tag of the language to speak; None is the system's, if there is a translation.
    symbols
        The standard that weld symbols are drawn by: AWS A2.4, ISO 2553 system A or B; None is the
        one that the drawing's unit suggests.
    loupe
        Whether the loupe stands on the tip.
    less_motion
        Whether nothing should glide or shake, even if the system doesn't ask for that.
    first_start_seen
        Whether the card of the first start has been read.
    guide_done
        Whether the guide to the first coupon has been followed or declined.
    recent
        The trays that were opened last, the latest first.
    folders
        Where each kind of file dialog was last.
    placement
        Where the window stood; None if it never did.
    learner
        Id of who was at the bench last, in the logbook; None is its first.
    sittings
        The sittings that were sealed or opened to be composed last, the latest first.
    server
        Where the school's PostgreSQL server is, without a password; empty if there is none.
    """

    appearance: Appearance = "system"
    unit: LengthUnit | None = None
    language: str | None = None
    symbols: SymbolStandard | None = None
    loupe: bool = True
    less_motion: bool = False
    first_start_seen: bool = False
    guide_done: bool = False
    recent: tuple[str, ...] = ()
    folders: tuple[tuple[str, str], ...] = ()
    placement: Placement | None = None
    learner: str | None = None
    sittings: tuple[str, ...] = ()
    server: str = ""

    def with_recent(self, tray: Path) -> Settings:
        """Return the settings with `tray` as the one that was opened last.

        Examples
        --------
        >>> Settings(recent=("a", "b")).with_recent(Path("b")).recent
        ('b', 'a')
        """
        name = str(tray)
        others = tuple(other for other in self.recent if other != name)
        return replace(self, recent=(name, *others)[:MOST_RECENT])

    def with_sitting(self, sitting: Path) -> Settings:
        """Return the settings with `sitting` as the one that was composed last.

        Examples
        --------
        >>> Settings(sittings=("a", "b")).with_sitting(Path("b")).sittings
        ('b', 'a')
        """
        others = tuple(other for other in self.sittings if other != str(sitting))
        return replace(self, sittings=(str(sitting), *others)[:MOST_RECENT])

    def without_recent(self, tray: str | None = None) -> Settings:
        """Return the settings without that tray among the recent ones, or without any."""
        kept = () if tray is None else tuple(one for one in self.recent if one != tray)
        return replace(self, recent=kept)

    def folder(self, kind: FolderOf) -> str:
        """Return where that kind of file dialog was last, or nothing.

        Examples
        --------
        >>> Settings().with_folder("trays", Path("shop")).folder("trays")
        'shop'
        """
        return dict(self.folders).get(kind, "")

    def with_folder(self, kind: FolderOf, folder: Path) -> Settings:
        """Return the settings with that folder as the last of that kind of file dialog."""
        return replace(self, folders=tuple({**dict(self.folders), kind: str(folder)}.items()))


class Kept(NamedTuple):
    """What was found of the settings.

    Parameters
    ----------
    settings
        What was kept, with the default for whatever was missing or not a choice.
    damaged
        Why the file was no use, in the system's words; None if it was, or if there is none.
    aside
        Where a file that was no use now lies, so that it can be looked at; None if it can't be
        moved.
    """

    settings: Settings
    damaged: str | None = None
    aside: Path | None = None


def read_settings(path: Path) -> Kept:
    """Return the settings at `path`; a file that is damaged is set aside, and the defaults hold.

    Examples
    --------
    >>> read_settings(Path("nowhere.json")) == Kept(Settings())
    True
    """
    try:
        found = json.loads(path.read_text(encoding="utf-8"))
    except (FileNotFoundError, NotADirectoryError):
        return Kept(Settings())
    except OSError as error:
        return Kept(Settings(), error.strerror or str(error), _set_aside(path))
    except (ValueError, RecursionError) as error:
        return Kept(Settings(), str(error), _set_aside(path))
    if not isinstance(found, dict):
        return Kept(Settings(), "not a JSON object", _set_aside(path))
    return Kept(_known(found))


def load_settings(path: Path) -> Settings:
    """Return the settings at `path`, or the defaults for what is of no use there.

    Examples
    --------
    >>> load_settings(Path("nowhere.json")) == Settings()
    True
    """
    return read_settings(path).settings


def _known(found: Mapping[str, object]) -> Settings:
    """What of a file we know and can use; another release may have written it."""
    known = {field.name for field in fields(Settings)} & set(_CHOICES)
    # Alone, == would take 1 for True.
    kept = {
        key: value
        for key, value in found.items()
        if key in known
        and any(value == choice and type(value) is type(choice) for choice in _CHOICES[key])
    }
    recent, folders, learner = (found.get(key) for key in ("recent", "folders", "learner"))
    sittings, server = found.get("sittings"), found.get("server")
    settings: Settings = replace(Settings(), **kept)  # type: ignore[arg-type]  # each is a choice
    return replace(
        settings,
        recent=_texts(recent)[:MOST_RECENT] if isinstance(recent, list) else (),
        folders=tuple((key, text) for key, text in folders.items() if isinstance(text, str))
        if isinstance(folders, dict)
        else (),
        placement=kept_placement(found.get("placement")),
        learner=learner if isinstance(learner, str) else None,
        sittings=_texts(sittings)[:MOST_RECENT] if isinstance(sittings, list) else (),
        server=server if isinstance(server, str) else "",
    )


def _texts(found: list[object]) -> tuple[str, ...]:
    """The texts of a list, each once, in order."""
    return tuple(dict.fromkeys(text for text in found if isinstance(text, str) and text))


def _set_aside(path: Path) -> Path | None:
    """Move a file out of the way under a name of its own; return that, or None if it can't be."""
    aside = path.with_name(f"{path.stem}.damaged{path.suffix}")
    try:
        os.replace(path, aside)
    except OSError:
        return None
    return aside


def save_settings(path: Path, settings: Settings) -> bool:
    """Write the settings whole (temp file, fsync, replace); return whether that worked.

    Preferences are not worth a message: a read-only home only means that they aren't kept.
    """
    # Each program that runs has a file of its own to write; the last to replace the old one wins.
    temporary = path.with_name(f"{path.name}.{os.getpid()}.new")
    stated = asdict(settings)
    stated["folders"] = dict(settings.folders)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with temporary.open("w", encoding="utf-8") as file:
            json.dump(stated, file, indent=1)
            file.flush()
            os.fsync(file.fileno())
        os.replace(temporary, path)
    except OSError:
        with suppress(OSError):
            temporary.unlink()
        return False
    return True
