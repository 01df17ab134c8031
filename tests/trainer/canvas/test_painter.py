"""The one painter, looked at through its pixels and its exports."""

from __future__ import annotations

import ast
import io
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize
from PySide6.QtGui import QColor, QImage, QImageWriter, QPageSize, QPainter, QPdfWriter
from PySide6.QtSvg import QSvgGenerator, QSvgRenderer
from PySide6.QtWidgets import QApplication

import trainer.canvas
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.section import Section
from trainer.canvas.drawing import blade_of, drawing_of
from trainer.canvas.loupe import lens_of
from trainer.canvas.painter import paint
from trainer.canvas.scene import Loupe, Mark, Scene, Tether
from trainer.canvas.shapes import Shapes
from trainer.canvas.view import View
from trainer.look.theme import apply
from trainer.look.tokens import DARK, LIGHT, Theme

SIZE = (800.0, 560.0)


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> None:
    apply(qapp, LIGHT)


def view_of(ratio: float = 1.0, scale: float = 24.0) -> View:
    """The corner and an 8 mm leaf at home, in an 800 x 560 picture."""
    return View((10.0, 6.0), scale, SIZE, ratio)


def picture(scene: Scene, view: View) -> QImage:
    """The scene, painted on an image at the view's pixel ratio."""
    image = QImage(
        round(view.size[0] * view.ratio),
        round(view.size[1] * view.ratio),
        QImage.Format.Format_RGB32,
    )
    image.setDevicePixelRatio(view.ratio)
    painter = QPainter(image)
    paint(painter, scene, view)
    painter.end()
    return image


def tone(image: QImage, view: View, point: tuple[float, float]) -> QColor:
    """The colour at a point of the section (mm)."""
    x, y = view.to_screen(point)
    return image.pixelColor(int(x * view.ratio), int(y * view.ratio))


def seated(section: Section, mark: str = "8 mm", **kept: object) -> Scene:
    """A scene with a leg edge at home."""
    scene = Scene(section=section, leaf=leaf_of_mark(mark), pose=Pose(0.0, 0.0), grid=False)
    return replace(scene, **kept)  # type: ignore[arg-type]


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0])
def test_light_shows_through_a_gap_and_through_nothing_else(
    convex: Section, theme: Theme, ratio: float
) -> None:
    view = view_of(ratio)
    image = picture(seated(convex, theme=theme), view)
    gap = tone(image, view, (2.0, 7.2)).lightnessF()
    assert gap > 0.85
    assert gap - tone(image, view, (20.0, 4.0)).lightnessF() > 0.15  # the leaf
    for steel in ((-5.0, 8.0), (20.0, -4.0), (2.0, 2.0)):
        assert tone(image, view, steel).lightnessF() < 0.5
    assert tone(image, view, (21.3, 14.9)).lightnessF() > 0.68  # the hang hole


@pytest.mark.parametrize("shift", [0.0, 0.003, 0.011, 0.017, 0.021])
def test_no_light_leaks_between_faces_that_touch(flat: Section, shift: float) -> None:
    """At any place on the pixel grid, along the flush long edge and between the bodies."""
    view = View((10.0 + shift, 6.0 + shift), 24.0, SIZE)
    image = picture(seated(flat), view)
    for x, top in ((18.0, 0.0), (3.0, 0.0), (-6.0, 0.0)):
        px, py = view.to_screen((x, top))
        column = [image.pixelColor(int(px), int(py) + i).lightnessF() for i in range(-2, 3)]
        assert max(column) < 0.80


@pytest.mark.parametrize("ratio", [1.0, 2.0])
@pytest.mark.parametrize("short", [0.1, 0.2])
def test_a_gap_of_the_eye_limit_can_be_seen_in_the_capped_loupe(short: float, ratio: float) -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0 - short))
    scene = seated(section, loupe=Loupe(), capped=True)
    view = view_of(ratio)
    image = picture(scene, view)
    lens = lens_of(scene, view, Shapes())
    assert lens is not None
    # Just off the upright, where the leaf's tip stands over the toe; the face falls away at 45.
    off = 0.06
    x, y = lens.view.to_screen((off, 8.0))
    left, top = lens.rect.left(), lens.rect.top()
    gap = (short + off) * lens.view.device_scale
    column = [
        image.pixelColor(int((left + x) * ratio), int((top + y) * ratio) + i).lightnessF()
        for i in range(-6, round(gap) + 8)
    ]
    bright = sum(value > 0.85 for value in column)
    # Edges are drawn on the metal's outline, half of them over the light.
    assert gap - 1.0 - 1.5 * ratio <= bright <= gap + 1.0


