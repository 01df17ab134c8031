"""What people type for a value: read as they mean it, or refused with the place and the reason."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.lengths import MM_PER_INCH, Unit, format_length
from trainer.shop.expressions import (
    LONGEST,
    EntryError,
    parse_angle,
    parse_number,
    parse_value,
)

UNITS = st.sampled_from(["mm", "in"])


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("8", "mm", 8.0),
        ("8", "in", 8 * 25.4),
        ("8 mm", "in", 8.0),
        ("5/16", "in", 7.9375),
        ("5/16 in", "mm", 7.9375),
        ("5/16 in - 0.3 mm", "mm", 7.6375),
        ("5/16in-0.3mm", "mm", 7.6375),
        ("5/16 in - 0.3", "mm", 7.6375),
        ("1 1/4 in", "mm", 31.75),
        ("1-1/4 in", "mm", 31.75),
        ("1 - 1/4 in", "in", 19.05),
        ("2 - 1/4 in", "mm", 2.0 - 6.35),
        ('0.25"', "mm", 6.35),
        ("6,5", "mm", 6.5),
        ("\u22120.8", "mm", -0.8),
        ("-(1 + 2 mm)", "mm", -3.0),
        ("--8", "mm", 8.0),
        ("(8 + 5) / 2", "mm", 6.5),
        ("(8 + 5) / 2", "in", 6.5 * 25.4),
        ("16 mm / 2", "in", 8.0),
        ("2 * 5/16 in", "mm", 15.875),
        ("2 \u00d7 4 mm", "mm", 8.0),
        ("3/2", "mm", 1.5),
        ("8 * 0.7", "mm", 5.6),
        ("8 mm / 4 mm", "mm", 2.0),
        ("25.4 mm / 1 in * 3", "in", 3 * 25.4),
        ("8 mm / 4 / 2", "mm", 1.0),
        ("8 / 4 / 2", "mm", 1.0),
        ("8 mm / 1/2 in", "mm", 8 / 12.7),
        (" 8\tmm ", "mm", 8.0),
        ("0", "mm", 0.0),
    ],
)
def test_what_is_meant(text: str, unit: Unit, mm: float) -> None:
    assert parse_value(text, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "code", "at"),
    [
        ("", "empty", 0),
        ("   ", "empty", 0),
        ("8 +", "end", 3),
        ("(8", "closing", 0),
        ("8)", "closing", 1),
        ("8 8", "sign", 2),
        ("eight", "sign", 0),
        ("8 mm + x", "sign", 7),
        ("8 km", "sign", 2),
        ("8 mm * 2 mm", "square", 5),
        ("2 / (8 mm)", "kind", 2),
        ("8 / 0", "zero", 0),
        ("8 mm / (2 - 2)", "zero", 5),
        ("5/0 in", "zero", 0),
        ("1e999", "sign", 1),
        ("nan", "sign", 0),
        ("inf", "sign", 0),
        ("9" * 60, "large", 0),
        ("8" + "*9999999999" * 12, "large", 0),
        ("(" * 30 + "8" + ")" * 30, "deep", 20),
        ("-" * 30 + "8", "deep", 20),
        ("8 " * 120, "long", LONGEST),
        ("8°", "unit", 0),
        ("30 %", "unit", 0),
        ("__import__", "sign", 0),
        ("\u0668 mm", "sign", 0),
    ],
)
def test_what_is_refused(text: str, code: str, at: int) -> None:
    with pytest.raises(EntryError) as caught:
        parse_value(text, "mm")
    assert (caught.value.code, caught.value.at) == (code, at)


def outcome(parse: Callable[[str], float], text: str) -> tuple[float, EntryError | None]:
    try:
        return parse(text), None
    except EntryError as error:
        return 0.0, error


@given(st.text(max_size=LONGEST + 5), UNITS)
def test_any_text_gives_a_length_or_says_where_it_is_none(text: str, unit: Unit) -> None:
    for parse in (lambda t: parse_value(t, unit), parse_angle, parse_number):
        value, error = outcome(parse, text)
        assert math.isfinite(value)
        assert error is None or 0 <= error.at <= len(text)


@given(st.text(alphabet='0123456789 ./-+*()minm°%"\u2212', max_size=40), UNITS)
def test_any_text_of_such_signs(text: str, unit: Unit) -> None:
    value, error = outcome(lambda t: parse_value(t, unit), text)
    assert abs(value) <= 1e9
    assert error is None or 0 <= error.at <= len(text)


@given(st.floats(0.0, 1000.0), UNITS)
def test_what_is_shown_is_read_back(length: float, unit: Unit) -> None:
    shown = format_length(length, unit)
    assert parse_value(shown, unit) == pytest.approx(length, abs=0.0051 if unit == "mm" else 0.013)
    assert parse_value(f"\u2212{shown}", unit) == -parse_value(shown, unit)


def _written(value: float, unit: Unit) -> str:
    return f"{value:.6f} {unit}"


_LENGTH = st.tuples(st.floats(0.0, 500.0), UNITS)


@given(_LENGTH, _LENGTH, st.floats(0.01, 50.0), UNITS)
def test_sums_and_products_are_those_of_arithmetic(
    one: tuple[float, Unit], other: tuple[float, Unit], factor: float, unit: Unit
) -> None:
    """Against plain float arithmetic of the same figures."""

    def mm(each: tuple[float, Unit]) -> float:
        return float(f"{each[0]:.6f}") * (MM_PER_INCH if each[1] == "in" else 1.0)

    a, b, n = _written(*one), _written(*other), float(f"{factor:.6f}")
    assert parse_value(f"{a} + {b}", unit) == pytest.approx(
        mm(one) + mm(other), rel=1e-12, abs=1e-9
    )
    assert parse_value(f"{a} - {b}", unit) == pytest.approx(
        mm(one) - mm(other), rel=1e-12, abs=1e-9
    )
    assert parse_value(f"{a} - ({a} - {b})", unit) == pytest.approx(mm(other), rel=1e-12, abs=1e-9)
    assert parse_value(f"{n:.6f} * {a}", unit) == pytest.approx(n * mm(one), rel=1e-12, abs=1e-9)
    assert parse_value(f"({a} + {b}) / {n:.6f}", unit) == pytest.approx(
        (mm(one) + mm(other)) / n, rel=1e-12, abs=1e-9
    )


def test_angles_and_shares() -> None:
    assert parse_angle("82.5°") == 82.5
    assert parse_angle("90 - 7.5") == 82.5
    assert parse_angle("180 deg / 2") == 90.0
    assert parse_number("25 %") == 0.25
    with pytest.raises(EntryError, match="unit"):
        parse_angle("8 mm")
    with pytest.raises(EntryError, match="unit"):
        parse_number("8 mm")
