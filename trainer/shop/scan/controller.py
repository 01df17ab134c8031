"""The controller: each gesture replaces the state whole; reading and fitting go on beside it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from exercises.file_faults import FileError
from exercises.intake.outline import Drawing
from exercises.intake.refusal import Note
from exercises.intake.scan import Fitted
from trainer.loading import Loading
from trainer.shop.scan.source import Choice, Found, Source, found_in, read_source
from trainer.shop.scan.state import ScanState
from trainer.shop.undoable import Undoable

__all__ = ["ScanController"]


class ScanController(Undoable[ScanState]):
    """Holds what was opened, what was said of it, and what it comes to.

    Signals
    -------
    opened
        Another source was read, or refused.
    """

    opened = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(ScanState(), lambda state: (state.choice, state.wishes), parent)
        self.source: Source | None = None
        self.found = Found()
        self.last: Fitted | None = None
        self.refusal: tuple[Note, ...] = ()
        self._reading: Loading[Source] | None = None
        self._read_as = Choice(), True
        self._fitting: Loading[Found] | None = None
        self._again = False

    @property
    def reading(self) -> bool:
        """Whether a file is being read."""
        return self._reading is not None

    @property
    def busy(self) -> bool:
        """Whether what is shown may not be the last word."""
        return self._reading is not None or self._fitting is not None

    @property
    def needs_unit(self) -> bool:
        """Whether the file doesn't say its unit, and nobody has yet."""
        source = self.source
        return source is not None and not source.states_units and self.state.choice.unit is None

    @property
    def needs_outline(self) -> bool:
        """Whether none of a drawing's outlines has been chosen."""
        source = self.source
        drawn = source is not None and isinstance(source.held, Drawing)
        return drawn and not self.state.choice.outlines

    # Reading

    def open(self, given: Path | str) -> None:
        """Read a file, or pasted text; what was there stays until it has been read."""
        if not self.reading:
            self._read(given, Choice())

    def _read(self, given: Path | str | Source, choice: Choice) -> None:
        self._reading = Loading(lambda: read_source(given, choice))
        self._read_as = choice, not isinstance(given, Source)
        # To a method of this object, so that it isn't called once the page is gone.
        self._reading.over.connect(self._was_read)
        self._reading.start()
        self.changed.emit()

    def _was_read(self) -> None:
        reading, self._reading = self._reading, None
        choice, anew = self._read_as
        if reading is None:
            return
        try:
            source = reading.result
        except FileError as error:
            self.refusal = tuple(error.faults)
            self.changed.emit()
            self.opened.emit()
            return
        self.source, self.refusal = source, ()
        if anew:
            kept = replace(ScanState().wishes, tolerance=self.state.wishes.tolerance)
            one = isinstance(source.held, Drawing) and len(source.held.outlines) == 1
            self.begin_anew(ScanState(Choice(outlines=(0,) if one else ()), kept))
            self.found, self.last = Found(), None
        elif self._must_read(choice, self.state.choice):
            self._read(source, self.state.choice)
            return
        self._fit()
        self.changed.emit()
        if anew:
            self.opened.emit()

    def follow(self, before: ScanState) -> None:
        """Read or fit anew, if that hangs on what was changed."""
        state, source = self.state, self.source
        if source is not None and self._must_read(before.choice, state.choice):
            # What is being read already looks at the state again when it is done.
            if not self.reading:
                self._read(source, state.choice)
        elif (before.choice, before.wishes) != (state.choice, state.wishes):
            self._fit()
        super().follow(before)

    def _must_read(self, before: Choice, now: Choice) -> bool:
        """Whether a file has to be read anew: by other columns, or flattened by another unit."""
        drawn = self.source is not None and isinstance(self.source.held, Drawing)
        return before.columns != now.columns or (drawn and before.unit != now.unit)

    # Fitting

    def _fit(self) -> None:
        """Fit anew beside the window; of many changes meanwhile only the last is fitted."""
        if self._fitting is not None:
            self._again = True
            return
        source, state = self.source, self.state
        if source is None or self.needs_unit or self.needs_outline:
            self.found = Found()
            return
        self._fitting = Loading(lambda: found_in(source, state.choice, state.wishes))
        self._fitting.over.connect(self._was_fitted)
        self._fitting.start()

    def _was_fitted(self) -> None:
        fitting, self._fitting = self._fitting, None
        if fitting is None:
            return
        # Shown even if it is no longer the last: else nothing would move while a hand does.
        self.found = fitting.result
        again, self._again = self._again, False
        self.last = self.found.fitted or self.last
        if again:
            self._fit()
        self.changed.emit()

    def wait(self) -> None:
        """Wait for what goes on beside the window; for its end."""
        for work in (self._reading, self._fitting):
            if work is not None:
                work.wait()
