"""The weld bead: its face from toe to toe, and what spoils it.

A face is the circular arc through both toes with sagitta `crown`, or it is traced: a polyline
from the base toe to the upright toe, as a profile scanner gives it. Nothing is smoothed.
"""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass
from typing import Final

from geometry.curves import Curve, Segment, Vec, arc_by_sagitta
from geometry.faults import Fault, GeometryError, number_faults
from geometry.joint import MEMBERS, Joint, Member
from geometry.tolerances import SMALLEST, TRACE_END

__all__ = [
    "LIP_RATIO",
    "SPATTER_RATIO",
    "Bead",
    "Overlap",
    "Spatter",
    "Undercut",
    "trace_end_faults",
]

LIP_RATIO: Final = 1.0 / 3.0
"""Height of an overlap's lip over its length (contract)."""

SPATTER_RATIO: Final = 3.0
"""Width of a spatter cap over its height (contract)."""


@dataclass(frozen=True, slots=True)
class Undercut:
    """A circular groove in a member, from the toe away from the root: `depth`, `width` in mm."""

    depth: float
    width: float


@dataclass(frozen=True, slots=True)
class Overlap:
    """An unfused lip of `length` mm that rests on a member beyond the fused toe."""

    length: float

    @property
    def height(self) -> float:
        """Height of the lip, mm."""
        return self.length * LIP_RATIO


@dataclass(frozen=True, slots=True)
class Spatter:
    """A circular cap of `height` mm on a member, its middle `at` mm from the root."""

    on: Member
    at: float
    height: float

    @property
    def near(self) -> float:
        """Distance from the root to the cap's near edge, mm."""
        return self.at - self.height * SPATTER_RATIO / 2.0

    @property
    def far(self) -> float:
        """Distance from the root to the cap's far edge, mm."""
        return self.at + self.height * SPATTER_RATIO / 2.0


