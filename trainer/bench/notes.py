"""Bench notes: what somebody who knows the job has left for whoever gets stuck.

They lie face down as folded slips beside the call; each shows its words once it is turned up.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QEnterEvent, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from trainer.bench.worded import wrapped

__all__ = ["NoteSlip", "Notes"]

_SLIP: Final = QSize(34, 26)
_FOLD: Final = 8.0


class NoteSlip(QAbstractButton):
    """One slip of paper: blank and folded while it lies face down, with lines on it after."""

    def __init__(self, number: int, count: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._number, self._count = number, count
        self.turned_up = False
        self.setCheckable(True)
        self.setFixedSize(_SLIP)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def nextCheckState(self) -> None:
        """Which slip is read is the panel's to say, not the click's."""

    def show_side(self, *, turned_up: bool, read: bool) -> None:
        """Lie face up or down, and be the one that is read now or not."""
        self.turned_up = turned_up
        self.setChecked(read)
        words = (
            self.tr("Bench note {n} of {count}: read it again")
            if turned_up
            else self.tr("Bench note {n} of {count}: turn it up")
        ).format(n=self._number, count=self._count)
        self.setAccessibleName(words)
        self.setToolTip(f"{words}  U" if not turned_up else words)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A slip with a folded corner; lines on it once it has been turned up."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        ink = palette.color(QPalette.ColorRole.WindowText)
        accent = palette.color(QPalette.ColorRole.Highlight)
        lit = self.underMouse() or self.isChecked()
        painter.setPen(QPen(accent if lit else ink, 2.0 if self.isChecked() else 1.4))
        painter.setBrush(QColor(0, 0, 0, 0) if self.turned_up else _veil(ink))
        box = QRectF(self.rect()).adjusted(5.0, 3.0, -5.0, -3.0)
        corner = box.topRight()
        fold = (corner - QPointF(_FOLD, 0.0), corner + QPointF(0.0, _FOLD))
        sheet = [box.topLeft(), *fold, box.bottomRight(), box.bottomLeft()]
        painter.drawPolygon(QPolygonF(sheet))
        painter.drawPolyline(QPolygonF([fold[0], corner + QPointF(-_FOLD, _FOLD), fold[1]]))
        if self.turned_up:
            for row, share in ((9.0, 0.45), (13.0, 0.7), (17.0, 0.6)):
                y = box.top() + row
                painter.drawLine(
                    QPointF(box.left() + 4.0, y), QPointF(box.left() + box.width() * share, y)
                )
        painter.end()

    def enterEvent(self, event: QEnterEvent) -> None:
        """Light up under the pointer."""
        self.update()
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """And go out again."""
        self.update()
        super().leaveEvent(event)


def _veil(ink: QColor) -> QColor:
    veil = QColor(ink)
    veil.setAlphaF(0.14)
    return veil


class Notes(QWidget):
    """The slips of one coupon, and the words of the one that is read.

    Signals
    -------
    asked
        The next slip should be turned up.
    """

    asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(2)
        self._row = QHBoxLayout()
        self._row.setSpacing(2)
        # In a long language it takes two lines rather than room that the column lacks.
        self._row.addWidget(
            wrapped(self.tr("Bench notes: 5 off the score each"), "quiet"),
            1,
        )
        box.addLayout(self._row)
        self._words: QLabel = wrapped("", "quiet")
        self._words.hide()
        box.addWidget(self._words)
        self.slips: tuple[NoteSlip, ...] = ()
        self._texts: tuple[str, ...] = ()
        self._up = 0
        self._read = 0

    @property
    def words(self) -> str:
        """What stands on the slip that is read; empty while none has been turned up."""
        return self._words.text()

    def show_notes(self, texts: Sequence[str], turned_up: int) -> None:
        """Lay out a slip for each of `texts`, the first `turned_up` of them face up."""
        if tuple(texts) != self._texts:
            self._lay_out(tuple(texts))
        if turned_up != self._up:
            # The one that has just been turned up is the one that is read.
            self._up, self._read = turned_up, turned_up
        self._show()

    def _lay_out(self, texts: tuple[str, ...]) -> None:
        for slip in self.slips:
            self._row.removeWidget(slip)
            slip.setParent(None)
            slip.deleteLater()
        self._texts, self._up, self._read = texts, 0, 0
        count = len(texts)
        self.slips = tuple(NoteSlip(n, count, self) for n in range(1, count + 1))
        for number, slip in enumerate(self.slips, start=1):
            slip.clicked.connect(lambda _=False, number=number: self._take(number))
            self._row.addWidget(slip)

    def _take(self, number: int) -> None:
        """Read a slip again, or ask for the next to be turned up."""
        if number > self._up:
            self.asked.emit()
            return
        self._read = number
        self._show()

    def _show(self) -> None:
        for number, slip in enumerate(self.slips, start=1):
            slip.show_side(turned_up=number <= self._up, read=number == self._read)
        self._words.setText(self._texts[self._read - 1] if self._read else "")
        self._words.setVisible(bool(self._read))
        self.setVisible(bool(self._texts))
