"""Outlines out of DXF and SVG against what was drawn; bombs and broken files refused by name."""

from __future__ import annotations

import io
import math
from collections.abc import Callable

import numpy as np
import pytest
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace

from exercises.intake.dxf import read_dxf
from exercises.intake.outline import FLATNESS, Drawing, Outline
from exercises.intake.refusal import IntakeError
from exercises.intake.svg import read_svg
from exercises.intake.units import MM_PER, FileUnit

NAMESPACE = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'


def dxf(draw: Callable[[Modelspace], object], units: int = 4) -> bytes:
    document = new("R2010")
    document.header["$INSUNITS"] = units
    draw(document.modelspace())
    text = io.StringIO()
    document.write(text)
    return text.getvalue().encode()


def svg(inside: str, head: str = 'width="100mm" height="100mm" viewBox="0 0 100 100"') -> bytes:
    return f"<svg {NAMESPACE} {head}>{inside}</svg>".encode()


def off_circle(outline: Outline, middle: tuple[float, float], radius: float) -> float:
    """How far an outline's sides stand off a circle, at their ends and middles."""
    ends = np.vstack([outline.points, outline.points[:1]]) if outline.closed else outline.points
    spots = np.vstack([ends, (ends[1:] + ends[:-1]) / 2.0])
    return float(np.abs(np.hypot(*(spots - np.array(middle)).T) - radius).max())


@pytest.mark.parametrize(
    ("number", "unit"), [(1, "in"), (4, "mm"), (5, "cm"), (6, "m"), (13, "µm"), (0, None)]
)
def test_insunits_are_heard(number: int, unit: FileUnit | None) -> None:
    assert read_dxf(dxf(lambda m: m.add_line((0, 0), (9, 5)), number)).unit == unit


@pytest.mark.parametrize(("number", "unit"), [(4, "mm"), (1, "in")])
def test_an_arc_is_flattened_within_its_tolerance(number: int, unit: FileUnit) -> None:
    drawing = read_dxf(dxf(lambda m: m.add_arc((1, 2), 8, 0, 90), number))
    assert off_circle(drawing.outlines[0], (1, 2), 8) * MM_PER[unit] <= FLATNESS * 1.001


def test_a_bulge_is_an_arc() -> None:
    drawing = read_dxf(dxf(lambda m: m.add_lwpolyline([(0, 0, 1), (4, 0, 0)], format="xyb")))
    assert off_circle(drawing.outlines[0], (2, 0), 2) <= FLATNESS * 1.001


def test_a_spline_is_as_drawn() -> None:
    spots = [(0, 8), (3, 6), (5, 3), (8, 0)]
    kept: list[np.ndarray] = []

    def draw(model: Modelspace) -> None:
        spline = model.add_open_spline(spots)
        kept.append(
            np.array([v.vec2 for v in spline.construction_tool().points(np.linspace(0, 1, 500))])
        )

    points = read_dxf(dxf(draw)).outlines[0].points
    assert max(nearest(points, spot) for spot in kept[0]) <= FLATNESS * 1.01


def nearest(points: np.ndarray, spot: np.ndarray) -> float:
    way = np.diff(points, axis=0)
    share = ((spot - points[:-1]) * way).sum(axis=1) / (way**2).sum(axis=1)
    feet = points[:-1] + way * share.clip(0, 1)[:, None]
    return float(np.hypot(*(feet - spot).T).min())


def test_blocks_are_exploded_turned_scaled_and_mirrored() -> None:
    def draw(model: Modelspace) -> None:
        block = model.doc.blocks.new("CORNER")
        block.add_line((1, 0), (3, 0))
        outer = model.doc.blocks.new("OUTER")
        outer.add_blockref("CORNER", (0, 1))
        model.add_blockref("OUTER", (10, 20), {"rotation": 90, "xscale": 2, "yscale": -1})

    points = read_dxf(dxf(draw)).outlines[0].points
    assert points == pytest.approx(np.array([[11.0, 22.0], [11.0, 26.0]]))


def test_pieces_that_meet_are_one_outline_and_others_are_not() -> None:
    def draw(model: Modelspace) -> None:
        model.add_line((20, 0), (8, 0))
        model.add_arc((0, 0), 8, 0, 90)
        model.add_line((0, 20), (0, 8))
        model.add_line((50, 0), (60, 0))
        model.add_text("weld")

    drawing = read_dxf(dxf(draw), "a.dxf")
    assert [round(one.length, 2) for one in drawing.outlines] == [24.0 + 12.57, 10.0]
    assert "TEXT" in drawing.notes[0].text


def test_what_no_outline_can_come_from_is_refused() -> None:
    bomb = dxf(nested_blocks)
    many = dxf(copied_block)
    for data, code in (
        (b"", "scan-empty"),
        (b"plain words", "drawing-no-dxf"),
        (dxf(lambda m: m.add_text("only")), "drawing-empty"),
        (b"AutoCAD Binary DXF\r\n\x1a\x00", "drawing-binary"),
        (b"AC1032 and so on", "scan-not-text"),
        (bomb, "drawing-too-much"),
        (many, "drawing-too-much"),
    ):
        with pytest.raises(IntakeError) as caught:
            read_dxf(data, "a.dxf")
        assert caught.value.faults[0].code == code
        assert caught.value.faults[0].right


def copied_block(model: Modelspace) -> None:
    """Nine million copies of a line, in one insertion."""
    model.doc.blocks.new("X").add_line((0, 0), (1, 1))
    model.add_blockref("X", (0, 0), {"row_count": 3000, "column_count": 3000})


