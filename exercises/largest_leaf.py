"""The largest leaf that a weld still meets, at both legs and, where the face is hollow, the throat.

A weld whose size is nearer to a leaf's than that leaf's doubt can't be told from one on the other
side of it: then the leaf below or above is right as well.
"""

from __future__ import annotations

from bisect import bisect_right

from exercises.coupon import Coupon
from exercises.doubt import doubt
from exercises.gauging import leg_leaf_size
from exercises.judging import size_row
from geometry.leaf import RACKS, RackName, rack
from geometry.measures import measure

__all__ = ["largest_leaf", "rack_of", "right_sizes", "weld_leaf_size"]

_SAME = 1e-6
"""mm: sizes closer than this are the same size, stated in different units."""


def weld_leaf_size(coupon: Coupon) -> float:
    """Return the size (mm) of the leaf that a weld just meets everywhere it has to be gauged.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> weld_leaf_size(Coupon("a", Section.of(Joint(), Bead(8.5, 7.3, crown=0.8)),
    ...                       Callout(8.0, "leg", "8 mm"), task="size"))
    7.3
    """
    measures, joint, row = measure(coupon.section), coupon.section.joint, size_row(coupon)
    legs = {"base": measures.leg_base, "upright": measures.leg_upright}
    sizes = [leg_leaf_size(legs[member], joint) for member in row.legs]
    return min([*sizes, measures.effective_size] if row.throat or not sizes else sizes)


def rack_of(mark: str) -> RackName:
    """Return the rack that a leaf hangs on.

    Raises
    ------
    ValueError
        If none has such a leaf.

    Examples
    --------
    >>> rack_of("5/16 in"), rack_of("a 4 mm")
    ('inch', 'throat')
    """
    for name in RACKS:
        if any(leaf.mark == mark for leaf in rack(name)):
            return name
    raise ValueError(f"no rack has a leaf {mark!r}")


def largest_leaf(coupon: Coupon, name: RackName) -> str | None:
    """Return the mark of a rack's largest leaf that the weld meets; None if it meets none."""
    return _below(weld_leaf_size(coupon), name)


def _below(size: float, name: RackName) -> str | None:
    leaves = rack(name)
    at = bisect_right([leaf.size for leaf in leaves], size + _SAME)
    return leaves[at - 1].mark if at else None


def right_sizes(coupon: Coupon, name: RackName) -> frozenset[str]:
    """Return the marks of a rack that may rightly be called the largest that the weld meets.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> near = Coupon("a", Section.of(Joint(), Bead(8.5, 7.95, crown=0.8)),
    ...               Callout(8.0, "leg", "8 mm"), task="size")
    >>> sorted(right_sizes(near, "metric"))
    ['7 mm', '8 mm']
    """
    size = weld_leaf_size(coupon)
    unsure = doubt("throat" if size_row(coupon).throat else "leg", coupon.eye_limit)
    found = {_below(size + off, name) for off in (-unsure, 0.0, unsure)}
    return frozenset(mark for mark in found if mark is not None)
