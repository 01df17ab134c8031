"""The debrief of a placed leaf: everything that is wrong with it, why, and what would be right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exercises.coupon import Coupon
from exercises.placement_faults import findings, placed_leaf
from geometry.lengths import Unit
from trainer.bench.placed_words import finding_words, placed_shows
from trainer.bench.reasons import what_it_shows
from trainer.bench.review_picture import right_words
from trainer.bench.right import RightSeat
from trainer.bench.spoken import shown_words
from trainer.bench.translation import translate

__all__ = ["Line", "finding_lines", "held_lines", "spoken_findings"]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the debrief.

    Parameters
    ----------
    sign
        Of an icon: a ring where something is wrong, a disc where all is well, empty for a remark.
    text
        In words.
    """

    sign: str
    text: str


def finding_lines(coupon: Coupon, unit: Unit) -> tuple[Line, ...]:
    """Return everything that is wrong with the placed leaf, and what it shows as it lies."""
    found = findings(coupon)
    said = [Line("ring", finding_words(each, unit)) for each in found] or [
        Line(
            "disc",
            translate("Placed", "Nothing: the right leaf by the right edge, home, nothing owed."),
        )
    ]
    shown = what_it_shows(placed_shows(coupon), placed_leaf(coupon).edge, unit)
    as_it_lies = translate("Placed", "As it lies: {shown}").format(shown=shown)
    return (*said, Line("", as_it_lies))


def held_lines(right: Sequence[RightSeat], unit: Unit) -> tuple[Line, ...]:
    """Return each seat that the right handling has, and what a leaf shows there."""
    text = translate("Placed", "{seat}: {shown}")
    return tuple(
        Line("disc", text.format(seat=right_words(seat), shown=shown_words(seat.shown, unit)))
        for seat in right
    )


def spoken_findings(coupon: Coupon, unit: Unit) -> str:
    """All of it in one breath, for a screen reader."""
    return " ".join(line.text for line in finding_lines(coupon, unit))
