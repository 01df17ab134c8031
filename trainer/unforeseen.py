"""Hears of every error that nobody foresaw: in a slot, in a thread, in Qt; and makes its report.

What is heard may come out of the middle of a painting or from another thread. So it is put into
words at once, nothing of it is held, and it is told in the window's thread, a turn of the loop
later.
"""

from __future__ import annotations

import sys
import threading
import traceback
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Final

from PySide6.QtCore import (
    QMessageLogContext,
    QObject,
    QTimer,
    QtMsgType,
    Signal,
    qInstallMessageHandler,
)

from trainer.crash import Repeats, Session, shortened, write_report

__all__ = ["Trouble", "Unforeseen"]

_LINES: Final = 20
"""Of Qt's, that a report has."""

Handler = Callable[[QtMsgType, QMessageLogContext, str], object]


@dataclass(frozen=True, slots=True)
class Trouble:
    """One thing that went wrong.

    Parameters
    ----------
    what
        The error in one line.
    text
        The report.
    report
        Where it lies; None if it couldn't be written.
    """

    what: str
    text: str
    report: Path | None


class Unforeseen(QObject):
    """Listens everywhere at once.

    Parameters
    ----------
    reports
        Where reports go.
    about
        Says the versions; asked when something has happened.
    session
        Of this program, for what Qt says before it ends the process.

    Signals
    -------
    happened
        A `Trouble`: the first of its kind, or again after a while.
    interrupted
        Someone asked for the end from a terminal.
    """

    happened = Signal(object)
    interrupted = Signal()
    _heard = Signal(object)

    def __init__(self, reports: Path, about: Callable[[], str], session: Session | None) -> None:
        super().__init__()
        self._reports, self._about, self._session = reports, about, session
        self._repeats = Repeats()
        self._written: dict[str, Path | None] = {}
        self._lock = threading.RLock()  # what is formatted may fail in turn
        self._qt_lines: deque[str] = deque(maxlen=_LINES)
        self._before: Handler | None = None
        self._hears_qt = False
        # To say how would load the namespace of Qt's enumerations, before the first paint. What
        # comes from another thread waits for this one by itself.
        self._heard.connect(self._pass_on)

    def listen(self) -> None:
        """Hear of errors from now on."""
        sys.excepthook = self.hear
        threading.excepthook = self._hear_thread

    def listen_to_qt(self) -> None:
        """Hear what Qt says as well; it goes on to whoever heard it before."""
        self._before = qInstallMessageHandler(self._hear_qt)
        self._hears_qt = True

    def stop(self) -> None:
        """Hear no more."""
        sys.excepthook = sys.__excepthook__
        threading.excepthook = threading.__excepthook__
        if self._hears_qt:
            qInstallMessageHandler(self._before)
            self._hears_qt = False

    def hear(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Take an error as Python's hook gets it."""
        sys.__excepthook__(kind, error, trace)
        if issubclass(kind, KeyboardInterrupt):
            self.interrupted.emit()
            return
        sign, lines = _sign(kind, trace), traceback.format_exception(kind, error, trace)
        # A painter among what the calls hold would still be painting; Qt ends the process for that.
        if trace is not None:
            traceback.clear_frames(trace)
        sys.last_type = sys.last_value = sys.last_traceback = None
        self._take(sign, lines)

    def _hear_thread(self, told: threading.ExceptHookArgs) -> None:
        if told.exc_value is not None and not issubclass(told.exc_type, SystemExit):
            self.hear(told.exc_type, told.exc_value, told.exc_traceback)

    def _take(self, sign: str, lines: list[str]) -> None:
        """Write the report the first time, and tell of it unless it has just been told."""
        with self._lock:
            if not self._repeats.says(sign):
                return
            what = shortened(lines[-1].strip())
            text = self._text("".join(lines))
            if sign not in self._written:
                self._written[sign] = write_report(self._reports, text)
            report = self._written[sign]
        self._heard.emit(Trouble(what, text, report))

    def _pass_on(self, trouble: Trouble) -> None:
        """Tell of it a turn of the loop later, when nothing is being painted."""
        QTimer.singleShot(0, self, lambda: self.happened.emit(trouble))

    def _text(self, lines: str) -> str:
        now = datetime.now(UTC).isoformat(timespec="seconds")
        said = "\n".join(self._qt_lines)
        heard = f"\n\nQt said before that:\n{said}" if said else ""
        return shortened(f"{self._about()}\n{now}\n\n{lines.rstrip()}{heard}\n")

    def _hear_qt(self, kind: QtMsgType, where: QMessageLogContext, text: str) -> None:
        line = f"{kind.name}: {text}"
        self._qt_lines.append(line)
        if kind == QtMsgType.QtFatalMsg and self._session is not None:
            self._session.note("\n".join(self._qt_lines))
        if self._before is not None:
            self._before(kind, where, text)
        elif sys.stderr is not None:
            sys.stderr.write(f"{text}\n")


def _sign(kind: type[BaseException], trace: TracebackType | None) -> str:
    """What tells one trouble from another: its kind, and the line that it came from."""
    place = ""
    while trace is not None:
        place = f"{trace.tb_frame.f_code.co_filename}:{trace.tb_lineno}"
        trace = trace.tb_next
    return f"{kind.__module__}.{kind.__qualname__} {place}"
