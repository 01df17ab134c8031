"""What a reading hangs on where it hangs by little: lower than an eye sees, or all but touching.

No source: each expectation follows from the contract's own words, quoted beside it, and from
lengths that are worked out in the comment.
"""

from __future__ import annotations

import math

import pytest

from geometry.bead import Bead, Spatter
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.penetration import penetration
from geometry.pose import Pose
from geometry.reading import read
from geometry.seat import press_home, waiting_pose
from geometry.section import Section
from geometry.tolerances import LEGAL_DEPTH
from tests.geometry.plain import EIGHT, HOME, SPUR, T, bead


def spattered(*drops: Spatter, legs: float = 8.0) -> Section:
    return Section.of(T, Bead(legs, legs), spatter=drops)


def test_a_tip_at_the_very_edge_of_its_member_is_over_it() -> None:
    """The upright ends 0.0005 mm beyond the toe, nearer than a contact (0.001) is told."""
    section = Section.of(Joint(upright_length=8.0005), Bead(8.0, 8.0))
    assert read(section, EIGHT, HOME).state == "touch"


def test_a_tip_beyond_its_member_reads_nothing() -> None:
    section = Section.of(Joint(upright_length=7.95), Bead(7.9, 7.9))
    assert read(section, EIGHT, HOME).state == "not seated"


def test_an_edge_whose_far_end_sinks_is_not_flush() -> None:
    """Stated with the near end on the base, (12, 0), and the far end 12 sin 0.8 = 0.168 deep."""
    angle = math.radians(-0.8)
    pose = Pose(12.0 - 12.0 * math.cos(angle), -12.0 * math.sin(angle), -0.8)
    assert read(bead(8.0, 8.0), EIGHT, pose).flush == ()
    assert read(bead(8.0, 8.0), EIGHT, pose).state == "not seated"


def test_an_edge_that_sinks_less_than_an_eye_sees_is_flush() -> None:
    """Read all the same inside steel: 0.05 mm down is within the eye limit of the line."""
    sunk = read(bead(8.0, 8.0), EIGHT, Pose(0.0, -0.05))
    assert (sunk.state, sunk.flush, sunk.in_the_way) == ("touch", ("long",), ())


def test_what_lies_beneath_an_edge_is_in_the_way_though_it_touches_nothing() -> None:
    """Flush: no gap above e, *and nothing beneath it*. 0.08 mm up there is room for 0.05 mm."""
    lifted = Pose(0.0, 0.08)
    assert read(spattered(), EIGHT, lifted).state == "touch"
    shown = read(spattered(Spatter("base", 14.0, 0.05)), EIGHT, lifted)
    assert (shown.state, shown.flush) == ("not seated", ("end",))
    assert shown.in_the_way == ("spatter[0]",)


def test_a_cap_wider_than_the_edge_lies_beneath_it_too() -> None:
    """The 3 mm leaf's long edge runs from 4.5 to 9; the cap, 1.9 high, from 3.9 to 9.6."""
    section = spattered(Spatter("base", 6.75, 1.9), legs=3.0)
    shown = read(section, leaf_of_mark("3 mm"), Pose(0.0, 1.95), eye_limit=2.0)
    assert (shown.state, shown.in_the_way) == ("not seated", ("spatter[0]",))


def test_what_a_leg_leaf_s_end_edge_hovers_over_keeps_nothing_off() -> None:
    """The leg edge asks for its long edge flush only. The drop on the upright, 0.03 mm high, is
    not touched by an end edge 0.05 mm off; what carries the leaf is the drop on the base."""
    drops = Spatter("base", 14.0, 0.8), Spatter("upright", 14.0, 0.03)
    shown = read(spattered(*drops), EIGHT, Pose(0.05, 0.8))
    assert (shown.state, shown.in_the_way) == ("not seated", ("spatter[0]",))


def test_a_throat_leaf_s_end_edge_must_lie_clear_as_well() -> None:
    """Both edges flush is asked of a throat edge, so what the end edge hovers over is named."""
    drops = Spatter("base", 14.0, 0.8), Spatter("upright", 18.0, 0.03)
    shown = read(spattered(*drops), SPUR, Pose(0.05, 0.8))
    assert (shown.state, shown.in_the_way) == ("not seated", ("spatter[0]", "spatter[1]"))


def test_a_pose_stated_to_a_hundredth_still_rests_on_what_carries_it() -> None:
    """A leaf on a drop 0.8 mm high, stated 0.005 mm above it: the drop is in the way."""
    shown = read(spattered(Spatter("base", 14.0, 0.8)), EIGHT, Pose(0.0, 0.805))
    assert (shown.state, shown.in_the_way) == ("not seated", ("spatter[0]",))


