"""A shadow drawn out from a short one looks as the stroked one does. No source."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath

from trainer.canvas.shadow import paint_shadow
from trainer.look.tokens import DARK, LIGHT, Theme

_WIDE, _HIGH = 300, 220
_LEFT, _TOP, _RIGHT, _BOTTOM = 40.3, 30.7, 240.6, 170.1
_CORNERS = {
    "lower left": (_LEFT, _BOTTOM),
    "lower right": (_RIGHT, _BOTTOM),
    "upper left": (_LEFT, _TOP),
    "upper right": (_RIGHT, _TOP),
}


def _back(corner: str) -> QPainterPath:
    x, y = _CORNERS[corner]
    path = QPainterPath()
    path.moveTo(x, _TOP + _BOTTOM - y)
    path.lineTo(x, y)
    path.lineTo(_LEFT + _RIGHT - x, y)
    return path


def _painted(
    back: QPainterPath, theme: Theme, ratio: int, *, held: bool, scaled: bool = False
) -> QImage:
    """`scaled` by one: no pixel lies elsewhere, yet nothing is drawn out."""
    image = QImage(_WIDE * ratio, _HIGH * ratio, QImage.Format.Format_RGB32)
    image.fill(QColor("#e8dcc0"))
    if not scaled:
        image.setDevicePixelRatio(ratio)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if scaled:
        painter.scale(ratio, ratio)
    paint_shadow(painter, back, theme, held=held)
    painter.end()
    return image


def _apart(first: QImage, second: QImage) -> int:
    """The greatest difference of a channel."""
    return max(abs(a - b) for a, b in zip(bytes(first.bits()), bytes(second.bits()), strict=True))


@pytest.mark.parametrize("corner", sorted(_CORNERS))
@pytest.mark.parametrize("held", [False, True])
@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
def test_drawn_out_it_looks_as_stroked(corner: str, held: bool, theme: Theme) -> None:
    back = _back(corner)
    # At twice the pixels a scaled painter strokes what an unscaled one draws out.
    drawn_out = _painted(back, theme, 2, held=held)
    stroked = _painted(back, theme, 2, held=held, scaled=True)
    assert _apart(drawn_out, stroked) <= 4
    bare = _painted(QPainterPath(), theme, 2, held=held)
    assert _apart(drawn_out, bare) > 20


def test_an_edge_aslant_is_stroked() -> None:
    slanted = QPainterPath()
    slanted.moveTo(40.0, 60.0)
    slanted.lineTo(220.0, 40.0)
    slanted.lineTo(235.0, 180.0)
    assert (
        _apart(
            _painted(slanted, LIGHT, 2, held=False),
            _painted(slanted, LIGHT, 2, held=False, scaled=True),
        )
        <= 4
    )
