"""The stored drawing of the shipped tray's first coupon, which the window's first paint shows.

After a change to that coupon, write it anew: ``python -m trainer.bench.first_picture``.
"""

from __future__ import annotations

from pathlib import Path

from exercises.coupon import Coupon
from exercises.tray import load_tray
from trainer.assets import asset
from trainer.canvas.drawing import drawing_of
from trainer.canvas.still import StillDrawing, still_to_json

__all__ = ["main", "picture_of"]


def picture_of(coupon: Coupon) -> str:
    """Return the stored picture of a coupon as it lies before a leaf is taken, as JSON."""
    return still_to_json(StillDrawing(drawing_of(coupon.section), of=coupon.digest)) + "\n"


def main() -> Path:
    """Write the picture of the first shipped coupon; return the file."""
    coupon = load_tray(asset("trays", "heron-footbridge.tray.json")).coupons[0]
    file = asset("trays").parent / "stills" / "first-coupon.json"
    file.parent.mkdir(exist_ok=True)
    file.write_text(picture_of(coupon), encoding="utf-8")
    return file


if __name__ == "__main__":
    main()
