"""How far a sitting has come: folded out of what was written down, with the time counted honestly.

Two clocks are read with each event. One runs while the machine is awake and nobody can set it; it
alone says what time was used. The other is the wall's: it says when, and what lay between.

- While the program runs, the time between two events is what the first clock says.
- A program that was killed is charged what its events show, the last beat included; what lay
  between the last event and the resumption is an interruption, neither charged nor given.
- A machine that slept lets the wall's clock run ahead of the other: that is an interruption too.
- A clock that was set back is recorded as one, with no length; it changes no time.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from typing import Final, Literal, get_args

from exercises.strict_json import Json

__all__ = [
    "BEAT_MS",
    "DRIFT_MS",
    "Ended",
    "Event",
    "EventKind",
    "Given",
    "Interruption",
    "InterruptionKind",
    "Progress",
    "folded",
]

BEAT_MS: Final = 5000
"""Ms between two beats at most: what a kill can hide."""

DRIFT_MS: Final = 2000
"""Ms by which the two clocks may part between two events before it means something."""

EventKind = Literal["begun", "shown", "answered", "flagged", "beat", "woke", "resumed", "finished"]
InterruptionKind = Literal["closed", "asleep", "clock"]
Ended = Literal["finished", "time up"]

_KINDS: Final[tuple[EventKind, ...]] = get_args(EventKind)
_ENDS: Final[tuple[Ended, ...]] = get_args(Ended)
_EPOCH: Final = datetime(1970, 1, 1, tzinfo=UTC)
_LAST: Final = 253_402_300_799_000
"""Ms until the end of the year 9999, the last that a date can say."""


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened in a sitting.

    Parameters
    ----------
    kind
        What happened. ``begun`` says ``limit_ms`` and how many ``items``; ``shown``, ``answered``
        and ``flagged`` say which ``item``, from 0; ``answered`` says the ``answer``, null for one
        that was taken back, or that it was ``superseded``; ``flagged`` whether it is ``on``;
        ``finished`` how it ``ended``, and in ``held`` what was stated in time but no disk would
        take: pairs of item and answer.
    wall
        Ms since 1970 by the wall's clock.
    awake
        Ms by the clock that runs while the machine is awake; it begins anew, anywhere, with each
        start of the program, that is with ``begun`` and with each ``resumed``.
    said
        What it says.

    Examples
    --------
    >>> Event.of(Event("shown", 1000, 20, {"item": 3}).as_dict())
    Event(kind='shown', wall=1000, awake=20, said={'item': 3})
    """

    kind: EventKind
    wall: int
    awake: int
    said: Mapping[str, Json] = field(default_factory=dict)

    @property
    def at(self) -> datetime:
        """When, by the wall's clock."""
        return _EPOCH + timedelta(milliseconds=self.wall)

    def as_dict(self) -> dict[str, Json]:
        """The event as it is written down."""
        return {"kind": self.kind, "wall": self.wall, "awake": self.awake, **self.said}

    @classmethod
    def of(cls, written: Mapping[str, Json]) -> Event:
        """Return the event that `as_dict` gave.

        Raises
        ------
        ValueError
            If it is something else; says what.
        """
        said = dict(written)
        kind = next((each for each in _KINDS if each == said.get("kind")), None)
        if kind is None:
            raise ValueError(f"no kind of event is called {said.get('kind')!r}")
        wall, awake = _whole(said, "wall"), _whole(said, "awake")
        if not 0 <= wall <= _LAST:
            raise ValueError("the wall's clock says no date")
        for key in ("kind", "wall", "awake"):
            del said[key]
        return cls(kind, wall, awake, said)


@dataclass(frozen=True, slots=True)
class Interruption:
    """A time in which the sitting stood still, or a clock that was set.

    Parameters
    ----------
    at
        When it began.
    ms
        How long it took by the wall's clock; None if that was set back, and so can't be known.
    kind
        ``closed``: the program didn't run; ``asleep``: the machine slept, or the clock was set
        ahead, which looks the same; ``clock``: the clock was set back.
    """

    at: datetime
    ms: int | None
    kind: InterruptionKind


