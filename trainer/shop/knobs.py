"""What can be turned on a section: where each handle stands, which way it goes, what it changes.

No Qt here. Lengths are mm, angles degrees. A knob is named by its key: ``leg_base``, ``crown``,
``undercut_base.depth``, ``spatter.0.at``, ``trace.12`` and so on.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from exercises.coupon import Coupon
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.curves import Vec
from geometry.joint import MEMBERS, Joint, Member
from geometry.section import Section
from trainer.shop.documents import is_number, value_at, with_value

__all__ = ["Form", "Kind", "Knob", "document_with", "knob_of", "knobs_of", "path_of", "trace_of"]

Kind = Literal["length", "angle"]

Form = Literal["disc", "diamond", "square", "triangle"]
"""The shape of a handle: what goes along a member, what shapes the face, what lies at a toe or on
a plate, what moves the joint."""

_ANGLE_OUT: Final = 1.75
"""Legs from the root at which the angle's handle stands on the upright."""


@dataclass(frozen=True, slots=True)
class Knob:
    """One value of a section, and the handle that moves it.

    Parameters
    ----------
    key
        Which value.
    kind
        What it is measured in: mm or degrees.
    value
        What it stands at.
    at
        Where its handle points to, mm.
    way
        Unit vector along which the handle goes as the value grows.
    per_mm
        How much of the value one mm of that way is.
    aside
        Unit vector towards which the handle stands off its point.
    form
        Its shape.
    """

    key: str
    kind: Kind
    value: float
    at: Vec
    way: Vec
    per_mm: float
    aside: Vec
    form: Form


def path_of(key: str) -> tuple[str | int, ...]:
    """Return the path of a knob's value below the coupon.

    Examples
    --------
    >>> path_of("undercut_base.depth"), path_of("spatter.0.at"), path_of("angle")
    (('bead', 'undercut_base', 'depth'), ('spatter', 0, 'at'), ('joint', 'angle'))
    """
    parts = tuple(int(part) if part.isdecimal() else part for part in key.split("."))
    if parts[0] in ("angle", "root_opening") or str(parts[0]).endswith(("_thickness", "_length")):
        return ("joint", *parts)
    return parts if parts[0] == "spatter" else ("bead", *parts)


def trace_of(coupon: Coupon) -> tuple[Vec, ...] | None:
    """Return the points of a traced face, mm; None for a face that is an arc."""
    return coupon.section.bead.trace


def knob_of(section: Section, key: str) -> Knob | None:
    """Return a knob by its key, as far as the section has it."""
    return next((knob for knob in knobs_of(section) if knob.key == key), None)


def knobs_of(section: Section) -> tuple[Knob, ...]:
    """Return every knob of a section but the points of a trace, in the order of Tab.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> [knob.key for knob in knobs_of(Section.of(Joint(), Bead(8.0, 7.0, crown=1.0)))]
    ['leg_base', 'leg_upright', 'crown', 'root_opening', 'angle']
    """
    bead, joint = section.bead, section.joint
    knobs = [_leg(section, member) for member in MEMBERS]
    if bead.trace is None:
        knobs.append(_crown(section))
    for member in MEMBERS:
        knobs += _at_toe(section, member)
    for index, drop in enumerate(section.spatter):
        knobs += _drop(joint, index, drop.on, drop.at, drop.height)
    return (*knobs, _opening(joint), _angle(section))


def _back(way: Vec) -> Vec:
    return (-way[0], -way[1])


def _leg(section: Section, member: Member) -> Knob:
    joint = section.joint
    aside = _back(joint.normal(member))
    leg, along = section.bead.leg(member), joint.direction(member)
    return Knob(f"leg_{member}", "length", leg, section.toe(member), along, 1.0, aside, "disc")


def _crown(section: Section) -> Knob:
    (ax, ay), (bx, by) = section.toe("base"), section.toe("upright")
    chord, crown = math.hypot(bx - ax, by - ay), section.bead.crown
    out = ((by - ay) / chord, (ax - bx) / chord)
    at = ((ax + bx) / 2.0 + crown * out[0], (ay + by) / 2.0 + crown * out[1])
    return Knob("crown", "length", crown, at, out, 1.0, _back(out), "diamond")


