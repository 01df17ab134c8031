"""Where one person's files lie on this system: what is preferred, what was called, reports. No Qt.

The first releases asked Qt for these folders. On macOS Qt names another one for settings than the
system's convention does; what lies there is moved once.
"""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from platformdirs import user_config_path, user_data_path

__all__ = ["NAME", "Places", "move_in", "old_places", "places"]

NAME: Final = "toe-and-throat"
"""What this program's folders are called."""


@dataclass(frozen=True, slots=True)
class Places:
    """The files and folders of one person.

    Parameters
    ----------
    settings
        The file of what they prefer.
    data
        The folder of what they did.
    """

    settings: Path
    data: Path

    @property
    def calls(self) -> Path:
        """The file of what was called."""
        return self.data / "calls.jsonl"

    @property
    def logbook(self) -> Path:
        """The file of the logbook, which takes in what was called."""
        return self.data / "logbook.sqlite3"

    @property
    def reports(self) -> Path:
        """The folder of reports of trouble."""
        return self.data / "reports"

    @property
    def unsaved(self) -> Path:
        """The folder of trays that were worked on and not saved yet."""
        return self.data / "unsaved"

    @property
    def sittings(self) -> Path:
        """The folder of sittings that were begun and not handed in yet."""
        return self.data / "sittings"

    @property
    def results(self) -> Path:
        """The folder of sealed results that were handed in here."""
        return self.data / "results"

    @property
    def running(self) -> Path:
        """The folder where each running program keeps a file, which its crash would fill."""
        return self.data / "running"


def places() -> Places:
    """Return where the files of whoever runs this belong; nothing is made there.

    Examples
    --------
    >>> places().settings.name, places().calls.name
    ('settings.json', 'calls.jsonl')
    """
    config = user_config_path(NAME, appauthor=False)
    return Places(config / "settings.json", user_data_path(NAME, appauthor=False))


def old_places(system: str = sys.platform, home: Path | None = None) -> tuple[Places, ...]:
    """Return where earlier releases kept them, if that was elsewhere; the newest first.

    Parameters
    ----------
    system
        As `sys.platform`.
    home
        The person's home; the one of whoever runs this unless given.
    """
    if system != "darwin":
        return ()
    library = (home or Path.home()) / "Library"
    preferences = library / "Preferences" / NAME / "settings.json"
    return (Places(preferences, library / "Application Support" / NAME),)


def move_in(olds: Iterable[Places], new: Places) -> None:
    """Move settings and calls to where they belong now, unless there are some already.

    What can't be moved stays where it is: then the defaults hold, and nothing is lost.
    """
    for old in olds:
        _move(old.settings, new.settings)
        _move(old.calls, new.calls)


def _move(old: Path, new: Path) -> None:
    if old == new or new.exists() or not old.is_file():
        return
    arriving = new.with_name(new.name + ".new")
    try:
        new.parent.mkdir(parents=True, exist_ok=True)
        # The two may lie on different disks: what is seen under the new name is always whole.
        shutil.copyfile(old, arriving)
        os.replace(arriving, new)
        old.unlink()
    except OSError:
        return
