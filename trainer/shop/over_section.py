"""What lies over the open coupon's section: the leaf that was chosen, and what is drawn."""

from __future__ import annotations

from typing import NamedTuple

from exercises.coupon import Coupon
from exercises.placement_faults import placed_leaf
from geometry.lengths import Unit
from geometry.measures import Measures, measure
from geometry.section import Section
from trainer.bench.spoken import parts_of, shown_words
from trainer.corners.drawing import drawn_over
from trainer.corners.state import Drawn
from trainer.look.tokens import Theme
from trainer.shop.answers import Answer
from trainer.shop.section_view import Shown

__all__ = ["over_section"]


class _Weld(NamedTuple):
    """A section and its measures, for drawing over it."""

    section: Section
    measures: Measures


def over_section(
    coupon: Coupon,
    answer: Answer | None,
    drawn: frozenset[Drawn],
    look: tuple[Theme, Unit],
    *,
    pictured: bool,
) -> Shown:
    """Return what lies over a coupon's section.

    Parameters
    ----------
    answer
        A leaf at rest on it and what it shows; None where none was chosen: then the leaf is seen
        that is placed there for its fault to be found, if one is.
    drawn
        What is drawn of its measures.
    look
        In which theme, and in which unit lengths are said.
    pictured
        Whether the photo behind the section is seen, if there is one.
    """
    theme, unit = look
    section = coupon.section
    over = drawn_over(_Weld(section, measure(section)), drawn, unit) if drawn else ()
    if answer is None and coupon.placed is not None and coupon.task == "find the fault":
        leaf, pose = placed_leaf(coupon), coupon.placed.pose
        parts = parts_of(section, leaf, pose, None, unit)
        return Shown(theme, unit, leaf, pose, over, parts, pictured)
    if answer is None:
        parts = parts_of(section, None, None, None, unit)
        return Shown(theme, unit, overlays=over, parts=parts, pictured=pictured)
    pose, shown = answer.reading.pose, shown_words(answer.reading, unit)
    parts = parts_of(section, answer.leaf, pose, None, unit, shown)
    return Shown(theme, unit, answer.leaf, pose, over, parts, pictured)
