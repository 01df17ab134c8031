"""What a leaf's state is worth, set against the true measures: what it tells, what it hides.

No Qt, no words: a verdict is a code with its figures, in mm and degrees. Which code is right is
derived for every bead and joint that the knobs can make, never for the usual one alone.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from exercises.doubt import doubt
from geometry.joint import Member, other_member
from geometry.leaf import Leaf
from geometry.measures import Measures
from geometry.reading import EYE_LIMIT, Reading, State
from geometry.section import Section

__all__ = ["CODES", "TRUSTS", "Trust", "Verdict", "verdict_on"]

Trust = Literal["honest", "half", "false comfort", "false alarm", "silent"]
TRUSTS: Final[tuple[Trust, ...]] = ("honest", "half", "false comfort", "false alarm", "silent")
"""``honest``: the state agrees with the truth, and this is the edge to ask. ``half``: it agrees,
but what decides is not what this edge shows. ``false comfort``: the leaf is content and the weld
is too small. ``false alarm``: the other way round. ``silent``: nothing is read."""

CODES: Final = (
    "leg-touch-convex",
    "leg-touch-flat",
    "leg-touch-hollow",
    "leg-touch-other-short",
    "leg-touch-false-hollow",
    "leg-touch-false",
    "leg-off",
    "leg-off-bulge",
    "leg-off-hollow",
    "leg-off-other-short",
    "leg-off-false-hollow",
    "leg-off-false",
    "leg-daylight",
    "leg-daylight-hollow",
    "leg-daylight-skewed",
    "leg-daylight-skewed-short",
    "leg-leaning",
    "leg-carried-leg",
    "leg-carried-crown",
    "leg-carried",
    "leg-not-home",
    "throat-touch-convex",
    "throat-touch-flat",
    "throat-touch-hollow",
    "throat-touch-false-legs",
    "throat-touch-false-parted",
    "throat-touch-false",
    "throat-off-convex",
    "throat-off-flat",
    "throat-off-hollow",
    "throat-off-false-legs",
    "throat-off-false-parted",
    "throat-off-false",
    "throat-daylight-convex",
    "throat-daylight-flat",
    "throat-daylight-hollow",
    "throat-skewed",
    "throat-carried-legs",
    "throat-carried",
    "throat-not-home",
)

_PARTED: Final = 0.3
"""mm by which legs must differ to be called unequal here."""

_ROUNDING: Final = 1e-6
"""mm: a size of just the leaf's comes out of its sines a few last digits off."""

_SMALLEST_RELIEF: Final = 1.5
"""Of a leaf's size: where the long edge of its leg edge begins (contract)."""

_TALLEST_CROWN: Final = 0.4
"""Of a leaf's size: the crown on equal legs that the leg edge still clears (contract)."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a state is worth.

    Parameters
    ----------
    code
        One of `CODES`.
    trust
        One of `TRUSTS`.
    params
        Figures for its sentence: mm and degrees by name, ``member`` for the leg that is read.
    """

    code: str
    trust: Trust
    params: Mapping[str, float | str] = field(default_factory=dict)


def verdict_on(
    section: Section, leaf: Leaf, reading: Reading, measures: Measures, on: Member
) -> Verdict:
    """Return what `reading` is worth on this very section.

    Parameters
    ----------
    section, leaf, reading
        What was gauged, with what, and what it shows.
    measures
        The section's true measures.
    on
        The member that a leg edge's tip reads.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.leaf import leaf_of_mark
    >>> from geometry.measures import measure
    >>> from geometry.pose import Pose
    >>> from geometry.reading import read
    >>> section, leaf = Section.of(Joint(), Bead(8.0, 8.0, crown=-1.3)), leaf_of_mark("8 mm")
    >>> shown = read(section, leaf, Pose(0.0, 0.0))
    >>> verdict = verdict_on(section, leaf, shown, measure(section), "upright")
    >>> shown.state, verdict.code, verdict.trust
    ('touch', 'leg-touch-false-hollow', 'false comfort')
    """
    case = _Case(section, leaf, reading, measures, on)
    code = case.leg_code() if leaf.edge == "leg" else case.throat_code()
    return Verdict(code, _trust(code, case), case.params())


def _trust(code: str, case: _Case) -> Trust:
    if case.state == "not seated":
        return "silent"
    if "-false" in code or code.endswith("other-short"):
        return "false comfort"
    if case.state == "daylight" and case.full:
        return "false alarm"
    if code == "leg-off-bulge":
        return "half"
    if case.leaf.edge == "throat" and case.measures.face == "convex":
        return "half"
    # A leg edge sees the toe alone: on a hollow face that is never what decides.
    if case.leaf.edge == "leg" and case.measures.face == "concave":
        return "half"
    return "honest"


