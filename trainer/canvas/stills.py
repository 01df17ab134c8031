"""Pixmaps of what stands still, kept at device resolution while only a leaf moves."""

from __future__ import annotations

import math
from dataclasses import replace

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPixmap

from trainer.canvas.painter import paint_still
from trainer.canvas.scene import Scene
from trainer.canvas.shapes import Shapes
from trainer.canvas.view import View

__all__ = ["GlassStill", "Still", "same_still"]


def same_still(first: Scene, second: Scene) -> bool:
    """Whether both scenes have the same still layers, whatever moves over them."""
    return (
        first.section is second.section
        and first.theme == second.theme
        and first.unit == second.unit
        and first.grid == second.grid
        and first.backing == second.backing
    )


def _rendered(scene: Scene, view: View, shapes: Shapes, *, in_glass: bool = False) -> QPixmap:
    pixmap = QPixmap(math.ceil(view.size[0] * view.ratio), math.ceil(view.size[1] * view.ratio))
    pixmap.setDevicePixelRatio(view.ratio)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_still(painter, scene, view, shapes, in_glass=in_glass)
    painter.end()
    return pixmap


class Still:
    """The still layers of the whole canvas."""

    def __init__(self) -> None:
        self._kept: tuple[Scene, View, QPixmap] | None = None

    def pixmap(self, scene: Scene, view: View, shapes: Shapes) -> QPixmap:
        """The still layers of `scene` in `view`, painted anew only if they have changed."""
        if self._kept is not None:
            known, known_view, pixmap = self._kept
            if known_view == view and same_still(known, scene):
                return pixmap
        pixmap = _rendered(scene, view, shapes)
        self._kept = (scene, view, pixmap)
        return pixmap


class GlassStill:
    """The still layers behind the loupe's glass: a piece larger than the glass, shifted under it.

    The loupe's view always stands on whole device pixels, so a shift never blurs.
    """

    def __init__(self) -> None:
        self._kept: tuple[Scene, View, QPixmap] | None = None

    def draw(self, painter: QPainter, scene: Scene, view: View, shapes: Shapes) -> None:
        """Draw the still layers of `view` at the painter's origin."""
        if self._kept is None or not self._holds(scene, view):
            size = (2.0 * view.size[0], 2.0 * view.size[1])
            larger = replace(view, size=size)
            self._kept = (scene, larger, _rendered(scene, larger, shapes, in_glass=True))
        _, kept, pixmap = self._kept
        x, y = kept.to_screen(view.to_mm((0.0, 0.0)))
        painter.drawPixmap(QPointF(-_whole(x, view.ratio), -_whole(y, view.ratio)), pixmap)

    def _holds(self, scene: Scene, view: View) -> bool:
        if self._kept is None:
            return False
        known, kept, _ = self._kept
        if not same_still(known, scene) or (kept.scale, kept.ratio) != (view.scale, view.ratio):
            return False
        outer, inner = kept.box, view.box
        return (
            kept.size == (2.0 * view.size[0], 2.0 * view.size[1])
            and outer[0] <= inner[0]
            and outer[1] <= inner[1]
            and outer[2] >= inner[2]
            and outer[3] >= inner[3]
        )


def _whole(pixels: float, ratio: float) -> float:
    return round(pixels * ratio) / ratio
