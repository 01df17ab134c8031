"""The bar over every screen: the product, where one is, the tray and its coupons, the menus."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QKeyEvent, QWheelEvent
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

__all__ = ["CouponChooser", "TopBar"]

_OPENS = (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F4)


class CouponChooser(QComboBox):
    """A list of coupons that changes nothing until it has been opened and one was confirmed."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open the list; digits, letters and arrows don't jump to another coupon meanwhile."""
        key = Qt.Key(event.key())
        alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if key in _OPENS or (alt and key in (Qt.Key.Key_Down, Qt.Key.Key_Up)):
            self.showPopup()
        else:
            event.ignore()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A wheel over it doesn't change the coupon either."""
        event.ignore()


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
        self.setProperty("kind", "bar")
        self.setFixedHeight(BAR)
        row = QHBoxLayout(self)
        row.setContentsMargins(20, 0, 16, 0)
        row.setSpacing(8)
        name = QLabel("Toe & Throat")
        name.setProperty("tone", "product")
        row.addWidget(name)
        row.addSpacing(20)
        self._tabs = QHBoxLayout()
        self._tabs.setSpacing(14)
        self.tabs: list[QPushButton] = []
        row.addLayout(self._tabs)
        self.add_tab(self.tr("Bench"))
        row.addSpacing(12)
        self.menus = QMenuBar()
        self.menus.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)
        row.addWidget(self.menus)
        row.addStretch(1)
        self._tray = QLabel()
        self._tray.setProperty("tone", "quiet")
        row.addWidget(self._tray)
        self._add_coupons(row)

    def add_tab(self, title: str, keys: str = "") -> None:
        """Put the tab of a screen beside those that are there; the first is the one shown."""
        tab = QPushButton(title)
        tab.setProperty("kind", "tab")
        tab.setCheckable(True)
        tab.setAutoExclusive(True)
        tab.setFixedHeight(BAR)
        tab.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        if keys:
            tab.setToolTip(f"{title} ({keys})")
        index = len(self.tabs)
        tab.setChecked(index == 0)
        tab.clicked.connect(lambda: self.screen_asked.emit(index))
        self.tabs.append(tab)
        self._tabs.addWidget(tab)

    def show_coupons(self, shown: bool) -> None:
        """Show the tray and its coupons, where a screen has to do with them."""
        for widget in (self._tray, self.previous, self.chooser, self.next):
            widget.setVisible(shown)

    def _add_coupons(self, row: QHBoxLayout) -> None:
        self.previous = self._arrow("\u2039", self.tr("Previous coupon"), -1)
        self.chooser = CouponChooser()
        self.chooser.setAccessibleName(self.tr("Coupon"))
        self.chooser.setMinimumWidth(150)
        self.chooser.setMaximumWidth(300)
        self.chooser.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.chooser.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.chooser.setMinimumContentsLength(22)
        self.chooser.activated.connect(self.coupon_asked)
        self.next = self._arrow("\u203a", self.tr("Next coupon"), 1)
        for widget in (self.previous, self.chooser, self.next):
            widget.setEnabled(False)
            row.addWidget(widget)

    def _arrow(self, sign: str, name: str, step: int) -> QPushButton:
        button = QPushButton(sign)
        button.setProperty("kind", "small")
        button.setFixedSize(30, 30)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.clicked.connect(lambda: self.coupon_asked.emit(self.chooser.currentIndex() + step))
        return button

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
        self._tray.setText(title)
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
