"""What is loaded late: the window and the commands. No other module imports inside a function.

Each function here stands for a door that most runs never open, or not before something is shown.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

__all__ = ["open_window", "run_command"]


def run_command(words: Sequence[str]) -> int:
    """Run one of the commands and return its exit code; loads the core, never Qt."""
    from trainer.commands import run  # noqa: PLC0415 - the window must not wait for this

    return run(words)


def open_window(argv: list[str], tray: Path | None) -> int:
    """Open the window, on `tray` if given, and return the exit code of its event loop."""
    from trainer.window import show  # noqa: PLC0415 - the commands need no Qt

    return show(argv, tray)
