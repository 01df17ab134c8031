"""Every screen, dialog and key state, in light and dark, in all sizes; compared with what was kept.

Run it as ``python -m tests.measure.screens``: it writes the pictures to ``tests/out/screens`` and
compares each with its small reference in ``tests/measure/kept``; it fails if any looks like
another picture. ``--renew`` keeps what it sees now as the references: look at it first.
``--only WORD`` limits it to pictures whose name contains WORD.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
from pathlib import Path
from typing import Final

__all__ = ["KEPT", "OUT", "SIZES", "main"]

OUT: Final = Path(__file__).resolve().parents[1] / "out" / "screens"
KEPT: Final = Path(__file__).resolve().parent / "kept"

SIZES: Final = ((1024, 700, 1), (1280, 720, 1), (1920, 1080, 1), (1280, 720, 2))
"""Width and height of the window in logical pixels, and the scale."""


def main() -> int:
    """Photograph all sizes, each in a process of its own, since Qt's scale belongs to that."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--renew", action="store_true", help="keep what is seen as the references")
    parser.add_argument("--only", default="", metavar="WORD", help="only pictures of that name")
    asked = parser.parse_args()
    failed = 0
    for width, height, scale in SIZES:
        command = [sys.executable, "-m", "tests.measure.shots"]
        command += [str(width), str(height), str(scale), asked.only]
        command += ["--renew"] if asked.renew else []
        environment = {
            **os.environ, "QT_SCALE_FACTOR": str(scale), "QT_QPA_PLATFORM": "offscreen",
        }  # fmt: skip
        failed += subprocess.run(command, check=False, env=environment).returncode != 0
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
