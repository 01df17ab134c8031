"""Every screen, dialog and key state, in light and dark, in all sizes; compared with what was kept.

Run it as ``python -m tests.measure.screens``: it writes the pictures to ``tests/out/screens`` and
compares each with its small reference in ``tests/measure/kept``; it fails if any looks like
another picture. The tightest screens are taken in Spanish too, whose words are longer.
``--renew`` keeps what it sees now as the references: look at it first. ``--only WORD`` limits it
to pictures whose name contains WORD.
"""

from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Final

__all__ = ["KEPT", "OUT", "SIZES", "main"]

OUT: Final = Path(__file__).resolve().parents[1] / "out" / "screens"
KEPT: Final = Path(__file__).resolve().parent / "kept"

SIZES: Final = ((1024, 700, 1), (1280, 720, 1), (1920, 1080, 1), (1280, 720, 2))
"""Width and height of the window in logical pixels, and the scale."""

TONGUES: Final = (*((*size, "en") for size in SIZES), (1024, 700, 1, "es"), (1280, 720, 1, "es"))
"""The same, and the language: Spanish where there is the least room."""


_SCREEN: Final = {
    "screens": [
        {
            "name": "table", "x": 0, "y": 0, "width": 3840, "height": 2160,
            "logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1,
        }
    ]
}  # fmt: skip
"""What Qt's offscreen platform takes for the screen: room for every dialog."""


def main() -> int:
    """Photograph all sizes, each in a process of its own, since Qt's scale belongs to that."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--renew", action="store_true", help="keep what is seen as the references")
    parser.add_argument("--only", default="", metavar="WORD", help="only pictures of that name")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        screen = Path(folder) / "screen.json"
        screen.write_text(json.dumps(_SCREEN), encoding="utf-8")
        failed = [size for size in TONGUES if not _taken(size, asked, screen)]
    return 1 if failed else 0


def _taken(size: tuple[int, int, int, str], asked: argparse.Namespace, screen: Path) -> bool:
    """Take one size's pictures in one language; return whether all was well."""
    command = [sys.executable, "-m", "tests.measure.shots", *(str(part) for part in size[:3])]
    # The word beside the figures: argparse takes no more of them once an option has come.
    command += [asked.only, "--language", size[3], *(["--renew"] if asked.renew else [])]
    environment = {
        **os.environ,
        "QT_SCALE_FACTOR": str(size[2]),
        "QT_QPA_PLATFORM": f"offscreen:configfile={screen}",
    }
    return subprocess.run(command, check=False, env=environment).returncode == 0


if __name__ == "__main__":
    sys.exit(main())
