"""What a weld symbol consists of: strokes, fills, circles and words, in heights of its triangle.

No Qt here. x runs along the reference line away from the arrow, y down; the arrow meets the line
at the origin. How the parts stand is told beside each, after the standards' own names:

- *AWS A2.4*: one reference line; arrow side below it, other side above; size left of the symbol as
  a leg, without a letter; length, then pitch centre to centre, right of it.
- *ISO 2553, system A*: a continuous line for the arrow side and a dashed one beside it for the
  other; z or a before the size; pieces, length, and the clear gap in parentheses. The dashed line
  is left out where both sides are welded alike.
- *ISO 2553, system B*: one line as in A2.4; z or a before the size; length and pitch.

Of these the sides, the letters and the order are as secondary literature on both standards has
them. How the number of pieces is stated beside a pitch is not known: it stands in the tail.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from exercises.callout import Callout, Intermittent
from geometry.lengths import Unit
from trainer.figures import length_words

__all__ = [
    "CONVENTIONS",
    "Box",
    "Circle",
    "Convention",
    "Fill",
    "Stroke",
    "Symbol",
    "Word",
    "convention_for",
    "length_text",
    "size_text",
    "symbol_of",
]

Convention = Literal["a2.4", "iso-a", "iso-b"]
CONVENTIONS: Final[tuple[Convention, ...]] = ("a2.4", "iso-a", "iso-b")
"""AWS A2.4; ISO 2553, system A; ISO 2553, system B."""

Vec = tuple[float, float]
Box = tuple[float, float, float, float]
"""Least x, least y, greatest x, greatest y."""

TEXT: Final = 0.92
"""Height of the words over that of the triangle."""

_CHARACTER: Final = 0.62
"""Width that a character takes at most on average, over the height of the words."""

_START: Final = 0.75
_SPACE: Final = 0.28
_SHORTEST: Final = 4.5
_DASHED_OFF: Final = 0.26
_STAGGER: Final = 1.15
_POLE: Final = 1.55
_ROUND: Final = 0.27


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through points; `closed` for an outline."""

    points: tuple[Vec, ...]
    dashed: bool = False
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled outline."""

    points: tuple[Vec, ...]


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle that is not filled."""

    centre: Vec
    radius: float


@dataclass(frozen=True, slots=True)
class Word:
    """A word from its left end, `at` half its height."""

    text: str
    at: Vec

    @property
    def width(self) -> float:
        """What room is kept for it."""
        return _width(self.text)


@dataclass(frozen=True, slots=True)
class Symbol:
    """A whole symbol, and the convention that it follows."""

    convention: Convention
    strokes: tuple[Stroke, ...]
    fills: tuple[Fill, ...]
    circles: tuple[Circle, ...]
    words: tuple[Word, ...]

    @property
    def box(self) -> Box:
        """What it takes up."""
        points = list(self._points())
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return min(xs), min(ys), max(xs), max(ys)

    def _points(self) -> Iterator[Vec]:
        for stroke in self.strokes:
            yield from stroke.points
        for fill in self.fills:
            yield from fill.points
        for circle in self.circles:
            x, y = circle.centre
            yield from ((x - circle.radius, y - circle.radius), (x + circle.radius, y))
        for word in self.words:
            x, y = word.at
            yield from ((x, y - TEXT / 2.0), (x + word.width, y + TEXT / 2.0))


def _width(text: str) -> float:
    return _CHARACTER * TEXT * len(text)


def convention_for(callout: Callout, chosen: Convention | None) -> Convention:
    """Return the convention that a callout is drawn in.

    Unless one is chosen it follows from the drawing's unit. A2.4 states a fillet by its leg alone;
    so a throat is drawn as ISO 2553 has it whatever is chosen: no figure of a drawing is converted.

    Examples
    --------
    >>> convention_for(Callout(7.9375, "leg", "5/16 in"), None)
    'a2.4'
    >>> convention_for(Callout(5.0, "throat", "5 mm"), "a2.4")
    'iso-b'
    """
    wanted: Convention = chosen or ("a2.4" if callout.unit == "in" else "iso-a")
    return "iso-b" if wanted == "a2.4" and callout.measure == "throat" else wanted


def _bare(text: str) -> str:
    """A length without its unit: a symbol leaves that to the drawing."""
    return text.lower().removesuffix("mm").removesuffix("in").strip()


def _number(length: float, unit: Unit) -> str:
    return _bare(length_words(length, unit))


def size_text(callout: Callout, convention: Convention) -> str:
    """Return the size as it stands left of the symbol.

    Examples
    --------
    >>> unequal = Callout(6.0, "leg", "6 mm", upright_size=8.0, upright_text="8 mm")
    >>> [size_text(unequal, convention) for convention in CONVENTIONS]
    ['6\u00d78', 'z6\u00d78', 'z6\u00d78']
    """
    size = _bare(callout.text)
    if callout.unequal:
        size = f"{size}\u00d7{_bare(callout.upright_text)}"
    return size if convention == "a2.4" else f"{callout.prefix}{size}"


