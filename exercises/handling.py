"""Handling: the recorded path of the leaf during one attempt, and its replay.

A record is a list of entries ``[ms, x, y, angle, turned, event]``. Entries are only ever added:
undoing adds one too. A replay shows the recorded poses; nothing is simulated anew.

An event is a word or two for what the hand did (``grab``, ``drag``, ``press home``). Where it
brought another leaf or another end to the bench it ends with the leaf, as in ``pick 8 mm leg`` or
``undo a 4 mm throat``; ``put back``, and an ``undo`` without a leaf, leave none there. ``clean``
means that the toes are clean from then on; an event that ends with ``spattered`` brings the
spatter back.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from exercises.strict_json import Json
from geometry.leaf import EDGES, Leaf, leaf_of_mark
from geometry.pose import Pose

__all__ = ["Entry", "Frame", "HandlingLog"]

_LEAF: Final = re.compile(r" (?P<mark>(?:a )?\d[\d/. ]* (?:mm|in)) (?P<edge>leg|throat)\b")
_LONGEST_EVENT: Final = 100


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a record.

    Parameters
    ----------
    ms
        Whole milliseconds since the record began.
    x, y, angle, turned
        The leaf's pose after it: mm, degrees.
    event
        What the hand did.
    """

    ms: int
    x: float
    y: float
    angle: float
    turned: bool
    event: str

    @property
    def pose(self) -> Pose:
        """Where the leaf lay."""
        return Pose(self.x, self.y, self.angle, self.turned)

    def as_list(self) -> list[Json]:
        """The entry as records keep it."""
        return [self.ms, self.x, self.y, self.angle, self.turned, self.event]

    @classmethod
    def of(cls, listed: Json) -> Entry:
        """Return the entry that `as_list` gave.

        Raises
        ------
        ValueError
            If it is something else; says what.

        Examples
        --------
        >>> Entry.of([120, 0, 0.5, 90.0, True, "drag"]).pose
        Pose(x=0.0, y=0.5, angle=90.0, turned=True)
        """
        if not isinstance(listed, list) or len(listed) != 6:
            raise ValueError("an entry is a list of six: ms, x, y, angle, turned, event")
        ms, x, y, angle, turned, event = listed
        if not isinstance(ms, int) or isinstance(ms, bool) or ms < 0:
            raise ValueError(f"ms is {ms!r}; right would be a whole number, 0 or more")
        if not isinstance(turned, bool):
            raise ValueError(f"turned is {turned!r}; right would be true or false")
        if not isinstance(event, str) or not 0 < len(event) <= _LONGEST_EVENT:
            raise ValueError(f"the event is no text of 1 to {_LONGEST_EVENT} characters")
        return cls(ms, _number(x), _number(y), _number(angle), turned, event)


def _number(value: Json) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise ValueError(f"{value!r} is no coordinate; right would be a finite number")
    return float(value)


@dataclass(frozen=True, slots=True)
class Frame:
    """One picture of a replay.

    Parameters
    ----------
    ms, event
        When, and what had just been done.
    leaf, pose
        What lay where; `leaf` is None while all leaves hang on the rack.
    cleaned
        Whether the toes had been cleaned of spatter.
    """

    ms: int
    event: str
    leaf: Leaf | None
    pose: Pose
    cleaned: bool


@dataclass(frozen=True, slots=True)
class HandlingLog:
    """A record: frozen, and extended only by making a longer one.

    Examples
    --------
    >>> log = HandlingLog().added(Entry(0, 40.0, 40.0, 0.0, False, "pick 8 mm leg"))
    >>> log = log.added(Entry(120, 38.0, 40.0, 0.0, False, "drag"))
    >>> frame = log.frame_at(500.0)
    >>> frame.event, frame.leaf.mark, frame.pose.x, log.as_json()[1]
    ('drag', '8 mm', 38.0, [120, 38.0, 40.0, 0.0, False, 'drag'])
    """

    entries: tuple[Entry, ...] = ()

    def __len__(self) -> int:
        return len(self.entries)

    def added(self, entry: Entry) -> HandlingLog:
        """Return the record with one entry more.

        Time never runs back in a record: an entry stamped before the last one gets its time.
        """
        return HandlingLog((*self.entries, replace(entry, ms=max(entry.ms, self.duration))))

    @property
    def duration(self) -> int:
        """Milliseconds from the start to the last entry."""
        return self.entries[-1].ms if self.entries else 0

    def frames(self) -> Iterator[Frame]:
        """Every entry as a picture, in order."""
        leaf: Leaf | None = None
        cleaned = False
        for entry in self.entries:
            leaf = _leaf_after(entry.event, leaf)
            cleaned = _cleaned_after(entry.event, was=cleaned)
            yield Frame(entry.ms, entry.event, leaf, entry.pose, cleaned)

    def frame_at(self, ms: float) -> Frame:
        """Return the picture at a time: the last entry not after `ms`, else the first.

        For one picture; a scrubber keeps ``tuple(log.frames())`` instead.

        Raises
        ------
        IndexError
            If the record is empty.
        """
        frames = list(self.frames())
        past = [frame for frame in frames if frame.ms <= ms]
        return past[-1] if past else frames[0]

    def as_json(self) -> list[list[Json]]:
        """The record as a list of lists."""
        return [entry.as_list() for entry in self.entries]

    @classmethod
    def from_json(cls, listed: Json) -> HandlingLog:
        """Return the record that `as_json` gave.

        Raises
        ------
        ValueError
            If it is something else; says which entry, and what is wrong with it.
        """
        if not isinstance(listed, list):
            raise ValueError("a record is a list of entries")
        entries: list[Entry] = []
        for index, each in enumerate(listed):
            try:
                entries.append(Entry.of(each))
            except ValueError as error:
                raise ValueError(f"entry {index + 1}: {error}") from error
            if index and entries[index].ms < entries[index - 1].ms:
                raise ValueError(f"entry {index + 1}: time runs back")
        return cls(tuple(entries))


def _leaf_after(event: str, before: Leaf | None) -> Leaf | None:
    found = _LEAF.search(event)
    if found is None:
        return None if event.startswith(("put back", "undo")) else before
    try:
        leaf = leaf_of_mark(found["mark"])
    except ValueError:
        # A record outlives its rack: what no rack has any more can't be drawn.
        return None
    return next(leaf.with_edge(edge) for edge in EDGES if edge == found["edge"])


def _cleaned_after(event: str, *, was: bool) -> bool:
    if event.startswith("clean"):
        return True
    return was and not event.endswith("spattered")
