"""What is asked of a logbook or of a server beside the window, which goes on meanwhile."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, Final, TypeVar

from PySide6.QtCore import QObject

from exercises.file_faults import FileError
from trainer.loading import Loading
from trainer.logbook.opening import LogbookError
from trainer.results.source import Source
from trainer.school.reading import ClassBook
from trainer.school.trouble import SchoolError

__all__ = ["REFUSED", "Asking"]

Made = TypeVar("Made")

REFUSED: Final = (LogbookError, SchoolError, FileError, KeyError)
"""What a book may answer with instead: it can't be read or written, or isn't there any more."""


class Asking(QObject):
    """Asks, and tells what came of it once it is over. A server is waited for by nobody."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._going_on: list[Loading[Any]] = []

    @property
    def busy(self) -> bool:
        """Whether something is being asked."""
        return bool(self._going_on)

    def ask(
        self,
        source: Source,
        act: Callable[[ClassBook], Made],
        made: Callable[[Made], object],
        refused: Callable[[Exception], object],
    ) -> None:
        """Do something with a book.

        Parameters
        ----------
        source
            Where the book is.
        act
            Run in a thread of its own.
        made, refused
            Told what came of it, or why nothing did (one of `REFUSED`), in the window's thread.
        """

        def work() -> Made:
            with source.book() as book:
                return act(book)

        loading = Loading(work)
        self._going_on.append(loading)
        loading.over.connect(partial(self._tell, loading, made, refused))
        loading.start()

    def wait(self) -> None:
        """Wait until all that was asked is done, as when the window closes."""
        for loading in self._going_on:
            loading.wait()

    def _tell(
        self,
        loading: Loading[Made],
        made: Callable[[Made], object],
        refused: Callable[[Exception], object],
    ) -> None:
        self._going_on.remove(loading)
        try:
            result = loading.result
        except REFUSED as error:
            refused(error)
        else:
            made(result)
