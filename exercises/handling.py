"""Handling: the recorded path of the leaf during one attempt, and its replay.

A record is a list of entries ``[ms, x, y, angle, turned, event]``. Entries are only ever added:
undoing adds one too. A replay shows the recorded poses; nothing is simulated anew.

Most events are one word for what the hand did. Those after which another leaf, another end or a
cleaned weld is on the bench state what is there from then on, as in ``take: 8 mm, leg, found``:
so each entry can be shown without going back over the ones before it.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal, get_args

from exercises.strict_json import Json
from geometry.leaf import EDGES, Edge
from geometry.pose import Pose

__all__ = ["EVENTS", "Bench", "Entry", "Event", "Frame", "HandlingLog"]

Event = Literal[
    "take",
    "grab",
    "drag",
    "release",
    "nudge",
    "turn",
    "press home",
    "turn over",
    "swap ends",
    "put back",
    "clean toes",
    "undo",
    "reading",
    "call",
]
EVENTS: Final[tuple[Event, ...]] = get_args(Event)

_RESTATING: Final = frozenset({"take", "swap ends", "clean toes", "undo"})


@dataclass(frozen=True, slots=True)
class Bench:
    """What lies on the bench beside the pose.

    Parameters
    ----------
    mark, edge
        The leaf in the hand, and its working end.
    cleaned
        Whether the toes have been cleaned of spatter.

    Examples
    --------
    >>> str(Bench("5/16 in", "throat", cleaned=True)), Bench.parse("8 mm, leg, found")
    ('5/16 in, throat, cleaned', Bench(mark='8 mm', edge='leg', cleaned=False))
    """

    mark: str
    edge: Edge
    cleaned: bool = False

    def __str__(self) -> str:
        return f"{self.mark}, {self.edge}, {'cleaned' if self.cleaned else 'found'}"

    @classmethod
    def parse(cls, text: str) -> Bench:
        """Return what `str` gave; `ValueError` if it is something else."""
        parts = [part.strip() for part in text.split(",")]
        if len(parts) == 3 and parts[0] and parts[2] in ("cleaned", "found"):
            for edge in EDGES:
                if parts[1] == edge:
                    return cls(parts[0], edge, parts[2] == "cleaned")
        raise ValueError(f"{text!r} is no bench; right would be such as '8 mm, leg, found'")


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a record.

    Parameters
    ----------
    ms
        Whole milliseconds since the coupon was opened.
    pose
        Where the leaf lay after it.
    event
        What the hand did.
    bench
        What lies on the bench from then on, where the event changed that.
    """

    ms: int
    pose: Pose
    event: Event
    bench: Bench | None = None

    def as_list(self) -> list[Json]:
        """The entry as records keep it: ``[ms, x, y, angle, turned, event]``."""
        event = self.event if self.bench is None else f"{self.event}: {self.bench}"
        return [self.ms, self.pose.x, self.pose.y, self.pose.angle, self.pose.turned, event]

    @classmethod
    def of(cls, listed: Json) -> Entry:
        """Return the entry that `as_list` gave.

        Raises
        ------
        ValueError
            If it is something else; says what.
        """
        if not isinstance(listed, list) or len(listed) != 6:
            raise ValueError("an entry is a list of six: ms, x, y, angle, turned, event")
        ms, *place, turned, event = listed
        if not isinstance(ms, int) or isinstance(ms, bool) or ms < 0:
            raise ValueError(f"ms is {ms!r}; right would be a whole number, 0 or more")
        if not isinstance(turned, bool) or not isinstance(event, str):
            raise ValueError("turned is true or false, and event is text")
        numbers = [_number(value) for value in place]
        name, _, detail = event.partition(": ")
        for known in EVENTS:
            if name == known:
                pose = Pose(numbers[0], numbers[1], numbers[2], turned)
                return cls(ms, pose, known, Bench.parse(detail) if detail else None)
        raise ValueError(f"{event!r} is no event; right would be one of: {', '.join(EVENTS)}")


def _number(value: Json) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise ValueError(f"{value!r} is no coordinate; right would be a finite number")
    return float(value)


@dataclass(frozen=True, slots=True)
class Frame:
    """One picture of a replay: where which leaf lay, and what had just been done."""

    ms: int
    pose: Pose
    event: Event
    bench: Bench


@dataclass(frozen=True, slots=True)
class HandlingLog:
    """A record: frozen, and extended only by making a longer one.

    Examples
    --------
    >>> log = HandlingLog().added(0, Pose(40.0, 40.0), "take", Bench("8 mm", "leg"))
    >>> log = log.added(120, Pose(38.0, 40.0), "drag").added(90, Pose(40.0, 40.0), "release")
    >>> log.entries[2].ms, log.frame_at(121).event, log.as_json()[0]
    (120, 'release', [0, 40.0, 40.0, 0.0, False, 'take: 8 mm, leg, found'])
    """

    entries: tuple[Entry, ...] = ()

    def added(self, ms: float, pose: Pose, event: Event, bench: Bench | None = None) -> HandlingLog:
        """Return the record with one entry more.

        Time never runs back in a record: an entry stamped earlier than the last gets its time.

        Raises
        ------
        ValueError
            If the first entry, or an event after which something else lies on the bench, doesn't
            say what does.
        """
        if bench is None and (event in _RESTATING or not self.entries):
            raise ValueError(f"after {event!r} the record has to say what lies on the bench")
        last = self.entries[-1].ms if self.entries else 0
        return HandlingLog((*self.entries, Entry(max(round(ms), last), pose, event, bench)))

    @property
    def duration(self) -> int:
        """Milliseconds from the start to the last entry."""
        return self.entries[-1].ms if self.entries else 0

    def frames(self) -> Iterator[Frame]:
        """Every entry as a picture, in order."""
        bench: Bench | None = None
        for entry in self.entries:
            bench = entry.bench or bench
            if bench is not None:
                yield Frame(entry.ms, entry.pose, entry.event, bench)

    def frame_at(self, ms: float) -> Frame:
        """Return the picture at a time: the last entry not after `ms`, else the first.

        Raises
        ------
        IndexError
            If the record is empty.
        """
        index = max(0, bisect_right(self.entries, ms, key=lambda entry: entry.ms) - 1)
        entry = self.entries[index]
        stated = (e.bench for e in reversed(self.entries[: index + 1]) if e.bench is not None)
        bench = next(stated, None)
        assert bench is not None  # the first entry states it
        return Frame(entry.ms, entry.pose, entry.event, bench)

    def as_json(self) -> list[list[Json]]:
        """The record as a list of lists."""
        return [entry.as_list() for entry in self.entries]

    @classmethod
    def from_json(cls, listed: Json) -> HandlingLog:
        """Return the record that `as_json` gave.

        Raises
        ------
        ValueError
            If it is something else; says which entry and what.
        """
        if not isinstance(listed, list):
            raise ValueError("a record is a list of entries")
        log = cls()
        entries: list[Entry] = []
        for index, each in enumerate(listed):
            try:
                entry = Entry.of(each)
                last = entries[-1:]
                if last and entry.ms < last[0].ms:
                    raise ValueError("time runs back")
                if entry.bench is None and (entry.event in _RESTATING or not last):
                    raise ValueError("it doesn't say what lies on the bench")
            except ValueError as error:
                raise ValueError(f"entry {index + 1}: {error}") from error
            entries.append(entry)
        return HandlingLog(tuple(entries)) if entries else log
