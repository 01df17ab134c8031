"""The commands that speak to a school's server: what they are called with.

What they do is loaded only for them, by `trainer.late_commands`: the other commands would wait a
third of a second for it.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable

from trainer.outcome import FAULTY, Outcome

__all__ = ["Do", "add_push", "add_school", "unserved"]

Do = Callable[[argparse.Namespace], Outcome]

_SCHOOL = """\
URL names a database that is there, and somebody who may make tables and roles in it. A password is
better left where PostgreSQL's own tools look for it: PGPASSWORD, or the file .pgpass. It may be run
again: tables of an older version are brought up to date, and nothing is lost.

  createdb school
  toe-and-throat school postgresql://postgres@db.example/school
  toe-and-throat school --print-sql | psql school
  toe-and-throat school postgresql://instructor@db.example/school --erase HK4-7TK"""

_PUSH = """\
while the program's window is open it does this by itself. Only what learners with a code did goes,
and by their codes: names stay here. What was sent before is not sent again.

  toe-and-throat push
  toe-and-throat push --server "postgresql://station@db.example/school?sslmode=verify-full\""""


def unserved(_: argparse.Namespace) -> Outcome:
    """Take the place of what would do it, where nothing does."""
    return Outcome(FAULTY, err="no server can be spoken to from here\n")


def add_school(commands: argparse._SubParsersAction[argparse.ArgumentParser], do: Do) -> None:
    """Add the command that makes a school's tables and roles."""
    parser = commands.add_parser(
        "school",
        help="make the tables and roles of a school's PostgreSQL server",
        epilog=_SCHOOL,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("url", metavar="URL", nargs="?", help="of the server, by its administrator")
    what.add_argument(
        "--print-sql", action="store_true", help="print what makes them, and connect to nothing"
    )
    parser.add_argument(
        "--erase", nargs="+", metavar="CODE", help="erase learners and all they did there, instead"
    )
    parser.set_defaults(command=do)


def add_push(commands: argparse._SubParsersAction[argparse.ArgumentParser], do: Do) -> None:
    """Add the command that pushes once."""
    parser = commands.add_parser(
        "push",
        help="send what waits in the logbook to the school's server, once",
        epilog=_PUSH,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--server", metavar="URL", help="(default: the one in the settings)")
    parser.add_argument("--logbook", metavar="FILE", help="(default: this person's)")
    parser.set_defaults(command=do)
