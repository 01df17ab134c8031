"""Undo and redo without limit: the list of earlier values, each gesture one step. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace

from trainer.shop.state import Shop, shown

__all__ = ["History", "Step", "browsed", "done", "ended", "redone", "undone"]


@dataclass(frozen=True, slots=True)
class Step:
    """An earlier (or later) value, and all those before (or after) it.

    Parameters
    ----------
    shop
        The value.
    what
        What leads from it to the next: the name of the gesture.
    rest
        The steps beyond it; shared by all that come after, so a step costs the same however many
        there are.
    """

    shop: Shop
    what: str
    rest: Step | None = None


@dataclass(frozen=True, slots=True)
class History:
    """The value now, and the way here and back.

    Parameters
    ----------
    now
        What is shown.
    past, future
        What can be undone, and done again.
    gesture
        The gesture that is going on; empty between gestures.

    Examples
    --------
    >>> from trainer.shop.state import duplicated, new_shop
    >>> before = History(new_shop())
    >>> after = done(before, duplicated(before.now), "duplicate")
    >>> len(after.now.coupons), len(undone(after).now.coupons), undone(after).future.what
    (2, 1, 'duplicate')
    >>> redone(undone(after)).now is after.now
    True
    """

    now: Shop
    past: Step | None = None
    future: Step | None = None
    gesture: str = ""


def done(history: History, shop: Shop, what: str, *, going_on: bool = False) -> History:
    """Return the history after a change; changes of one gesture that goes on are one step.

    Examples
    --------
    >>> from trainer.shop.state import duplicated, new_shop
    >>> one = done(History(new_shop()), duplicated(new_shop()), "a", going_on=True)
    >>> two = done(one, duplicated(one.now), "a", going_on=True)
    >>> len(two.now.coupons), len(undone(two).now.coupons)
    (3, 1)
    """
    if shop is history.now:
        return history
    past = history.past
    if not (going_on and history.gesture == what):
        past = Step(history.now, what, past)
    return History(shop, past, None, what if going_on else "")


def ended(history: History) -> History:
    """Return the history with no gesture going on: what comes now is another step."""
    return replace(history, gesture="") if history.gesture else history


def browsed(history: History, at: int) -> History:
    """Return the history with another coupon open, which is no step."""
    return replace(history, now=shown(history.now, at), gesture="")


def undone(history: History) -> History:
    """Return the history one step back; where there is none, as it is."""
    past = history.past
    if past is None:
        return ended(history)
    return History(past.shop, past.rest, Step(history.now, past.what, history.future))


def redone(history: History) -> History:
    """Return the history one step on again; where there is none, as it is."""
    future = history.future
    if future is None:
        return ended(history)
    return History(future.shop, Step(history.now, future.what, history.past), future.rest)
