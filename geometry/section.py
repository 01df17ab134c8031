"""A section: a joint with its bead, cut across.

Bodies are kept apart (base, upright, weld, lips, spatter) for drawing and for readings, and their
exposed boundary is kept as one closed `outline` for contact. Piece names are the keys that tray
files use, so that a reading can name what is in the way.
"""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass, replace
from functools import cached_property
from typing import Final

import shapely
from shapely.geometry import MultiLineString

from geometry.bead import LIP_RATIO, Bead, Spatter
from geometry.bodies import Body, Piece
from geometry.curves import Curve, Segment, Vec, arc_by_sagitta
from geometry.faults import Fault, GeometryError, number_faults
from geometry.joint import MEMBERS, Joint, Member

__all__ = ["BACK_LENGTH", "WELD_PIECES", "Section"]

BACK_LENGTH: Final = 25.0
"""mm of base shown behind the upright. No reading depends on it."""

WELD_PIECES: Final = ("face", "overlap_base", "overlap_upright")
"""Exposed pieces that are weld metal."""


@dataclass(frozen=True)
class Section:
    """A sound section. Build it with `Section.of`, which refuses what can't be.

    Pieces of the outline: ``base``, ``base_end``, ``base_back``, ``base_underside``, ``upright``,
    ``upright_end``, ``upright_back``, ``upright_foot``, ``face``, ``root_gap``,
    ``undercut_base``, ``undercut_upright``, ``overlap_base``, ``overlap_upright``,
    ``spatter[0]`` and so on.

    Examples
    --------
    >>> section = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9), (Spatter("base", 14.0, 0.8),))
    >>> [body.name for body in section.bodies]
    ['base', 'upright', 'weld', 'spatter[0]']
    >>> section.toe("upright")
    (0.0, 6.7)
    """

    joint: Joint
    bead: Bead
    spatter: tuple[Spatter, ...] = ()

    @classmethod
    def of(cls, joint: Joint, bead: Bead, spatter: tuple[Spatter, ...] = ()) -> Section:
        """Return the section, or raise every fault of it at once.

        Raises
        ------
        GeometryError
            With one `Fault` for each thing that can't be.

        Examples
        --------
        >>> Section.of(Joint(angle=20.0), Bead(8.0, 8.0))
        Traceback (most recent call last):
        geometry.faults.GeometryError: /joint/angle: the joint opens 20 degrees; right would be: \
60 to 135 degrees
        """
        found = _number_faults(joint, bead, spatter) or joint.faults()
        if not found:
            found = _plate_faults(joint) + bead.faults(joint)
        if not found:
            found = _spatter_faults(joint, bead, spatter)
        if found:
            raise GeometryError(found)
        section = cls(joint, bead, spatter)
        section._check_outline()
        return section

    def _check_outline(self) -> None:
        try:
            _ = self.bodies, self.outline
        except GeometryError as error:
            at = "/bead/trace" if self.bead.trace is not None else "/bead"
            raise GeometryError([replace(fault, at=at) for fault in error.faults]) from error

    def cleaned(self) -> Section:
        """The same section with its spatter chipped off.

        Examples
        --------
        >>> section = Section.of(Joint(), Bead(8.0, 8.0), (Spatter("base", 14.0, 0.8),))
        >>> section.cleaned().spatter
        ()
        """
        return replace(self, spatter=())

    def toe(self, member: Member) -> Vec:
        """The fused toe on `member`, mm."""
        return self.joint.point(member, self.bead.leg(member))

    def seen_toe(self, member: Member) -> Vec:
        """Where weld metal ends for an eye or a leaf: the lip's end, else the fused toe."""
        lip = self.bead.overlap(member)
        return self.joint.point(member, self.bead.leg(member) + (lip.length if lip else 0.0))

    @cached_property
    def face(self) -> tuple[Curve, ...]:
        """The weld face from base toe to upright toe."""
        return self.bead.face(self.joint)

    @cached_property
    def bodies(self) -> tuple[Body, ...]:
        """Base, upright and weld, then any lips and spatter: each with its own polygon."""
        return (
            Body("base", tuple(self._base_pieces())),
            Body("upright", tuple(self._upright_pieces())),
            Body("weld", tuple(self._weld_pieces())),
            *(self._cap_body(name, cap) for name, cap in self._caps),
        )

    def body(self, name: str) -> Body:
        """The body of this name; `KeyError` if there is none."""
        for body in self.bodies:
            if body.name == name:
                return body
        raise KeyError(name)

    @cached_property
    def outline(self) -> Body:
        """All exposed steel as one closed boundary."""
        joint = self.joint
        back, foot = self._back_foot, joint.point("upright", joint.root_opening)
        left = back[0] - BACK_LENGTH
        below = -joint.base_thickness
        end = joint.base_length
        pieces = [
            Piece("base_underside", Segment((left, below), (end, below))),
            Piece("base_end", Segment((end, below), (end, 0.0))),
            *_backwards(self._surface("base")),
            *(Piece("face", curve) for curve in self.face),
            *self._surface("upright"),
            *self._upright_back_pieces(),
        ]
        if joint.root_opening > 0.0:
            pieces += [
                Piece("upright_foot", Segment(back, foot)),
                Piece("root_gap", Segment(foot, (0.0, 0.0))),
                Piece("base_back", Segment((0.0, 0.0), (left, 0.0))),
            ]
        else:
            pieces.append(Piece("base_back", Segment(back, (left, 0.0))))
        pieces.append(Piece("base_left", Segment((left, 0.0), (left, below))))
        return Body("steel", tuple(pieces))

    @cached_property
    def weld_line(self) -> MultiLineString:
        """Exposed weld metal, lips included, as shapely lines within 1e-4 mm."""
        return self.outline.line(*WELD_PIECES)

    @cached_property
    def piece_lines(self) -> dict[str, MultiLineString]:
        """Every exposed piece by name, as shapely lines within 1e-4 mm."""
        lines = {name: self.outline.line(name) for name in self.outline.piece_names}
        for line in lines.values():
            shapely.prepare(line)
        return lines

    @property
    def _back_foot(self) -> Vec:
        """The upright's rear lower corner: its end is cut parallel to the base."""
        joint = self.joint
        along = joint.direction("upright")
        rear = joint.root_opening - joint.upright_thickness * along[0] / along[1]
        return (
            along[0] * rear - along[1] * joint.upright_thickness,
            joint.root_opening * along[1],
        )

    @property
    def _caps(self) -> list[tuple[str, tuple[Member, float, float, float]]]:
        """Lips and spatter as (name, (member, near, far, height))."""
        caps: list[tuple[str, tuple[Member, float, float, float]]] = []
        for member in MEMBERS:
            lip = self.bead.overlap(member)
            if lip is not None:
                near = self.bead.leg(member)
                far = near + lip.length
                caps.append((f"overlap_{member}", (member, near, far, lip.length * LIP_RATIO)))
        for index, drop in enumerate(self.spatter):
            caps.append((f"spatter[{index}]", (drop.on, drop.near, drop.far, drop.height)))
        return caps

    def _cap_curve(self, cap: tuple[Member, float, float, float]) -> Curve:
        """A cap's arc, run away from the root."""
        member, near, far, height = cap
        # Away from the root the upright's air is on the right, the base's on the left.
        sagitta = height if member == "upright" else -height
        return arc_by_sagitta(
            self.joint.point(member, near), self.joint.point(member, far), sagitta
        )

    def _cap_body(self, name: str, cap: tuple[Member, float, float, float]) -> Body:
        curve = self._cap_curve(cap)
        if cap[0] == "base":
            curve = curve.reversed()
        return Body(name, (Piece(name, curve), Piece("foot", Segment(curve.end, curve.start))))

    def _groove(self, member: Member) -> list[Piece]:
        undercut = self.bead.undercut(member)
        if undercut is None:
            return []
        near = self.bead.leg(member)
        sagitta = -undercut.depth if member == "upright" else undercut.depth
        ends = self.joint.point(member, near), self.joint.point(member, near + undercut.width)
        return [Piece(f"undercut_{member}", arc_by_sagitta(ends[0], ends[1], sagitta))]

    def _surface(self, member: Member) -> list[Piece]:
        """The member's exposed face with all that is on it, from the toe to the member's end."""
        stretches: list[tuple[float, float, Piece]] = []
        groove = self.bead.undercut(member)
        if groove is not None:
            near = self.bead.leg(member)
            stretches.append((near, near + groove.width, self._groove(member)[0]))
        for name, cap in self._caps:
            if cap[0] == member:
                stretches.append((cap[1], cap[2], Piece(name, self._cap_curve(cap))))
        pieces: list[Piece] = []
        at = self.bead.leg(member)
        for near, far, piece in sorted(stretches, key=lambda stretch: stretch[0]):
            pieces += self._plain(member, at, near)
            pieces.append(piece)
            at = far
        return pieces + self._plain(member, at, self.joint.length(member))

    def _plain(self, member: Member, near: float, far: float) -> list[Piece]:
        if far - near < 1e-9:
            return []
        return [
            Piece(member, Segment(self.joint.point(member, near), self.joint.point(member, far)))
        ]

    def _upright_back_pieces(self) -> list[Piece]:
        joint = self.joint
        normal = joint.normal("upright")
        front = joint.point("upright", joint.upright_length)
        rear = (
            front[0] - normal[0] * joint.upright_thickness,
            front[1] - normal[1] * joint.upright_thickness,
        )
        return [
            Piece("upright_end", Segment(front, rear)),
            Piece("upright_back", Segment(rear, self._back_foot)),
        ]

    def _base_pieces(self) -> list[Piece]:
        joint = self.joint
        left, below = self._back_foot[0] - BACK_LENGTH, -joint.base_thickness
        end = joint.base_length
        toe = self.bead.leg("base")
        groove = self.bead.undercut("base")
        far = toe + groove.width if groove is not None else toe
        return [
            Piece("base_underside", Segment((left, below), (end, below))),
            Piece("base_end", Segment((end, below), (end, 0.0))),
            Piece("base", Segment((end, 0.0), (far, 0.0))),
            *_backwards(self._groove("base")),
            Piece("base_hidden", Segment((toe, 0.0), (0.0, 0.0))),
            Piece("base_back", Segment((0.0, 0.0), (left, 0.0))),
            Piece("base_left", Segment((left, 0.0), (left, below))),
        ]

    def _upright_pieces(self) -> list[Piece]:
        joint = self.joint
        toe = self.bead.leg("upright")
        groove = self.bead.undercut("upright")
        far = toe + groove.width if groove is not None else toe
        foot = joint.point("upright", joint.root_opening)
        return [
            Piece("upright_hidden", Segment(foot, joint.point("upright", toe))),
            *self._groove("upright"),
            *self._plain("upright", far, joint.upright_length),
            *self._upright_back_pieces(),
            Piece("upright_foot", Segment(self._back_foot, foot)),
        ]

    def _weld_pieces(self) -> list[Piece]:
        return [
            Piece("weld_on_base", Segment((0.0, 0.0), self.toe("base"))),
            *(Piece("face", curve) for curve in self.face),
            Piece("weld_on_upright", Segment(self.toe("upright"), (0.0, 0.0))),
        ]


