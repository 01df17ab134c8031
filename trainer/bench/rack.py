"""The rack: the leaves of one set, each drawn with its mark and the edge that would work.

A leaf is clicked, picked with the keys, or dragged straight out into the picture.
"""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QLinearGradient,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QAbstractButton, QApplication, QHBoxLayout, QSizePolicy, QWidget

from geometry.leaf import Edge, Leaf, rack
from trainer.bench.state import BenchState
from trainer.look.tokens import LIGHT, Theme

__all__ = ["LeafButton", "Rack", "leaf_outline"]

_WIDEST: Final = 78
_NARROWEST: Final = 31
_HEIGHT: Final = 88


def leaf_outline(box: QRectF, share: float, edge: Edge) -> QPainterPath:
    """Return a leaf as it hangs: a blade whose working corner, lower left, grows with its size.

    Parameters
    ----------
    box
        Where the blade hangs, logical pixels.
    share
        Its size over the largest of the rack, above 0 and at most 1.
    edge
        Which end faces the joint.
    """
    grown = 0.34 + 0.66 * share
    left, bottom = box.left(), box.bottom()
    path = QPainterPath()
    radius = 5.0
    wide = grown * 0.86 * box.width()
    high = grown * (0.46 if edge == "leg" else 0.60) * box.height()
    path.moveTo(left, box.top())
    path.lineTo(box.right() - radius, box.top())
    path.quadTo(box.right(), box.top(), box.right(), box.top() + radius)
    path.lineTo(box.right(), bottom)
    path.lineTo(left + wide, bottom)
    if edge == "leg":
        path.cubicTo(
            left + wide * 0.90,
            bottom - high * 0.62,
            left + wide * 0.42,
            bottom - high * 1.12,
            left,
            bottom - high,
        )
    else:
        spur = QPointF(left + wide / 2.8, bottom - high / 2.8)
        path.cubicTo(
            left + wide * 0.92,
            bottom - high * 0.30,
            left + wide * 0.66,
            bottom - high * 0.46,
            spur.x(),
            spur.y(),
        )
        path.cubicTo(
            left + wide * 0.46,
            bottom - high * 0.66,
            left + wide * 0.30,
            bottom - high * 0.92,
            left,
            bottom - high,
        )
    path.closeSubpath()
    return path


