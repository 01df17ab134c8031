"""A corner's words, painted: its heading, and the card with state, worth and sentence.

The same painting serves the screen and every picture that is saved of it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from geometry.lengths import Unit
from geometry.reading import State
from trainer.bench.words import state_word
from trainer.canvas.light import tint
from trainer.canvas.overlay import mark_path
from trainer.canvas.scene import Shape
from trainer.corners.pressing import Corner
from trainer.corners.verdict import Trust
from trainer.corners.words import gap_word, heading, sentence, trust_word
from trainer.figures import unbroken
from trainer.look.fonts import TextStyle, font
from trainer.look.tokens import Role, Theme

__all__ = [
    "Card",
    "card_of",
    "card_size",
    "heading_size",
    "paint_card",
    "paint_heading",
    "paint_panel",
    "paint_words",
]

_WRAP: Final = int(
    Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
)
_LINE: Final = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)

_ROUNDED: Final = 2.0
"""Logical px of width that a card may lose where it is put."""

_STATE_SHAPES: Final[dict[State, Shape]] = {
    "touch": "disc",
    "daylight": "ring",
    "held off": "triangle",
    "not seated": "slash",
}
_TRUST_ROLES: Final[dict[Trust, Role]] = {
    "honest": "good",
    "half": "note",
    "false comfort": "fault",
    "false alarm": "fault",
    "silent": "not seated",
}


@dataclass(frozen=True, slots=True)
class Card:
    """What a corner's card says."""

    heading: str
    state: State
    state_word: str
    gap: str
    trust: Trust
    trust_word: str
    sentence: str


def card_of(corner: Corner, unit: Unit) -> Card:
    """Return the words of a corner."""
    return Card(
        heading(corner),
        corner.reading.state,
        state_word(corner.reading.state),
        gap_word(corner, unit),
        corner.verdict.trust,
        trust_word(corner.verdict.trust),
        sentence(corner.verdict, unit),
    )


def _pad(theme: Theme) -> float:
    return 0.9 * theme.text_size("body")


@lru_cache(maxsize=32)
def _font(theme: Theme, style: TextStyle) -> QFont:
    return font(theme, style)


@lru_cache(maxsize=32)
def _metrics(theme: Theme, style: TextStyle) -> QFontMetricsF:
    return QFontMetricsF(_font(theme, style))


def _high(theme: Theme, style: TextStyle) -> float:
    return _metrics(theme, style).height()


def _wide(text: str, theme: Theme, style: TextStyle) -> float:
    return _metrics(theme, style).horizontalAdvance(text)


def _sign(theme: Theme) -> float:
    """Radius of the signs beside the words, logical px."""
    return 0.43 * theme.text_size("body")


def _first_line(card: Card, theme: Theme) -> float:
    """Width of state and gap with their sign."""
    gap = _wide(card.gap, theme, "title") + 0.6 * _pad(theme) if card.gap else 0.0
    return 2.0 * _sign(theme) + 0.6 * _pad(theme) + _wide(card.state_word, theme, "title") + gap


def _second_line(card: Card, theme: Theme) -> float:
    return 2.0 * _sign(theme) + 0.6 * _pad(theme) + _wide(card.trust_word, theme, "strong")


def _shares_line(card: Card, theme: Theme, inner: float) -> bool:
    return _first_line(card, theme) + 2.0 * _pad(theme) + _second_line(card, theme) <= inner


@lru_cache(maxsize=64)
def card_size(card: Card, theme: Theme, wide: float) -> float:
    """Return the height (logical px) that a card of width `wide` needs, nothing cut."""
    pad = _pad(theme)
    # On the screen it lies on whole pixels and may be narrower than was asked for.
    inner = wide - 2.0 * pad - _ROUNDED
    text = _metrics(theme, "body").boundingRect(
        QRectF(0.0, 0.0, inner, 1e4), _WRAP, unbroken(card.sentence)
    )
    lines = _high(theme, "title")
    if not _shares_line(card, theme, inner):
        lines += _high(theme, "strong") + 0.15 * pad
    return lines + 0.35 * pad + text.height() + 1.7 * pad


def paint_card(painter: QPainter, rect: QRectF, card: Card, theme: Theme) -> None:
    """Paint a card into `rect`, which is as high as `card_size` says."""
    paint_panel(painter, rect, theme)
    paint_words(painter, rect, card, theme)