def test_touch_shows_no_light_in_the_loupe(flat: Section) -> None:
    scene = seated(flat, loupe=Loupe(), capped=True)
    view = view_of()
    image, lens = picture(scene, view), lens_of(scene, view, Shapes())
    assert lens is not None
    x, y = lens.view.to_screen((-0.02, 8.0))
    column = [
        image.pixelColor(int(lens.rect.left() + x), int(lens.rect.top() + y) + i).lightnessF()
        for i in range(-20, 21)
    ]
    assert max(column) < 0.6


def test_hover_lights_the_leaf_and_nothing_else(convex: Section) -> None:
    view = view_of()
    calm = picture(seated(convex), view)
    lit = picture(seated(convex, hover=True), view)
    blade, gap = (19.0, 5.0), (2.0, 7.2)
    assert tone(lit, view, blade).lightnessF() > tone(calm, view, blade).lightnessF() + 0.03
    assert tone(lit, view, gap) == tone(calm, view, gap)
    assert tone(lit, view, (-5.0, 5.0)) == tone(calm, view, (-5.0, 5.0))


def test_the_shadow_never_falls_into_a_gap(convex: Section) -> None:
    """What shows in the gap is the same light as without a leaf."""
    view = view_of()
    bare = picture(replace(seated(convex), leaf=None, pose=None), view)
    for held in (False, True):
        image = picture(seated(convex, held=held), view)
        for point in ((1.0, 7.0), (2.0, 7.2), (6.0, 4.4), (10.0, 1.0)):
            assert tone(image, view, point) == tone(bare, view, point)


def test_a_tether_is_drawn_where_the_hand_pulls(convex: Section) -> None:
    view = view_of()
    slack = picture(seated(convex), view)
    pull = picture(seated(convex, tether=Tether((18.0, 8.0), (22.0, 4.0))), view)
    assert tone(pull, view, (20.0, 6.0)) != tone(slack, view, (20.0, 6.0))
    at_rest = picture(seated(convex, tether=Tether((18.0, 8.0), (18.0, 8.0))), view)
    assert at_rest == slack


def test_drawings_and_bodies_are_painted_the_same(section: Section) -> None:
    """The stored first frame and every later one are one picture."""
    view, leaf = view_of(), leaf_of_mark("8 mm", "throat")
    true = Scene(section=section, leaf=leaf, pose=Pose(1.0, 1.5, 4.0), grid=True)
    stored = replace(true, section=drawing_of(section), leaf=blade_of(leaf))
    assert picture(true, view) == picture(stored, view)


def test_the_unit_rules_the_grid(convex: Section) -> None:
    view = view_of()
    mm = picture(seated(convex, grid=True, scale_bar=False), view)
    inch = picture(seated(convex, grid=True, unit="in", scale_bar=False), view)
    none = picture(seated(convex, scale_bar=False), view)
    assert mm != inch
    # Right of the leaf; the lines lie 0.377 mm off those counted from the root.
    at_25_mm, at_1_in = (25.377, 9.55), (25.777, 9.55)
    assert tone(mm, view, at_25_mm) != tone(none, view, at_25_mm)
    assert tone(inch, view, at_25_mm) == tone(none, view, at_25_mm)
    assert tone(inch, view, at_1_in) != tone(none, view, at_1_in)
    assert tone(mm, view, at_1_in) == tone(none, view, at_1_in)


# Exports


def full_scene(section: Section) -> Scene:
    """Everything at once."""
    return seated(
        section,
        grid=True,
        loupe=Loupe(label="Loupe on the tip"),
        overlays=(Mark((8.0, 0.0), "touch", "Toe on the base"),),
    )


