"""Calls of nobody in particular, to keep."""

from __future__ import annotations

import random
from datetime import UTC, datetime, timedelta

from trainer.records import Entry

__all__ = ["BEGIN", "entry_of"]

BEGIN = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def entry_of(number: int, *, coupons: int = 40, learner: str | None = None) -> Entry:
    """Return the call with this number: the same number gives the same call."""
    rng = random.Random(number)
    distance = round(rng.uniform(-1.0, 1.0), 3)
    short = rng.random() < (0.9 if distance < 0.05 else 0.1)
    bad = distance < 0.0
    right = "add weld metal" if bad else "accept"
    stated = "add weld metal" if short else "accept"
    hit = stated == right
    name = f"c-{number % coupons:03}"
    return Entry(
        coupon={"id": name, "title": "Gate", "task": "judge"},
        digest=f"{number % coupons:064x}",
        rules={"id": "as-drawn", "version": 1},
        attempt={"coupon": name, "disposition": stated, "sure": round(rng.random(), 2)},
        grade={
            "coupon": name, "score": float(hit), "marks": {"disposition": float(hit)},
            "right": right, "in_doubt": False, "critical": bad and not short,
            "reasons": [] if hit else [{"code": "disposition", "text": "It was the other."}],
        },
        handling=[[0, 1.0, 2.0, 0.0, False, "pick 8 mm leg"], [40, 0.5, 0.0, 0.0, False, "drag"]],
        zoom={"picture": 20.0, "loupe": 45.0},
        at=BEGIN + timedelta(minutes=3 * number),
        outcome={"distance": distance, "short": short, "bad": bad, "called_bad": short,
                 "in_doubt": False, "clean": True},
        learner=learner,
        before_feedback=number % 20 < 5,
        id=f"00000000-0000-4000-8000-{number:012}",
    )  # fmt: skip
