"""What people type for a value: a length in either unit, an angle, a share, or a sum of such.

A small parser of our own: nothing is evaluated but the four operations on figures. Every length in
it is read by `geometry.lengths`, so ``5/16 in``, ``1 1/4 in``, ``0.25"`` and ``8 mm`` mean what
they mean everywhere else. ``1-1/4 in`` is a mixed number; ``1 - 1/4 in``, with room about the
minus, is a difference. No Qt here.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final, Literal

from geometry.lengths import Unit, parse_length

__all__ = ["LONGEST", "EntryError", "parse_angle", "parse_number", "parse_value"]

LONGEST: Final = 200
"""Characters: a longer entry is a mistake."""

_DEEPEST: Final = 20
_LARGEST: Final = 1e9

Code = Literal[
    "empty", "long", "deep", "end", "sign", "unit", "closing", "zero", "large", "kind", "square"
]
"""What can be wrong with an entry.

``empty``: nothing is there; ``long``, ``deep``: no person means that; ``end``: something is still
to come; ``sign``: that can't stand there; ``unit``: another kind of unit is wanted; ``closing``: a
bracket lacks its other half; ``zero``: divided by zero; ``large``: beyond all measure; ``kind``: a
length where a bare number is wanted, or the other way round; ``square``: a length times a length.
"""


class EntryError(ValueError):
    """An entry that is no value.

    Parameters
    ----------
    code
        What is wrong; words hang on it.
    at
        Where, in characters from the beginning.
    found
        What stands there.
    """

    def __init__(self, code: Code, at: int, found: str = "") -> None:
        self.code: Code = code
        self.at = at
        self.found = found
        super().__init__(f"{code} at {at}: {found!r}")


@dataclass(frozen=True, slots=True)
class _Amount:
    """A figure on the way: `power` 1 for a length in mm, 0 for a bare number."""

    value: float
    power: int
    exact: float | None = None
    """The same in the unit that bare numbers are in, where it was written bare."""


@dataclass(frozen=True, slots=True)
class _Token:
    kind: Literal["amount", "sign", "end"]
    text: str
    at: int
    amount: _Amount | None = None


_LITERAL: Final = re.compile(
    r"(?:\d+(?:\s+|-))?\d+\s*/\s*\d+(?:\s*(?P<a>mm|inch(?:es)?|in\.?|\"|\u2033|\u00b0|deg\.?|%))?"
    r"|(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:\s*(?P<b>mm|inch(?:es)?|in\.?|\"|\u2033|\u00b0|deg\.?|%))?",
    re.IGNORECASE,
)
_DECIMAL: Final = re.compile(r"(?:\d+(?:[.,]\d*)?|[.,]\d+)(?P<a>)(?P<b>)")
_WORD: Final = re.compile(r"[^\W\d_]+|.", re.DOTALL)
_SIGNS: Final = {
    "+": "+", "-": "-", "\u2212": "-", "\u2013": "-", "*": "*", "\u00d7": "*", "\u00b7": "*",
    "/": "/", "\u00f7": "/", ":": "/", "(": "(", ")": ")",
}  # fmt: skip

Reader = Callable[[str, str, int], _Amount]


def parse_value(text: str, unit: Unit) -> float:
    """Return the length that an entry states, mm; it may be below zero.

    Parameters
    ----------
    text
        A length, or a sum, difference, product or quotient of such, with brackets.
    unit
        What a bare number is in.

    Raises
    ------
    EntryError
        If it is none, or beyond all measure.

    Examples
    --------
    >>> round(parse_value("5/16 in - 0.3 mm", "mm"), 4), parse_value("-1/8", "in")
    (7.6375, -3.175)
    >>> parse_value("(8 + 5 mm) / 2", "mm"), parse_value("1-1/4 in", "mm")
    (6.5, 31.75)
    >>> parse_value("8 mm * 2 mm", "mm")
    Traceback (most recent call last):
    trainer.shop.expressions.EntryError: square at 5: '*'
    """

    def read(stated: str, sign: str, at: int) -> _Amount:
        if sign and sign[0] in "\u00b0dD%":
            raise EntryError("unit", at, sign)
        try:
            in_mm = parse_length(stated, default_unit=unit)
        except ValueError as error:
            code: Code = "zero" if re.search(r"/\s*0+\D*$", stated) else "large"
            raise EntryError(code, at, stated) from error
        if sign:
            return _Amount(in_mm, 1)
        return _Amount(in_mm, 0, parse_length(stated, default_unit="mm"))

    per_unit = parse_length("1", default_unit=unit)
    found = _Parser(text, read, per_unit).whole()
    if found.power == 0:
        found = _Amount((found.exact or 0.0) * per_unit, 1)
    return _sound(found.value)


def parse_angle(text: str) -> float:
    """Return the angle that an entry states, degrees.

    Raises
    ------
    EntryError
        If it is none.

    Examples
    --------
    >>> parse_angle("90° - 7.5"), parse_angle("180/2")
    (82.5, 90.0)
    """
    return _sound(_plain(text, ("\u00b0", "deg", "deg.")))


def parse_number(text: str) -> float:
    """Return the bare number that an entry states; a share may be in per cent.

    Raises
    ------
    EntryError
        If it is none.

    Examples
    --------
    >>> parse_number("1/4"), parse_number("30 %"), parse_number("1 - 0.2")
    (0.25, 0.3, 0.8)
    """
    return _sound(_plain(text, ("%",)))


def _plain(text: str, signs: tuple[str, ...]) -> float:
    """A figure of no length: an angle, a share."""

    def read(stated: str, sign: str, at: int) -> _Amount:
        if sign and sign.lower() not in signs:
            raise EntryError("unit", at, sign)
        bare = stated[: len(stated) - len(sign)] if sign else stated
        try:
            value = parse_length(bare, default_unit="mm")
        except ValueError as error:
            code: Code = "zero" if re.search(r"/\s*0+\s*$", bare) else "large"
            raise EntryError(code, at, stated) from error
        if sign == "%":
            value /= 100.0
        return _Amount(value, 0, value)

    return _Parser(text, read, 1.0).whole().exact or 0.0


def _sound(value: float) -> float:
    if not math.isfinite(value) or abs(value) > _LARGEST:
        raise EntryError("large", 0)
    return value + 0.0


class _Parser:
    """Sums of products of signed factors; one pass, no memory of it is kept."""

    def __init__(self, text: str, read: Reader, per_unit: float) -> None:
        if len(text) > LONGEST:
            raise EntryError("long", LONGEST)
        self._read = read
        self._per_unit = per_unit
        self._tokens = self._all(text)
        self._now = next(self._tokens)
        self._depth = 0

    def _all(self, text: str) -> Iterator[_Token]:
        at, before = 0, ""
        while at < len(text):
            if text[at].isspace():
                at += 1
                continue
            literal = _LITERAL.match(text, at)
            if before == "/" and literal is not None and not (literal["a"] or literal["b"]):
                # 8 mm / 4 / 2 is divided twice, not by two.
                literal = _DECIMAL.match(text, at)
            # Digits of other scripts are no figures of ours.
            if literal is not None and literal.group().isascii() | _has_sign(literal):
                unit = literal["a"] or literal["b"] or ""
                amount = self._read(literal.group().strip(), unit, at)
                yield _Token("amount", literal.group(), at, amount)
                at, before = literal.end(), ""
            elif text[at] in _SIGNS:
                before = _SIGNS[text[at]]
                yield _Token("sign", before, at)
                at += 1
            else:
                word = _WORD.match(text, at)
                raise EntryError("sign", at, word.group() if word else text[at])
        while True:
            yield _Token("end", "", len(text))

    def whole(self) -> _Amount:
        """All of it."""
        if self._is_over():
            raise EntryError("empty", 0)
        found = self._sum()
        if not self._is_over():
            code: Code = "closing" if self._now.text == ")" else "sign"
            raise EntryError(code, self._now.at, self._now.text)
        return found

    def _is_over(self) -> bool:
        return self._now.kind == "end"

    def _next(self) -> _Token:
        token, self._now = self._now, next(self._tokens)
        return token

    def _is(self, *signs: str) -> bool:
        return self._now.kind == "sign" and self._now.text in signs

    def _sum(self) -> _Amount:
        found = self._product()
        while self._is("+", "-"):
            sign = self._next()
            other = self._product()
            way = 1.0 if sign.text == "+" else -1.0
            if found.power == other.power == 0:
                bare = (found.exact or 0.0) + way * (other.exact or 0.0)
                found = _Amount(bare * self._per_unit, 0, bare)
            elif found.power in (0, 1) and other.power in (0, 1):
                found = _Amount(found.value + way * other.value, 1)
            else:
                raise EntryError("kind", sign.at, sign.text)
        return found

    def _product(self) -> _Amount:
        found = self._factor()
        while self._is("*", "/"):
            sign = self._next()
            other = self._factor()
            found = (
                self._times(found, other, sign)
                if sign.text == "*"
                else self._over(found, other, sign)
            )
        return found

    def _times(self, one: _Amount, other: _Amount, sign: _Token) -> _Amount:
        if one.power and other.power:
            raise EntryError("square", sign.at, sign.text)
        if one.power or other.power:
            length, number = (one, other) if one.power else (other, one)
            return _Amount(length.value * (number.exact or 0.0), 1)
        bare = (one.exact or 0.0) * (other.exact or 0.0)
        return _Amount(bare * self._per_unit, 0, bare)

    def _over(self, one: _Amount, other: _Amount, sign: _Token) -> _Amount:
        under = other.value if other.power else other.exact or 0.0
        if under == 0.0:
            raise EntryError("zero", sign.at, sign.text)
        if other.power and not one.power:
            raise EntryError("kind", sign.at, sign.text)
        if one.power and not other.power:
            return _Amount(one.value / under, 1)
        bare = (one.value if one.power else one.exact or 0.0) / under
        return _Amount(bare * self._per_unit, 0, bare)

    def _factor(self) -> _Amount:
        self._depth += 1
        if self._depth > _DEEPEST:
            raise EntryError("deep", self._now.at)
        found = self._signed()
        self._depth -= 1
        return found

    def _signed(self) -> _Amount:
        token = self._next()
        if token.amount is not None:
            return token.amount
        if token.text in ("+", "-"):
            found = self._factor()
            way = 1.0 if token.text == "+" else -1.0
            exact = None if found.exact is None else way * found.exact
            return _Amount(way * found.value, found.power, exact)
        if token.text == "(":
            found = self._sum()
            if not self._is(")"):
                raise EntryError("closing", token.at, "(")
            self._next()
            return found
        if token.kind == "end":
            raise EntryError("end", token.at)
        raise EntryError("sign", token.at, token.text)


def _has_sign(literal: re.Match[str]) -> bool:
    """Whether what isn't ASCII in a figure is its unit's sign alone."""
    unit = literal["a"] or literal["b"] or ""
    figure = literal.group()[: len(literal.group()) - len(unit)]
    return all(letter.isascii() or letter.isspace() for letter in figure)
