"""The page alone in a window's frame, and a picture of a known section."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtWidgets import QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.intake.rendered import Rendered, Shot, rendered
from trainer.settings import Settings
from trainer.shop.photo.page import PhotoPage
from trainer.window import WindowFrame

WELD = Section.of(Joint(base_length=52.0, upright_length=28.0), Bead(8.0, 6.7, crown=0.9))


@pytest.fixture(scope="session")
def shown() -> Rendered:
    """A picture of a weld with legs of 8 and 6.7 mm, taken a little askew."""
    return rendered(WELD, Shot(per_mm=14.0, tilt=(0.08, -0.06), turn=3.0, blur=1.0, seed=1))


@pytest.fixture(scope="session")
def file(shown: Rendered, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same in a file."""
    path = tmp_path_factory.mktemp("photo") / "weld.png"
    Image.fromarray(shown.picture.pixels).save(path)
    return path


@pytest.fixture
def page(qtbot: QtBot) -> Iterator[PhotoPage]:
    """The page, shown."""
    window = QMainWindow()
    qtbot.addWidget(window)
    window.resize(1280, 720)
    frame = WindowFrame(window, Settings(), QWidget())
    made: list[PhotoPage] = []

    def make() -> QWidget:
        made.append(PhotoPage(frame))
        return made[0]

    frame.add_screen("photo", "Photo", make)
    window.show()
    frame.show_screen("photo")
    qtbot.waitExposed(window)
    yield made[0]
    window.close()


@pytest.fixture
def opened(page: PhotoPage, file: Path, qtbot: QtBot) -> PhotoPage:
    """The page with the picture open."""
    page.open(file)
    qtbot.waitUntil(lambda: page.controller.picture is not None)
    return page
