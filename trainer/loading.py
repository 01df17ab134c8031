"""Something that takes long, done beside the window's loop, which goes on meanwhile."""

from __future__ import annotations

import gc
import sys
import threading
from collections.abc import Callable
from typing import Final, Generic, TypeVar

from PySide6.QtCore import QObject, Qt, Signal

__all__ = ["Loading"]

Result = TypeVar("Result")

_TURN: Final = 0.001
"""Seconds until the work gives way to the window: a hand that moves a leaf doesn't wait longer."""


class Loading(QObject, Generic[Result]):
    """Does one piece of work in a thread of its own, and tells when it is over.

    Parameters
    ----------
    work
        Makes nothing of Qt's that belongs to the window's own thread.

    Signals
    -------
    over
        In the thread that this was made in: `result` now has it.
    """

    over = Signal()
    _ended = Signal()

    def __init__(self, work: Callable[[], Result]) -> None:
        super().__init__()
        self._work = work
        self._made: list[Result] = []
        self._error: BaseException | None = None
        self._turn = sys.getswitchinterval()
        self._thread = threading.Thread(target=self._run, name="loading")
        self._ended.connect(self._tell, Qt.ConnectionType.QueuedConnection)

    def start(self) -> None:
        """Begin."""
        sys.setswitchinterval(_TURN)
        # Rubbish would be collected by whichever thread comes to it, and some of it is the
        # window's, which no other thread may take down. Nor is there time to look for it.
        gc.disable()
        self._thread.start()

    def wait(self) -> None:
        """Wait until the work is over, if it has begun."""
        if self._thread.ident is not None:
            self._thread.join()
            sys.setswitchinterval(self._turn)
            gc.enable()

    @property
    def result(self) -> Result:
        """What the work made; its error is raised here."""
        self.wait()
        if self._error is not None:
            raise self._error
        return self._made[0]

    def _run(self) -> None:
        try:
            self._made.append(self._work())
        except BaseException as error:  # noqa: BLE001  # raised again by whoever asks for the result
            self._error = error
        self._ended.emit()

    def _tell(self) -> None:
        self.wait()
        self.over.emit()
