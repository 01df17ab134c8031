"""Every fault of a picture is said as the core says it, and in Spanish."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from exercises.file_faults import FileError, TrayFault
from exercises.intake.photo_file import picture_of
from exercises.intake.photo_frame import Marks, Spot, frame_of
from geometry.faults import Fault, GeometryError
from tests.exercises.intake.test_photo_file import png_header
from trainer.fault_words import fault_words
from trainer.language import Speech
from trainer.picture_fault_table import CODES

CORE = Path(__file__).resolve().parents[4] / "exercises"
SOURCES = [*sorted((CORE / "intake").glob("photo*.py")), CORE / "backdrop.py"]


@pytest.fixture
def speech(qapp: QApplication) -> Iterator[Speech]:
    before = QLocale()
    speech = Speech(qapp)
    yield speech
    speech.speak("en")
    QLocale.setDefault(before)


def test_every_code_of_the_sources_has_its_words() -> None:
    text = "\n".join(path.read_text(encoding="utf-8") for path in SOURCES)
    stated = set(re.findall(r'"((?:photo|backdrop)-[a-z0-9-]+)"', text))
    assert stated == set(CODES)


def faults() -> list[TrayFault]:
    """Faults of files and of marks."""
    found: list[TrayFault] = []
    for data in (b"", png_header(60_000, 60_000), png_header(8, 8), b"\xff\xd8\xff"):
        try:
            picture_of(data, "a.png")
        except FileError as error:
            found += error.faults
    corners = tuple(Spot(float(x), float(y)) for x, y in ((0, 0), (9, 0), (18, 0), (0, 9)))
    near = (Spot(5.0, 5.0), Spot(6.0, 5.0))
    level = (Spot(0.0, 50.0), Spot(90.0, 50.0))
    slant = (Spot(40.0, 48.0), Spot(90.0, 30.0))
    for marks in (
        Marks(),
        Marks(corners=corners, scale=near, length=1.0),
        Marks(scale=level, length=1.0, base=level, upright=level),
        Marks(scale=level, length=1.0, base=level, upright=slant),
    ):
        try:
            frame_of(marks)
        except GeometryError as error:
            found += [TrayFault.of("", fault) for fault in error.faults]
    return found


def test_in_english_the_words_are_the_core_s(speech: Speech) -> None:
    speech.speak("en")
    listed = faults()
    assert len({fault.code for fault in listed}) >= 9
    assert [fault_words(f) for f in listed] == [(f.text, f.right) for f in listed]


@pytest.mark.parametrize("code", sorted(CODES))
def test_each_is_said_in_spanish(speech: Speech, code: str) -> None:
    speech.speak("es")
    wrong, right = CODES[code][0]
    names = set(re.findall(r"{(\w+)}", wrong + right))
    fault = Fault("", code, wrong, right, dict.fromkeys(names, 7.0))
    said = fault_words(TrayFault.of("", fault))
    assert said[0] != wrong.format(**dict.fromkeys(names, "7")) or code == "backdrop-place"
    assert all(said)
