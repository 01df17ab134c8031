"""Which key does what at the four corners."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_TALK: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "\u2192  Space  PgDn"),
        QT_TRANSLATE_NOOP("CornersKeys", "give the talk; on to its next stop"),
        ((_K.Key_Right, "forward"), (_K.Key_Space, "forward"), (_K.Key_PageDown, "forward")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "\u2190  PgUp"),
        QT_TRANSLATE_NOOP("CornersKeys", "back to the stop before"),
        ((_K.Key_Left, "back"), (_K.Key_PageUp, "back")),
    ),
    KeyRow(
        "F11",
        QT_TRANSLATE_NOOP("CornersKeys", "full screen, for a projector"),
        ((_K.Key_F11, "full"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "Esc"),
        QT_TRANSLATE_NOOP("CornersKeys", "end the talk; leave the full screen"),
        ((_K.Key_Escape, "leave"),),
    ),
)

_WELD: Final = (
    KeyRow(
        "[  ]",
        QT_TRANSLATE_NOOP("CornersKeys", "take the next smaller or larger leaf"),
        ((_K.Key_BracketLeft, "leaf before"), (_K.Key_BracketRight, "leaf after")),
    ),
    KeyRow(
        "T",
        QT_TRANSLATE_NOOP("CornersKeys", "turn the leaf over: its tip to the other member"),
        ((_K.Key_T, "over"),),
    ),
    KeyRow(
        "E",
        QT_TRANSLATE_NOOP("CornersKeys", "keep both legs equal, or let them part"),
        ((_K.Key_E, "equal"),),
    ),
    # The handle itself hears these; the screen never sees them.
    KeyRow(
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP(
            "CornersKeys", "on a handle that was clicked: move it 0.1 mm; with Shift 1 mm"
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "Home"),
        QT_TRANSLATE_NOOP("CornersKeys", "start again"),
        ((_K.Key_Home, "again"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "Ctrl+Z"),
        QT_TRANSLATE_NOOP("CornersKeys", "undo"),
        ((_K.Key_Z, "undo"),),
        control=True,
    ),
)

_PICTURES: Final = (
    KeyRow(
        "1  2  3",
        QT_TRANSLATE_NOOP("CornersKeys", "draw legs, inscribed triangle, throats"),
        ((_K.Key_1, "draw legs"), (_K.Key_2, "draw triangle"), (_K.Key_3, "draw throats")),
    ),
    KeyRow(
        "0",
        QT_TRANSLATE_NOOP("CornersKeys", "bring the pictures as close as they may be"),
        ((_K.Key_0, "fit"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "Ctrl+C"),
        QT_TRANSLATE_NOOP("CornersKeys", "copy the picture"),
        ((_K.Key_C, "copy"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("CornersKeys", "Ctrl+S"),
        QT_TRANSLATE_NOOP("CornersKeys", "save the picture for a slide"),
        ((_K.Key_S, "save slide"),),
        control=True,
    ),
)

KEYS: Final = KeyTable(
    "CornersKeys",
    (
        (QT_TRANSLATE_NOOP("CornersKeys", "The talk"), _TALK),
        (QT_TRANSLATE_NOOP("CornersKeys", "Weld and leaf"), _WELD),
        (QT_TRANSLATE_NOOP("CornersKeys", "The pictures"), _PICTURES),
    ),
)
