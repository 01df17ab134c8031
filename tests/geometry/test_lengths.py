"""Lengths: what people write, and what they read."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.lengths import MM_PER_INCH, format_length, inch_fraction, parse_length

SIXTEENTHS = st.integers(1, 160)
HUNDREDTHS = st.integers(0, 100_000)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("8 mm", 8.0),
        ("8mm", 8.0),
        ("  6.7 MM ", 6.7),
        ("6,7 mm", 6.7),
        (".5 mm", 0.5),
        ("5. mm", 5.0),
        ("5/16 in", 7.9375),
        ("5/16in", 7.9375),
        ("5 / 16 in.", 7.9375),
        ('1/4"', 6.35),
        ("1/4\u2033", 6.35),
        ("1 inch", 25.4),
        ("2 inches", 50.8),
        ("1 1/4 in", 31.75),
        ("1-1/4 in", 31.75),
        ("0.25 in", 6.35),
        ("1/2 mm", 0.5),
    ],
)
def test_a_length_is_read(text: str, mm: float) -> None:
    assert parse_length(text) == mm


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "mm",
        "8 cm",
        "8 m",
        "-8 mm",
        "+8 mm",
        "8 mm 3",
        "1e3 mm",
        "nan mm",
        "inf mm",
        "1/ in",
        "/16 in",
        "1 0.5 in",
        "1/2/3 in",
        "5/16/ in",
        "\u00bd in",
        "8 mm; 9 mm",
    ],
)
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="right would be"):
        parse_length(text)


def test_a_bare_number_needs_a_unit() -> None:
    with pytest.raises(ValueError, match="has no unit"):
        parse_length("8")
    assert parse_length("8", default_unit="mm") == 8.0
    assert parse_length("5/16", default_unit="in") == 7.9375
    assert parse_length("8 mm", default_unit="in") == 8.0


@pytest.mark.parametrize("text", ["1/0 in", "9" * 400 + " mm"])
def test_a_number_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="right would be"):
        parse_length(text)


@given(SIXTEENTHS)
def test_sixteenths_survive_printing_exactly(parts: int) -> None:
    length = parts * MM_PER_INCH / 16.0
    assert parse_length(format_length(length, "in")) == pytest.approx(length, abs=1e-12)


@given(SIXTEENTHS)
def test_a_fraction_is_in_lowest_terms(parts: int) -> None:
    text = inch_fraction(parts * MM_PER_INCH / 16.0)
    assert text is not None
    assert sum(Fraction(part) for part in text.split()) == Fraction(parts, 16)
    assert all(Fraction(part).denominator <= 16 for part in text.split())
    last = text.split()[-1]
    assert str(Fraction(last)) == last


@given(HUNDREDTHS)
def test_hundredths_of_a_millimetre_survive_printing(parts: int) -> None:
    assert parse_length(format_length(parts / 100.0)) == pytest.approx(parts / 100.0, abs=1e-9)


@given(st.floats(0.0, 1000.0))
def test_printing_in_inches_is_good_to_half_a_thousandth(length: float) -> None:
    back = parse_length(format_length(length, "in"))
    assert abs(back - length) <= 0.0005 * MM_PER_INCH + 1e-6


@pytest.mark.parametrize(
    ("length", "unit", "decimals", "text"),
    [
        (8.0, "mm", None, "8 mm"),
        (8.004, "mm", None, "8 mm"),
        (6.70, "mm", None, "6.7 mm"),
        (0.0, "mm", None, "0 mm"),
        (-0.001, "mm", None, "0 mm"),
        (-0.001, "mm", 2, "0.00 mm"),
        (-0.0001, "in", 3, "0.000 in"),
        (-0.006, "mm", 2, "-0.01 mm"),
        (100.0, "mm", 0, "100 mm"),
        (100.0, "mm", None, "100 mm"),
        (25.4, "in", None, "1 in"),
        (25.4, "in", 3, "1.000 in"),
        (6.7, "in", None, "0.264 in"),
        (31.75, "in", None, "1 1/4 in"),
    ],
)
def test_a_length_is_printed(length: float, unit: str, decimals: int | None, text: str) -> None:
    assert unit in ("mm", "in")
    assert format_length(length, "mm" if unit == "mm" else "in", decimals=decimals) == text


@pytest.mark.parametrize("length", [8.0, 1.0, 7.93, math.inf, math.nan])
def test_what_is_no_sixteenth_is_no_fraction(length: float) -> None:
    assert inch_fraction(length) is None


def test_finer_fractions_can_be_asked_for() -> None:
    assert inch_fraction(MM_PER_INCH / 32.0) is None
    assert inch_fraction(MM_PER_INCH / 32.0, denominator=32) == "1/32"