def nested_blocks(model: Modelspace) -> None:
    """A million lines out of six blocks of ten."""
    block = model.doc.blocks.new("B0")
    block.add_line((0, 0), (1, 1))
    for level in range(1, 7):
        outer = model.doc.blocks.new(f"B{level}")
        for at in range(10):
            outer.add_blockref(f"B{level - 1}", (at, level))
    model.add_blockref("B6", (0, 0))


@pytest.mark.parametrize(
    ("head", "unit", "size"),
    [
        ('width="100mm" height="100mm" viewBox="0 0 100 100"', "mm", 10.0),
        ('width="10cm" height="10cm" viewBox="0 0 1000 1000"', "mm", 1.0),
        ('width="1in" height="1in" viewBox="0 0 254 254"', "mm", 1.0),
        ('width="72pt" viewBox="0 0 254 254"', "mm", 1.0),
        ('width="100mm" height="100mm"', "mm", 10.0 * 25.4 / 96.0),
        ('width="100" height="100"', None, 10.0),
        ('width="100%" viewBox="0 0 5 5"', None, 10.0),
    ],
)
def test_svg_units(head: str, unit: str | None, size: float) -> None:
    drawing = read_svg(svg('<line x1="0" y1="0" x2="10" y2="0"/>', head))
    assert drawing.unit == unit
    assert drawing.outlines[0].length == pytest.approx(size)


def test_svg_shapes_and_curves() -> None:
    circle = read_svg(svg('<circle cx="20" cy="30" r="8"/>')).outlines[0]
    assert circle.closed
    assert off_circle(circle, (20, -30), 8) <= FLATNESS * 1.01
    arc = read_svg(svg('<path d="M0 0A8 8 0 0 1 8 8"/>')).outlines[0]
    assert off_circle(arc, (0, -8), 8) <= FLATNESS * 1.01
    cubic = read_svg(svg('<path d="M0 0C0 5 5 8 8 8"/>')).outlines[0]
    for t in np.linspace(0.0, 1.0, 200):
        weights = np.array([(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3])
        spot = weights @ np.array([[0, 0], [0, -5], [5, -8], [8, -8]])
        assert nearest(cubic.points, spot) <= FLATNESS * 1.01
    kinds = '<rect width="4" height="2"/><polygon points="0,0 5,0 5,5"/><ellipse rx="3" ry="1"/>'
    assert [one.closed for one in read_svg(svg(kinds)).outlines] == [True] * 3


def test_svg_transforms_and_uses() -> None:
    inside = (
        '<defs><path id="p" d="M1 0L3 0"/></defs>'
        '<g transform="translate(10,20) rotate(90)"><use xlink:href="#p" y="1"/></g>'
        '<g style="display:none"><path d="M0 0L50 50"/></g>'
    )
    drawing = read_svg(svg(inside))
    assert len(drawing.outlines) == 1
    assert drawing.outlines[0].points == pytest.approx(np.array([[9.0, -21.0], [9.0, -23.0]]))


LAUGHS = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))
BOMB = f'<!DOCTYPE svg [<!ENTITY l0 "ha">{LAUGHS}]><svg>&l9;</svg>'
OUTSIDE = '<!DOCTYPE s [<!ENTITY x SYSTEM "file:///etc/hosts">]><svg>&x;</svg>'
USES = "".join(
    f'<g id="g{n}">{"".join(f"<use href={chr(34)}#g{n - 1}{chr(34)}/>" for _ in range(10))}</g>'
    for n in range(1, 9)
)

SVG_REFUSED: list[tuple[str, bytes, str]] = [
    ("laughs", BOMB.encode(), "drawing-entities"),
    ("outside", OUTSIDE.encode(), "drawing-entities"),
    ("uses", svg(f'<g id="g0"><path d="M0 0L1 1"/></g>{USES}'), "drawing-too-much"),
    ("a circle of uses", svg('<g id="a"><use href="#a"/></g>'), "drawing-too-much"),
    ("deep", svg("<g>" * 100 + "</g>" * 100), "drawing-too-much"),
    ("a million turns", svg(f'<path d="M0 0{"L1 1" * 30000}"/>'), "drawing-too-much"),
    ("huge curves", svg('<path d="M0 0A9e8 9e8 0 0 1 9e8 9e8"/>' * 9), "drawing-too-much"),
    ("cut short", svg("<path/>")[:-4], "drawing-no-xml"),
    ("a page", b"<html><body/></html>", "drawing-no-svg"),
    ("text only", svg("<text>weld</text>"), "drawing-empty-svg"),
    ("odd encoding", b'<?xml version="1.0" encoding="none-such"?><svg/>', "drawing-xml-encoding"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("data", "code"), [row[1:] for row in SVG_REFUSED], ids=[row[0] for row in SVG_REFUSED]
)
def test_svg_that_is_refused(data: bytes, code: str) -> None:
    with pytest.raises(IntakeError) as caught:
        read_svg(data, "a.svg")
    assert caught.value.faults[0].code == code


def test_the_same_outline_from_both() -> None:
    def draw(model: Modelspace) -> None:
        model.add_lwpolyline([(0, 20), (0, 7), (8, 0), (20, 0)])

    one: Drawing = read_dxf(dxf(draw))
    two: Drawing = read_svg(svg('<polyline points="0,-20 0,-7 8,0 20,0"/>'))
    assert one.outlines[0].points == pytest.approx(two.outlines[0].points)
    assert one.outlines[0].length == pytest.approx(13 + 12 + math.hypot(8, 7))


@pytest.mark.parametrize("module", ["dxf", "svg"])
def test_without_the_extra_it_says_which(module: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(f"exercises.intake.{module}.READS_{module.upper()}", False)
    read = read_dxf if module == "dxf" else read_svg
    with pytest.raises(IntakeError, match=r"toe-and-throat\[drawings\]"):
        read(svg("<path/>"), "a")
