"""A traced face: its points put in and taken out, and a face changed from arc to trace and back.

No Qt here. Lengths are mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from exercises.coupon import Coupon
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.curves import Arc, Vec
from trainer.shop.documents import object_at, with_value

__all__ = [
    "arc_document",
    "point_at",
    "trace_document",
    "traced_document",
    "with_point",
    "without_point",
]

_DIGITS: Final = 4
_ARC_POINTS: Final = 17
"""Points that an arc is traced by: few enough to be held one by one."""


def trace_document(coupon: Coupon, points: Sequence[Vec]) -> Document:
    """Return the coupon's document with its face traced by other points.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> plain = coupon_of(PLAIN, NO_RULES)
    >>> trace_document(plain, [(8.0, 0.0), (0.0, 8.0)])["bead"]
    {'trace': [[8.0, 0.0], [0.0, 8.0]]}
    """
    bead = object_at(coupon.source, ("bead",))
    for key in ("leg_base", "leg_upright", "crown"):
        bead.pop(key, None)
    listed: list[Json] = [[round(x, _DIGITS) + 0.0, round(y, _DIGITS) + 0.0] for x, y in points]
    return with_value(coupon.source, ("bead",), {"trace": listed, **_rest(bead)})


def _rest(bead: Document) -> Document:
    return {key: value for key, value in bead.items() if key != "trace"}


def traced_document(coupon: Coupon) -> Document:
    """Return the coupon's document with its arc as a trace of points upon it."""
    (curve,) = coupon.section.face
    count = _ARC_POINTS - 1
    if isinstance(curve, Arc):
        turns = [curve.first + curve.sweep * i / count for i in range(1, count)]
        (x, y), radius = curve.centre, curve.radius
        bent = [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]
        points = [curve.start, *bent, curve.end]
    else:
        (ax, ay), (bx, by) = curve.start, curve.end
        shares = [i / count for i in range(count + 1)]
        points = [(ax + share * (bx - ax), ay + share * (by - ay)) for share in shares]
    return trace_document(coupon, points)


def arc_document(coupon: Coupon) -> Document:
    """Return the coupon's document with its trace made an arc of the same legs and crown.

    The crown is that of the point that lies farthest off the line from toe to toe.
    """
    bead = {
        key: value for key, value in object_at(coupon.source, ("bead",)).items() if key != "trace"
    }
    section = coupon.section
    (ax, ay), (bx, by) = section.toe("base"), section.toe("upright")
    long = math.hypot(bx - ax, by - ay)
    out = ((by - ay) / long, (ax - bx) / long)
    offs = [(x - ax) * out[0] + (y - ay) * out[1] for x, y in section.bead.trace or ()]
    crown = max(offs, key=abs, default=0.0)
    drawn: Document = {
        "leg_base": round(section.bead.leg_base, 3),
        "leg_upright": round(section.bead.leg_upright, 3),
        "crown": round(crown, 3) + 0.0,
    }
    return with_value(coupon.source, ("bead",), {**drawn, **bead})


def point_at(points: Sequence[Vec], at: Vec) -> tuple[int, Vec, float]:
    """Return where a trace is nearest to a place: after which point, where, how far off (mm).

    Examples
    --------
    >>> point_at([(8.0, 0.0), (8.0, 6.0), (0.0, 8.0)], (9.0, 3.0))
    (0, (8.0, 3.0), 1.0)
    """
    found: list[tuple[float, int, Vec]] = []
    for index, (a, b) in enumerate(pairwise(points)):
        run = ((b[0] - a[0]), (b[1] - a[1]))
        square = run[0] ** 2 + run[1] ** 2
        share = ((at[0] - a[0]) * run[0] + (at[1] - a[1]) * run[1]) / square if square else 0.0
        share = min(max(share, 0.0), 1.0)
        near = (a[0] + share * run[0], a[1] + share * run[1])
        found.append((math.dist(near, at), index, near))
    off, index, near = min(found)
    return index, near, off


def with_point(points: Sequence[Vec], after: int, at: Vec | None = None) -> tuple[Vec, ...]:
    """Return a trace with a point more, after one of them: at a place, or half-way to the next.

    Examples
    --------
    >>> with_point(((8.0, 0.0), (0.0, 8.0)), 0)
    ((8.0, 0.0), (4.0, 4.0), (0.0, 8.0))
    """
    after = min(max(after, 0), len(points) - 2)
    (ax, ay), (bx, by) = points[after], points[after + 1]
    new = at if at is not None else ((ax + bx) / 2.0, (ay + by) / 2.0)
    return (*points[: after + 1], new, *points[after + 1 :])


def without_point(points: Sequence[Vec], index: int) -> tuple[Vec, ...]:
    """Return a trace without one of its points; the first and the last stay.

    Examples
    --------
    >>> without_point(((8.0, 0.0), (5.0, 5.0), (0.0, 8.0)), 1)
    ((8.0, 0.0), (0.0, 8.0))
    """
    if not 0 < index < len(points) - 1:
        return tuple(points)
    return (*points[:index], *points[index + 1 :])
