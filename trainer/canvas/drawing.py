"""What a painter needs of a section or a leaf: outlines of lines and true arcs, as plain tuples.

A drawing is made once from the bodies. It needs no numpy, so that a stored one can be painted
before the geometry is even loaded, by the same code that paints every other frame.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, cast

if TYPE_CHECKING:
    from geometry.bodies import Piece
    from geometry.curves import Arc, Curve
    from geometry.leaf import Leaf
    from geometry.section import Section

__all__ = [
    "Blade",
    "Drawing",
    "Outline",
    "Place",
    "Step",
    "Vec",
    "blade_of",
    "drawing_of",
    "end_of",
]

Vec = tuple[float, float]
Step = tuple[float, ...]
"""``(x, y)`` is a line to a point; ``(cx, cy, radius, first, sweep, x, y)`` an arc to it. All in
mm and radians, counter-clockwise positive."""


class Place(NamedTuple):
    """Where a blade lies, for who has no geometry loaded: the fields of a pose."""

    x: float
    y: float
    angle: float = 0.0
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Outline:
    """One named chain of lines and arcs, in mm; closed unless said otherwise.

    Examples
    --------
    >>> Outline("base", (0.0, 0.0), ((4.0, 0.0), (4.0, 3.0))).bounds
    (0.0, 0.0, 4.0, 3.0)
    """

    name: str
    start: Vec
    steps: tuple[Step, ...]
    closed: bool = True

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Least x, least y, greatest x, greatest y (mm) of the corners and arcs' middles."""
        points = [self.start]
        for step in self.steps:
            points += [middle_of(step), end_of(step)]
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        return min(xs), min(ys), max(xs), max(ys)


def end_of(step: Step) -> Vec:
    """Where a step ends, mm."""
    return (step[-2], step[-1])


def middle_of(step: Step) -> Vec:
    """The middle of an arc, mm; of a line, its end."""
    if len(step) == 2:
        return (step[0], step[1])
    angle = step[3] + step[4] / 2.0
    return (step[0] + step[2] * math.cos(angle), step[1] + step[2] * math.sin(angle))


# Compared by identity: painters keep their paths by it, and a traced face has a thousand steps.
@dataclass(frozen=True, eq=False)
class Drawing:
    """A section, ready to paint.

    Parameters
    ----------
    bodies
        Closed outlines: ``base``, ``upright``, ``weld``, then lips and spatter.
    steel
        All exposed steel as one closed outline.
    face
        The weld's face from base toe to upright toe, open.
    angle
        The joint's angle, degrees.
    """

    bodies: tuple[Outline, ...]
    steel: Outline
    face: Outline
    angle: float

    @cached_property
    def toes(self) -> tuple[Vec, Vec]:
        """The fused toes on the base and on the upright, mm."""
        return self.face.start, end_of(self.face.steps[-1])

    @cached_property
    def legs(self) -> tuple[float, float]:
        """Root to toe along base and upright, mm."""
        return math.hypot(*self.toes[0]), math.hypot(*self.toes[1])

    @property
    def middle(self) -> Vec:
        """The middle between the toes, mm."""
        (ax, ay), (bx, by) = self.toes
        return ((ax + bx) / 2.0, (ay + by) / 2.0)

    def body(self, name: str) -> Outline:
        """The body of this name; `KeyError` if there is none."""
        for body in self.bodies:
            if body.name == name:
                return body
        raise KeyError(name)


@dataclass(frozen=True, eq=False)
class Blade:
    """A leaf, ready to paint, in its own frame (mm).

    Parameters
    ----------
    outline
        The blade's boundary.
    mark
        What is engraved.
    size
        Leg size S.
    edge
        ``leg`` or ``throat``.
    point
        The tip or the spur.
    back
        The edges away from the joint, open, by way of the far corner.
    """

    outline: Outline
    mark: str
    size: float
    edge: str
    point: Vec
    back: Outline

    @property
    def corner(self) -> Vec:
        """The far corner, where the leaf hangs, mm."""
        return end_of(self.back.steps[0])


def drawing_of(section: Section) -> Drawing:
    """Return the drawing of `section`.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> drawing = drawing_of(Section.of(Joint(), Bead(8.0, 6.7, crown=0.9)))
    >>> [body.name for body in drawing.bodies], drawing.legs
    (['base', 'upright', 'weld'], (8.0, 6.7))
    """
    return Drawing(
        tuple(_closed(body.name, body.pieces) for body in section.bodies),
        _closed("steel", section.outline.pieces),
        _chain("face", section.face, closed=False),
        section.joint.angle,
    )


def blade_of(leaf: Leaf) -> Blade:
    """Return the drawing of `leaf`, in its own frame.

    Examples
    --------
    >>> from geometry.leaf import leaf_of_mark
    >>> blade = blade_of(leaf_of_mark("8 mm"))
    >>> blade.mark, blade.point, len(blade.outline.steps)
    ('8 mm', (0.0, 8.0), 5)
    """
    pieces = leaf.body.pieces
    back = [piece.curve for piece in pieces if piece.name == "back"]
    return Blade(
        _closed("leaf", pieces),
        leaf.mark,
        leaf.size,
        leaf.edge,
        leaf.point,
        _chain("back", back, closed=False),
    )


def _closed(name: str, pieces: Iterable[Piece]) -> Outline:
    return _chain(name, [piece.curve for piece in pieces], closed=True)


def _chain(name: str, curves: Iterable[Curve], *, closed: bool) -> Outline:
    run = list(curves)
    return Outline(name, run[0].start, tuple(_step(curve) for curve in run), closed)


def _step(curve: Curve) -> Step:
    # By its fields, not by its class: naming the class would load numpy.
    sweep = getattr(curve, "sweep", None)
    if sweep is None:
        return curve.end
    arc = cast("Arc", curve)
    return (*arc.centre, arc.radius, arc.first, sweep, *arc.end)
