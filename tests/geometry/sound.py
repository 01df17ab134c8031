"""Sound joints, beads and sections for property tests: whatever the contract allows."""

from __future__ import annotations

import math

from hypothesis import strategies as st

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.curves import Vec
from geometry.joint import MEMBERS, Joint, Member
from geometry.section import Section

__all__ = ["crown_limits", "joints", "rounded_beads", "sections", "traced_sections", "traces"]

SHARES = st.floats(-0.95, 0.95)


def crown_limits(joint: Joint, leg_base: float, leg_upright: float) -> tuple[float, float]:
    """Lowest and highest crown that keeps an arc out of both members, mm (design, section 3).

    A hollow face is tangent to a member when its half angle at the chord is the chord's angle
    with that member; a proud one when it is the angle's supplement.
    """
    toes = joint.point("base", leg_base), joint.point("upright", leg_upright)
    half = math.dist(*toes) / 2.0
    towards = math.atan2(toes[1][1], leg_base - toes[1][0])
    angles = towards, math.pi - joint.radians - towards
    return (
        -half * math.tan(min(angles) / 2.0),
        half * math.tan((math.pi - max(angles)) / 2.0),
    )


@st.composite
def joints(draw: st.DrawFn, *, opening: bool = False) -> Joint:
    """A joint of 60 to 135 degrees; a T rather often."""
    return Joint(
        angle=draw(st.one_of(st.just(90.0), st.floats(60.0, 135.0))),
        # Not the least there may be: tests make sections smaller.
        root_opening=draw(st.just(0.0) | st.floats(1e-4, 2.0)) if opening else 0.0,
    )


@st.composite
def rounded_beads(draw: st.DrawFn, joint: Joint) -> Bead:
    """A bead with a circular or flat face, and nothing at its toes."""
    legs = draw(st.floats(3.0, 20.0)), draw(st.floats(3.0, 20.0))
    lowest, highest = crown_limits(joint, *legs)
    share = draw(st.one_of(st.just(0.0), SHARES))
    return Bead(*legs, crown=share * (highest if share > 0.0 else -lowest))


@st.composite
def traces(draw: st.DrawFn, joint: Joint) -> tuple[Vec, ...]:
    """An uneven, noisy face in polar steps round the root, so that it never crosses itself."""
    count = draw(st.integers(0, 12))
    turns = sorted(draw(st.lists(st.floats(0.03, 0.97), min_size=count, max_size=count)))
    turns = [turn for i, turn in enumerate(turns) if i == 0 or turn - turns[i - 1] > 0.01]
    legs = draw(st.floats(4.0, 12.0)), draw(st.floats(4.0, 12.0))
    points = [joint.point("base", legs[0])]
    for turn in turns:
        reach = draw(st.floats(2.0, 14.0))
        at = turn * joint.radians
        points.append((reach * math.cos(at), reach * math.sin(at)))
    return (*points, joint.point("upright", legs[1]))


@st.composite
def traced_sections(draw: st.DrawFn, joint: Joint | None = None) -> Section:
    """A section with a traced face, in a T unless a joint is given."""
    joint = joint or Joint()
    return Section.of(joint, Bead.traced(draw(traces(joint)), joint))


@st.composite
def sections(draw: st.DrawFn) -> Section:
    """A section of any kind: opened, undercut, overlapped, spattered."""
    joint = draw(joints(opening=True))
    bead = draw(rounded_beads(joint))
    toes: dict[str, Undercut | Overlap | None] = {}
    spatter: list[Spatter] = []
    for member in MEMBERS:
        kind = draw(st.sampled_from(["plain", "plain", "undercut", "overlap"]))
        taken = bead.leg(member)
        if kind == "undercut":
            width = draw(st.floats(0.5, 4.0))
            toes[f"undercut_{member}"] = Undercut(draw(st.floats(0.02, 0.45)) * width, width)
            taken += width
        if _leans_out(bead, joint, member):
            continue
        if kind == "overlap":
            lip = draw(st.floats(0.3, 3.0))
            toes[f"overlap_{member}"] = Overlap(lip)
            taken += lip
        if draw(st.booleans()):
            height = draw(st.floats(0.05, 2.0))
            at = taken + draw(st.floats(0.1, 5.0)) + 1.5 * height
            spatter.append(Spatter(member, at, height))
    return Section.of(joint, _with_toes(bead, toes), tuple(spatter))


def _leans_out(bead: Bead, joint: Joint, member: Member) -> bool:
    """Whether the face hangs over the member, so that no lip or spatter fits beneath it."""
    face = bead.face(joint)[0]
    along = joint.direction(member)
    off = face.start_direction if member == "base" else face.reversed().start_direction
    return off[0] * along[0] + off[1] * along[1] > 0.0


def _with_toes(bead: Bead, toes: dict[str, Undercut | Overlap | None]) -> Bead:
    grooves = {key: value for key, value in toes.items() if isinstance(value, Undercut)}
    lips = {key: value for key, value in toes.items() if isinstance(value, Overlap)}
    return Bead(
        bead.leg_base,
        bead.leg_upright,
        bead.crown,
        undercut_base=grooves.get("undercut_base"),
        undercut_upright=grooves.get("undercut_upright"),
        overlap_base=lips.get("overlap_base"),
        overlap_upright=lips.get("overlap_upright"),
    )
