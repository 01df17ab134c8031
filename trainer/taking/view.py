"""What fills the window while a sitting runs: its bar, the map of coupons, and the bench."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import QMenu, QStackedWidget, QVBoxLayout, QWidget

from trainer.band import Band
from trainer.bench.layout import BenchLayout
from trainer.taking.bar import SittingBar
from trainer.taking.coupon_map import CouponMap
from trainer.taking.keys import KEYS
from trainer.taking.sitting import Sitting
from trainer.window import WindowFrame

__all__ = ["FullWindow", "SittingView"]


class SittingView(QWidget):
    """Bar, map, bench.

    Signals
    -------
    asked
        What a key asks for, by its name in the table.
    """

    asked = Signal(str)

    def __init__(self, sitting: Sitting, title: str, frame: WindowFrame) -> None:
        super().__init__()
        self.setAccessibleName(self.tr("A sitting"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.menu = QMenu(self)
        self._fill_menu(frame)
        self.bar = SittingBar(title, sitting.code, self.menu)
        column.addWidget(self.bar)
        self.band = Band()
        column.addWidget(self.band)
        self.map = CouponMap(sitting.count)
        column.addWidget(self.map)
        self._column = column
        self.bar.stepped.connect(lambda step: self.asked.emit("after" if step > 0 else "before"))
        self.bar.flag_asked.connect(lambda: self.asked.emit("flag"))
        self.bar.hand_in_asked.connect(lambda: self.asked.emit("hand in"))

    def hold(self, bench: BenchLayout) -> None:
        """Have the bench below the map."""
        self._column.addWidget(bench, 1)
        bench.show()

    def _fill_menu(self, frame: WindowFrame) -> None:
        for look in frame.look_actions.values():
            self.menu.addAction(look)
        self.menu.addAction(frame.motion_action)
        self.menu.addSeparator()
        rows = (
            (self.tr("&Full screen\tF11"), "full screen"),
            (self.tr("&Keys...\tF1"), "keys"),
            (self.tr("&Leave the sitting...\tCtrl+Q"), "leave"),
        )
        for words, name in rows:
            action = QAction(words, self.menu)
            action.triggered.connect(lambda _=False, name=name: self.asked.emit(name))
            self.menu.addAction(action)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that neither the bench nor a control has taken for itself."""
        name = KEYS.name_of(event)
        if name is None:
            super().keyPressEvent(event)
        elif not event.isAutoRepeat():
            self.asked.emit(name)


@dataclass(frozen=True)
class _Before:
    """What the window was before."""

    actions: tuple[QAction, ...]
    title: str
    drops: bool


class FullWindow:
    """Gives the whole window to a sitting, and takes it back: no tabs, no menus, no files dropped.

    Parameters
    ----------
    frame
        Whose window it is.
    view
        What fills it.
    bench
        Is in it as long.
    """

    def __init__(self, frame: WindowFrame, view: SittingView, bench: BenchLayout) -> None:
        self._frame, self._view, self._bench = frame, view, bench
        self._before: _Before | None = None
        self._pages: QStackedWidget | None = None
        self._was: Callable[[], object] | None = None

    def take(self, title: str) -> None:
        """Take the window."""
        window = self._frame.window
        # What is shown stays so behind it: the bench is about to be elsewhere.
        if self._frame.shown_screen == "bench":
            raise RuntimeError("the bench is lent from another screen")
        shortcuts = [a for a in window.findChildren(QAction) if not a.shortcut().isEmpty()]
        on = tuple(action for action in shortcuts if action.isEnabled())
        self._before = _Before(on, window.windowTitle(), window.acceptDrops())
        for action in on:
            action.setEnabled(False)
        window.setAcceptDrops(False)
        window.setWindowTitle(title)
        body = window.takeCentralWidget()
        assert body is not None
        self._pages = QStackedWidget()
        self._pages.addWidget(body)
        self._view.hold(self._bench)
        self._pages.addWidget(self._view)
        self._pages.setCurrentWidget(self._view)
        window.setCentralWidget(self._pages)

    def give_back(self) -> None:
        """Give it back as it was."""
        before, pages, window = self._before, self._pages, self._frame.window
        if before is None or pages is None:
            return
        self._before = self._pages = None
        if self._was is not None:
            self._was()
        body = pages.widget(0)
        assert body is not None
        pages.removeWidget(body)
        self._frame.screens.insertWidget(0, self._bench)
        window.takeCentralWidget()
        window.setCentralWidget(body)
        body.show()
        pages.deleteLater()
        window.setWindowTitle(before.title)
        window.setAcceptDrops(before.drops)
        for action in before.actions:
            action.setEnabled(True)

    def switch_full_screen(self) -> None:
        """Fill the screen, or go back to the window as it was."""
        if self._was is not None:
            self._was()
            self._was = None
        else:
            self.fill_screen()

    def fill_screen(self) -> None:
        """Fill the screen, unless it does already."""
        window = self._frame.window
        if self._was is None and not window.isFullScreen():
            self._was = window.showMaximized if window.isMaximized() else window.showNormal
            window.showFullScreen()
