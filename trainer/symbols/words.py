"""What a drawing calls for, and what its symbol shows, in the user's words."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from exercises.callout import Callout, Intermittent
from geometry.lengths import Unit, inch_fraction
from trainer.figures import figures, length_words
from trainer.symbols.drawn import Convention

__all__ = ["called_for", "convention_word", "marks_word", "symbol_words"]

translate = QCoreApplication.translate


def convention_word(convention: Convention) -> str:
    """A convention by the standard that has it."""
    return {
        "a2.4": translate("Symbols", "AWS A2.4"),
        "iso-a": translate("Symbols", "ISO 2553, system A"),
        "iso-b": translate("Symbols", "ISO 2553, system B"),
    }[convention]


def _nominal(length: float, text: str, unit: Unit) -> str:
    """A nominal length in `unit`; as the drawing states it where that is its own unit."""
    if text.endswith(unit):
        return figures(text)
    if unit == "in" and inch_fraction(length) is None:
        return length_words(length, "in")
    return length_words(length, unit)


def called_for(callout: Callout, unit: Unit) -> str:
    """Return what the drawing asks.

    Examples
    --------
    >>> called_for(Callout(8.0, "leg", "8 mm"), "mm")
    '8 mm leg, both members'
    >>> unequal = Callout(6.0, "leg", "6 mm", upright_size=8.0, upright_text="8 mm")
    >>> called_for(unequal, "mm")
    '6 mm leg on the base, 8 mm on the upright'
    """
    size = _nominal(callout.size, callout.text, unit)
    if callout.measure == "throat":
        text = translate("Symbols", "{size} throat").format(size=size)
    elif callout.unequal and callout.upright_size is not None:
        upright = _nominal(callout.upright_size, callout.upright_text, unit)
        text = translate("Symbols", "{base} leg on the base, {upright} on the upright").format(
            base=size, upright=upright
        )
    else:
        text = translate("Symbols", "{size} leg, both members").format(size=size)
    weld = callout.intermittent
    return text if weld is None else f"{text}; {_pieces(weld, unit)}"


def _pieces(weld: Intermittent, unit: Unit) -> str:
    """A weld in pieces, with both ways of stating how far apart they are."""
    text = (
        translate("Symbols", "pieces {length} long, {pitch} centre to centre ({gap} clear)")
        if weld.count is None
        else translate(
            "Symbols", "{count} pieces {length} long, {pitch} centre to centre ({gap} clear)"
        )
    ).format(
        count=weld.count,
        length=length_words(weld.length, unit),
        pitch=length_words(weld.pitch, unit),
        gap=length_words(weld.gap, unit),
    )
    staggered = translate("Symbols", "staggered")
    return f"{text}, {staggered}" if weld.staggered else text


def marks_word(callout: Callout) -> str:
    """Return what a symbol's marks say beside the size: side, all around, site, tail."""
    said = [
        {
            "arrow": translate("Symbols", "arrow side"),
            "other": translate("Symbols", "other side"),
            "both": translate("Symbols", "both sides"),
        }[callout.side]
    ]
    if callout.all_around:
        said.append(translate("Symbols", "all around"))
    if callout.site:
        said.append(translate("Symbols", "weld on site"))
    if callout.tail:
        said.append(callout.tail)
    return ", ".join(said)


def symbol_words(callout: Callout, convention: Convention, unit: Unit) -> str:
    """Return all that a symbol shows, for who can't see it.

    Examples
    --------
    >>> symbol_words(Callout(8.0, "leg", "8 mm", all_around=True), "iso-a", "mm")
    'Weld symbol, ISO 2553, system A: fillet, 8 mm leg, both members; arrow side, all around'
    """
    return translate("Symbols", "Weld symbol, {standard}: fillet, {asked}; {marks}").format(
        standard=convention_word(convention),
        asked=called_for(callout, unit),
        marks=marks_word(callout),
    )
