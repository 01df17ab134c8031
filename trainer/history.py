"""Undo and redo without limit: the list of earlier values, each gesture one step. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Generic, TypeVar

__all__ = ["History", "Step", "done", "ended", "redone", "undone"]

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Step(Generic[Value]):
    """An earlier (or later) value, and all those before (or after) it.

    Parameters
    ----------
    value
        The value.
    what
        What leads from it to the next: the name of the gesture.
    rest
        The steps beyond it; shared by all that come after, so a step costs the same however many
        there are.
    """

    value: Value
    what: str
    rest: Step[Value] | None = None


@dataclass(frozen=True, slots=True)
class History(Generic[Value]):
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
    >>> after = done(History(7), 8, "add")
    >>> after.now, undone(after).now, undone(after).future.what
    (8, 7, 'add')
    >>> redone(undone(after)).now
    8
    """

    now: Value
    past: Step[Value] | None = None
    future: Step[Value] | None = None
    gesture: str = ""


def done(
    history: History[Value], value: Value, what: str, *, going_on: bool = False
) -> History[Value]:
    """Return the history after a change; changes of one gesture that goes on are one step.

    Examples
    --------
    >>> one = done(History(7), 8, "add", going_on=True)
    >>> two = done(one, 9, "add", going_on=True)
    >>> two.now, undone(two).now
    (9, 7)
    """
    if value is history.now:
        return history
    past = history.past
    if not (going_on and history.gesture == what):
        past = Step(history.now, what, past)
    return History(value, past, None, what if going_on else "")


def ended(history: History[Value]) -> History[Value]:
    """Return the history with no gesture going on: what comes now is another step."""
    return replace(history, gesture="") if history.gesture else history


def undone(history: History[Value]) -> History[Value]:
    """Return the history one step back; where there is none, as it is."""
    past = history.past
    if past is None:
        return ended(history)
    return History(past.value, past.rest, Step(history.now, past.what, history.future))


def redone(history: History[Value]) -> History[Value]:
    """Return the history one step on again; where there is none, as it is."""
    future = history.future
    if future is None:
        return ended(history)
    return History(future.value, Step(history.now, future.what, history.past), future.rest)
