"""Opens trays: a small one at once, a large one beside the window, which stays alive meanwhile."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal

from exercises.file_faults import TrayError
from exercises.tray import Tray, load_tray
from trainer.band import Saying
from trainer.fault_words import fault_rows
from trainer.loading import Loading
from trainer.recent_menu import tray_name
from trainer.window import WindowFrame

__all__ = ["TrayOpener"]

LARGE: Final = 100_000
"""Bytes from which on a tray would hold the window up: a hundred coupons or so."""

_PATIENCE: Final = 200
"""ms until it is said that something goes on."""

Answer = Tray | TrayError


class TrayOpener(QObject):
    """Opens one tray at a time; the last that was asked for counts.

    Parameters
    ----------
    frame
        Says that a tray is being opened, or why it can't be.

    Signals
    -------
    opened(tray, path)
        It is there.
    """

    opened = Signal(object, Path)

    def __init__(self, frame: WindowFrame, load: Callable[[Path], Tray] = load_tray) -> None:
        super().__init__(frame)
        self._frame, self._load = frame, load
        self._loading: Loading[Answer] | None = None
        self._path: Path | None = None
        self._wanted: Path | None = None
        self._cue: Saying | None = None
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(_PATIENCE)
        self._patience.timeout.connect(self._say_so)

    @property
    def busy(self) -> bool:
        """Whether a tray is being read, wanted or not."""
        return self._loading is not None

    def open(self, path: Path) -> None:
        """Open the tray at `path`; a broken one is refused whole, and says why."""
        self.cancel()
        if self._loading is None and not _is_large(path):
            self._answer(path, self._read(path))
            return
        self._wanted = path
        self._patience.start()
        if self._loading is None:
            self._start(path)

    def cancel(self) -> None:
        """Want no tray any more; what is being read is read to its end and then left alone."""
        self._wanted = None
        self._patience.stop()
        self._hush()

    def wait(self) -> None:
        """Wait for what is being read, and leave it alone."""
        self.cancel()
        if self._loading is not None:
            self._loading.wait()

    def _read(self, path: Path) -> Answer:
        try:
            return self._load(path)
        except TrayError as error:
            return error

    def _start(self, path: Path) -> None:
        self._path = path
        self._loading = Loading(partial(self._read, path))
        self._loading.over.connect(self._end)
        self._loading.start()

    def _end(self) -> None:
        loading, path = self._loading, self._path
        self._loading = None
        if loading is None or path is None or self._wanted is None:
            return
        if self._wanted != path:
            self._start(self._wanted)
            return
        self.cancel()
        self._answer(path, loading.result)

    def _answer(self, path: Path, answer: Answer) -> None:
        if isinstance(answer, TrayError):
            self._frame.show_faults(*fault_rows(answer))
        else:
            self.opened.emit(answer, path)

    def _say_so(self) -> None:
        if self._wanted is not None:
            words = self.tr("Opening {name}\u2026").format(name=tray_name(self._wanted))
            cancel = (self.tr("Cancel"), self.cancel)
            self._cue = Saying(words, (cancel,), closable=False)
            self._frame.band.say(self._cue, first=True)

    def _hush(self) -> None:
        if self._cue is not None:
            cue, self._cue = self._cue, None
            self._frame.band.end(cue)


def _is_large(path: Path) -> bool:
    try:
        return path.stat().st_size >= LARGE
    except OSError:
        return False
