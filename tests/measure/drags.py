"""Twenty thousand random drags, examined: how deep, how restful, how often in contact.

    python -m tests.measure.drags [COUNT] [SEED]

Two processes share the work. Each drag is examined at every sub-pose, at three places between
every two, and by random small steps from its rest, with code that the kernel does not use.
"""

from __future__ import annotations

import random
import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor

from tests.geometry.drags import Findings, examine, random_leaf, random_pull, random_section

_PER_SECTION = 8
_BATCH = 80


def batch(seed: int) -> list[Findings]:
    """Examine one batch of drags; every one is named by its seed."""
    rng = random.Random(seed)
    found: list[Findings] = []
    while len(found) < _BATCH:
        section, leaf = random_section(rng), random_leaf(rng)
        for _ in range(_PER_SECTION):
            pull = random_pull(rng, section, leaf)
            found.append(examine(pull, pull.drag(), rng, tries=30))
    return found


def main() -> int:
    """Run the batches and say what was found."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    seeds = range(first, first + -(-count // _BATCH))
    totals: Counter[str] = Counter()
    deepest = saving = 0.0
    with ProcessPoolExecutor(2) as pool:
        for seed, found in zip(seeds, pool.map(batch, seeds), strict=True):
            totals["drags"] += len(found)
            totals["moved"] += sum(one.moved for one in found)
            totals["in contact"] += sum(one.contact for one in found)
            totals["entered"] += sum(one.deepest > 1e-6 for one in found)
            totals["not at rest"] += sum(one.saving > 1e-3 for one in found)
            worst = max(found, key=lambda one: (one.deepest, one.saving))
            deepest = max(deepest, worst.deepest)
            saving = max(saving, *(one.saving for one in found))
            if any(one.deepest > 1e-6 or one.saving > 1e-3 for one in found):
                print(f"seed {seed}: look here", flush=True)
    drags = totals["drags"]
    print(
        f"drags {drags}, moved {totals['moved'] / drags:.3f}, "
        f"in contact {totals['in contact'] / drags:.3f}"
    )
    print(
        f"deepest {deepest:.1e} mm ({totals['entered']} above 1e-6), "
        f"most a small step saves {saving:.1e} mm2 ({totals['not at rest']} above 1e-3)"
    )
    return 1 if totals["entered"] or totals["not at rest"] else 0


if __name__ == "__main__":
    sys.exit(main())
