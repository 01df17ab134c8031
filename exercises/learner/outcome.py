"""One graded call as statistics see it: how far from the limit the weld was, and what was said."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from exercises.coupon import Coupon, Disposition
from exercises.judging import Judgement, judge
from exercises.learner.line import Call

__all__ = ["Outcome", "outcome_of", "size_distance"]

_ABOUT_SIZE: Final[frozenset[Disposition]] = frozenset(("accept", "add weld metal"))


@dataclass(frozen=True, slots=True)
class Outcome:
    """A call as it is counted.

    Parameters
    ----------
    distance
        How far the worst size lies from its limit, mm of size, below 0 short; None where the right
        call doesn't hang on a size, so that it says nothing of the learner's line.
    short
        Whether it was called short; None where the call was about something else.
    bad
        Whether the rules reject the weld.
    called_bad
        Whether the learner did; None where no disposition was stated.
    in_doubt
        Whether either verdict was right: such calls show the line, and count for no score.
    clean
        Whether nothing lay in the way: no spatter, lip, groove, opening, and the joint square.
    """

    distance: float | None
    short: bool | None
    bad: bool
    called_bad: bool | None
    in_doubt: bool
    clean: bool

    @property
    def call(self) -> Call | None:
        """The call as a model of the learner's line takes it; None if it says nothing of it."""
        if self.distance is None or self.short is None:
            return None
        return Call(self.distance, self.short)

    @property
    def missed(self) -> bool:
        """Whether a bad weld was let go, outside the doubt."""
        return self.bad and self.called_bad is False and not self.in_doubt

    @property
    def false_alarm(self) -> bool:
        """Whether a good weld was rejected, outside the doubt."""
        return not self.bad and self.called_bad is True and not self.in_doubt


def size_distance(judgement: Judgement) -> float | None:
    """Return how far the worst size lies from its limit, mm of size; None if none decides.

    A size decides where a leaf can tell it and nothing but sizes could reject the weld.
    """
    sizes = [c for c in judgement.checks if c.required is not None and c.decided_by_leaf]
    others = [c for c in judgement.checks if c.required is None and not c.passed]
    if not sizes or others or judgement.disposition not in _ABOUT_SIZE:
        return None
    return min(check.margin for check in sizes)


def outcome_of(coupon: Coupon, disposition: Disposition | None) -> Outcome:
    """Return what a call on a coupon counts as.

    Examples
    --------
    >>> from exercises.maker.making import make_tray
    >>> from exercises.maker.recipe import Recipe
    >>> tray = make_tray(Recipe(4, seed=7, faces=("convex",)))
    >>> found = [outcome_of(coupon, "accept") for coupon in tray.coupons]
    >>> [(o.bad, o.missed) for o in found if o.distance is not None and o.distance < 0.0][0]
    (True, True)
    """
    call = judge(coupon)
    distance = size_distance(call)
    short = disposition == "add weld metal" if disposition in _ABOUT_SIZE else None
    bead = coupon.section.bead
    hindered = (
        coupon.section.spatter or bead.overlap_base or bead.overlap_upright
        or bead.undercut_base or bead.undercut_upright
        or coupon.section.joint.root_opening > 0.0 or coupon.section.joint.angle != 90.0
    )  # fmt: skip
    return Outcome(
        distance=distance,
        short=short if distance is not None else None,
        bad=call.disposition != "accept",
        called_bad=None if disposition is None else disposition != "accept",
        in_doubt=call.in_doubt,
        clean=not hindered,
    )
