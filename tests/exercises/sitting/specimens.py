"""A plan, and what learners made of it, that several tests begin from. All of it is invented."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

from exercises.attempt import Attempt, StatedReading
from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.judging import judge
from exercises.maker import Recipe
from exercises.rule_files import rules_of
from exercises.sitting.embedded import chosen_of
from exercises.sitting.paper import questions_of
from exercises.sitting.plan import Chosen, Entrant, Made, Plan
from exercises.sitting.result import Interruption, Item, Result, item_of, learner_id, plan_head
from exercises.strict_json import Json
from exercises.text import Text
from exercises.tray import read_tray
from geometry.pose import Pose

OWN: dict[str, Json] = {"document": "shop rules", "sureness": "own"}
SHOP: dict[str, Json] = {
    "format": "toe-and-throat/rules",
    "version": 1,
    "id": "shop",
    "title": "The shop's",
    "source": OWN,
    "limits": [{"measure": "convexity", "at_most": 1, "source": OWN}],
}
BEAD: dict[str, Json] = {"leg_base": 8, "leg_upright": 6.7, "crown": 0.9}
RECIPE = Recipe(8, seed=3)
AT = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def coupon_said(name: str, **changes: Json) -> dict[str, Json]:
    return {"id": name, "bead": BEAD, "callout": {"size": 8}, **changes}


def chosen(*stated: dict[str, Json], title: str = "Yard tray") -> Chosen:
    """Coupons of a tray, judged by a shop's own rules where they say so."""
    listed: list[Json] = [*(stated or (coupon_said("a"), coupon_said("b", rules="shop")))]
    rules = {"shop": rules_of(SHOP)}
    document: dict[str, Json] = {"format": "toe-and-throat/tray", "version": 4, "title": title}
    tray = read_tray({**document, "coupons": listed}, rules=rules)
    taken = chosen_of(tray)
    needed = any(coupon.shop_rules for coupon in tray.coupons)
    return replace(taken, rules={"shop": SHOP} if needed else {})


def plan(**changes: Any) -> Plan:
    whole = Plan(
        id="s-1",
        title=Text.of({"en": "Spring sitting", "es": "Sesión de primavera"}),
        parts=(chosen(), Made(RECIPE)),
        minutes=40.0,
        pass_mark=0.7,
        skill_marks={"disposition": 0.6},
        helps=frozenset({"loupe"}),
        entrants=(Entrant("k-07"), Entrant("k-08", extra=0.25)),
        seed=5,
    )
    return replace(whole, **changes)


def attempt(coupon: Coupon, disposition: Disposition | None = None) -> Attempt:
    """What is stated of a coupon: the right face and call, or another call."""
    judged = judge(coupon)
    stated = StatedReading("8 mm", "leg", "upright", Pose(0.0, 0.0), "daylight")
    return Attempt(
        coupon.id,
        face=judged.face,
        readings=(stated,),
        disposition=disposition or judged.disposition,
        sure=0.8,
    )


def item(number: int, slot: str, coupon: Coupon, given: Attempt | None) -> Item:
    rows = ((0, 40.0, 40.0, 0.0, False, "pick 8 mm leg"), (80, 38.0, 40.0, 0.5, False, "drag"))
    return item_of(
        number,
        slot,
        coupon,
        given,
        handling=rows,
        zoom={"picture": 12.5, "loupe": None},
        ms=45_000 + number,
        visits=2,
        flagged=number == 2,
    )


def result(code: str = "k-07", of: Plan | None = None, *, skipped: int = 1) -> Result:
    """A sitting in which everything is right but the last `skipped` coupons, left unanswered."""
    sat = of or plan()
    asked = questions_of(sat, code)
    items = tuple(
        item(at + 1, each.slot, each.coupon,
             attempt(each.coupon) if at < len(asked) - skipped else None)
        for at, each in enumerate(asked)
    )  # fmt: skip
    return Result(
        id="0b0a3c52-9f0e-4c41-8d5b-5d1f5f4f7a10",
        plan=plan_head(sat, code),
        code=code,
        learner=learner_id(code),
        station="bay-2",
        started=AT,
        finished=AT + timedelta(minutes=31),
        ended="finished",
        items=items,
        interruptions=(
            Interruption(AT + timedelta(minutes=5), 90_000, "asleep"),
            Interruption(AT + timedelta(minutes=9), None, "clock"),
        ),
        shop_rules={rules_of(SHOP).digest: SHOP},
    )
