"""What the panels of the pages that take sections in have in common: head, scroll, tools."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.worded import toned

__all__ = ["IntakePanel"]


class IntakePanel(QFrame):
    """Beside a picture or a plot: a title, what scrolls, and the tools at the foot.

    Parameters
    ----------
    title
        Of the page.
    whole
        What the button that shows the whole of it does, and its key.

    Signals
    -------
    asked(name)
        ``leave``, ``undo``, ``redo``, ``back``, ``closer``, ``fit``, and what a page adds.
    """

    asked = Signal(str)

    def __init__(self, title: str, whole: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title, self._whole = title, whole
        self.setProperty("kind", "panel")
        self.setAccessibleName(title)

    def _put_together(self, above: QLayout | None, inner: QVBoxLayout, below: QLayout) -> None:
        """Lay the panel out: head, what stands above, what scrolls, tools, what stands below."""
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(8)
        column.addLayout(self._head())
        if above is not None:
            column.addLayout(above)
        held = QWidget()
        held.setProperty("kind", "holder")
        # Room for the ring of the focus, which lies outside of what has it.
        inner.setContentsMargins(6, 6, 6, 6)
        inner.setSpacing(10)
        inner.addStretch(1)
        held.setLayout(inner)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(held)
        column.addWidget(scroll, 1)
        foot = QVBoxLayout()
        foot.setSpacing(6)
        foot.addLayout(self._tools())
        foot.addLayout(below)
        column.addLayout(foot)

    def _head(self) -> QHBoxLayout:
        translate = QCoreApplication.translate
        row = QHBoxLayout()
        row.addWidget(toned(self._title, "title"), 1)
        self.leave = self.button(translate("IntakePanel", "Leave"), "leave", "segment")
        self.leave.setToolTip(translate("IntakePanel", "Back to the shop, nothing made (Esc)"))
        row.addWidget(self.leave)
        return row

    def _tools(self) -> QHBoxLayout:
        translate = QCoreApplication.translate
        row = QHBoxLayout()
        row.setSpacing(4)
        self.undo = self.button(translate("IntakePanel", "Undo"), "undo", "segment")
        self.undo.setToolTip(translate("IntakePanel", "Undo (Ctrl+Z)"))
        self.redo = self.button(translate("IntakePanel", "Redo"), "redo", "segment")
        self.redo.setToolTip(translate("IntakePanel", "Redo (Ctrl+Y)"))
        self.less = self.button("\u2212", "back", "segment")
        self.less.setAccessibleName(translate("IntakePanel", "Zoom out"))
        self.less.setToolTip(translate("IntakePanel", "Zoom out (\u2212)"))
        self.more = self.button("+", "closer", "segment")
        self.more.setAccessibleName(translate("IntakePanel", "Zoom in"))
        self.more.setToolTip(translate("IntakePanel", "Zoom in (+)"))
        self.fit = self.button(translate("IntakePanel", "Whole"), "fit", "segment")
        self.fit.setToolTip(self._whole)
        for button in (self.undo, self.redo, self.less, self.more, self.fit):
            row.addWidget(button, 1)
        return row

    def show_tools(self, *, can_undo: bool, can_redo: bool, there: bool) -> None:
        """Let what can be done be done; `there` is whether there is anything to look at."""
        self.undo.setEnabled(can_undo)
        self.redo.setEnabled(can_redo)
        for button in (self.less, self.more, self.fit):
            button.setEnabled(there)

    def button(self, words: str, name: str, kind: str) -> QPushButton:
        """Return a button that asks for `name`."""
        made = QPushButton(words)
        made.setProperty("kind", kind)
        made.setMinimumHeight(28)
        made.clicked.connect(lambda: self.asked.emit(name))
        return made
