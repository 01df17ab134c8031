"""Items of a test and how far its score can be trusted, against published ones.

Sources: the answers of 1,000 candidates to five items each of two sections of a law school
admission test, Bock and Lieberman, Psychometrika 35 (1970) 179, as tabled in public data sets; what
common statistics packages print for them is from memory (for section 6: Rizopoulos, Journal of
Statistical Software 17 (2006) 5; for section 7: the manual of another), and all of it comes out.
Ten answers of ten students: "The Kuder-Richardson 20", a help page of East Carolina University.
Upper and lower half of a class: a public worksheet on item analysis (ten questions, ten students).
"""

from __future__ import annotations

import numpy as np
import pytest

from exercises.sitting.items import discrimination, upper_lower
from exercises.sitting.reliability import alpha, kr20

SIX = (3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15,
       10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28, 298)  # fmt: skip
SEVEN = (12, 19, 1, 7, 3, 19, 3, 17, 10, 5, 3, 7, 7, 23, 8, 28,
         7, 39, 11, 34, 14, 51, 15, 90, 6, 25, 7, 35, 18, 136, 32, 308)  # fmt: skip
"""Candidates with each pattern, 00000 to 11111, the first item's answer first."""

QUIZ = """1111110110 1011011101 1111011001 0010001000 0000010010
          1110111111 1101110111 1111111101 0101111101 1101101110"""
CLASS = """1111111111 1111111101 1101111100 0111110101 1110111001
           1110110100 0110110101 0111001010 1110100001 0100010010"""


def answers(counts: tuple[int, ...]) -> np.ndarray:
    patterns = [[int(mark) for mark in f"{pattern:05b}"] for pattern in range(32)]
    return np.repeat(np.array(patterns), counts, axis=0)


def marked(rows: str) -> np.ndarray:
    return np.array([[int(mark) for mark in row] for row in rows.split()])


def told(table: np.ndarray) -> list[float]:
    found = [
        discrimination(table[:, item], table.sum(axis=1) - table[:, item])
        for item in range(table.shape[1])
    ]
    return [each.value for each in found if each is not None]


def test_the_first_five_items() -> None:
    table = answers(SIX)
    assert table.mean(axis=0).tolist() == pytest.approx([0.924, 0.709, 0.553, 0.763, 0.870])
    assert kr20(table) == pytest.approx(0.2950, abs=5e-5)
    without = [alpha(np.delete(table, item, axis=1)) for item in range(5)]
    assert without == pytest.approx([0.2754, 0.2376, 0.2168, 0.2459, 0.2663], abs=5e-5)
    assert told(table) == pytest.approx([0.113, 0.153, 0.173, 0.144, 0.122], abs=5e-4)


def test_the_other_five_items() -> None:
    table = answers(SEVEN)
    assert table.mean(axis=0).tolist() == pytest.approx([0.828, 0.658, 0.772, 0.606, 0.843])
    assert kr20(table) == pytest.approx(0.453, abs=5e-4)
    assert told(table) == pytest.approx([0.246, 0.247, 0.313, 0.223, 0.175], abs=5e-4)


def test_the_quiz_of_ten() -> None:
    table = marked(QUIZ)
    assert table.sum(axis=1).tolist() == [8, 7, 7, 2, 2, 9, 8, 9, 7, 7]
    shares = table.mean(axis=0)
    assert shares.tolist() == pytest.approx([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6])
    assert table.sum(axis=1).var() == pytest.approx(5.84)
    # The page's formula with the page's figures.
    assert kr20(table) == pytest.approx(10 / 9 * (1.0 - 2.18 / 5.84))


def test_upper_and_lower_half() -> None:
    table = marked(CLASS)
    totals = table.sum(axis=1)
    found = [upper_lower(table[:, item], totals, 0.5) for item in range(10)]
    assert found == pytest.approx([0.4, 0.0, 0.0, 0.6, 0.4, 0.4, 0.6, 0.4, -0.2, 0.4])
