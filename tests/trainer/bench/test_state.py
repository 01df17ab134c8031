"""The bench's state: pure functions on frozen values, tested without a window.

Sources: the contract (design, sections 3, 6 and 8); closed forms of seats are its own.
"""

from __future__ import annotations

import pytest

from exercises.coupon import Callout, Coupon
from exercises.text import Text
from geometry.bead import Bead, Spatter
from geometry.joint import Joint
from geometry.leaf import rack
from geometry.penetration import is_free
from geometry.pose import Pose
from geometry.reading import read
from geometry.section import Section
from trainer.bench import moves
from trainer.bench import state as changes
from trainer.bench.state import BenchState, open_coupon


def coupon_of(bead: Bead, *spatter: Spatter, joint: Joint | None = None, **more: object) -> Coupon:
    section = Section.of(joint or Joint(), bead, tuple(spatter))
    callout = Callout(8.0, "leg", "8 mm")
    return Coupon("a-1", section, callout, title=Text.of("A"), **more)  # type: ignore[arg-type]


@pytest.fixture
def bare() -> BenchState:
    return open_coupon(coupon_of(Bead(8.0, 6.7, crown=0.9)))


@pytest.fixture
def ready(bare: BenchState) -> BenchState:
    return moves.pick(bare, "8 mm", 0.0)


def free(state: BenchState) -> bool:
    assert state.leaf is not None
    assert state.pose is not None
    return is_free(state.section.outline, state.leaf.body, state.pose)


def events(state: BenchState) -> list[str]:
    return [entry.event for entry in state.handling.entries]


def test_rack_does_not_choose_the_set_that_solves_the_coupon(bare: BenchState) -> None:
    assert bare.rack == "metric"
    inch = Coupon("b", bare.section, Callout(7.9375, "leg", "5/16 in"))
    assert open_coupon(inch).rack == "metric"
    assert open_coupon(inch, "throat").rack == "throat"


def test_pick_lays_the_leaf_free_of_steel(bare: BenchState) -> None:
    for leaf in rack("metric"):
        assert free(moves.pick(bare, leaf.mark, 0.0)), leaf.mark


def test_pick_takes_the_wear_of_the_coupon() -> None:
    worn = open_coupon(coupon_of(Bead(8.0, 8.0), leaf_wear=0.3))
    leaf = moves.pick(worn, "8 mm", 0.0).leaf
    assert leaf is not None
    assert leaf.tip == (0.0, 8.3)


def test_another_leaf_keeps_edge_and_side(ready: BenchState) -> None:
    turned = moves.turn_over(ready, 1.0)
    other = moves.pick(turned, "10 mm", 2.0)
    assert other.leaf is not None
    assert other.pose is not None
    assert (other.leaf.mark, other.leaf.edge, other.pose.turned) == ("10 mm", "leg", True)


def test_press_home_seats_both_legs(ready: BenchState) -> None:
    """The tip stands on the upright at S, the toe at 6.7: 1.3 mm of daylight (contract)."""
    home = moves.press_home(ready, 10.0)
    assert home.pose is not None
    assert home.leaf is not None
    shown = read(home.section, home.leaf, home.pose)
    assert shown.state == "daylight"
    assert shown.gap == pytest.approx(1.3, abs=1e-3)
    other = moves.press_home(moves.turn_over(home, 20.0), 30.0)
    assert other.pose is not None
    assert other.leaf is not None
    assert other.pose.turned
    assert read(other.section, other.leaf, other.pose).state == "touch"


def test_letting_go_never_moves_the_leaf(ready: BenchState) -> None:
    assert ready.pose is not None
    held = moves.grab(ready, ready.pose.to_section((12.0, 8.0)), 0.0)
    dragged = moves.drag_to(held, [(14.0, 9.0), (9.0, 4.0), (6.0, 2.0)], 30.0)
    let_go = moves.release(dragged, 40.0)
    assert let_go.pose == dragged.pose
    assert let_go.hand is None
    assert free(let_go)


def test_free_drag_keeps_the_grab_under_the_pointer(ready: BenchState) -> None:
    assert ready.pose is not None
    grab = ready.pose.to_section((12.0, 8.0))
    away = (grab[0] + 6.0, grab[1] + 5.0)
    dragged = moves.drag_to(moves.grab(ready, grab, 0.0), [away], 16.0)
    assert dragged.pose is not None
    assert dragged.pose.to_section((12.0, 8.0)) == pytest.approx(away, abs=1e-6)


