"""How a leaf is moved at the bench: every way a hand, a key or a button can move it.

All of them go through the contact kernel, so none enters steel, and none reads the leaf: the same
gesture does the same whatever the leaf would show. Times are ms of any monotonic clock.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from geometry import contact, seat
from geometry.contact import Hand, Motion, Touch
from geometry.curves import Vec
from geometry.joint import Joint
from geometry.leaf import Leaf, rack
from geometry.penetration import is_free
from geometry.pose import Pose, wrap_degrees
from trainer.bench.state import BenchState, Hold, logged, seat_of, stepped, with_leaf

__all__ = [
    "ADOPT_AFTER",
    "drag_to",
    "grab",
    "grab_new",
    "lies_flush",
    "normal_pose",
    "nudge",
    "pick",
    "place",
    "press_home",
    "put_back",
    "ready_pose",
    "release",
    "settle",
    "swap_ends",
    "turn_by",
    "turn_over",
]

ADOPT_AFTER: Final = 150.0
"""ms: flush for this long, the wrist gives in and takes the leaf's own angle (contract)."""

_FLUSH_SPAN: Final = 0.2
"""Of a leaf's size: an edge that touches one member at two points this far apart lies on it."""

_STRAIGHT: Final = frozenset({"long", "end"})

_READY_GAP: Final = 2.0
"""mm between a leaf that has just been taken off the rack and the nearest steel, about."""


def pick(state: BenchState, mark: str, now: float) -> BenchState:
    """Take the leaf with this mark off the rack and hold it ready, free of all steel.

    It keeps the edge and the side of the leaf that it replaces; the leaf that is out already comes
    back to where it was held ready.
    """
    if not state.can_move:
        return state
    leaf = _leaf_off_rack(state, mark)
    if state.leaf is not None and state.leaf.mark == mark:
        leaf = state.leaf
    if leaf is None:
        return state
    turned = state.pose is not None and state.pose.turned
    pose = ready_pose(state, leaf, turned=turned)
    if (leaf, pose) == (state.leaf, state.pose):
        return state
    began = stepped(state, "pick", now)
    picked = _laid(began, leaf, pose)
    return logged(picked, with_leaf("pick", picked), now)


def grab_new(state: BenchState, mark: str, pointer: Vec, now: float) -> BenchState:
    """Bring a leaf from the rack with the hand already on its handle; None stays if it can't lie.

    The leaf comes in above the picture, lifted off the steel, and is set down where the pointer
    first has room for it.
    """
    leaf = _leaf_off_rack(state, mark)
    if not state.can_move or leaf is None:
        return state
    turned = state.pose is not None and state.pose.turned
    pose = _with_handle_at(leaf, ready_pose(state, leaf, turned=turned), pointer)
    if not is_free(state.section.outline, leaf.body, pose):
        return state
    began = stepped(state, "pick", now)
    picked = _laid(began, leaf, pose)
    return _held(logged(picked, with_leaf("pick", picked), now), pointer, now)


def _leaf_off_rack(state: BenchState, mark: str) -> Leaf | None:
    """A leaf of the rack that hangs there, as worn as the coupon says."""
    edge = state.leaf.edge if state.leaf is not None else "leg"
    for leaf in rack(state.rack):
        if leaf.mark == mark:
            return replace(leaf, edge=edge, wear=state.coupon.leaf_wear)
    return None


def ready_pose(state: BenchState, leaf: Leaf, *, turned: bool) -> Pose:
    """A free pose for a fresh leaf: square to its seat and a little way out along the bisector."""
    joint = state.section.joint
    on = seat_of(leaf, Pose(0.0, 0.0, 0.0, turned))
    home = seat.home_pose(joint, leaf, on)
    out = joint.bisector
    outline = state.section.outline
    away = 0.0
    while away < 200.0:
        if is_free(outline, leaf.body, home.moved(away * out[0], away * out[1])):
            break
        away += 1.0
    gap = _READY_GAP / math.sin(joint.radians / 2.0)
    return home.moved((away + gap) * out[0], (away + gap) * out[1])


def _with_handle_at(leaf: Leaf, pose: Pose, at: Vec) -> Pose:
    handle = pose.to_section(leaf.handle)
    return pose.moved(at[0] - handle[0], at[1] - handle[1])