class LeafButton(QAbstractButton):
    """One leaf on the rack.

    Signals
    -------
    pulled
        Dragged beyond a click, with the pointer's place on the screen; once for every move.
    let_go
        The drag ended.
    """

    pulled = Signal(str, QPoint)
    let_go = Signal(str, QPoint)

    def __init__(self, leaf: Leaf, share: float, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.leaf = leaf
        self.edge: Edge = "leg"
        self._theme = LIGHT
        self._share = share
        self._pressed_at: QPoint | None = None
        self._dragging = False
        self.setCheckable(True)
        self.setText(leaf.mark)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.setAccessibleName(self.tr("Leaf {mark}").format(mark=leaf.mark))
        self.setToolTip(leaf.mark)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(_NARROWEST, 44)
        self.setMaximumSize(_WIDEST, _HEIGHT)

    def sizeHint(self) -> QSize:
        """As large as leaves get."""
        return QSize(_WIDEST, _HEIGHT)

    def dress(self, theme: Theme, edge: Edge) -> None:
        """Show the leaf in `theme`, with `edge` to the joint."""
        if (theme, edge) != (self._theme, self.edge):
            self._theme, self.edge = theme, edge
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press may become a click or a pull."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position().toPoint()
            self._dragging = False
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Beyond the system's drag distance the leaf comes along with the pointer."""
        if self._pressed_at is not None and event.buttons() & Qt.MouseButton.LeftButton:
            far = (event.position().toPoint() - self._pressed_at).manhattanLength()
            if far >= QApplication.startDragDistance():
                self._dragging = True
                self.setDown(False)
            if self._dragging:
                self.pulled.emit(self.leaf.mark, event.globalPosition().toPoint())
                return
        super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The end of a pull is no click."""
        if self._dragging:
            self._dragging, self._pressed_at = False, None
            self.setDown(False)
            self.let_go.emit(self.leaf.mark, event.globalPosition().toPoint())
            return
        self._pressed_at = None
        super().mouseReleaseEvent(event)

    def nextCheckState(self) -> None:
        """Which leaf is out is the state's to say, not the click's."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the blade, its mark and its hole."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(2.5, 2.5, -2.5, -2.5)
        path = leaf_outline(box, self._share, self.edge)
        bench, out = self._theme.bench, self.isChecked()
        metal = QLinearGradient(box.topLeft(), box.bottomRight())
        lit = self.underMouse() or self.hasFocus()
        metal.setColorAt(0.0, QColor(bench.leaf_lit if lit else bench.leaf_bright))
        metal.setColorAt(1.0, QColor(bench.leaf_bright if lit else bench.leaf_dark))
        painter.fillPath(path, QColor(self._theme.accent_wash) if out else metal)
        rim = QPen(QColor(self._theme.accent if out else bench.edge), 2.5 if out else 1.0)
        painter.setPen(rim)
        painter.drawPath(path)
        self._paint_hole(painter, box)
        self._paint_mark(painter, box)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._theme.accent), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 5.0, 5.0)
        painter.end()

    def _paint_hole(self, painter: QPainter, box: QRectF) -> None:
        if box.height() < 60.0:
            return
        painter.setPen(QPen(QColor(self._theme.bench.edge), 1.0))
        painter.setBrush(QColor(self._theme.panel))
        painter.drawEllipse(QPointF(box.right() - 8.0, box.top() + box.height() * 0.5), 3.5, 3.5)

    def _paint_mark(self, painter: QPainter, box: QRectF) -> None:
        words = self.leaf.mark.removesuffix(" mm").removesuffix(" in")
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        size = 20.0
        font.setPixelSize(round(size))
        while size > 11.0 and QFontMetricsF(font).horizontalAdvance(words) > box.width() - 8.0:
            size -= 1.0
            font.setPixelSize(round(size))
        ink = self._theme.accent_wash_ink if self.isChecked() else self._theme.bench.engraving
        painter.setFont(font)
        painter.setPen(QColor(ink))
        room = box.adjusted(5.0, 6.0, -3.0, 0.0)
        painter.drawText(room, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft, words)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Light up under the pointer."""
        self.update()
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """And go out again."""
        self.update()
        super().leaveEvent(event)


class Rack(QWidget):
    """All leaves of one set in a row: one stop for Tab, arrows within.

    Signals
    -------
    picked
        A leaf was chosen by click or key: its mark.
    pulled, let_go
        A leaf is being dragged out, or was let go: its mark, the pointer's place on the screen.
    """

    picked = Signal(str)
    pulled = Signal(str, QPoint)
    let_go = Signal(str, QPoint)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("Rack"))
        self._buttons: list[LeafButton] = []
        self._name = ""
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(4)

    @property
    def buttons(self) -> tuple[LeafButton, ...]:
        """The leaves that hang there, smallest first."""
        return tuple(self._buttons)

    def show_state(self, state: BenchState, theme: Theme) -> None:
        """Hang the state's set, and show which leaf is out and by which edge."""
        if state.rack != self._name:
            self._hang(state)
        mark = state.leaf.mark if state.leaf is not None else None
        edge = state.leaf.edge if state.leaf is not None else "leg"
        for index, button in enumerate(self._buttons):
            out = button.leaf.mark == mark
            if button.isChecked() != out:
                button.setChecked(out)
            if out:
                self._rove(index)
            button.dress(theme, edge)

    def _hang(self, state: BenchState) -> None:
        self._name = state.rack
        while (item := self._row.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.setParent(None)
                widget.deleteLater()
        leaves = rack(state.rack)
        largest = leaves[-1].size
        self._buttons = [LeafButton(leaf, leaf.size / largest, self) for leaf in leaves]
        for button in self._buttons:
            button.clicked.connect(lambda _=False, mark=button.leaf.mark: self.picked.emit(mark))
            button.pulled.connect(self.pulled)
            button.let_go.connect(self.let_go)
            button.installEventFilter(self)
            self._row.addWidget(button)
        self._row.addStretch(0)
        self._rove(0)

    def _rove(self, index: int) -> None:
        for at, button in enumerate(self._buttons):
            policy = Qt.FocusPolicy.TabFocus if at == index else Qt.FocusPolicy.NoFocus
            button.setFocusPolicy(policy)

    def eventFilter(self, watched: object, event: object) -> bool:
        """Left, Right, Home and End move along the rack."""
        if not isinstance(event, QKeyEvent) or event.type() != QEvent.Type.KeyPress:
            return False
        at = next((i for i, button in enumerate(self._buttons) if button is watched), None)
        last = len(self._buttons) - 1
        if at is None:
            return False
        to = {
            Qt.Key.Key_Left: max(0, at - 1),
            Qt.Key.Key_Right: min(last, at + 1),
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }.get(Qt.Key(event.key()))
        if to is None:
            return False
        self._rove(to)
        self._buttons[to].setFocus(Qt.FocusReason.TabFocusReason)
        return True
