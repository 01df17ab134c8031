"""The trays that lie open in the window, for a screen that wants coupons of another's. No Qt."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from exercises.tray import Tray

__all__ = ["OpenTray", "OpenTrays"]


class OpenTray(NamedTuple):
    """A tray that lies open.

    Parameters
    ----------
    tray
        As it is now.
    folder
        Where its file lies, and so its rules files; None where that isn't known.
    """

    tray: Tray
    folder: Path | None


OpenTrays = dict[str, Callable[[], OpenTray]]
"""By the key of a screen, what gives the tray that lies there."""
