"""What was put into a picture so far, as a value that is replaced whole. No Qt here.

A change returns another state. Points are in pixels of the picture, x to the right and y down.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal

from exercises.intake.photo import Wire
from exercises.intake.photo_edges import snap
from exercises.intake.photo_file import Picture
from exercises.intake.photo_follow import snap_corners, snap_length, snap_line
from exercises.intake.photo_frame import Marks, Spot
from geometry.curves import Vec

__all__ = [
    "GROUPS",
    "STEPS",
    "Chosen",
    "Group",
    "PhotoState",
    "Sides",
    "Step",
    "choose",
    "chosen_along",
    "is_full",
    "moved",
    "nudged",
    "put",
    "removed",
    "settled",
    "spot_of",
    "stepped",
    "with_hand",
    "with_keeping",
    "with_length",
    "with_member",
    "with_sides",
    "within",
]

Step = Literal["open", "straighten", "scale", "members", "trace", "check"]
STEPS: Final[tuple[Step, ...]] = ("open", "straighten", "scale", "members", "trace", "check")

Group = Literal["corners", "scale", "base", "upright", "face"]
GROUPS: Final[dict[Step, tuple[Group, ...]]] = {
    "open": (),
    "straighten": ("corners",),
    "scale": ("scale",),
    "members": ("base", "upright"),
    "trace": ("face",),
    "check": (),
}
"""The points that each step puts."""

Sides = Literal["lengths", "square", "ratio"]
"""What is known of the rectangle."""

_MOST: Final[dict[Group, int]] = {
    "corners": 4, "scale": 2, "base": 12, "upright": 12, "face": 60,
}  # fmt: skip

Chosen = tuple[Group, int]


_NONE: Final = Marks()


@dataclass(frozen=True, slots=True)
class PhotoState:
    """How far a picture is marked.

    Parameters
    ----------
    step
        What is being done.
    marks
        All points and lengths.
    known
        What is known of the rectangle's sides.
    chosen
        The point that keys and steps move.
    group
        Which points a click puts: at the members, the base's or the upright's.
    snaps
        Whether what is put goes to the strongest edge nearby.
    keeps
        Whether the picture goes into the tray.
    """

    step: Step = "open"
    marks: Marks = _NONE
    known: Sides = "lengths"
    chosen: Chosen | None = None
    group: Group = "corners"
    snaps: bool = True
    keeps: bool = True

    def spots(self, group: Group) -> tuple[Spot, ...]:
        """The points of a group."""
        found: tuple[Spot, ...] = getattr(self.marks, group)
        return found


def stepped(state: PhotoState, step: Step) -> PhotoState:
    """Return the state at a step, no point chosen.

    Examples
    --------
    >>> stepped(PhotoState(), "members").group
    'base'
    """
    groups = GROUPS[step]
    lacking = [group for group in groups if len(state.spots(group)) < 2]
    group = (lacking or list(groups) or [state.group])[0]
    return replace(state, step=step, chosen=None, group=group)


def is_full(state: PhotoState, group: Group) -> bool:
    """Whether a group takes no more points."""
    return len(state.spots(group)) >= _MOST[group]


def spot_of(state: PhotoState, chosen: Chosen | None) -> Spot | None:
    """Return a point that may be chosen, or None if there is none such."""
    if chosen is None or chosen[1] >= len(state.spots(chosen[0])):
        return None
    return state.spots(chosen[0])[chosen[1]]


def put(state: PhotoState, at: Vec, picture: Picture, wire: Wire, near: float) -> PhotoState:
    """Return the state with a point more, chosen; where no more can be, the chosen one goes there.

    On the face a point within `near` pixels of the wire goes between the two that it runs from and
    to, any other at the end that it is nearer to.
    """
    if state.step not in ("straighten", "scale", "members", "trace"):
        return state
    group = state.group
    at = within(at, picture)
    if is_full(state, group):
        chosen = state.chosen if state.chosen and state.chosen[0] == group else None
        return state if chosen is None else settled(moved(state, chosen, at), picture)
    spots = state.spots(group)
    index = _place_on_face(spots, at, wire, near) if group == "face" else len(spots)
    spot = Spot(*at, by_hand=not state.snaps)
    after = _with(state, group, (*spots[:index], spot, *spots[index:]))
    after = settled(replace(after, chosen=(group, index)), picture)
    if group in ("base", "upright") and len(after.spots(group)) == 2:
        # Two are enough: on to the other member, if that has none yet.
        other: Group = "upright" if group == "base" else "base"
        if not after.spots(other):
            return replace(after, group=other)
    return after


def _place_on_face(spots: tuple[Spot, ...], at: Vec, wire: Wire, near: float) -> int:
    """Where in the face a point belongs."""
    if len(spots) < 2:
        return len(spots)
    for index in range(1, len(spots)):
        path = wire.along(spots[index - 1 : index + 1])
        if float(min((path[:, 0] - at[0]) ** 2 + (path[:, 1] - at[1]) ** 2)) <= near * near:
            return index
    first, last = (math.dist(spots[end].at, at) for end in (0, -1))
    return 0 if first < last else len(spots)


def moved(state: PhotoState, chosen: Chosen, at: Vec, *, by_hand: bool | None = None) -> PhotoState:
    """Return the state with a point elsewhere; it is settled once it is let go."""
    group, index = chosen
    spots = list(state.spots(group))
    if index >= len(spots):
        return state
    spots[index] = Spot(*at, by_hand=(not state.snaps) if by_hand is None else by_hand)
    return replace(_with(state, group, tuple(spots)), chosen=chosen)


def nudged(state: PhotoState, dx: float, dy: float, picture: Picture) -> PhotoState:
    """Return the state with the chosen point moved by hand, pixels."""
    spot = spot_of(state, state.chosen)
    if spot is None or state.chosen is None:
        return state
    at = within((spot.x + dx, spot.y + dy), picture)
    return settled(moved(state, state.chosen, at, by_hand=True), picture)


def removed(state: PhotoState, chosen: Chosen | None) -> PhotoState:
    """Return the state without a point; the one before it is chosen."""
    if chosen is None or spot_of(state, chosen) is None:
        return state
    group, index = chosen
    spots = state.spots(group)
    left = (*spots[:index], *spots[index + 1 :])
    after = _with(state, group, left)
    return replace(after, chosen=(group, max(0, index - 1)) if left else None, group=group)


def settled(state: PhotoState, picture: Picture) -> PhotoState:
    """Return the state with the points of the chosen group on their edges, if they go there."""
    if state.chosen is None:
        return state
    group, index = state.chosen
    grey, spots = picture.grey, state.spots(group)
    if group == "corners":
        if len(spots) < 4:
            return state
        # The order that the corners come in after this is the one in which they are named.
        at = spots[index].at
        marks = state.marks.ordered()
        index = [spot.at for spot in marks.corners].index(at)
        after = replace(state, marks=marks, chosen=(group, index))
        return _with(after, group, snap_corners(grey, marks.corners))
    settle: dict[Group, Callable[[], tuple[Spot, ...]]] = {
        "scale": lambda: snap_length(grey, spots),
        "base": lambda: snap_line(grey, spots),
        "upright": lambda: snap_line(grey, spots),
        "face": lambda: tuple(
            _on_edge(spot, picture) if at == index else spot for at, spot in enumerate(spots)
        ),
    }
    return _with(state, group, settle[group]())


def _on_edge(spot: Spot, picture: Picture) -> Spot:
    if spot.by_hand:
        return spot
    at = snap(picture.grey, spot.at)
    return Spot(*spot.at, by_hand=True) if at is None else Spot(*at)


def with_hand(state: PhotoState, picture: Picture, *, by_hand: bool) -> PhotoState:
    """Return the state whose chosen point stays where it is put, or goes to its edge; and so on."""
    after = replace(state, snaps=not by_hand)
    spot = spot_of(state, state.chosen)
    if spot is None or state.chosen is None:
        return after
    return settled(moved(after, state.chosen, spot.at, by_hand=by_hand), picture)


def chosen_along(state: PhotoState, way: int) -> PhotoState:
    """Return the state with the point before or after the chosen one chosen, of all at this step.

    Examples
    --------
    >>> marks = Marks(base=(Spot(1.0, 1.0), Spot(2.0, 1.0)))
    >>> chosen_along(PhotoState("members", marks), 1).chosen
    ('base', 0)
    """
    every: list[Chosen] = [
        (group, index) for group in GROUPS[state.step] for index in range(len(state.spots(group)))
    ]
    if not every:
        return state
    if state.chosen in every:
        at = (every.index(state.chosen) + way) % len(every)
    else:
        at = 0 if way > 0 else len(every) - 1
    return replace(state, chosen=every[at], group=every[at][0])


def with_sides(state: PhotoState, known: Sides, sides: tuple[float, float] | None) -> PhotoState:
    """Return the state that knows this of its rectangle: lengths (mm), a ratio, nothing yet."""
    sides = (1.0, 1.0) if known == "square" else sides
    lengths = known == "lengths" and sides is not None
    marks = replace(state.marks, sides=sides, sides_known=lengths)
    return replace(state, marks=marks, known=known)


def with_length(state: PhotoState, length: float | None) -> PhotoState:
    """Return the state whose two points of the scale are this far apart, mm."""
    return replace(state, marks=replace(state.marks, length=length))


def with_keeping(state: PhotoState, *, keeps: bool) -> PhotoState:
    """Return the state whose picture goes into the tray, or doesn't."""
    return replace(state, keeps=keeps)


def with_member(state: PhotoState, group: Group) -> PhotoState:
    """Return the state whose next clicks mark a member; only where members are marked."""
    return replace(state, group=group, chosen=None) if state.step == "members" else state


def within(at: Vec, picture: Picture) -> Vec:
    """Return the point of the picture that is nearest."""
    width, height = picture.size
    return min(max(at[0], 0.0), float(width)), min(max(at[1], 0.0), float(height))


def _with(state: PhotoState, group: Group, spots: tuple[Spot, ...]) -> PhotoState:
    changed: dict[str, tuple[Spot, ...]] = {group: spots}
    return replace(state, marks=replace(state.marks, **changed))  # type: ignore[arg-type]


def choose(state: PhotoState, point: Chosen | None) -> PhotoState:
    """Return the state with a point chosen, or none."""
    return replace(state, chosen=point, group=point[0] if point else state.group)
