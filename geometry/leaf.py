"""Leaves of a fillet weld gauge, and the racks they hang on.

In a leaf's own frame the virtual corner is the origin, the long edge lies along +x, the end edge
along +y, and the blade between them. Each leaf has two ends, so two edges: the **leg edge**
(single arc, with a tip) and the **throat edge** (double arc, with a spur).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache, cached_property
from typing import Final, Literal

from geometry.bodies import Body, Piece
from geometry.curves import Segment, Vec, arc_by_radius
from geometry.faults import Fault, GeometryError, number_faults
from geometry.lengths import MM_PER_INCH, inch_fraction, parse_length
from geometry.tolerances import SMALLEST

__all__ = ["EDGES", "RACKS", "Edge", "Leaf", "RackName", "leaf_of_mark", "rack"]

Edge = Literal["leg", "throat"]
EDGES: Final[tuple[Edge, Edge]] = ("leg", "throat")

RackName = Literal["metric", "inch", "throat"]
RACKS: Final[tuple[RackName, ...]] = ("metric", "inch", "throat")

_LARGEST: Final = 1000.0
"""mm: as long as the longest member."""

_METRIC: Final = (3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 25)
_SIXTEENTHS: Final = (2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16)
_THROATS: Final = (3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 8.0, 10.0, 12.0)


@dataclass(frozen=True)
class Leaf:
    """One leaf, held so that one of its edges works.

    Parameters
    ----------
    size
        Leg size S in mm; a throat-marked leaf's is its mark times the root of two.
    mark
        What is engraved: ``8 mm``, ``5/16 in``, ``a 4 mm``.
    edge
        The end that faces the joint.
    wear
        mm by which the tip and the spur have worn back, at most half the size.

    Raises
    ------
    GeometryError
        If no leaf can have that size, wear or edge.

    Examples
    --------
    >>> leaf = leaf_of_mark("8 mm")
    >>> leaf.tip, leaf.swapped().spur
    ((0.0, 8.0), (4.0, 4.0))
    """

    size: float
    mark: str
    edge: Edge = "leg"
    wear: float = 0.0

    def __post_init__(self) -> None:
        found = number_faults("/leaf", {"size": self.size, "wear": self.wear})
        if not found and not SMALLEST <= self.size <= _LARGEST:
            found.append(_range_fault("size", self.size, SMALLEST, _LARGEST))
        elif not found and not abs(self.wear) <= self.size / 2.0:
            found.append(_range_fault("wear", self.wear, -self.size / 2.0, self.size / 2.0))
        if self.edge not in EDGES:
            text = f"edge is {self.edge!r}"
            found.append(Fault("/leaf/edge", "no-such-edge", text, "leg or throat"))
        if found:
            raise GeometryError(found)

    def swapped(self) -> Leaf:
        """The same leaf by its other end."""
        return replace(self, edge="throat" if self.edge == "leg" else "leg")

    def with_edge(self, edge: Edge) -> Leaf:
        """The same leaf with `edge` to the joint."""
        return replace(self, edge=edge)

    def worn(self, wear: float) -> Leaf:
        """The same leaf, worn by `wear` mm."""
        return replace(self, wear=wear)

    @property
    def tip(self) -> Vec:
        """The leg edge's tip, mm in the leaf's frame."""
        return (0.0, self.size + self.wear)

    @property
    def spur(self) -> Vec:
        """The throat edge's spur, mm in the leaf's frame."""
        at = self.size / 2.0 + self.wear / math.sqrt(2.0)
        return (at, at)

    @property
    def point(self) -> Vec:
        """The tip or the spur: whichever the working edge reads with."""
        return self.tip if self.edge == "leg" else self.spur

    @property
    def long_edge(self) -> tuple[Vec, Vec]:
        """Ends of the long edge, from the corner outward, mm."""
        near = 1.5 if self.edge == "leg" else 1.4
        return (near * self.size, 0.0), (3.0 * self.size, 0.0)

    @property
    def end_edge(self) -> tuple[Vec, Vec]:
        """Ends of the end edge, from the corner outward, mm."""
        if self.edge == "leg":
            return self.tip, (0.0, 2.2 * self.size)
        return (0.0, 1.4 * self.size), (0.0, 3.0 * self.size)

    @property
    def handle(self) -> Vec:
        """The point of the blade that a hand presses on, mm.

        It lies where the push passes between the supports of a leaf that is home: over the long
        edge's middle for the leg edge, on the bisector for the throat edge. Pushed elsewhere a
        leaf would be right to tip.
        """
        if self.edge == "leg":
            return (2.2 * self.size, 1.1 * self.size)
        return (1.7 * self.size, 1.7 * self.size)

    @cached_property
    def body(self) -> Body:
        """The blade's boundary in the leaf's frame.

        Pieces: ``long``, ``end``, ``arc`` (both arcs of the throat edge), ``back``.
        """
        return _leg_body(self) if self.edge == "leg" else _throat_body(self)

    @cached_property
    def turned_body(self) -> Body:
        """The boundary of the leaf laid on its other side: mirrored in the long edge."""
        return self.body.mirrored()

    def __hash__(self) -> int:
        return hash((self.size, self.mark, self.edge, self.wear))


def _range_fault(key: str, value: float, lowest: float, highest: float) -> Fault:
    return Fault(
        f"/leaf/{key}",
        "size-out-of-range",
        f"{key} is {value:g} mm",
        f"{lowest:g} to {highest:g} mm",
        {"key": key, "value": value, "lowest": lowest, "highest": highest},
    )


def _leg_body(leaf: Leaf) -> Body:
    size = leaf.size
    near, far = leaf.long_edge
    tip, top = leaf.end_edge
    corner = (far[0], top[1])
    return Body(
        "leaf",
        (
            Piece("long", Segment(near, far)),
            Piece("back", Segment(far, corner)),
            Piece("back", Segment(corner, top)),
            Piece("end", Segment(top, tip)),
            Piece("arc", arc_by_radius(tip, near, 1.2 * size, convex=False)),
        ),
    )


def _throat_body(leaf: Leaf) -> Body:
    size = leaf.size
    near, far = leaf.long_edge
    low, top = leaf.end_edge
    corner = (far[0], top[1])
    return Body(
        "leaf",
        (
            Piece("long", Segment(near, far)),
            Piece("back", Segment(far, corner)),
            Piece("back", Segment(corner, top)),
            Piece("end", Segment(top, low)),
            Piece("arc", arc_by_radius(low, leaf.spur, 1.06 * size, convex=False)),
            Piece("arc", arc_by_radius(leaf.spur, near, 1.06 * size, convex=False)),
        ),
    )


def _metric_leaf(size: float) -> Leaf:
    return Leaf(float(size), f"{size:g} mm")


def _inch_leaf(sixteenths: float) -> Leaf:
    size = sixteenths * MM_PER_INCH / 16.0
    return Leaf(size, f"{inch_fraction(size)} in")


def _throat_leaf(throat: float) -> Leaf:
    return Leaf(throat * math.sqrt(2.0), f"a {throat:g} mm")


_SETS: Final[dict[RackName, tuple[tuple[float, ...], Callable[[float], Leaf]]]] = {
    "metric": (_METRIC, _metric_leaf),
    "inch": (_SIXTEENTHS, _inch_leaf),
    "throat": (_THROATS, _throat_leaf),
}


def rack(name: RackName) -> tuple[Leaf, ...]:
    """Return the leaves of a rack, smallest first.

    Parameters
    ----------
    name
        ``metric`` (3 to 25 mm), ``inch`` (1/8 to 1 in) or ``throat`` (metric, marked a 3 to a 12).

    Examples
    --------
    >>> [leaf.mark for leaf in rack("inch")][:4], len(rack("metric")), rack("throat")[1].mark
    (['1/8 in', '3/16 in', '1/4 in', '5/16 in'], 12, 'a 3.5 mm')
    """
    if name not in _SETS:
        text = f"there is no rack {name!r}"
        raise GeometryError([Fault("/rack", "no-such-rack", text, ", ".join(RACKS))])
    return _hung(name)


@cache
def _hung(name: RackName) -> tuple[Leaf, ...]:
    """The leaves of a rack: frozen values, so one set of them serves all, with the bodies built."""
    sizes, make = _SETS[name]
    return tuple(make(size) for size in sizes)


def leaf_of_mark(mark: str, edge: Edge = "leg", wear: float = 0.0) -> Leaf:
    """Return the leaf with this mark from any rack.

    A throat mark is in millimetres, with or without the unit: ``a 5 mm``, ``a5``.

    Raises
    ------
    GeometryError
        If no rack has it; the message shows the mark with its unit where only that is missing, or
        lists the marks there are.

    Examples
    --------
    >>> round(leaf_of_mark("a 4 mm").size, 4), leaf_of_mark(" 5/16in ").mark
    (5.6569, '5/16 in')
    >>> leaf_of_mark("a5").mark
    'a 5 mm'
    """
    words = mark.strip()
    throat = words[:1].lower() == "a"
    found = _find(words[1:].strip() if throat else words, throat=throat)
    if found is not None:
        return replace(found, edge=edge, wear=wear)
    if not throat:
        meant = [leaf.mark for unit in ("mm", "in") if (leaf := _find(f"{words} {unit}"))]
        if meant:
            raise _no_leaf(f"{mark!r} has no unit", " or ".join(meant))
    marks = "; ".join(", ".join(leaf.mark for leaf in rack(name)) for name in RACKS)
    raise _no_leaf(f"no rack has a leaf {mark!r}", f"one of: {marks}")


def _no_leaf(text: str, right: str) -> GeometryError:
    return GeometryError([Fault("", "no-such-leaf", text, right)])


def _find(words: str, *, throat: bool = False) -> Leaf | None:
    """The leaf of a length with its unit; of a throat in millimetres, the unit left out or not."""
    try:
        length = parse_length(words, default_unit="mm" if throat else None)
    except ValueError:
        return None
    in_mm = "mm" in words.lower() or (throat and words[-1:].isdigit())
    for name in RACKS:
        for leaf in rack(name):
            if throat == (name == "throat"):
                size = leaf.size / math.sqrt(2.0) if throat else leaf.size
                if leaf.mark.endswith("mm") == in_mm and abs(size - length) < 1e-6:
                    return leaf
    return None
