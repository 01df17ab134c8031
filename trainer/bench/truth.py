"""What was true of a coupon, and where: for drawing over the picture once a call is on record.

No Qt here. Points are mm in the section's frame.
"""

from __future__ import annotations

from dataclasses import dataclass

import shapely

from exercises.coupon import Coupon
from exercises.grading import Reason
from exercises.stances import Stances
from geometry.curves import Vec
from geometry.joint import MEMBERS, Member
from geometry.leaf import Leaf, leaf_of_mark
from geometry.measures import Measures, measure
from geometry.pose import Pose
from geometry.reading import Reading
from geometry.section import Section
from trainer.bench.state import BenchState

__all__ = ["Told", "Truth", "place_of", "tell", "truth_of"]


@dataclass(frozen=True, slots=True)
class Truth:
    """The true shape of a bead.

    Parameters
    ----------
    measures
        All its measures, mm and degrees.
    toes
        The fused toes, on base and upright.
    triangle
        The largest triangle with equal legs that fits inside: root, on base, on upright.
    throat_foot
        Where the effective throat meets that triangle's third side.
    face_near
        The face's point nearest the root: the end of the actual throat.
    face_middle
        The face's point on the bisector, or nearest to it.
    """

    measures: Measures
    toes: tuple[Vec, Vec]
    triangle: tuple[Vec, Vec, Vec]
    throat_foot: Vec
    face_near: Vec
    face_middle: Vec


def truth_of(section: Section) -> Truth:
    """Return the true shape of a section's bead.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> truth = truth_of(Section.of(Joint(), Bead(8.0, 6.0)))
    >>> truth.toes, [round(v, 6) for v in truth.triangle[1]]
    (((8.0, 0.0), (0.0, 6.0)), [6.0, 0.0])
    """
    measures = measure(section)
    joint, size = section.joint, measures.effective_size
    out, throat = joint.bisector, measures.effective_throat
    face = section.outline.line("face")
    near = shapely.shortest_line(shapely.Point(0.0, 0.0), face).coords[-1]
    reach = 4.0 * max(measures.leg_base, measures.leg_upright)
    ray = shapely.LineString([(0.0, 0.0), (out[0] * reach, out[1] * reach)])
    middle = shapely.shortest_line(ray, face).coords[-1]
    return Truth(
        measures=measures,
        toes=(section.toe("base"), section.toe("upright")),
        triangle=((0.0, 0.0), joint.point("base", size), joint.point("upright", size)),
        throat_foot=(out[0] * throat, out[1] * throat),
        face_near=(float(near[0]), float(near[1])),
        face_middle=(float(middle[0]), float(middle[1])),
    )


@dataclass(frozen=True, slots=True)
class Told:
    """One stated reading, and what the leaf truly showed there.

    Parameters
    ----------
    leaf, pose
        The leaf as held.
    shown
        What it showed; None if the reading doesn't say how it was held.
    right
        Whether what was stated of it is right.
    at
        Its tip or spur, mm.
    """

    leaf: Leaf
    pose: Pose
    shown: Reading
    right: bool
    at: Vec


def tell(state: BenchState) -> tuple[Told, ...]:
    """Return what each stated reading's leaf truly showed, in order."""
    coupon = state.coupon
    stances = Stances(coupon)
    told: list[Told] = []
    for stated in state.readings:
        stance = stances.of(stated)
        if stance is None or stated.leaf is None or stated.edge is None or stated.pose is None:
            continue
        leaf = leaf_of_mark(stated.leaf, stated.edge, coupon.leaf_wear)
        told.append(
            Told(
                leaf,
                stated.pose,
                stance.shown,
                stated.state in stance.states,
                stated.pose.to_section(leaf.point),
            )
        )
    return tuple(told)


def place_of(reason: Reason, coupon: Coupon, truth: Truth, told: tuple[Told, ...]) -> Vec:
    """Return the place that a reason speaks of, mm."""
    index, member = reason.params.get("reading"), reason.params.get("member")
    if index is not None and 0 <= int(index) < len(told):
        return _place_of_reading(reason, coupon.section, told[int(index)])
    if member in MEMBERS:
        return truth.toes[MEMBERS.index(member)]
    key = str(reason.params.get("key") or str(reason.params.get("keys", "")).split(",")[0])
    return _place_of_key(key, coupon.section, truth)


def _place_of_reading(reason: Reason, section: Section, told: Told) -> Vec:
    """The tip or spur; or what is in its way, if that is a piece of the section."""
    way = told.shown.in_the_way
    names = [name for name in way if name in section.outline.piece_names]
    if reason.code != "seat-open" or not names or names[0] in MEMBERS:
        return told.at
    middle = section.outline.line(names[0]).interpolate(0.5, normalized=True)
    return (float(middle.x), float(middle.y))


def _place_of_key(key: str, section: Section, truth: Truth) -> Vec:
    for member in MEMBERS:
        if key == f"leg_{member}":
            return truth.toes[MEMBERS.index(member)]
        if key == f"undercut_{member}":
            return section.joint.point(member, _groove_middle(section, member))
        if key == f"overlap_{member}":
            return section.seen_toe(member)
    return (0.0, 0.0) if key == "root_opening" else truth.face_middle


def _groove_middle(section: Section, member: Member) -> float:
    groove = section.bead.undercut(member)
    return section.bead.leg(member) + (groove.width / 2.0 if groove is not None else 0.0)
