"""A zoo of sections, leaves and poses at the edge of what can be, and beyond it.

What can be must be answered right; what can't must be refused by a fault that names the place.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any, Final

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint
from geometry.leaf import Leaf
from geometry.pose import Pose
from geometry.section import Section

__all__ = ["BAD_LEAVES", "BAD_POSES", "BAD_SECTIONS", "LEAVES", "POSES", "SECTIONS"]

T: Final = Joint()
LONG: Final = Joint(base_length=1000.0, upright_length=1000.0)
OPEN: Final = Joint(root_opening=3.0)
NUMBERLESS: Final[dict[str, Any]] = {
    "nan": math.nan, "inf": math.inf, "-inf": -math.inf, "word": "8", "none": None, "true": True,
    "endless": 10**400, "complex": 8j,
}  # fmt: skip


def _traced(*points: tuple[float, float], joint: Joint = T) -> Section:
    return Section.of(joint, Bead.traced(points, joint))


def _circle(count: int) -> tuple[tuple[float, float], ...]:
    turns = [math.pi / 2.0 * i / (count - 1) for i in range(count)]
    inner = [(8.0 * math.cos(turn), 8.0 * math.sin(turn)) for turn in turns[1:-1]]
    return ((8.0, 0.0), *inner, (0.0, 8.0))


SECTIONS: Final[dict[str, Callable[[], Section]]] = {
    "sliver: the least legs there are": lambda: Section.of(T, Bead(0.0101, 0.0101)),
    "sliver: one leg a thousand times the other": lambda: Section.of(T, Bead(0.02, 20.0)),
    "sliver: an acute corner almost filled": lambda: Section.of(Joint(60.0), Bead(30.0, 0.5)),
    "tiny": lambda: Section.of(T, Bead(0.05, 0.06, crown=-0.005)),
    "huge": lambda: Section.of(LONG, Bead(900.0, 950.0, crown=100.0)),
    "huge and hollow": lambda: Section.of(LONG, Bead(900.0, 900.0, crown=-180.0)),
    "as hollow as can be": lambda: Section.of(T, Bead(8.0, 8.0, crown=-2.3431)),
    "as proud as can be": lambda: Section.of(T, Bead(8.0, 8.0, crown=13.65)),
    "a crown of a millionth": lambda: Section.of(T, Bead(8.0, 8.0, crown=1.1e-6)),
    "a crown of less than that": lambda: Section.of(T, Bead(8.0, 8.0, crown=1e-300)),
    "collinear points": lambda: _traced((8.0, 0.0), (6.0, 2.0), (4.0, 4.0), (0.0, 8.0)),
    "duplicate points": lambda: _traced((8.0, 0.0), (4.5, 4.5), (4.5, 4.5), (0.0, 8.0)),
    "points a hair apart": lambda: _traced((8.0, 0.0), (4.5, 4.5), (4.5, 4.5 + 1e-9), (0.0, 8.0)),
    "a trace of two points": lambda: _traced((8.0, 0.0), (0.0, 8.0)),
    "a needle of a trace": lambda: _traced((8.0, 0.0), (3.0, 3.0), (20.0, 20.0), (3.1, 3.2),
                                           (0.0, 8.0)),
    "a trace that goes back": lambda: _traced((8.0, 0.0), (9.0, 2.0), (4.0, 3.0), (0.0, 8.0)),
    "many points": lambda: _traced(*_circle(1500)),
    "steps": lambda: _traced((8.0, 0.0), (8.0, 4.0), (4.0, 4.0), (4.0, 8.0), (0.0, 8.0)),
    "an open root": lambda: Section.of(OPEN, Bead(8.0, 3.01)),
    "a lip, a groove and caps that meet": lambda: Section.of(
        T,
        Bead(8.0, 8.0, undercut_upright=Undercut(0.4, 1.0), overlap_base=Overlap(3.0)),
        (Spatter("base", 12.5, 1.0), Spatter("base", 15.5, 1.0), Spatter("upright", 10.5, 1.0)),
    ),
    "all angles but a square: acute": lambda: Section.of(Joint(60.0), Bead(8.0, 8.0)),
    "all angles but a square: obtuse": lambda: Section.of(Joint(135.0), Bead(8.0, 8.0)),
    "thick plates": lambda: Section.of(Joint(120.0, 0.0, 200.0, 90.0), Bead(8.0, 8.0)),
    "a toe a hair before the end": lambda: Section.of(T, Bead(59.999999, 8.0)),
}  # fmt: skip
"""Sound sections, each at some edge."""


def _jointed(key: str, value: Any) -> Section:
    return Section.of(replace(T, **{key: value}), Bead(8.0, 8.0))


def _drawn(key: str, value: Any) -> Section:
    return Section.of(T, replace(Bead(8.0, 8.0), **{key: value}))


def _cut(key: str, value: Any) -> Section:
    groove = replace(Undercut(0.4, 1.0), **{key: value})
    return Section.of(T, Bead(8.0, 8.0, undercut_base=groove))


def _lapped(value: Any) -> Section:
    return Section.of(T, Bead(8.0, 8.0, overlap_upright=Overlap(value)))


def _spattered(key: str, value: Any) -> Section:
    drop = replace(Spatter("base", 30.0, 1.0), **{key: value})
    return Section.of(T, Bead(8.0, 8.0), (drop,))


def _moved_point(place: int, value: Any) -> Section:
    points: list[tuple[Any, Any]] = [(8.0, 0.0), (4.5, 4.5), (0.0, 8.0)]
    points[place] = (points[place][0], value)
    return _traced(*points)


def _leaf(key: str, value: Any) -> Leaf:
    return replace(Leaf(8.0, "leaf"), **{key: value})


def _pose(key: str, value: Any) -> Pose:
    return replace(Pose(0.0, 0.0), **{key: value})


def _number_kinds() -> dict[str, tuple[Callable[[], Section], str]]:
    """Every number of a section, put to what is none."""
    found: dict[str, tuple[Callable[[], Section], str]] = {}
    for name, value in NUMBERLESS.items():
        for key in ("angle", "root_opening", "base_thickness", "upright_thickness", "base_length",
                    "upright_length"):  # fmt: skip
            found[f"joint {key} {name}"] = partial(_jointed, key, value), f"/joint/{key}"
        for key in ("leg_base", "leg_upright", "crown"):
            found[f"bead {key} {name}"] = partial(_drawn, key, value), f"/bead/{key}"
        for key in ("depth", "width"):
            found[f"undercut {key} {name}"] = (
                partial(_cut, key, value),
                f"/bead/undercut_base/{key}",
            )
        found[f"overlap {name}"] = partial(_lapped, value), "/bead/overlap_upright/length"
        for key in ("at", "height"):
            found[f"spatter {key} {name}"] = partial(_spattered, key, value), f"/spatter/0/{key}"
        for place in range(3):
            found[f"trace {place} {name}"] = (
                partial(_moved_point, place, value),
                f"/bead/trace/{place}/1",
            )
    return found


BAD_SECTIONS: Final[dict[str, tuple[Callable[[], Section], str]]] = {
    "empty": (lambda: Section.of(T, Bead(0.0, 0.0)), "/bead/leg_base"),
    "a leg below nothing": (lambda: Section.of(T, Bead(-8.0, 8.0)), "/bead/leg_base"),
    "no points": (_traced, "/bead/trace"),
    "one point": (lambda: _traced((8.0, 0.0)), "/bead/trace"),
    "one point twice": (lambda: _traced((8.0, 0.0), (8.0, 0.0)), "/bead/trace"),
    "all points on the base": (lambda: _traced((8.0, 0.0), (4.0, 0.0), (0.0, 0.0)), "/bead/trace"),
    "reversed": (lambda: _traced((0.0, 8.0), (4.5, 4.5), (8.0, 0.0)), "/bead/trace"),
    "self-touching at a point": (
        lambda: _traced((8.0, 0.0), (4.0, 4.0), (6.0, 6.0), (2.0, 7.0), (4.0, 4.0), (0.0, 8.0)),
        "/bead/trace",
    ),
    "self-touching along a side": (
        lambda: _traced((8.0, 0.0), (5.0, 5.0), (9.0, 9.0), (5.0, 5.0), (0.0, 8.0)),
        "/bead/trace",
    ),
    "crossing itself": (
        lambda: _traced((8.0, 0.0), (2.0, 6.0), (6.0, 6.0), (1.0, 2.0), (0.0, 8.0)),
        "/bead/trace",
    ),
    "through a member": (lambda: _traced((8.0, 0.0), (4.0, -1.0), (0.0, 8.0)), "/bead/trace"),
    "on the root": (lambda: _traced((8.0, 0.0), (0.0, 0.0), (0.0, 8.0)), "/bead/trace"),
    "over the member's end": (lambda: Section.of(T, Bead(61.0, 8.0)), "/bead/leg_base"),
    "endlessly long": (lambda: Section.of(T, Bead(1e300, 8.0)), "/bead/leg_base"),
    "too hollow": (lambda: Section.of(T, Bead(8.0, 8.0, crown=-2.4)), "/bead/crown"),
    "too proud": (lambda: Section.of(T, Bead(8.0, 8.0, crown=13.66)), "/bead/crown"),
    "a joint that is shut": (lambda: Section.of(Joint(0.0), Bead(8.0, 8.0)), "/joint/angle"),
    "a joint that is straight": (lambda: Section.of(Joint(180.0), Bead(8.0, 8.0)), "/joint/angle"),
    "plates of no thickness": (
        lambda: Section.of(Joint(base_thickness=0.0), Bead(8.0, 8.0)), "/joint/base_thickness"
    ),
    "a bead that the opening swallows": (
        lambda: Section.of(OPEN, Bead(8.0, 3.0)), "/bead/leg_upright"
    ),
    "spatter in the weld": (
        lambda: Section.of(T, Bead(8.0, 8.0), (Spatter("base", 8.0, 1.0),)), "/spatter/0/at"
    ),
    "spatter nowhere": (
        lambda: Section.of(T, Bead(8.0, 8.0), (Spatter("roof", 20.0, 1.0),)),  # type: ignore[arg-type]
        "/spatter/0/on",
    ),
    **_number_kinds(),
}  # fmt: skip
"""Sections that can't be, each with the place that its fault must name."""

