"""The rack: the leaves of one set, each drawn with its mark and the edge that would work.

A leaf is clicked, picked with the keys, or dragged straight out into the picture.
"""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QApplication, QSizePolicy, QWidget

from geometry.leaf import Edge, Leaf, rack
from trainer.arrangement import LEAF, LEAF_GAP, SMALLEST_LEAF, leaf_places
from trainer.bench.state import BenchState
from trainer.hanging import Dress, hanging_picture, paint_hanging
from trainer.look.tokens import LIGHT, Theme

__all__ = ["LeafButton", "Rack", "dress_of", "mark_outline"]

_MARK: Final = 20
"""Pixels: the mark's full size."""


_SMALLER_MARK: Final = 16
"""Pixels: a throat's mark, in two lines."""


def mark_outline(mark: str, font: QFont) -> QPainterPath:
    """Return a leaf's mark as outlines in its full size, from its upper left corner.

    Parameters
    ----------
    mark
        Its unit is left out: the set says it.
    font
        Its families; size and weight are the mark's own.
    """
    font = QFont(font)
    font.setWeight(QFont.Weight.DemiBold)
    font.setPixelSize(_MARK)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    path = QPainterPath()
    words = mark.removesuffix(" mm").removesuffix(" in")
    lines = words.split(" ") if words.startswith("a ") else [words]
    if len(lines) > 1:
        font.setPixelSize(_SMALLER_MARK)
    metrics = QFontMetricsF(font)
    for row, line in enumerate(lines):
        path.addText(0.0, metrics.ascent() + 0.8 * row * metrics.height(), font, line)
    return path


def dress_of(theme: Theme, *, lit: bool, out: bool) -> Dress:
    """Return what a hanging leaf is painted with: under the pointer or not, out of the rack or in.

    Examples
    --------
    >>> dress_of(LIGHT, lit=False, out=True).rim == LIGHT.accent
    True
    """
    bench = theme.bench
    plain = Dress(
        bright=bench.leaf_lit if lit else bench.leaf_bright,
        dark=bench.leaf_bright if lit else bench.leaf_dark,
        rim=bench.edge,
        rim_width=1.0,
        edge=bench.edge,
        hole=theme.panel,
        ink=bench.engraving,
    )
    if not out:
        return plain
    wash, ink = theme.accent_wash, theme.accent_wash_ink
    return plain._replace(bright=wash, dark=wash, rim=theme.accent, rim_width=2.5, ink=ink)


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
        self.share = share
        self._pressed_at: QPoint | None = None
        self._dragging = False
        self._mark: tuple[QFont, QPainterPath] | None = None
        self.setCheckable(True)
        self.setText(leaf.mark)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.setAccessibleName(self.tr("Leaf {mark}").format(mark=leaf.mark))
        self.setToolTip(leaf.mark)

    def sizeHint(self) -> QSize:
        """As large as leaves get."""
        return QSize(*LEAF)

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

    def picture(self) -> QPixmap:
        """Return the leaf alone, as it is carried away."""
        dress = dress_of(self._theme, lit=True, out=False)
        size, ratio = (self.width(), self.height()), self.devicePixelRatioF()
        return hanging_picture(size, ratio, self.share, self._outline(), dress, self.edge)

    def _outline(self) -> QPainterPath:
        """The mark's outlines, made anew only for another font."""
        if self._mark is None or self._mark[0] != self.font():
            self._mark = (QFont(self.font()), mark_outline(self.leaf.mark, self.font()))
        return self._mark[1]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the blade, its mark and its hole."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        lit = self.underMouse() or self.hasFocus()
        dress = dress_of(self._theme, lit=lit, out=self.isChecked())
        size = (float(self.width()), float(self.height()))
        paint_hanging(painter, size, self.share, self._outline(), dress, self.edge)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._theme.accent), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 5.0, 5.0)
        painter.end()

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
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

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
        for button in self._buttons:
            button.setParent(None)
            button.deleteLater()
        leaves = rack(state.rack)
        largest = leaves[-1].size
        self._buttons = [LeafButton(leaf, leaf.size / largest, self) for leaf in leaves]
        for button in self._buttons:
            button.clicked.connect(lambda _=False, mark=button.leaf.mark: self.picked.emit(mark))
            button.pulled.connect(self.pulled)
            button.let_go.connect(self.let_go)
            button.installEventFilter(self)
        self._place()
        self._rove(0)

    def _place(self) -> None:
        """Hang each leaf where the first paint showed it."""
        places = leaf_places(self.width(), self.height(), max(1, len(self._buttons)))
        for button, place in zip(self._buttons, places, strict=False):
            button.setGeometry(*place)
            button.show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the new room out."""
        super().resizeEvent(event)
        self._place()

    def sizeHint(self) -> QSize:
        """Room for every leaf in full."""
        return self._room(LEAF)

    def minimumSizeHint(self) -> QSize:
        """Room for every leaf at its smallest."""
        return self._room(SMALLEST_LEAF)

    def _room(self, each: tuple[int, int]) -> QSize:
        count = max(1, len(self._buttons))
        return QSize(count * (each[0] + LEAF_GAP) - LEAF_GAP, each[1])

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
