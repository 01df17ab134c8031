"""What the pages that take sections in have in common: picture and panel, keys, files dropped."""

from __future__ import annotations

from abc import abstractmethod
from pathlib import Path
from typing import Final, cast

from PySide6.QtCore import QEvent, QStandardPaths, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeyEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QWidget

from geometry.lengths import Unit
from trainer.bench.saying import Saying
from trainer.key_table import KeyTable
from trainer.landing import EnterPresses
from trainer.window import WindowFrame

__all__ = ["IntakePage"]

_MENU: Final = frozenset({"open", "paste", "undo", "redo"})
"""What the window's menu has keys for as well."""


class IntakePage(QWidget):
    """A page of the shop that makes a section out of a file.

    Parameters
    ----------
    window
        Its settings and theme are used.
    keys
        What each key asks for.
    folder
        Where files are looked for at first.

    Signals
    -------
    made(traced)
        A section was taken in.
    left()
        The page is to be left.
    """

    made = Signal(object)
    left = Signal()

    def __init__(
        self,
        window: WindowFrame,
        keys: KeyTable,
        folder: QStandardPaths.StandardLocation,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self._keys = keys
        self._folder = Path(QStandardPaths.writableLocation(folder) or Path.home())
        self.setAcceptDrops(True)
        EnterPresses(self)

    def _put_together(self, title: str, view: QWidget, panel: QWidget, width: int) -> None:
        """Lay the page out, and listen to what it shows hangs on."""
        self._view = view
        self.setAccessibleName(title)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 12, 12, 12)
        row.setSpacing(10)
        panel.setFixedWidth(width)
        row.addWidget(view, 1)
        row.addWidget(panel)
        self.saying = Saying(view)
        self.window_frame.add_keys(title, self._keys.groups)
        self.window_frame.settings_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self.show_state)

    @property
    def unit(self) -> Unit:
        """The unit that lengths are shown in."""
        return self.window_frame.settings.unit or "mm"

    @property
    @abstractmethod
    def busy(self) -> bool:
        """Whether a file can't be opened just now."""

    @abstractmethod
    def takes(self, path: Path) -> bool:
        """Whether a file that is dropped is worth a try."""

    @abstractmethod
    def open(self, path: Path) -> None:
        """Read a file beside the window's loop, and begin with it."""

    @abstractmethod
    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""

    @abstractmethod
    def show_state(self) -> None:
        """Repaint everything from the state."""

    def announce(self, words: str) -> None:
        """Let a screen reader say `words`."""
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._view, words))

    def _dropped(self, event: QDropEvent) -> Path | None:
        local = (Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile())
        return None if self.busy else next((path for path in local if self.takes(path)), None)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file may be dropped."""
        if self._dropped(event) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the file that was dropped."""
        path = self._dropped(event)
        if path is not None:
            event.acceptProposedAction()
            self.open(path)

    def event(self, event: QEvent) -> bool:
        """Keys of this page that the window's menu knows as well are this page's here."""
        asked = event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent)
        if asked and self._keys.name_of(cast(QKeyEvent, event)) in _MENU:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken; none goes on to the shop behind this page."""
        name = self._keys.name_of(event)
        if name is not None:
            self.do(name)
        event.accept()
