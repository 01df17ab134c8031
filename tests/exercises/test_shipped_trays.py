"""Three shipped trays, from the first day to the exam: each coupon decided by what it teaches.

`test_heron_footbridge` and `test_kestrel_gantry` look at the other two. What a leaf shows is stated
here by hand from the section (a leg longer than the leaf holds its tip off, a shorter one shows
daylight by the difference), not taken from the program.
"""

from __future__ import annotations

from collections import Counter

import pytest

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon
from exercises.grading import grade
from exercises.judging import judge, right_handling
from exercises.tray import Tray, load_tray
from geometry.joint import Member
from geometry.leaf import Edge, leaf_of_mark
from geometry.reading import Reading, read
from geometry.seat import press_home, waiting_pose
from trainer.assets import asset

NAMES = ("wren-workshop", "otter-weir", "osprey-pylon")
TRAYS: dict[str, Tray] = {name: load_tray(asset("trays", f"{name}.tray.json")) for name in NAMES}
COUPONS: dict[str, Coupon] = {
    coupon.id: coupon for tray in TRAYS.values() for coupon in tray.coupons
}
LEGS = {"leg_base", "leg_upright"}

# Coupon: face, right call (of a read or size task: what would be right), and what fails.
RIGHT: dict[str, tuple[str, str, set[str]]] = {
    "ww-01": ("convex", "accept", set()),
    "ww-02": ("convex", "add weld metal", LEGS),
    "ww-03": ("concave", "add weld metal", {"effective_size"}),
    "ww-04": ("convex", "accept", set()),
    "ww-05": ("convex", "add weld metal", LEGS),
    "ww-06": ("convex", "add weld metal", {"leg_upright"}),
    "ww-07": ("flat", "accept", set()),
    "ww-08": ("concave", "add weld metal", {"effective_size"}),
    "ww-09": ("concave", "accept", set()),
    "ww-10": ("convex", "dress back", {"overlap_base"}),
    "ww-11": ("convex", "accept", set()),
    "ww-12": ("convex", "accept", set()),
    "ww-13": ("convex", "refer", set()),
    "ww-14": ("flat", "dress back", {"overlap_upright"}),
    "ow-01": ("convex", "accept", set()),
    "ow-02": ("convex", "add weld metal", {"leg_upright"}),
    "ow-03": ("convex", "add weld metal", {"leg_base"}),
    "ow-04": ("convex", "add weld metal", {"leg_upright"}),
    "ow-05": ("convex", "dress back", {"overlap_upright", "leg_upright"}),
    "ow-06": ("convex", "dress back", {"overlap_base"}),
    "ow-07": ("convex", "add weld metal", LEGS),
    "ow-08": ("convex", "accept", set()),
    "ow-09": ("concave", "add weld metal", {"effective_size"}),
    "ow-10": ("concave", "accept", set()),
    "ow-11": ("convex", "accept", set()),
    "ow-12": ("convex", "refer", set()),
    "ow-13": ("convex", "accept", set()),
    "ow-14": ("convex", "add weld metal", {"undercut_base"}),
    "ow-15": ("convex", "refer", set()),
    "ow-16": ("convex", "accept", set()),
    "ow-17": ("convex", "add weld metal", {"effective_throat"}),
    "ow-18": ("convex", "accept", set()),
    "op-01": ("convex", "accept", set()),
    "op-02": ("convex", "add weld metal", {"leg_upright"}),
    "op-03": ("convex", "accept", set()),
    "op-04": ("concave", "add weld metal", {"effective_throat"}),
    "op-05": ("convex", "dress back",
              {"convexity", "excess_throat", "toe_angle_base", "toe_angle_upright"}),
    "op-06": ("convex", "accept", set()),
    "op-07": ("convex", "add weld metal", {"undercut_base"}),
    "op-08": ("convex", "add weld metal", LEGS),
    "op-09": ("convex", "accept", set()),
    "op-10": ("convex", "add weld metal", {"leg_upright"}),
    "op-11": ("concave", "accept", set()),
    "op-12": ("convex", "accept", set()),
    "op-13": ("convex", "refer", set()),
    "op-14": ("convex", "accept", set()),
    "op-15": ("convex", "dress back", {"overlap_upright"}),
    "op-16": ("convex", "dress back", {"overlap_base", "leg_base"}),
    "op-17": ("concave", "accept", set()),
    "op-18": ("convex", "add weld metal", {"leg_base"}),
    "op-19": ("convex", "accept", set()),
    "op-20": ("convex", "add weld metal", {"undercut_upright"}),
    "op-21": ("convex", "refer", {"maximum_size"}),
    "op-22": ("convex", "dress back", {"asymmetry"}),
}  # fmt: skip
IN_DOUBT = {"op-14"}

