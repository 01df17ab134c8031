"""The tray beside the picture: its title, its coupons, and what is done with them."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.words import language
from trainer.look.tokens import Theme
from trainer.shop.state import Shop
from trainer.shop.tray_list import TrayList

__all__ = ["TrayPanel"]


class TrayPanel(QFrame):
    """Title, list and buttons.

    Signals
    -------
    asked(name)
        ``add plain``, ``add photo``, ``add scan``, ``add dice``, ``duplicate``, ``delete``,
        ``up``, ``down``, ``split``, ``merge``.
    titled(words)
        The tray is to be called so.
    opened(at), move_asked(start, to)
        From the list.
    """

    asked = Signal(str)
    titled = Signal(str)
    opened = Signal(int)
    move_asked = Signal(int, int)

    def __init__(self, sources: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(8)
        head = QHBoxLayout()
        label = QLabel(self.tr("Tray"))
        label.setProperty("tone", "heading")
        self.count = QLabel()
        self.count.setProperty("tone", "quiet")
        head.addWidget(label)
        head.addStretch(1)
        head.addWidget(self.count)
        column.addLayout(head)
        self.title = QLineEdit()
        self.title.setPlaceholderText(self.tr("Title of the tray"))
        self.title.setAccessibleName(self.tr("Title of the tray"))
        self.title.editingFinished.connect(self._name)
        column.addWidget(self.title)
        self.list = TrayList()
        self.list.opened.connect(self.opened)
        self.list.move_asked.connect(self.move_asked)
        self.list.delete_asked.connect(lambda: self.asked.emit("delete"))
        self.list.duplicate_asked.connect(lambda: self.asked.emit("duplicate"))
        column.addWidget(self.list, 1)
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setProperty("tone", "warning")
        self.trouble.hide()
        column.addWidget(self.trouble)
        column.addLayout(self._buttons(sources))
        self._shown_title = ""

    def _ask_for(self, source: str) -> None:
        # A dialog that opens now would keep from the button that the pointer has left it.
        self.add.setAttribute(Qt.WidgetAttribute.WA_UnderMouse, on=False)
        self.add.update()
        self.asked.emit(f"add {source}")

    def _buttons(self, sources: tuple[str, ...]) -> QGridLayout:
        grid = QGridLayout()
        grid.setSpacing(6)
        self.add = QPushButton(self.tr("Add"))
        self.add.setProperty("kind", "segment")
        self.add.setToolTip(self.tr("Add a coupon after the open one"))
        menu = QMenu(self)
        entries = {
            "plain": self.tr("Plain weld"),
            "photo": self.tr("From a photo..."),
            "scan": self.tr("From a scan or drawing..."),
            "dice": self.tr("From dice..."),
        }
        for source in sources:
            action = menu.addAction(entries[source])
            action.triggered.connect(lambda _=False, name=source: self._ask_for(name))
        self.add.setMenu(menu)
        self.duplicate = self._button(self.tr("Duplicate"), "duplicate", "Ctrl+D")
        self.delete = self._button(self.tr("Delete"), "delete", self.tr("Del"))
        self.up = self._button("\u2191", "up", self.tr("Alt+Up"), self.tr("Move up"))
        self.down = self._button("\u2193", "down", self.tr("Alt+Down"), self.tr("Move down"))
        self.split = self._button(
            self.tr("Split..."),
            "split",
            "",
            self.tr("Split: this coupon and all after it into a tray of their own"),
        )
        self.merge = self._button(
            self.tr("Merge..."), "merge", "", self.tr("Merge: take another tray's coupons in")
        )
        rows = (
            (self.add, self.duplicate),
            (self.delete, self.up, self.down),
            (self.split, self.merge),
        )
        for at, buttons in enumerate(rows):
            line = QHBoxLayout()
            line.setSpacing(6)
            for button in buttons:
                line.addWidget(button, 1 if button in (self.up, self.down) else 2)
            grid.addLayout(line, at, 0)
        return grid

    def _button(self, words: str, name: str, keys: str, said: str = "") -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        whole = said or words.rstrip(".")
        button.setAccessibleName(whole)
        button.setToolTip(f"{whole} ({keys})" if keys else whole)
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def _name(self) -> None:
        words = " ".join(self.title.text().split())
        if words != self._shown_title:
            self.titled.emit(words)

    def show_state(self, shop: Shop, theme: Theme, trouble: str) -> None:
        """Show the tray, and why it can't be kept, if it can't."""
        title = shop.tray.title.in_language(language())
        if title != self._shown_title or not self.title.hasFocus():
            self._shown_title = title
            if self.title.text() != title:
                self.title.setText(title)
                self.title.setCursorPosition(0)
        count, at = len(shop.coupons), shop.at
        self.count.setText(self.tr("{at} of {count}").format(at=at + 1, count=count))
        self.trouble.setText(trouble)
        self.trouble.setVisible(bool(trouble))
        self.list.show_coupons(shop.coupons, at, theme)
        self.delete.setEnabled(count > 1)
        self.up.setEnabled(at > 0)
        self.down.setEnabled(at < count - 1)
        self.split.setEnabled(at > 0)

    def take_focus(self) -> None:
        """Have the keys at the list."""
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)
