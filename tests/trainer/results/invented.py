"""An invented class: learners who see as the model of a learner's line says, by one seed.

Everything they do goes through the real code: right seats with their readings, calls drawn from
a line of each learner's own, handlings with a pick, a drag, a press and a stated reading.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from functools import cache
from typing import Final

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon, Disposition
from exercises.handling import Entry, HandlingLog
from exercises.judging import judge
from exercises.learner.line import called_short
from exercises.learner.outcome import size_distance
from geometry.measures import FaceShape
from geometry.pose import Pose
from geometry.reading import State
from trainer.bench.right import RightSeat, right_seats

__all__ = ["Hand", "called", "hand_of"]

_STATES: Final[tuple[State, ...]] = ("touch", "daylight", "held off")
_FACES: Final[tuple[FaceShape, ...]] = ("convex", "flat", "concave")
_OTHERS: Final[tuple[Disposition, ...]] = ("accept", "add weld metal", "dress back", "refer")


@dataclass(frozen=True, slots=True)
class Hand:
    """How somebody judges: line and blur in mm; how often a seat, a face, a reading goes wrong."""

    bias: float
    spread: float
    careless: float


def hand_of(number: int) -> Hand:
    """The hand of the learner with that number: some see well, a few don't."""
    rng = random.Random(f"hand {number}")
    weak = number % 5 == 4
    return Hand(
        bias=rng.gauss(-0.25 if weak else 0.02, 0.06),
        spread=rng.uniform(0.3, 0.5) if weak else rng.uniform(0.08, 0.2),
        careless=rng.uniform(0.25, 0.4) if weak else rng.uniform(0.02, 0.12),
    )


@cache
def _seats(coupon: Coupon) -> tuple[RightSeat, ...]:
    return right_seats(coupon)


def called(coupon: Coupon, hand: Hand, rng: random.Random) -> tuple[Attempt, HandlingLog]:
    """Return what somebody with that hand states of a coupon, and how the leaf went."""
    log = HandlingLog()
    readings: list[StatedReading] = []
    ms = rng.randrange(600, 2500)
    seats = [seat for seat in _seats(coupon) if rng.random() >= hand.careless / 2.0]
    for seat in seats:
        state = seat.shown.state
        if rng.random() < hand.careless:
            state = rng.choice([one for one in _STATES if one != state])
        leaf, pose = seat.leaf, seat.pose
        readings.append(StatedReading(leaf.mark, leaf.edge, seat.on, pose, state))
        moves = [(f"pick {leaf.mark} {leaf.edge}", 30.0), ("grab", 30.0), ("drag", 18.0),
                 ("drag", 8.0), ("release", 4.0), ("press home", 0.0),
                 (f"state {state}", 0.0)]  # fmt: skip
        for event, off in moves:
            lies = Pose(pose.x + off, pose.y + off, pose.angle, pose.turned)
            log = log.added(Entry(ms, lies.x, lies.y, lies.angle, lies.turned, event))
            ms += rng.randrange(150, 1800)
    disposition = _disposition(coupon, hand, rng)
    log = log.added(Entry(ms, 0.0, 0.0, 0.0, False, "call"))
    judged = judge(coupon)
    face = judged.face if rng.random() >= hand.careless / 2.0 else rng.choice(_FACES)
    return (
        Attempt(
            coupon.id,
            face,
            tuple(readings),
            disposition,
            rng.choice((0.5, 0.7, 0.8, 0.9, 1.0)),
        ),
        log,
    )


def _disposition(coupon: Coupon, hand: Hand, rng: random.Random) -> Disposition:
    judged = judge(coupon)
    distance = size_distance(judged)
    if distance is not None:
        likely = float(called_short(distance, hand.bias, hand.spread, hand.careless / 5.0))
        return "add weld metal" if rng.random() < likely else "accept"
    if rng.random() < hand.careless:
        return rng.choice([one for one in _OTHERS if one != judged.disposition])
    return judged.disposition
