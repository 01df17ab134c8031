"""The four corners, each with its leaf truly pressed home and read. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, TypeVar

from geometry.bead import Bead
from geometry.joint import Member
from geometry.leaf import EDGES, Edge, Leaf
from geometry.measures import Measures, measure
from geometry.pose import Pose
from geometry.reading import Reading, read
from geometry.seat import home_pose, press_home, waiting_pose
from geometry.section import Section
from trainer.corners.nearing import brought_near
from trainer.corners.sliding import slid_home
from trainer.corners.state import PAIRS, Corners, Pair, crown_of
from trainer.corners.verdict import Verdict, verdict_on

__all__ = ["PLACES", "Corner", "Pressed", "Pressing"]

Place = tuple[Pair, Edge]
PLACES: Final[tuple[Place, ...]] = tuple((pair, edge) for pair in PAIRS for edge in EDGES)
"""Where each corner stands: the pair's bead above or below, the edge left or right."""

_KEPT: Final = 12

_SQUARE: Final = 90.0
"""Degrees. Out of square both edges can't lie flush: which way a leaf slips hangs on a hair."""

Key = TypeVar("Key")
Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Corner:
    """One bead under one edge.

    Parameters
    ----------
    pair, edge
        Which bead, and which edge of the leaf.
    section, leaf
        The very things.
    measures
        What is true of the bead, mm and degrees.
    reading
        What the leaf shows once it has been pressed home; its pose is where it came to rest.
    verdict
        What that is worth.
    """

    pair: Pair
    edge: Edge
    section: Section
    leaf: Leaf
    measures: Measures
    reading: Reading
    verdict: Verdict


Pressed = tuple[Corner, Corner, Corner, Corner]


class Pressing:
    """Presses leaves home, and keeps what equal states have in common.

    What comes out hangs on the state alone, never on what was pressed before: every press begins
    at the same place, straight out along the bisector.

    Examples
    --------
    >>> [corner.reading.state for corner in Pressing().corners(Corners())]
    ['touch', 'held off', 'touch', 'daylight']
    """

    def __init__(self) -> None:
        self._sections: dict[tuple[float, ...], tuple[Section, Measures]] = {}
        self._corners: dict[tuple[tuple[float, ...], str, str, str], Corner] = {}

    def corners(self, state: Corners) -> Pressed:
        """Return the four corners of `state`, in the order of `PLACES`."""
        first, second, third, fourth = (self._corner(state, *place) for place in PLACES)
        return first, second, third, fourth

    def _section(self, key: tuple[float, ...], state: Corners) -> tuple[Section, Measures]:
        known = self._sections.get(key)
        if known is None:
            section = Section.of(state.joint, Bead(key[0], key[1], crown=key[2]))
            known = self._sections[key] = section, measure(section)
            _forget(self._sections)
        return known

    def _corner(self, state: Corners, pair: Pair, edge: Edge) -> Corner:
        shape = (state.leg_base, state.leg_upright, crown_of(state, pair), state.angle)
        key = (shape, state.mark, edge, state.on if edge == "leg" else "")
        known = self._corners.get(key)
        if known is None:
            known = self._corners[key] = self._pressed(shape, state, pair, edge)
            _forget(self._corners)
        return known if known.pair == pair else replace(known, pair=pair)

    def _pressed(self, shape: tuple[float, ...], state: Corners, pair: Pair, edge: Edge) -> Corner:
        section, measures = self._section(shape, state)
        leaf = state.leaf(edge)
        pose = slid_home(section, leaf, state.on) if edge == "leg" else None
        if pose is None:
            pose = press_home(section, leaf, _waiting(section, leaf, state.on)).pose
        reading = read(section, leaf, pose)
        verdict = verdict_on(section, leaf, reading, measures, state.on)
        return Corner(pair, edge, section, leaf, measures, reading, verdict)


def _waiting(section: Section, leaf: Leaf, on: Member) -> Pose:
    """Where a press begins: straight out along the bisector, as near as can be told."""
    near = None
    if leaf.edge == "throat" and section.joint.angle == _SQUARE:
        home = home_pose(section.joint, leaf, on)
        near = brought_near(section, leaf, home, section.joint.bisector)
    return near if near is not None else waiting_pose(section, leaf, on)


def _forget(kept: dict[Key, Value]) -> None:
    """Drop the oldest beyond what is kept."""
    while len(kept) > _KEPT:
        del kept[next(iter(kept))]
