"""Type: the fonts that ship with the trainer, and the styles that screens may use."""

from __future__ import annotations

from functools import cache
from typing import Final, Literal

from PySide6.QtGui import QFont, QFontDatabase

from trainer.assets import asset
from trainer.look.tokens import Theme

__all__ = ["TextStyle", "engraving_font", "font", "load_fonts"]

TextStyle = Literal["caption", "body", "strong", "title"]

_WEIGHTS: Final[dict[str, QFont.Weight]] = {
    "caption": QFont.Weight.Normal,
    "body": QFont.Weight.Normal,
    "strong": QFont.Weight.DemiBold,
    "title": QFont.Weight.DemiBold,
}


@cache
def load_fonts() -> tuple[str, ...]:
    """Make the shipped fonts known to Qt, once; return their families.

    None are returned if they can't be read: then the system's own sans serif stands in.
    """
    families: list[str] = []
    for path in sorted(asset("fonts").glob("*.otf")):
        known = QFontDatabase.addApplicationFont(str(path))
        if known != -1:
            families += QFontDatabase.applicationFontFamilies(known)
    return tuple(dict.fromkeys(families))


def font(theme: Theme, style: TextStyle = "body", *, tabular: bool = False) -> QFont:
    """Return the font of a text style, sized in logical pixels.

    `tabular` sets all figures to one width, for what changes in place or stands in columns. Text
    that may go into a PDF does without: such figures can't be copied out of it.
    """
    result = QFont(list(theme.families))
    result.setStyleHint(QFont.StyleHint.SansSerif)
    result.setPixelSize(round(theme.text_size(style)))
    result.setWeight(_WEIGHTS[style])
    result.setFeature(QFont.Tag("calt"), 0)
    if tabular:
        result.setFeature(QFont.Tag("tnum"), 1)
    return result


def engraving_font(theme: Theme) -> QFont:
    """Return the font of a leaf's mark, 100 units high, to be drawn as outlines."""
    result = QFont(list(theme.families))
    result.setStyleHint(QFont.StyleHint.SansSerif)
    result.setPixelSize(100)
    result.setWeight(QFont.Weight.DemiBold)
    result.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return result
