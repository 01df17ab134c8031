"""The watched program as a child process: started, told what to do, its log read."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any, Self

__all__ = ["Child"]

_PATIENCE = 60.0
"""Seconds until what is waited for counts as never coming."""


class Child:
    """The program with a log, in a home of its own where the first card has been read.

    Parameters
    ----------
    *arguments
        Of the program.
    look
        ``light``, ``dark``, or as the system has it.
    """

    def __init__(self, *arguments: str, look: str = "system") -> None:
        self._folder = tempfile.TemporaryDirectory()
        home = Path(self._folder.name)
        self._log = home / "log"
        command = [sys.executable, "-m", "tests.measure.watched", str(self._log), *arguments]
        environment = {**os.environ, **_settled(home, look)}
        self.began = time.monotonic()
        self._process = subprocess.Popen(command, stdin=subprocess.PIPE, text=True, env=environment)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._process.terminate()
        self._process.communicate()
        self._folder.cleanup()

    def notes(self, kind: str) -> list[dict[str, Any]]:
        """Return what it has written down of one kind so far."""
        return [line for line in self._lines() if line["kind"] == kind]

    @property
    def kinds(self) -> list[str]:
        """The kinds that it has written down, in order, each once."""
        return list(dict.fromkeys(str(line["kind"]) for line in self._lines()))

    def _lines(self) -> list[dict[str, Any]]:
        """Return what it has written down so far, whole lines only."""
        text = self._log.read_text(encoding="utf-8") if self._log.exists() else ""
        return [json.loads(line) for line in text.splitlines(keepends=True) if line[-1] == "\n"]

    def awaited(self, kind: str, count: int = 1) -> dict[str, Any]:
        """Wait for the note of a kind that comes as number `count`, and return it.

        Raises
        ------
        TimeoutError
            If it doesn't come, or the program ends first.
        """
        until = time.monotonic() + _PATIENCE
        while time.monotonic() < until and self._process.poll() is None:
            found = self.notes(kind)
            if len(found) >= count:
                return found[count - 1]
            time.sleep(0.005)
        raise TimeoutError(f"the program never came to {kind!r}")

    def tell(self, do: str, **what: object) -> dict[str, Any]:
        """Have a command carried out; return how things then stand on the screen."""
        answers = len(self.notes("view"))
        assert self._process.stdin is not None
        self._process.stdin.write(json.dumps({"do": do, **what}) + "\n")
        self._process.stdin.flush()
        return self.awaited("view", answers + 1)


def _settled(home: Path, look: str) -> dict[str, str]:
    """Return the variables of a home where the first start is over."""
    folder = home / "toe-and-throat"
    folder.mkdir()
    settings = {"first_start_seen": True, "guide_done": True, "appearance": look}
    (folder / "settings.json").write_text(json.dumps(settings), encoding="utf-8")
    return {"XDG_CONFIG_HOME": str(home), "XDG_DATA_HOME": str(home)}
