"""Pictures of the bench: two sizes, a doubled scale, light and dark.

Run it as ``python -m tests.measure.screens [TRAY]``; it writes to ``tests/out/screens``.
"""

from __future__ import annotations

import itertools
import os
import sys
import time
from pathlib import Path
from typing import Final

from tests.measure.child import Child
from tests.measure.xscreen import virtual_screen

__all__ = ["main"]

OUT: Final = Path(__file__).resolve().parents[1] / "out" / "screens"

SIZES: Final = ((1280, 720, 1), (1920, 1080, 1), (2560, 1440, 2))
"""Width and height of the screen in pixels, and the scale."""

LOOKS: Final = ("light", "dark")

SEATED: Final = {"x": 0.0, "y": 0.0, "angle": 0.0, "turned": False}
"""Home, the tip at the upright; the pose is laid, not driven, so the leaf should clear the bead."""


def shoot(size: tuple[int, int, int], look: str, arguments: list[str]) -> Path:
    """Photograph the bench on one screen in one look, a leaf seated on the first coupon."""
    width, height, scale = size
    os.environ["QT_SCALE_FACTOR"] = str(scale)
    file = OUT / f"bench-{width}x{height}-{scale}x-{look}.png"
    with virtual_screen(width, height), Child(*arguments, look=look) as child:
        child.awaited("ready")
        child.awaited("paint")
        child.tell("resize", width=width // scale, height=height // scale)
        child.tell("lay", leaf="8 mm", edge="leg", pose=SEATED)
        time.sleep(0.5)
        child.tell("shoot", file=str(file))
    return file


def main() -> None:
    """Make all pictures and say where they are."""
    OUT.mkdir(parents=True, exist_ok=True)
    for size, look in itertools.product(SIZES, LOOKS):
        print(shoot(size, look, sys.argv[1:]))


if __name__ == "__main__":
    main()
