"""What a command came to, before anything of it is printed."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["FAULTY", "Outcome"]

FAULTY = 2
"""The exit code for a fault in a file or in how the command was called."""


@dataclass(frozen=True)
class Outcome:
    r"""Exit code, standard output, standard error.

    Examples
    --------
    >>> Outcome(0, "done\n").err
    ''
    """

    code: int
    out: str = ""
    err: str = ""
