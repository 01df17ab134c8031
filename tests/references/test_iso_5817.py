"""ISO 5817, Table 1, fillet welds: limits at worked inputs, the caps included.

Sources and how surely they are known: 503 (convexity) seen in EN ISO 5817:2007; 5011/5012
(undercut) seen; 5213, 5214, 512 and 617 second-hand, in EN 25817:1992, carried over from memory;
505 (toe angle), 506 (overlap) and "short" (25 mm in any 100 mm) from memory. The worked values were
computed from those formulas. What is tested is what a judged weld is held to, not the table.
"""

from __future__ import annotations

import math

import pytest

from exercises.conditions import Conditions
from exercises.coupon import Callout, Coupon
from exercises.judging import judge
from geometry.bead import Bead, Undercut
from geometry.joint import Joint
from geometry.section import Section

LEVELS = ("iso-5817-d", "iso-5817-c", "iso-5817-b")
NONE = 0.0


def held_to(
    level: str,
    key: str,
    *,
    throat: float = 5.0,
    width: float = 8.0,
    plate: float = 12.0,
    extent: float = 1.0,
    length: float | None = None,
) -> float | None:
    """The limit that a weld's measure is held to, mm; None where nothing limits it."""
    leg = width / math.sqrt(2.0)
    joint = Joint(base_thickness=plate, upright_thickness=plate)
    groove = Undercut(0.05, 1.0)
    section = Section.of(joint, Bead(leg, leg, 0.2, undercut_base=groove))
    callout = Callout(throat, "throat", f"{throat:g} mm")
    conditions = Conditions(weld_length=length)
    coupon = Coupon("a", section, callout, rules=level, extent=extent, conditions=conditions)
    return next((check.limit for check in judge(coupon).checks if check.key == key), None)


@pytest.mark.parametrize(
    ("width", "limits"),
    [
        (5.0, (2.25, 1.75, 1.50)),
        (10.0, (3.50, 2.50, 2.00)),
        (14.1, (4.525, 3.115, 2.41)),
        (16.0, (5.0, 3.4, 2.6)),  # D's cap binds from here.
        (20.0, (5.0, 4.0, 3.0)),  # C and B just reach theirs.
        (24.0, (5.0, 4.0, 3.0)),
    ],
)
def test_503_convexity(width: float, limits: tuple[float, ...]) -> None:
    # S: EN ISO 5817:2007; D and C second-hand as well. Values C.
    assert [held_to(level, "convexity", width=width) for level in LEVELS] == pytest.approx(limits)


@pytest.mark.parametrize(
    ("plate", "extent", "limits"),
    [
        (2.0, 0.25, (0.4, 0.2, NONE)),
        (2.0, 0.26, (NONE, NONE, NONE)),
        (3.0, 0.25, (0.6, 0.3, NONE)),
        (4.0, 1.0, (0.8, 0.4, 0.2)),
        (10.0, 1.0, (1.0, 0.5, 0.5)),
        (25.0, 1.0, (1.0, 0.5, 0.5)),
    ],
)
def test_5011_undercut(plate: float, extent: float, limits: tuple[float, ...]) -> None:
    # S; "short" M. Values C. B at 3 mm and below: not permitted (S).
    found = [held_to(level, "undercut_base", plate=plate, extent=extent) for level in LEVELS]
    assert found == pytest.approx(limits)


@pytest.mark.parametrize("length", [None, 40.0, 99.0, 100.0, 800.0])
def test_short_is_a_quarter_of_a_weld_however_long(length: float | None) -> None:
    # M: 25 mm in any 100 mm, or a quarter of a weld shorter than that.
    for extent, limit in ((0.25, 0.4), (0.2501, NONE)):
        found = held_to("iso-5817-d", "undercut_base", plate=2.0, extent=extent, length=length)
        assert found == pytest.approx(limit)


