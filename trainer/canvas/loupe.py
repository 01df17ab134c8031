"""The loupe: a round magnifier that stays on the tip or the spur, placed where it covers least."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Literal

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QImage,
    QPaintEngine,
    QPainter,
    QPainterPath,
    QPen,
    QRadialGradient,
)

from trainer.canvas.drawing import Vec
from trainer.canvas.furniture import MARGIN, chip_size, paint_chip
from trainer.canvas.light import tint
from trainer.canvas.scene import Scene
from trainer.canvas.shapes import Shapes, mapped, pose_transform
from trainer.canvas.view import Box, View, loupe_scale
from trainer.figures import figures
from trainer.look.tokens import Theme

__all__ = ["CORNERS", "Corner", "Lens", "lens_of", "paint_lens"]

Corner = Literal["top-right", "top-left", "bottom-right", "bottom-left"]
CORNERS: Final[tuple[Corner, ...]] = ("top-right", "top-left", "bottom-right", "bottom-left")

_RIM: Final = 5.0
_LABEL: Final = 30.0
"""Logical pixels kept below the loupe for its label."""

_STAY: Final = 0.25
"""How much less another corner must cover before the loupe moves there."""


@dataclass(frozen=True, slots=True)
class Lens:
    """Where the loupe is and what it shows.

    Parameters
    ----------
    corner, middle, radius
        Its place, logical pixels.
    at
        What it stays on, logical pixels of the picture.
    view
        What it shows: a view of its own, as large as its bounding square.
    zoom
        Over the picture around it.
    """

    corner: Corner
    middle: Vec
    radius: float
    at: Vec
    view: View
    zoom: float
    label: str

    @property
    def rect(self) -> QRectF:
        """The square that holds the glass, logical pixels."""
        x, y = self.middle
        return QRectF(x - self.radius, y - self.radius, 2.0 * self.radius, 2.0 * self.radius)

    @property
    def spot(self) -> float:
        """Radius of what it shows, in the picture around it, logical pixels."""
        return self.radius / self.zoom

    @property
    def box(self) -> Box:
        """What glass, rim and label cover: left, top, right, bottom, logical pixels."""
        (x, y), out = self.middle, self.radius + _RIM
        return (x - out, y - out, x + out, y + out + _LABEL)

    @property
    def reach(self) -> QRectF:
        """Everything that painting it may touch: glass, rim, shadow, label, leader."""
        glass = self.rect.adjusted(-16.0, -14.0, 16.0, _LABEL + 14.0)
        spot = self.spot + 3.0
        x, y = self.at
        return glass.united(QRectF(x - spot, y - spot, 2.0 * spot, 2.0 * spot))


def lens_of(
    scene: Scene, view: View, shapes: Shapes, previous: Corner | None = None
) -> Lens | None:
    """Return the loupe of `scene`, or None if it has none or nothing to stay on.

    It lies in the corner that covers least of the bead and the leaf's point, and stays in the
    corner where it was (`previous`) as long as that is nearly as good.
    """
    target = _target(scene, shapes)
    if scene.loupe is None or target is None:
        return None
    # In fours, so that the glass starts on a whole device pixel at any common ratio.
    radius = 4.0 * round(min(max(0.17 * min(view.size), 64.0), 124.0) / 4.0)
    at = view.to_screen(target)
    corner = _best_corner(scene, view, shapes, radius, at, previous)
    scale = loupe_scale(view, scene.loupe.zoom, scene.eye_limit, capped=scene.capped)
    glass = View(_settled(target, scale * view.ratio), scale, (2 * radius, 2 * radius), view.ratio)
    middle = _middle(corner, view, radius)
    return Lens(corner, middle, radius, at, glass, scale / view.scale, scene.loupe.label)


def _target(scene: Scene, shapes: Shapes) -> Vec | None:
    if scene.loupe is not None and scene.loupe.at is not None:
        return scene.loupe.at
    if scene.leaf is None or scene.pose is None:
        return None
    point = shapes.blade(scene.leaf).blade.point
    return mapped(pose_transform(scene.pose), point)


def _settled(target: Vec, device_scale: float) -> Vec:
    """The target on a whole device pixel, so that the steel behind the glass doesn't shimmer."""
    return (
        round(target[0] * device_scale) / device_scale,
        round(target[1] * device_scale) / device_scale,
    )


def _middle(corner: Corner, view: View, radius: float) -> Vec:
    inset = radius + _RIM + MARGIN
    x = inset if corner.endswith("left") else view.size[0] - inset
    y = inset if corner.startswith("top") else view.size[1] - inset - _LABEL
    return (round(x * view.ratio) / view.ratio, round(y * view.ratio) / view.ratio)


def _best_corner(
    scene: Scene, view: View, shapes: Shapes, radius: float, at: Vec, previous: Corner | None
) -> Corner:
    costs = {corner: _covered(scene, view, shapes, radius, at, corner) for corner in CORNERS}
    best = min(CORNERS, key=lambda corner: costs[corner])
    if previous is not None and costs[previous] <= costs[best] + _STAY:
        return previous
    return best


