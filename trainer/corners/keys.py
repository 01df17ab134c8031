"""Which key does what at the four corners."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate

__all__ = ["key_list", "name_of_key"]

_K = Qt.Key

_KEYS: Final = {
    _K.Key_Right: "forward",
    _K.Key_Space: "forward",
    _K.Key_PageDown: "forward",
    _K.Key_Left: "back",
    _K.Key_PageUp: "back",
    _K.Key_Escape: "leave",
    _K.Key_F11: "full",
    _K.Key_T: "over",
    _K.Key_E: "equal",
    _K.Key_1: "draw legs",
    _K.Key_2: "draw triangle",
    _K.Key_3: "draw throats",
    _K.Key_BracketLeft: "leaf before",
    _K.Key_BracketRight: "leaf after",
    _K.Key_0: "fit",
    _K.Key_Home: "again",
}
_WITH_CONTROL: Final = {
    _K.Key_C: "copy",
    _K.Key_S: "save slide",
    _K.Key_Z: "undo",
}

_SAID: Final = (
    ("\u2192  Space  PgDn", QT_TRANSLATE_NOOP("CornersKeys", "give the talk; on to its next stop")),
    ("\u2190  PgUp", QT_TRANSLATE_NOOP("CornersKeys", "back to the stop before")),
    ("F11", QT_TRANSLATE_NOOP("CornersKeys", "full screen, for a projector")),
    ("Esc", QT_TRANSLATE_NOOP("CornersKeys", "end the talk; leave the full screen")),
    ("[  ]", QT_TRANSLATE_NOOP("CornersKeys", "take the next smaller or larger leaf")),
    ("T", QT_TRANSLATE_NOOP("CornersKeys", "turn the leaf over: its tip to the other member")),
    ("E", QT_TRANSLATE_NOOP("CornersKeys", "keep both legs equal, or let them part")),
    ("1  2  3", QT_TRANSLATE_NOOP("CornersKeys", "draw legs, inscribed triangle, throats")),
    (
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP(
            "CornersKeys", "on a handle that was clicked: move it 0.1 mm; with Shift 1 mm"
        ),
    ),
    ("0", QT_TRANSLATE_NOOP("CornersKeys", "bring the pictures as close as they may be")),
    ("Home", QT_TRANSLATE_NOOP("CornersKeys", "start again")),
    ("Ctrl+Z", QT_TRANSLATE_NOOP("CornersKeys", "undo")),
    ("Ctrl+C", QT_TRANSLATE_NOOP("CornersKeys", "copy the picture")),
    ("Ctrl+S", QT_TRANSLATE_NOOP("CornersKeys", "save the picture for a slide")),
)


def name_of_key(event: QKeyEvent) -> str | None:
    """Return what a key asks for, or None."""
    key, modifiers = Qt.Key(event.key()), event.modifiers()
    if modifiers & Qt.KeyboardModifier.ControlModifier:
        return _WITH_CONTROL.get(key)
    if modifiers & (Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier):
        return None
    return _KEYS.get(key)


def key_list() -> list[tuple[str, str]]:
    """Return every key with what it does, in the user's language."""
    return [(key, translate("CornersKeys", words)) for key, words in _SAID]
