"""The bar over every screen: the product, where one is, the tray and its coupons, the menus."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final, NamedTuple

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenuBar,
    QPushButton,
    QSizePolicy,
    QWidget,
)

from trainer.arrangement import BAR
from trainer.cut_words import CutChoice, CutLabel

__all__ = ["CouponChooser", "TopBar"]

_BEFORE_MENUS: Final = 12
"""Between the tabs and the menus, px."""

_GAPS: Final = 6 * 8
"""Between all else, px."""

_FEWEST_MENUS: Final = 60
"""What the menus can be shortened to, px."""

_MOST_LETTERS: Final = 36
"""Of a coupon's title, that the chooser shows where nothing else wants the room."""

_TELLING: Final = 12
"""Letters: what is left of a tray's title says nothing if there are fewer."""

_ABOUT_TITLES: Final = 20
"""Beside the titles in the list, px: what a row has to their left and right."""


class _Room(NamedTuple):
    """One way to arrange the bar; lengths in logical pixels."""

    named: bool
    """Whether the product's name stands there."""
    letters: int
    """Of a coupon's title, that the chooser shows at least."""
    between: int
    """From tab to tab."""
    left: int
    right: int
    """Before the first thing, and after the last."""


_ROOMS: Final = (
    _Room(named=True, letters=22, between=14, left=20, right=16),
    _Room(named=False, letters=12, between=14, left=20, right=16),
    # The job card says the coupon's title: its number will do here.
    _Room(named=False, letters=6, between=8, left=10, right=8),
)
"""The widest first."""

_OPENS = (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F4)


class CouponChooser(CutChoice):
    """A list of coupons that changes nothing until it has been opened and one was confirmed."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open the list; digits, letters and arrows don't jump to another coupon meanwhile."""
        key = Qt.Key(event.key())
        alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if key in _OPENS or (alt and key in (Qt.Key.Key_Down, Qt.Key.Key_Up)):
            self.showPopup()
        else:
            event.ignore()

    def minimumSizeHint(self) -> QSize:
        """Qt's own stays what it was for more letters."""
        return self.sizeHint()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A wheel over it doesn't change the coupon either."""
        event.ignore()

    def showPopup(self) -> None:
        """Open the list, as wide as the longest title, wherever the window has that room."""
        view = self.view()
        bar = view.verticalScrollBar().sizeHint().width()
        needed = view.sizeHintForColumn(0) + bar + 4 * view.frameWidth() + _ABOUT_TITLES
        view.setMinimumWidth(min(max(needed, self.width()), self.window().width()))
        super().showPopup()