def _covered(
    scene: Scene, view: View, shapes: Shapes, radius: float, at: Vec, corner: Corner
) -> float:
    """What the loupe would hide in this corner: 1 for each thing that it covers whole."""
    middle = _middle(corner, view, radius)
    cost = 0.02 * CORNERS.index(corner)
    room = radius + _RIM
    # What it magnifies must be seen beside it.
    cost += 4.0 * _nearness(math.dist(middle, at), room * 1.5, room * 0.7)
    cost += 0.3 * math.dist(middle, at) / math.hypot(*view.size)
    if scene.section is not None:
        drawing = shapes.section(scene.section).drawing
        for toe in (*drawing.toes, (0.0, 0.0)):
            cost += 1.5 * _nearness(math.dist(middle, view.to_screen(toe)), room * 1.4, room)
    if scene.scale_bar and corner == "bottom-left":
        cost += 0.6
    for overlay in scene.overlays:
        for point in _points(overlay):
            cost += 0.3 * _nearness(math.dist(middle, view.to_screen(point)), room * 1.2, room)
    return cost


def _points(overlay: object) -> tuple[Vec, ...]:
    points: tuple[Vec, ...] = getattr(overlay, "points", ())
    at: Vec | None = getattr(overlay, "at", None)
    return points if at is None else (at,)


def _nearness(distance: float, far: float, near: float) -> float:
    """1 at `near` and closer, 0 at `far` and beyond."""
    return min(1.0, max(0.0, (far - distance) / (far - near)))


def paint_lens(
    painter: QPainter, lens: Lens, theme: Theme, content: Callable[[QPainter, View], None]
) -> None:
    """Paint the loupe: leader, glass, rim and label. `content` paints what a view shows."""
    _paint_leader(painter, lens, theme)
    middle = QPointF(*lens.middle)
    _paint_shade(painter, lens, theme)
    engine = painter.paintEngine()
    if engine.type() == QPaintEngine.Type.SVG:
        painter.drawImage(lens.rect, _glass_image(lens, content))
    else:
        _paint_glass(painter, lens, content)
    painter.fillPath(_ring(middle, lens.radius - 1.5, lens.radius + 1.0), QColor(theme.bench.brass))
    painter.fillPath(_ring(middle, lens.radius, lens.radius + _RIM), QColor(theme.bench.edge))
    _paint_label(painter, lens, theme)


def _ring(middle: QPointF, inner: float, outer: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(middle, outer, outer)
    path.addEllipse(middle, inner, inner)
    return path


def _paint_shade(painter: QPainter, lens: Lens, theme: Theme) -> None:
    """The soft shadow of the rim."""
    rim = lens.radius + _RIM
    middle = QPointF(*lens.middle) + QPointF(1.0, 3.0)
    shade = QRadialGradient(middle, rim + 10.0)
    shade.setColorAt(0.0, tint(theme.bench.shadow, 0.30))
    shade.setColorAt((rim - 2.0) / (rim + 10.0), tint(theme.bench.shadow, 0.30))
    shade.setColorAt(1.0, tint(theme.bench.shadow, 0.0))
    painter.fillPath(_ring(middle, rim - 6.0, rim + 10.0), QBrush(shade))


def _paint_leader(painter: QPainter, lens: Lens, theme: Theme) -> None:
    at, middle = QPointF(*lens.at), QPointF(*lens.middle)
    line = QLineF(at, middle)
    long = line.length()
    painter.setBrush(Qt.BrushStyle.NoBrush)
    start, end = lens.spot, long - lens.radius - _RIM
    for colour, width in ((tint(theme.bench.glow, 0.55), 3.0), (QColor(theme.bench.edge), 1.2)):
        painter.setPen(QPen(colour, width))
        painter.drawEllipse(at, lens.spot, lens.spot)
        if end > start:
            painter.drawLine(line.pointAt(start / long), line.pointAt(end / long))


def _paint_glass(painter: QPainter, lens: Lens, content: Callable[[QPainter, View], None]) -> None:
    painter.save()
    round_glass = QPainterPath()
    round_glass.addEllipse(QPointF(*lens.middle), lens.radius, lens.radius)
    painter.setClipPath(round_glass, Qt.ClipOperation.IntersectClip)
    painter.translate(lens.rect.topLeft())
    content(painter, lens.view)
    painter.restore()


def _glass_image(lens: Lens, content: Callable[[QPainter, View], None]) -> QImage:
    """The glass as a picture, for the one engine that knows no clip."""
    ratio = 4.0
    side = math.ceil(2.0 * lens.radius * ratio)
    image = QImage(side, side, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(side / (2.0 * lens.radius), side / (2.0 * lens.radius))
    round_glass = QPainterPath()
    round_glass.addEllipse(QPointF(lens.radius, lens.radius), lens.radius, lens.radius)
    painter.setClipPath(round_glass)
    content(painter, lens.view)
    painter.end()
    return image


def _paint_label(painter: QPainter, lens: Lens, theme: Theme) -> None:
    zoom = figures(f"×{lens.zoom:.1f}")
    text = f"{lens.label}  {zoom}" if lens.label else zoom
    wide, high = chip_size(text, theme)
    top = lens.middle[1] + lens.radius + _RIM + 7.0
    paint_chip(painter, QRectF(lens.middle[0] - wide / 2.0, top, wide, high), text, theme)
