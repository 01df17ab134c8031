"""What was judged, kept for good: one JSON line for each call, never changed afterwards.

An entry holds the coupon as it was judged, its digest, the rule set's version and the grade, so
an edited tray never regrades the past. No Qt here.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Final, Protocol
from uuid import NAMESPACE_OID, uuid4, uuid5

__all__ = [
    "FORMAT",
    "VERSION",
    "Entry",
    "Keeper",
    "Records",
    "RecordsError",
    "Relay",
    "read_entries",
]

FORMAT: Final = "toe-and-throat/records"
VERSION: Final = 2
"""2 since an entry has an id, an outcome, and says whose it is and what it was made in."""

Json = Mapping[str, object]


class RecordsError(Exception):
    """A call could not be written. Carries the file and what the system said."""

    def __init__(self, path: Path, reason: str) -> None:
        self.path = path
        self.reason = reason
        super().__init__(f"{path}: {reason}")


@dataclass(frozen=True, slots=True)
class Entry:
    """One call.

    Parameters
    ----------
    coupon, digest
        As it was judged, whole, and the digest that names it.
    rules
        Id and version of the rule set.
    attempt, grade
        What was stated, and what it came to, in the keys of their files.
    handling
        ``[ms, x, y, angle, turned, event]`` rows.
    zoom
        Device pixels per mm of the picture, and of the loupe, at the call.
    at
        When, with its zone.
    outcome
        What statistics count it as: the fields of `exercises.learner.outcome.Outcome`.
    learner
        Id of who made it; None for whoever is at the bench when it is taken into a logbook.
    source
        What it was made in: ``bench``, ``drill`` or ``sitting``.
    before_feedback
        Whether it was one of its day's first calls, before anything told how they went.
    id
        Of this entry alone: the same entry taken in twice is there once.
    """

    coupon: Json
    digest: str
    rules: Json
    attempt: Json
    grade: Json
    handling: Sequence[Sequence[object]]
    zoom: Json
    at: datetime
    outcome: Json = field(default_factory=dict)
    learner: str | None = None
    source: str = "bench"
    before_feedback: bool = False
    id: str = field(default_factory=lambda: str(uuid4()))

    def as_dict(self) -> dict[str, object]:
        """The entry as it is written."""
        return {
            "format": FORMAT,
            "version": VERSION,
            "id": self.id,
            "learner": self.learner,
            "source": self.source,
            "before_feedback": self.before_feedback,
            "at": self.at.astimezone(UTC).isoformat(timespec="milliseconds"),
            "coupon": dict(self.coupon),
            "digest": self.digest,
            "rules": dict(self.rules),
            "attempt": dict(self.attempt),
            "grade": dict(self.grade),
            "handling": [list(row) for row in self.handling],
            "zoom": dict(self.zoom),
            "outcome": dict(self.outcome),
        }


class Keeper(Protocol):
    """Where calls are kept: a file of lines, or a logbook."""

    def add(self, entry: Entry) -> None:
        """Keep `entry` for good, or raise `RecordsError`."""


class Relay:
    """Hands calls on to whatever keeps them now: a file of lines first, a logbook once it is there.

    Parameters
    ----------
    keeper
        Keeps them to begin with.
    """

    def __init__(self, keeper: Keeper) -> None:
        self.keeper = keeper

    def add(self, entry: Entry) -> None:
        """Keep `entry`, or raise `RecordsError`."""
        self.keeper.add(entry)


def read_entries(lines: Sequence[bytes]) -> Iterator[Entry | None]:
    """Yield the entry of each line; None where a line is torn or is no entry.

    Lines of version 1 have no id: theirs is made of what they say, so it is the same each time.

    Examples
    --------
    >>> list(read_entries([b'{"torn']))
    [None]
    """
    for line in lines:
        try:
            said = json.loads(line)
            known = said["format"] == FORMAT and said["version"] in {1, VERSION}
            yield _entry(said, line) if known else None
        except (ValueError, KeyError, TypeError, RecursionError):
            yield None


def _entry(said: dict[str, object], line: bytes) -> Entry:
    parts = {key: said[key] for key in ("coupon", "rules", "attempt", "grade", "zoom")}
    outcome, handling, learner = said.get("outcome", {}), said["handling"], said.get("learner")
    if not all(isinstance(part, dict) for part in (*parts.values(), outcome)):
        raise TypeError("a part is no object")
    if not isinstance(handling, list) or not isinstance(learner, (str, type(None))):
        raise TypeError("the handling is no list, or the learner no id")
    return Entry(
        digest=str(said["digest"]),
        handling=handling,
        at=datetime.fromisoformat(str(said["at"])),
        outcome=outcome,  # type: ignore[arg-type]
        learner=learner,
        source=str(said.get("source", "bench")),
        before_feedback=said.get("before_feedback") is True,
        id=str(said.get("id") or uuid5(NAMESPACE_OID, line.decode("utf-8"))),
        **parts,  # type: ignore[arg-type]
    )


class Records:
    """The file of calls; it is made when the first call is written.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     records = Records(Path(folder) / "calls.jsonl")
    ...     records.add(Entry({"id": "a"}, "0f", {}, {}, {"score": 1.0}, [], {}, datetime.now(UTC)))
    ...     json.loads(records.path.read_text())["grade"]
    {'score': 1.0}
    """

    def __init__(self, path: Path) -> None:
        self.path = path

    def add(self, entry: Entry) -> None:
        """Write `entry` at the end of the file and wait until the disk has it.

        Raises
        ------
        RecordsError
            If it can't be written; what was there before is untouched.
        """
        line = json.dumps(entry.as_dict(), ensure_ascii=False, allow_nan=False).encode("utf-8")
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            with self.path.open("ab+") as file:
                # A line torn by a crash or a full disk must not swallow the next one.
                file.write(b"" if _ends_clean(file.seek(0, os.SEEK_END), self.path) else b"\n")
                file.write(line + b"\n")
                file.flush()
                os.fsync(file.fileno())
        except OSError as error:
            raise RecordsError(self.path, error.strerror or str(error)) from error


def _ends_clean(size: int, path: Path) -> bool:
    if size == 0:
        return True
    with path.open("rb") as file:
        file.seek(-1, os.SEEK_END)
        return file.read(1) == b"\n"
