"""How far sections that are taken from pictures are off: pictures of known sections, many of them.

``python -m tests.measure.photos --seeds 300`` renders as many sections out of dice, each by another
camera (12 to 26 pixels a mm, tilted, turned, blurred, noised, lit unevenly), and clicks with a hand
that is off by up to four pixels. It prints how the errors are spread: in mm, in pixels, in units of
the uncertainty that was stated, and as a share of what is promised, 0.1 mm or two pixels.
"""

from __future__ import annotations

import argparse
import time

import numpy as np

from exercises.intake.photo import outline_of
from geometry.faults import GeometryError
from geometry.measures import measure
from tests.exercises.intake.rendered import Hand, marked, rendered, section_of, shot_of, wire_of

NAMES = ("leg_base", "leg_upright", "actual_throat")


def errors_of(seed: int, off: float) -> tuple[np.ndarray, np.ndarray, float, float]:
    """Errors (mm), stated standard uncertainties (mm), pixels a mm, and seconds it took."""
    section, shot = section_of(seed), shot_of(seed)
    shown = rendered(section, shot)
    began = time.perf_counter()
    outline = outline_of(marked(shown, Hand(off, seed), straighten=True), wire_of(shown))
    took = time.perf_counter() - began
    true = measure(section)
    errors = [getattr(outline.measures, name) - getattr(true, name) for name in NAMES]
    said = [getattr(outline.doubts, name) for name in NAMES]
    return np.array(errors), np.array(said), shot.per_mm, took


def main() -> None:
    """Print the distribution."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, default=200)
    parser.add_argument("--off", type=float, default=4.0, help="pixels that a click is off by")
    asked = parser.parse_args()
    errors, said, scales, times, refused = [], [], [], [], []
    for seed in range(asked.seeds):
        try:
            error, doubt, per_mm, took = errors_of(seed, asked.off)
        except GeometryError as error_found:
            refused.append((seed, str(error_found)))
            continue
        errors.append(error)
        said.append(doubt)
        scales.append(per_mm)
        times.append(took)
    mm, scale = np.abs(np.array(errors)), np.array(scales)[:, None]
    share = (mm / np.maximum(0.1, 2.0 / scale)).max(axis=1)
    print(f"{len(mm)} pictures, {len(refused)} refused {refused[:3]}")
    print("50, 95, 99, 100 % of", ", ".join(NAMES))
    for name, values in (("mm", mm), ("pixels", mm * scale)):
        for at in (50, 95, 99, 100):
            row = np.percentile(values, at, axis=0)
            print(f"  {name:6} {at:3} %  {row[0]:.3f}  {row[1]:.3f}  {row[2]:.3f}")
    spread = np.sqrt(((np.array(errors) / np.array(said)) ** 2).mean(axis=0))
    print("rms of error over stated uncertainty", spread.round(2))
    print(
        f"within the promise: {100.0 * (share <= 1.0).mean():.1f} %; worst {share.max():.2f} of it"
    )
    print(f"time from clicks to measures: median {1000.0 * float(np.median(times)):.0f} ms")


if __name__ == "__main__":
    main()
