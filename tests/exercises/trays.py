"""Documents and coupons that several tests begin from."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

from exercises.coupon import Coupon
from exercises.tray import read_tray
from exercises.versions import HEAD

GOLDEN = Path(__file__).parent / "golden" / "version-4.tray.json"

COUPON: dict[str, Any] = {
    "id": "hb-04",
    "bead": {"leg_base": 8, "leg_upright": 6.7, "crown": 0.9},
    "callout": {"size": 8, "measure": "leg"},
}


def document(*coupons: dict[str, Any]) -> dict[str, Any]:
    """A sound tray of these coupons, or of one."""
    listed = [copy.deepcopy(coupon) for coupon in coupons or (COUPON,)]
    return {"format": "toe-and-throat/tray", "version": HEAD, "title": "T", "coupons": listed}


def coupon(**changes: object) -> Coupon:
    """A sound coupon with some keys of its document changed."""
    return read_tray(document({**COUPON, **changes})).coupons[0]


def written(folder: Path, value: object, name: str = "a.tray.json") -> Path:
    """A file with this document, or with these bytes."""
    path = folder / name
    path.write_bytes(value if isinstance(value, bytes) else json.dumps(value).encode())
    return path
