"""The leaf: brushed metal with an engraved mark and a hang hole that the light shows through."""

from __future__ import annotations

import random
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QTransform,
)

from trainer.canvas.drawing import Place, end_of
from trainer.canvas.light import mixed, tint, world
from trainer.canvas.shadow import SHADOW_REACH, paint_shadow
from trainer.canvas.shapes import BladePaths, pose_transform
from trainer.canvas.view import View
from trainer.look.fonts import engraving_font
from trainer.look.tokens import Theme

if TYPE_CHECKING:
    from geometry.pose import Pose

__all__ = ["blade_rect", "blade_transform", "paint_blade"]

_STREAKS: Final = 150


def blade_transform(pose: Pose | Place, view: View) -> QTransform:
    """Return the transform from the leaf's frame (mm) to logical pixels."""
    return pose_transform(pose) * world(view)


def blade_rect(paths: BladePaths, pose: Pose | Place, view: View) -> QRectF:
    """Return what painting the leaf may touch, logical pixels."""
    rect = blade_transform(pose, view).mapRect(paths.outline.boundingRect())
    return rect.adjusted(-SHADOW_REACH, -SHADOW_REACH, SHADOW_REACH, SHADOW_REACH)


def paint_blade(
    painter: QPainter,
    paths: BladePaths,
    pose: Pose | Place,
    view: View,
    theme: Theme,
    *,
    lit: bool = False,
    held: bool = False,
) -> None:
    """Paint the leaf; `lit` while a hand is over it, `held` while a hand is on it."""
    to_screen = blade_transform(pose, view)
    metal, back = to_screen.map(paths.metal), to_screen.map(paths.back)
    paint_shadow(painter, back, theme, held=held)
    painter.fillPath(metal, _brushed(paths, to_screen, theme, lit=lit))
    painter.fillPath(metal, _sheen(paths, to_screen, theme))
    _paint_mark(painter, paths, pose, to_screen, theme)
    # Pens are opaque and one pixel wide wherever they may be: Qt draws those many times faster.
    bevel = QPen(QColor(theme.bench.leaf_lit), 1.0)
    painter.strokePath(to_screen.map(_inner_edge(paths, 1.4 / view.scale)), bevel)
    edge = QPen(QColor(theme.bench.edge), 1.0)
    edge.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.strokePath(metal, edge)


def _inner_edge(paths: BladePaths, inset: float) -> QPainterPath:
    """The back edges from within, `inset` mm off them and off the edges that they end on."""
    (right, low), top = paths.blade.back.start, paths.blade.corner[1]
    left = end_of(paths.blade.back.steps[-1])[0]
    path = QPainterPath(QPointF(right - inset, low + inset))
    path.lineTo(right - inset, top - inset)
    path.lineTo(left + inset, top - inset)
    return path


@lru_cache(maxsize=8)
def _streaks(dark: str, bright: str) -> tuple[tuple[float, QColor], ...]:
    """The tones of a brushed surface across its brushing, the same on every leaf."""
    chance = random.Random(11)
    tones = [chance.gauss(0.5, 0.16) for _ in range(_STREAKS + 1)]
    return tuple(
        (index / _STREAKS, mixed(dark, bright, min(max(tone, 0.0), 1.0)))
        for index, tone in enumerate(tones)
    )


def _brushed(paths: BladePaths, to_screen: QTransform, theme: Theme, *, lit: bool) -> QBrush:
    bench = theme.bench
    ends = QPointF(0.0, 0.0), QPointF(0.0, paths.blade.corner[1])
    gradient = QLinearGradient(to_screen.map(ends[0]), to_screen.map(ends[1]))
    bright = bench.leaf_lit if lit else bench.leaf_bright
    dark = bench.leaf_bright if lit else bench.leaf_dark
    gradient.setStops(list(_streaks(dark, bright)))
    return QBrush(gradient)


def _sheen(paths: BladePaths, to_screen: QTransform, theme: Theme) -> QBrush:
    """A broad gleam across the blade."""
    corner = paths.blade.corner
    ends = QPointF(0.0, corner[1]), QPointF(corner[0], 0.0)
    gradient = QLinearGradient(to_screen.map(ends[0]), to_screen.map(ends[1]))
    light, dark = theme.bench.engraving_light, theme.bench.engraving
    for at, colour, alpha in (
        (0.0, light, 0.30),
        (0.22, light, 0.10),
        (0.48, dark, 0.16),
        (0.60, dark, 0.12),
        (0.82, light, 0.16),
        (1.0, light, 0.04),
    ):
        gradient.setColorAt(at, tint(colour, alpha))
    return QBrush(gradient)


@lru_cache(maxsize=64)
def _lettering(mark: str, font: QFont) -> QPainterPath:
    """The mark as outlines, figures one unit high on the origin's line, ending at the origin.

    The unit stands smaller beside its figures, and a fraction is set as one.
    """
    words = mark.split(" ")
    if len(words) == 1 or words[-1][0].isdigit():
        words.append("")
    figures, unit = " ".join(words[:-1]), words[-1]
    large = QFont(font)
    if "/" in figures:
        large.setFeature(QFont.Tag("frac"), 1)
    small = QFont(font)
    small.setPixelSize(font.pixelSize() // 2)
    path, tail = QPainterPath(), QPainterPath()
    path.addText(0.0, 0.0, large, figures)
    tail.addText(path.boundingRect().right() + 0.16 * font.pixelSize(), 0.0, small, unit)
    path.addPath(tail)
    path.translate(-path.boundingRect().right(), 0.0)
    high = QFontMetricsF(font).capHeight()
    return QTransform.fromScale(1.0 / high, 1.0 / high).map(path)


def _paint_mark(
    painter: QPainter, paths: BladePaths, pose: Pose | Place, to_screen: QTransform, theme: Theme
) -> None:
    letters = _lettering(paths.blade.mark, engraving_font(theme))
    size = paths.blade.size
    middle, radius = paths.hole
    high = min(0.30 * size, 1.5 * size / max(letters.boundingRect().width(), 1e-6))
    # The blade may be mirrored, never the figures on it: they are engraved on both sides.
    flip = 1.0 if pose.turned else -1.0
    put = QTransform(
        high,
        0.0,
        0.0,
        high * flip,
        middle.x() - radius - 0.22 * size,
        middle.y() + flip * high / 2.0,
    )
    engraved = (put * to_screen).map(letters)
    # A bright lower lip and a dark floor: cut into the metal, lit from above.
    painter.fillPath(engraved.translated(0.6, 1.1), QColor(theme.bench.leaf_lit))
    painter.fillPath(engraved, QColor(theme.bench.engraving))
