"""AWS D1.1 and AISC 360: undersize, convexity, undercut, root opening, least and greatest sizes.

Sources and how surely they are known: undersize, static undercut and overlap seen in D1.1:2000 and
D1.1/D1.1M:2004, Table 6.1; cyclic undercut second-hand; convexity (Tables 5.8, 5.9 of 2015) from
memory; root opening second-hand; minimum size seen in AISC 360-05 Table J2.4 (inch rows), its
metric breaks in D1.1 from memory; greatest size along an edge seen in AISC 360-05 J2.2b. Worked
values computed. What is tested is what a judged weld is held to, not the table.
"""

from __future__ import annotations

import pytest

from exercises.checks import Check
from exercises.conditions import Conditions
from exercises.coupon import Callout, Coupon
from exercises.judging import judge
from geometry.bead import Bead, Undercut
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.lengths import MM_PER_INCH, parse_length
from geometry.section import Section

STATIC, CYCLIC = "aws-d1.1-static", "aws-d1.1-cyclic"
THIN = Joint(base_thickness=6.0, upright_thickness=6.0)


def checks(
    size: str,
    *,
    rules: str = STATIC,
    joint: Joint = THIN,
    built_out: bool = False,
    leg: float = 14.0,
    crown: float = 0.2,
    extent: float = 1.0,
    conditions: Conditions | None = None,
) -> dict[str, Check]:
    """Every check of an equal-legged weld, by key."""
    bead = Bead(leg, leg, crown, undercut_base=Undercut(0.1, 1.0))
    callout = Callout(parse_length(size), "leg", size, built_out=built_out)
    section = Section.of(joint, bead)
    coupon = Coupon(
        "a", section, callout, rules=rules, extent=extent, conditions=conditions or Conditions()
    )
    return {check.key: check for check in judge(coupon).checks}