@dataclass(frozen=True, slots=True)
class Bead:
    """A fillet weld's cross-section.

    Parameters
    ----------
    leg_base, leg_upright
        Root to fused toe along each member, mm. With a trace they follow from it: see `traced`.
    crown
        Sagitta of the face, mm: above zero convex, 0 flat, below zero hollow.
    trace
        The face as points (mm) from base toe to upright toe, in place of `crown`.
    undercut_base, undercut_upright, overlap_base, overlap_upright
        What lies at each toe, or None.

    Examples
    --------
    >>> bead = Bead(8.0, 6.7, crown=0.9)
    >>> bead.leg("upright"), bead.trace is None
    (6.7, True)
    """

    leg_base: float
    leg_upright: float
    crown: float = 0.0
    trace: tuple[Vec, ...] | None = None
    undercut_base: Undercut | None = None
    undercut_upright: Undercut | None = None
    overlap_base: Overlap | None = None
    overlap_upright: Overlap | None = None

    @classmethod
    def traced(
        cls,
        points: tuple[Vec, ...],
        joint: Joint,
        *,
        undercut_base: Undercut | None = None,
        undercut_upright: Undercut | None = None,
        overlap_base: Overlap | None = None,
        overlap_upright: Overlap | None = None,
    ) -> Bead:
        """Return a bead whose face is the polyline through `points` (mm).

        The first and last point are projected onto their members and give the legs; a point that
        repeats the one before it adds nothing and is left out.

        Raises
        ------
        GeometryError
            If a value is no finite number, or the joint is none.

        Examples
        --------
        >>> bead = Bead.traced(((6.0, 0.01), (3.2, 3.2), (0.0, 6.5)), Joint())
        >>> bead.leg_base, bead.leg_upright, bead.trace[0]
        (6.0, 6.5, (6.0, 0.0))
        """
        unsound = number_faults("/joint", asdict(joint), "mm or degrees") or joint.faults()
        for index, point in enumerate(points):
            unsound += number_faults(f"/bead/trace/{index}", dict(enumerate(point)))
        if unsound:
            raise GeometryError(unsound)
        distinct = tuple(p for i, p in enumerate(points) if i == 0 or p != points[i - 1])
        along = joint.direction("upright")
        leg_base = distinct[0][0] if distinct else 0.0
        leg_upright = (
            distinct[-1][0] * along[0] + distinct[-1][1] * along[1] if len(distinct) > 1 else 0.0
        )
        ends = (joint.point("base", leg_base), joint.point("upright", leg_upright))
        return cls(
            leg_base,
            leg_upright,
            trace=(ends[0], *distinct[1:-1], ends[1]) if len(distinct) > 1 else distinct,
            undercut_base=undercut_base,
            undercut_upright=undercut_upright,
            overlap_base=overlap_base,
            overlap_upright=overlap_upright,
        )

    def leg(self, member: Member) -> float:
        """Root to fused toe along `member`, mm."""
        return self.leg_base if member == "base" else self.leg_upright

    def undercut(self, member: Member) -> Undercut | None:
        """The groove beside this member's toe, if any."""
        return self.undercut_base if member == "base" else self.undercut_upright

    def overlap(self, member: Member) -> Overlap | None:
        """The lip over this member's toe, if any."""
        return self.overlap_base if member == "base" else self.overlap_upright

    def reach(self, member: Member) -> float:
        """How far from the root this member is taken up by weld, lip or groove, mm."""
        lip, groove = self.overlap(member), self.undercut(member)
        return self.leg(member) + max(lip.length if lip else 0.0, groove.width if groove else 0.0)

    def face(self, joint: Joint) -> tuple[Curve, ...]:
        """The face from base toe to upright toe as true curves, air on the right."""
        if self.trace is not None:
            return tuple(Segment(a, b) for a, b in zip(self.trace, self.trace[1:], strict=False))
        toes = joint.point("base", self.leg_base), joint.point("upright", self.leg_upright)
        return (arc_by_sagitta(toes[0], toes[1], self.crown),)

    def faults(self, joint: Joint) -> list[Fault]:
        """Everything that makes this no bead on `joint` (which must be sound itself).

        Examples
        --------
        >>> [fault.code for fault in Bead(8.0, 8.0, crown=-2.5).faults(Joint())]
        ['face-in-member']
        """
        found: list[Fault] = []
        for member in MEMBERS:
            found += self._leg_faults(joint, member)
        if found:
            return found
        found += self._arc_faults(joint) if self.trace is None else self._trace_faults(joint)
        for member in MEMBERS:
            found += self._toe_faults(joint, member)
        return found

    def _leg_faults(self, joint: Joint, member: Member) -> list[Fault]:
        leg, key = self.leg(member), f"leg_{member}"
        at = f"/bead/{key}" if self.trace is None else "/bead/trace"
        shortest = max(SMALLEST, joint.root_opening if member == "upright" else 0.0)
        if shortest < leg < joint.length(member):
            return []
        return [
            Fault(
                at,
                "toe-off-member",
                f"{key} is {leg:g} mm, so the toe does not lie on the {member}",
                f"more than {shortest:g} and less than {joint.length(member):g} mm",
                {
                    "key": key,
                    "leg": leg,
                    "member": member,
                    "lowest": shortest,
                    "highest": joint.length(member),
                },
            )
        ]

    def _arc_faults(self, joint: Joint) -> list[Fault]:
        toes = joint.point("base", self.leg_base), joint.point("upright", self.leg_upright)
        half = math.dist(*toes) / 2.0
        # Angles at the toes of the triangle root, base toe, upright toe.
        at_base = math.atan2(toes[1][1], self.leg_base - toes[1][0])
        angles = (at_base, math.pi - joint.radians - at_base)
        hollow_limit = half * math.tan(min(angles) / 2.0)
        proud_limit = half * math.tan((math.pi - max(angles)) / 2.0)
        if -hollow_limit < self.crown < proud_limit:
            return []
        return [
            Fault(
                "/bead/crown",
                "face-in-member",
                f"with crown {self.crown:g} mm the face enters a member",
                f"more than {-hollow_limit:.3f} and less than {proud_limit:.3f} mm",
                {"crown": self.crown, "lowest": -hollow_limit, "highest": proud_limit},
            )
        ]

    def _trace_faults(self, joint: Joint) -> list[Fault]:
        trace = self.trace or ()
        normal = joint.normal("upright")
        for index, (x, y) in enumerate(trace[1:-1], start=1):
            if y <= 0.0 or x * normal[0] + y * normal[1] <= 0.0:
                return [
                    Fault(
                        "/bead/trace",
                        "face-in-member",
                        f"point {index + 1} of the trace, ({x:g}, {y:g}), lies in a member",
                        "every point but the first and last in the air between the members",
                        {"index": index + 1, "x": x, "y": y},
                    )
                ]
        return []

    def _toe_faults(self, joint: Joint, member: Member) -> list[Fault]:
        found: list[Fault] = []
        groove, lip = self.undercut(member), self.overlap(member)
        room = joint.length(member) - self.leg(member)
        if groove is not None:
            at = f"/bead/undercut_{member}"
            deepest = min(groove.width / 2.0, joint.thickness(member))
            if not SMALLEST <= groove.width < room:
                found.append(_size_fault(f"{at}/width", "width", groove.width, SMALLEST, room))
            elif not 0.0 < groove.depth < deepest:
                found.append(_size_fault(f"{at}/depth", "depth", groove.depth, 0.0, deepest))
        if lip is not None:
            at = f"/bead/overlap_{member}"
            if not SMALLEST <= lip.length < room:
                found.append(_size_fault(f"{at}/length", "length", lip.length, SMALLEST, room))
            if groove is not None:
                found.append(
                    Fault(
                        at,
                        "lip-over-groove",
                        f"the toe on the {member} has both an overlap and an undercut",
                        "one of the two",
                        {"member": member},
                    )
                )
            elif self._overhangs(joint, member):
                found.append(
                    Fault(
                        at,
                        "lip-under-face",
                        f"the face already hangs over the {member} where the lip would lie",
                        "no overlap here, or a flatter face",
                        {"member": member},
                    )
                )
        return found

    def _overhangs(self, joint: Joint, member: Member) -> bool:
        """Whether the face leaves the toe more steeply outward than a lip would."""
        face = self.face(joint)
        along = joint.direction(member)
        first = face[0].start_direction if member == "base" else face[-1].end_direction
        inward = first if member == "base" else (-first[0], -first[1])
        lean = inward[0] * along[0] + inward[1] * along[1]
        lip_slope = 2.0 * math.atan(2.0 * LIP_RATIO)
        return lean > math.cos(lip_slope)


