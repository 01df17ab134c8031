"""Which key does what on the page of the class."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_LEARNERS: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("SittingKeys", "Ins"),
        QT_TRANSLATE_NOOP("SittingKeys", "add a learner"),
        ((_K.Key_Insert, "add"),),
    ),
    KeyRow(
        "Ctrl+V",
        QT_TRANSLATE_NOOP("SittingKeys", "add many, out of what was copied"),
        ((_K.Key_V, "paste"),),
        control=True,
    ),
    KeyRow(
        "F2",
        QT_TRANSLATE_NOOP("SittingKeys", "change the learner that is chosen"),
        ((_K.Key_F2, "change"),),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("SittingKeys", "Del"),
        QT_TRANSLATE_NOOP("SittingKeys", "erase those who are chosen; that is asked first"),
        ((_K.Key_Delete, "erase"),),
    ),
    KeyRow(
        "Ctrl+F",
        QT_TRANSLATE_NOOP("SittingKeys", "find a name or a code"),
        ((_K.Key_F, "find"),),
        control=True,
    ),
)

KEYS: Final = KeyTable("SittingKeys", ((QT_TRANSLATE_NOOP("SittingKeys", "Learners"), _LEARNERS),))
"""The table."""
