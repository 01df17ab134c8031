"""Papers that nobody in particular handed in."""

from __future__ import annotations

import random
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache
from uuid import UUID, uuid5

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.maker import Recipe, make_tray
from exercises.sitting.plan import Entrant, Made, Plan
from exercises.sitting.result import Interruption, Item, Result, item_of, learner_id, plan_head
from exercises.text import Text

__all__ = ["BEGIN", "coupons", "paper_of", "plan"]

BEGIN = datetime(2026, 3, 3, 9, 0, tzinfo=UTC)
_IDS = UUID("6f0f2d5e-0000-4000-8000-000000000001")


@cache
def coupons() -> tuple[Coupon, ...]:
    return make_tray(Recipe(6, seed=3)).coupons


def plan(sitting: str = "s-1") -> Plan:
    entrants = (Entrant("k-01", extra=0.25), Entrant("k-02"))
    title = Text.of({"en": "Yard", "es": "Patio"})
    return Plan(sitting, title, (Made(Recipe(6)),), minutes=40.0, entrants=entrants,
                skill_marks={"disposition": 0.5})  # fmt: skip


def paper_of(code: str, number: int = 1, *, sitting: str = "s-1", unanswered: int = 1) -> Result:
    """The paper of this number: the same number gives the same paper."""
    rng = random.Random(f"{sitting} {code} {number}")
    items: list[Item] = []
    for place, coupon in enumerate(coupons(), 1):
        said = rng.choice(("accept", "add weld metal"))
        attempt = Attempt(coupon.id, face="flat", disposition=said, sure=0.5)  # type: ignore[arg-type]
        left = place > len(coupons()) - unanswered
        items.append(
            item_of(
                place, f"1-{place:03}", coupon, None if left else attempt,
                handling=() if left else [[0, 1.0, 2.0, 0.0, False, "pick 8 mm leg"]],
                zoom={"picture": 20.0, "loupe": 45.0}, ms=1000 * place, visits=2,
                flagged=place == 2,
            )
        )  # fmt: skip
    began = BEGIN + timedelta(minutes=number)
    return Result(
        str(uuid5(_IDS, f"{sitting} {code} {number}")),
        plan_head(replace(plan(sitting), id=sitting), code), code, learner_id(code), "bench-3",
        began, began + timedelta(minutes=30), "finished", tuple(items),
        (Interruption(began + timedelta(minutes=5), 61_000, "asleep"),),
    )  # fmt: skip
