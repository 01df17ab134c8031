"""Versions: the golden file of each, and the steps between them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from exercises.strict_json import Json
from exercises.tray import load_tray
from exercises.versions import HEAD, MIGRATIONS, Document, check_version, migrate

GOLDEN = Path(__file__).parent / "golden"

DIGESTS = {
    1: {
        "hb-04": "54e121e35a5b3e0a2cc0193d0f73d9c84f7f775216e3e2b41efb4b42b083ee23",
        "hb-05": "5ce09655dec96cd9df9a1c92f0774e5cc54880b43f12b16310351d92006e0d66",
        "hb-06": "1819e1c6e86e7003e0e00881ef435ac633763f01dc8fb22c9edae7f151ede97d",
    }
}
"""Of the coupons in each version's golden file: what an old file means must never change."""


def test_there_is_a_step_and_a_golden_file_for_every_version() -> None:
    assert sorted(MIGRATIONS) == list(range(1, HEAD))
    assert sorted(DIGESTS) == list(range(1, HEAD + 1))
    files = {path.name for path in GOLDEN.glob("*.tray.json")}
    assert files == {f"version-{version}.tray.json" for version in range(1, HEAD + 1)}


@pytest.mark.parametrize("version", sorted(DIGESTS))
def test_a_golden_file_still_means_what_it_meant(version: int) -> None:
    tray = load_tray(GOLDEN / f"version-{version}.tray.json")
    assert {coupon.id: coupon.digest for coupon in tray.coupons} == DIGESTS[version]


@pytest.mark.parametrize("version", sorted(DIGESTS))
def test_a_golden_file_is_of_the_version_it_says(version: int) -> None:
    text = (GOLDEN / f"version-{version}.tray.json").read_text(encoding="utf-8")
    assert json.loads(text)["version"] == version


def test_steps_run_in_order_and_each_raises_the_version() -> None:
    seen: list[Json] = []

    def step(old: Document) -> Document:
        seen.append(old["version"])
        return {**old, f"from-{old['version']}": True}

    lifted = migrate({"version": 1, "title": "T"}, {1: step, 2: step, 3: step}, head=4)
    assert seen == [1, 2, 3]
    assert lifted == {
        "version": 4, "title": "T", "from-1": True, "from-2": True, "from-3": True,
    }  # fmt: skip


def test_a_step_leaves_the_old_document_alone() -> None:
    old: Document = {"version": 1}
    migrate(old, {1: dict}, head=2)
    assert old == {"version": 1}


def test_the_head_needs_no_step() -> None:
    assert migrate({"version": HEAD, "x": 1}) == {"version": HEAD, "x": 1}


def test_older_and_newer_are_told_apart() -> None:
    document: Json = {"format": "f", "version": 3}
    assert check_version(document, "f", head=3) == []
    assert check_version(document, "f", head=4) == []
    (fault,) = check_version(document, "f", head=2)
    assert (fault.at, fault.code) == ("/version", "newer-version")
    assert "newer than this program" in fault.text