def _backwards(pieces: list[Piece]) -> list[Piece]:
    return [Piece(piece.name, piece.curve.reversed()) for piece in reversed(pieces)]


def _number_faults(joint: Joint, bead: Bead, spatter: tuple[Spatter, ...]) -> list[Fault]:
    """What is no number at all: looked at first, since no comparison holds for it."""
    found = number_faults("/joint", asdict(joint), "mm or degrees")
    drawn = {key: getattr(bead, key) for key in ("leg_base", "leg_upright", "crown")}
    if bead.trace is None:
        found += number_faults("/bead", drawn)
    for index, point in enumerate(bead.trace or ()):
        found += number_faults(f"/bead/trace/{index}", dict(enumerate(point)))
    for member in MEMBERS:
        groove, lip = bead.undercut(member), bead.overlap(member)
        found += number_faults(f"/bead/undercut_{member}", asdict(groove) if groove else {})
        found += number_faults(f"/bead/overlap_{member}", asdict(lip) if lip else {})
    for index, drop in enumerate(spatter):
        found += number_faults(f"/spatter/{index}", {"at": drop.at, "height": drop.height})
        if drop.on not in MEMBERS:
            text = f"spatter is on {drop.on!r}"
            found.append(Fault(f"/spatter/{index}/on", "no-such-member", text, "base or upright"))
    return found


