"""Pictures for slides and print: sizes, kinds, what they hold, and what happens when they can't be
saved."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QImage

from tests.trainer.corners.conftest import Instructor
from trainer.corners.saving import KINDS, Kind, save_picture

SUFFIX = {"slide": "png", "print": "png", "svg": "svg", "pdf": "pdf"}


def saved(who: Instructor, kind: Kind, folder: Path) -> Path:
    path = folder / f"corners.{SUFFIX[kind]}"
    who.screen.save_to(kind, path)
    return path


def test_a_slide_is_full_hd_and_print_is_a4_wide(instructor: Instructor, tmp_path: Path) -> None:
    slide = QImage(str(saved(instructor, "slide", tmp_path)))
    assert (slide.width(), slide.height()) == (1920, 1080)
    sheet = QImage(str(saved(instructor, "print", tmp_path)))
    # ISO 216: A4 is 210 mm wide; 300 dots an inch.
    assert sheet.width() == round(210.0 / 25.4 * 300.0)
    assert sheet.dotsPerMeterX() == round(300.0 / 0.0254)


def test_print_is_light_in_a_dark_room(instructor: Instructor, tmp_path: Path) -> None:
    frame = instructor.frame
    frame.change_settings(replace(frame.settings, appearance="dark"))
    sheet = QImage(str(saved(instructor, "print", tmp_path)))
    slide = QImage(str(saved(instructor, "slide", tmp_path)))
    assert sheet.pixelColor(2, 2).lightness() > 200
    assert slide.pixelColor(2, 2).lightness() < 60


def test_every_corner_is_in_the_picture(instructor: Instructor, tmp_path: Path) -> None:
    """A change of one corner changes its quarter, and no other."""
    before = QImage(str(saved(instructor, "slide", tmp_path)))
    instructor.screen.controller.set_value("hollow", -1.9, "test")
    after = QImage(str(saved(instructor, "slide", tmp_path)))
    differs = [
        before.copy(x, y, 900, 460) != after.copy(x, y, 900, 460)
        for y in (70, 590)
        for x in (20, 980)
    ]
    assert differs == [False, False, True, True]


def test_svg_is_sound_and_clipped_and_needs_no_font(instructor: Instructor, tmp_path: Path) -> None:
    instructor.screen.do("draw legs")
    text = saved(instructor, "svg", tmp_path).read_text(encoding="utf-8")
    root = ET.fromstring(text)
    names = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(names) == len(set(names))
    used = set(re.findall(r"url\(#([^)]+)\)", text))
    assert used <= set(names)
    assert len([name for name in used if name.startswith("edge")]) == 4
    assert "<text" not in text
    title = root.find("{http://www.w3.org/2000/svg}title")
    assert title is not None
    assert title.text == "8 mm leaf \u00b7 legs 8.0 mm and 8.0 mm \u00b7 joint 90\u00b0"


def test_pdf_is_one_page_with_its_words(instructor: Instructor, tmp_path: Path) -> None:
    (page,) = PdfReader(saved(instructor, "pdf", tmp_path)).pages
    assert float(page.mediabox.width) == pytest.approx(595.0, abs=1.0)
    words = " ".join(page.extract_text().split())
    for part in ("Convex bead", "Hollow bead", "False comfort", "Held off", "Daylight"):
        assert part in words


def test_control_c_copies_a_slide(instructor: Instructor) -> None:
    instructor.key(Qt.Key.Key_C, control=True)
    image = QGuiApplication.clipboard().image()
    assert (image.width(), image.height()) == (1920, 1080)


@pytest.mark.parametrize("kind", KINDS)
def test_a_failure_is_told_and_leaves_nothing_behind(
    instructor: Instructor, tmp_path: Path, kind: Kind
) -> None:
    folder = tmp_path / "gone"
    instructor.screen.save_to(kind, folder / "picture")
    (notice,) = instructor.frame.dialogs
    assert notice.windowTitle() == "The picture could not be saved"
    notice.reject()
    assert not folder.exists()


def test_a_failure_leaves_what_was_there(instructor: Instructor, tmp_path: Path) -> None:
    target = tmp_path / "picture.png"
    target.mkdir()
    with pytest.raises(OSError, match=r"[Dd]irectory"):
        save_picture(instructor.screen.subject, "slide", target)
    assert [path.name for path in tmp_path.iterdir() if path.name != "home"] == ["picture.png"]
