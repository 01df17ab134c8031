"""Bodies: closed boundaries of named pieces, with a shapely polygon beside them.

The true segments and arcs are the body; contact works on them. The polygon is an inscribed
tessellation for validating and for taking readings. Pieces keep their names in both.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiLineString, Polygon

from geometry.curves import Curve, Segment, Vec
from geometry.faults import Fault, GeometryError
from geometry.tolerances import FLATTENING

__all__ = ["Body", "Piece"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One named stretch of a boundary. Several pieces may share a name (a traced face).

    Examples
    --------
    >>> from geometry.curves import Segment
    >>> Piece("base", Segment((0.0, 0.0), (1.0, 0.0))).mirrored().curve.end
    (0.0, -0.0)
    """

    name: str
    curve: Curve

    def mirrored(self) -> Piece:
        """The mirror image in the x axis."""
        return Piece(self.name, self.curve.mirrored())


# Compared and hashed by identity: caches key on bodies, and a trace has a thousand pieces.
@dataclass(frozen=True, eq=False)
class Body:
    """A simple closed boundary, counter-clockwise, metal on the left.

    Parameters
    ----------
    name
        What the body is ("base", "weld", "leaf").
    pieces
        The boundary in order; each piece starts where the one before it ends.

    Raises
    ------
    GeometryError
        If the chain has a gap, a value is not finite, or the boundary crosses itself.

    Examples
    --------
    >>> from geometry.curves import Segment
    >>> corners = [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)]
    >>> box = Body.of_points("box", corners)
    >>> box.polygon.area
    2.0
    """

    name: str
    pieces: tuple[Piece, ...]

    def __post_init__(self) -> None:
        if len(self.pieces) < 2:
            raise GeometryError([self._fault("empty", "has no boundary", "a closed boundary")])
        points = self.ring
        if len(points) < 3:
            raise GeometryError([self._fault("empty", "is a line there and back", "an area")])
        # A NaN vertex makes shapely's distance 0.0, a false contact: refuse it here, once.
        if not np.isfinite(points).all():
            raise GeometryError([self._fault("not-finite", "has a value that is no number", "mm")])
        for piece in self.pieces:
            if not piece.curve.length > 0.0:
                text = f"has a piece of no length, {piece.name!r}, at {piece.curve.start}"
                raise GeometryError([self._fault("empty-piece", text, "distinct points")])
        for before, after in zip(self.pieces, self.pieces[1:] + self.pieces[:1], strict=True):
            if math.dist(before.curve.end, after.curve.start) > 1e-9:
                raise GeometryError(
                    [self._fault("open", f"is open after {before.name!r}", "pieces that meet")]
                )
        polygon = Polygon(points)
        if not polygon.is_valid or polygon.area <= 0 or not polygon.exterior.is_ccw:
            reason = shapely.is_valid_reason(polygon)
            raise GeometryError(
                [
                    self._fault(
                        "crossed",
                        f"is no simple outline ({reason})",
                        "an outline that does not meet itself",
                    )
                ]
            )

    def _fault(self, code: str, text: str, right: str) -> Fault:
        return Fault("", code, f"{self.name} {text}", right, {"body": self.name})

    @classmethod
    def of_points(cls, name: str, points: Iterable[Vec], piece: str = "side") -> Body:
        """A polygon with straight sides, all of them named `piece`."""
        ring = list(points)
        return cls(
            name,
            tuple(
                Piece(piece, Segment(a, b)) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
            ),
        )

    @cached_property
    def ring(self) -> NDArray[np.float64]:
        """The flattened boundary, shape (n, 2) in mm, not repeating the first point."""
        return np.concatenate([piece.curve.flatten(FLATTENING)[:-1] for piece in self.pieces])

    @cached_property
    def polygon(self) -> Polygon:
        """The body as one valid shapely polygon, within 1e-4 mm of the true one."""
        polygon = Polygon(self.ring)
        shapely.prepare(polygon)
        return polygon

    @cached_property
    def piece_names(self) -> tuple[str, ...]:
        """The names of the pieces, each once, in the order of the boundary."""
        return tuple(dict.fromkeys(piece.name for piece in self.pieces))

    def line(self, *names: str) -> MultiLineString:
        """All pieces with one of these names, flattened, as shapely lines (maybe none)."""
        return MultiLineString(
            [
                LineString(piece.curve.flatten(FLATTENING))
                for piece in self.pieces
                if piece.name in names
            ]
        )

    def mirrored(self) -> Body:
        """The mirror image in the x axis."""
        return Body(self.name, tuple(piece.mirrored() for piece in reversed(self.pieces)))
