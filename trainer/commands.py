"""The commands that need no display: check, measure, read, grade, schema, make, school and push.

Each works out an exit code and what to print before it prints anything. So a fault leaves
standard output empty, and with ``--json`` it holds JSON and nothing else.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import asdict
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import TextIO

from exercises.attempt import load_attempts
from exercises.coupon import Coupon
from exercises.file_faults import FileError, TrayFault
from exercises.grading import Grade, grade
from exercises.rule_files import SUFFIX, check_rules, rules_schema
from exercises.tray import Tray, check_tray, load_tray, tray_schema
from geometry.joint import MEMBERS
from geometry.leaf import EDGES, leaf_of_mark
from geometry.measures import Measures, measure
from geometry.pose import Pose, wrap_degrees
from geometry.reading import Reading, read
from geometry.seat import press_home, waiting_pose
from trainer.making import add_make
from trainer.outcome import FAULTY, Outcome
from trainer.schooling import Do, add_push, add_school, unserved

__all__ = ["run"]

PROGRAM = "toe-and-throat"
_BUG = 70
"""EX_SOFTWARE: not the user's trouble but ours."""

_DESCRIPTION = """\
A trainer for the fillet weld gauge. Without a command it opens the window, on TRAY if one is
named; the commands need neither a display nor Qt."""

_EPILOG = """\
exit codes: 0 done, 2 a fault in a file, at a server, or in how the command was called.

examples:
  toe-and-throat                                      open the window on the shipped tray
  toe-and-throat brackets.tray.json                   open it on another
  toe-and-throat check *.tray.json                    say what is wrong with trays
  toe-and-throat measure brackets.tray.json --json    the true measures of every coupon
  toe-and-throat read brackets.tray.json --coupon hb-04 --leaf "8 mm" --edge leg --on upright
  toe-and-throat grade brackets.tray.json attempts.jsonl
  toe-and-throat make friday.tray.json --seed 7       a new tray out of dice
  toe-and-throat school postgresql://postgres@db/school   a class over several machines"""


_ATTEMPTS = """\
an attempts file holds a header, then one attempt a line; only "coupon" is required:

{"format": "toe-and-throat/attempts", "version": 1}
{"coupon": "hf-01", "face": "convex", "readings": [{"leaf": "8 mm", "edge": "leg", "on": "upright",\
 "state": "daylight"}], "disposition": "add weld metal", "sure": 0.8}

in version 2 also: "fault" (what is wrong with a placed leaf: wrong edge, wrong leaf, tilted,
on spatter, one leg only, wrong member, nothing), "size" (mark of the largest leaf that the weld
meets), "hints" (how many were asked for)"""

_STEP = 6
"""Decimals of a printed gap and pose: below a nanometre there is only the kernel's rounding."""


class _UseError(Exception):
    """The command was called for something that isn't there."""


def run(words: Sequence[str], *, school: Do = unserved, push: Do = unserved) -> int:
    """Run the command that `words` spell and return its exit code.

    0 is done; 2 a fault in a file or in how the command was called; 70 a fault of the program.
    A reader that closes standard output early changes nothing about the code.

    Parameters
    ----------
    words
        After the program's name.
    school, push
        What those two commands do, loaded by whoever calls this.
    """
    parser = _parser(school, push)
    for stream in (sys.stdout, sys.stderr):
        _speak_plainly(stream)
    arguments = parser.parse_args(list(words))
    command: Callable[[argparse.Namespace], Outcome] | None = arguments.command
    if command is None:
        parser.error("say what to do: one of the commands, or one tray to open")
    try:
        outcome = command(arguments)
    except FileError as error:
        outcome = Outcome(FAULTY, err=_lines(error.faults))
    except _UseError as error:
        outcome = Outcome(FAULTY, err=f"{PROGRAM}: {error}\n")
    except Exception as error:  # noqa: BLE001 - the last door: a bug gets a line, not a traceback
        text = f"{PROGRAM}: a fault of the program, not of your files: {error!r}\n"
        outcome = Outcome(_BUG, err=text)
    sys.stderr.write(outcome.err)
    return _write(outcome)


