"""The map of a sitting's coupons: how each one stands, by its shape and in words; a way to each."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QFrame, QHBoxLayout, QLabel, QScrollArea, QWidget

from trainer.bench.worded import toned
from trainer.taking.sitting import STANDINGS, Place, Standing, counts
from trainer.taking.words import count_words, place_words, standing_word

__all__ = ["CouponMap", "PlaceButton", "paint_standing"]

_CELL: Final = QSize(38, 30)
_SIGN: Final = 12.0
"""Logical pixels."""


def paint_standing(painter: QPainter, box: QRectF, standing: Standing, ink: QColor) -> None:
    """Paint the sign of a standing: a full square with a tick, half a square, a ring, a dot."""
    painter.setPen(QPen(ink, 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if standing == "unseen":
        painter.setBrush(ink)
        painter.drawEllipse(box.center(), 1.6, 1.6)
        return
    if standing == "seen":
        painter.drawEllipse(box.adjusted(1.5, 1.5, -1.5, -1.5))
        return
    square = box.adjusted(1.0, 1.0, -1.0, -1.0)
    painter.drawRect(square)
    if standing == "begun":
        half = QRectF(square.left(), square.center().y(), square.width(), square.height() / 2.0)
        painter.fillRect(half, ink)
        return
    painter.setPen(QPen(ink, 2.0))
    ax, ay, width, height = square.x(), square.y(), square.width(), square.height()
    tick = [(0.18, 0.52), (0.42, 0.78), (0.86, 0.2)]
    painter.drawPolyline(QPolygonF([QPointF(ax + x * width, ay + y * height) for x, y in tick]))


def _paint_flag(painter: QPainter, at: QPointF, ink: QColor) -> None:
    painter.setPen(QPen(ink, 1.6))
    painter.drawLine(at, QPointF(at.x(), at.y() + 10.0))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    flag = [at, QPointF(at.x() + 7.0, at.y() + 3.0), QPointF(at.x(), at.y() + 6.0)]
    painter.drawPolygon(QPolygonF(flag))


class PlaceButton(QAbstractButton):
    """One coupon of the map: its number, the sign of how it stands, a flag for review."""

    def __init__(self, number: int, strip: CouponMap) -> None:
        super().__init__(strip)
        self._strip = strip
        self.place = Place(number, "unseen")
        self.setFixedSize(_CELL)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def show_place(self, place: Place) -> None:
        """Show how it stands."""
        self.place = place
        words = place_words(place)
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go along the map; Enter and Space take the coupon."""
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        step = steps.get(Qt.Key(event.key()))
        if step is not None:
            self._strip.step_from(self, step)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Number, sign and flag; a frame about the one that is on the bench."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        ink = palette.color(QPalette.ColorRole.WindowText)
        accent = palette.color(QPalette.ColorRole.Highlight)
        box = QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0)
        if self.place.here or self.hasFocus() or self.underMouse():
            painter.setPen(QPen(accent, 2.0) if self.place.here else QPen(ink, 1.0))
            painter.drawRoundedRect(box, 4.0, 4.0)
        if self.hasFocus():
            painter.setPen(QPen(ink, 1.0, Qt.PenStyle.DotLine))
            painter.drawRoundedRect(box.adjusted(3.0, 3.0, -3.0, -3.0), 3.0, 3.0)
        font = painter.font()
        font.setBold(self.place.here)
        painter.setFont(font)
        painter.setPen(ink)
        left = box.adjusted(2.0, 0.0, -_SIGN - 5.0, 0.0)
        painter.drawText(left, Qt.AlignmentFlag.AlignCenter, str(self.place.number))
        top = box.center().y() - _SIGN / 2.0
        sign = QRectF(box.right() - _SIGN - 4.0, top, _SIGN, _SIGN)
        if self.place.flagged:
            _paint_flag(painter, QPointF(box.right() - 9.0, box.top() + 2.0), ink)
            sign.moveTop(box.bottom() - _SIGN - 1.0)
        paint_standing(painter, sign, self.place.standing, ink)
        painter.end()


class _Sign(QWidget):
    """A sign of the legend."""

    def __init__(self, standing: Standing | None) -> None:
        super().__init__()
        self._standing = standing
        self.setFixedSize(14, 16)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The sign; none is the flag."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        if self._standing is None:
            _paint_flag(painter, QPointF(3.0, 3.0), ink)
        else:
            paint_standing(painter, QRectF(1.0, 2.0, _SIGN, _SIGN), self._standing, ink)
        painter.end()


class CouponMap(QFrame):
    """All coupons in a row, and what their signs mean, with how many there are of each.

    Parameters
    ----------
    count
        How many coupons there are.

    Signals
    -------
    chosen
        The place of a coupon to go to, from 0.
    """

    chosen = Signal(int)

    def __init__(self, count: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "bar")
        self.setAccessibleName(self.tr("Map of the coupons"))
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 3, 12, 3)
        row.setSpacing(10)
        self.buttons = tuple(PlaceButton(number, self) for number in range(1, count + 1))
        for at, button in enumerate(self.buttons):
            button.clicked.connect(lambda _=False, at=at: self.chosen.emit(at))
        row.addWidget(self._strip(), 1)
        self._counts: dict[str, QLabel] = {}
        for standing in STANDINGS:
            self._add_sign(row, standing, standing_word(standing))
        self._add_sign(row, None, self.tr("for review"))
        self._shown: tuple[Place, ...] = ()

    def _strip(self) -> QWidget:
        self._area = QScrollArea()
        self._area.setWidgetResizable(True)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        cells = QHBoxLayout(holder)
        cells.setContentsMargins(0, 0, 0, 0)
        cells.setSpacing(2)
        for button in self.buttons:
            cells.addWidget(button)
        cells.addStretch(1)
        self._area.setWidget(holder)
        self._area.setFixedHeight(_CELL.height() + 14)
        return self._area

    def _add_sign(self, row: QHBoxLayout, standing: Standing | None, word: str) -> None:
        pair = QHBoxLayout()
        pair.setSpacing(4)
        pair.addWidget(_Sign(standing))
        label = toned("", "gloss")
        label.setProperty("word", word)
        self._counts[standing or "flagged"] = label
        pair.addWidget(label)
        row.addLayout(pair)

    def show_places(self, places: Sequence[Place]) -> None:
        """Show how every coupon stands."""
        if tuple(places) == self._shown:
            return
        self._shown = tuple(places)
        for button, place in zip(self.buttons, places, strict=True):
            if button.place != place or not button.accessibleName():
                button.show_place(place)
            stops = place.here or button.hasFocus()
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus if stops else Qt.FocusPolicy.NoFocus)
        found = counts(places)
        for key, label in self._counts.items():
            label.setText(f"{found[key]} {label.property('word')}")
        self.setAccessibleDescription(count_words(found))
        here = next((b for b in self.buttons if b.place.here), None)
        if here is not None:
            self._area.ensureWidgetVisible(here, 3 * _CELL.width(), 0)

    def take_focus(self) -> None:
        """Have the keys at the coupon that is on the bench."""
        here = next((b for b in self.buttons if b.place.here), self.buttons[0])
        self._focus(here)

    def step_from(self, button: PlaceButton, step: int) -> None:
        """Move the focus along the map."""
        to = self.buttons.index(button) + step
        if 0 <= to < len(self.buttons):
            self._focus(self.buttons[to])
            if not button.place.here:
                button.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def _focus(self, button: PlaceButton) -> None:
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setFocus(Qt.FocusReason.TabFocusReason)
        self._area.ensureWidgetVisible(button, 3 * _CELL.width(), 0)
