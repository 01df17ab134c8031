"""What was judged, kept for good: one JSON line for each call, never changed afterwards.

An entry holds the coupon as it was judged, its digest, the rule set's version and the grade, so
an edited tray never regrades the past. No Qt here.
"""

from __future__ import annotations

import json
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

__all__ = ["FORMAT", "VERSION", "Entry", "Records", "RecordsError"]

FORMAT: Final = "toe-and-throat/records"
VERSION: Final = 1

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
    """

    coupon: Json
    digest: str
    rules: Json
    attempt: Json
    grade: Json
    handling: Sequence[Sequence[object]]
    zoom: Json
    at: datetime

    def as_dict(self) -> dict[str, object]:
        """The entry as it is written."""
        return {
            "format": FORMAT,
            "version": VERSION,
            "at": self.at.astimezone(UTC).isoformat(timespec="milliseconds"),
            "coupon": dict(self.coupon),
            "digest": self.digest,
            "rules": dict(self.rules),
            "attempt": dict(self.attempt),
            "grade": dict(self.grade),
            "handling": [list(row) for row in self.handling],
            "zoom": dict(self.zoom),
        }


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
