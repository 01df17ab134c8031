"""Painter paths of drawings, in millimetres: built once, then only transformed."""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainterPath, QPainterPathStroker, QTransform

from trainer.canvas.drawing import (
    Blade,
    Drawing,
    Outline,
    Place,
    Step,
    Vec,
    blade_of,
    drawing_of,
    end_of,
)

if TYPE_CHECKING:
    from geometry.leaf import Leaf
    from geometry.pose import Pose
    from geometry.section import Section

__all__ = [
    "BladePaths",
    "SectionPaths",
    "Shapes",
    "mapped",
    "path_of",
    "pose_transform",
    "smoothed",
]

_HEAT_SHARES: Final = (0.20, 0.165, 0.13, 0.095, 0.06)
"""Depth of each band of the heat-affected zone, as a share of the longer leg."""


_CRYSTALS: Final = 90
_CHUNK: Final = math.radians(22.5)
"""A cubic stands off a true arc of this sweep by 7e-8 of its radius."""


def path_of(outline: Outline) -> QPainterPath:
    """Return the outline as a path in mm; arcs as cubics within 1e-7 of their radius.

    Examples
    --------
    >>> box = path_of(Outline("box", (0.0, 0.0), ((2.0, 0.0), (2.0, 1.0), (0.0, 1.0))))
    >>> box.boundingRect().width()
    2.0
    """
    path = QPainterPath()
    path.moveTo(*outline.start)
    for step in outline.steps:
        if len(step) == 2:
            path.lineTo(step[0], step[1])
        else:
            _arc_to(path, step)
    if outline.closed:
        path.closeSubpath()
    return path


def _arc_to(path: QPainterPath, step: Step) -> None:
    # Our own cubics: QPainterPath.arcTo is off by more than a pixel on nearly flat arcs, whose
    # radius is a thousand times their length.
    cx, cy, radius, first, sweep, end_x, end_y = step
    count = max(1, math.ceil(abs(sweep) / _CHUNK))
    part = sweep / count
    handle = 4.0 / 3.0 * math.tan(part / 4.0) * radius
    start = path.currentPosition()
    x, y = start.x(), start.y()
    for index in range(count):
        near, far = first + index * part, first + (index + 1) * part
        if index == count - 1:
            to_x, to_y = end_x, end_y
        else:
            to_x, to_y = cx + radius * math.cos(far), cy + radius * math.sin(far)
        path.cubicTo(
            x - handle * math.sin(near),
            y + handle * math.cos(near),
            to_x + handle * math.sin(far),
            to_y - handle * math.cos(far),
            to_x,
            to_y,
        )
        x, y = to_x, to_y


def smoothed(face: Outline, spans: int = 40, blur: float = 3.0) -> Outline:
    """Return a traced face as `spans` strides, each end the mean over `blur` strides around it.

    A drawn face is returned as it is. Only the bead's etching is drawn from this, never its edge.
    """
    if len(face.steps) <= spans or any(len(step) != 2 for step in face.steps):
        return face
    points = [face.start, *(end_of(step) for step in face.steps)]
    stride = len(points) / spans
    means: list[Step] = []
    for index in range(1, spans):
        # Near the ends the mean narrows, so that the line still ends where the face does.
        half = min(blur / 2.0, float(index), float(spans - index)) * stride
        near, far = int(index * stride - half), int(index * stride + half) + 1
        part = points[max(near, 0) : far]
        means.append((sum(p[0] for p in part) / len(part), sum(p[1] for p in part) / len(part)))
    return Outline(face.name, face.start, (*means, points[-1]), closed=False)


def mapped(transform: QTransform, point: Vec) -> Vec:
    """Return a point, transformed.

    Examples
    --------
    >>> mapped(QTransform.fromTranslate(1.0, 2.0), (3.0, 4.0))
    (4.0, 6.0)
    """
    to = transform.map(QPointF(*point))
    return (to.x(), to.y())


def pose_transform(pose: Pose | Place) -> QTransform:
    """Return the transform from the leaf's frame to the section's (both mm).

    Examples
    --------
    >>> pose_transform(Place(1.0, 2.0, 90.0, turned=True)).map(0.0, 8.0)
    (9.0, 2.0)
    """
    quarter = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), -90.0: (0.0, -1.0)}
    angle = math.radians(pose.angle)
    cos, sin = quarter.get(pose.angle) or (math.cos(angle), math.sin(angle))
    flip = -1.0 if pose.turned else 1.0
    return QTransform(cos, sin, -sin * flip, cos * flip, pose.x, pose.y)


