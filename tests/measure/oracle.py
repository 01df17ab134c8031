"""How far a second opinion on measures and readings, from clouds of points, agrees.

    python -m tests.measure.oracle                   # 5,000 random sections
    python -m tests.measure.oracle --count 200 --seed 9
    python -m tests.measure.oracle --fault           # with a wrong put in, which must be found

The second opinion is `tests/geometry/oracle.py`. Where its points can't tell on which side of a
limit something lies, it says nothing, and that is counted too.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections import Counter
from dataclasses import dataclass, field
from functools import partial

from geometry import measures, reading
from geometry.joint import MEMBERS
from geometry.leaf import EDGES, Leaf
from geometry.pose import Pose
from geometry.section import Section
from tests.geometry.drags import random_section
from tests.geometry.oracle import Ruler

__all__ = ["Tally", "compare", "run"]

LENGTHS = 2e-4
"""mm: how far two measures may differ."""

ANGLES = 0.02
"""Degrees."""

GAPS = 4e-3
"""mm: the points lie two thousandths apart."""


@dataclass
class Tally:
    """What agreed, what the cloud left open, and every disagreement in words."""

    agreed: Counter[str] = field(default_factory=Counter)
    silent: Counter[str] = field(default_factory=Counter)
    against: list[str] = field(default_factory=list)


def compare(section: Section, rng: random.Random, tally: Tally) -> None:
    """Compare every measure, and readings at home with leaves about the bead's own size."""
    ruler, found = Ruler(section), measures.measure(section)
    for key, value in ruler.measures().items():
        within = ANGLES if "angle" in key else LENGTHS
        if abs(getattr(found, key) - value) <= within:
            tally.agreed["measures"] += 1
        else:
            tally.against.append(f"{key}: {getattr(found, key)} and {value}")
    for wanted in (found.effective_size, found.leg_base, found.leg_upright):
        size = max(3.0, wanted + rng.choice([rng.uniform(-2.0, 2.0), rng.uniform(-0.15, 0.15)]))
        for edge in EDGES:
            for member in MEMBERS:
                _compare_reading(section, ruler, Leaf(size, "leaf", edge), member, tally)


def _compare_reading(section: Section, ruler: Ruler, leaf: Leaf, on: str, tally: Tally) -> None:
    member = MEMBERS[0] if on == MEMBERS[0] else MEMBERS[1]
    seat = ruler.seat(leaf, member)
    if seat is None:
        tally.silent[leaf.edge] += 1
        return
    turned = leaf.edge == "leg" and member == "base"
    pose = Pose(seat.x, seat.y, section.joint.angle if turned else 0.0, turned)
    shown = reading.read(section, leaf, pose)
    same = shown.state == seat.state and (shown.gap is None) == (seat.gap is None)
    if same and (seat.gap is None or abs(seat.gap - (shown.gap or 0.0)) <= GAPS):
        tally.agreed[f"{leaf.edge} {seat.state}"] += 1
    else:
        tally.against.append(
            f"{leaf.edge} {leaf.size:.4f} on {on}: {shown.state} {shown.gap}, and {seat}"
        )


def run(count: int, seed: int) -> Tally:
    """Compare over `count` random sections."""
    rng, tally = random.Random(seed), Tally()
    for index in range(count):
        before = len(tally.against)
        compare(random_section(rng), rng, tally)
        for line in tally.against[before:]:
            print(f"section {index}: {line}", flush=True)
    return tally


def main() -> int:
    """Read the command line and compare."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--count", type=int, default=5000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--fault", action="store_true", help="read with an eye 0.02 mm too sharp")
    given = parser.parse_args()
    if given.fault:
        reading.read = partial(reading.read, eye_limit=0.08)
    began = time.process_time()
    tally = run(given.count, given.seed)
    print(f"agreed: {dict(sorted(tally.agreed.items()))}")
    print(f"left open: {dict(tally.silent)}; against: {len(tally.against)}")
    print(f"{given.count} sections, {time.process_time() - began:.0f} s of processor time")
    return 1 if tally.against else 0


if __name__ == "__main__":
    sys.exit(main())