# Coupon, leaf, edge, member; state, and the daylight's width: leaf less leg on a square joint.
SHOWN: list[tuple[str, str, Edge, Member, str, float | None]] = [
    ("ww-01", "6 mm", "leg", "base", "held off", None),
    ("ww-01", "6 mm", "leg", "upright", "held off", None),
    ("ww-02", "8 mm", "leg", "base", "daylight", 1.3),
    ("ww-02", "8 mm", "leg", "upright", "daylight", 1.5),
    # Good legs over a hollow face: the leg edge is held off, the spur shows light.
    ("ww-03", "8 mm", "leg", "base", "held off", None),
    ("ww-03", "8 mm", "throat", "base", "daylight", None),
    ("ww-06", "6 mm", "leg", "base", "held off", None),
    ("ww-06", "6 mm", "leg", "upright", "daylight", 0.9),
    ("ww-11", "7 mm", "leg", "base", "held off", None),
    ("ww-11", "8 mm", "leg", "base", "daylight", 0.6),
    ("ow-02", "8 mm", "leg", "upright", "daylight", 1.2),
    ("ow-03", "8 mm", "leg", "base", "daylight", 1.1),
    ("ow-04", "8 mm", "leg", "upright", "daylight", 1.0),
    # A size of 6 with 3 mm of opening is 9, which no metric leaf has: 8 and 10 bracket it.
    ("ow-07", "8 mm", "leg", "base", "touch", None),
    ("ow-07", "10 mm", "leg", "base", "daylight", 2.0),
    ("ow-09", "8 mm", "leg", "base", "held off", None),
    ("ow-09", "8 mm", "throat", "base", "daylight", None),
    ("ow-12", "6 mm", "leg", "upright", "not seated", None),
    ("ow-15", "8 mm", "leg", "upright", "not seated", None),
    # 3/8 in is 9.525 mm: its leaf is held off where the 10 mm one shows daylight.
    ("ow-16", "3/8 in", "leg", "upright", "held off", None),
    ("ow-16", "10 mm", "leg", "upright", "daylight", 0.2),
    # a 5 is a leg of 7.071.
    ("ow-17", "a 5 mm", "leg", "base", "daylight", 7.0711 - 6.3),
    ("op-02", "5/16 in", "leg", "upright", "daylight", 7.9375 - 7.5),
    ("op-10", "8 mm", "leg", "upright", "daylight", 0.4),
    ("op-18", "10 mm", "leg", "base", "daylight", 0.25),
]


def shown(coupon: Coupon, mark: str, edge: Edge, on: Member, *, cleaned: bool = True) -> Reading:
    section = coupon.section.cleaned() if cleaned else coupon.section
    leaf = leaf_of_mark(mark, edge, coupon.leaf_wear)
    home = press_home(section, leaf, waiting_pose(section, leaf, on)).pose
    return read(section, leaf, home, coupon.eye_limit)


def test_the_table_is_of_these_trays() -> None:
    assert list(COUPONS) == list(RIGHT)


@pytest.mark.parametrize("name", RIGHT)
def test_each_coupon_is_decided_by_what_it_teaches(name: str) -> None:
    call = judge(COUPONS[name])
    face, disposition, failing = RIGHT[name]
    assert (call.face, call.disposition) == (face, disposition)
    assert {check.key for check in call.checks if not check.passed} == failing
    assert call.in_doubt == (name in IN_DOUBT)


@pytest.mark.parametrize(("name", "mark", "edge", "on", "state", "gap"), SHOWN)
def test_what_the_leaf_shows(
    name: str, mark: str, edge: Edge, on: Member, state: str, gap: float | None
) -> None:
    found = shown(COUPONS[name], mark, edge, on)
    assert found.state == state
    if gap is not None:
        assert found.gap == pytest.approx(gap, abs=1e-3)


