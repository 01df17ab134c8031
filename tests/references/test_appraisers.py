"""Agreement between appraisers, and gauge studies, against published ones.

Sources: the attribute study of the AIAG MSA manual, 3rd and 4th edition (its table is from memory,
and every published summary of it comes out); the 15-part attribute study in the public tests of a
statistics package; ISO 22514-7, 12.3, Table 12 and Table A.4.
"""

from __future__ import annotations

import numpy as np
import pytest

from exercises.learner.agreement import appraise, bowker, cohen_kappa, fleiss_kappa, grey_zones
from exercises.learner.demonstration import Share
from exercises.learner.gauge_study import gauge_study

AIAG = """
1 111 111 111 1; 2 111 111 111 1; 3 000 000 000 0; 4 000 000 000 0; 5 000 000 000 0;
6 110 110 100 1; 7 111 111 101 1; 8 111 111 111 1; 9 000 000 000 0; 10 111 111 111 1;
11 111 111 111 1; 12 000 000 010 0; 13 111 111 111 1; 14 110 111 100 1; 15 111 111 111 1;
16 111 111 111 1; 17 111 111 111 1; 18 111 111 111 1; 19 111 111 111 1; 20 111 111 111 1;
21 110 101 010 1; 22 001 010 110 0; 23 111 111 111 1; 24 111 111 111 1; 25 000 000 000 0;
26 010 000 001 0; 27 111 111 111 1; 28 111 111 111 1; 29 111 111 111 1; 30 000 001 000 0;
31 111 111 111 1; 32 111 111 111 1; 33 111 111 111 1; 34 001 001 011 0; 35 111 111 111 1;
36 110 111 101 1; 37 000 000 000 0; 38 111 111 111 1; 39 000 000 000 0; 40 111 111 111 1;
41 111 111 111 1; 42 000 000 000 0; 43 101 111 110 1; 44 111 111 111 1; 45 000 000 000 0;
46 111 111 111 1; 47 111 111 111 1; 48 000 000 000 0; 49 111 111 111 1; 50 000 000 000 0
"""
ROWS = [row.split() for row in AIAG.replace("\n", " ").split(";")]
TRUTH = [row[4] == "1" for row in ROWS]
CALLS = {
    name: [[mark == "1" for mark in row[at]] for row in ROWS] for at, name in enumerate("ABC", 1)
}

STUDY = {
    "EG": "YYYNNNYYYYNNYYYYYYYYYNNNNNNYYYNNNYYYYYYNNNYYY",
    "BL": "YYYNNNYYYYNNYYYYYYNNNNNNNNNYYYNNNYYYYYYNNNYYY",
    "MH": "YYYYYYYYYYYYYYYYYYYYYNNYYNNYYYYNYYYYYYYNNNYYY",
}
STUDY_TRUTH = [mark == "Y" for mark in "YNYYYNYNNYNYYYY"]


def of_three(marks: str) -> list[list[bool]]:
    return [[mark == "Y" for mark in marks[at : at + 3]] for at in range(0, len(marks), 3)]


def flat(calls: list[list[bool]]) -> np.ndarray:
    return np.array(calls).ravel()


def crossed(one: np.ndarray, other: np.ndarray) -> list[list[int]]:
    return [[int(((one == a) & (other == b)).sum()) for b in (False, True)] for a in (False, True)]


def tallies(*calls: np.ndarray) -> list[list[int]]:
    """Of each part how many ratings are bad, how many good."""
    good = np.sum(calls, axis=0)
    return [[len(calls) - int(count), int(count)] for count in good]


@pytest.mark.parametrize(
    ("pair", "counts", "kappa"),
    [
        ("AB", [[44, 6], [3, 97]], 0.863),
        ("AC", [[43, 7], [8, 92]], 0.776),
        ("BC", [[42, 5], [9, 94]], 0.788),
    ],
)
def test_aiag_pairs(pair: str, counts: list[list[int]], kappa: float) -> None:
    table = crossed(flat(CALLS[pair[0]]), flat(CALLS[pair[1]]))
    assert table == counts
    assert cohen_kappa(table) == pytest.approx(kappa, abs=5e-4)