def _plate_faults(joint: Joint) -> list[Fault]:
    """What two sound plates can't do together."""
    rear = joint.root_opening - joint.upright_thickness / math.tan(joint.radians)
    if rear < joint.upright_length:
        return []
    return [
        Fault(
            "/joint/upright_length",
            "upright-short",
            f"an upright {joint.upright_thickness:g} mm thick, leaning at {joint.angle:g} degrees, "
            f"has no back left at {joint.upright_length:g} mm",
            f"more than {rear:.1f} mm",
            {
                "rear": rear,
                "angle": joint.angle,
                "thickness": joint.upright_thickness,
                "length": joint.upright_length,
            },
        )
    ]


def _spatter_faults(joint: Joint, bead: Bead, spatter: tuple[Spatter, ...]) -> list[Fault]:
    found: list[Fault] = []
    taken: dict[Member, list[tuple[float, float]]] = {"base": [], "upright": []}
    for index, drop in enumerate(spatter):
        at = f"/spatter/{index}"
        if not 0.0 < drop.height <= 20.0:
            found.append(
                Fault(
                    f"{at}/height",
                    "size-out-of-range",
                    f"height is {drop.height:g} mm",
                    "more than 0 and at most 20 mm",
                    {"key": "height", "value": drop.height, "most": 20.0},
                )
            )
            continue
        lowest, highest = bead.reach(drop.on), joint.length(drop.on)
        if not (lowest - 1e-9 <= drop.near and drop.far <= highest + 1e-9):
            half = drop.far - drop.at
            found.append(
                Fault(
                    f"{at}/at",
                    "spatter-off-member",
                    f"the cap reaches from {drop.near:g} to {drop.far:g} mm",
                    f"its middle between {lowest + half:g} and {highest - half:g} mm, on bare "
                    f"{drop.on}",
                    {
                        "near": drop.near,
                        "far": drop.far,
                        "member": drop.on,
                        "lowest": lowest + half,
                        "highest": highest - half,
                    },
                )
            )
        elif any(drop.near < far and near < drop.far for near, far in taken[drop.on]):
            found.append(
                Fault(
                    f"{at}/at",
                    "spatter-overlaps",
                    "the cap lies over another one",
                    "caps that stand apart",
                    {"at": drop.at},
                )
            )
        taken[drop.on].append((drop.near, drop.far))
    return found
