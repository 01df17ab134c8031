"""Where the program starts: a tray or nothing opens the window, a word is a command.

Nothing heavy is imported here, so that the window can paint before anything else is loaded.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

from trainer.late import open_window
from trainer.late_commands import run_command
from trainer.start import StartError, check_packages, check_siblings

__all__ = ["COMMANDS", "main"]

COMMANDS = ("check", "measure", "read", "grade", "schema", "make", "school", "push")


def main(arguments: Sequence[str] | None = None) -> int:
    """Open the window or run a command; return the exit code.

    Parameters
    ----------
    arguments
        The words after the program's name; those of the command line unless given.
    """
    words = list(sys.argv[1:] if arguments is None else arguments)
    try:
        check_siblings()
        check_packages()
        if _opens_window(words):
            return open_window(sys.argv[:1], Path(words[0]) if words else None)
        return run_command(words)
    except StartError as error:
        print(error, file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130


def _opens_window(words: Sequence[str]) -> bool:
    """Whether the words are none, or one that names a tray."""
    return not words or (
        len(words) == 1 and words[0] not in COMMANDS and not words[0].startswith("-")
    )


if __name__ == "__main__":
    sys.exit(main())
