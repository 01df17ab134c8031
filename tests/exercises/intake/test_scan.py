"""Synthetic scans against their true sections, and what no section can be found in.

The limits below are our own: no source says how well a scan must be read. They stand well above
what tests/measure/scans.py finds over many seeds, and far below what a leaf can tell.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exercises.intake.cloud import Cloud, cloud_of_outlines, cloud_of_points
from exercises.intake.face import simplified
from exercises.intake.outline import Outline
from exercises.intake.refusal import IntakeError
from exercises.intake.scan import TOLERANCE, Fitted, Wishes, fit_section
from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint
from geometry.measures import measure
from geometry.section import Section
from tests.exercises.intake.scans import Kind, scan, surface, turned

PLAIN = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))


def cloud(section: Section, kind: Kind, seed: int) -> Cloud:
    points = scan(section, kind, seed)
    return cloud_of_points(points[:, 0], points[:, 1], "a.csv")


def legs(found: Fitted) -> list[float]:
    return sorted([found.toe_base.at, found.toe_upright.at])


@pytest.mark.parametrize("angle", [60.0, 75.0, 90.0, 110.0, 135.0])
@pytest.mark.parametrize("crown", [0.9, 0.0, -0.4])
@pytest.mark.parametrize(
    ("noise", "leg", "throat"), [(0.0, 0.01, 0.01), (0.01, 0.05, 0.02), (0.05, 0.25, 0.07)]
)
def test_a_scan_is_read_as_its_section_is(
    angle: float, crown: float, noise: float, leg: float, throat: float
) -> None:
    section = Section.of(Joint(angle), Bead(8.0, 6.7, crown))
    found = fit_section(cloud(section, Kind(noise=noise, frame="turned"), 11))
    assert found.angle == pytest.approx(angle, abs=0.05 + 4.0 * noise)
    assert legs(found) == pytest.approx([6.7, 8.0], abs=leg)
    assert found.throat == pytest.approx(measure(section).actual_throat, abs=throat)


@pytest.mark.parametrize("frame", ["valley", "level", "mirrored", "turned"])
def test_any_frame_gives_the_same_section(frame: str) -> None:
    found = fit_section(cloud(PLAIN, Kind(noise=0.01, frame=frame), 5))
    assert legs(found) == pytest.approx([6.7, 8.0], abs=0.05)
    assert found.trace[0] == (found.toe_base.at, 0.0)
    Section.of(Joint(found.angle), Bead.traced(found.trace, Joint(found.angle)))


GROOVE = Undercut(0.4, 1.0)
TRAPS: list[tuple[str, Bead, tuple[Spatter, ...]]] = [
    ("undercut", Bead(8.0, 6.7, 0.5, undercut_base=Undercut(0.5, 1.5)), ()),
    ("undercuts", Bead(8.0, 6.7, undercut_base=GROOVE, undercut_upright=Undercut(0.5, 1.4)), ()),
    ("overlap", Bead(8.0, 6.7, -0.3, overlap_base=Overlap(1.2)), ()),
    ("spatter", Bead(8.0, 6.7, 0.5), (Spatter("base", 12.0, 0.8), Spatter("upright", 11.0, 0.5))),
]  # fmt: skip


@pytest.mark.parametrize(("bead", "drops"), [trap[1:] for trap in TRAPS], ids=[t[0] for t in TRAPS])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_what_spoils_a_toe_moves_no_leg(bead: Bead, drops: tuple[Spatter, ...], seed: int) -> None:
    found = fit_section(cloud(Section.of(Joint(), bead, drops), Kind(noise=0.01), seed))
    assert legs(found) == pytest.approx([6.7, 8.0], abs=0.08)


def test_uncertainty_covers_the_errors() -> None:
    inside = total = 0
    for seed in range(25):
        found = fit_section(cloud(PLAIN, Kind(noise=0.03), seed))
        for toe, true in zip(
            sorted([found.toe_base, found.toe_upright], key=lambda toe: toe.at),
            (6.7, 8.0),
            strict=True,
        ):
            inside += abs(toe.at - true) <= 2.0 * toe.uncertainty
            total += 1
    # Two standard uncertainties should hold 95 of 100.
    assert inside / total >= 0.9


def test_the_same_points_give_the_same_section() -> None:
    one, two = (fit_section(cloud(PLAIN, Kind(noise=0.05), 9)) for _ in range(2))
    assert one.trace == two.trace


def test_outliers_and_patches_are_left_out_and_said_so() -> None:
    points = scan(PLAIN, Kind(noise=0.02, outliers=0.0, drop_outs=0.0), 4)
    points[100, 1] += 3.0
    points[300:310, 1] += 5.0
    found = cloud_of_points(points[:, 0], points[:, 1])
    removed = {tuple(point) for point in found.removed}
    assert {tuple(points[at]) for at in (100, *range(300, 310))} <= removed
    assert "stray" in found.whys
    assert len(found.removed) == len(found.whys) <= 15


def test_sentinels_and_nan_are_places_where_nothing_was_seen() -> None:
    points = scan(PLAIN, Kind(drop_outs=0.0), 4)
    points[50:60, 1] = math.nan
    points[200:230, 1] = -9999.0
    found = cloud_of_points(points[:, 0], points[:, 1])
    expected = np.isnan(points[:, 1]) | (points[:, 1] == -9999.0)
    assert sorted(found.unseen) == sorted(points[expected, 0])


def test_a_gap_in_the_face_is_spoken_of() -> None:
    points = scan(PLAIN, Kind(noise=0.005, outliers=0.0, drop_outs=0.0), 4)
    middle = len(points) // 2
    points[middle - 15 : middle + 15, 1] = math.nan
    found = fit_section(cloud_of_points(points[:, 0], points[:, 1]))
    assert [one.code for one in found.notes] == ["fit-gap"]


def test_what_a_hand_puts_stays() -> None:
    kind = cloud(PLAIN, Kind(noise=0.01, frame="level"), 6)
    proposed = fit_section(kind)
    by_hand = fit_section(kind, Wishes(toe_base=7.5, toe_upright=6.0))
    assert (by_hand.toe_base.at, by_hand.toe_upright.at) == (7.5, 6.0)
    assert by_hand.trace[0] == (7.5, 0.0)
    swapped = fit_section(kind, Wishes(swapped=True))
    assert swapped.toe_base.at == pytest.approx(proposed.toe_upright.at, abs=1e-9)
    across, up = proposed.axes
    root = proposed.root + 0.3 * across + 0.3 * up
    moved = fit_section(kind, Wishes(root=(float(root[0]), float(root[1]))))
    assert moved.root == pytest.approx(root)
    assert legs(moved)[1] < legs(proposed)[1]
    ends = proposed.in_file(np.array([[9.0, 0.4], [17.0, -0.3]]))
    base = ((float(ends[0][0]), float(ends[0][1])), (float(ends[1][0]), float(ends[1][1])))
    posts = [proposed.root + up * at + across * 0.3 for at in (8.0, 16.0)]
    upright = ((float(posts[0][0]), float(posts[0][1])), (float(posts[1][0]), float(posts[1][1])))
    near = fit_section(kind, Wishes(base=base, upright=upright))
    # Laid roughly by hand, then fitted to what lies beside it.
    assert near.angle == pytest.approx(90.0, abs=0.3)
    assert near.toe_base.at == pytest.approx(8.0, abs=0.1)


def test_drawn_outlines_are_taken_as_drawn() -> None:
    points = surface(PLAIN, 0.02, 12.0)
    whole = fit_section(cloud_of_outlines([Outline(points, closed=False)], 1.0))
    assert legs(whole) == pytest.approx([6.7, 8.0], abs=0.01)
    assert whole.throat == pytest.approx(measure(PLAIN).actual_throat, abs=TOLERANCE)
    parts = [
        Outline(np.array([[-20.0, 0.0], [60.0, 0.0]]), closed=False),
        Outline(np.array([[0.0, 0.0], [0.0, 50.0]]), closed=False),
        Outline(np.array([[8.0, 0.0], [5.0, 3.5], [0.0, 6.7]]), closed=False),
    ]
    apart = fit_section(cloud_of_outlines(parts, 1.0))
    assert np.array(apart.trace) == pytest.approx(np.array([[8.0, 0.0], [5.0, 3.5], [0.0, 6.7]]))
    alone = Outline(np.array([[0.0, 0.0], [8.0, 0.0], [5.0, 3.5], [0.0, 6.7]]), closed=True)
    bead = fit_section(cloud_of_outlines([alone], 1.0))
    assert legs(bead) == pytest.approx([6.7, 8.0], abs=0.01)


def test_inches_are_no_millimetres() -> None:
    points = surface(PLAIN, 0.02, 12.0) / 25.4
    found = fit_section(cloud_of_outlines([Outline(points, closed=False)], 25.4))
    assert legs(found) == pytest.approx([6.7, 8.0], abs=0.01)


@given(
    st.lists(st.tuples(st.floats(-20, 20), st.floats(-20, 20)), min_size=2, max_size=60),
    st.sampled_from([0.001, 0.01, 0.5]),
)
def test_simplifying_keeps_within_its_tolerance(
    spots: list[tuple[float, float]], tolerance: float
) -> None:
    points = np.array(spots, float)
    kept = simplified(points, tolerance)
    assert (kept[0] == points[0]).all()
    assert (kept[-1] == points[-1]).all()
    assert max(_nearest(kept, spot) for spot in points) <= tolerance * (1.0 + 1e-9) + 1e-12


def _nearest(line: np.ndarray, spot: np.ndarray) -> float:
    best = math.inf
    for start, end in itertools.pairwise(line):
        way = end - start
        square = float(way @ way)
        share = 0.0 if square == 0.0 else min(max(float((spot - start) @ way) / square, 0.0), 1.0)
        best = min(best, float(np.hypot(*(start + share * way - spot))))
    return best


@pytest.mark.parametrize("tolerance", [0.002, 0.01, 0.1])
def test_a_face_is_within_the_tolerance_of_its_points(tolerance: float) -> None:
    exact = cloud_of_outlines([Outline(surface(PLAIN, 0.02, 12.0), closed=False)], 1.0)
    found = fit_section(exact, Wishes(tolerance=tolerance))
    fine = fit_section(exact, Wishes(tolerance=1e-6))
    assert max(_nearest(np.array(found.trace), np.array(spot)) for spot in fine.trace) <= tolerance
    assert len(found.trace) < len(fine.trace)


def one_line() -> np.ndarray:
    across = np.linspace(0.0, 40.0, 400)
    return np.column_stack([across, 0.3 * across])


def bare_corner() -> np.ndarray:
    along = np.linspace(20.0, 0.0, 200)
    return np.vstack(
        [np.column_stack([0 * along, along]), np.column_stack([along[::-1], 0 * along])]
    )


def acute() -> np.ndarray:
    corner = bare_corner()
    corner[200:] = turned(corner[200:], math.radians(50.0))
    face = np.linspace(corner[120], corner[280], 60)
    return np.vstack([corner[:120], face, corner[280:]])


def scattered() -> np.ndarray:
    return np.random.default_rng(3).uniform(0.0, 30.0, (500, 2))


@pytest.mark.parametrize(
    ("points", "codes"),
    [
        (one_line(), {"fit-one-line"}),
        (bare_corner(), {"fit-one-line"}),
        (acute(), {"fit-angle", "fit-one-line"}),
        (scattered(), {"fit-one-line", "fit-no-line", "fit-angle", "fit-few-points"}),
        (one_line()[:12], {"fit-few-points"}),
        (one_line() * 1000.0, {"fit-size"}),
        (one_line() / 1000.0, {"fit-size"}),
        (np.full((300, 2), 3.0), {"fit-size"}),
        (np.zeros((0, 2)), {"fit-few-points"}),
    ],
    ids=["line", "corner", "acute", "noise", "few", "large", "small", "spot", "none"],
)  # fmt: skip
def test_where_there_is_no_section_the_reason_is_said(points: np.ndarray, codes: set[str]) -> None:
    with pytest.raises(IntakeError) as caught:
        fit_section(cloud_of_points(points[:, 0], points[:, 1], "a.csv"), name="a.csv")
    fault = caught.value.faults[0]
    assert fault.code in codes
    assert (fault.file, bool(fault.text), bool(fault.right)) == ("a.csv", True, True)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10**6), st.integers(20, 400), st.floats(1e-3, 100.0))
def test_any_points_are_a_section_or_a_reason(seed: int, count: int, size: float) -> None:
    rng = np.random.default_rng(seed)
    points = rng.uniform(-size, size, (count, 2)).round(int(rng.integers(0, 6)))
    points[rng.random(count) < 0.3, 1] = rng.choice([0.0, math.nan, size])
    try:
        found = fit_section(cloud_of_points(points[:, 0], points[:, 1]))
    except IntakeError as error:
        assert error.faults  # noqa: PT017  # a section would be as well
    else:
        Section.of(Joint(found.angle), Bead.traced(found.trace, Joint(found.angle)))


def test_a_hundred_thousand_points_are_thinned_and_said_so() -> None:
    kind = replace(Kind(noise=0.01, drop_outs=0.0), step=0.0004)
    found = cloud(PLAIN, kind, 1)
    assert found.every > 1
    assert legs(fit_section(found)) == pytest.approx([6.7, 8.0], abs=0.05)