def paint_panel(painter: QPainter, rect: QRectF, theme: Theme) -> None:
    """Paint what a card's words stand on."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(tint(theme.outline, 0.6), 1.0))
    painter.setBrush(tint(theme.panel, 0.97))
    painter.drawRoundedRect(rect, theme.radius, theme.radius)


def paint_words(painter: QPainter, rect: QRectF, card: Card, theme: Theme) -> None:
    """Paint a card's words and signs into `rect`."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pad = _pad(theme)
    inner = rect.adjusted(pad, 0.8 * pad, -pad, -0.8 * pad)
    high = _high(theme, "title")
    _paint_state(painter, QRectF(inner.left(), inner.top(), inner.width(), high), card, theme)
    top = inner.top() + high
    if _shares_line(card, theme, inner.width()):
        left = inner.right() - _second_line(card, theme)
        _paint_trust(painter, QRectF(left, inner.top(), inner.width(), high), card, theme)
    else:
        line = _high(theme, "strong")
        top += 0.15 * pad
        _paint_trust(painter, QRectF(inner.left(), top, inner.width(), line), card, theme)
        top += line
    painter.setFont(_font(theme, "body"))
    painter.setPen(QColor(theme.ink))
    text = QRectF(inner.left(), top + 0.35 * pad, inner.width(), inner.bottom() - top + 4.0)
    painter.drawText(text, _WRAP, unbroken(card.sentence))


def _state_colour(card: Card, theme: Theme) -> str:
    false = card.trust in ("false comfort", "false alarm")
    return theme.role("fault" if false else card.state)


def _paint_state(painter: QPainter, line: QRectF, card: Card, theme: Theme) -> None:
    radius, colour = _sign(theme), QColor(_state_colour(card, theme))
    middle = QPointF(line.left() + radius, line.center().y())
    hollow = card.state in ("daylight", "not seated")
    path = mark_path(_STATE_SHAPES[card.state], (0.8 if hollow else 1.0) * radius)
    path.translate(middle)
    if hollow:
        pen = QPen(colour, 0.38 * radius)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.strokePath(path, pen)
    else:
        painter.fillPath(path, colour)
    left = line.left() + 2.0 * radius + 0.6 * _pad(theme)
    painter.setFont(_font(theme, "title"))
    painter.setPen(colour)
    painter.drawText(line.adjusted(left - line.left(), 0.0, 200.0, 0.0), _LINE, card.state_word)
    if card.gap:
        left += _wide(card.state_word, theme, "title") + 0.6 * _pad(theme)
        painter.setPen(QColor(theme.ink))
        painter.drawText(line.adjusted(left - line.left(), 0.0, 200.0, 0.0), _LINE, card.gap)


def _paint_trust(painter: QPainter, line: QRectF, card: Card, theme: Theme) -> None:
    radius, colour = _sign(theme), QColor(theme.role(_TRUST_ROLES[card.trust]))
    pen = QPen(colour, 0.32 * radius)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    middle = QPointF(line.left() + radius, line.center().y())
    painter.strokePath(_trust_path(card.trust, 0.85 * radius).translated(middle), pen)
    left = 2.0 * radius + 0.6 * _pad(theme)
    painter.setFont(_font(theme, "strong"))
    painter.setPen(colour)
    painter.drawText(line.adjusted(left, 0.0, 200.0, 0.0), _LINE, card.trust_word)


def _trust_path(trust: Trust, r: float) -> QPainterPath:
    """A sign for each worth: a tick, a half-filled circle, a warning, a dash."""
    path = QPainterPath()
    if trust == "honest":
        path.moveTo(-r, 0.1 * r)
        path.lineTo(-0.25 * r, 0.8 * r)
        path.lineTo(r, -0.75 * r)
    elif trust == "half":
        path.addEllipse(QPointF(0.0, 0.0), r, r)
        for at in (0.12, 0.42, 0.72):
            half = r * (1.0 - at * at) ** 0.5 * 0.82
            path.moveTo(-at * r, -half)
            path.lineTo(-at * r, half)
    elif trust == "silent":
        path.moveTo(-r, 0.0)
        path.lineTo(r, 0.0)
    else:
        path.moveTo(0.0, -1.05 * r)
        path.lineTo(1.15 * r, 0.95 * r)
        path.lineTo(-1.15 * r, 0.95 * r)
        path.closeSubpath()
        path.moveTo(0.0, -0.3 * r)
        path.lineTo(0.0, 0.2 * r)
        path.moveTo(0.0, 0.6 * r)
        path.lineTo(0.0, 0.62 * r)
    return path


def heading_size(words: str, theme: Theme) -> QSizeF:
    """Return the size of a heading's chip, logical px."""
    pad = _pad(theme)
    return QSizeF(_wide(words, theme, "strong") + 1.8 * pad, _high(theme, "strong") + 0.8 * pad)


def paint_heading(painter: QPainter, at: QPointF, words: str, theme: Theme) -> None:
    """Paint a corner's heading as a chip whose upper left is `at`."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pad = _pad(theme)
    chip = QRectF(at, heading_size(words, theme))
    painter.setPen(QPen(tint(theme.outline, 0.4), 1.0))
    painter.setBrush(tint(theme.panel, 0.96))
    painter.drawRoundedRect(chip, chip.height() / 2.0, chip.height() / 2.0)
    painter.setFont(_font(theme, "strong"))
    painter.setPen(QColor(theme.ink))
    painter.drawText(chip.adjusted(0.9 * pad, 0.0, 20.0, 0.0), _LINE, words)
