"""Versions: the golden file of each, and the steps between them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from exercises.strict_json import Json
from exercises.tray import TrayError, load_tray, read_tray
from exercises.versions import (
    HEAD,
    LATER_KEYS,
    MIGRATIONS,
    Document,
    check_version,
    later_keys,
    migrate,
)

GOLDEN = Path(__file__).parent / "golden"

DIGESTS = {
    1: {
        "hb-04": "54e121e35a5b3e0a2cc0193d0f73d9c84f7f775216e3e2b41efb4b42b083ee23",
        "hb-05": "5ce09655dec96cd9df9a1c92f0774e5cc54880b43f12b16310351d92006e0d66",
        "hb-06": "1819e1c6e86e7003e0e00881ef435ac633763f01dc8fb22c9edae7f151ede97d",
    }
}
# What version 1 could say still has the digest that it had then.
DIGESTS[2] = {
    **DIGESTS[1],
    "hb-07": "cf281778aea331279303bfcef597615e4902e5d23a146966b1c4591f68bda3c0",
    "hb-08": "a6414cd98f1ee1dd92c848ecd5b1ed201f8c1406109562c2764654a3327f6fad",
}
DIGESTS[3] = {
    **DIGESTS[2],
    "hb-09": "016e9ce7bafe2def1310015b33e3338e9e18f032546d81ac9b9e3b495bf4ab2a",
}
DIGESTS[4] = {
    **DIGESTS[3],
    "hb-10": "e4e95c816ec97e01d2780785d220fa29f4078cf647e2f919506453bc9d5b4cac",
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


def golden(version: int) -> Document:
    text = (GOLDEN / f"version-{version}.tray.json").read_text(encoding="utf-8")
    document: Document = json.loads(text)
    return document


@pytest.mark.parametrize("version", sorted(DIGESTS))
def test_a_golden_file_has_no_key_of_a_later_version_but_every_one_of_its_own(version: int) -> None:
    assert later_keys(golden(version)) == []
    said = {fault.at.split("/")[-1] for fault in later_keys({**golden(version), "version": 0})}
    brought = {path[-1] for path in LATER_KEYS.get(version, ())}
    # A golden file stands alone: rules files have golden files of their own.
    assert said >= brought - {"rule_files"}


def test_a_key_of_version_2_is_none_of_version_1() -> None:
    faults = later_keys({**golden(2), "version": 1, "rule_files": []})
    assert {fault.at.removeprefix("/coupons/3/callout") for fault in faults} >= {
        "/rule_files", "/coupons/3/conditions", "/upright_size", "/intermittent", "/side",
        "/all_around", "/site", "/built_out", "/tail", "/coupons/4/callout/intermittent",
    }  # fmt: skip
    assert {(fault.code, fault.right) for fault in faults} == {("later-key", '"version": 2')}
    with pytest.raises(TrayError) as caught:
        read_tray({**golden(2), "version": 1})
    assert {fault.code for fault in caught.value.faults} == {"later-key"}


def test_a_key_of_version_3_is_none_of_version_2() -> None:
    (fault,) = later_keys({**golden(3), "version": 2})
    assert (fault.at, fault.code, fault.right) == (
        "/coupons/5/backdrop", "later-key", '"version": 3',
    )  # fmt: skip


def test_a_key_of_version_4_is_none_of_version_3() -> None:
    (fault,) = later_keys({**golden(4), "version": 3})
    assert (fault.at, fault.code, fault.right) == (
        "/coupons/6/placed", "later-key", '"version": 4',
    )  # fmt: skip


def test_older_and_newer_are_told_apart() -> None:
    document: Json = {"format": "f", "version": 3}
    assert check_version(document, "f", head=3) == []
    assert check_version(document, "f", head=4) == []
    (fault,) = check_version(document, "f", head=2)
    assert (fault.at, fault.code) == ("/version", "newer-version")
    assert "newer than this program" in fault.text
