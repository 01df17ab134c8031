"""Small pictures of coupons, by the one painter; each is painted once for a section and a look."""

from __future__ import annotations

import math
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPixmap

from geometry.section import Section
from trainer.canvas.painter import paint
from trainer.canvas.scene import Scene
from trainer.canvas.view import View
from trainer.look.tokens import Theme

__all__ = ["THUMBNAIL", "Thumbnails"]

THUMBNAIL: Final = QSize(72, 60)
"""Logical px, where there is room for it."""

_MOST: Final = 400


class Thumbnails:
    """Keeps the pictures of the coupons that are looked at."""

    def __init__(self) -> None:
        self._kept: dict[tuple[int, str, float, int], tuple[Section, QPixmap]] = {}

    def of(self, section: Section, theme: Theme, ratio: float, size: QSize) -> QPixmap:
        """Return a picture of `size` logical px, at `ratio` device pixels per logical one."""
        key = (id(section), theme.name, ratio, size.width())
        known = self._kept.get(key)
        # The section is kept beside it, so that no other one can have its address meanwhile.
        if known is not None and known[0] is section:
            return known[1]
        picture = _painted(section, theme, ratio, size)
        self._kept[key] = (section, picture)
        while len(self._kept) > _MOST:
            del self._kept[next(iter(self._kept))]
        return picture


def _painted(section: Section, theme: Theme, ratio: float, size: QSize) -> QPixmap:
    wide, high = float(size.width()), float(size.height())
    picture = QPixmap(size * ratio)
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    reach = max(section.bead.leg_base, section.bead.leg_upright, 3.0)
    lean = min(0.0, math.cos(section.joint.radians)) * reach
    box = (-0.7 * reach + lean, -0.55 * reach, 2.1 * reach, 1.75 * reach)
    view = View((0.0, 0.0), 1.0, (wide, high), ratio).showing(box)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    clip = QPainterPath()
    clip.addRoundedRect(0.0, 0.0, wide, high, 4.0, 4.0)
    painter.setClipPath(clip)
    paint(painter, Scene(section=section, theme=theme, grid=False, scale_bar=False), view)
    painter.end()
    return picture
