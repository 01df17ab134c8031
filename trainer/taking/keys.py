"""Which key does what in a sitting, beside the bench's own."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_SITTING: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("TakingKeys", "PgUp  PgDn"),
        QT_TRANSLATE_NOOP("TakingKeys", "the coupon before or after"),
        ((_K.Key_PageUp, "before"), (_K.Key_PageDown, "after")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("TakingKeys", "Enter"),
        QT_TRANSLATE_NOOP("TakingKeys", "keep the call, and on to the next coupon"),
    ),
    KeyRow(
        "V",
        QT_TRANSLATE_NOOP("TakingKeys", "mark the coupon for review, or no more"),
        ((_K.Key_V, "flag"),),
    ),
    KeyRow(
        "G",
        QT_TRANSLATE_NOOP("TakingKeys", "to the map of coupons; arrows and Enter go to one"),
        ((_K.Key_G, "map"),),
    ),
    KeyRow(
        "Y",
        QT_TRANSLATE_NOOP("TakingKeys", "hide the time, or show it again"),
        ((_K.Key_Y, "time"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("TakingKeys", "Ctrl+H"),
        QT_TRANSLATE_NOOP("TakingKeys", "hand in: first a list of what is unanswered"),
        ((_K.Key_H, "hand in"),),
        control=True,
    ),
    KeyRow(
        "F11",
        QT_TRANSLATE_NOOP("TakingKeys", "the whole screen, or the window again"),
        ((_K.Key_F11, "full screen"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("TakingKeys", "F1"),
        QT_TRANSLATE_NOOP("TakingKeys", "all keys"),
        ((_K.Key_F1, "keys"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("TakingKeys", "Ctrl+Q"),
        QT_TRANSLATE_NOOP("TakingKeys", "leave the sitting: needs the proctor"),
        ((_K.Key_Q, "leave"),),
        control=True,
    ),
)

KEYS: Final = KeyTable("TakingKeys", ((QT_TRANSLATE_NOOP("TakingKeys", "A sitting"), _SITTING),))
"""The table."""
