"""The menu of trays that were opened last: those that are gone are said to be, and can go."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu, QWidget

__all__ = ["RecentMenu", "tray_name"]

TRAY_SUFFIX: Final = ".tray.json"


def tray_name(path: Path) -> str:
    """Return what a tray's file is called, without what all of them end in.

    Examples
    --------
    >>> tray_name(Path("shop/brackets.tray.json"))
    'brackets'
    """
    return path.name.removesuffix(TRAY_SUFFIX) or path.name


class RecentMenu(QMenu):
    """Says the trays anew whenever it is opened, since files come and go meanwhile.

    Parameters
    ----------
    title
        Of the menu.

    Signals
    -------
    chosen
        A tray to open.
    missed
        A tray that was chosen, but isn't there.
    cleared
        The list is to be forgotten.
    """

    chosen = Signal(Path)
    missed = Signal(Path)
    cleared = Signal()

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self._recent: tuple[str, ...] = ()
        self.setToolTipsVisible(True)
        self.aboutToShow.connect(self.fill)

    def set_recent(self, recent: tuple[str, ...]) -> None:
        """Offer these, the latest first."""
        self._recent = recent

    def fill(self) -> None:
        """Look which of them are there, and say all."""
        self.clear()
        if not self._recent:
            self.addAction(self.tr("None yet")).setEnabled(False)
            return
        paths = [Path(text) for text in self._recent]
        names = Counter(tray_name(path) for path in paths)
        for at, (text, path) in enumerate(zip(self._recent, paths, strict=True), start=1):
            there = _is_there(path)
            words = "{at}  {name}" if there else self.tr("{at}  {name} (not there)")
            name = tray_name(path)
            if names[name] > 1:
                name = f"{name}  \u00b7  {path.parent.name}"
            action = self.addAction(words.format(at=f"&{at}", name=name.replace("&", "&&")))
            action.setToolTip(text)
            action.setStatusTip(text)
            tell = self.chosen.emit if there else self.missed.emit
            action.triggered.connect(partial(_tell, tell, path))
        self.addSeparator()
        self.addAction(self.tr("&Clear this list")).triggered.connect(self.cleared)


def _tell(tell: Callable[[Path], object], path: Path, _: bool = False) -> None:
    """Tell of the path; Qt says as well whether the action is ticked."""
    tell(path)


def _is_there(path: Path) -> bool:
    """Return whether a file can be seen there; a folder that can't be entered hides it."""
    try:
        return path.is_file()
    except OSError:
        return False
