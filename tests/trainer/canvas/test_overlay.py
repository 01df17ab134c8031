"""Overlays: labels find places of their own, marks are told by shape as well as by colour."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from trainer.canvas.overlay import mark_path, paint_overlays, placed_labels
from trainer.canvas.scene import Area, Dimension, Line, Mark, Overlay, Shape
from trainer.canvas.view import View
from trainer.look.theme import apply
from trainer.look.tokens import LIGHT, ROLES, Theme

VIEW = View((6.0, 4.0), 24.0, (900.0, 640.0))
POINTS = st.tuples(st.floats(-4.0, 16.0), st.floats(-4.0, 12.0))
LABELS = st.sampled_from(["Leg 8 mm", "Daylight 0.3 mm", "Called for 8 mm, both members", "Touch"])
ROLE = st.sampled_from(ROLES)
OVERLAYS = st.one_of(
    st.builds(Mark, at=POINTS, role=ROLE, label=LABELS),
    st.builds(Line, points=st.tuples(POINTS, POINTS), role=ROLE, label=LABELS),
    st.builds(Area, points=st.tuples(POINTS, POINTS, POINTS), role=ROLE, label=LABELS),
    st.builds(
        Dimension, start=POINTS, end=POINTS, role=ROLE, label=LABELS, offset=st.floats(-40.0, 40.0)
    ),
)


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> None:
    apply(qapp, LIGHT)


@settings(max_examples=40)
@given(overlays=st.lists(OVERLAYS, max_size=9).map(tuple))
def test_labels_cover_neither_each_other_nor_what_is_taken(overlays: tuple[Overlay, ...]) -> None:
    taken = (10.0, 10.0, 250.0, 260.0)
    labels = placed_labels(overlays, VIEW, LIGHT, (taken,))
    assert [label.text for label in labels] == [overlay.label for overlay in overlays]
    frame = QRectF(0.0, 0.0, *VIEW.size)
    loupe = QRectF(taken[0], taken[1], taken[2] - taken[0], taken[3] - taken[1])
    for label in labels:
        assert frame.contains(label.rect)
        assert not label.rect.intersects(loupe)
    for first, second in itertools.combinations(labels, 2):
        assert not first.rect.intersects(second.rect)


def test_a_label_leaves_its_own_mark_free() -> None:
    (label,) = placed_labels((Mark((8.0, 0.0), "touch", "Touch"),), VIEW, LIGHT)
    x, y = VIEW.to_screen((8.0, 0.0))
    assert not label.rect.contains(x, y)
    assert abs(label.rect.center().x() - x) < 120.0


def test_unlabelled_overlays_have_no_label() -> None:
    assert placed_labels((Mark((0.0, 0.0), "note"),), VIEW, LIGHT) == ()


def drawn(*overlays: Overlay) -> QImage:
    """The overlays alone on white."""
    image = QImage(900, 640, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_overlays(painter, overlays, VIEW, LIGHT)
    painter.end()
    return image


def test_a_dimension_is_set_off_to_the_left_of_its_way() -> None:
    image = drawn(Dimension((0.0, 0.0), (8.0, 0.0), "", "truth", offset=-30.0))
    x, y = VIEW.to_screen((4.0, 0.0))
    # From the root to the right, left is up; a negative offset lies below the base's face.
    assert image.pixelColor(int(x), int(y) + 30).name() != "#ffffff"
    assert image.pixelColor(int(x), int(y) - 30).name() == "#ffffff"


@pytest.mark.parametrize("role", ROLES)
def test_marks_have_the_colour_of_their_role(role: str) -> None:
    image = drawn(Mark((6.0, 4.0), role))  # type: ignore[arg-type]
    wanted = LIGHT.role(role)  # type: ignore[arg-type]
    near = {image.pixelColor(x, y).name() for x in range(438, 463) for y in range(308, 333)}
    assert wanted in near


def test_states_are_told_by_shape_without_colour() -> None:
    """Source: WCAG 2.2, 1.4.1."""
    shapes: tuple[Shape, ...] = ("disc", "ring", "triangle", "slash", "diamond", "square", "cross")
    pictures = []
    for shape in shapes:
        image = drawn(Mark((6.0, 4.0), "note", shape=shape))
        pictures.append(image.copy(435, 305, 30, 30).convertToFormat(QImage.Format.Format_Mono))
    assert all(a != b for a, b in itertools.combinations(pictures, 2))
    defaults = [
        drawn(Mark((6.0, 4.0), role)) for role in ("touch", "daylight", "held off", "not seated")
    ]
    assert all(a != b for a, b in itertools.combinations(defaults, 2))


@pytest.mark.parametrize(
    "shape", ["disc", "ring", "triangle", "slash", "diamond", "square", "cross"]
)
def test_marks_are_about_the_point(shape: Shape) -> None:
    box = mark_path(shape, 10.0).boundingRect()
    assert box.contains(0.0, 0.0)
    assert 14.0 <= max(box.width(), box.height()) <= 24.0


def test_an_area_is_tinted_inside_and_nowhere_else() -> None:
    image = drawn(Area(((0.0, 0.0), (8.0, 0.0), (0.0, 8.0)), "truth"))
    inside, outside = VIEW.to_screen((2.0, 2.0)), VIEW.to_screen((7.0, 7.0))
    assert image.pixelColor(int(inside[0]), int(inside[1])).name() != "#ffffff"
    assert image.pixelColor(int(outside[0]), int(outside[1])).name() == "#ffffff"


def test_a_dashed_line_has_gaps() -> None:
    whole = drawn(Line(((0.0, 4.0), (12.0, 4.0)), "limit"))
    dashed = drawn(Line(((0.0, 4.0), (12.0, 4.0)), "limit", dashed=True))
    y = int(VIEW.to_screen((0.0, 4.0))[1])
    colour = QColor(LIGHT.role("limit")).name()
    count = [
        sum(image.pixelColor(x, y).name() == colour for x in range(310, 590))
        for image in (whole, dashed)
    ]
    assert count[1] < 0.8 * count[0]


def test_lines_are_heavier_where_the_type_is_larger() -> None:
    """A ring two pixels wide isn't seen from the back of a room."""
    large = replace(LIGHT, text_sizes=tuple((name, 3.0 * size) for name, size in LIGHT.text_sizes))
    line = (Line(((-4.0, 0.0), (4.0, 0.0)), "fault"),)
    view = View((0.0, 0.0), 20.0, (200.0, 100.0))

    def height(theme: Theme) -> int:
        image = QImage(200, 100, QImage.Format.Format_RGB32)
        image.fill(QColor("#e8dcc0"))
        painter = QPainter(image)
        paint_overlays(painter, line, view, theme)
        painter.end()
        column = [image.pixelColor(100, y) for y in range(100)]
        return sum(colour != QColor("#e8dcc0") for colour in column)

    assert height(large) >= 2.5 * height(LIGHT)
