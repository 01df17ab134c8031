"""Which key does what where a section is taken from a photo."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_POINTS: Final = (
    # The picture itself hears these.
    KeyRow(
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP(
            "PhotoKeys", "move the chosen point by a pixel, with Shift by 10, with Ctrl by 0.1"
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "Enter"),
        QT_TRANSLATE_NOOP("PhotoKeys", "put a point at the cross that the arrows move"),
    ),
    KeyRow("[  ]", QT_TRANSLATE_NOOP("PhotoKeys", "choose the point before, after")),
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "Delete"),
        QT_TRANSLATE_NOOP("PhotoKeys", "take the chosen point out"),
    ),
    KeyRow(
        "S",
        QT_TRANSLATE_NOOP("PhotoKeys", "points go to the edge nearby, or stay as put"),
        ((_K.Key_S, "snap"),),
    ),
    KeyRow(
        "B  U",
        QT_TRANSLATE_NOOP("PhotoKeys", "mark the base, the upright"),
        ((_K.Key_B, "base"), (_K.Key_U, "upright")),
    ),
)

_PAGE: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "PgUp  PgDn"),
        QT_TRANSLATE_NOOP("PhotoKeys", "the step before, the step after"),
        ((_K.Key_PageUp, "step before"), (_K.Key_PageDown, "step after")),
    ),
    KeyRow(
        "+  \u2212  0",
        QT_TRANSLATE_NOOP("PhotoKeys", "closer, back, the whole picture"),
        (
            (_K.Key_Plus, "closer"),
            (_K.Key_Equal, "closer"),
            (_K.Key_Minus, "back"),
            (_K.Key_0, "fit"),
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "Ctrl+Z  Ctrl+Y"),
        QT_TRANSLATE_NOOP("PhotoKeys", "undo, redo"),
        ((_K.Key_Z, "undo"), (_K.Key_Y, "redo")),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "Ctrl+O"),
        QT_TRANSLATE_NOOP("PhotoKeys", "choose a picture"),
        ((_K.Key_O, "open"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("PhotoKeys", "Esc"),
        QT_TRANSLATE_NOOP("PhotoKeys", "let the point go; back to the shop"),
        ((_K.Key_Escape, "leave"),),
    ),
)

KEYS: Final = KeyTable(
    "PhotoKeys",
    (
        (QT_TRANSLATE_NOOP("PhotoKeys", "Points in the picture"), _POINTS),
        (QT_TRANSLATE_NOOP("PhotoKeys", "From a photo"), _PAGE),
    ),
)
