"""What the commands `school` and `push` do: tables and roles on a server, and one push to it."""

from __future__ import annotations

import argparse
from contextlib import closing
from pathlib import Path

from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.opening import HEAD
from trainer.logbook.store import Logbook, LogbookError
from trainer.outcome import FAULTY, Outcome
from trainer.places import places
from trainer.school.address import Address, address_of
from trainer.school.erasing import erase_there
from trainer.school.pushing import push_once
from trainer.school.reading import ClassBook
from trainer.school.server import server_engine
from trainer.school.tables import INSTRUCTORS, STATIONS, make_tables, tables_as_sql
from trainer.school.trouble import SchoolError
from trainer.settings import load_settings

__all__ = ["push_now", "serve"]

_THEN = f"""\
Give every station a login in the role {STATIONS}, which may add rows and nothing else,
and every instructor one in {INSTRUCTORS}, who may read, add and erase:

  CREATE ROLE station LOGIN PASSWORD '...' IN ROLE {STATIONS};
  CREATE ROLE instructor LOGIN PASSWORD '...' IN ROLE {INSTRUCTORS};
"""

_TROUBLES = {
    "newer": "it is of a newer version; bring this program up to date",
    "damaged": "it is damaged, or no logbook",
    "locked": "another program holds it",
    "full": "there is no room left on the disk",
}


def serve(arguments: argparse.Namespace) -> Outcome:
    """Make the tables and roles of the server at `arguments.url`, print their SQL, or erase."""
    if arguments.print_sql:
        if arguments.erase:
            # Silence would be taken for an erasure.
            said = "--print-sql erases nobody; right would be: the URL of the server, and --erase"
            return Outcome(FAULTY, err=f"{said}\n")
        return Outcome(0, tables_as_sql())
    try:
        address = address_of(arguments.url)
        if arguments.erase:
            return _erase(address, arguments.erase)
        before = make_tables(server_engine(address))
    except SchoolError as error:
        return _failed(error)
    if before is None:
        made = "tables and roles made"
    elif before == HEAD:
        made = "nothing to do, tables and roles are up to date"
    else:
        made = f"tables brought up from {before} to {HEAD}, roles with them"
    return Outcome(0, f"{address.url}: {made}\n\n{_THEN}")


def _erase(address: Address, codes: list[str]) -> Outcome:
    with closing(ClassBook.of_server(address)) as book:
        erased = erase_there(book, codes)
    return Outcome(0, f"{address.url}: {erased} of {len(set(codes))} learners erased\n")


def push_now(arguments: argparse.Namespace) -> Outcome:
    """Push what waits in a logbook, once."""
    kept = places()
    server = arguments.server or load_settings(kept.settings).server
    path = Path(arguments.logbook) if arguments.logbook else kept.logbook
    if not server:
        said = "no server is named; right would be: --server URL, or one in the program's settings"
        return Outcome(FAULTY, err=f"{said}\n")
    if not path.is_file():
        return Outcome(FAULTY, err=f"{path}: there is no logbook\n")
    try:
        address = address_of(server)
        # A logbook of an earlier version is brought up to this one.
        Logbook.open(path, bring_up_to_date).close()
        done = push_once(path, address)
    except SchoolError as error:
        return _failed(error)
    except LogbookError as error:
        why = _TROUBLES.get(error.trouble, error.detail or error.trouble)
        return Outcome(FAULTY, err=f"{error.path}: {why}\n")
    said = f"{done.attempts} attempts, {done.papers} papers, {done.overrides} overrides sent"
    refused = "".join(f"refused: {error}\n" for error in done.refused)
    return Outcome(FAULTY if refused else 0, f"{said}\n", refused)


def _failed(error: SchoolError) -> Outcome:
    return Outcome(FAULTY, err=f"{error}\n")
