"""Everything that a window says: what is read on it, and what a screen reader is told."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QGroupBox,
    QLabel,
    QLineEdit,
    QMenu,
    QPlainTextEdit,
    QWidget,
)

from exercises.rules import RULE_SETS
from exercises.tray import Tray
from trainer.canvas.canvas import Canvas

__all__ = ["left_out", "said_by", "tray_words"]

_BRACKETED = re.compile("\u00ab[^\u00ab\u00bb]*\u00bb")
_ALLOWED = re.compile(
    r"Toe & Throat"
    r"|\b(?:hf|hb|sl)-\d+\b"
    r"|\d+ ?(?:mm|in)\b"  # a length with its unit
    r"|(?<![^\W\d_])(?:mm|in)(?![^\W\d_])"  # a unit
    r"|\ba [\d.]+"  # a throat mark
    r"|(?:Shift|Ctrl|Alt|Esc|Tab|Enter|Space|PgUp|PgDn|Home|End|F\d+)\+?(?=[^\w]|$)"
    r"|Espa\u00f1ol|English"  # languages are called as their speakers call them
)
_WORD = re.compile(r"[^\W\d_]{2,}")


def _of_widget(widget: QWidget) -> Iterator[str]:
    yield widget.windowTitle()
    yield widget.toolTip()
    yield widget.accessibleName()
    yield widget.accessibleDescription()
    if isinstance(widget, QLabel | QAbstractButton):
        yield widget.text()
    if isinstance(widget, QLineEdit):
        yield widget.placeholderText()
    if isinstance(widget, QPlainTextEdit):
        yield widget.placeholderText()
    if isinstance(widget, QGroupBox | QMenu):
        yield widget.title()
    if isinstance(widget, QComboBox):
        yield from (widget.itemText(index) for index in range(widget.count()))
    if isinstance(widget, Canvas):
        yield from _labels(widget.scene)


def _labels(value: object) -> Iterator[str]:
    """Yield what a scene has painted or spoken: its labels, parts and actions."""
    for name in ("overlays", "loupe", "parts", "actions"):
        given = getattr(value, name, None)
        for each in given if isinstance(given, tuple) else (given,):
            if is_dataclass(each):
                for field in fields(each):
                    text = getattr(each, field.name)
                    if field.name in ("label", "says", "words") and isinstance(text, str):
                        yield text
                    if field.name == "name" and hasattr(each, "says"):
                        yield str(text)


def said_by(*tops: QWidget) -> list[str]:
    """Return every text of these windows, of all that is in them and of their actions."""
    found: dict[str, None] = {}
    for top in tops:
        for widget in [top, *top.findChildren(QWidget)]:
            found.update(dict.fromkeys(_of_widget(widget)))
        for action in top.findChildren(QAction):
            found.update(dict.fromkeys((action.text(), action.toolTip(), action.statusTip())))
    return [text for text in found if text]


def tray_words(tray: Tray) -> list[str]:
    """Return what a tray and its rules say themselves, in English."""
    texts = [tray.title]
    for coupon in tray.coupons:
        texts += [coupon.title, *coupon.hints, coupon.teaches]
    words = [line for text in texts for line in text.in_language("en").split("\n")]
    for rules in RULE_SETS.values():
        lines = [rules.title, *rules.lines]
        words += [line.in_language("en") for line in lines]
    return sorted((word for word in words if word), key=len, reverse=True)


def left_out(texts: list[str], given: list[str]) -> list[str]:
    """Return the texts that hold words outside brackets which nobody could have translated.

    Examples
    --------
    >>> left_out(["\u00abr\u00e9d\u00bb 8 mm", "red", "\u00abr\u00e9d\u00bb: Gate"], ["Gate"])
    ['red']
    """
    found = []
    for text in texts:
        rest = text
        for words in given:
            rest = rest.replace(words, "")
        before = ""
        while before != rest:
            before, rest = rest, _BRACKETED.sub("", rest)
        if _WORD.search(_ALLOWED.sub("", rest)):
            found.append(text)
    return found
