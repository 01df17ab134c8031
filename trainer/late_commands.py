"""Commands come in late: none loads Qt, and only those of a school what speaks to a server."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from trainer.outcome import Outcome
from trainer.start import explained

__all__ = ["run_command"]


def run_command(words: Sequence[str]) -> int:
    """Run one of the commands that need no window, and return its exit code.

    Raises
    ------
    StartError
        If a package that the core is made of can't be loaded; says what to do.
    """
    with explained():
        from trainer.commands import run

    return run(words, school=_serve, push=_push)


def _serve(arguments: argparse.Namespace) -> Outcome:
    with explained():
        from trainer.school.serving import serve

    return serve(arguments)


def _push(arguments: argparse.Namespace) -> Outcome:
    with explained():
        from trainer.school.serving import push_now

    return push_now(arguments)
