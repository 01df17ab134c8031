"""Where results are read from: the logbook of this machine, or the school's server. No Qt."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path

from trainer.school.address import Address, address_of
from trainer.school.reading import ClassBook
from trainer.school.server import check_version, server_engine

__all__ = ["Source", "server_book"]


@dataclass(frozen=True, slots=True)
class Source:
    """A logbook's file, or a server.

    Parameters
    ----------
    path
        The logbook of this machine: what knows names and groups, whatever else is read.
    url
        The server's address; empty where the logbook itself is read.
    password
        One that was typed for it, and holds until the program ends; None where it is kept.
    opened
        Whose papers of those that are shut here are shown: see `trainer.logbook.shut`.
    """

    path: Path
    url: str = ""
    password: str | None = field(default=None, repr=False)
    opened: frozenset[str] = frozenset()

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
        if not self.url:
            return ClassBook.of_logbook(self.path, self.opened)
        address = address_of(self.url)
        return server_book(replace(address, password=self.password or address.password))


def server_book(address: Address) -> ClassBook:
    """Return the book of a server that has tables of this version."""
    book = ClassBook(server_engine(address))
    with book.reading() as connection:
        check_version(connection)
    return book