@pytest.mark.parametrize(
    ("size", "least"),
    [
        ("3/16 in", "1/8 in"), ("1/4 in", "5/32 in"), ("5/16 in", "3/16 in"), ("1/2 in", "3/8 in"),
        ("5 mm", "3 mm"), ("6 mm", "3.5 mm"), ("8 mm", "5 mm"), ("12 mm", "9 mm"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("rules", [STATIC, CYCLIC])
def test_undersize(size: str, least: str, rules: str) -> None:
    # S: Table 6.1 (6), 2000 and 2004; at most 10 % of the weld's length.
    for extent, wanted in ((0.1, least), (0.101, size), (1.0, size)):
        found = checks(size, rules=rules, extent=extent)
        for key in ("leg_base", "leg_upright"):
            assert found[key].limit == pytest.approx(parse_length(wanted))


def test_nothing_is_allowed_under_at_a_girder_s_ends() -> None:
    # S: Table 6.1 (6): none at the ends, over twice the flange's width.
    found = checks("8 mm", extent=0.05, conditions=Conditions(girder_end=True))
    assert found["leg_base"].limit == pytest.approx(8.0)


def test_an_inspector_s_arithmetic() -> None:
    # S: Inspection Trends, January 2011, page 16: 9/16 in called for, 1/16 allowed: the 1/2 leaf.
    assert parse_length("9/16 in") - parse_length("1/16 in") == leaf_of_mark("1/2 in").size


@pytest.mark.parametrize(
    ("width", "most", "unit"),
    [
        (8.0, 2.0, "mm"), (8.01, 3.0, "mm"), (24.99, 3.0, "mm"), (25.0, 5.0, "mm"),
        (5 / 16, 1 / 16, "in"), (0.3126, 1 / 8, "in"), (0.999, 1 / 8, "in"), (1.0, 3 / 16, "in"),
    ],
)  # fmt: skip
def test_convexity_by_the_face_s_width(width: float, most: float, unit: str) -> None:
    # M: D1.1:2015 Tables 5.8 and 5.9.
    inch = MM_PER_INCH if unit == "in" else 1.0
    size = "5/16 in" if unit == "in" else "8 mm"
    found = checks(size, leg=width * inch / 2.0**0.5)
    assert found["convexity"].limit == pytest.approx(most * inch)


def test_the_face_s_width_is_not_the_leg() -> None:
    # C: a flat 1/4 in fillet's face is 0.354 in wide, and so in the middle row already.
    found = checks("1/4 in", leg=parse_length("1/4 in"))
    assert found["convexity"].limit == pytest.approx(MM_PER_INCH / 8.0)


@pytest.mark.parametrize(
    ("plate", "extent", "static"),
    [(24.9, 1.0, 1.0), (25.0, 1.0, 2.0), (24.9, 1.0 / 6.0, 2.0), (24.9, 0.17, 1.0)],
)
def test_undercut(plate: float, extent: float, static: float) -> None:
    # S: 1 mm; 2 mm over 50 in any 300 mm; 2 mm anywhere from 25 mm on (2000 text).
    joint = Joint(base_thickness=plate, upright_thickness=plate)
    found = checks("8 mm", joint=joint, extent=extent)
    assert found["undercut_base"].limit == pytest.approx(static)
    assert checks("8 mm", rules=CYCLIC)["undercut_base"].limit == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("unit", "usual", "short"), [("mm", 1.0, 2.0), ("in", MM_PER_INCH / 32.0, MM_PER_INCH / 16.0)]
)
def test_the_share_of_a_weld_shorter_than_twelve_inches_is_not_presumed(
    unit: str, usual: float, short: float
) -> None:
    # S2: whether 2 in 12 in [50 in 300 mm] prorates is disputed among inspectors. The shipped set
    # grants a shorter weld none; a shop's own may say `prorate`.
    size = "8 mm" if unit == "mm" else "5/16 in"
    for length, limit in ((150.0, usual), (299.0, usual), (305.0, short)):
        conditions = Conditions(weld_length=length)
        found = checks(size, extent=1.0 / 6.0, conditions=conditions)
        assert found["undercut_base"].limit == pytest.approx(limit)


def test_how_much_of_a_weld_of_300_mm_may_be_undersized() -> None:
    # C: 30 mm of it, by Table 6.1 (6).
    for millimetres, least in ((30.0, 5.0), (31.0, 8.0)):
        conditions = Conditions(weld_length=300.0)
        found = checks("8 mm", extent=millimetres / 300.0, conditions=conditions)
        assert found["leg_base"].limit == pytest.approx(least)


def test_undercut_across_the_tension() -> None:
    # S2: Table 6.1 (7)(B), 0.25 mm [0.01 in] on primary members.
    across = Conditions(transverse_tension=True)
    found = checks("8 mm", rules=CYCLIC, conditions=across)
    assert found["undercut_base"].limit == pytest.approx(0.25)
    assert checks("5/16 in", rules=CYCLIC, conditions=across)["undercut_base"].limit == (
        pytest.approx(0.01 * MM_PER_INCH)
    )


@pytest.mark.parametrize("rules", [STATIC, CYCLIC])
def test_no_overlap(rules: str) -> None:
    # S: clause 5.24.
    assert checks("8 mm", rules=rules)["overlap_upright"].limit == 0.0


@pytest.mark.parametrize(
    ("gap", "leg", "is_fit"),
    [
        ("1/16 in", "1/4 in", True), ("3/32 in", "11/32 in", True), ("1/8 in", "3/8 in", True),
        ("3/16 in", "7/16 in", True), ("7/32 in", "15/32 in", False),
    ],
)  # fmt: skip
def test_the_whole_root_opening_is_added(gap: str, leg: str, *, is_fit: bool) -> None:
    # S2: nothing to 1/16 in, then the whole opening, to 3/16 in; more only on 3 in plates.
    joint = Joint(90.0, parse_length(gap), 6.0, 6.0)
    found = checks("1/4 in", joint=joint)
    assert found["leg_base"].limit == pytest.approx(parse_length(leg))
    assert found["root_opening"].passed is is_fit
    assert found["root_opening"].disposition == "refer"


def test_a_wider_opening_between_thick_plates() -> None:
    # S2: to 5/16 in from 3 in [75 mm] on.
    for plate, most in ((74.9, 5.0), (75.0, 8.0)):
        joint = Joint(base_thickness=plate, upright_thickness=plate)
        assert checks("8 mm", joint=joint)["root_opening"].limit == pytest.approx(most)


@pytest.mark.parametrize(
    ("thinner", "least"),
    [
        ("1/4 in", "1/8 in"), ("5/16 in", "3/16 in"), ("1/2 in", "3/16 in"), ("9/16 in", "1/4 in"),
        ("3/4 in", "1/4 in"), ("13/16 in", "5/16 in"),
        ("6 mm", "3 mm"), ("12 mm", "5 mm"), ("13 mm", "6 mm"), ("20 mm", "6 mm"),
        ("21 mm", "8 mm"),
    ],
)  # fmt: skip
def test_the_least_size_by_thickness(thinner: str, least: str) -> None:
    # Inch S: AISC 360-05 Table J2.4. Metric breaks 6, 12, 20 mm M: D1.1 Table 5.7.
    plate = parse_length(thinner)
    small = "2 mm" if "mm" in thinner else "1/16 in"
    for other, low_hydrogen in ((plate, True), (plate + 30.0, True)):
        joint = Joint(base_thickness=plate, upright_thickness=other)
        found = checks(small, joint=joint, conditions=Conditions(low_hydrogen=low_hydrogen))
        assert found["leg_base"].limit == pytest.approx(parse_length(least))


def test_the_thicker_part_decides_without_preheat() -> None:
    # M: D1.1 Table 5.7; it need not exceed the thinner part.
    joint = Joint(base_thickness=7.0, upright_thickness=40.0)
    found = checks("2 mm", joint=joint, conditions=Conditions(low_hydrogen=False))
    assert found["leg_base"].limit == pytest.approx(7.0)
    assert checks("2 mm", joint=joint)["leg_base"].limit == pytest.approx(5.0)


def test_the_floor_under_cyclic_load() -> None:
    # M: 3/16 in [5 mm].
    assert checks("2 mm", rules=CYCLIC)["leg_base"].limit == pytest.approx(5.0)
    assert checks("1/16 in", rules=CYCLIC)["leg_base"].limit == pytest.approx(3 / 16 * MM_PER_INCH)


@pytest.mark.parametrize(
    ("edge", "most", "size"),
    [
        (5.9, 5.9, "5 mm"), (6.0, 4.0, "5 mm"), (10.0, 8.0, "5 mm"),
        (3 / 16 * MM_PER_INCH, 3 / 16 * MM_PER_INCH, "1/8 in"),
        (1 / 4 * MM_PER_INCH, 3 / 16 * MM_PER_INCH, "1/8 in"),
        (1 / 2 * MM_PER_INCH, 7 / 16 * MM_PER_INCH, "1/8 in"),
    ],
)  # fmt: skip
def test_the_greatest_size_along_an_edge(edge: float, most: float, size: str) -> None:
    # S: AISC 360-05 J2.2b: the edge, less 2 mm [1/16 in] from 6 mm [1/4 in] on.
    joint = Joint(upright_length=edge)
    found = checks(size, joint=joint, leg=min(4.5, edge - 0.1), conditions=Conditions("upright"))
    assert found["maximum_size"].limit == pytest.approx(most)
    assert found["maximum_size"].measured == pytest.approx(parse_length(size))


def test_a_weld_built_out_by_the_drawing_may_cover_its_edge() -> None:
    # S: AISC 360-05 J2.2b, unless the drawing designates the weld as built out to full throat.
    joint, along = Joint(upright_length=10.0), Conditions("upright")
    assert "maximum_size" in checks("5 mm", joint=joint, leg=4.5, conditions=along)
    built = checks("5 mm", joint=joint, leg=4.5, conditions=along, built_out=True)
    assert "maximum_size" not in built
