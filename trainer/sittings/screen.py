"""Sittings: composed, taken, gone through, and the class that sits them; each a page of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import Final, Protocol, runtime_checkable

from PySide6.QtCore import QSize, Qt, SignalInstance
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QStackedWidget, QTabBar, QVBoxLayout, QWidget

from trainer.landing import Landing
from trainer.recent_menu import TRAY_SUFFIX
from trainer.screen_kinds import GoesOn, OpensTrays
from trainer.sittings.keys import KEYS
from trainer.window import WindowFrame

__all__ = ["PAGES", "SITTING_SUFFIX", "SittingsScreen"]

PAGES: Final = ("compose", "take", "class", "results")
"""The pages that there can be, in the order of their tabs."""

SITTING_SUFFIX: Final = ".sitting"
"""What the name of a sealed sitting ends in."""

_LEAST: Final = QSize(900, 420)


@runtime_checkable
class LeadsOn(Protocol):
    """A page that leads to another, by its name."""

    @property
    def page_asked(self) -> SignalInstance:
        """Another page is to be shown."""


class SittingsScreen(QWidget):
    """The screen of sittings.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    pages
        By name, out of `PAGES`, how each page is made: each comes with its libraries when it is
        first asked for.
    """

    def __init__(
        self,
        window: WindowFrame,
        pages: Mapping[str, Callable[[], QWidget]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self._makers = {name: pages[name] for name in PAGES if name in pages}
        self._pages: dict[str, QWidget] = {}
        self.setAccessibleName(self.tr("Sittings"))
        self._fill()
        window.add_keys(self.tr("Sittings"), KEYS.groups)
        Landing(self, self.rooms.currentWidget)
        self.show_page(next(iter(self._makers)))

    def _fill(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 2, 12, 12)
        column.setSpacing(8)
        self.tabs = QTabBar()
        self.tabs.setExpanding(False)
        self.tabs.setDrawBase(False)
        self.tabs.setAccessibleName(self.tr("Pages of the sittings"))
        words = {
            "compose": (self.tr("Compose"), self.tr("Put a sitting together and seal it")),
            "take": (self.tr("Take"), self.tr("Sit a sealed sitting on this machine")),
            "class": (self.tr("Class"), self.tr("Learners, groups, and the school's server")),
            "results": (self.tr("Results"), self.tr("What was handed in, and who is ready")),
        }
        for name in self._makers:
            title, tip = words[name]
            self.tabs.setTabToolTip(self.tabs.addTab(title), tip)
        self.tabs.currentChanged.connect(lambda at: self.show_page(list(self._makers)[at]))
        for keys, step in (("Ctrl+PgUp", -1), ("Ctrl+PgDown", 1)):
            # Not heard as keys: a list to choose from would take them for itself.
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(partial(self._turn, step))
        self.rooms = QStackedWidget()
        column.addWidget(self.tabs)
        column.addWidget(self.rooms, 1)

    def minimumSizeHint(self) -> QSize:
        """Not what the pages would like at their widest: no window could become narrow."""
        return _LEAST

    # Pages

    @property
    def shown_page(self) -> str:
        """The name of the page that is shown."""
        shown = self.rooms.currentWidget()
        return next(name for name, page in self._pages.items() if page is shown)

    def page(self, name: str) -> QWidget:
        """Return a page; make it, unless that has been done."""
        if name not in self._pages:
            page = self._makers[name]()
            self._pages[name] = page
            self.rooms.addWidget(page)
            if isinstance(page, LeadsOn):
                page.page_asked.connect(self.show_page)
        return self._pages[name]

    def show_page(self, name: str) -> None:
        """Show a page; make it, if it is shown for the first time."""
        page = self.page(name)
        self.rooms.setCurrentWidget(page)
        self.tabs.setCurrentIndex(list(self._makers).index(name))

    def open_path(self, path: Path) -> None:
        """Open a file that was chosen from the menu or dropped, on the page that it is for."""
        shown = self.shown_page
        if path.name.endswith(TRAY_SUFFIX):
            name = "compose"
        elif path.suffix == SITTING_SUFFIX:
            # Whoever is composing wants to go on with it; anybody else wants to sit it.
            composing = shown == "compose" and self.isVisible()
            name = "compose" if composing or "take" not in self._makers else "take"
        else:
            name = "results" if "results" in self._makers else shown
        page: object = self.page(name)
        self.show_page(name)
        if isinstance(page, OpensTrays):
            page.open_path(path)

    def go_on_from(self, other: SittingsScreen) -> None:
        """Go on with what another one's pages hold, which are given up."""
        for name, before in other._pages.items():
            page = self.page(name)
            if isinstance(page, GoesOn):
                page.go_on_from(before)
        self.show_page(other.shown_page)

    def _turn(self, step: int) -> None:
        """Show the page before, or the next."""
        names = list(self._makers)
        self.show_page(names[(names.index(self.shown_page) + step) % len(names)])
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
