"""What each leaf of a rack would show on a weld: pressed home one by one, nearest size first.

No Qt here. A press takes some milliseconds, a rack has dozens: so whoever asks steps on between
other things, and sees what has been found so far.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from exercises.coupon import Coupon
from exercises.judging import called_size
from geometry.joint import Member
from geometry.leaf import Edge, Leaf, RackName, rack
from geometry.reading import Reading, read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section

__all__ = ["SEATS", "Answer", "Answers", "Seat"]

Seat = tuple[Edge, Member]
SEATS: Final[tuple[Seat, ...]] = (("leg", "base"), ("leg", "upright"), ("throat", "base"))
"""How a leaf is held: by its leg edge to either member, by its throat edge to both."""

_Asked = tuple[Section, float, float, RackName]


@dataclass(frozen=True, slots=True)
class Answer:
    """What a leaf shows once it has been pressed home; the reading's pose is where it rests."""

    leaf: Leaf
    on: Member
    reading: Reading


class Answers:
    """Presses the leaves of a rack home on a coupon, step by step.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> answers = Answers()
    >>> answers.ask(coupon_of(PLAIN, NO_RULES), "metric")
    >>> while answers.step():
    ...     pass
    >>> answers.found["8 mm", ("leg", "base")].reading.state, len(answers.found)
    ('touch', 36)
    """

    def __init__(self) -> None:
        self._asked: _Asked | None = None
        self._waiting: list[tuple[Leaf, Seat]] = []
        self.found: dict[tuple[str, Seat], Answer] = {}
        self.stale: set[tuple[str, Seat]] = set()
        self.leaves: tuple[Leaf, ...] = ()

    @property
    def done(self) -> bool:
        """Whether every leaf has been pressed."""
        return not self._waiting

    def ask(self, coupon: Coupon, name: RackName) -> None:
        """Ask about a coupon; what was found of the last one is stale until it is found anew."""
        asked = (coupon.section, coupon.eye_limit, coupon.leaf_wear, name)
        known = self._asked
        if known is not None and known[0] is asked[0] and known[1:] == asked[1:]:
            return
        leaves = tuple(leaf.worn(coupon.leaf_wear) for leaf in rack(name))
        if known is None or known[3] != name:
            self.found = {}
        self._asked, self.leaves = asked, leaves
        self.stale = set(self.found)
        called = called_size(coupon)
        near = sorted(leaves, key=lambda leaf: abs(leaf.size - called))
        self._waiting = [(leaf, seat) for leaf in reversed(near) for seat in reversed(SEATS)]

    def step(self) -> bool:
        """Press one leaf more; return whether there are others."""
        if self._asked is None or not self._waiting:
            return False
        leaf, seat = self._waiting.pop()
        self._press(leaf, seat)
        return bool(self._waiting)

    def answer(self, mark: str, seat: Seat) -> Answer | None:
        """Return what a leaf shows, pressing it now if it hasn't been."""
        key = (mark, seat)
        if key in self.stale or key not in self.found:
            leaf = next((leaf for leaf in self.leaves if leaf.mark == mark), None)
            if leaf is None or self._asked is None:
                return None
            self._waiting = [each for each in self._waiting if each != (leaf, seat)]
            self._press(leaf, seat)
        return self.found[key]

    def _press(self, leaf: Leaf, seat: Seat) -> None:
        assert self._asked is not None
        section, eye_limit, _, _ = self._asked
        edge, on = seat
        held = leaf.with_edge(edge)
        pose = press_home(section, held, waiting_pose(section, held, on)).pose
        key = (leaf.mark, seat)
        self.found[key] = Answer(held, on, read(section, held, pose, eye_limit))
        self.stale.discard(key)
