"""The whole scene as one picture: four sections with headings and verdicts, on any painter."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final
from xml.sax.saxutils import escape

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPageLayout, QPageSize, QPainter, QPdfWriter
from PySide6.QtSvg import QSvgGenerator

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.canvas.painter import paint
from trainer.corners.card import card_of, paint_card, paint_heading
from trainer.corners.outlines import OutlinePainter
from trainer.corners.placing import Placed, box_of, needed_reach, place, scene_of
from trainer.corners.pressing import Corner, Pressed
from trainer.corners.state import Corners
from trainer.corners.words import angle_word, length_word
from trainer.look.fonts import font
from trainer.look.tokens import Theme

__all__ = ["PRINT", "SLIDE", "Sheet", "Subject", "pdf_bytes", "picture", "svg_bytes"]

_GAP: Final = 12.0
_TITLE: Final = 34.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """Size of a picture: logical pixels, and device pixels to each of them."""

    wide: float
    high: float
    ratio: float

    @property
    def pixels(self) -> QSize:
        """Device pixels."""
        return QSize(round(self.wide * self.ratio), round(self.high * self.ratio))


SLIDE: Final = Sheet(1280.0, 720.0, 1.5)
"""1920 x 1080 pixels."""

PRINT: Final = Sheet(1240.0, 877.0, 2.0)
"""2480 x 1754 pixels: an A4 page's width at 300 dots per inch, and half its height."""


@dataclass(frozen=True, slots=True)
class Subject:
    """What a picture is of, and how it is to look."""

    corners: Pressed
    state: Corners
    unit: Unit
    theme: Theme


def title(subject: Subject) -> str:
    """What stands over the picture: leaf, legs, angle."""
    state, unit = subject.state, subject.unit
    return translate(
        "Corners", "{leaf} leaf \u00b7 legs {base} and {upright} \u00b7 joint {angle}"
    ).format(
        leaf=state.mark,
        base=length_word(state.leg_base, unit),
        upright=length_word(state.leg_upright, unit),
        angle=angle_word(state.angle),
    )


def _rects(sheet: Sheet) -> tuple[QRectF, ...]:
    wide = (sheet.wide - 3.0 * _GAP) / 2.0
    high = (sheet.high - _TITLE - 2.0 * _GAP - _GAP / 2.0) / 2.0
    return tuple(
        QRectF(_GAP + column * (wide + _GAP), _TITLE + _GAP / 2.0 + row * (high + _GAP), wide, high)
        for row in (0, 1)
        for column in (0, 1)
    )


def _placed(subject: Subject, sheet: Sheet) -> tuple[Placed, ...]:
    cards = tuple(card_of(corner, subject.unit) for corner in subject.corners)
    rect = _rects(sheet)[0]
    box = box_of(needed_reach(subject.state), subject.state.angle)
    return place((rect.width(), rect.height()), sheet.ratio, cards, box, subject.theme)


def _paint_title(painter: QPainter, subject: Subject, sheet: Sheet) -> None:
    painter.fillRect(QRectF(0.0, 0.0, sheet.wide, sheet.high), QColor(subject.theme.window))
    painter.setFont(font(subject.theme, "title"))
    painter.setPen(QColor(subject.theme.ink))
    line = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
    painter.drawText(QRectF(_GAP + 4.0, _GAP / 2.0, sheet.wide, _TITLE - 4.0), line, title(subject))


def _paint_corner(painter: QPainter, subject: Subject, corner: Corner, placed: Placed) -> None:
    """Paint one corner from the painter's origin."""
    scene = scene_of(corner, subject.state, placed, subject.unit, subject.theme)
    card = card_of(corner, subject.unit)
    paint(painter, scene, placed.view)
    paint_heading(painter, placed.heading.topLeft(), card.heading, subject.theme)
    paint_card(painter, placed.card, card, subject.theme)


