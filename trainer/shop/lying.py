"""Which rack's leaves are tried in the shop, and which of them lies on the picture. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace

from exercises.coupon import Coupon
from exercises.judging import preferred_rack
from geometry.leaf import RackName
from trainer.shop.answers import SEATS, Answer, Answers

__all__ = ["Lying"]


@dataclass(frozen=True, slots=True)
class Lying:
    """What was chosen of the leaves.

    Parameters
    ----------
    chosen
        A rack, or None for that of the callout.
    laid
        Mark and seat, by its place among `SEATS`, of the leaf on the picture; None where there is
        none.

    Examples
    --------
    >>> lying = Lying("inch").with_leaf("1/4 in", 0)
    >>> lying.laid, lying.with_leaf("", 0).laid
    (('1/4 in', 0), None)
    """

    chosen: RackName | None = None
    laid: tuple[str, int] | None = None

    def with_leaf(self, mark: str, seat: int) -> Lying:
        """Return it with another leaf on the picture; an empty mark: with none."""
        return replace(self, laid=(mark, seat) if mark else None)

    def rack(self, coupon: Coupon) -> RackName:
        """Return the rack whose leaves are tried."""
        return self.chosen or preferred_rack(coupon)

    def answer(self, answers: Answers) -> Answer | None:
        """Return what the leaf on the picture shows; None where none lies there."""
        return None if self.laid is None else answers.answer(self.laid[0], SEATS[self.laid[1]])
