"""Opens the logbook beside the window: what it is made of takes a third of a second to load."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from trainer.loading import Loading
from trainer.records import Records, Relay

if TYPE_CHECKING:
    from trainer.logbook.keeping import Keeping
    from trainer.window import WindowFrame

__all__ = ["LogbookOpener"]


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

    def follow(self, frame: WindowFrame) -> None:
        """Remember who is at the bench in the settings, whenever these are kept anyway."""
        learner = self.keeping.learner
        if learner is not None and frame.settings.learner != learner.id:
            frame.change_settings(replace(frame.settings, learner=learner.id))

    def end(self) -> None:
        """Wait for what is going on, and let go of the file."""
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