@pytest.mark.parametrize(
    ("throat", "plate", "under"),
    [
        (5.0, 12.0, (0.8, 0.8, NONE)),
        (7.0, 12.0, (1.0, 1.0, NONE)),  # C's cap binds from here.
        (8.0, 12.0, (1.1, 1.0, NONE)),
        (17.0, 40.0, (2.0, 1.0, NONE)),  # D's cap binds from here.
        (20.0, 40.0, (2.0, 1.0, NONE)),
        (3.0, 3.0, (0.5, 0.2, NONE)),
    ],
)
def test_5213_insufficient_throat(throat: float, plate: float, under: tuple[float, ...]) -> None:
    # Above 3 mm S2 (EN 25817 no. 15), up to 3 mm M; short only. Values C.
    for level, allowed in zip(LEVELS, under, strict=True):
        for extent, here in ((0.25, allowed), (1.0, NONE)):
            limit = held_to(
                level, "effective_throat", throat=throat, width=8.0, plate=plate, extent=extent
            )
            assert limit == pytest.approx(throat - here)


@pytest.mark.parametrize(
    ("throat", "limits"),
    [(5.0, (None, 2.0, 1.75)), (15.0, (None, 4.0, 3.0)), (13.0, (None, 3.6, 2.95)),
     (40.0 / 3.0, (None, 11.0 / 3.0, 3.0)), (20.0, (None, 4.0, 3.0))],
)  # fmt: skip
def test_5214_excessive_throat(throat: float, limits: tuple[float | None, ...]) -> None:
    # C and B S2 (EN 25817 no. 14); D permitted since 2003, M. Values C.
    found = [held_to(level, "excess_throat", throat=throat) for level in LEVELS]
    assert found[0] is limits[0]
    assert found[1:] == pytest.approx(limits[1:])


def test_512_unequal_legs() -> None:
    # S2: EN 25817 no. 20, a = 5. Where asymmetry is called for it doesn't apply (M).
    assert [held_to(level, "asymmetry") for level in LEVELS] == pytest.approx([3.0, 2.75, 2.25])
    section = Section.of(Joint(), Bead(7.0, 12.0))
    unequal = Callout(7.0, "leg", "7 mm", upright_size=12.0, upright_text="12 mm")
    checks = judge(Coupon("a", section, unequal, rules="iso-5817-b")).checks
    assert "asymmetry" not in {check.key for check in checks}


@pytest.mark.parametrize(
    ("throat", "plate", "limits"),
    [
        (5.0, 12.0, (2.5, 1.5, 1.0)),
        (10.0, 12.0, (4.0, 2.5, 1.5)),  # D's cap binds.
        (15.0, 12.0, (4.0, 3.0, 2.0)),  # All caps bind.
        (3.0, 3.0, (0.8, 0.6, 0.5)),
    ],
)
def test_617_root_gap(throat: float, plate: float, limits: tuple[float, ...]) -> None:
    # Above 3 mm S2 (EN 25817 no. 10), up to 3 mm M. Values C.
    found = [held_to(level, "root_opening", throat=throat, plate=plate) for level in LEVELS]
    assert found == pytest.approx(limits)


def test_505_toe_angle_and_506_overlap() -> None:
    # M, both: 90, 100 and 110 degrees; a fifth of the face's width, or none.
    assert [held_to(level, "toe_angle_upright") for level in LEVELS] == [90.0, 100.0, 110.0]
    found = [held_to(level, "overlap_base", width=10.0) for level in LEVELS]
    assert found == pytest.approx([2.0, 0.0, 0.0])


@pytest.mark.parametrize("level", LEVELS)
def test_a_weld_on_either_side_of_its_limit(level: str) -> None:
    # The table's figure is where the verdict turns: convexity of a 10 mm wide face.
    limit = held_to(level, "convexity", width=10.0)
    assert limit is not None
    leg = 10.0 / math.sqrt(2.0)
    for crown, said in ((limit - 1e-6, True), (limit + 1e-6, False)):
        section = Section.of(Joint(), Bead(leg, leg, crown))
        coupon = Coupon("a", section, Callout(4.0, "throat", "4 mm"), rules=level)
        (found,) = [check for check in judge(coupon).checks if check.key == "convexity"]
        assert found.passed is said
