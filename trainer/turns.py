"""Long work in turns of the event loop, a part of it in each: hands are heard in between."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QTimer

__all__ = ["in_turns"]


def in_turns(work: Iterator[None]) -> None:
    """Do what `work` does up to its next `yield`, and the rest in turns of the loop to come.

    Work that raises is not gone on with; what it raised is heard as any slot's.
    """
    try:
        next(work)
    except StopIteration:
        return
    QTimer.singleShot(0, lambda: in_turns(work))