def _laid(state: BenchState, leaf: Leaf, pose: Pose) -> BenchState:
    """The leaf set down at a free pose, out of any hand."""
    return replace(state, leaf=leaf, pose=pose, hand=None, touches=(), way=(pose,))


def place(state: BenchState, at: Vec, now: float) -> BenchState:
    """Set the leaf down with its handle at `at` (mm), or at the nearest free pose, or refuse."""
    if state.leaf is None or state.pose is None or not state.can_move:
        return state
    pose = _free_near(state, state.leaf, _with_handle_at(state.leaf, state.pose, at))
    if pose is None:
        return _refused(state)
    return logged(_laid(stepped(state, "place", now), state.leaf, pose), "place", now)


def _free_near(state: BenchState, leaf: Leaf, pose: Pose) -> Pose | None:
    return seat.nearest_free(state.section, leaf, pose)


def _refused(state: BenchState) -> BenchState:
    return replace(state, refused=state.refused + 1, way=())


def grab(state: BenchState, at: Vec, now: float) -> BenchState:
    """Lay a hand on the blade at `at` (mm). The wrist keeps the leaf's angle."""
    if state.leaf is None or state.pose is None or not state.can_move:
        return state
    return _held(stepped(state, "drag", now), at, now)


def _held(state: BenchState, at: Vec, now: float) -> BenchState:
    if state.pose is None:
        return state
    hand = Hold(state.pose.to_leaf(at), at, state.pose.angle, _flush_from(state, None, now))
    return logged(replace(state, hand=hand), "grab", now)


def drag_to(state: BenchState, points: Sequence[Vec], now: float) -> BenchState:
    """Follow the pointer through `points` (mm, in order): the whole path is swept."""
    if state.hand is None or not points:
        return state
    for point in points:
        state = _pulled(state, point, now)
    return logged(state, "drag", now)


def settle(state: BenchState, now: float) -> BenchState:
    """Let a still hand feel: once flush for `ADOPT_AFTER` ms the wrist takes the leaf's angle."""
    if state.hand is None:
        return state
    return _pulled(state, state.hand.pointer, now)


def _pulled(state: BenchState, pointer: Vec, now: float) -> BenchState:
    """One pull of the hand towards `pointer`."""
    hold, leaf, pose = state.hand, state.leaf, state.pose
    if hold is None or leaf is None or pose is None:
        return state
    if hold.flush_since is not None and now - hold.flush_since >= ADOPT_AFTER:
        hold = replace(hold, angle=pose.angle)
    hand = Hand(hold.grab, pointer, hold.angle)
    motion = contact.drag(state.section.outline, leaf.body, pose, hand)
    moved = replace(state, pose=motion.pose, touches=motion.touches, way=motion.path)
    flush = _flush_from(moved, hold.flush_since, now)
    return replace(moved, hand=replace(hold, pointer=pointer, flush_since=flush))


def _flush_from(state: BenchState, since: float | None, now: float) -> float | None:
    if state.leaf is None or not lies_flush(state.touches, state.leaf.size):
        return None
    return now if since is None else since


def lies_flush(touches: Sequence[Touch], size: float) -> bool:
    """Whether an edge of the leaf lies along a member: two touches of the same pair, well apart.

    Parameters
    ----------
    touches
        Contacts of the leaf's last move.
    size
        The leaf's size, mm.

    Examples
    --------
    >>> ends = ("arc|long", "base", (12.0, 0.0)), ("long|back", "base", (24.0, 0.0))
    >>> apart = [Touch(*end) for end in ends]
    >>> lies_flush(apart, 8.0), lies_flush(apart[:1], 8.0)
    (True, False)
    """
    apart = _FLUSH_SPAN * size
    for index, one in enumerate(touches):
        for other in touches[index + 1 :]:
            edge = _pieces(one.moving) & _pieces(other.moving) & _STRAIGHT
            steel = _pieces(one.fixed) & _pieces(other.fixed)
            if edge and steel and math.dist(one.at, other.at) >= apart:
                return True
    return False


def _pieces(name: str) -> set[str]:
    """The pieces that a touch names: two where it is a corner."""
    return set(name.split("|"))


def release(state: BenchState, now: float) -> BenchState:
    """Let go. The leaf stays exactly where it is."""
    if state.hand is None:
        return state
    return logged(replace(state, hand=None, way=()), "release", now)


