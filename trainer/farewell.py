"""Ends the program as it should when the system or a terminal asks for its end.

Python hears of a signal only when it runs, and while nothing happens in a window it doesn't. So the
signal comes through a pair of sockets that Qt's loop listens to.
"""

from __future__ import annotations

import signal
import socket
from collections.abc import Callable
from typing import Final, Protocol

from PySide6.QtCore import QObject, QSocketNotifier, Signal, SignalInstance

__all__ = ["Farewell"]

_ENDS: Final = ("SIGTERM", "SIGINT", "SIGHUP")
"""Those that ask for the end; not every system has all of them."""


class Ends(Protocol):
    """What is told first that the end is near."""

    @property
    def ending(self) -> SignalInstance:
        """Emitted before anything is closed."""


class Farewell(QObject):
    """Listens for signals in the program's main thread.

    Parameters
    ----------
    told
        What is told first; None if there is nothing yet.

    Signals
    -------
    asked
        Someone asked for the end.
    """

    asked = Signal()

    def __init__(
        self, told: Callable[[], Ends | None] = lambda: None, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._told = told
        self._ours, self._theirs = socket.socketpair()
        for end in (self._ours, self._theirs):
            end.setblocking(False)
        self._before: dict[int, object] = {}
        self._notifier = QSocketNotifier(self._ours.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.activated.connect(self._hear)

    def listen(self) -> None:
        """Hear from now on."""
        signal.set_wakeup_fd(self._theirs.fileno(), warn_on_full_buffer=False)
        for name in _ENDS:
            number = getattr(signal, name, None)
            if number is not None:
                self._before[number] = signal.signal(number, lambda *_: None)

    def stop(self) -> None:
        """Hear no more: what asks for the end then ends the program at once."""
        signal.set_wakeup_fd(-1)
        for number, handler in self._before.items():
            signal.signal(number, handler)  # type: ignore[arg-type]  # as it was given back
        self._notifier.setEnabled(False)
        self._ours.close()
        self._theirs.close()

    def _hear(self) -> None:
        if self._ours.recv(64):
            first = self._told()
            if first is not None:
                first.ending.emit()
            self.asked.emit()
