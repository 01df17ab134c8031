"""A drill: practice at the learner's own edge, one coupon after another until that edge is known.

Frozen values, replaced whole. The first calls of a day are made before anything tells how they
went: published work on perceptual learning finds that feedback after each call moves a learner's
line for that day, while what lasts is sharper sight, so those first calls are the honest measure.
Clean sections come before dirty ones. Calls within the doubt feed the belief, never a score.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, replace
from typing import Final, Literal

from exercises.coupon import Coupon, Disposition
from exercises.learner.line import Belief, Estimate
from exercises.learner.outcome import Outcome, outcome_of
from exercises.learner.placement import DISTANCES, place
from exercises.maker.recipe import TRAPS, Recipe, Trap
from exercises.maker.single import coupon_at

__all__ = [
    "BEFORE_FEEDBACK",
    "CLEAN",
    "MOST",
    "Drill",
    "Ending",
    "begin",
    "ended",
    "go_on",
    "next_coupon",
]

BEFORE_FEEDBACK: Final = 8
"""Calls of a day that are made before anything tells how they went."""

CLEAN: Final = 16
"""Calls of a drill whose sections have nothing in the way."""

MOST: Final = 80
"""Calls after which a drill ends however much is still unknown: eyes tire."""

_DIRTY: Final[tuple[Trap, ...]] = tuple(
    trap for trap in TRAPS if trap in {"spatter", "worn leaf", "unequal legs", "root opening"}
)

Ending = Literal["sharp", "tired"]
"""``sharp`` (what is asked is known), or ``tired`` (enough for one day)."""


@dataclass(frozen=True, slots=True)
class Drill:
    """A drill as it stands.

    Parameters
    ----------
    recipe
        Faces, sizes, rules and unit of its coupons.
    seed
        The same seed and the same calls give the same coupons.
    belief
        What is believed of the learner.
    today
        Calls made today, in this drill and before it.
    distances
        Of the coupons laid out, oldest first, mm.
    outcomes
        Of the calls made, oldest first.
    coupon
        The one that lies there now; None before the first.
    """

    recipe: Recipe
    seed: int
    belief: Belief
    today: int = 0
    distances: tuple[float, ...] = ()
    outcomes: tuple[Outcome, ...] = ()
    coupon: Coupon | None = None

    @property
    def before_feedback(self) -> bool:
        """Whether the call that comes next is one of the day's first."""
        return self.today < BEFORE_FEEDBACK

    @property
    def estimate(self) -> Estimate:
        """What is known of the learner now."""
        return self.belief.estimate()

    @property
    def scored(self) -> tuple[int, int]:
        """Right calls of those outside the doubt."""
        counted = [o for o in self.outcomes if o.called_bad is not None and not o.in_doubt]
        return sum(o.called_bad == o.bad for o in counted), len(counted)


def begin(recipe: Recipe, seed: int, known: Belief | None = None, today: int = 0) -> Drill:
    """Return a drill with its first coupon laid out.

    Parameters
    ----------
    recipe
        As for a maker; how many and how hard it says is not asked.
    seed
        Of dice and of where coupons lie.
    known
        What earlier calls say of the learner; nothing if None.
    today
        Calls that the learner has made today already.

    Examples
    --------
    >>> drill = begin(Recipe(1, faces=("convex",)), seed=3)
    >>> drill.coupon.id, drill.before_feedback, ended(drill) is None
    ('drill-001', True, True)
    """
    return next_coupon(Drill(recipe, seed, known or Belief.broad(), today))


def next_coupon(drill: Drill) -> Drill:
    """Lay out the next coupon: where its call tells most of this learner."""
    number = len(drill.distances)
    rng = random.Random(f"{drill.seed} {number}")
    at = place(drill.belief, rng, DISTANCES, drill.distances[-1:]).distance
    # Not on a grid: a learner soon knows steps of a twentieth of a millimetre.
    at += rng.uniform(-0.02, 0.02)
    traps = _DIRTY if number >= CLEAN else ()
    coupon = coupon_at(at, rng, replace(drill.recipe, traps=traps), number)
    return replace(drill, distances=(*drill.distances, at), coupon=coupon)


def go_on(drill: Drill, disposition: Disposition | None) -> Drill:
    """Take the call on the coupon that lies there; `next_coupon` lays out another.

    Raises
    ------
    ValueError
        If none lies there.

    Examples
    --------
    >>> drill = go_on(begin(Recipe(1, faces=("convex",)), seed=3), "accept")
    >>> drill.coupon is None, len(drill.outcomes), drill.today
    (True, 1, 1)
    """
    if drill.coupon is None:
        raise ValueError("no coupon lies there; right would be a call on one that does")
    outcome = outcome_of(drill.coupon, disposition)
    belief = drill.belief if outcome.call is None else drill.belief.after(outcome.call)
    return replace(
        drill,
        belief=belief,
        today=drill.today + 1,
        outcomes=(*drill.outcomes, outcome),
        coupon=None,
    )


def ended(drill: Drill) -> Ending | None:
    """Return why a drill is at its end, or None if it goes on."""
    if len(drill.outcomes) >= CLEAN and drill.estimate.sharp:
        return "sharp"
    return "tired" if len(drill.outcomes) >= MOST else None