def test_wrist_adopts_the_angle_once_flush_for_long_enough(ready: BenchState) -> None:
    """After 150 ms flush the hand wants the leaf's own angle (contract, section 8)."""
    tilted = moves.turn_by(ready, 6.0, 0.0)
    assert tilted.pose is not None
    assert tilted.leaf is not None
    at = tilted.pose.to_section((2.2 * 8.0, 2.0))
    held = moves.grab(tilted, at, 1000.0)
    assert held.hand is not None
    assert held.hand.angle == pytest.approx(6.0)
    pushed = moves.drag_to(held, [(at[0], at[1] - 30.0)], 1010.0)
    assert pushed.pose is not None
    assert pushed.pose.angle == pytest.approx(0.0, abs=0.01)
    assert pushed.hand is not None
    assert pushed.hand.flush_since == 1010.0
    soon = moves.settle(pushed, 1100.0)
    assert soon.hand is not None
    assert soon.hand.angle == pytest.approx(6.0)
    later = moves.settle(soon, 1161.0)
    assert later.hand is not None
    assert later.hand.angle == pytest.approx(0.0, abs=0.01)


def test_wheel_turns_about_the_grab(ready: BenchState) -> None:
    assert ready.pose is not None
    grab = ready.pose.to_section((12.0, 8.0))
    turned = moves.turn_by(moves.grab(ready, grab, 0.0), 5.0, 10.0)
    assert turned.pose is not None
    assert turned.hand is not None
    assert turned.pose.angle == pytest.approx(5.0)
    assert turned.pose.to_section((12.0, 8.0)) == pytest.approx(grab, abs=1e-9)
    assert turned.hand.angle == pytest.approx(5.0)


def test_swap_ends_twice_comes_back_to_the_same_leaf(ready: BenchState) -> None:
    once = moves.swap_ends(ready, 0.0)
    assert once.leaf is not None
    assert once.leaf.edge == "throat"
    assert free(once)
    twice = moves.swap_ends(once, 500.0)
    assert twice.leaf == ready.leaf


def test_throat_edge_is_never_turned(ready: BenchState) -> None:
    throat = moves.swap_ends(moves.turn_over(ready, 0.0), 500.0)
    assert throat.pose is not None
    assert not throat.pose.turned
    over = moves.turn_over(throat, 900.0)
    assert over.pose is not None
    assert not over.pose.turned
    assert over.pose.angle == pytest.approx(0.0, abs=1e-9)