def test_a_leaf_on_the_weld_is_not_carried_by_what_it_only_passes() -> None:
    """Tip on the face of a 9 mm weld, 1 mm off: the drop on the upright ends 0.005 mm short of
    the end edge, which stands at x = 1."""
    section = spattered(Spatter("upright", 13.0, 0.995), legs=9.0)
    shown = read(section, EIGHT, Pose(1.0, 0.0))
    assert (shown.state, round(shown.gap or 0.0, 6)) == ("held off", 1.0)


def test_half_a_degree_out_of_square_is_square_enough_for_both_edges() -> None:
    """Shared out, the 12.8 mm edges (1.6 S) stand off 12.8 sin 0.25 = 0.056 mm, within 0.1."""
    for angle in (89.5, 90.5):
        section = Section.of(Joint(angle=angle), Bead(9.0, 9.0))
        pose = press_home(section, SPUR, waiting_pose(section, SPUR, "base")).pose
        shown = read(section, SPUR, pose)
        assert (shown.state, shown.in_the_way) == ("held off", ())


def test_the_blade_s_outer_corner_can_be_what_touches() -> None:
    """Turned away from the joint, with nothing but the corner (3 S, 2.2 S) on the upright."""
    turned = Pose(0.0, 0.0, 170.0)
    corner = turned.to_section((24.0, 17.6))
    pose = turned.moved(-corner[0], 20.0 - corner[1])
    assert penetration(bead(3.0, 3.0).outline, EIGHT.body, pose) < LEGAL_DEPTH
    shown = read(bead(3.0, 3.0), EIGHT, pose)
    assert (shown.state, shown.in_the_way) == ("not seated", ("upright",))


def test_an_end_edge_that_all_but_lies_on_its_member_is_where_it_belongs() -> None:
    """Half a degree closed, the end edge's top strikes first and leaves the tip
    9.6 cos 89.5 = 0.084 mm off, which no eye sees: only the drop is in the way."""
    section = Section.of(Joint(angle=89.5), Bead(8.0, 8.0), spatter=(Spatter("base", 14.0, 0.8),))
    top = 0.8 + 17.6
    shown = read(section, EIGHT, Pose(top / math.tan(math.radians(89.5)), 0.8))
    assert (shown.state, shown.in_the_way) == ("not seated", ("spatter[0]",))


def test_an_end_edge_that_strikes_a_leaning_member_is_in_the_way() -> None:
    """At 80 degrees the top strikes with the tip 9.6 cos 80 = 1.67 mm off."""
    section = Section.of(Joint(angle=80.0), Bead(8.0, 8.0))
    shown = read(section, EIGHT, Pose(17.6 / math.tan(math.radians(80.0)), 0.0))
    assert (shown.state, shown.in_the_way) == ("not seated", ("upright",))


@pytest.mark.parametrize("mark", ["20 mm", "25 mm", "1 in"])
def test_an_edge_that_overhangs_its_member_rests_on_it(mark: str) -> None:
    """Long edges of 3 S reach 60 to 76 mm on a plate of 60: flush is asked of the part that faces
    it, and the plate's corner beneath the edge is no more in the way than the plate."""
    leaf = leaf_of_mark(mark)
    legs = leaf.size + 0.5
    # A flat weld of equal legs holds the tip off by as much as its legs are larger.
    for pose in (Pose(0.5, 0.0), Pose(0.0, 0.5, 90.0, turned=True)):
        shown = read(bead(legs, legs), leaf, pose)
        assert (shown.state, shown.in_the_way) == ("held off", ())
        assert shown.gap == pytest.approx(0.5)


def test_a_member_s_end_that_something_else_meets_is_in_the_way() -> None:
    """The leaf hangs by its arc on the corner of an upright 16 mm long."""
    section = Section.of(Joint(upright_length=16.0), Bead(3.0, 3.0))
    arc = EIGHT.body.line("arc").interpolate(0.5, normalized=True)
    shown = read(section, EIGHT, Pose(-arc.x, 16.0 - arc.y))
    assert (shown.state, shown.in_the_way) == ("not seated", ("upright", "upright_end"))


def test_any_eye_limit_up_to_the_whole_arc_can_be_asked() -> None:
    """The 3 mm leaf's arc ends 5.408 mm from its tip, at (4.5, 0)."""
    leaf = leaf_of_mark("3 mm")
    for tenth_of_a_hundredth in range(5300, 5450):
        shown = read(bead(3.0, 3.0), leaf, Pose(20.0, 20.0), tenth_of_a_hundredth / 1000.0)
        assert (shown.state, shown.in_the_way) == ("not seated", ())
