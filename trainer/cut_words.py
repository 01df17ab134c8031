"""Words that end in an ellipsis where room is short: of a label, of a list to choose from."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QComboBox,
    QLabel,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QWidget,
)

__all__ = ["CutChoice", "CutLabel"]


class CutChoice(QComboBox):
    """A list to choose from; what is chosen is cut where it must be, and told whole in the tip."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._told, self._own = "", ""

    def event(self, event: QEvent) -> bool:
        """Tell the whole of what is chosen where it is cut; else its own tip."""
        if event.type() == QEvent.Type.ToolTip:
            if self.toolTip() != self._told:
                self._own = self.toolTip()
            cut = self.shown != self.currentText()
            self._told = self.currentText() if cut else self._own
            self.setToolTip(self._told)
        return super().event(event)

    @property
    def shown(self) -> str:
        """As much of what is chosen as there is room for."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        room = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox,
            option,
            QStyle.SubControl.SC_ComboBoxEditField,
            self,
        )
        cut = Qt.TextElideMode.ElideRight
        return self.fontMetrics().elidedText(self.currentText(), cut, room.width() - 2)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it so."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        option.currentText = self.shown
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()


class CutLabel(QLabel):
    """Words that end in an ellipsis where there is no room, at the right.

    Parameters
    ----------
    text
        The words.
    telling
        Letters that are the fewest to say anything: sooner than fewer it shows none.
    """

    def __init__(self, text: str = "", telling: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._telling = telling
        self.setText(text)

    def minimumSizeHint(self) -> QSize:
        """It can do without any."""
        return QSize(0, super().minimumSizeHint().height())

    def setText(self, text: str) -> None:
        """Say the words; the whole of them in the tip too."""
        super().setText(text)
        self.setToolTip(text)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint as much as there is room for, if that says anything."""
        painter = QPainter(self)
        room = self.contentsRect()
        words = self.fontMetrics().elidedText(
            self.text(), Qt.TextElideMode.ElideRight, room.width()
        )
        if words != self.text() and len(words) < self._telling:
            words = ""
        role = self.foregroundRole()
        self.style().drawItemText(
            painter, room, self.alignment(), self.palette(), True, words, role
        )
        painter.end()
