"""What is drawn over a section on demand: legs, the inscribed triangle, throats."""

from __future__ import annotations

import math
from typing import Final, Protocol

from geometry.curves import Arc, Curve, Segment, Vec
from geometry.lengths import Unit
from geometry.measures import Measures
from geometry.section import Section
from trainer.bench.translation import translate
from trainer.canvas.scene import Area, Dimension, Line, Mark, Overlay
from trainer.corners.state import Drawn
from trainer.corners.words import length_word
from trainer.look.tokens import Role

__all__ = ["Measured", "drawn_over", "face_middle", "nearest_to_root"]

_ONE: Final = 0.05
"""mm within which two throats are one."""


class Measured(Protocol):
    """Whatever has a section and its measures."""

    @property
    def section(self) -> Section:
        """The section."""

    @property
    def measures(self) -> Measures:
        """Its true measures."""


def nearest_to_root(section: Section) -> Vec:
    """Return the point of the face nearest to the root, mm: where the actual throat ends.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> [round(v, 9) for v in nearest_to_root(Section.of(Joint(), Bead(6.0, 8.0)))]
    [3.84, 2.88]
    """
    return min((_nearest(curve) for curve in section.face), key=lambda point: math.hypot(*point))


def _nearest(curve: Curve) -> Vec:
    ends = [curve.start, curve.end]
    if isinstance(curve, Segment):
        along = curve.start_direction
        before = -(curve.start[0] * along[0] + curve.start[1] * along[1])
        if 0.0 < before < curve.length:
            ends.append((curve.start[0] + before * along[0], curve.start[1] + before * along[1]))
    elif isinstance(curve, Arc):
        way = math.atan2(-curve.centre[1], -curve.centre[0])
        ends += [
            (
                curve.centre[0] + curve.radius * math.cos(angle),
                curve.centre[1] + curve.radius * math.sin(angle),
            )
            for angle in (way, way + math.pi)
            if curve.spans(math.atan2(math.sin(angle), math.cos(angle)))
        ]
    return min(ends, key=lambda point: math.hypot(*point))


def face_middle(section: Section) -> Vec:
    """Return the middle of the face, mm: the middle of the chord, off by the crown.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> bulging = Section.of(Joint(), Bead(8.0, 8.0, crown=math.sqrt(2.0)))
    >>> [round(v, 6) for v in face_middle(bulging)]
    [5.0, 5.0]
    """
    (ax, ay), (bx, by) = section.toe("base"), section.toe("upright")
    long = math.hypot(bx - ax, by - ay)
    crown = section.bead.crown
    return (
        (ax + bx) / 2.0 + crown * (by - ay) / long,
        (ay + by) / 2.0 - crown * (bx - ax) / long,
    )


def drawn_over(corner: Measured, wanted: frozenset[Drawn], unit: Unit) -> tuple[Overlay, ...]:
    """Return what is drawn over a corner's picture."""
    overlays: list[Overlay] = []
    if "triangle" in wanted:
        overlays += _triangle(corner, unit)
    if "legs" in wanted:
        overlays += _legs(corner, unit)
    if "throats" in wanted:
        overlays += _throats(corner, unit)
    return tuple(overlays)


def _legs(corner: Measured, unit: Unit) -> list[Overlay]:
    section, root = corner.section, (0.0, 0.0)
    return [
        Dimension(
            root,
            section.toe("base"),
            translate("Corners", "base leg {length}").format(
                length=length_word(corner.measures.leg_base, unit)
            ),
            "limit",
            offset=-22.0,
        ),
        Dimension(
            root,
            section.toe("upright"),
            translate("Corners", "upright leg {length}").format(
                length=length_word(corner.measures.leg_upright, unit)
            ),
            "limit",
            offset=22.0,
        ),
    ]


def _triangle(corner: Measured, unit: Unit) -> list[Overlay]:
    joint, size = corner.section.joint, corner.measures.effective_size
    return [
        Area(
            ((0.0, 0.0), joint.point("base", size), joint.point("upright", size)),
            "truth",
            translate("Corners", "size {length}").format(length=length_word(size, unit)),
        )
    ]


def _throats(corner: Measured, unit: Unit) -> list[Overlay]:
    """The three throats, each from the root; those that are one line have one label."""
    section, measures, root = corner.section, corner.measures, (0.0, 0.0)
    out, effective = section.joint.bisector, measures.effective_throat
    throats: list[tuple[str, Vec, Role]] = [
        (translate("Corners", "actual"), nearest_to_root(section), "fault"),
        (
            translate("Corners", "theoretical"),
            _theoretical_foot(section, measures.theoretical_throat),
            "shown",
        ),
        (
            translate("Corners", "effective"),
            (out[0] * effective, out[1] * effective),
            "truth",
        ),
    ]
    overlays: list[Overlay] = []
    while throats:
        _, foot, role = throats[0]
        same = [throat for throat in throats if math.dist(throat[1], foot) < _ONE]
        throats = [throat for throat in throats if throat not in same]
        label = translate("Corners", "{which} {length}").format(
            which=translate("Corners", " = ").join(name for name, _, _ in same),
            length=length_word(math.hypot(*foot), unit),
        )
        overlays += [
            Line((root, foot), role, dashed=role == "shown"),
            Mark(foot, role, label, shape="disc"),
        ]
    return overlays


def _theoretical_foot(section: Section, throat: float) -> Vec:
    """Where the theoretical throat ends: on the chord, or on the face where that is nearer."""
    near = nearest_to_root(section)
    if math.hypot(*near) <= throat + 1e-9:
        return near
    return _nearest(Segment(section.toe("base"), section.toe("upright")))
