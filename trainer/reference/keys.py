"""Which key does what in the reference."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.key_table import KeyGroup

__all__ = ["KEYS", "Key", "key_groups"]


@dataclass(frozen=True, slots=True)
class Key:
    """Keys, as Qt names them, and what they ask for; without a name a widget hears them itself."""

    keys: tuple[str, ...]
    what: str
    name: str = ""
    shown: str = ""


KEYS: Final = (
    Key(
        ("Ctrl+F", "/"),
        QT_TRANSLATE_NOOP("ReferenceKeys", "search: the list follows what is typed"),
        "search",
        "Ctrl+F  /",
    ),
    Key(
        (),
        QT_TRANSLATE_NOOP("ReferenceKeys", "from the search into the list; there along it"),
        shown="\u2191 \u2193",
    ),
    Key(
        (),
        QT_TRANSLATE_NOOP("ReferenceKeys", "in the list: open and shut a rule set"),
        shown="\u2190 \u2192",
    ),
    Key(
        (),
        QT_TRANSLATE_NOOP("ReferenceKeys", "read the entry; there Tab goes from link to link"),
        shown=QT_TRANSLATE_NOOP("ReferenceKeys", "Enter"),
    ),
    Key(
        ("Alt+Left",),
        QT_TRANSLATE_NOOP("ReferenceKeys", "back to the entry before"),
        "back",
        "Alt+\u2190",
    ),
    Key(("Alt+Right",), QT_TRANSLATE_NOOP("ReferenceKeys", "forward again"), "forward",
        "Alt+\u2192"),
    Key(
        ("Ctrl+Shift+C",),
        QT_TRANSLATE_NOOP("ReferenceKeys", "copy the entry; Ctrl+C copies what is selected"),
        "copy",
        "Ctrl+Shift+C",
    ),
    Key(("Ctrl+P",), QT_TRANSLATE_NOOP("ReferenceKeys", "print the entry"), "print", "Ctrl+P"),
    Key(
        ("Esc",),
        QT_TRANSLATE_NOOP("ReferenceKeys", "empty the search; then back to where a link led from"),
        "leave",
        QT_TRANSLATE_NOOP("ReferenceKeys", "Esc"),
    ),
)  # fmt: skip


def key_groups() -> tuple[KeyGroup, ...]:
    """Return the sheet, in the user's language."""

    def told(words: str) -> str:
        return translate("ReferenceKeys", words)

    rows = tuple((told(key.shown), told(key.what)) for key in KEYS)
    return (KeyGroup(translate("ReferenceKeys", "Looking up"), rows),)
