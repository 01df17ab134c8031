"""Which key does what at the bench."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate

__all__ = ["BenchKeys", "key_list", "name_of_key"]

_K = Qt.Key

_KEYS: Final = {
    _K.Key_Left: "move left",
    _K.Key_Right: "move right",
    _K.Key_Up: "move up",
    _K.Key_Down: "move down",
    _K.Key_Comma: "turn left",
    _K.Key_Less: "turn left",
    _K.Key_Period: "turn right",
    _K.Key_Greater: "turn right",
    _K.Key_Space: "press home",
    _K.Key_F: "turn over",
    _K.Key_E: "swap ends",
    _K.Key_C: "clean toes",
    _K.Key_Escape: "put back",
    _K.Key_Z: "undo",
    _K.Key_Return: "record",
    _K.Key_Enter: "record",
    _K.Key_Plus: "zoom in",
    _K.Key_Equal: "zoom in",
    _K.Key_Minus: "zoom out",
    _K.Key_0: "fit",
    _K.Key_L: "loupe",
    _K.Key_BracketLeft: "leaf before",
    _K.Key_BracketRight: "leaf after",
    _K.Key_D: "state daylight",
    _K.Key_T: "state touch",
    _K.Key_H: "state held off",
    _K.Key_N: "state not seated",
    _K.Key_X: "face convex",
    _K.Key_P: "face flat",
    _K.Key_O: "face concave",
    _K.Key_A: "call accept",
    _K.Key_W: "call add weld metal",
    _K.Key_B: "call dress back",
    _K.Key_R: "call refer",
    _K.Key_S: "sure",
    _K.Key_U: "note",
    _K.Key_PageUp: "coupon before",
    _K.Key_PageDown: "coupon after",
    _K.Key_Home: "start",
    _K.Key_End: "end",
}
_LEAVES: Final = {Qt.Key(_K.Key_1 + at): f"leaf {at + 1}" for at in range(9)}

_REPEAT: Final = ("move ", "turn left", "turn right", "zoom ")

_SAID: Final = (
    (
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP("Keys", "move the leaf 0.1 mm; with Shift 1 mm"),
    ),
    (",  .", QT_TRANSLATE_NOOP("Keys", "turn it 0.1\u00b0; with Shift 1\u00b0")),
    ("Space", QT_TRANSLATE_NOOP("Keys", "press home")),
    ("F", QT_TRANSLATE_NOOP("Keys", "turn over")),
    ("E", QT_TRANSLATE_NOOP("Keys", "swap ends")),
    ("C", QT_TRANSLATE_NOOP("Keys", "clean the toes")),
    ("Esc", QT_TRANSLATE_NOOP("Keys", "put the leaf back")),
    ("Z", QT_TRANSLATE_NOOP("Keys", "undo")),
    (
        "1 \u2013 9",
        QT_TRANSLATE_NOOP("Keys", "take the leaf with that mark; of the inch set, by place"),
    ),
    ("[  ]", QT_TRANSLATE_NOOP("Keys", "take the next smaller or larger leaf")),
    ("D  T  H  N", QT_TRANSLATE_NOOP("Keys", "state daylight, touch, held off, not seated")),
    ("X  P  O", QT_TRANSLATE_NOOP("Keys", "name the face convex, flat, hollow")),
    (
        "A  W  B  R",
        QT_TRANSLATE_NOOP("Keys", "call: accept, add weld metal, dress back, refer"),
    ),
    ("S", QT_TRANSLATE_NOOP("Keys", "surer by a tenth; with Shift less sure")),
    ("U", QT_TRANSLATE_NOOP("Keys", "turn up a bench note")),
    ("Enter", QT_TRANSLATE_NOOP("Keys", "put the call on record")),
    (
        QT_TRANSLATE_NOOP("Keys", "PgUp  PgDn"),
        QT_TRANSLATE_NOOP("Keys", "the coupon before or after in the tray"),
    ),
    ("+  -  0", QT_TRANSLATE_NOOP("Keys", "zoom in, zoom out, fit")),
    ("L", QT_TRANSLATE_NOOP("Keys", "loupe on or off")),
    ("R", QT_TRANSLATE_NOOP("Keys", "after a call: lay the same coupon out again")),
    ("Space", QT_TRANSLATE_NOOP("Keys", "after a call: play your handling, or pause")),
    (
        "\u2190  \u2192",
        QT_TRANSLATE_NOOP("Keys", "after a call: one step of it; with Shift one picture"),
    ),
    (
        QT_TRANSLATE_NOOP("Keys", "Home  End"),
        QT_TRANSLATE_NOOP("Keys", "after a call: its beginning or end"),
    ),
    (",  .", QT_TRANSLATE_NOOP("Keys", "after a call: play slower or faster")),
    ("S", QT_TRANSLATE_NOOP("Keys", "after a call: skip the pauses or not")),
    ("T", QT_TRANSLATE_NOOP("Keys", "after a call: truth and reasons on or off")),
    (
        QT_TRANSLATE_NOOP("Keys", "Wheel"),
        QT_TRANSLATE_NOOP("Keys", "turn 5\u00b0; with Shift 0.5\u00b0"),
    ),
    (QT_TRANSLATE_NOOP("Keys", "Ctrl+Wheel"), QT_TRANSLATE_NOOP("Keys", "zoom to the pointer")),
)


def key_list() -> list[tuple[str, str]]:
    """Keys and what they do, in the user's language, for the help."""
    return [(translate("Keys", key), translate("Keys", what)) for key, what in _SAID]


def name_of_key(event: QKeyEvent) -> str | None:
    """What a key asks for, or None.

    Keys with Ctrl, Alt or Meta belong to the menus; Ctrl+Z alone is the bench's.
    """
    key = Qt.Key(event.key())
    held = event.modifiers() & (
        Qt.KeyboardModifier.ControlModifier
        | Qt.KeyboardModifier.AltModifier
        | Qt.KeyboardModifier.MetaModifier
    )
    if held:
        undo = key == _K.Key_Z and held == Qt.KeyboardModifier.ControlModifier
        return "undo" if undo else None
    return _KEYS.get(key) or _LEAVES.get(key)


class BenchKeys(QObject):
    """Hears every key that no control of the bench wanted for itself.

    Parameters
    ----------
    do
        Called with what the key asks for and whether Shift was held; says whether it was done.
    """

    def __init__(self, do: Callable[[str, bool], bool], parent: QObject) -> None:
        super().__init__(parent)
        self._do = do

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take the keys that mean something here."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            name = name_of_key(event)
            if name is not None and event.isAutoRepeat() and not name.startswith(_REPEAT):
                # A key held too long must not put the next call on record.
                return True
            if name is not None:
                shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
                return self._do(name, shift)
        return False
