"""How far scans of known sections are read off: legs, throat, angle, over many seeds.

    python -m tests.measure.scans [COUNT]

Each seed makes another section (60 to 135 degrees, convex, flat or hollow, undercut, overlap or
spatter in four of five) and scans it in another frame, with one point in a hundred an outlier, one
in fifty missing, and two gaps. Points lie 0.05 mm apart.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from exercises.intake.cloud import cloud_of_points
from exercises.intake.refusal import IntakeError
from exercises.intake.scan import fit_section
from geometry.measures import measure
from tests.exercises.intake.scans import Kind, random_section, scan

FloatArray = NDArray[np.float64]
FRAMES = ("valley", "level", "mirrored", "turned")
SHARES = (0.5, 0.9, 0.95, 0.99, 1.0)


@dataclass(frozen=True)
class Row:
    """What one scan came to: errors, each with the standard uncertainty that was given for it."""

    seed: int
    legs: tuple[tuple[float, float], tuple[float, float]]
    throat: tuple[float, float]
    angle: tuple[float, float]
    points: int
    overlap: bool


def read(seed: int, noise: float) -> Row | None:
    """Read one scan; None if no section was found in it."""
    section = random_section(seed)
    points = scan(section, Kind(noise=noise, frame=FRAMES[seed % 4]), seed)
    try:
        found = fit_section(cloud_of_points(points[:, 0], points[:, 1]))
    except IntakeError:
        return None
    bead, toes = section.bead, (found.toe_base, found.toe_upright)
    true = (bead.leg_base, bead.leg_upright)
    straight = abs(toes[0].at - true[0]) + abs(toes[1].at - true[1])
    crossed = abs(toes[1].at - true[0]) + abs(toes[0].at - true[1])
    # A scan doesn't say which member is the base.
    one, two = toes if straight <= crossed else toes[::-1]
    return Row(
        seed,
        ((one.at - true[0], one.uncertainty), (two.at - true[1], two.uncertainty)),
        (found.throat - measure(section).actual_throat, found.u_throat),
        (found.angle - section.joint.angle, found.u_angle),
        len(found.trace),
        bead.overlap_base is not None,
    )


def say(name: str, pairs: list[tuple[float, float]]) -> None:
    """Print how the errors are spread, and how many are within twice their uncertainty."""
    errors, doubts = (np.array([pair[at] for pair in pairs]) for at in (0, 1))
    spread = " ".join(f"{value:.4f}" for value in np.quantile(np.abs(errors), SHARES))
    within = float(np.mean(np.abs(errors) <= 2.0 * doubts))
    print(f"  {name:22} {spread}   mean {errors.mean():+.4f}   within 2u {within:.0%}")


def main() -> None:
    """Read so many scans at both levels of noise."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    for noise in (0.01, 0.05):
        rows = [read(seed, noise) for seed in range(count)]
        found = [row for row in rows if row is not None]
        print(f"noise {noise} mm: {count} scans, {count - len(found)} without a section")
        print("  |error| at             50%    90%    95%    99%    worst")
        legs = [leg for row in found for leg in row.legs]
        say("leg, mm", legs)
        say("leg, no overlap, mm", [leg for r in found if not r.overlap for leg in r.legs])
        say("throat, mm", [row.throat for row in found])
        say("angle, degrees", [row.angle for row in found])
        counts = np.array([row.points for row in found])
        print(f"  points of a face: {np.median(counts):g} in the middle, {counts.max()} at most")
        worst = sorted(found, key=lambda row: -max(abs(leg[0]) for leg in row.legs))[:5]
        print(f"  worst seeds: {[row.seed for row in worst]}")


if __name__ == "__main__":
    main()