def length_text(weld: Intermittent, unit: Unit, convention: Convention) -> str:
    """Return length and pitch, or length and gap, as they stand right of the symbol.

    Examples
    --------
    >>> weld = Intermittent(50.0, 150.0, count=3)
    >>> [length_text(weld, "mm", convention) for convention in CONVENTIONS]
    ['50\u2013150', '3\u00d750 (100)', '50\u2013150']
    """
    length = _number(weld.length, unit)
    if convention != "iso-a":
        return f"{length}\u2013{_number(weld.pitch, unit)}"
    pieces = "" if weld.count is None else f"{weld.count}\u00d7"
    return f"{pieces}{length} ({_number(weld.gap, unit)})"


def symbol_of(callout: Callout, convention: Convention) -> Symbol:
    """Return the symbol of a fillet weld as `convention` draws it.

    Examples
    --------
    >>> symbol = symbol_of(Callout(8.0, "leg", "8 mm"), "iso-a")
    >>> [word.text for word in symbol.words], any(s.dashed for s in symbol.strokes)
    (['z8'], True)
    """
    weld = callout.intermittent
    size = size_text(callout, convention)
    long = length_text(weld, callout.unit, convention) if weld is not None else ""
    at = _START + _width(size) + _SPACE
    sides = ("arrow", "other") if callout.side == "both" else (callout.side,)
    staggered = weld is not None and weld.staggered and len(sides) == 2
    strokes: list[Stroke] = []
    words: list[Word] = []
    end = at
    for side in sides:
        up = (side == "arrow") == (convention == "iso-a")
        level = _level(side, convention, both=len(sides) == 2)
        way = -1.0 if up else 1.0
        # Staggered pieces are drawn so where one line serves both sides.
        off = _STAGGER if staggered and convention != "iso-a" and side == "other" else 0.0
        strokes.append(_triangle(at + off, level, way))
        middle = level + way * 0.6
        words.append(Word(size, (_START + off, middle)))
        end = max(end, at + off + 1.0)
        if long:
            right = at + off + 1.0 + _SPACE
            words.append(Word(long, (right, middle)))
            end = max(end, right + _width(long))
    if staggered and convention == "iso-a":
        strokes.append(_stagger_sign(end + 0.2))
        end += 0.9
    end = max(end + 0.4, _SHORTEST)
    strokes += _lines(end, convention, both=len(sides) == 2)
    tail = _tail_text(callout, convention)
    if tail:
        strokes.append(Stroke(((end + 0.55, -0.55), (end, 0.0), (end + 0.55, 0.55))))
        words.append(Word(tail, (end + 0.62, 0.0)))
    return _marked(callout, Symbol(convention, tuple(strokes), (), (), tuple(words)))


def _level(side: str, convention: Convention, *, both: bool) -> float:
    """The line that a side's symbol stands on."""
    on_dashed = convention == "iso-a" and side == "other" and not both
    return _DASHED_OFF if on_dashed else 0.0


def _triangle(x: float, y: float, way: float) -> Stroke:
    """The fillet: its upright leg always on the left."""
    return Stroke(((x, y), (x, y + way), (x + 1.0, y)), closed=True)


def _stagger_sign(x: float) -> Stroke:
    """The sign for staggered pieces of system A, across the line."""
    return Stroke(((x, -0.75), (x + 0.5, -0.75), (x, 0.75), (x + 0.5, 0.75)))


def _lines(end: float, convention: Convention, *, both: bool) -> list[Stroke]:
    """The reference line, and beside it the dashed one where the convention has it."""
    lines = [Stroke(((0.0, 0.0), (end, 0.0)))]
    if convention == "iso-a" and not both:
        lines.append(Stroke(((0.0, _DASHED_OFF), (end, _DASHED_OFF)), dashed=True))
    return lines


def _tail_text(callout: Callout, convention: Convention) -> str:
    weld = callout.intermittent
    counted = weld is not None and weld.count is not None and convention != "iso-a"
    pieces = f"n = {weld.count}" if weld is not None and counted else ""
    return "; ".join(part for part in (callout.tail, pieces) if part)


def _marked(callout: Callout, symbol: Symbol) -> Symbol:
    """The symbol with its arrow, and the marks where the arrow meets the line."""
    tip = (-0.95, 1.4)
    arrow = Stroke(((0.0, 0.0), tip))
    fills = [Fill((tip, (-0.78, 0.82), (-0.52, 1.0)))]
    circles = [Circle((0.0, 0.0), _ROUND)] if callout.all_around else []
    strokes = [*symbol.strokes, arrow]
    if callout.site:
        strokes.append(Stroke(((0.0, 0.0), (0.0, -_POLE))))
        fills.append(Fill(((0.0, -_POLE), (0.62, -_POLE + 0.27), (0.0, -_POLE + 0.54))))
    return Symbol(symbol.convention, tuple(strokes), tuple(fills), tuple(circles), symbol.words)
