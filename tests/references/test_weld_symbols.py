"""AWS A2.4 and ISO 2553: how the spacing of an intermittent fillet is counted.

Source: from memory, pitch centre to centre in AWS A2.4 and in system B of ISO 2553, the clear gap
in brackets in its system A; the worked figures were computed. What stands where in the symbols is
tested with their drawing.
"""

from __future__ import annotations

import pytest

from exercises.callout import Intermittent


@pytest.mark.parametrize(
    ("length", "gap", "pitch", "count", "overall"),
    [
        # C: l = 50, e = 100 is P = 150, and three welds reach over 50 + 2 * 150 = 350.
        (50.0, 100.0, 150.0, 3, 350.0),
        # C: 2-6 in inches, four in all: 2 + 3 * 6 = 20 in.
        (50.8, 101.6, 152.4, 4, 508.0),
    ],
)
def test_pitch_and_gap_of_the_same_welds(
    length: float, gap: float, pitch: float, count: int, overall: float
) -> None:
    welds = Intermittent(length, pitch, count)
    assert welds == Intermittent.of_gap(length, gap, count)
    assert welds.gap == pytest.approx(gap)
    assert welds.overall == pytest.approx(overall)
