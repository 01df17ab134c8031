"""A leaf as it hangs on the rack, before the bench is there and after: the same strokes for both.

Qt's barest only, without its namespace `Qt`: the first paint uses it before anything else is
loaded. So outlines stand for the mark's figures, which would need fonts.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Literal, NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QBrush, QColor, QLinearGradient, QPainter, QPainterPath, QPen, QPixmap

__all__ = ["Dress", "hanging_picture", "leaf_outline", "paint_hanging", "path_of", "strokes_of"]

_INSET: Final = 2.5
_LOW: Final = 60.0
"""A blade less high than this has no room for its hole."""

_SMALLEST_MARK: Final = 0.55
"""Of the mark's full size."""


class Dress(NamedTuple):
    """What a hanging leaf is painted with: colours as ``#rrggbb``.

    Parameters
    ----------
    bright, dark
        The metal, upper left and lower right.
    rim, rim_width
        The line around it, and its width in logical pixels.
    edge, hole
        The hole's line, and what is seen through it.
    ink
        The mark.
    """

    bright: str
    dark: str
    rim: str
    rim_width: float
    edge: str
    hole: str
    ink: str


def leaf_outline(box: QRectF, share: float, edge: Literal["leg", "throat"]) -> QPainterPath:
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


def paint_hanging(
    painter: QPainter,
    size: tuple[float, float],
    share: float,
    mark: QPainterPath,
    dress: Dress,
    edge: Literal["leg", "throat"] = "leg",
) -> None:
    """Paint blade, hole and mark into a room that begins at the painter's origin.

    Parameters
    ----------
    painter
        Antialiased.
    size
        Width and height of the room, logical pixels.
    share, edge
        As for `leaf_outline`.
    mark
        Outlines of the mark in its full size, from its upper left corner.
    dress
        Colours.
    """
    box = QRectF(0.0, 0.0, *size).adjusted(_INSET, _INSET, -_INSET, -_INSET)
    outline = leaf_outline(box, share, edge)
    metal = QLinearGradient(box.topLeft(), box.bottomRight())
    metal.setColorAt(0.0, QColor(dress.bright))
    metal.setColorAt(1.0, QColor(dress.dark))
    painter.fillPath(outline, metal)
    painter.setBrush(QBrush())
    painter.setPen(QPen(QColor(dress.rim), dress.rim_width))
    painter.drawPath(outline)
    if box.height() >= _LOW:
        painter.setPen(QPen(QColor(dress.edge), 1.0))
        painter.setBrush(QColor(dress.hole))
        painter.drawEllipse(QPointF(box.right() - 8.0, box.center().y()), 3.5, 3.5)
    room = (box.width() - 8.0) / max(1.0, mark.boundingRect().right())
    zoom = max(_SMALLEST_MARK, min(1.0, room))
    painter.save()
    painter.translate(box.left() + 5.0, box.top() + 6.0)
    painter.scale(zoom, zoom)
    painter.fillPath(mark, QColor(dress.ink))
    painter.restore()


def hanging_picture(
    size: tuple[int, int],
    ratio: float,
    share: float,
    mark: QPainterPath,
    dress: Dress,
    edge: Literal["leg", "throat"] = "leg",
) -> QPixmap:
    """Return a leaf off the rack as a picture of `size` logical pixels, clear around the blade."""
    picture = QPixmap(round(size[0] * ratio), round(size[1] * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(QColor(0, 0, 0, 0))
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_hanging(painter, size, share, mark, dress, edge)
    painter.end()
    return picture


def strokes_of(path: QPainterPath) -> list[list[float]]:
    """Return a path as rows of coordinates, to be kept in a file: 2 a line, 6 a curve, 3 a start.

    Examples
    --------
    >>> path = QPainterPath(QPointF(0.0, 1.0))
    >>> path.lineTo(2.0, 3.0)
    >>> strokes_of(path)
    [[0.0, 1.0, 0.0], [2.0, 3.0]]
    """
    rows: list[list[float]] = []
    for index in range(path.elementCount()):
        element = path.elementAt(index)
        at = [round(element.x, 2), round(element.y, 2)]
        kind = element.type
        if kind == QPainterPath.ElementType.CurveToDataElement:
            rows[-1] += at
        else:
            rows.append(at + [0.0] * (kind == QPainterPath.ElementType.MoveToElement))
    return rows


def path_of(rows: Sequence[Sequence[float]]) -> QPainterPath:
    """Return the path that `strokes_of` gave.

    Raises
    ------
    TypeError
        If a row has another length.

    Examples
    --------
    >>> rows = [[0.0, 1.0, 0.0], [2.0, 3.0], [3.0, 3.0, 4.0, 3.0, 4.0, 4.0]]
    >>> strokes_of(path_of(rows)) == rows
    True
    """
    path = QPainterPath()
    for row in rows:
        if len(row) == 2:
            path.lineTo(*row)
        elif len(row) == 3:
            path.moveTo(row[0], row[1])
        else:
            path.cubicTo(*row)
    return path
