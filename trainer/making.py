"""The command that makes a tray: coupons out of dice, for an instructor who needs more."""

from __future__ import annotations

import argparse
from collections import Counter
from pathlib import Path
from typing import TypeVar, get_args

from exercises.callout import CalloutMeasure
from exercises.judging import judge
from exercises.maker import FACES, TRAPS, Recipe, RecipeError, make_tray
from exercises.rules import RULE_SETS
from exercises.tray import Tray, save_tray
from geometry.lengths import Unit
from trainer.outcome import FAULTY, Outcome

__all__ = ["add_make"]

_USUAL = Recipe(20)

_EPILOG = """\
the same words make the same tray. A doubt is how far a leaf can be trusted, about 0.13 mm of leg:
sizes 1.5 doubts off their limit are hard to read, those 8 off are plain to see.

  toe-and-throat make friday.tray.json --seed 7
  toe-and-throat make friday.tray.json --count 12 --unit in --rules aws-d1.1-static
  toe-and-throat make hard.tray.json --nearest 1.1 --farthest 2.5 --trap "unequal legs" overlap"""

Word = TypeVar("Word", bound=str)


def add_make(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add the command to the program's others."""
    parser = commands.add_parser(
        "make",
        help="make a tray of coupons out of dice",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("file", metavar="TRAY", help="the tray to write; it must not exist yet")
    parser.add_argument("--count", type=int, default=_USUAL.count, help="how many (default: 20)")
    parser.add_argument("--seed", type=int, default=_USUAL.seed, help="another, another tray")
    parser.add_argument("--unit", choices=get_args(Unit), default=_USUAL.unit)
    parser.add_argument("--measure", choices=get_args(CalloutMeasure), default=_USUAL.measure)
    parser.add_argument("--rules", choices=tuple(RULE_SETS), default=_USUAL.rules)
    parser.add_argument("--face", nargs="+", choices=FACES, default=FACES, help="(default: all)")
    parser.add_argument("--trap", nargs="*", choices=TRAPS, default=TRAPS, help="(default: all)")
    parser.add_argument("--nearest", type=float, default=_USUAL.nearest, help="in doubts")
    parser.add_argument("--farthest", type=float, default=_USUAL.farthest, help="in doubts")
    parser.add_argument(
        "--in-doubt", type=float, default=0.0, metavar="SHARE", help="0 to 0.3 (default: 0)"
    )
    parser.set_defaults(command=_make)


def _make(arguments: argparse.Namespace) -> Outcome:
    recipe = Recipe(
        arguments.count,
        arguments.seed,
        arguments.unit,
        arguments.measure,
        arguments.rules,
        _in_order(FACES, arguments.face),
        _in_order(TRAPS, arguments.trap),
        nearest=arguments.nearest,
        farthest=arguments.farthest,
        in_doubt=arguments.in_doubt,
    )
    path = Path(arguments.file)
    try:
        # A link that leads nowhere is there too, and is not written through.
        path.lstat()
    except FileNotFoundError:
        pass
    except OSError as error:
        return _unwritable(path, error)
    else:
        return Outcome(FAULTY, err=f"{path}: is there already; right would be: a new name\n")
    try:
        tray = make_tray(recipe)
    except RecipeError as error:
        lines = (
            f"{f.at.removeprefix('/')}: {f.text}; right would be: {f.right}" for f in error.faults
        )
        return Outcome(FAULTY, err="".join(f"{line.removeprefix(': ')}\n" for line in lines))
    try:
        save_tray(path, tray)
    except OSError as error:
        return _unwritable(path, error)
    return Outcome(0, _told(path, tray))


def _unwritable(path: Path, error: OSError) -> Outcome:
    return Outcome(FAULTY, err=f"{path}: can't be written: {error.strerror or error}\n")


def _in_order(known: tuple[Word, ...], named: list[Word]) -> tuple[Word, ...]:
    """What was named, each once and in the one order, so that the same choice is the same tray."""
    return tuple(word for word in known if word in named)


def _told(path: Path, tray: Tray) -> str:
    judgements = [judge(coupon) for coupon in tray.coupons]
    right = Counter(j.disposition for j in judgements if not j.in_doubt)
    parts = [f"{count} {answer}" for answer, count in sorted(right.items())]
    doubtful = sum(j.in_doubt for j in judgements)
    if doubtful:
        parts.append(f"{doubtful} in doubt")
    return f"{path}: {len(judgements)} coupons: {', '.join(parts)}\n"
