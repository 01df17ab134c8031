"""Where results are read from: the logbook of this machine, or the school's server. No Qt."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path

from trainer.school.address import address_of
from trainer.school.reading import ClassBook
from trainer.school.server import check_version, server_engine

__all__ = ["Source"]


@dataclass(frozen=True, slots=True)
class Source:
    """A logbook's file, or a server.

    Parameters
    ----------
    path
        The logbook of this machine: what knows names and groups, whatever else is read.
    url
        The server's address; empty where the logbook itself is read.
    """

    path: Path
    url: str = ""

    @contextmanager
    def book(self) -> Iterator[ClassBook]:
        """Open the book, and let go of it in the end.

        Raises
        ------
        trainer.logbook.opening.LogbookError, trainer.school.trouble.SchoolError
            If it can't be read.
        """
        with closing(self._opened()) as book:
            yield book

    def _opened(self) -> ClassBook:
        return server_book(self.url) if self.url else ClassBook.of_logbook(self.path)


def server_book(url: str) -> ClassBook:
    """Return the book of a server that has tables of this version."""
    book = ClassBook(server_engine(address_of(url)))
    with book.reading() as connection:
        check_version(connection)
    return book