def nudge(state: BenchState, dx: float, dy: float, now: float) -> BenchState:
    """Push the leaf by (dx, dy) mm at its handle; it slides on what it touches."""
    leaf, pose = state.leaf, state.pose
    if leaf is None or pose is None or not state.can_move or state.hand is not None:
        return state
    at = pose.to_section(leaf.handle)
    hand = Hand(leaf.handle, (at[0] + dx, at[1] + dy), pose.angle)
    motion = contact.drag(state.section.outline, leaf.body, pose, hand)
    return _moved(stepped(state, "nudge", now), motion, "nudge", now)


def turn_by(state: BenchState, degrees: float, now: float) -> BenchState:
    """Turn the leaf about the hand, or about its handle, as far as steel lets it."""
    leaf, pose = state.leaf, state.pose
    if leaf is None or pose is None or not state.can_move:
        return state
    about = pose.to_section(state.hand.grab if state.hand is not None else leaf.handle)
    motion = contact.turn(state.section.outline, leaf.body, pose, about, degrees)
    if state.hand is None:
        return _moved(stepped(state, "turn", now), motion, "turn", now)
    # Within a drag the wrist has turned: it wants the new angle and starts to feel afresh.
    hand = replace(state.hand, angle=motion.pose.angle, flush_since=None)
    return replace(_moved(state, motion, "turn", now), hand=hand)


def _moved(state: BenchState, motion: Motion, event: str, now: float) -> BenchState:
    moved = replace(state, pose=motion.pose, touches=motion.touches, way=motion.path)
    return logged(moved, event, now)


def press_home(state: BenchState, now: float) -> BenchState:
    """Push the leaf gently into the corner, along the bisector, until it rests."""
    if state.leaf is None or state.pose is None or not state.can_move:
        return state
    motion = seat.press_home(state.section, state.leaf, state.pose)
    began = replace(stepped(state, "press home", now), hand=None)
    return _moved(began, motion, "press home", now)


def swap_ends(state: BenchState, now: float) -> BenchState:
    """Use the leaf's other end, at the nearest free pose; refuse if there is none near."""
    if state.leaf is None or state.pose is None or not state.can_move:
        return state
    leaf = state.leaf.swapped()
    return _changed_side(state, leaf, normal_pose(leaf, state.pose), "swap ends", now)


def turn_over(state: BenchState, now: float) -> BenchState:
    """Lay the leaf on its other side, mirrored in the bisector, so that it faces the other member.

    The nearest free pose is taken; if there is none near, the move is refused.
    """
    if state.leaf is None or state.pose is None or not state.can_move:
        return state
    mirrored = _mirrored(state.pose, state.section.joint)
    return _changed_side(state, state.leaf, normal_pose(state.leaf, mirrored), "turn over", now)


def _changed_side(
    state: BenchState, leaf: Leaf, wanted: Pose, event: str, now: float
) -> BenchState:
    pose = _free_near(state, leaf, wanted)
    if pose is None:
        return _refused(state)
    began = stepped(state, event, now)
    changed = _laid(began, leaf, pose)
    return logged(changed, with_leaf(event, changed), now)


def _mirrored(pose: Pose, joint: Joint) -> Pose:
    cos, sin = math.cos(joint.radians), math.sin(joint.radians)
    return Pose(
        cos * pose.x + sin * pose.y,
        sin * pose.x - cos * pose.y,
        wrap_degrees(joint.angle - pose.angle),
        not pose.turned,
    )


def normal_pose(leaf: Leaf, pose: Pose) -> Pose:
    """The same place, said as the contract says it: the throat edge is never turned.

    The throat end is its own mirror image in its bisector, so a turned one at angle t is an
    unturned one at t - 90.

    Examples
    --------
    >>> from geometry.leaf import leaf_of_mark
    >>> normal_pose(leaf_of_mark("8 mm", "throat"), Pose(1.0, 2.0, 90.0, turned=True))
    Pose(x=1.0, y=2.0, angle=0.0, turned=False)
    """
    if leaf.edge == "leg" or not pose.turned:
        return pose
    return Pose(pose.x, pose.y, wrap_degrees(pose.angle - 90.0), turned=False)


def put_back(state: BenchState, now: float) -> BenchState:
    """Hang the leaf back on the rack."""
    if state.leaf is None or not state.can_move:
        return state
    began = stepped(state, "put back", now)
    gone = replace(began, leaf=None, pose=None, hand=None, touches=(), way=())
    return logged(gone, "put back", now)
