"""Papers of one sitting out of dice: as hard for everybody, and how long one takes to lay out.

    python -m tests.measure.papers [learners] [coupons]

For each place of the plan it compares what every learner is asked: right call, face, what is odd
and how bad it is, whether it is in doubt, and how many doubts the size lies off its limit.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from dataclasses import dataclass
from statistics import fmean, median

from exercises.coupon import Coupon
from exercises.judging import judge
from exercises.maker import Recipe
from exercises.maker.dice import distance
from exercises.sitting.hardness import PLAIN, pattern
from exercises.sitting.paper import Question, questions_of
from exercises.sitting.plan import Made, Plan
from exercises.text import Text

__all__ = ["main"]


@dataclass(frozen=True)
class Asked:
    """What one coupon asks of a learner."""

    kind: tuple[object, ...]
    away: float
    sizes: tuple[float, ...]


def asked_by(coupon: Coupon) -> Asked:
    """Return what a coupon asks, whatever the member that something lies on."""
    judged, section = judge(coupon), coupon.section
    bead = section.bead
    odd = (
        tuple(cut.depth for cut in (bead.undercut_base, bead.undercut_upright) if cut),
        tuple(lip.length for lip in (bead.overlap_base, bead.overlap_upright) if lip),
        tuple(drop.height for drop in section.spatter),
        (section.joint.root_opening, section.joint.angle, coupon.leaf_wear),
    )
    right = (judged.disposition, judged.acceptable, judged.face, judged.in_doubt, judged.rejected)
    sizes = (c.margin / c.doubt for c in judged.checks if c.doubt > 0.0)
    capped = sorted(max(-PLAIN, min(PLAIN, away)) for away in sizes)
    return Asked((*right, *odd), distance(judged.checks), tuple(capped))


def compare(recipe: Recipe, learners: int) -> None:
    """Lay out papers by one recipe, and print how far they differ."""
    plan = Plan("measured", Text.of("Measured"), (Made(recipe),), seed=1)
    began = time.process_time()
    drawn = pattern(recipe, "1")
    drawing = time.process_time() - began
    papers: list[tuple[Question, ...]] = []
    took: list[float] = []
    for learner in range(learners):
        began = time.process_time()
        papers.append(questions_of(plan, f"k-{learner:03}"))
        took.append(1000.0 * (time.process_time() - began) / recipe.count)
    by_slot: dict[str, list[Asked]] = {}
    for paper in papers:
        for each in paper:
            by_slot.setdefault(each.slot, []).append(asked_by(each.coupon))
    kinds = max(len({each.kind for each in slot}) for slot in by_slot.values())
    spans = [max(e.away for e in slot) - min(e.away for e in slot) for slot in by_slot.values()]
    every = [
        max(one) - min(one)
        for slot in by_slot.values()
        for one in zip(*(each.sizes for each in slot), strict=True)
    ]
    means = [fmean(abs(each.away) for each in row) for row in zip(*by_slot.values(), strict=True)]
    sections = Counter(str(each.coupon.section) for paper in papers for each in paper)
    total = learners * recipe.count
    own = {str(each.coupon.section) for each in drawn}
    fallen = sum(count for section, count in sections.items() if section in own)
    print(f"{recipe.measure}, {recipe.unit}, {recipe.count} coupons, {learners} learners:")
    print(f"  kinds at one place, most: {kinds}")
    print(f"  distance to the limit at one place, widest: {max(spans):.2f} doubts")
    print(f"  the same of every size up to {PLAIN:g} doubts: {max(every):.2f} doubts")
    print(f"  mean distance of a paper: {min(means):.3f} to {max(means):.3f} doubts")
    print(f"  welds that are another learner's too: {total - len(sections)} of {total}")
    print(f"  welds that are the pattern's own: {fallen} of {total}")
    print(
        f"  a coupon: median {median(took):.1f} ms, most {max(took):.1f}; pattern {drawing:.2f} s"
    )


def main(arguments: list[str]) -> int:
    """Compare papers by four recipes."""
    learners = int(arguments[0]) if arguments else 200
    coupons = int(arguments[1]) if len(arguments) > 1 else 20
    for recipe in (
        Recipe(coupons, seed=1, in_doubt=0.1),
        Recipe(coupons, seed=1, unit="in"),
        Recipe(coupons, seed=1, measure="throat"),
        Recipe(coupons, seed=1, nearest=1.05, farthest=3.0),
    ):
        compare(recipe, learners)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
