"""The program's icon: its pictures are as its drawings, and the window shows it. No source."""

from __future__ import annotations

import struct

import pytest
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from trainer.assets import asset
from trainer.look.program_icon import ICO_SIZES, SIZES, drawn, program_icon


def _picture(size: int) -> QImage:
    return QImage(str(asset("icons", "program", f"{size}.png"))).convertToFormat(
        QImage.Format.Format_ARGB32
    )


@pytest.mark.parametrize("size", SIZES)
def test_a_picture_is_as_its_drawing(size: int, qtbot: QtBot) -> None:
    kept, now = bytes(_picture(size).bits()), bytes(drawn(size).bits())
    assert len(kept) == len(now) == 4 * size * size
    # Another release of Qt may smooth an edge a little otherwise.
    assert sum(abs(a - b) for a, b in zip(kept, now, strict=True)) / len(now) < 2.0


def test_every_size_is_offered(qtbot: QtBot) -> None:
    assert [size.width() for size in program_icon().availableSizes()] == list(SIZES)


def test_its_tile_is_seen_on_dark_and_light(qtbot: QtBot) -> None:
    for size in SIZES:
        image = drawn(size)
        assert image.pixelColor(size // 2, size // 2).alpha() == 255
        assert image.pixelColor(0, 0).alpha() < 255
        tones = {image.pixelColor(x, y).lightness() for x in range(size) for y in range(size)}
        assert min(tones) < 90
        assert max(tones) > 200


def test_the_ico_file_holds_its_pictures() -> None:
    data = asset("icons", "program", "toe-and-throat.ico").read_bytes()
    assert struct.unpack_from("<HHH", data) == (0, 1, len(ICO_SIZES))
    for index, size in enumerate(ICO_SIZES):
        side, _, _, _, _, bits, length, at = struct.unpack_from("<BBBBHHII", data, 6 + 16 * index)
        assert (side or 256, bits) == (size, 32)
        assert data[at : at + length] == asset("icons", "program", f"{size}.png").read_bytes()