LEAVES: Final[dict[str, Callable[[], Leaf]]] = {
    "tiny": lambda: Leaf(0.01, "leaf"),
    "small": lambda: Leaf(3.175, "leaf"),
    "usual": lambda: Leaf(8.0, "leaf"),
    "worn": lambda: Leaf(3.175, "leaf", wear=1.0),
    "worn as far as can be": lambda: Leaf(8.0, "leaf", wear=4.0),
    "less than worn": lambda: Leaf(8.0, "leaf", wear=-1.0),
    "huge": lambda: Leaf(1000.0, "leaf"),
}
"""Sound leaves; each is held by both ends."""

BAD_LEAVES: Final[dict[str, tuple[Callable[[], Leaf], str]]] = {
    "empty": (lambda: Leaf(0.0, "leaf"), "/leaf/size"),
    "below nothing": (lambda: Leaf(-8.0, "leaf"), "/leaf/size"),
    "sliver": (lambda: Leaf(1e-9, "leaf"), "/leaf/size"),
    "endlessly large": (lambda: Leaf(1e300, "leaf"), "/leaf/size"),
    "worn away": (lambda: Leaf(8.0, "leaf", wear=9.0), "/leaf/wear"),
    "no such end": (lambda: Leaf(8.0, "leaf", "end"), "/leaf/edge"),  # type: ignore[arg-type]
    **{f"size {n}": (partial(_leaf, "size", v), "/leaf/size") for n, v in NUMBERLESS.items()},
    **{f"wear {n}": (partial(_leaf, "wear", v), "/leaf/wear") for n, v in NUMBERLESS.items()},
}
"""Leaves that can't be, each with the place that its fault must name."""

POSES: Final[dict[str, Pose]] = {
    "home": Pose(0.0, 0.0),
    "on its other side": Pose(0.0, 0.0, 90.0, turned=True),
    "in the air": Pose(30.0, 30.0, 10.0),
    "deep in steel": Pose(-20.0, -8.0, 45.0),
    "behind": Pose(-30.0, 20.0, 180.0),
    "far": Pose(9e5, -9e5, -90.0),
    "wound up": Pose(0.0, 0.0, 36_000_000.0),
    "a hair's turn": Pose(1e-300, -1e-300, 1e-170),
}

BAD_POSES: Final[dict[str, tuple[Callable[[], Pose], str]]] = {
    **{
        f"{key} {n}": (partial(_pose, key, v), f"/pose/{key}")
        for key in ("x", "y", "angle")
        for n, v in NUMBERLESS.items()
        # Poses come of files, which know their types, and of sums: True is 1 there.
        if n not in ("word", "none", "complex", "true")
    },
    "endlessly wound up": (lambda: Pose(0.0, 0.0, 1e300), "/pose"),
    "a light-year off": (lambda: Pose(9.5e18, 0.0), "/pose"),
}  # fmt: skip