@pytest.mark.parametrize(
    ("name", "effective", "interval", "misses", "alarms", "kappa", "standing"),
    [
        ("A", 42, (0.709, 0.928), 3, 5, 0.879, ("marginal", "unacceptable", "acceptable")),
        ("B", 45, (0.782, 0.967), 3, 2, 0.923, ("acceptable", "unacceptable", "acceptable")),
        ("C", 40, (0.663, 0.900), 6, 9, 0.774, ("marginal", "unacceptable", "marginal")),
    ],
)
def test_aiag_appraisers(
    name: str,
    effective: int,
    interval: tuple[float, float],
    misses: int,
    alarms: int,
    kappa: float,
    standing: tuple[str, str, str],
) -> None:
    found = appraise(CALLS[name], TRUTH)
    assert found.effective == Share(effective, 50)
    assert (found.effective.low, found.effective.high) == pytest.approx(interval, abs=5e-4)
    # No part of this study was called alike and wrong.
    assert found.repeated == found.effective
    assert found.misses == Share(misses, 48)
    assert found.false_alarms == Share(alarms, 102)
    assert found.kappa == pytest.approx(kappa, abs=5e-4)
    told = (found.standing("effectiveness"), found.standing("misses"),
            found.standing("false alarms"))  # fmt: skip
    assert told == standing


def test_aiag_system_and_fleiss() -> None:
    together = [[*a, *b, *c] for a, b, c in zip(*CALLS.values(), strict=True)]
    system = appraise(together, TRUTH)
    assert system.effective == Share(39, 50)
    assert (system.effective.low, system.effective.high) == pytest.approx((0.640, 0.885), abs=5e-4)
    # Fleiss' kappas of this study are recomputed, not printed anywhere that was seen.
    every = [[len(row) - sum(row), sum(row)] for row in together]
    assert fleiss_kappa(every) == pytest.approx(0.7936, abs=5e-5)
    for name, kappa in (("A", 0.7600), ("B", 0.8451), ("C", 0.7029)):
        within = [[3 - sum(row), sum(row)] for row in CALLS[name]]
        assert fleiss_kappa(within) == pytest.approx(kappa, abs=5e-5)


def test_grey_zones_of_iso_22514_7() -> None:
    """12.3: zones of 0.023448 and 0.024135; their mean is 23.8 % of a tolerance of 0.1."""
    values = [0.446697, 0.46, 0.470832, 0.50, 0.542704, 0.55, 0.566152]
    calls = [[False] * 3, [True, False, True], [True] * 3, [True] * 3, [True] * 3,
             [False, True, True], [False] * 3]  # fmt: skip
    low, high = grey_zones(values, calls, 0.45, 0.55)
    assert (low, high) == pytest.approx((0.024135, 0.023448), abs=1e-9)
    assert (low + high) / 2.0 == pytest.approx(0.0237915, abs=1e-9)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("name", "within", "against", "cohen", "misses", "alarms"),
    [
        ("EG", (14, 0.6805, 0.9983), (12, 0.5191, 0.9567), 0.612903, 0.20, 0.1667),
        ("BL", (14, 0.6805, 0.9983), (11, 0.4490, 0.9221), 0.492308, 0.20, 0.2667),
        ("MH", (12, 0.5191, 0.9567), (9, 0.3229, 0.8366), 0.264151, 0.6667, 0.10),
    ],
)
def test_the_study_of_15_parts(
    name: str,
    within: tuple[int, float, float],
    against: tuple[int, float, float],
    cohen: float,
    misses: float,
    alarms: float,
) -> None:
    found = appraise(of_three(STUDY[name]), STUDY_TRUTH)
    for share, (count, low, high) in ((found.repeated, within), (found.effective, against)):
        assert share == Share(count, 15)
        assert (share.low, share.high) == pytest.approx((low, high), abs=5e-5)
    assert found.kappa == pytest.approx(cohen, abs=5e-7)
    assert found.misses is not None
    assert found.misses.value == pytest.approx(misses, abs=5e-5)
    assert found.false_alarms is not None
    assert found.false_alarms.value == pytest.approx(alarms, abs=5e-5)


