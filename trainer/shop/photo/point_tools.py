"""Points by single clicks: chosen, moved, placed by hand, taken out."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from trainer.bench.worded import toned, wrapped
from trainer.shop.photo.state import GROUPS, PhotoState, spot_of
from trainer.shop.photo.words import point_words

__all__ = ["PointTools", "Rows"]

_ARROWS = (
    ("\u2190", -1.0, 0.0, 1, 0),
    ("\u2191", 0.0, -1.0, 0, 1),
    ("\u2193", 0.0, 1.0, 1, 1),
    ("\u2192", 1.0, 0.0, 1, 2),
)


class PointTools(QWidget):
    """Buttons for the chosen point and for the sight.

    Signals
    -------
    asked(name)
        ``before``, ``after``, ``remove``, ``closer``, ``back``, ``fit``, ``edge``, ``hand``.
    nudged(dx, dy)
        Move the chosen point, pixels of the picture.
    settled()
        The end of moving it.
    """

    asked = Signal(str)
    nudged = Signal(float, float)
    settled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.point = wrapped("", "quiet")
        column.addWidget(self.point)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addLayout(self._pad())
        row.addLayout(self._deeds(), 1)
        column.addLayout(row)

    def _pad(self) -> QGridLayout:
        pad = QGridLayout()
        pad.setSpacing(3)
        names = {
            "\u2190": self.tr("Move the point left"),
            "\u2191": self.tr("Move the point up"),
            "\u2193": self.tr("Move the point down"),
            "\u2192": self.tr("Move the point right"),
        }
        self.arrows: list[QPushButton] = []
        for sign, dx, dy, row, column in _ARROWS:
            button = QPushButton(sign)
            button.setProperty("kind", "small")
            button.setFixedSize(28, 28)
            button.setAutoRepeat(True)
            button.setAccessibleName(names[sign])
            button.setToolTip(names[sign])
            button.clicked.connect(lambda _=False, dx=dx, dy=dy: self.nudged.emit(dx, dy))
            button.released.connect(self._let_go)
            pad.addWidget(button, row, column)
            self.arrows.append(button)
        return pad

    def _let_go(self) -> None:
        button = self.sender()
        if not (isinstance(button, QPushButton) and button.isDown()):
            self.settled.emit()

    def _deeds(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setSpacing(4)
        self.edge = self._button(self.tr("On the edge"), "edge", checks=True)
        self.hand = self._button(self.tr("By hand"), "hand", checks=True)
        self.edge.setToolTip(self.tr("Points go to the strongest edge nearby (S)"))
        self.hand.setToolTip(self.tr("Points stay where they are put (S)"))
        self.before = self._button(self.tr("Before"), "before")
        self.before.setToolTip(self.tr("Choose the point before  ["))
        self.after = self._button(self.tr("After"), "after")
        self.after.setToolTip(self.tr("Choose the point after  ]"))
        self.remove = self._button(self.tr("Take out"), "remove")
        self.remove.setToolTip(self.tr("Take the chosen point out (Delete)"))
        grid.addWidget(self.edge, 0, 0)
        grid.addWidget(self.hand, 0, 1)
        pair = QHBoxLayout()
        pair.setSpacing(4)
        for button in (self.before, self.after, self.remove):
            pair.addWidget(button, 1)
        grid.addLayout(pair, 1, 0, 1, 2)
        return grid

    def _button(self, words: str, name: str, *, checks: bool = False) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setCheckable(checks)
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def show_state(self, state: PhotoState) -> None:
        """Show which point is chosen, and what can be done with it."""
        spot = spot_of(state, state.chosen)
        self.setVisible(bool(GROUPS[state.step]))
        self.point.setText(point_words(state))
        for button in (*self.arrows, self.remove):
            button.setEnabled(spot is not None)
        some = any(state.spots(group) for group in GROUPS[state.step])
        for button in (self.before, self.after):
            button.setEnabled(some)
        by_hand = spot.by_hand if spot is not None else not state.snaps
        for button, on in ((self.edge, not by_hand), (self.hand, by_hand)):
            with QSignalBlocker(button):
                button.setChecked(on)


class Rows(QWidget):
    """Names and figures, line by line."""

    def __init__(self, count: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(3)
        self._rows: list[tuple[QLabel, QLabel]] = []
        for at in range(count):
            name, figure = toned("", "quiet"), QLabel()
            figure.setTextFormat(Qt.TextFormat.PlainText)
            grid.addWidget(name, at, 0)
            grid.addWidget(figure, at, 1, Qt.AlignmentFlag.AlignRight)
            self._rows.append((name, figure))

    def show_rows(self, rows: list[tuple[str, str]]) -> None:
        """Show these, and no more lines than there are."""
        filled = [*rows, *[("", "")] * (len(self._rows) - len(rows))]
        for (name, figure), (word, said) in zip(self._rows, filled, strict=True):
            name.setText(word)
            figure.setText(said)
            figure.setAccessibleName(f"{word}: {said}")
            name.setVisible(bool(word))
            figure.setVisible(bool(word))
