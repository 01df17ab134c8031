"""Which key does what where a section is taken from a scan or a drawing."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_HANDLES: Final = (
    # The picture itself hears the arrows.
    KeyRow(
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP(
            "ScanKeys", "move the chosen handle by 0.1 mm, with Shift by 1, with Ctrl by 0.01"
        ),
    ),
    KeyRow(
        "[  ]",
        QT_TRANSLATE_NOOP("ScanKeys", "choose the handle before, after"),
        ((_K.Key_BracketLeft, "before"), (_K.Key_BracketRight, "after")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ScanKeys", "Delete"),
        QT_TRANSLATE_NOOP("ScanKeys", "put the chosen handle back where it was proposed"),
        ((_K.Key_Delete, "put back"), (_K.Key_Backspace, "put back")),
    ),
    KeyRow(
        "X",
        QT_TRANSLATE_NOOP("ScanKeys", "base and upright change places"),
        ((_K.Key_X, "swap"),),
    ),
)

_PAGE: Final = (
    KeyRow(
        "+  \u2212  0",
        QT_TRANSLATE_NOOP("ScanKeys", "closer, back, the whole"),
        (
            (_K.Key_Plus, "closer"),
            (_K.Key_Equal, "closer"),
            (_K.Key_Minus, "back"),
            (_K.Key_0, "fit"),
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ScanKeys", "Ctrl+Z  Ctrl+Y"),
        QT_TRANSLATE_NOOP("ScanKeys", "undo, redo"),
        ((_K.Key_Z, "undo"), (_K.Key_Y, "redo")),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ScanKeys", "Ctrl+O  Ctrl+V"),
        QT_TRANSLATE_NOOP("ScanKeys", "choose a file, paste points"),
        ((_K.Key_O, "open"), (_K.Key_V, "paste")),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ScanKeys", "Esc"),
        QT_TRANSLATE_NOOP("ScanKeys", "back to the shop"),
        ((_K.Key_Escape, "leave"),),
    ),
)

KEYS: Final = KeyTable(
    "ScanKeys",
    (
        (QT_TRANSLATE_NOOP("ScanKeys", "Handles in the plot"), _HANDLES),
        (QT_TRANSLATE_NOOP("ScanKeys", "From a scan or drawing"), _PAGE),
    ),
)