@dataclass(frozen=True, slots=True)
class Given:
    """That an answer was given; what it was stays in what was written down, but for the latest.

    An answer holds all of the leaf's handling so far, and is kept again and again.

    Parameters
    ----------
    item
        Which, from 0.
    stated
        False if an earlier answer was taken back.
    used_ms
        How much time had been used.
    at
        When.
    """

    item: int
    stated: bool
    used_ms: int
    at: datetime


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a sitting has come.

    Parameters
    ----------
    limit_ms, items
        The time for the whole, and how many coupons there are.
    started, last
        When it began, and the last event.
    at
        The item that is shown, from 0; None before the first and after the end.
    answers
        The latest answer to each item that has one.
    given
        That answers were given, in order; all of them but those that came later than a beat after
        the time was up.
    flagged
        Items that are marked for review.
    used_ms
        The time that was used, counted to the last event.
    spent_ms, visits
        By item, how long it was shown, and how many times it was come to.
    interruptions
        In order.
    ended
        How it ended; None while it goes on.
    finished
        When it ended.

    Examples
    --------
    >>> begun = Progress.begun(Event("begun", 1000, 0, {"limit_ms": 60000, "items": 2}))
    >>> shown = begun.after(Event("shown", 2000, 1000, {"item": 0}))
    >>> called = shown.after(Event("answered", 9000, 8000, {"item": 0, "answer": {"face": "flat"}}))
    >>> called.used_ms, called.left_ms, called.answers[0], called.unanswered
    (8000, 52000, {'face': 'flat'}, (1,))
    >>> killed = called.after(Event("resumed", 99000, 0))
    >>> killed.used_ms, killed.interruptions[0].kind, killed.interruptions[0].ms
    (8000, 'closed', 90000)
    """

    limit_ms: int
    items: int
    started: datetime
    last: Event
    at: int | None = None
    answers: Mapping[int, Json] = field(default_factory=dict)
    given: tuple[Given, ...] = ()
    flagged: frozenset[int] = frozenset()
    used_ms: int = 0
    spent_ms: Mapping[int, int] = field(default_factory=dict)
    visits: Mapping[int, int] = field(default_factory=dict)
    interruptions: tuple[Interruption, ...] = ()
    ended: Ended | None = None
    finished: datetime | None = None

    @classmethod
    def begun(cls, event: Event) -> Progress:
        """Return the beginning.

        Raises
        ------
        ValueError
            If the event is no beginning, or says no time or no coupons.
        """
        if event.kind != "begun":
            raise ValueError("a sitting begins with its beginning")
        limit, items = _whole(event.said, "limit_ms"), _whole(event.said, "items")
        if limit <= 0 or items <= 0:
            raise ValueError("a sitting has time, and coupons")
        return cls(limit, items, event.at, event)

    @property
    def answered(self) -> frozenset[int]:
        """Items that have an answer."""
        return frozenset(self.answers)

    @property
    def unanswered(self) -> tuple[int, ...]:
        """Items that have none, in order."""
        answered = self.answers
        return tuple(item for item in range(self.items) if item not in answered)

    @property
    def left_ms(self) -> int:
        """The time that is left, counted to the last event; never less than none."""
        return max(0, self.limit_ms - self.used_ms)

    def left_at(self, awake: int) -> int:
        """The time that is left when the clock that runs while awake says `awake`, ms."""
        return max(0, self.left_ms - max(0, awake - self.last.awake))

    @property
    def is_time_up(self) -> bool:
        """Whether all of the time was used."""
        return self.used_ms >= self.limit_ms

    def after(self, event: Event) -> Progress:
        """Return how far it is after one more event.

        Raises
        ------
        ValueError
            If the event can't come here, or names no item that there is.
        """
        if event.kind == "begun":
            raise ValueError("a sitting begins once")
        if self.ended is not None:
            # Resuming a sitting that has ended hands its result in; nothing else is to be done.
            if event.kind == "resumed":
                return replace(self, last=event)
            raise ValueError("the sitting has ended")
        passed = 0 if event.kind == "resumed" else max(0, event.awake - self.last.awake)
        spent = self.spent_ms
        if self.at is not None and passed:
            spent = {**spent, self.at: spent.get(self.at, 0) + passed}
        counted = replace(
            self,
            # What it says is dealt with below; an answer is large, and kept with the others.
            last=replace(event, said={}),
            used_ms=self.used_ms + passed,
            spent_ms=spent,
            interruptions=(*self.interruptions, *_between(self.last, event)),
        )
        return _doing(counted, event)


def folded(events: Iterable[Event]) -> Progress:
    """Return how far a sitting is after all its events.

    Raises
    ------
    ValueError
        If there are none, or they are no sitting's.

    Examples
    --------
    >>> folded([Event("begun", 0, 0, {"limit_ms": 60000, "items": 2}), Event("beat", 5000, 5000)])
    ... # doctest: +ELLIPSIS
    Progress(limit_ms=60000, items=2, ...)
    """
    each = iter(events)
    first = next(each, None)
    if first is None:
        raise ValueError("nothing was written down")
    progress = Progress.begun(first)
    for event in each:
        progress = progress.after(event)
    return progress


def _doing(progress: Progress, event: Event) -> Progress:
    """What an event does, once its time is counted."""
    if event.kind == "shown":
        item = _item(progress, event)
        # The same coupon shown again after a resumption is no second visit.
        visits = progress.visits.get(item, 0) + (progress.at != item)
        return replace(progress, at=item, visits={**progress.visits, item: visits})
    if event.kind == "answered":
        if progress.used_ms > progress.limit_ms + BEAT_MS:
            return progress
        item = _item(progress, event)
        if event.said.get("superseded") is True:
            # What it was isn't kept any more: another answer to the same item follows.
            given = Given(item, True, min(progress.used_ms, progress.limit_ms), event.at)
            return replace(progress, given=(*progress.given, given))
        return _with_answer(progress, event, item, event.said.get("answer"))
    if event.kind == "flagged":
        one = frozenset({_item(progress, event)})
        on = event.said.get("on") is True
        return replace(progress, flagged=progress.flagged | one if on else progress.flagged - one)
    if event.kind == "finished":
        ended = next((each for each in _ENDS if each == event.said.get("ended")), None)
        if ended is None:
            raise ValueError(f"no sitting ends as {event.said.get('ended')!r}")
        for item, answer in _held(progress, event):
            progress = _with_answer(progress, event, item, answer)
        return replace(progress, at=None, ended=ended, finished=event.at)
    return progress


def _with_answer(progress: Progress, event: Event, item: int, answer: Json) -> Progress:
    others = {other: kept for other, kept in progress.answers.items() if other != item}
    used = min(progress.used_ms, progress.limit_ms)
    given = Given(item, answer is not None, used, event.at)
    answers = others if answer is None else {**others, item: answer}
    return replace(progress, answers=answers, given=(*progress.given, given))


def _held(progress: Progress, event: Event) -> list[tuple[int, Json]]:
    """What was stated in time, and is on the disk only with the end."""
    held = event.said.get("held", [])
    found: list[tuple[int, Json]] = []
    for pair in held if isinstance(held, list) else [held]:
        if not isinstance(pair, list) or len(pair) != 2:
            raise ValueError("what was held is pairs of item and answer")
        found.append((_item(progress, replace(event, said={"item": pair[0]})), pair[1]))
    return found


def _item(progress: Progress, event: Event) -> int:
    item = _whole(event.said, "item")
    if not 0 <= item < progress.items:
        raise ValueError(f"there is no item {item} of {progress.items}")
    return item


def _between(one: Event, other: Event) -> tuple[Interruption, ...]:
    """What the clocks say of the time between two events."""
    wall = other.wall - one.wall
    if other.kind == "resumed":
        if wall >= 0:
            return (Interruption(one.at, wall, "closed"),)
        return (Interruption(one.at, None, "closed"), Interruption(one.at, None, "clock"))
    ahead = wall - max(0, other.awake - one.awake)
    if ahead > DRIFT_MS:
        return (Interruption(one.at, ahead, "asleep"),)
    if ahead < -DRIFT_MS:
        return (Interruption(one.at, None, "clock"),)
    return ()


def _whole(said: Mapping[str, Json], key: str) -> int:
    number = said.get(key)
    if not isinstance(number, int) or isinstance(number, bool):
        raise ValueError(f"{key} is no whole number")
    return number
