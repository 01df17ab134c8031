"""Which key does what at the bench."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from trainer.bench.choice import Choice
from trainer.bench.rack import LeafButton
from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS", "KEYS_UNJUDGED", "BenchKeys"]

_K = Qt.Key

_REPEAT: Final = ("move ", "turn left", "turn right", "zoom ", "look ")

_LEAF: Final = (
    KeyRow(
        "\u2190 \u2191 \u2192 \u2193",
        QT_TRANSLATE_NOOP("Keys", "move the leaf 0.1 mm; with Shift 1 mm"),
        (
            (_K.Key_Left, "move left"),
            (_K.Key_Up, "move up"),
            (_K.Key_Right, "move right"),
            (_K.Key_Down, "move down"),
        ),
    ),
    KeyRow(
        ",  .",
        QT_TRANSLATE_NOOP("Keys", "turn it 0.1\u00b0; with Shift 1\u00b0"),
        (
            (_K.Key_Comma, "turn left"),
            (_K.Key_Less, "turn left"),
            (_K.Key_Period, "turn right"),
            (_K.Key_Greater, "turn right"),
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Space"),
        QT_TRANSLATE_NOOP("Keys", "press home"),
        ((_K.Key_Space, "press home"),),
    ),
    KeyRow("F", QT_TRANSLATE_NOOP("Keys", "turn over"), ((_K.Key_F, "turn over"),)),
    KeyRow("E", QT_TRANSLATE_NOOP("Keys", "swap ends"), ((_K.Key_E, "swap ends"),)),
    KeyRow("C", QT_TRANSLATE_NOOP("Keys", "clean the toes"), ((_K.Key_C, "clean toes"),)),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Esc"),
        QT_TRANSLATE_NOOP("Keys", "put the leaf back"),
        ((_K.Key_Escape, "put back"),),
    ),
    KeyRow("Z", QT_TRANSLATE_NOOP("Keys", "undo"), ((_K.Key_Z, "undo"),)),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Ctrl+Z"),
        QT_TRANSLATE_NOOP("Keys", "undo"),
        ((_K.Key_Z, "undo"),),
        control=True,
    ),
    KeyRow(
        "1 \u2013 9",
        QT_TRANSLATE_NOOP("Keys", "take the leaf with that mark; of the inch set, by place"),
        tuple((Qt.Key(_K.Key_1 + at), f"leaf {at + 1}") for at in range(9)),
    ),
    KeyRow(
        "[  ]",
        QT_TRANSLATE_NOOP("Keys", "take the next smaller or larger leaf"),
        ((_K.Key_BracketLeft, "leaf before"), (_K.Key_BracketRight, "leaf after")),
    ),
)

_CALL: Final = (
    KeyRow(
        "X  P  O",
        QT_TRANSLATE_NOOP("Keys", "name the face convex, flat, hollow"),
        ((_K.Key_X, "face convex"), (_K.Key_P, "face flat"), (_K.Key_O, "face concave")),
    ),
    KeyRow(
        "D  T  H  N",
        QT_TRANSLATE_NOOP("Keys", "state daylight, touch, held off, not seated"),
        (
            (_K.Key_D, "state daylight"),
            (_K.Key_T, "state touch"),
            (_K.Key_H, "state held off"),
            (_K.Key_N, "state not seated"),
        ),
    ),
    KeyRow(
        "A  W  B  R",
        QT_TRANSLATE_NOOP("Keys", "call: accept, add weld metal, dress back, refer"),
        (
            (_K.Key_A, "call accept"),
            (_K.Key_W, "call add weld metal"),
            (_K.Key_B, "call dress back"),
            (_K.Key_R, "call refer"),
        ),
    ),
    KeyRow(
        "M",
        QT_TRANSLATE_NOOP("Keys", "state the leaf in hand as the largest that the weld meets"),
        ((_K.Key_M, "size in hand"),),
    ),
    KeyRow("1 \u2013 7", QT_TRANSLATE_NOOP("Keys", "of a placed leaf: say what is wrong with it")),
    KeyRow(
        "S",
        QT_TRANSLATE_NOOP("Keys", "surer by a tenth; with Shift less sure"),
        ((_K.Key_S, "sure"),),
    ),
    KeyRow("U", QT_TRANSLATE_NOOP("Keys", "turn up a bench note"), ((_K.Key_U, "note"),)),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Enter"),
        QT_TRANSLATE_NOOP("Keys", "put the call on record"),
        ((_K.Key_Return, "record"), (_K.Key_Enter, "record")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "PgUp  PgDn"),
        QT_TRANSLATE_NOOP("Keys", "the coupon before or after in the tray"),
        ((_K.Key_PageUp, "coupon before"), (_K.Key_PageDown, "coupon after")),
    ),
)

_PICTURE: Final = (
    KeyRow(
        "+  -  0",
        QT_TRANSLATE_NOOP("Keys", "zoom in, zoom out, fit"),
        (
            (_K.Key_Plus, "zoom in"),
            (_K.Key_Equal, "zoom in"),
            (_K.Key_Minus, "zoom out"),
            (_K.Key_0, "fit"),
        ),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Ctrl+\u2190 \u2191 \u2192 \u2193"),
        QT_TRANSLATE_NOOP("Keys", "look further to that side"),
        (
            (_K.Key_Left, "look left"),
            (_K.Key_Up, "look up"),
            (_K.Key_Right, "look right"),
            (_K.Key_Down, "look down"),
        ),
        control=True,
    ),
    KeyRow("L", QT_TRANSLATE_NOOP("Keys", "loupe on or off"), ((_K.Key_L, "loupe"),)),
)

# The same keys ask for the same by name; the debrief makes its own of it.
_AFTER: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Space"),
        QT_TRANSLATE_NOOP("Keys", "play your handling, or pause"),
        ((_K.Key_Space, "press home"),),
    ),
    KeyRow(
        "\u2190  \u2192",
        QT_TRANSLATE_NOOP("Keys", "one step of it; with Shift one picture"),
        ((_K.Key_Left, "move left"), (_K.Key_Right, "move right")),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Home  End"),
        QT_TRANSLATE_NOOP("Keys", "its beginning or end"),
        ((_K.Key_Home, "start"), (_K.Key_End, "end")),
    ),
    KeyRow(
        ",  .",
        QT_TRANSLATE_NOOP("Keys", "play slower or faster"),
        ((_K.Key_Comma, "turn left"), (_K.Key_Period, "turn right")),
    ),
    KeyRow("S", QT_TRANSLATE_NOOP("Keys", "skip the pauses or not"), ((_K.Key_S, "sure"),)),
    KeyRow(
        "T",
        QT_TRANSLATE_NOOP("Keys", "truth and reasons on or off"),
        ((_K.Key_T, "state touch"),),
    ),
    KeyRow(
        "N",
        QT_TRANSLATE_NOOP("Keys", "the next moment at which something went wrong"),
        ((_K.Key_N, "state not seated"),),
    ),
    KeyRow(
        "H",
        QT_TRANSLATE_NOOP("Keys", "the right handling over the picture, a seat at a time"),
        ((_K.Key_H, "state held off"),),
    ),
    KeyRow(
        "P",
        QT_TRANSLATE_NOOP("Keys", "the photo behind the section, if there is one"),
        ((_K.Key_P, "face flat"),),
    ),
    KeyRow(
        "R", QT_TRANSLATE_NOOP("Keys", "lay the same coupon out again"), ((_K.Key_R, "call refer"),)
    ),
)

_POINTER: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Click"),
        QT_TRANSLATE_NOOP("Keys", "a leaf: take it off the rack; a place: put it there"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Drag"),
        QT_TRANSLATE_NOOP("Keys", "carry the leaf; beside it, shift the picture"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Wheel"),
        QT_TRANSLATE_NOOP("Keys", "turn 5\u00b0; with Shift 0.5\u00b0"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Ctrl+Wheel"), QT_TRANSLATE_NOOP("Keys", "zoom to the pointer")
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Right click"),
        QT_TRANSLATE_NOOP("Keys", "bring that place to the middle"),
    ),
    KeyRow(
        QT_TRANSLATE_NOOP("Keys", "Two fingers"),
        QT_TRANSLATE_NOOP("Keys", "on the leaf: carry and turn it; beside it: zoom and shift"),
    ),
)

_DURING: Final = (
    (QT_TRANSLATE_NOOP("Keys", "Handling the leaf"), _LEAF),
    (QT_TRANSLATE_NOOP("Keys", "The call"), _CALL),
    (QT_TRANSLATE_NOOP("Keys", "The picture"), _PICTURE),
)
_AFTERWARDS: Final = (QT_TRANSLATE_NOOP("Keys", "After a call"), _AFTER)
_BY_POINTER: Final = (QT_TRANSLATE_NOOP("Keys", "Mouse and touch"), _POINTER)

KEYS: Final = KeyTable("Keys", (*_DURING, _AFTERWARDS, _BY_POINTER))
"""The bench's keys. What has a key has a button too, so all of it can be done by single clicks."""

KEYS_UNJUDGED: Final = KeyTable("Keys", (*_DURING, _BY_POINTER))
"""Those that there are where no call is judged, so that no debrief follows."""


def _presses(bench: QObject) -> bool:
    """Press the button that has the focus: whoever went there by Tab means that, and not the call.

    What is chosen already has nothing more to say; there Enter goes on to the record.
    """
    button = QApplication.focusWidget()
    if not isinstance(button, QAbstractButton) or not isinstance(bench, QWidget):
        return False
    if not bench.isAncestorOf(button):
        return False
    if isinstance(button, Choice | LeafButton) and button.isChecked():
        return False
    button.click()
    return True


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
            name = KEYS.name_of(event)
            if name is not None and event.isAutoRepeat() and not name.startswith(_REPEAT):
                # A key held too long must not put the next call on record.
                return True
            if name == "record" and _presses(watched):
                return True
            if name is not None:
                shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
                return self._do(name, shift)
        return False
