"""Coupons: what their digest depends on, and what it doesn't."""

from __future__ import annotations

from typing import Any

import pytest

from exercises.coupon import DISPOSITIONS
from tests.exercises.trays import COUPON, coupon

BEAD = COUPON["bead"]


@pytest.mark.parametrize(
    "changes",
    [
        {"bead": {**BEAD, "crown": 0.90}},
        {"bead": {"crown": 0.9, "leg_upright": 6.7, "leg_base": 8.0}},
        {"joint": {"angle": 90.0, "root_opening": -0.0}},
        {"callout": {"size": "8 mm"}},
        {"task": "judge", "rules": "as-drawn", "hints": [], "spatter": []},
        {"x-note": "someone's own"},
    ],
)
def test_the_digest_is_of_what_the_coupon_means(changes: dict[str, Any]) -> None:
    assert coupon(**changes).digest == coupon().digest


@pytest.mark.parametrize(
    "changes",
    [
        {"id": "hb-05"},
        {"title": "Other"},
        {"task": "size"},
        {"joint": {"angle": 91}},
        {"joint": {"upright_thickness": 11}},
        {"bead": {**BEAD, "crown": 0.90001}},
        {"bead": {**BEAD, "overlap_base": 1}},
        {"spatter": [{"on": "base", "at": 14, "height": 0.5}]},
        {"callout": {"size": 8.1}},
        {"callout": {"size": 8, "measure": "throat"}},
        {"extent": 0.5},
        {"eye_limit": 0.2},
        {"leaf_wear": 0.1},
        {"hints": ["look"]},
        {"teaches": "a thing"},
    ],
)
def test_the_digest_sees_every_change(changes: dict[str, Any]) -> None:
    assert coupon(**changes).digest != coupon().digest


def test_a_digest_is_sha_256_in_hexadecimal() -> None:
    assert len(coupon().digest) == 64
    assert int(coupon().digest, 16) >= 0


def test_coupons_can_be_kept_in_sets() -> None:
    assert {coupon(), coupon()} == {coupon(**{"x-a": 1})}


def test_the_prefix_is_the_symbol_s_letter() -> None:
    # ISO 2553: z before a leg, a before a throat (check_values: from memory).
    assert coupon().callout.prefix == "z"
    assert coupon(callout={"size": 5, "measure": "throat"}).callout.prefix == "a"


def test_precedence_of_dispositions() -> None:
    assert DISPOSITIONS == ("refer", "dress back", "add weld metal", "accept")