def test_png(convex: Section) -> None:
    image = picture(full_scene(convex), view_of(2.0))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    assert QImageWriter(buffer, QByteArray(b"png")).write(image)
    data = bytes(buffer.data().data())
    assert data.startswith(b"\x89PNG")
    again = QImage.fromData(QByteArray(data))
    assert (again.width(), again.height()) == (1600, 1120)
    assert again.pixelColor(10, 1000).lightnessF() < 0.95


def svg_of(scene: Scene, view: View) -> bytes:
    """The scene as SVG."""
    buffer = QBuffer()
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setSize(QSize(round(view.size[0]), round(view.size[1])))
    generator.setViewBox(QRectF(0.0, 0.0, *view.size))
    painter = QPainter(generator)
    paint(painter, scene, view)
    painter.end()
    return bytes(buffer.data().data())


def test_svg(convex: Section) -> None:
    view = view_of()
    data = svg_of(full_scene(convex), view)
    root = ET.fromstring(data)
    assert root.attrib["viewBox"] == "0 0 800 560"
    name = "{http://www.w3.org/2000/svg}"
    texts = {"".join(node.itertext()).strip() for node in root.iter(f"{name}text")}
    assert {"5 mm", "Toe on the base"} <= texts
    assert any(text.startswith("Loupe on the tip") for text in texts)
    # True curves: the face and the arcs of the leaf stay cubics, whatever the scale.
    curved = [node for node in root.iter(f"{name}path") if "C" in node.attrib.get("d", "")]
    assert len(curved) >= 5
    assert len(list(root.iter(f"{name}radialGradient"))) >= 2


def test_svg_shows_the_picture_that_the_screen_shows(convex: Section) -> None:
    view, scene = view_of(), seated(convex)
    image = QImage(800, 560, QImage.Format.Format_RGB32)
    image.fill(QColor("magenta"))
    painter = QPainter(image)
    QSvgRenderer(QByteArray(svg_of(scene, view))).render(painter)
    painter.end()
    screen = picture(scene, view)
    for point in ((2.0, 7.2), (20.0, 4.0), (-5.0, 8.0), (2.0, 2.0), (25.6, 12.4)):
        drawn, seen = tone(image, view, point), tone(screen, view, point)
        assert drawn.lightnessF() == pytest.approx(seen.lightnessF(), abs=0.08)


def test_pdf(convex: Section) -> None:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    writer.setResolution(144)
    painter = QPainter(writer)
    paint(painter, full_scene(convex), view_of())
    painter.end()
    data = bytes(buffer.data().data())
    assert data.startswith(b"%PDF-")
    page = pypdf.PdfReader(io.BytesIO(data)).pages[0]
    text = " ".join(page.extract_text().split())
    assert "5 mm" in text
    assert "Toe on the base" in text
    assert len(page.get_contents().get_data()) > 10_000  # type: ignore[union-attr]


def test_the_painter_s_transform_is_kept(convex: Section) -> None:
    image = QImage(400, 280, QImage.Format.Format_RGB32)
    image.fill(QColor("magenta"))
    painter = QPainter(image)
    painter.scale(0.5, 0.5)
    before = painter.transform()
    paint(painter, seated(convex), view_of())
    assert painter.transform() == before
    painter.end()
    assert image.pixelColor(399, 279).name() != "#ff00ff"


def test_nothing_in_the_canvas_can_know_a_reading() -> None:
    """No module of the canvas imports what tells states, contacts, truths or grades."""
    allowed = {
        "geometry.lengths",
        "geometry.section",
        "geometry.leaf",
        "geometry.pose",
        "geometry.bodies",
        "geometry.curves",
    }
    for path in Path(trainer.canvas.__file__).parent.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            for name in names:
                top = name.split(".")[0]
                assert top != "exercises", path
                if top == "geometry":
                    assert name in allowed, path
                if top == "trainer":
                    known = ("trainer.canvas", "trainer.look", "trainer.assets", "trainer.figures")
                    assert name.startswith(known)
