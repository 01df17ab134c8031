"""What a person said of a scan: one frozen value, replaced whole. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Final, Literal

import numpy as np

from exercises.intake.cloud import Cloud
from exercises.intake.scan import Fitted, Wishes
from exercises.intake.units import FileUnit
from geometry.curves import Vec
from trainer.shop.scan.source import Choice

__all__ = [
    "HANDLES", "Handle", "ScanState", "laid", "moved", "place_of", "places", "put_back",
    "rough_places", "with_choice", "with_outline", "with_unit",
]  # fmt: skip

Handle = Literal[
    "toe base", "toe upright", "root", "base near", "base far", "upright near", "upright far"
]
HANDLES: Final[tuple[Handle, ...]] = (
    "toe base", "toe upright", "root", "base near", "base far", "upright near", "upright far",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class ScanState:
    """What was said: of the file, of the section, and which handle is chosen."""

    choice: Choice = field(default_factory=Choice)
    wishes: Wishes = field(default_factory=Wishes)
    chosen: Handle = "toe base"


def with_unit(state: ScanState, unit: FileUnit) -> ScanState:
    """Return the state with another unit; what was put by hand went by the old one."""
    return ScanState(replace(state.choice, unit=unit), _kept(state.wishes), state.chosen)


def with_choice(state: ScanState, choice: Choice) -> ScanState:
    """Return the state with another choice of columns or outlines."""
    return ScanState(choice, _kept(state.wishes), state.chosen)


def with_outline(state: ScanState, index: int, *, chosen: bool) -> ScanState:
    """Return the state with an outline taken in, or left out."""
    others = tuple(at for at in state.choice.outlines if at != index)
    outlines = tuple(sorted((*others, index))) if chosen else others
    return with_choice(state, replace(state.choice, outlines=outlines))


def _kept(wishes: Wishes) -> Wishes:
    return Wishes(tolerance=wishes.tolerance, smooth=wishes.smooth)


def place_of(fitted: Fitted, wishes: Wishes, handle: Handle) -> Vec:
    """Return where a handle is, mm in the file's frame.

    Members' handles lie where they were put, else a little and a good way beyond the toe.
    """
    if handle == "root":
        at = fitted.root
    elif handle.startswith("toe"):
        line, toe = _member(fitted, handle)
        at = fitted.root + line * toe
    else:
        member, end = handle.split()
        put = wishes.base if member == "base" else wishes.upright
        if put is not None:
            return put[0 if end == "near" else 1]
        line, toe = _member(fitted, handle)
        at = fitted.root + line * (toe + (2.0 if end == "near" else max(6.0, 0.8 * toe)))
    return (float(at[0]), float(at[1]))


def _member(fitted: Fitted, handle: Handle) -> tuple[np.ndarray, float]:
    if "base" in handle:
        return fitted.base.along, fitted.toe_base.at
    return fitted.upright.along, fitted.toe_upright.at


def places(fitted: Fitted, wishes: Wishes) -> dict[Handle, Vec]:
    """Return where every handle is."""
    return {handle: place_of(fitted, wishes, handle) for handle in HANDLES}


def rough_places(cloud: Cloud, wishes: Wishes) -> dict[Handle, Vec]:
    """Return where the members' handles are while no section was found: as put, or at the edges.

    Examples
    --------
    >>> from exercises.intake.cloud import cloud_of_points
    >>> x = np.linspace(0.0, 10.0, 101)
    >>> places = rough_places(cloud_of_points(x, x), Wishes())
    >>> places["base near"], places["upright far"]
    ((4.0, 0.0), (0.0, 9.0))
    """
    left, low = (float(at) for at in cloud.kept.min(axis=0))
    wide, high = (float(at) for at in np.ptp(cloud.kept, axis=0))
    base = wishes.base or ((left + 0.4 * wide, low), (left + 0.9 * wide, low))
    upright = wishes.upright or ((left, low + 0.4 * high), (left, low + 0.9 * high))
    return {
        "base near": base[0],
        "base far": base[1],
        "upright near": upright[0],
        "upright far": upright[1],
    }


def laid(state: ScanState, cloud: Cloud, handle: Handle, to: Vec) -> ScanState:
    """Return the state with a member's handle put somewhere while no section was found."""
    at_all = rough_places(cloud, state.wishes)
    if handle not in at_all:
        return state
    at_all[handle] = to
    wishes = replace(
        state.wishes,
        base=(at_all["base near"], at_all["base far"]),
        upright=(at_all["upright near"], at_all["upright far"]),
        root=None,
    )
    return replace(state, wishes=wishes, chosen=handle)


def moved(state: ScanState, fitted: Fitted, handle: Handle, to: Vec) -> ScanState:
    """Return the state with a handle put elsewhere, mm in the file's frame.

    A toe stays on its member. A member's handle fixes both members as they are, since half a corner
    is none; the line is then fitted to the points between its two.
    """
    wishes = state.wishes
    if handle == "root":
        wishes = replace(wishes, root=to)
    elif handle.startswith("toe"):
        line, _ = _member(fitted, handle)
        at = max(float((np.array(to) - fitted.root) @ line), 0.05)
        if handle == "toe base":
            wishes = replace(wishes, toe_base=at)
        else:
            wishes = replace(wishes, toe_upright=at)
    else:
        at_all = {**places(fitted, wishes), handle: to}
        wishes = replace(
            wishes,
            base=(at_all["base near"], at_all["base far"]),
            upright=(at_all["upright near"], at_all["upright far"]),
            root=None,
        )
    return replace(state, wishes=wishes, chosen=handle)


def put_back(state: ScanState, handle: Handle) -> ScanState:
    """Return the state with a handle where it was proposed."""
    wishes = state.wishes
    if handle == "root":
        wishes = replace(wishes, root=None)
    elif handle == "toe base":
        wishes = replace(wishes, toe_base=None)
    elif handle == "toe upright":
        wishes = replace(wishes, toe_upright=None)
    else:
        wishes = replace(wishes, base=None, upright=None)
    return replace(state, wishes=wishes)
