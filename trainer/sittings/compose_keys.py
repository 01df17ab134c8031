"""Which key does what while a sitting is composed."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_K = Qt.Key

_FILE: Final = (
    KeyRow(
        "Ctrl+N", QT_TRANSLATE_NOOP("SittingKeys", "begin a new one"),
        ((_K.Key_N, "new"),), control=True,
    ),
    KeyRow(
        "Ctrl+Shift+O",
        QT_TRANSLATE_NOOP("SittingKeys", "open a sealed one"),
        ((_K.Key_O, "open"),),
        control=True,
    ),
    KeyRow(
        "Ctrl+S",
        QT_TRANSLATE_NOOP("SittingKeys", "seal again; with Shift: another passphrase or file"),
        ((_K.Key_S, "seal again"),),
        control=True,
    ),
    KeyRow(
        "Ctrl+Z  Ctrl+Y",
        QT_TRANSLATE_NOOP("SittingKeys", "undo a step; redo it"),
        ((_K.Key_Z, "undo"), (_K.Key_Y, "redo")),
        control=True,
    ),
    KeyRow(
        "Ctrl+B",
        QT_TRANSLATE_NOOP("SittingKeys", "try the paper that is shown, on no record"),
        ((_K.Key_B, "try"),),
        control=True,
    ),
)  # fmt: skip

_PANES: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("SittingKeys", "Space"),
        QT_TRANSLATE_NOOP("SittingKeys", "in a list: tick what is chosen, or untick it"),
    ),
    KeyRow(
        "T  D",
        QT_TRANSLATE_NOOP("SittingKeys", "coupons from a tray's file; from dice"),
        ((_K.Key_T, "tray"), (_K.Key_D, "dice")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("SittingKeys", "Del"),
        QT_TRANSLATE_NOOP("SittingKeys", "take the chosen part out"),
        ((_K.Key_Delete, "remove"),),
    ),
    KeyRow(
        "1  2  3  4",
        QT_TRANSLATE_NOOP("SittingKeys", "to the coupons, a paper, time and marks, the learners"),
        (
            (_K.Key_1, "coupons"),
            (_K.Key_2, "paper"),
            (_K.Key_3, "terms"),
            (_K.Key_4, "entrants"),
        ),
    ),
)

KEYS: Final = KeyTable(
    "SittingKeys",
    (
        (QT_TRANSLATE_NOOP("SittingKeys", "The sitting"), _FILE),
        (QT_TRANSLATE_NOOP("SittingKeys", "Its parts"), _PANES),
    ),
)
"""The table."""