def _size_fault(at: str, key: str, value: float, lowest: float, highest: float) -> Fault:
    return Fault(
        at,
        "size-out-of-range",
        f"{key} is {value:g} mm",
        f"more than {lowest:g} and less than {highest:g} mm",
        {"key": key, "value": value, "lowest": lowest, "highest": highest},
    )


def trace_end_faults(points: tuple[Vec, ...], joint: Joint) -> list[Fault]:
    """Faults of a trace's first and last point, before `Bead.traced` projects them.

    Examples
    --------
    >>> [fault.code for fault in trace_end_faults(((6.0, 0.2), (0.0, 6.0)), Joint())]
    ['trace-end']
    """
    if len(points) < 2:
        return [
            Fault(
                "/bead/trace",
                "trace-short",
                f"the trace has {len(points)} point(s)",
                "two points or more",
                {"count": len(points)},
            )
        ]
    found: list[Fault] = []
    normal = joint.normal("upright")
    last = points[-1]
    for index, member, off in (
        (0, "base", points[0][1]),
        (len(points) - 1, "upright", last[0] * normal[0] + last[1] * normal[1]),
    ):
        if abs(off) > TRACE_END:
            found.append(
                Fault(
                    f"/bead/trace/{index}",
                    "trace-end",
                    f"the trace ends {abs(off):.3f} mm off the {member}'s face",
                    f"within {TRACE_END:g} mm of it",
                    {"member": member, "off": abs(off), "limit": TRACE_END},
                )
            )
    return found
