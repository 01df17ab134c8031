"""What is wrong with a placed leaf, marked where it is to be seen: after the call only."""

from __future__ import annotations

from exercises.coupon import Coupon
from exercises.placement_faults import Finding, findings, placed_leaf
from geometry.curves import Vec
from geometry.section import Section
from trainer.bench.placed_words import fault_word
from trainer.canvas.scene import Mark, Overlay

__all__ = ["finding_marks"]


def finding_marks(coupon: Coupon) -> tuple[Overlay, ...]:
    """Return a mark at each place of the picture where something is wrong with the placed leaf."""
    places: dict[Vec, list[str]] = {}
    for found in findings(coupon):
        places.setdefault(_place_of(coupon, found), []).append(fault_word(found.fault).lower())
    return tuple(Mark(at, "fault", ", ".join(said)) for at, said in places.items())


def _place_of(coupon: Coupon, found: Finding) -> Vec:
    """Where a fault is to be seen, mm."""
    placed, leaf, section = coupon.placed, placed_leaf(coupon), coupon.section
    assert placed is not None
    if found.fault == "on spatter":
        return _drop(section, str(found.params["pieces"]).split(", ")[0])
    if found.fault == "one leg only":
        missing = str(found.params["missing"]).split(", ")[0]
        return section.toe("base" if missing == "base" else "upright")
    if found.fault == "tilted":
        (ax, ay), (bx, by) = leaf.long_edge
        return placed.pose.to_section(((ax + bx) / 2.0, (ay + by) / 2.0))
    if found.fault == "wrong leaf":
        return placed.pose.to_section(leaf.handle)
    return placed.pose.to_section(leaf.point)


def _drop(section: Section, name: str) -> Vec:
    middle = section.outline.line(name).interpolate(0.5, normalized=True)
    return (float(middle.x), float(middle.y))
