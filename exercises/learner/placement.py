"""Where the next coupon of a drill should lie: where its call tells most, with some variety.

The distance with the greatest expected gain is the best one; any within a tenth of that gain is
nearly as good, and one of these is drawn, so that the same weld doesn't come twice running. One
call in ten is easy on purpose: it tells whether the learner is still looking (their lapse), and it
is good for them. A drill starts wide, so that the first calls are clear ones.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from exercises.learner.line import Belief

__all__ = ["DISTANCES", "Placement", "place"]

DISTANCES: Final[tuple[float, ...]] = tuple(round(step * 0.05, 2) for step in range(-24, 25))
"""mm from the limit: what a drill's coupons may be asked to lie at."""

_NEARLY: Final = 0.9
_EASY_EVERY: Final = 10
_EASY: Final = 0.8


@dataclass(frozen=True, slots=True)
class Placement:
    """Where the next coupon lies.

    Parameters
    ----------
    distance
        mm from the limit, below 0 short.
    easy
        Whether it is easy on purpose.
    """

    distance: float
    easy: bool = False


def place(
    belief: Belief,
    rng: random.Random,
    distances: Sequence[float] = DISTANCES,
    recent: Sequence[float] = (),
) -> Placement:
    """Return where the next coupon should lie.

    Parameters
    ----------
    belief
        What is believed of the learner now.
    rng
        Draws among distances that are nearly as good.
    distances
        The ones to choose from, mm.
    recent
        The last few distances, newest last: the newest isn't taken again while there is another.

    Examples
    --------
    >>> place(Belief.broad(), random.Random(1)).easy
    False
    """
    if not distances:
        raise ValueError("no distance to choose from; right would be one or more")
    if belief.calls % _EASY_EVERY == _EASY_EVERY - 1:
        easy = [distance for distance in distances if abs(distance) >= _EASY]
        if easy:
            return Placement(rng.choice(easy), easy=True)
    gains = belief.gains(distances)
    if recent and len(distances) > 1:
        gains = np.where(np.asarray(distances) == recent[-1], -np.inf, gains)
    best = float(gains.max())
    close = [d for d, gain in zip(distances, gains, strict=True) if gain >= _NEARLY * best]
    return Placement(rng.choice(close))