def _at_toe(section: Section, member: Member) -> list[Knob]:
    """Groove and lip beside a toe."""
    joint, bead = section.joint, section.bead
    along, out = joint.direction(member), joint.normal(member)
    leg, groove, lip = bead.leg(member), bead.undercut(member), bead.overlap(member)
    knobs: list[Knob] = []
    if groove is not None:
        x, y = joint.point(member, leg + groove.width / 2.0)
        low = (x - groove.depth * out[0], y - groove.depth * out[1])
        far = joint.point(member, leg + groove.width)
        key, into = f"undercut_{member}", _back(out)
        depth, width = groove.depth, groove.width
        knobs.append(Knob(f"{key}.depth", "length", depth, low, into, 1.0, into, "square"))
        knobs.append(Knob(f"{key}.width", "length", width, far, along, 1.0, out, "square"))
    if lip is not None:
        end, key = joint.point(member, leg + lip.length), f"overlap_{member}"
        knobs.append(Knob(key, "length", lip.length, end, along, 1.0, out, "square"))
    return knobs


def _drop(joint: Joint, index: int, member: Member, at: float, height: float) -> list[Knob]:
    along, out = joint.direction(member), joint.normal(member)
    x, y = joint.point(member, at)
    top, key = (x + height * out[0], y + height * out[1]), f"spatter.{index}"
    return [
        Knob(f"{key}.at", "length", at, (x, y), along, 1.0, _back(out), "square"),
        Knob(f"{key}.height", "length", height, top, out, 1.0, out, "square"),
    ]


def _opening(joint: Joint) -> Knob:
    foot, along = joint.point("upright", joint.root_opening), joint.direction("upright")
    aside = _back(joint.normal("upright"))
    opening = joint.root_opening
    return Knob("root_opening", "length", opening, foot, along, 1.0, aside, "triangle")


def _angle(section: Section) -> Knob:
    joint = section.joint
    reach = section.bead.reach("upright")
    out = max(_ANGLE_OUT * max(section.bead.leg_base, section.bead.leg_upright), reach + 2.0)
    out = min(out, max(joint.upright_length - 1.0, 0.5 * joint.upright_length))
    along = joint.direction("upright")
    way = (-along[1], along[0])
    at, aside = joint.point("upright", out), _back(joint.normal("upright"))
    return Knob("angle", "angle", joint.angle, at, way, math.degrees(1.0 / out), aside, "triangle")


# --- what a knob changes ------------------------------------------------------------------------


def document_with(coupon: Coupon, key: str, value: float) -> Document:
    """Return the coupon's document with a knob at another value.

    Whether a section can be so is for whoever builds it. A traced face goes with its members: a
    leg moves the trace's end, and the joint's angle takes all of it along.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> document_with(coupon_of(PLAIN, NO_RULES), "leg_base", 9.0)["bead"]
    {'leg_base': 9.0, 'leg_upright': 8.0, 'crown': 0.8}
    """
    document, joint = coupon.source, coupon.section.joint
    if coupon.section.bead.trace is not None:
        if key in ("leg_base", "leg_upright"):
            member: Member = "base" if key == "leg_base" else "upright"
            end = [_rounded(each) for each in joint.point(member, value)]
            points = _points(document)
            points[0 if member == "base" else -1] = list(end)
            return with_value(document, ("bead", "trace"), points)
        if key == "angle":
            document = with_value(document, ("bead", "trace"), _leaning(document, joint, value))
    return with_value(document, path_of(key), value)


def _rounded(value: float) -> float:
    """A coordinate to a ten-thousandth of a mm: what is written stays short."""
    return round(value, 4) + 0.0


def _points(document: Mapping[str, Json]) -> list[Json]:
    listed = value_at(document, ("bead", "trace"))
    return list(listed) if isinstance(listed, list) else []


def _leaning(document: Mapping[str, Json], joint: Joint, angle: float) -> list[Json]:
    """A trace's points, each as far along either member as it was, in a joint of another angle."""
    cos, sin = joint.direction("upright")
    new_cos, new_sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))

    def lean(x: float, y: float) -> Json:
        up = y / sin
        return [_rounded(x - up * cos + up * new_cos), _rounded(up * new_sin)]

    return _each_point(document, lean)


def _each_point(document: Mapping[str, Json], change: Callable[[float, float], Json]) -> list[Json]:
    changed: list[Json] = []
    for point in _points(document):
        x, y = point if isinstance(point, list) and len(point) == 2 else (0.0, 0.0)
        changed.append(change(float(x), float(y)) if is_number(x) and is_number(y) else point)
    return changed
