"""An invented class: learners who see as the model of a learner's line says, by one seed.

Everything they do goes through the real code: right seats with their readings, calls drawn from
a line of each learner's own, handlings with a pick, a drag, a press and a stated reading.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Final
from uuid import NAMESPACE_OID, uuid5

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon, Disposition
from exercises.handling import Entry, HandlingLog
from exercises.judging import judge
from exercises.learner.line import called_short
from exercises.learner.outcome import size_distance
from exercises.maker.recipe import Recipe
from exercises.sitting.paper import questions_of
from exercises.sitting.plan import Chosen, Made, Plan
from exercises.sitting.result import (
    Interruption,
    Result,
    item_of,
    learner_id,
    plan_head,
)
from exercises.text import Text
from exercises.tray import load_tray
from geometry.measures import FaceShape
from geometry.pose import Pose
from geometry.reading import State
from trainer.assets import asset
from trainer.bench.right import RightSeat, right_seats

__all__ = ["BEGIN", "Hand", "called", "hand_of", "plan_of", "result_of", "results_of"]

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
        bias=rng.gauss(-0.25 if weak else 0.02, 0.1),
        spread=rng.uniform(0.3, 0.5) if weak else rng.uniform(0.08, 0.3),
        careless=rng.uniform(0.35, 0.5) if weak else rng.uniform(0.04, 0.3),
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
        likely = float(called_short(distance, hand.bias, hand.spread, hand.careless / 2.0))
        return "add weld metal" if rng.random() < likely else "accept"
    if rng.random() < hand.careless:
        return rng.choice([one for one in _OTHERS if one != judged.disposition])
    return judged.disposition


BEGIN: Final = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)


def plan_of(chosen: int = 12, made: int = 8) -> Plan:
    """A sitting of coupons out of a shipped tray, and of dice."""
    coupons = load_tray(asset("trays", "otter-weir.tray.json")).coupons[:chosen]
    parts: list[Chosen | Made] = []
    if chosen:
        parts.append(Chosen(Text.of("Otter weir"), tuple(coupons)))
    if made:
        parts.append(Made(Recipe(made, seed=4)))
    return Plan(
        "7d0f2c2e-0000-4000-8000-000000000007", Text.of("Spring sitting"), tuple(parts),
        shuffled=True, minutes=50.0, pass_mark=0.75,
        skill_marks={"seat": 0.8, "disposition": 0.7}, seed=11,
    )  # fmt: skip


def result_of(plan: Plan, number: int, plan_code: str = "") -> Result:
    """What the learner with that number handed in."""
    code = plan_code or f"K-{number:02d}"
    hand, rng = hand_of(number), random.Random(f"sitting {number} {code}")
    began = BEGIN + timedelta(minutes=rng.randrange(0, 40))
    items, spent = [], 0
    for at, question in enumerate(questions_of(plan, code), start=1):
        ms = rng.randrange(35_000, 210_000)
        spent += ms
        left_out = rng.random() < 0.02 + 0.06 * (number % 5 == 4)
        attempt, log = called(question.coupon, hand, rng)
        items.append(
            item_of(
                at, question.slot, question.coupon, None if left_out else attempt,
                handling=() if left_out else log.as_json(), zoom={"picture": 12.0, "loupe": 48.0},
                ms=ms, visits=rng.choice((1, 1, 1, 2, 3)), flagged=rng.random() < 0.1,
            )
        )  # fmt: skip
    breaks: tuple[Interruption, ...] = ()
    if number % 7 == 3:
        breaks = (Interruption(began + timedelta(minutes=9), 95_000, "asleep"),)
    return Result(
        id=str(uuid5(NAMESPACE_OID, f"result {plan.id} {number} {code}")),
        plan=plan_head(plan, code), code=code, learner=learner_id(code),
        station=f"Bench {number % 4 + 1}", started=began,
        finished=began + timedelta(milliseconds=spent),
        ended="time up" if number % 11 == 6 else "finished", items=tuple(items),
        interruptions=breaks,
    )  # fmt: skip


def results_of(plan: Plan, learners: int = 30) -> list[Result]:
    """What a class handed in."""
    return [result_of(plan, number) for number in range(1, learners + 1)]
