"""One sitting that runs: writes down what happens, and knows how far it is and what time is left.

An event is on the disk before it counts. `tick` is called about once a second: it writes a beat
when the last event is old, and says at once when the machine has slept or a clock was set.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Final

from exercises.sitting.progress import (
    BEAT_MS,
    DRIFT_MS,
    Ended,
    Event,
    EventKind,
    Progress,
)
from exercises.strict_json import Json
from trainer.sealing.clocks import Clock, SystemClock
from trainer.sealing.journal import Journal, JournalError
from trainer.sealing.key import Key, SealError
from trainer.sealing.seal import Opener

__all__ = ["Timekeeper"]

_EARLY_MS: Final = 500
"""Ms by which a beat comes early, so that two are never further apart than `BEAT_MS`; a tick may
be a second late."""

_ROOM: Final = 16 * 1024 * 1024
"""Bytes that superseded answers may fill: each holds all of its coupon's handling so far."""


class Timekeeper:
    """Writes down one sitting.

    Parameters
    ----------
    journal
        Where to.
    head
        What the journal began with.
    progress
        How far it is.
    clock
        What the time is read from.

    Attributes
    ----------
    torn
        Whether the end of the journal was torn when it was resumed: nothing that had been
        acknowledged.

    Examples
    --------
    >>> import tempfile
    >>> from trainer.sealing.key import Cost
    >>> key = Key.made("three weathered herons", Cost(log_n=4))
    >>> with tempfile.TemporaryDirectory() as name:
    ...     path = Path(name) / "a.sitting-journal"
    ...     keeper = Timekeeper.begin(path, key, {}, limit_ms=60_000, items=2)
    ...     keeper.show(0)
    ...     keeper.answer(0, {"face": "flat"})
    ...     keeper.leave()
    ...     again = Timekeeper.resume(path, key)
    ...     again.discard()
    >>> again.progress.answers, [each.kind for each in again.progress.interruptions]
    ({0: {'face': 'flat'}}, ['closed'])
    """

    def __init__(
        self, journal: Journal, head: Mapping[str, Json], progress: Progress, clock: Clock
    ) -> None:
        self.journal, self.head, self.progress = journal, head, progress
        self.torn = False
        self._clock = clock
        self._written: list[dict[str, Json]] = []
        self._answered: dict[int, int] = {}
        self._least = journal.size

    @classmethod
    def begin(
        cls,
        path: Path,
        key: Key,
        head: Mapping[str, Json],
        *,
        limit_ms: int,
        items: int,
        clock: Clock | None = None,
    ) -> Timekeeper:
        """Begin a sitting.

        Parameters
        ----------
        path
            Of its journal, which isn't there yet.
        key
            Of the sitting.
        head
            What it takes to resume: the plan, the code, and whatever the runner wants.
        limit_ms, items
            The time for the whole, and how many coupons there are.
        clock
            The system's unless given.

        Raises
        ------
        JournalError
            If it can't be written.
        """
        clock = clock or SystemClock()
        said: dict[str, Json] = {"limit_ms": limit_ms, "items": items}
        begun = Event("begun", clock.wall(), clock.awake(), said)
        progress = Progress.begun(begun)
        journal = Journal.create(path, key, head, [begun.as_dict()])
        keeper = cls(journal, head, progress, clock)
        keeper._remember(begun, progress)
        return keeper

    @classmethod
    def resume(
        cls, path: Path, secret: Key | str | Opener, clock: Clock | None = None
    ) -> Timekeeper:
        """Go on with a sitting that was left, by a kill or by closing it.

        Raises
        ------
        JournalError
            If the journal can't be read, or another program has it.
        SealError
            If it can't be unsealed; ``truncated`` too if the sitting had hardly begun.
        """
        clock = clock or SystemClock()
        resumed = Journal.resume(path, secret)
        try:
            try:
                events = [Event.of(each) for each in resumed.events]
                keeper = cls(resumed.journal, resumed.head, Progress.begun(events[0]), clock)
                keeper._take_up(events)
            except (ValueError, IndexError) as error:
                raise SealError("changed" if resumed.events else "truncated") from error
            keeper.torn = resumed.torn
            # What was superseded before counts too, however often it is resumed.
            keeper._least = 0
            keeper._note("resumed")
        except BaseException:
            resumed.journal.close()
            raise
        return keeper

    @property
    def left_ms(self) -> int:
        """The time that is left now."""
        return self.progress.left_at(self._clock.awake())

    def show(self, item: int) -> None:
        """Note that a coupon is shown, from 0. Raises `JournalError`, as all of these do."""
        self._note("shown", {"item": item})

    def answer(self, item: int, answer: Json) -> None:
        """Keep an answer; None takes it back. When this returns it is on the disk."""
        self._note("answered", {"item": item, "answer": answer})

    def flag(self, item: int, *, on: bool) -> None:
        """Mark a coupon for review, or no more."""
        self._note("flagged", {"item": item, "on": on})

    def finish(self, ended: Ended, held: Mapping[int, Json] | None = None) -> None:
        """Note the end.

        Parameters
        ----------
        ended
            How.
        held
            By item, what was stated in time but the disk would not take then. It comes with the
            end or not at all, and counts however late that is.
        """
        pairs: list[Json] = [[item, answer] for item, answer in (held or {}).items()]
        self._note("finished", {"ended": ended, **({"held": pairs} if pairs else {})})

    def tick(self) -> int:
        """Return the time that is left, ms; write a beat if it is time for one."""
        if self.progress.ended is None:
            last = self.progress.last
            wall, awake = self._clock.wall(), self._clock.awake()
            passed = awake - last.awake
            if abs(wall - last.wall - passed) > DRIFT_MS:
                self._note("woke")
            elif passed >= BEAT_MS - 2 * _EARLY_MS:
                self._note("beat")
        return self.left_ms

    def leave(self) -> None:
        """Let go of the journal, and leave it to be resumed; what was used until now counts."""
        try:
            if self.progress.ended is None:
                self._note("beat")
        finally:
            self.journal.close()

    def discard(self) -> None:
        """Remove the journal, once the result is safe. Raises OSError if that can't be."""
        self.journal.discard()

    def _note(self, kind: EventKind, said: Mapping[str, Json] | None = None) -> None:
        event = Event(kind, self._clock.wall(), self._clock.awake(), said or {})
        # Folded first: what makes no sense is never written. It counts once it is on the disk.
        after = self.progress.after(event)
        self.journal.append(event.as_dict())
        self._remember(event, after)
        self.progress = after
        self._make_room()

    def _take_up(self, events: Sequence[Event]) -> None:
        """Fold what was written, from the beginning."""
        self._remember(events[0], self.progress)
        for event in events[1:]:
            after = self.progress.after(event)
            self._remember(event, after)
            self.progress = after

    def _remember(self, event: Event, after: Progress) -> None:
        """Know what was written, without answers that others have superseded."""
        counts = len(after.given) > len(self.progress.given)
        if event.kind == "answered" and counts:
            item = after.given[-1].item
            before = self._answered.get(item)
            if before is not None and self._written[before]["answer"] is not None:
                bare = {
                    key: self._written[before][key] for key in ("kind", "wall", "awake", "item")
                }
                self._written[before] = {**bare, "superseded": True}
            if event.said.get("superseded") is not True:
                self._answered[item] = len(self._written)
        self._written.append(event.as_dict())

    def _make_room(self) -> None:
        """Write the journal anew if it is full of answers that others have superseded."""
        if self.journal.size - self._least < _ROOM:
            return
        # If it can't be now, all is there in the old one, and it is tried again later.
        with suppress(JournalError):
            self.journal.renew(self.head, self._written)
        self._least = self.journal.size
