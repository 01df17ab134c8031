"""Simulated learners in a drill: how soon is each known, and how much later by uniform draws?

Run as ``python -m tests.measure.drill [LEARNERS]``. Each learner has a spread, a bias drawn from
±0.3 mm and a lapse drawn from 0 to 5 %. Printed for each spread: the median error of the bias, as a
share of the spread, and of the spread, relative, after 30, 60 and (uniform draws from ±1 mm) 120
calls; and after how many calls both medians first stay within 0.2 and 25 %.
"""

from __future__ import annotations

import random
import statistics
import sys
from collections.abc import Callable

from exercises.learner.line import Belief, Call, called_short
from exercises.learner.placement import place

SPREADS = (0.1, 0.15, 0.2, 0.3, 0.4)
BIAS, SPREAD = 0.2, 0.25
EVERY = 5

Chooser = Callable[[Belief, random.Random, list[float]], float]
Errors = dict[int, list[tuple[float, float]]]


def adaptive(belief: Belief, rng: random.Random, recent: list[float]) -> float:
    """Where the drill puts the next coupon."""
    return place(belief, rng, recent=recent).distance


def uniform(belief: Belief, rng: random.Random, recent: list[float]) -> float:
    """Anywhere within 1 mm of the limit."""
    del belief, recent
    return rng.uniform(-1.0, 1.0)


def errors_of(spread: float, learners: int, calls: int, choose: Chooser) -> Errors:
    """Return the errors of bias and spread of each learner, after every fifth call."""
    found: Errors = {after: [] for after in range(EVERY, calls + 1, EVERY)}
    for seed in range(learners):
        rng = random.Random(f"{spread} {seed} {choose.__name__}")
        bias, lapse = rng.uniform(-0.3, 0.3), rng.uniform(0.0, 0.05)
        belief = Belief.broad()
        recent: list[float] = []
        for count in range(1, calls + 1):
            at = choose(belief, rng, recent)
            recent.append(at)
            short = rng.random() < float(called_short(at, bias, spread, lapse))
            belief = belief.after(Call(at, short))
            if count in found:
                known = belief.estimate()
                found[count].append((abs(known.bias.middle - bias) / spread,
                                     abs(known.spread.middle / spread - 1.0)))  # fmt: skip
    return found


def medians(errors: Errors) -> dict[int, tuple[float, float]]:
    """Return both medians by the number of calls."""
    return {
        after: (statistics.median(e[0] for e in rows), statistics.median(e[1] for e in rows))
        for after, rows in errors.items()
    }


def known_after(of: dict[int, tuple[float, float]]) -> int | None:
    """Return after how many calls both medians are within what is asked, and stay there."""
    first: int | None = None
    for after, (bias, spread) in of.items():
        if bias > BIAS or spread > SPREAD:
            first = None
        elif first is None:
            first = after
    return first


def main(learners: int) -> None:
    """Print a line for each spread and way."""
    print(f"{learners} learners; bias error / spread, spread error; medians")
    for spread in SPREADS:
        for choose, calls in ((adaptive, 60), (uniform, 160)):
            of = medians(errors_of(spread, learners, calls, choose))
            told = "  ".join(
                f"{after}: {of[after][0]:.3f} {of[after][1]:.3f}"
                for after in (30, 60, 120)
                if after in of
            )
            print(
                f"{spread:4} {choose.__name__:8} {told}  known after {known_after(of)}", flush=True
            )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500)
