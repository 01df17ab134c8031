"""A corner's card has room for all of its words, whichever whole pixels it comes to lie on."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from pytestqt.qtbot import QtBot

from trainer.corners.card import Card, card_of, card_size, paint_words
from trainer.corners.pressing import Pressing
from trainer.corners.state import Corners
from trainer.look.tokens import LIGHT

SPARE = 60
"""Logical px below the card in which nothing may be painted."""


def lowest_ink(card: Card, inside: QRectF) -> int:
    """The last row with anything painted."""
    wide, high = round(inside.right()) + 8, round(inside.bottom())
    image = QImage(wide, high, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_words(painter, inside, card, LIGHT)
    painter.end()
    rows = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), -1)
    return int(np.flatnonzero(rows.any(axis=1))[-1])


@pytest.mark.parametrize("legs", [6.0, 6.4, 8.0])
def test_no_line_of_a_card_is_cut(qtbot: QtBot, legs: float) -> None:
    """A card was measured a little wider than it was painted: its last line was lost."""
    corners = Pressing().corners(Corners(legs, legs))
    cut = []
    for card in (card_of(corner, "mm") for corner in corners):
        for wide in range(200, 360, 2):
            needed = card_size(card, LIGHT, float(wide))
            # As a pane puts it: on whole pixels, half a pixel of outline all around.
            roomy = QRectF(0.5, 0.5, wide - 1.0, needed + SPARE)
            if lowest_ink(card, roomy) >= needed:
                cut.append((card.heading, wide))
    assert not cut