def test_refused_move_changes_nothing_but_the_count(
    ready: BenchState, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("geometry.seat.nearest_free", lambda *_: None)
    for change in (moves.swap_ends, moves.turn_over):
        refused = change(ready, 100.0)
        assert (refused.leaf, refused.pose) == (ready.leaf, ready.pose)
        assert refused.refused == ready.refused + 1
        assert events(refused) == events(ready)


def test_undo_takes_back_one_gesture_and_adds_an_event(ready: BenchState) -> None:
    assert ready.pose is not None
    held = moves.grab(ready, ready.pose.to_section((12.0, 8.0)), 100.0)
    dragged = moves.drag_to(held, [(15.0, 12.0)], 120.0)
    dragged = moves.release(moves.drag_to(dragged, [(18.0, 14.0)], 140.0), 150.0)
    back = changes.undone(dragged, 200.0)
    assert back.pose == ready.pose
    assert events(back) == [*events(dragged), "undo 8 mm leg"]
    empty = changes.undone(back, 300.0)
    assert empty.leaf is None
    assert events(empty)[-1] == "undo"


def test_quick_nudges_are_one_gesture(ready: BenchState) -> None:
    one = moves.nudge(ready, 0.1, 0.0, 1000.0)
    two = moves.nudge(one, 0.1, 0.0, 1100.0)
    assert changes.undone(two, 1200.0).pose == ready.pose
    late = moves.nudge(one, 0.1, 0.0, 1000.0 + changes.MERGE_WITHIN + 1.0)
    assert changes.undone(late, 2000.0).pose == one.pose


def test_cleaning_takes_the_spatter_and_is_recorded() -> None:
    soiled = open_coupon(coupon_of(Bead(8.0, 8.0), Spatter("base", 16.0, 0.8)))
    ready = moves.pick(soiled, "8 mm", 0.0)
    home = moves.press_home(ready, 10.0)
    assert home.pose is not None
    clean = changes.cleaned(home, 20.0)
    assert clean.section.spatter == ()
    assert clean.pose == home.pose
    assert events(clean)[-1] == "clean"
    back = changes.undone(clean, 30.0)
    assert back.section.spatter
    assert list(back.handling.frames())[-1].cleaned is False
    assert list(clean.handling.frames())[-1].cleaned is True


def test_a_second_word_on_a_seat_replaces_the_first(ready: BenchState) -> None:
    home = moves.press_home(ready, 10.0)
    said = changes.state_reading(changes.state_reading(home, "touch", 20.0), "daylight", 30.0)
    assert [(r.on, r.state, r.pose) for r in said.readings] == [("upright", "daylight", home.pose)]
    other = changes.state_reading(moves.turn_over(said, 40.0), "touch", 50.0)
    assert [r.on for r in other.readings] == ["upright", "base"]
    assert [r.on for r in changes.without_reading(other, 0, 60.0).readings] == ["base"]


def test_a_reading_needs_a_leaf(bare: BenchState) -> None:
    assert changes.state_reading(bare, "touch", 0.0) is bare


def test_a_call_needs_face_and_disposition(ready: BenchState) -> None:
    assert changes.call(ready, 0.0) is ready
    faced = changes.name_face(ready, "convex", 0.0)
    assert not faced.can_call
    ruled = changes.name_disposition(faced, "add weld metal", 0.0)
    called = changes.call(ruled, 10.0)
    assert called.phase == "debrief"
    assert called.grade is not None
    assert called.grade.right == "add weld metal"
    assert events(called)[-1] == "call"


def test_what_is_on_record_stays(ready: BenchState) -> None:
    faced = changes.name_face(ready, "convex", 0.0)
    called = changes.call(changes.name_disposition(faced, "accept", 0.0), 10.0)
    for change in (
        changes.undone,
        changes.cleaned,
        moves.put_back,
        moves.press_home,
        moves.turn_over,
        lambda state, now: moves.pick(state, "10 mm", now),
        lambda state, now: changes.state_reading(state, "touch", now),
        lambda state, now: changes.name_face(state, "flat", now),
    ):
        assert change(called, 20.0) is called


@pytest.mark.parametrize("task", ["read", "size"])
def test_other_tasks_are_called_by_face_and_reading(task: str) -> None:
    state = moves.pick(open_coupon(coupon_of(Bead(8.0, 8.0), task=task)), "8 mm", 0.0)
    state = changes.name_face(state, "flat", 0.0)
    assert not state.can_call
    read_it = changes.state_reading(moves.press_home(state, 10.0), "touch", 20.0)
    assert read_it.missing == (("size",) if task == "size" else ())
    sized = changes.name_size(read_it, "8 mm", 25.0)
    assert sized.size == ("8 mm" if task == "size" else None)
    called = changes.call(sized, 30.0)
    assert called.grade is not None
    assert called.grade.marks["disposition"] is None
    assert called.grade.marks.get("size") == (1.0 if task == "size" else None)


def test_time_starts_with_the_first_gesture(bare: BenchState) -> None:
    state = moves.pick(bare, "8 mm", 5000.0)
    state = moves.nudge(state, 0.1, 0.0, 5250.0)
    assert [entry.ms for entry in state.handling.entries] == [0, 250]


def test_nothing_but_the_handle_is_grabbed_from_the_rack(bare: BenchState) -> None:
    inside = moves.grab_new(bare, "8 mm", (-6.0, -6.0), 0.0)
    assert inside is bare
    held = moves.grab_new(bare, "8 mm", (30.0, 25.0), 10.0)
    assert held.hand is not None
    assert held.pose is not None
    assert held.leaf is not None
    assert held.pose.to_section(held.leaf.handle) == pytest.approx((30.0, 25.0))


def test_place_puts_the_handle_where_it_was_clicked(ready: BenchState) -> None:
    placed = moves.place(ready, (32.0, 28.0), 10.0)
    assert placed.pose is not None
    assert placed.leaf is not None
    assert placed.pose.to_section(placed.leaf.handle) == pytest.approx((32.0, 28.0))


def test_place_in_steel_goes_to_the_nearest_room(ready: BenchState) -> None:
    placed = moves.place(ready, (17.0, 5.0), 10.0)
    assert placed is not ready
    assert free(placed) or placed.refused == ready.refused + 1


def test_turned_over_is_mirrored_in_the_bisector(ready: BenchState) -> None:
    """A leaf mirrored twice lies as it did."""
    once = moves.turn_over(ready, 0.0)
    twice = moves.turn_over(once, 500.0)
    assert ready.pose is not None
    assert twice.pose is not None
    assert twice.pose.x == pytest.approx(ready.pose.x)
    assert twice.pose.y == pytest.approx(ready.pose.y)
    assert twice.pose.angle == pytest.approx(ready.pose.angle)
    assert once.pose is not None
    assert once.pose.angle == pytest.approx(90.0)


def test_put_back_leaves_an_empty_bench(ready: BenchState) -> None:
    gone = moves.put_back(ready, 10.0)
    assert (gone.leaf, gone.pose) == (None, None)
    assert list(gone.handling.frames())[-1].leaf is None
    assert gone.handling.entries[-1].pose == Pose(0.0, 0.0)
