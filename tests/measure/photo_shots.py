"""Pictures of the page that takes a section from a photo, and of what becomes of it."""

from __future__ import annotations

import functools
import tempfile
from pathlib import Path
from typing import Any, cast

from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from exercises.intake.photo import outline_of, taken
from exercises.tray import Tray, read_tray
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.intake.rendered import (
    CARD,
    CARD_AT,
    Hand,
    Rendered,
    Shot,
    box_points,
    face_points,
    marked,
    rendered,
    wire_of,
)
from tests.measure.stage import Stage
from trainer.shop.photo.page import PhotoPage
from trainer.shop.photo.state import put, with_sides
from trainer.shop.screen import ShopScreen

__all__ = ["debrief_photo", "photo_check", "photo_straighten", "photo_trace"]

WELD = Section.of(Joint(base_length=52.0, upright_length=28.0), Bead(8.0, 6.7, crown=0.9))


@functools.cache
def shown() -> Rendered:
    """A weld with legs of 8 and 6.7 mm, photographed a little askew."""
    return rendered(WELD, Shot(per_mm=16.0, tilt=(0.1, -0.08), turn=3.0, uneven=0.3, seed=1))


def page_of(on: Stage) -> PhotoPage:
    """The page, shown in the shop."""
    on.frame.show_screen("shop")
    shop = on.frame.make_screen("shop")
    assert isinstance(shop, ShopScreen)
    shop.show_page("photo")
    on.settle()
    page = shop.rooms.currentWidget()
    assert isinstance(page, PhotoPage)
    return page


def opened(on: Stage) -> PhotoPage:
    """The page with a picture that nothing is marked in."""
    page = page_of(on)
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "weld.png"
        Image.fromarray(shown().picture.pixels).save(file)
        before = page.controller.picture
        page.open(file)
        while page.busy or page.controller.picture is before:
            QApplication.processEvents()
    return page


def clicked(page: PhotoPage, points: list[tuple[float, float]]) -> None:
    """Put points as clicks of a hand that is off by up to three pixels do."""
    controller = page.controller
    picture, wire = controller.picture, controller.wire
    assert picture is not None
    assert wire is not None
    for spot in Hand(3.0, 5).clicks(points):
        controller.do(lambda s, at=spot.at: put(s, at, picture, wire, 4.0))  # type: ignore[misc]
    controller.work_out()


def photo_straighten(on: Stage) -> PhotoPage:
    """Four corners of a card, its sides known."""
    page = opened(on)
    clicked(page, shown().at(*box_points(*CARD_AT, *CARD)))
    page.controller.do(lambda s: with_sides(s, "lengths", CARD))
    page.controller.work_out()
    return page


def photo_trace(on: Stage) -> PhotoPage:
    """Both members marked, the face followed."""
    page = photo_straighten(on)
    page.go("members")
    clicked(page, shown().at((11.0, 0.0), (24.0, 0.0), (0.0, 10.0), (0.0, 21.0)))
    page.go("trace")
    clicked(page, shown().at(*face_points(WELD, 4)))
    return page


def photo_check(on: Stage) -> None:
    """The section as it will be taken."""
    photo_trace(on).go("check")


@functools.cache
def _tray() -> Tray:
    """A tray of one coupon that was taken from the picture."""
    marks = marked(shown(), Hand(3.0, 5), straighten=True)
    made = taken(outline_of(marks, wire_of(shown())), shown().picture, keeps=True)
    assert made.backdrop is not None
    coupon = {
        "id": "photo-1",
        "title": "From a photo",
        "joint": {"angle": made.angle},
        "bead": {"trace": [list(point) for point in made.trace]},
        "callout": {"size": 7},
        "backdrop": made.backdrop.as_document(),
    }
    document = {"format": "toe-and-throat/tray", "version": 3, "coupons": [coupon]}
    return read_tray(cast("Any", document))


def debrief_photo(on: Stage) -> None:
    """After a call, the section drawn over the picture that it was taken from."""
    on.bench.open_tray(_tray())
    on.lay_out(0)
    on.key(Qt.Key.Key_7, Qt.Key.Key_Space, Qt.Key.Key_D)
    on.state_call("convex", "add weld metal")
    on.key(Qt.Key.Key_P)