# Kept by what it hangs on: two beads with the same toes, whatever their faces, share it.
@lru_cache(maxsize=4)
def _heat(base: Outline, upright: Outline, toes: tuple[Vec, Vec]) -> tuple[QPainterPath, ...]:
    """Bands of the members about the fused metal, the widest first."""
    # Strokes are flattened for pixels, so they are made a hundred times too large.
    large, small = QTransform.fromScale(100.0, 100.0), QTransform.fromScale(0.01, 0.01)
    members = large.map(path_of(base).united(path_of(upright)))
    reach = min(max(math.hypot(*toes[0]), math.hypot(*toes[1]), 3.0), 20.0)
    fusion = QPainterPath()
    fusion.moveTo(*toes[0])
    fusion.lineTo(0.0, 0.0)
    fusion.lineTo(*toes[1])
    bands = []
    for share in _HEAT_SHARES:
        stroker = QPainterPathStroker()
        stroker.setWidth(200.0 * share * reach)
        stroker.setCapStyle(Qt.PenCapStyle.RoundCap)
        stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        stroke = stroker.createStroke(large.map(fusion)).simplified()
        bands.append(small.map(stroke.intersected(members)))
    return tuple(bands)


@dataclass(frozen=True, eq=False)
class SectionPaths:
    """The paths of one section, mm."""

    drawing: Drawing

    @cached_property
    def bodies(self) -> tuple[tuple[str, QPainterPath], ...]:
        """Each body's name and path."""
        return tuple((body.name, path_of(body)) for body in self.drawing.bodies)

    @cached_property
    def steel(self) -> QPainterPath:
        """All exposed steel."""
        return path_of(self.drawing.steel)

    def body(self, name: str) -> QPainterPath:
        """The path of this body; `KeyError` if there is none."""
        return dict(self.bodies)[name]

    @property
    def heat(self) -> tuple[QPainterPath, ...]:
        """Bands of the members that the weld's heat has changed, the widest first."""
        drawing = self.drawing
        return _heat(drawing.body("base"), drawing.body("upright"), drawing.toes)

    @cached_property
    def grain(self) -> tuple[QPainterPath, QPainterPath]:
        """Etched lines in the bead: layers that echo the face, and crystals that cross them.

        Every layer is the face drawn towards the root, so it ends on the members by itself.
        """
        face = smoothed(self.drawing.face)
        reach = max(self.drawing.legs)
        count = min(max(round(reach / 0.85), 6), 14)
        outline = path_of(face)
        layers, crystals = QPainterPath(), QPainterPath()
        for index in range(1, count):
            # The layers crowd a little towards the face, where the last runs lie.
            share = (index / count) ** 0.86
            layers.addPath(QTransform.fromScale(share, share).map(outline))
        chance = random.Random(7)
        for index in range(_CRYSTALS):
            at = outline.pointAtPercent((index + chance.uniform(0.15, 0.85)) / _CRYSTALS)
            near = chance.uniform(0.18, 0.86)
            far = min(0.97, near + chance.uniform(0.05, 0.14))
            crystals.moveTo(at * near)
            crystals.lineTo(at * far)
        return layers, crystals


@dataclass(frozen=True, eq=False)
class BladePaths:
    """The paths of one leaf, mm in its own frame."""

    blade: Blade

    @cached_property
    def outline(self) -> QPainterPath:
        """The blade's boundary, without its hang hole: what a hand can hold."""
        return path_of(self.blade.outline)

    @cached_property
    def back(self) -> QPainterPath:
        """The edges that touch nothing, open."""
        return path_of(self.blade.back)

    @cached_property
    def hole(self) -> tuple[QPointF, float]:
        """Middle and radius of the hang hole: in the same place whichever edge works."""
        size = self.blade.size
        return QPointF(2.66 * size, 1.86 * size), 0.115 * size

    @cached_property
    def metal(self) -> QPainterPath:
        """The blade with its hang hole."""
        path = QPainterPath(self.outline)
        middle, radius = self.hole
        path.addEllipse(middle, radius, radius)
        path.setFillRule(Qt.FillRule.OddEvenFill)
        return path


class Shapes:
    """Keeps the paths of the sections and leaves painted lately.

    One per canvas. What is asked for again and again is the same object, so identity is tried
    first; equality would compare a thousand points of a trace.
    """

    def __init__(self) -> None:
        self._sections: list[tuple[Section | Drawing, SectionPaths]] = []
        self._blades: list[tuple[Leaf | Blade, BladePaths]] = []

    def section(self, section: Section | Drawing) -> SectionPaths:
        """The paths of `section`."""
        for known, paths in self._sections:
            if known is section:
                return paths
        drawing = section if isinstance(section, Drawing) else drawing_of(section)
        paths = SectionPaths(drawing)
        self._sections = [(section, paths), *self._sections[:3]]
        return paths

    def blade(self, leaf: Leaf | Blade) -> BladePaths:
        """The paths of `leaf`."""
        for known, paths in self._blades:
            if known is leaf:
                return paths
        blade = leaf if isinstance(leaf, Blade) else blade_of(leaf)
        paths = BladePaths(blade)
        self._blades = [(leaf, paths), *self._blades[:7]]
        return paths