@pytest.mark.parametrize(
    ("name", "within", "against"),
    [("EG", 0.905462, 0.612919), ("BL", 0.910000, 0.486089), ("MH", 0.543919, 0.220152)],
)
def test_its_fleiss_kappas(name: str, within: float, against: float) -> None:
    calls = np.array(of_three(STUDY[name]))
    assert fleiss_kappa(tallies(*calls.T)) == pytest.approx(within, abs=5e-7)
    # Against the standard: the mean over the trials of each trial's kappa with the reference.
    each = [fleiss_kappa(tallies(trial, np.array(STUDY_TRUTH))) for trial in calls.T]
    assert np.mean(each) == pytest.approx(against, abs=5e-7)  # type: ignore[arg-type]


def test_its_appraisers_together() -> None:
    every = [np.array(of_three(marks)) for marks in STUDY.values()]
    assert fleiss_kappa(tallies(*np.concatenate(every, axis=1).T)) == pytest.approx(
        0.641667, abs=5e-7
    )
    pooled = sum(np.array(crossed(calls.ravel(), np.repeat(STUDY_TRUTH, 3))) for calls in every)
    assert pooled.tolist() == [[29, 16], [16, 74]]  # type: ignore[union-attr]
    assert cohen_kappa(pooled) == pytest.approx(0.466667, abs=5e-7)


def test_symmetry_of_iso_22514_7() -> None:
    """Table 12: 8.603 on 3 degrees of freedom, against 7.815: not symmetric."""
    found = bowker([[7, 3, 1], [10, 4, 7], [2, 1, 5]])
    assert (round(found.statistic, 3), found.freedom, found.symmetric) == (8.603, 3, False)


TABLE_A4 = """
8.120 8.435 8.480 7.445 6.815 7.490 9.965 10.010 9.560 6.140 5.960 6.365 5.690 5.600 5.780
2.855 2.450 2.585 10.685 10.595 10.775 6.725 6.275 6.545 4.970 5.105 5.510 9.875 10.100 9.875
8.200 8.290 8.245 7.300 7.120 7.075 9.660 9.340 9.250 6.095 6.185 6.185 5.080 5.340 5.440
2.315 2.585 2.315 10.450 10.840 11.050 6.240 6.120 6.300 5.015 5.285 5.150 10.080 9.800 9.970
8.525 8.435 8.345 7.535 7.355 7.085 9.830 9.695 9.515 6.140 6.140 6.050 5.780 5.735 5.555
2.630 2.360 2.585 10.865 11.000 11.180 6.590 6.500 6.725 5.060 5.195 5.105 10.190 9.785 9.965
"""


def test_gauge_study_of_iso_22514_7() -> None:
    """Table A.4: sums of squares, F of the interaction, and the two standard uncertainties."""
    study = gauge_study(np.array(TABLE_A4.split(), dtype=float).reshape(3, 10, 3))
    assert study.operators == pytest.approx(0.519, abs=5e-4)
    assert study.parts == pytest.approx(526.9, abs=0.05)
    assert study.interaction == pytest.approx(0.686, abs=5e-4)
    assert study.error == pytest.approx(1.917, abs=5e-4)
    assert study.interaction_f == pytest.approx(1.193, abs=5e-4)
    assert study.pooled
    assert study.repeatability == pytest.approx(0.1827, abs=5e-5)
    assert study.reproducibility == pytest.approx(0.08683, abs=1e-5)


def test_well_known_kappas() -> None:
    """A table of two by two, and ten subjects by fourteen raters: encyclopedia examples."""
    assert cohen_kappa([[20, 5], [10, 15]]) == pytest.approx(0.4)
    rated = [
        [0, 0, 0, 0, 14], [0, 2, 6, 4, 2], [0, 0, 3, 5, 6], [0, 3, 9, 2, 0], [2, 2, 8, 1, 1],
        [7, 7, 0, 0, 0], [3, 2, 6, 3, 0], [2, 5, 3, 2, 2], [6, 5, 2, 1, 0], [0, 2, 2, 3, 7],
    ]  # fmt: skip
    assert fleiss_kappa(rated) == pytest.approx(0.20993, abs=5e-6)
