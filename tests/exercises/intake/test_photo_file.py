"""Pictures out of files: each kind, each oddity, and everything that has to be refused."""

from __future__ import annotations

import io
import os
import struct
import zlib
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageOps

from exercises.file_faults import FileError
from exercises.intake import photo_file
from exercises.intake.photo_file import load_picture, picture_of

RED, GREEN = (204, 0, 51), (0, 204, 51)


def halves(mode: str = "RGB", size: tuple[int, int] = (60, 40)) -> Image.Image:
    """Red to the left, green to the right."""
    image = Image.new("RGB", size, RED)
    image.paste(GREEN, (size[0] // 2, 0, size[0], size[1]))
    return image.convert(mode)


def packed(image: Image.Image, kind: str, **options: Any) -> bytes:
    file = io.BytesIO()
    image.save(file, kind, **options)
    return file.getvalue()


def fault(data: bytes) -> tuple[str, dict[str, object]]:
    with pytest.raises(FileError) as caught:
        picture_of(data, "a.png")
    (found,) = caught.value.faults
    assert (found.file, found.pointer) == ("a.png", "")
    assert found.text
    assert found.right
    return found.code, dict(found.params)


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "TIFF", "WEBP"])
def test_each_kind_is_read(kind: str, tmp_path: Path) -> None:
    file = tmp_path / f"weld.{kind.lower()}"
    file.write_bytes(packed(halves(), kind))
    picture = load_picture(file)
    assert (picture.name, picture.size, picture.reduced) == (file.name, (60, 40), 1)
    assert picture.pixels[20, 5].tolist() == pytest.approx(RED, abs=8)
    assert picture.pixels[20, 55].tolist() == pytest.approx(GREEN, abs=8)
    assert picture.grey[20, 5] == pytest.approx(0.299 * 204 + 0.114 * 51, abs=6)


@pytest.mark.parametrize(
    ("mode", "kind"),
    [("P", "PNG"), ("CMYK", "JPEG"), ("CMYK", "TIFF"), ("RGBA", "PNG"), ("YCbCr", "JPEG")],
)
def test_each_way_to_write_a_colour_gives_that_colour(mode: str, kind: str) -> None:
    picture = picture_of(packed(halves(mode), kind), "a")
    assert picture.pixels[20, 5].tolist() == pytest.approx(RED, abs=12)
    assert picture.pixels[20, 55].tolist() == pytest.approx(GREEN, abs=12)


@pytest.mark.parametrize("mode", ["1", "L", "LA"])
def test_grey_is_read_as_grey(mode: str) -> None:
    image = Image.new("L", (40, 40), 0)
    image.paste(255, (20, 0, 40, 40))
    picture = picture_of(packed(image.convert(mode), "PNG"), "a")
    assert picture.pixels[5, 5].tolist() == [0, 0, 0]
    assert picture.pixels[5, 35].tolist() == [255, 255, 255]


def test_what_is_clear_is_white() -> None:
    image = Image.new("RGBA", (40, 40), (0, 0, 0, 0))
    assert picture_of(packed(image, "PNG"), "a").pixels[0, 0].tolist() == [255, 255, 255]
    palette = Image.new("P", (40, 40), 3)
    palette.putpalette([0] * 768)
    assert picture_of(packed(palette, "PNG", transparency=3), "a").grey[0, 0] == pytest.approx(255)


@pytest.mark.parametrize("kind", ["PNG", "TIFF"])
def test_sixteen_bits_keep_more_levels_than_eight(kind: str) -> None:
    ramp = np.linspace(1000, 5000, 40 * 600).reshape(40, 600).astype(np.uint16)
    picture = picture_of(packed(Image.fromarray(ramp), kind), "a")
    assert picture.grey.min() == pytest.approx(0.0, abs=0.5)
    assert picture.grey.max() == pytest.approx(255.0, abs=0.5)
    assert len(np.unique(picture.grey)) > 1000
    assert picture.pixels.dtype == np.uint8


def test_floats_are_read_whatever_they_hold() -> None:
    levels = np.full((40, 40), 0.25, np.float32)
    levels[:, 20:] = 0.75
    levels[0, 0], levels[0, 1] = np.nan, np.inf
    picture = picture_of(packed(Image.fromarray(levels, "F"), "TIFF"), "a")
    assert np.isfinite(picture.grey).all()
    assert picture.grey[20, 30] > picture.grey[20, 10]


@pytest.mark.parametrize("turn", range(1, 9))
def test_a_picture_stands_as_its_camera_was_held(turn: int) -> None:
    image = Image.new("RGB", (60, 40), "black")
    image.paste(RED, (0, 0, 30, 20))
    exif = Image.Exif()
    exif[0x0112] = turn
    picture = picture_of(packed(image, "JPEG", exif=exif, quality=95), "a")
    wide = turn < 5
    assert picture.size == ((60, 40) if wide else (40, 60))
    corner = {1: (0, 0), 2: (0, 1), 3: (1, 1), 4: (1, 0), 5: (0, 0), 6: (0, 1), 7: (1, 1),
              8: (1, 0)}[turn]  # fmt: skip
    height, width = picture.grey.shape
    row, column = (height - 8) * corner[0] + 4, (width - 8) * corner[1] + 4
    assert picture.pixels[row, column].tolist() == pytest.approx(RED, abs=20)