class TopBar(QFrame):
    """The bar.

    Signals
    -------
    coupon_asked
        The place in the tray of a coupon to lay out.
    screen_asked
        The place of a screen among the tabs.
    """

    coupon_asked = Signal(int)
    screen_asked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = ""
        self.setProperty("kind", "bar")
        self.setFixedHeight(BAR)
        row = QHBoxLayout(self)
        row.setSpacing(8)
        self.product = QLabel("Toe & Throat")
        self.product.setProperty("tone", "product")
        self.product.setContentsMargins(0, 0, 20, 0)
        row.addWidget(self.product)
        self._tabs = QHBoxLayout()
        self.tabs: list[QPushButton] = []
        row.addLayout(self._tabs)
        self.menus = QMenuBar()
        self.previous, self.next = QPushButton("\u2039"), QPushButton("\u203a")
        self.chooser, self._tray = CouponChooser(), CutLabel(telling=_TELLING)
        self.add_tab(self.tr("Bench"))
        row.addSpacing(_BEFORE_MENUS)
        # Where there is no room for all of them, it has a button for the rest.
        self.menus.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.menus.setMinimumWidth(_FEWEST_MENUS)
        row.addWidget(self.menus)
        self._tray.setProperty("tone", "quiet")
        self._tray.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._tray.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        row.addWidget(self._tray, 1)
        self._add_coupons(row)

    def add_tab(self, title: str, keys: str = "") -> None:
        """Put the tab of a screen beside those that are there; the first is the one shown."""
        tab = QPushButton(title)
        tab.setProperty("kind", "tab")
        tab.setCheckable(True)
        tab.setAutoExclusive(True)
        tab.setFixedHeight(BAR)
        if keys:
            tab.setToolTip(f"{title} ({keys})")
        index = len(self.tabs)
        tab.clicked.connect(lambda: self.screen_asked.emit(index))
        self.tabs.append(tab)
        self._tabs.addWidget(tab)
        tab.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        if index == 0:
            self.show_tab(0)
        self._fit()

    def show_tab(self, at: int) -> None:
        """Show which screen is shown; Tab stops at its tab, arrows go on to the others."""
        self.tabs[at].setChecked(True)
        for each in self.tabs:
            stops = each is self.tabs[at]
            each.setFocusPolicy(Qt.FocusPolicy.TabFocus if stops else Qt.FocusPolicy.NoFocus)

    def show_coupons(self, shown: bool) -> None:
        """Show the tray and its coupons, where a screen has to do with them."""
        self._tray.setText(self._title if shown else "")
        for widget in (self.previous, self.chooser, self.next):
            widget.setVisible(shown)
        self._fit()

    # Room

    @property
    def widths(self) -> tuple[int, ...]:
        """From which widths on there is room for each arrangement, the widest first, px."""
        return tuple(self._needed(room) for room in _ROOMS)

    def _needed(self, room: _Room) -> int:
        """What an arrangement needs, px."""
        tabs = sum(tab.sizeHint().width() for tab in self.tabs)
        tabs += room.between * (len(self.tabs) - 1)
        # Also where they aren't shown: what is left of them must not jump between two screens.
        more = room.letters - self.chooser.minimumContentsLength()
        chooser = self.chooser.sizeHint().width() + more * self._letter
        coupons = self.previous.minimumWidth() + chooser + self.next.minimumWidth()
        menus = self.menus.sizeHint().width()
        name = self.product.sizeHint().width() if room.named else 0
        return room.left + room.right + name + tabs + _BEFORE_MENUS + menus + coupons + _GAPS

    @property
    def _letter(self) -> int:
        return self.chooser.fontMetrics().horizontalAdvance("X")

    def minimumSizeHint(self) -> QSize:
        """A narrow window does without the product's name, and in the end shortens the menus."""
        return QSize(self.widths[-1] - self.menus.sizeHint().width() + _FEWEST_MENUS, BAR)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave out what there is no room for."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        fitting = [room for room in _ROOMS if self.width() >= self._needed(room)]
        room = fitting[0] if fitting else _ROOMS[-1]
        row = self.layout()
        if row is not None:
            row.setContentsMargins(room.left, 0, room.right, 0)
        self.product.setVisible(room.named)
        spare = self.width() - self._needed(room)
        self._tabs.setSpacing(room.between)
        more = (spare - self._tray.sizeHint().width()) // self._letter if room.named else 0
        letters = min(max(room.letters + more, room.letters), _MOST_LETTERS)
        self.chooser.setMinimumContentsLength(letters)
        self.chooser.setMinimumWidth(self.chooser.sizeHint().width())

    def _add_coupons(self, row: QHBoxLayout) -> None:
        self._make_arrow(self.previous, self.tr("Previous coupon"), -1)
        self.chooser.setAccessibleName(self.tr("Coupon"))
        self.chooser.setMaximumWidth(420)
        self.chooser.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.chooser.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.chooser.activated.connect(self.coupon_asked)
        self._make_arrow(self.next, self.tr("Next coupon"), 1)
        for widget in (self.previous, self.chooser, self.next):
            widget.setEnabled(False)
            row.addWidget(widget)

    def _make_arrow(self, button: QPushButton, name: str, step: int) -> None:
        button.setProperty("kind", "small")
        button.setFixedSize(30, 30)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.clicked.connect(lambda: self.coupon_asked.emit(self.chooser.currentIndex() + step))

    def show_tray(
        self, title: str, coupons: Sequence[str], index: int, judged: Collection[int] = ()
    ) -> None:
        """Show the tray's title, its coupons' titles, which is laid out, and which are judged."""
        count = len(coupons)
        with QSignalBlocker(self.chooser):
            self.chooser.clear()
            self.chooser.addItems(
                [
                    self._entry(n, count, words, judged=n - 1 in judged)
                    for n, words in enumerate(coupons, start=1)
                ]
            )
            self.chooser.setCurrentIndex(index)
        self._title = title
        self._tray.setText(title if self.chooser.isVisibleTo(self) else "")
        self._fit()
        self.chooser.setEnabled(count > 1)
        self.previous.setEnabled(index > 0)
        self.next.setEnabled(index < count - 1)

    def _entry(self, n: int, count: int, title: str, *, judged: bool) -> str:
        """A coupon's line in the list."""
        words = (
            self.tr("{n} of {count}  \u2713 judged  {title}")
            if judged
            else self.tr("{n} of {count}  {title}")
        )
        return words.format(n=n, count=count, title=title)
