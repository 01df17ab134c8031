"""Turning a knob: as far as geometry allows it, and what stopped it there. No Qt here."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from exercises.coupon import Coupon
from exercises.rules import RuleSet
from exercises.versions import Document
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from trainer.shop.building import coupon_of
from trainer.shop.knobs import document_with, knob_of
from trainer.shop.tracing import trace_document

__all__ = ["GRAIN", "Limit", "Turn", "dragged_point", "turned"]

GRAIN: Final = 0.01
"""mm, degrees: a knob that is held stops on a whole number of these."""


@dataclass(frozen=True, slots=True)
class Limit:
    """Why a wanted value was not taken as it is.

    Parameters
    ----------
    key
        Which knob.
    value
        What it was held at, mm or degrees; None for a point of a trace.
    fault
        What would be wrong beyond.
    """

    key: str
    value: float | None
    fault: Fault


@dataclass(frozen=True, slots=True)
class Turn:
    """The coupon after a turn, and what held it back, if anything did."""

    coupon: Coupon
    limit: Limit | None = None


Rules = Mapping[str, RuleSet]


def turned(coupon: Coupon, key: str, value: float, rules: Rules) -> Turn:
    """Return the coupon with a knob at `value`, or as near to it as a section can be.

    Parameters
    ----------
    key, value
        The knob; mm or degrees.
    rules
        The tray's own.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES
    >>> from trainer.shop.state import PLAIN
    >>> plain = coupon_of(PLAIN, NO_RULES)
    >>> turned(plain, "leg_base", 9.0, NO_RULES).coupon.section.bead.leg_base
    9.0
    >>> held = turned(plain, "crown", -9.0, NO_RULES)
    >>> held.limit.value, held.limit.fault.code
    (-2.34, 'face-in-member')
    """
    knob = knob_of(coupon.section, key)
    if knob is None or not math.isfinite(value) or value == knob.value:
        return Turn(coupon)

    def document(wanted: float) -> Document:
        return document_with(coupon, key, wanted)

    try:
        return Turn(coupon_of(document(value), rules))
    except GeometryError as error:
        fault = error.faults[0]
    return _held(coupon, key, (knob.value, value), fault, document, rules)


def _held(
    coupon: Coupon,
    key: str,
    way: tuple[float, float],
    fault: Fault,
    document: Callable[[float], Document],
    rules: Rules,
) -> Turn:
    """The last sound value on the way from where the knob stands to where it is wanted."""
    start, end = way
    sign = 1.0 if end > start else -1.0
    first = math.floor(sign * start / GRAIN + 1e-6)
    low, high = 0, max(1, math.ceil(abs(end - start) / GRAIN))
    last, best = fault, coupon
    while high - low > 1:
        middle = (low + high) // 2
        try:
            best = coupon_of(document(round(sign * (first + middle) * GRAIN, 6) + 0.0), rules)
            low = middle
        except GeometryError as error:
            high, last = middle, error.faults[0]
    value = start if best is coupon else round(sign * (first + low) * GRAIN, 6) + 0.0
    return Turn(best, Limit(key, value, last))


def dragged_point(coupon: Coupon, index: int, to: Vec, rules: Rules) -> Turn:
    """Return the coupon with a point of its traced face at `to` (mm), or as near as can be.

    The first and the last stay on their members.

    Examples
    --------
    >>> from trainer.shop.building import NO_RULES
    >>> from trainer.shop.state import PLAIN
    >>> trace = [[8.0, 0.0], [4.5, 4.5], [0.0, 8.0]]
    >>> traced = coupon_of({**PLAIN, "bead": {"trace": trace}}, NO_RULES)
    >>> dragged_point(traced, 1, (5.0, 4.0), NO_RULES).coupon.section.bead.trace[1]
    (5.0, 4.0)
    >>> dragged_point(traced, 1, (5.0, -4.0), NO_RULES).limit.fault.code
    'face-in-member'
    """
    trace = coupon.section.bead.trace
    if trace is None or not 0 <= index < len(trace):
        return Turn(coupon)
    if index in (0, len(trace) - 1):
        along = coupon.section.joint.direction("base" if index == 0 else "upright")
        key = "leg_base" if index == 0 else "leg_upright"
        return turned(coupon, key, to[0] * along[0] + to[1] * along[1], rules)
    start = trace[index]

    def at(share: float) -> Document:
        x, y = (a + share * (b - a) for a, b in zip(start, to, strict=True))
        return trace_document(coupon, (*trace[:index], (x, y), *trace[index + 1 :]))

    try:
        return Turn(coupon_of(at(1.0), rules))
    except GeometryError as error:
        fault = error.faults[0]
    low, high, best = 0.0, 1.0, coupon
    for _ in range(10):
        middle = (low + high) / 2.0
        try:
            best, low = coupon_of(at(middle), rules), middle
        except GeometryError as error:
            high, fault = middle, error.faults[0]
    return Turn(best, Limit(f"trace.{index}", None, fault))