@dataclass(frozen=True)
class _Case:
    section: Section
    leaf: Leaf
    reading: Reading
    measures: Measures
    on: Member

    @property
    def state(self) -> State:
        return self.reading.state

    @property
    def read_leg(self) -> float:
        """The leg that the tip is at, mm along its member."""
        return self.section.bead.leg(self.on)

    @property
    def other_leg(self) -> float:
        """The leg on the flush member, mm."""
        return self.section.bead.leg(other_member(self.on))

    @property
    def square(self) -> float:
        """What of the leg a leg edge sees: the toe's distance square to the flush member, mm."""
        return self.read_leg * math.sin(self.section.joint.radians)

    @property
    def wanted(self) -> float:
        """The least size (mm) that this leaf can't tell from its own."""
        return self.leaf.size - doubt(self.leaf.edge)

    @property
    def meets(self) -> bool:
        """Whether the bead truly is of the leaf's size, as near as the leaf can tell."""
        return self.measures.effective_size >= self.wanted

    @property
    def full(self) -> bool:
        """Whether nothing at all is missing to the leaf's size."""
        return self.measures.effective_size >= self.leaf.size - _ROUNDING

    @property
    def parted(self) -> bool:
        return abs(self.measures.leg_base - self.measures.leg_upright) > _PARTED

    @property
    def short_leg(self) -> float:
        return min(self.measures.leg_base, self.measures.leg_upright)

    def params(self) -> dict[str, float | str]:
        """The figures that sentences use."""
        measures = self.measures
        return {
            "leaf": self.leaf.mark,
            "member": self.on,
            "other": other_member(self.on),
            "leg": self.read_leg,
            "other_leg": self.other_leg,
            "short_leg": self.short_leg,
            "square": self.square,
            "size": measures.effective_size,
            "gap": self.reading.gap or 0.0,
            "angle": self.section.joint.angle,
            "crown": measures.convexity,
        }

    def leg_code(self) -> str:
        """The code of a leg edge's reading."""
        if self.state == "not seated":
            return self._leg_silent()
        if self.state == "daylight":
            return self._leg_daylight()
        head = "leg-touch" if self.state == "touch" else "leg-off"
        face = self.measures.face
        if not self.meets:
            if self.other_leg < self.wanted:
                return f"{head}-other-short"
            return f"{head}-false-hollow" if face == "concave" else f"{head}-false"
        if self.state == "held off":
            if self.square <= self.leaf.size + EYE_LIMIT:
                return "leg-off-bulge"
            return "leg-off-hollow" if face == "concave" else "leg-off"
        return f"leg-touch-{_FACES[face]}"

    def _leg_daylight(self) -> str:
        # Out of square the leaf sees less of a leg than there is.
        if self.square < self.read_leg - EYE_LIMIT:
            return "leg-daylight-skewed" if self.full else "leg-daylight-skewed-short"
        return "leg-daylight-hollow" if self.measures.face == "concave" else "leg-daylight"

    def _leg_silent(self) -> str:
        way = self.reading.in_the_way
        if "face" in way:
            if self.other_leg > _SMALLEST_RELIEF * self.leaf.size:
                return "leg-carried-leg"
            # The relief is cut for a leaf's own size: a larger bead needs less of a crown.
            tall = self.measures.convexity > _TALLEST_CROWN * self.leaf.size
            return "leg-carried-crown" if tall else "leg-carried"
        if self.section.joint.angle < 90.0:
            return "leg-leaning"
        return "leg-not-home"

    def throat_code(self) -> str:
        """The code of a throat edge's reading."""
        if self.state == "not seated":
            return self._throat_silent()
        face = self.measures.face
        if self.state == "daylight":
            return f"throat-daylight-{_FACES[face]}"
        head = "throat-touch" if self.state == "touch" else "throat-off"
        if self.meets:
            return f"{head}-{_FACES[face]}"
        # The spur stands on the bisector, where there is enough; the size is lost elsewhere.
        if self.parted:
            return f"{head}-false-parted"
        return f"{head}-false-legs" if self.short_leg < self.wanted else f"{head}-false"

    def _throat_silent(self) -> str:
        near, far = self.leaf.long_edge
        lean = math.radians(abs(self.section.joint.angle - 90.0))
        if (far[0] - near[0]) * math.sin(lean / 2.0) > EYE_LIMIT:
            return "throat-skewed"
        if "face" in self.reading.in_the_way:
            legs = max(self.measures.leg_base, self.measures.leg_upright)
            return "throat-carried-legs" if legs > near[0] else "throat-carried"
        return "throat-not-home"


_FACES: Final = {"convex": "convex", "flat": "flat", "concave": "hollow"}
