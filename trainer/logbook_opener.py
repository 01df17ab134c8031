"""Opens the logbook beside the window: what it is made of takes a third of a second to load."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

from trainer.loading import Loading
from trainer.records import Records, Relay
from trainer.screens import load_station

if TYPE_CHECKING:
    from trainer.logbook.keeping import Keeping
    from trainer.sittings.station import Station

__all__ = ["LogbookOpener"]

_QUIET: Final = 1000
"""ms from the bench being there, or a leaf being held, until it is opened: who takes a leaf at once
shares the machine with nothing."""


class LogbookOpener(QObject):
    """Opens the logbook once, and hands it the calls from then on.

    Parameters
    ----------
    aside
        Takes calls until then, and whenever the logbook can't.
    load
        Opens the logbook: is run in a thread of its own. It also makes the day's backup.
    """

    def __init__(self, aside: Records, load: Callable[[Records], Keeping]) -> None:
        super().__init__()
        self.relay = Relay(aside)
        self._loading: Loading[Keeping] = Loading(lambda: load(aside))
        self._loading.over.connect(self._hand_over)
        self._begun = False
        self._handed = False
        self._server = ""
        self._station: Station | None = None
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(_QUIET)
        self._quiet.timeout.connect(self._begin_if_quiet)

    def begin_soon(self) -> None:
        """Begin to open it in a while, when no hand is at work."""
        self._quiet.start()

    def _begin_if_quiet(self) -> None:
        if QGuiApplication.mouseButtons() == Qt.MouseButton.NoButton:
            self.begin()
        else:
            self._quiet.start()

    def begin(self) -> None:
        """Begin to open it, if that hasn't been done."""
        if not self._begun:
            self._begun = True
            self._loading.start()

    @property
    def keeping(self) -> Keeping:
        """The logbook's keeper: waits for it, if it is being opened."""
        self.begin()
        keeping = self._loading.result
        self._hand_over()
        return keeping

    @property
    def station(self) -> Station:
        """What pushes the logbook to the school's server; waits for it, if it is being opened."""
        if self._station is None:
            self._station = load_station(self.keeping.path)
        return self._station

    def serve(self, url: str) -> None:
        """Push to that server once the logbook is open; to none if it is empty."""
        self._server = url
        if self._handed:
            self._push()

    def _push(self) -> None:
        if self._server or self._station is not None:
            self.station.serve_kept(self._server)

    def end(self) -> None:
        """Wait for what is going on, and let go of the file."""
        self._quiet.stop()
        if self._station is not None:
            self._station.stop()
        if self._begun:
            self.keeping.close()

    def _hand_over(self) -> None:
        """Let the logbook have all calls from now on, and those that came meanwhile."""
        if self._handed:
            return
        self._handed = True
        keeping = self._loading.result
        self.relay.keeper = keeping
        # What was called while it was being opened went aside.
        if keeping.logbook is not None and keeping.waiting:
            keeping.open(keeping.learner.id if keeping.learner is not None else None)
        self._push()
