"""The picture behind a section: where it lies, how the section is drawn over it, what is broken."""

from __future__ import annotations

import io
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section
from trainer.canvas.backing import paint_backing
from trainer.canvas.painter import paint
from trainer.canvas.scene import Backing, Scene
from trainer.canvas.stills import same_still
from trainer.canvas.view import View
from trainer.look.theme import apply
from trainer.look.tokens import DARK, LIGHT

SECTION = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> None:
    apply(qapp, LIGHT)


def jpeg(size: tuple[int, int] = (200, 160)) -> bytes:
    """Blue to the left of the middle, orange to the right of it."""
    image = Image.new("RGB", size, (20, 40, 200))
    image.paste((240, 140, 20), (size[0] // 2, 0, size[0], size[1]))
    packed = io.BytesIO()
    image.save(packed, "JPEG", quality=95)
    return packed.getvalue()


BACKING = Backing(jpeg(), left=-10.0, top=16.0, mm_per_pixel=0.1)
"""From (-10, 0) to (10, 16) mm; the colours meet at x = 0."""


def painted(scene: Scene, view: View) -> QImage:
    image = QImage(
        round(view.size[0] * view.ratio), round(view.size[1] * view.ratio),
        QImage.Format.Format_RGB32,
    )  # fmt: skip
    image.setDevicePixelRatio(view.ratio)
    painter = QPainter(image)
    paint(painter, scene, view)
    painter.end()
    return image


def colour(image: QImage, view: View, at: tuple[float, float]) -> tuple[int, int, int]:
    x, y = view.to_screen(at)
    found = image.pixelColor(round(x * view.ratio), round(y * view.ratio))
    return found.red(), found.green(), found.blue()


@pytest.mark.parametrize("ratio", [1.0, 2.0])
def test_a_picture_lies_where_it_says(ratio: float) -> None:
    view = View((2.0, 6.0), 20.0, (600.0, 500.0), ratio)
    image = painted(Scene(SECTION, backing=BACKING), view)
    for x in (-9.5, -3.0, -0.2):
        assert colour(image, view, (x, 14.0)) == pytest.approx((20, 40, 200), abs=12)
    for x in (0.4, 5.0, 9.7):
        assert colour(image, view, (x, 14.0)) == pytest.approx((240, 140, 20), abs=12)
    # Outside of it the light table is as ever.
    bare = painted(Scene(SECTION), view)
    assert colour(image, view, (11.0, 10.0)) == colour(bare, view, (11.0, 10.0))


@pytest.mark.parametrize("theme", [LIGHT, DARK])
def test_the_section_is_drawn_through_its_picture(theme: object) -> None:
    view = View((2.0, 6.0), 20.0, (600.0, 500.0))
    image = painted(Scene(SECTION, theme=LIGHT if theme is LIGHT else DARK, backing=BACKING), view)
    # Within the weld the picture is to be seen, a little tinted; the steel's hatching is gone.
    red, green, _ = colour(image, view, (2.0, 2.0))
    assert red > 180
    assert green > 110
    # The weld's edge stands out from it.
    edge = colour(image, view, (8.0, 0.0))
    assert max(abs(a - b) for a, b in zip(edge, (240, 140, 20), strict=True)) > 60


@pytest.mark.parametrize(
    "broken",
    [b"", b"nothing", jpeg()[:100], b"\xff\xd8\xff\xd9"],
    ids=["empty", "text", "cut", "bare"],
)
@pytest.mark.qt_log_ignore("JPEG|jpeg|Empty input")
def test_a_broken_picture_leaves_the_section_as_it_is(broken: bytes) -> None:
    view = View((2.0, 6.0), 20.0, (600.0, 500.0))
    whole = painted(Scene(SECTION), view)
    assert painted(Scene(SECTION, backing=replace(BACKING, jpeg=broken)), view) == whole


def test_a_picture_too_large_to_unpack_is_left_out() -> None:
    noise = np.zeros((5000, 5000), np.uint8)
    packed = io.BytesIO()
    Image.fromarray(noise).save(packed, "JPEG")
    image = QImage(50, 50, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    backing = replace(BACKING, jpeg=packed.getvalue())
    assert not paint_backing(painter, backing, View((0.0, 0.0), 2.0, (50.0, 50.0)))
    painter.end()


def test_another_picture_is_another_still_layer() -> None:
    scene = Scene(SECTION, backing=BACKING)
    assert same_still(scene, replace(scene, backing=BACKING))
    assert not same_still(scene, replace(scene, backing=None))
    assert not same_still(scene, replace(scene, backing=replace(BACKING, left=1.0)))