def test_of_several_pictures_the_first_is_read() -> None:
    pages = packed(halves(), "TIFF", save_all=True, append_images=[Image.new("RGB", (60, 40))])
    assert picture_of(pages, "a").pixels[20, 5].tolist() == pytest.approx(RED, abs=8)


def test_a_large_picture_is_reduced_by_a_whole_factor(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(photo_file, "WORKED_PIXELS", 60 * 40 // 3)
    for mode in ("RGB", "I;16"):
        image = halves() if mode == "RGB" else Image.fromarray(np.full((40, 60), 9, np.uint16))
        picture = picture_of(packed(image, "PNG"), "a")
        assert (picture.reduced, picture.size) == (2, (30, 20))


# What has to be refused


def png_header(width: int, height: int) -> bytes:
    """A PNG whose header promises more than it holds."""
    body = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(
            ">I", zlib.crc32(kind + data)
        )  # fmt: skip

    rest = chunk(b"IDAT", zlib.compress(bytes(64))) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", body) + rest


def test_sixty_thousand_by_sixty_thousand_pixels_are_refused_by_the_header() -> None:
    assert fault(png_header(60_000, 60_000)) == (
        "photo-pixels", {"megapixels": 3600, "at_most": 80},
    )  # fmt: skip
    assert fault(png_header(10_000, 9_000))[0] == "photo-pixels"


def test_a_bomb_that_is_small_on_the_disk_is_refused() -> None:
    bomb = packed(Image.new("1", (20_000, 20_000)), "PNG")
    assert len(bomb) < 200_000
    assert fault(bomb) == ("photo-pixels", {"megapixels": 400, "at_most": 80})


@pytest.mark.parametrize("size", [(40_000, 64), (8, 8), (31, 200)])
def test_a_picture_too_long_or_too_small_is_refused(size: tuple[int, int]) -> None:
    assert fault(png_header(*size))[0] == "photo-sides"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("share", [0.3, 0.6, 0.95])
def test_a_picture_that_is_cut_short_is_refused(kind: str, share: float) -> None:
    noise = np.random.default_rng(1).integers(0, 255, (80, 120, 3), np.uint8)
    whole = packed(Image.fromarray(noise), kind)
    assert fault(whole[: int(share * len(whole))])[0] in {
        "photo-cut", "photo-broken", "photo-kind",
    }  # fmt: skip


def test_a_truncated_jpeg_is_called_cut_short() -> None:
    whole = packed(halves(size=(300, 200)), "JPEG")
    assert fault(whole[: len(whole) // 2])[0] == "photo-cut"


@pytest.mark.parametrize(
    "data", [b"", b"GIF89a", b"\x89PNG\r\n\x1a\n", b"%PDF-1.7", b"<svg/>", b"\xff\xd8\xff"]
)
def test_what_is_no_picture_of_these_kinds_is_refused(data: bytes) -> None:
    assert fault(data)[0] in {"photo-kind", "photo-broken", "photo-cut"}


def test_other_kinds_that_the_library_knows_are_refused() -> None:
    for kind in ("GIF", "BMP", "PPM", "ICO", "TGA"):
        assert fault(packed(halves(), kind))[0] == "photo-kind"


def test_a_file_that_can_not_be_read_says_why(tmp_path: Path) -> None:
    for path, kind in ((tmp_path / "none.png", "missing"), (tmp_path, "folder")):
        with pytest.raises(FileError) as caught:
            load_picture(path)
        assert caught.value.faults[0].params["kind"] == kind
    locked = tmp_path / "locked.png"
    locked.write_bytes(packed(halves(), "PNG"))
    locked.chmod(0)
    if not os.access(locked, os.R_OK):
        with pytest.raises(FileError) as caught:
            load_picture(locked)
        assert caught.value.faults[0].params["kind"] == "forbidden"


def test_a_file_that_is_too_long_is_not_read_to_its_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(photo_file, "LARGEST_PHOTO", 100)
    file = tmp_path / "a.png"
    file.write_bytes(packed(halves(), "PNG"))
    with pytest.raises(FileError) as caught:
        load_picture(file)
    assert caught.value.faults[0].code == "photo-file-large"


def test_too_little_memory_is_said_not_raised(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(image: Image.Image) -> Image.Image:
        raise MemoryError

    monkeypatch.setattr(ImageOps, "exif_transpose", fail)
    assert fault(packed(halves(), "PNG"))[0] == "photo-memory"


WHOLE = [packed(halves(), kind) for kind in ("PNG", "JPEG", "TIFF", "WEBP")]


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(WHOLE),
    st.lists(st.tuples(st.integers(0, 10_000), st.integers(0, 255)), min_size=1, max_size=12),
    st.integers(0, 10_000),
)
def test_damaged_files_are_read_or_refused(
    whole: bytes, changes: list[tuple[int, int]], cut: int
) -> None:
    data = bytearray(whole)
    for at, value in changes:
        data[at % len(data)] = value
    if cut % 3 == 0:
        del data[cut % len(data) :]
    try:
        picture = picture_of(bytes(data), "a")
    except FileError as error:
        told = error.faults
    else:
        told = ()
        assert np.isfinite(picture.grey).all()
    assert all(fault.text and fault.right for fault in told)