@pytest.mark.parametrize("name", ["ww-12", "ow-01", "ow-02", "op-19"])
def test_spatter_is_in_the_way_until_cleaned(name: str) -> None:
    coupon = COUPONS[name]
    found = shown(coupon, coupon.callout.text, "leg", "upright", cleaned=False)
    assert found.state == "not seated"
    assert any(piece.startswith("spatter") for piece in found.in_the_way)
    assert shown(coupon, coupon.callout.text, "leg", "upright").state != "not seated"


@pytest.mark.parametrize(
    "name",
    [
        name
        for name, coupon in COUPONS.items()
        if coupon.task == "judge" and RIGHT[name][1] in {"accept", "add weld metal"}
    ],
)
def test_handled_as_is_right_and_called_right_it_is_a_full_grade(name: str) -> None:
    coupon = COUPONS[name]
    call, right = judge(coupon), right_handling(coupon)
    readings = tuple(
        StatedReading(mark, edge, on, found.pose, found.state)
        for edge, on in right.seats
        for mark in right.leaves[edge]
        for found in (shown(coupon, mark, edge, on),)
    )
    given = grade(coupon, Attempt(name, call.face, readings, call.disposition))
    assert given.reasons == ()
    assert given.score == 1.0


@pytest.mark.parametrize("name", NAMES)
def test_no_constant_answer_gets_far(name: str) -> None:
    """What the maker keeps to, kept here too: two in five at most, each answer there."""
    taken: Counter[str] = Counter()
    judged = [coupon for coupon in TRAYS[name].coupons if coupon.task == "judge"]
    for coupon in judged:
        taken.update(judge(coupon).acceptable)
    assert set(taken) == {"accept", "add weld metal", "dress back", "refer"}
    assert max(taken.values()) <= 0.4 * len(judged)


@pytest.mark.parametrize("name", RIGHT)
def test_sizes_lie_off_their_limits_as_the_tray_is_hard(name: str) -> None:
    """In doubts: three or more on the first day, two and more among traps, 1.5 at the exam."""
    least = {"ww": 3.0, "ow": 2.0, "op": 1.5}[name[:2]]
    for check in judge(COUPONS[name]).checks:
        if check.doubt > 0.0 and name not in IN_DOUBT:
            assert abs(check.margin) >= least * check.doubt, check


def test_traps_that_a_shop_knows_are_there() -> None:
    coupons = TRAYS["otter-weir"].coupons
    beads = [coupon.section.bead for coupon in coupons]
    assert sum(bool(coupon.section.spatter) for coupon in coupons) >= 2
    assert sum(bool(bead.overlap_base or bead.overlap_upright) for bead in beads) >= 2
    assert sum(coupon.section.joint.root_opening > 0 for coupon in coupons) >= 2
    assert {80.0, 90.0, 100.0} <= {coupon.section.joint.angle for coupon in coupons}
    assert any(coupon.leaf_wear for coupon in coupons)
    assert any(bead.trace for bead in beads)


def test_an_exam_gives_no_hints_and_the_other_trays_give_two() -> None:
    for name, tray in TRAYS.items():
        assert {len(coupon.hints) for coupon in tray.coupons} == {0 if "pylon" in name else 2}


GIVEN_AWAY = (
    "on the line", "hollow", "convex", "flat", "toe", "overlap", "undercut", "short", "accept",
    "refer", "en el límite", "huec", "borde", "solape", "mordedura", "corto", "cóncav", "remit",
)  # fmt: skip


@pytest.mark.parametrize("name", RIGHT)
def test_words_are_in_both_languages_and_titles_give_nothing_away(name: str) -> None:
    coupon = COUPONS[name]
    for text in (coupon.title, coupon.teaches, *coupon.hints):
        assert text.in_language("en") != text.in_language("es")
    for language in ("en", "es"):
        title = coupon.title.in_language(language).lower()
        assert not [word for word in GIVEN_AWAY if word in title.replace("reborde", "")]
        assert 0 < len(coupon.teaches.in_language(language)) <= 110


def test_five_trays_ship_with_sixty_coupons_and_more_all_of_them_different() -> None:
    files = sorted(asset("trays").glob("*.tray.json"))
    coupons = [coupon for file in files for coupon in load_tray(file).coupons]
    assert len(files) >= 5
    assert len(coupons) >= 60
    assert len({coupon.id for coupon in coupons}) == len(coupons)
    assert all(coupon.teaches.in_language("en") for coupon in coupons)
    made = {(coupon.section, coupon.callout, coupon.rules, coupon.extent, coupon.conditions)
            for coupon in coupons}  # fmt: skip
    assert len(made) == len(coupons)
