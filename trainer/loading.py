"""Something that takes long, done beside the window's loop, which goes on meanwhile."""

from __future__ import annotations

import gc
import sys
import threading
from collections.abc import Callable
from typing import Any, ClassVar, Final, Generic, TypeVar

from PySide6.QtCore import QObject, Qt, Signal

__all__ = ["Loading"]

Result = TypeVar("Result")

_TURN: Final = 0.001
"""Seconds until the work gives way to the window: a hand that moves a leaf doesn't wait longer."""


class _Beside:
    """All work that goes on beside the window, of which there may be several at a time.

    While there is any, rubbish isn't collected: it would be by whichever thread comes to it, and
    some of it is the window's, which no other thread may take down. Nor is there time to look for
    it. For the same reason what goes on is held here: the thread mustn't be the last to let go of
    what its work holds.
    """

    def __init__(self) -> None:
        self._going_on: set[Loading[Any]] = set()
        self._turn = sys.getswitchinterval()
        self._collects = True

    def begin(self, loading: Loading[Any]) -> None:
        """Hold a piece of work that begins."""
        if not self._going_on:
            self._turn, self._collects = sys.getswitchinterval(), gc.isenabled()
            sys.setswitchinterval(_TURN)
            gc.disable()
        self._going_on.add(loading)

    def end(self, loading: Loading[Any]) -> None:
        """Let go of one whose thread has ended, if that hasn't been done."""
        if loading not in self._going_on:
            return
        self._going_on.remove(loading)
        if not self._going_on:
            sys.setswitchinterval(self._turn)
            if self._collects:
                gc.enable()


class Loading(QObject, Generic[Result]):
    """Does one piece of work in a thread of its own, and tells when it is over.

    It lasts until then, whoever lets go of it, and so does what the work holds. It is begun, waited
    for and asked for its result in the window's thread.

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
    _beside: ClassVar = _Beside()

    def __init__(self, work: Callable[[], Result]) -> None:
        super().__init__()
        self._work = work
        self._made: list[Result] = []
        self._error: BaseException | None = None
        self._thread = threading.Thread(target=self._run, name="loading")
        self._ended.connect(self._tell, Qt.ConnectionType.QueuedConnection)

    def start(self) -> None:
        """Begin."""
        self._beside.begin(self)
        self._thread.start()

    def wait(self) -> None:
        """Wait until the work is over, if it has begun."""
        if self._thread.ident is not None:
            self._thread.join()
            self._beside.end(self)

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
