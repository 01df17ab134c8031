"""The picture behind a section: what a tray may hold of it, and what is refused unopened."""

from __future__ import annotations

import base64
import copy
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.backdrop import LARGEST_PICTURE, LARGEST_SIDE, LONGEST_JPEG, Backdrop, jpeg_size
from exercises.coupon import Coupon
from exercises.tray import TrayError, load_tray, read_tray, save_tray
from geometry.faults import GeometryError
from tests.exercises.trays import COUPON, GOLDEN, document


def header(width: int = 32, height: int = 16, *, marker: int = 0xC0, colours: int = 1) -> bytes:
    """A JPEG as far as its frame goes."""
    frame = bytes([8]) + height.to_bytes(2, "big") + width.to_bytes(2, "big") + bytes([colours])
    body = frame + b"\x01\x11\x00" * colours
    start = b"\xff\xd8\xff\xe0\x00\x04\x00\x00"
    return start + bytes([0xFF, marker]) + (len(body) + 2).to_bytes(2, "big") + body + b"\xff\xd9"


def stated(picture: bytes | str, **changed: object) -> dict[str, Any]:
    text = picture if isinstance(picture, str) else base64.b64encode(picture).decode("ascii")
    return {"jpeg": text, "left": -4.0, "top": 12.0, "mm_per_pixel": 0.5, **changed}


def faults(backdrop: object) -> list[tuple[str, str]]:
    with pytest.raises(TrayError) as caught:
        read_tray(document({**COUPON, "backdrop": backdrop}))
    return [(fault.pointer, fault.code) for fault in caught.value.faults]


def of_golden() -> Coupon:
    return load_tray(GOLDEN).coupon("hb-09")


def test_a_picture_lies_where_its_coupon_says() -> None:
    backdrop = of_golden().backdrop
    assert backdrop is not None
    assert (backdrop.size, backdrop.box) == ((32, 24), (-4.5, -5.0, 11.5, 7.0))
    assert backdrop.middle == (3.5, 1.0)


def test_a_picture_goes_through_a_file_unchanged(tmp_path: Path) -> None:
    tray = load_tray(GOLDEN)
    save_tray(tmp_path / "a.tray.json", tray)
    again = load_tray(tmp_path / "a.tray.json")
    assert again.coupon("hb-09").backdrop == of_golden().backdrop
    backdrop = of_golden().backdrop
    assert backdrop is not None
    assert Backdrop.from_text(**backdrop.as_document()) == backdrop  # type: ignore[arg-type]


def test_a_picture_is_no_part_of_what_is_judged() -> None:
    bare, pictured = (
        read_tray(document({**COUPON, **extra})).coupons[0]
        for extra in ({}, {"backdrop": stated(header())})
    )
    assert pictured.backdrop is not None
    assert (bare.digest, bare.canonical()) == (pictured.digest, pictured.canonical())


@pytest.mark.parametrize(
    ("jpeg", "code"),
    [
        (b"", "backdrop-jpeg"),
        (b"GIF89a", "backdrop-jpeg"),
        (b"\x89PNG\r\n\x1a\n", "backdrop-jpeg"),
        (b"\xff\xd8\xff\xd9", "backdrop-jpeg"),
        (header(marker=0xC3), "backdrop-jpeg"),
        (header(colours=4), "backdrop-jpeg"),
        (header(width=0), "backdrop-jpeg"),
        (header()[:-2], "backdrop-cut"),
        (header(60_000, 60_000), "backdrop-sides"),
        (header(LARGEST_SIDE + 1, 16), "backdrop-sides"),
        ("not base 64", "backdrop-base64"),
        ("QUJ", "backdrop-base64"),
        ("é", "backdrop-base64"),
    ],
)
def test_what_is_no_small_whole_jpeg_is_refused(jpeg: bytes | str, code: str) -> None:
    assert faults(stated(jpeg)) == [("/coupons/0/backdrop/jpeg", code)]


def test_text_that_no_picture_is_as_long_as_is_refused() -> None:
    assert faults(stated("A" * (LONGEST_JPEG + 4)))[0][0] == "/coupons/0/backdrop/jpeg"
    with pytest.raises(GeometryError) as caught:
        Backdrop.from_text("A" * (LONGEST_JPEG + 4), 0.0, 0.0, 0.1)
    assert caught.value.faults[0].code == "backdrop-large"
    with pytest.raises(GeometryError) as caught:
        Backdrop.of(header() + bytes(LARGEST_PICTURE), 0.0, 0.0, 0.1)
    assert caught.value.faults[0].code == "backdrop-large"


@pytest.mark.parametrize(
    ("changed", "at"),
    [
        ({"left": 5000.0}, "left"),
        ({"top": float("-1001")}, "top"),
        ({"mm_per_pixel": 0.0}, "mm_per_pixel"),
        ({"mm_per_pixel": 11}, "mm_per_pixel"),
        ({"mm_per_pixel": "0.5"}, "mm_per_pixel"),
        ({"angle": 5}, "angle"),
        ({"jpeg": 5}, "jpeg"),
        ({"jpeg": None}, "jpeg"),
    ],
)
def test_a_place_that_can_not_be_is_refused(changed: dict[str, object], at: str) -> None:
    assert faults(stated(header(), **changed))[0][0] == f"/coupons/0/backdrop/{at}"


@pytest.mark.parametrize("wrong", [5, [], "a.jpg", {}, True])
def test_a_backdrop_of_another_kind_is_refused(wrong: object) -> None:
    assert all(pointer.startswith("/coupons/0/backdrop") for pointer, _ in faults(wrong))


def test_faults_of_picture_and_section_are_told_together() -> None:
    broken = {**COUPON, "bead": {"leg_base": 80, "leg_upright": 7}, "backdrop": stated(b"")}
    with pytest.raises(TrayError) as caught:
        read_tray(document(broken))
    assert {fault.pointer for fault in caught.value.faults} == {
        "/coupons/0/bead/leg_base", "/coupons/0/backdrop/jpeg",
    }  # fmt: skip


def test_a_place_is_checked_where_no_file_did() -> None:
    with pytest.raises(GeometryError) as caught:
        Backdrop.of(header(), float("nan"), 0.0, 0.1)
    assert caught.value.faults[0].code == "not-finite"
    with pytest.raises(GeometryError) as caught:
        Backdrop.of(header(), 0.0, 2000.0, 50.0)
    assert [fault.at for fault in caught.value.faults] == [
        "/backdrop/top", "/backdrop/mm_per_pixel",
    ]  # fmt: skip


@given(st.binary(max_size=200), st.integers(0, 200))
def test_any_bytes_are_a_jpeg_or_refused(noise: bytes, cut: int) -> None:
    for data in (noise, header()[:cut] + noise, b"\xff\xd8\xff" + noise):
        try:
            width, height = jpeg_size(data)
        except GeometryError:
            continue
        assert 0 < width <= LARGEST_SIDE
        assert 0 < height <= LARGEST_SIDE


def test_a_document_is_left_as_it_was() -> None:
    before = document({**COUPON, "backdrop": stated(header())})
    after = copy.deepcopy(before)
    read_tray(after)
    assert after == before
