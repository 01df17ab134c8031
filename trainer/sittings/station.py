"""The machine as a station of the school: what it keeps is pushed while the window goes on."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Signal

from trainer.school.address import Address, address_of
from trainer.school.pushing import Pusher, PushState
from trainer.school.trouble import SchoolError

__all__ = ["Station"]


class Station(QObject):
    """Pushes a logbook to the server that is kept in the settings, if there is one.

    Parameters
    ----------
    logbook
        Its file; of this version before anything is pushed.

    Signals
    -------
    changed()
        `state` is another.
    """

    changed = Signal()

    def __init__(self, logbook: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._logbook = logbook
        self._pusher: Pusher | None = None
        self._trouble: SchoolError | None = None
        self.address: Address | None = None

    @property
    def state(self) -> PushState | None:
        """How pushing stands; None where there is no server."""
        if self._pusher is not None:
            return self._pusher.state
        return PushState(trouble=self._trouble) if self._trouble is not None else None

    def serve(self, address: Address | None) -> None:
        """Push to that server from now on; to none if it is None."""
        if address == self.address and self._trouble is None:
            return
        # The window doesn't wait for a server that it leaves: what is sent twice is there once.
        self.stop(0.0)
        self.address = address
        if address is not None and self._logbook.exists():
            # The pusher tells from its thread; a signal crosses to the window's.
            self._pusher = Pusher(self._logbook, address, self.changed.emit)
            self._pusher.start()
        self.changed.emit()

    def serve_kept(self, url: str) -> None:
        """Push to the server that settings name; whatever they say, nothing fails by it."""
        try:
            self.serve(address_of(url) if url else None)
        except SchoolError as error:
            self.stop()
            self._trouble = error
            self.changed.emit()

    def nudge(self) -> None:
        """Something was kept."""
        if self._pusher is not None:
            self._pusher.nudge()

    def retry(self) -> None:
        """Somebody asks to try at once."""
        if self._pusher is not None:
            self._pusher.retry()

    def stop(self, within_s: float = 1.0) -> None:
        """Push no more; what waits is kept, and pushed after the next start."""
        if self._pusher is not None:
            self._pusher.stop(within_s)
        self._pusher, self._trouble, self.address = None, None, None