def _speak_plainly(stream: TextIO | None) -> None:
    """Let a stream of any encoding take any text: what it lacks is written as an escape."""
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors="backslashreplace")


def _write(outcome: Outcome) -> int:
    try:
        sys.stdout.write(outcome.out)
        sys.stdout.flush()
    except BrokenPipeError:
        _let_go_of_stdout()
    except OSError as error:
        _let_go_of_stdout()
        sys.stderr.write(f"{PROGRAM}: can't write: {error.strerror or error}\n")
        return FAULTY
    return outcome.code


def _let_go_of_stdout() -> None:
    # The interpreter flushes once more at its end, and would complain then.
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)


def _lines(faults: Sequence[TrayFault]) -> str:
    return "".join(f"{fault}\n" for fault in faults)


def _json(value: object) -> str:
    return json.dumps(value, indent=2, allow_nan=False) + "\n"


def _version() -> str:
    try:
        return version(PROGRAM)
    except PackageNotFoundError:
        return "(a checkout, not installed)"


def _parser(school: Do, push: Do) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog=PROGRAM,
        usage="%(prog)s [TRAY] | %(prog)s COMMAND ...",
        description=_DESCRIPTION,
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"%(prog)s {_version()}")
    parser.set_defaults(command=None)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", prog=PROGRAM)

    check = commands.add_parser(
        "check", help="say what is wrong with trays or rules files, one line a fault"
    )
    check.add_argument(
        "trays", nargs="+", metavar="TRAY", help=f"a tray, or rules: a name that ends {SUFFIX}"
    )
    check.set_defaults(command=_check)

    measures = commands.add_parser("measure", help="print the true measures of coupons")
    measures.add_argument("tray", metavar="TRAY")
    measures.add_argument("--coupon", metavar="ID", help="only this coupon")
    measures.add_argument("--json", action="store_true", help="print JSON")
    measures.set_defaults(command=_measure)

    reading = commands.add_parser("read", help="press a leaf home and print what it shows")
    reading.add_argument("tray", metavar="TRAY")
    reading.add_argument("--coupon", metavar="ID", required=True)
    reading.add_argument(
        "--leaf", metavar="MARK", required=True, help='such as "8 mm", "5/16 in", "a 4"'
    )
    reading.add_argument("--edge", choices=EDGES, required=True, help="the end that is used")
    reading.add_argument("--on", choices=MEMBERS, required=True, help="the member it reads")
    reading.add_argument("--json", action="store_true", help="print JSON")
    reading.set_defaults(command=_read)

    grades = commands.add_parser(
        "grade",
        help="grade attempts as the bench does",
        epilog=_ATTEMPTS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    grades.add_argument("tray", metavar="TRAY")
    grades.add_argument("attempts", metavar="ATTEMPTS", help="a file of attempts, one a line")
    grades.add_argument("--json", action="store_true", help="print JSON")
    grades.set_defaults(command=_grade)

    schema = commands.add_parser("schema", help="print the JSON Schema of a tray")
    schema.add_argument("--rules", action="store_true", help="of a rules file instead")
    schema.set_defaults(command=_schema)

    add_make(commands)
    add_school(commands, school)
    add_push(commands, push)
    return parser


def _check(arguments: argparse.Namespace) -> Outcome:
    faults = [
        fault
        for name in arguments.trays
        for fault in (check_rules if name.endswith(SUFFIX) else check_tray)(Path(name))
    ]
    return Outcome(FAULTY if faults else 0, _lines(faults))


def _schema(arguments: argparse.Namespace) -> Outcome:
    return Outcome(0, _json(rules_schema() if arguments.rules else tray_schema()))


def _found(tray: Tray, name: str) -> Coupon:
    try:
        return tray.coupon(name)
    except KeyError:
        known = ", ".join(coupon.id for coupon in tray.coupons)
        raise _UseError(f"no coupon {name!r} in this tray; right would be: {known}") from None


def _measure(arguments: argparse.Namespace) -> Outcome:
    tray = load_tray(Path(arguments.tray))
    if arguments.coupon is None:
        found = {coupon.id: measure(coupon.section) for coupon in tray.coupons}
        printed: object = {name: measures.as_dict() for name, measures in found.items()}
    else:
        coupon = _found(tray, arguments.coupon)
        found = {coupon.id: measure(coupon.section)}
        printed = found[coupon.id].as_dict()
    if arguments.json:
        return Outcome(0, _json(printed))
    return Outcome(0, "\n".join(_measure_text(name, each) for name, each in found.items()))


def _measure_text(name: str, measures: Measures) -> str:
    lines = [name]
    for key, value in measures.as_dict().items():
        if isinstance(value, float):
            unit = "degrees" if key.startswith("toe_angle") else "mm"
            lines.append(f"  {key:<20} {value:8.3f} {unit}")
        else:
            lines.append(f"  {key:<20} {value:>8}")
    return "\n".join(lines) + "\n"


def _read(arguments: argparse.Namespace) -> Outcome:
    coupon = _found(load_tray(Path(arguments.tray)), arguments.coupon)
    try:
        leaf = leaf_of_mark(arguments.leaf, arguments.edge, coupon.leaf_wear)
    except (ValueError, OverflowError) as error:
        raise _UseError(str(error)) from None
    section = coupon.section
    motion = press_home(section, leaf, waiting_pose(section, leaf, arguments.on))
    shown = read(section, leaf, motion.pose, coupon.eye_limit)
    if arguments.json:
        return Outcome(0, _json(_reading_document(shown)))
    return Outcome(0, _reading_text(shown))


def _reading_document(shown: Reading) -> dict[str, object]:
    return {
        "state": shown.state,
        "gap": None if shown.gap is None else _rounded(shown.gap),
        "flush": list(shown.flush),
        "in_the_way": list(shown.in_the_way),
        "pose": asdict(_printed(shown.pose)),
    }


def _rounded(value: float, decimals: int = _STEP) -> float:
    """A number without digits that mean nothing, and never minus zero."""
    return round(value, decimals) + 0.0


def _printed(pose: Pose, decimals: int = _STEP) -> Pose:
    """A pose without digits that mean nothing."""
    x, y, angle = (_rounded(value, decimals) for value in (pose.x, pose.y, pose.angle))
    return Pose(x, y, wrap_degrees(angle), pose.turned)


def _reading_text(shown: Reading) -> str:
    pose = _printed(shown.pose, 3)
    place = f"x {pose.x:.3f} mm, y {pose.y:.3f} mm, angle {pose.angle:.3f} degrees"
    lines = [
        f"state       {shown.state}",
        f"gap         {'-' if shown.gap is None else f'{shown.gap:.3f} mm'}",
        f"flush       {', '.join(shown.flush) or '-'}",
        f"in_the_way  {', '.join(shown.in_the_way) or '-'}",
        f"pose        {place}{', turned over' if pose.turned else ''}",
    ]
    return "\n".join(lines) + "\n"


def _grade(arguments: argparse.Namespace) -> Outcome:
    tray = load_tray(Path(arguments.tray))
    known = [coupon.id for coupon in tray.coupons]
    attempts = load_attempts(Path(arguments.attempts), known=known)
    grades = [grade(tray.coupon(attempt.coupon), attempt) for attempt in attempts]
    if arguments.json:
        return Outcome(0, _json([each.as_dict() for each in grades]))
    return Outcome(0, "\n".join(_grade_text(each) for each in grades))


def _grade_text(given: Grade) -> str:
    marks = ", ".join(
        f"{name} {'-' if mark is None else f'{mark:.2f}'}" for name, mark in given.marks.items()
    )
    notes = [
        *(["in doubt: either verdict, or refer, is right"] if given.in_doubt else []),
        *(["critical: accepted what the rules reject"] if given.critical else []),
        *(f"{reason.mark}: {reason.text}" for reason in given.reasons),
    ]
    right = f"; right call: {given.right}" if given.right and not given.in_doubt else ""
    lines = [f"{given.coupon}  score {given.score:.2f}{right}", f"  {marks}"]
    return "\n".join([*lines, *(f"  {note}" for note in notes)]) + "\n"
