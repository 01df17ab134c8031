"""Which key does what in the coupon shop."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_SECTION: Final = (
    # The handles themselves hear these; the screen never sees them.
    KeyRow(
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP(
            "ShopKeys", "on a handle: move it 0.1 mm or 1\u00b0; with Shift 1 mm, with Ctrl 0.01 mm"
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ins  Del"),
        QT_TRANSLATE_NOOP("ShopKeys", "on a point of a traced face: a point more; this one away"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "PgUp  PgDn"),
        QT_TRANSLATE_NOOP("ShopKeys", "there: the point before, the next; else the coupons"),
        ((_K.Key_PageUp, "before"), (_K.Key_PageDown, "after")),
    ),
    KeyRow(
        "+  \u2212  0",
        QT_TRANSLATE_NOOP("ShopKeys", "look closer, look farther, see all of it"),
        (
            (_K.Key_Plus, "closer"),
            (_K.Key_Equal, "closer"),
            (_K.Key_Minus, "back"),
            (_K.Key_0, "fit"),
        ),
    ),
    KeyRow(
        "1  2  3",
        QT_TRANSLATE_NOOP("ShopKeys", "draw legs, inscribed triangle, throats"),
        ((_K.Key_1, "draw legs"), (_K.Key_2, "draw triangle"), (_K.Key_3, "draw throats")),
    ),
    KeyRow(
        "4",
        QT_TRANSLATE_NOOP("ShopKeys", "the photo behind the section, if there is one"),
        ((_K.Key_4, "draw photo"),),
    ),
)

_TRAY: Final = (
    KeyRow(
        "F6",
        QT_TRANSLATE_NOOP("ShopKeys", "go on to the next panel; with Shift back"),
        ((_K.Key_F6, "panel"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Alt+\u2191  Alt+\u2193"),
        QT_TRANSLATE_NOOP("ShopKeys", "in the list: move the coupon up or down"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Del"),
        QT_TRANSLATE_NOOP("ShopKeys", "in the list: delete the coupon"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ctrl+D"),
        QT_TRANSLATE_NOOP("ShopKeys", "duplicate the coupon"),
        ((_K.Key_D, "duplicate"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ctrl+S"),
        QT_TRANSLATE_NOOP("ShopKeys", "save the tray; with Shift under another name"),
        ((_K.Key_S, "save"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ctrl+Z"),
        QT_TRANSLATE_NOOP("ShopKeys", "undo; with Shift do again"),
        ((_K.Key_Z, "undo"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ctrl+Y"),
        QT_TRANSLATE_NOOP("ShopKeys", "do again"),
        ((_K.Key_Y, "redo"),),
        control=True,
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("ShopKeys", "Ctrl+B"),
        QT_TRANSLATE_NOOP("ShopKeys", "try the coupon on the bench"),
        ((_K.Key_B, "try"),),
        control=True,
    ),
)

KEYS: Final = KeyTable(
    "ShopKeys",
    (
        (QT_TRANSLATE_NOOP("ShopKeys", "The section"), _SECTION),
        (QT_TRANSLATE_NOOP("ShopKeys", "The tray"), _TRAY),
    ),
)