def _paint_sheet(painter: QPainter, subject: Subject, sheet: Sheet) -> None:
    _paint_title(painter, subject, sheet)
    for corner, rect, placed in zip(
        subject.corners, _rects(sheet), _placed(subject, sheet), strict=True
    ):
        painter.save()
        painter.setClipRect(rect)
        painter.translate(rect.topLeft())
        _paint_corner(painter, subject, corner, placed)
        painter.restore()


def picture(subject: Subject, sheet: Sheet) -> QImage:
    """Return the scene as an image of the sheet's device pixels."""
    image = QImage(sheet.pixels, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(sheet.ratio)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _paint_sheet(painter, subject, sheet)
    painter.end()
    if sheet == PRINT:
        image.setDotsPerMeterX(round(300.0 / 0.0254))
        image.setDotsPerMeterY(round(300.0 / 0.0254))
    return image


def pdf_bytes(subject: Subject) -> QByteArray:
    """Return the scene as one page of PDF, A4 wide, its lines and words kept as such."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(title(subject))
    page = QPageSize(
        QSize(round(PRINT.wide * 0.48), round(PRINT.high * 0.48)),
        "A4",
        QPageSize.SizeMatchPolicy.ExactMatch,
    )
    writer.setPageLayout(
        QPageLayout(page, QPageLayout.Orientation.Portrait, QMarginsF(0.0, 0.0, 0.0, 0.0))
    )
    painter = QPainter(writer)
    scale = writer.width() / PRINT.wide
    painter.scale(scale, scale)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _paint_sheet(painter, subject, replace(PRINT, ratio=1.0))
    painter.end()
    buffer.close()
    return data


def _svg(size: tuple[float, float]) -> tuple[QSvgGenerator, QByteArray, QBuffer]:
    data = QByteArray()
    buffer = QBuffer(data)
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setViewBox(QRectF(0.0, 0.0, *size))
    generator.setSize(QSize(round(size[0]), round(size[1])))
    generator.setResolution(96)
    return generator, data, buffer


def _body(svg: str, mark: str) -> str:
    """What stands within an SVG's own element, its gradients' names made its own."""
    inner = svg[svg.index(">", svg.index("<svg")) + 1 : svg.rindex("</svg>")]
    inner = re.sub(r"<(title|desc)>[^<]*</\1>", "", inner)
    return re.sub(r"(?<=[#\"])(gradient\d+)", rf"{mark}\1", inner)


def svg_bytes(subject: Subject) -> bytes:
    """Return the scene as SVG, sized for a slide.

    Qt's SVG painter knows no clip, so each corner is painted by itself, and clipped as a group of
    the whole.
    """
    sheet = replace(SLIDE, ratio=1.0)
    generator, data, buffer = _svg((sheet.wide, sheet.high))
    painter = OutlinePainter(generator)
    _paint_title(painter, subject, sheet)
    painter.end()
    parts = [_body(bytes(data.data()).decode(), "title")]
    buffer.close()
    for index, (corner, rect, placed) in enumerate(
        zip(subject.corners, _rects(sheet), _placed(subject, sheet), strict=True)
    ):
        wide, high = rect.width(), rect.height()
        generator, data, buffer = _svg((wide, high))
        painter = OutlinePainter(generator)
        _paint_corner(painter, subject, corner, placed)
        painter.end()
        body = _body(bytes(data.data()).decode(), f"corner{index}")
        buffer.close()
        parts.append(
            f'<clipPath id="edge{index}"><rect x="0" y="0" width="{wide:g}" height="{high:g}"/>'
            f'</clipPath><g transform="translate({rect.x():g} {rect.y():g})">'
            f'<g clip-path="url(#edge{index})">{body}</g></g>'
        )
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
        f'version="1.1" width="{sheet.wide:g}" height="{sheet.high:g}" '
        f'viewBox="0 0 {sheet.wide:g} {sheet.high:g}"><title>{escape(title(subject))}</title>'
        + "\n".join(parts)
        + "</svg>\n"
    ).encode()
