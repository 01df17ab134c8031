"""Weld symbols, told by what is drawn.

Sources: AWS A2.4:2020 and ISO 2553:2019 as secondary literature gives them (sides of the reference
line, the dashed identification line, letters z and a, pitch or clear gap, unequal legs as S1 x S2);
the shape of the flag and where the circle stands are common practice, no source.
"""

from __future__ import annotations

from itertools import combinations, product

import pytest

from exercises.callout import Callout, Intermittent, Side
from trainer.symbols.drawn import (
    CONVENTIONS,
    TEXT,
    Convention,
    Stroke,
    Symbol,
    Word,
    convention_for,
    symbol_of,
)

LEG = Callout(8.0, "leg", "8 mm")


def triangles(symbol: Symbol) -> list[Stroke]:
    return [stroke for stroke in symbol.strokes if stroke.closed]


def is_above(triangle: Stroke) -> bool:
    return min(y for _, y in triangle.points) < -0.5


def texts(symbol: Symbol) -> list[str]:
    return [word.text for word in symbol.words]


def word(symbol: Symbol, text: str) -> Word:
    return next(each for each in symbol.words if each.text == text)


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_only_system_a_has_a_dashed_line(convention: Convention) -> None:
    dashed = [stroke for stroke in symbol_of(LEG, convention).strokes if stroke.dashed]
    assert len(dashed) == (1 if convention == "iso-a" else 0)
    for line in dashed:
        (_, y), (_, other) = line.points
        assert y == other != 0.0, "beside the reference line, along it"


@pytest.mark.parametrize(
    ("convention", "side", "above"),
    [
        ("a2.4", "arrow", False),
        ("a2.4", "other", True),
        ("iso-b", "arrow", False),
        ("iso-b", "other", True),
    ],
)
def test_one_line_tells_the_side_by_above_and_below(
    convention: Convention, side: Side, above: bool
) -> None:
    symbol = symbol_of(Callout(8.0, "leg", "8 mm", side=side), convention)
    (triangle,) = triangles(symbol)
    assert is_above(triangle) == above


def test_two_lines_tell_the_side_by_continuous_and_dashed() -> None:
    for side, dashed in (("arrow", False), ("other", True)):
        symbol = symbol_of(Callout(8.0, "leg", "8 mm", side=side), "iso-a")  # type: ignore[arg-type]
        (triangle,) = triangles(symbol)
        foot = triangle.points[0][1]
        lines = [s for s in symbol.strokes if len(s.points) == 2 and s.points[0][1] == foot]
        assert [line.dashed for line in lines if line.points[0][1] == line.points[1][1]] == [dashed]


def test_both_sides_alike_leave_the_dashed_line_out() -> None:
    for convention in CONVENTIONS:
        symbol = symbol_of(Callout(8.0, "leg", "8 mm", side="both"), convention)
        assert not any(stroke.dashed for stroke in symbol.strokes)
        assert sorted(is_above(triangle) for triangle in triangles(symbol)) == [False, True]


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_the_upright_leg_is_always_on_the_left(convention: Convention) -> None:
    for side in ("arrow", "other", "both"):
        callout = Callout(8.0, "leg", "8 mm", side=side)
        for triangle in triangles(symbol_of(callout, convention)):
            corner, end, toe = triangle.points
            assert corner[0] == end[0] < toe[0]


def test_the_size_stands_left_of_the_symbol_and_the_length_right() -> None:
    callout = Callout(8.0, "leg", "8 mm", intermittent=Intermittent(50.0, 150.0))
    for convention in CONVENTIONS:
        symbol = symbol_of(callout, convention)
        (triangle,) = triangles(symbol)
        left, right = triangle.points[0][0], triangle.points[2][0]
        size, long = symbol.words
        assert size.at[0] + size.width < left
        assert long.at[0] > right


@pytest.mark.parametrize(
    ("callout", "said"),
    [
        (LEG, ("8", "z8", "z8")),
        (Callout(7.9375, "leg", "5/16 in"), ("5/16", "z5/16", "z5/16")),
        (
            Callout(6.0, "leg", "6 mm", upright_size=8.0, upright_text="8 mm"),
            ("6\u00d78", "z6\u00d78", "z6\u00d78"),
        ),
    ],
)
def test_letters_are_iso_and_fractions_stay(callout: Callout, said: tuple[str, ...]) -> None:
    assert tuple(texts(symbol_of(callout, c))[0] for c in CONVENTIONS) == said


def test_the_same_weld_reads_pitch_in_one_and_clear_gap_in_the_other() -> None:
    """50 long, 150 from middle to middle: 100 of air between."""
    callout = Callout(8.0, "leg", "8 mm", intermittent=Intermittent(50.0, 150.0, count=3))
    a24, iso_a, iso_b = (texts(symbol_of(callout, c)) for c in CONVENTIONS)
    assert a24 == ["8", "50\u2013150", "n = 3"]
    assert iso_a == ["z8", "3\u00d750 (100)"]
    assert iso_b == ["z8", "50\u2013150", "n = 3"]


def test_inch_pieces_stay_fractions() -> None:
    callout = Callout(6.35, "leg", "1/4 in", intermittent=Intermittent(50.8, 127.0))
    assert texts(symbol_of(callout, "a2.4")) == ["1/4", "2\u20135"]


def test_staggered_pieces_are_offset_or_signed() -> None:
    weld = Intermittent(50.0, 150.0, staggered=True)
    callout = Callout(8.0, "leg", "8 mm", side="both", intermittent=weld)
    for convention in ("a2.4", "iso-b"):
        one, other = triangles(symbol_of(callout, convention))
        assert one.points[0][0] != other.points[0][0]
    symbol = symbol_of(callout, "iso-a")
    one, other = triangles(symbol)
    assert one.points[0][0] == other.points[0][0]
    sign = [stroke for stroke in symbol.strokes if len(stroke.points) == 4]
    assert len(sign) == 1


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_marks_stand_where_the_arrow_meets_the_line(convention: Convention) -> None:
    plain = symbol_of(LEG, convention)
    assert plain.circles == ()
    assert len(plain.fills) == 1, "the arrow's head alone"
    marked = symbol_of(
        Callout(8.0, "leg", "8 mm", all_around=True, site=True, tail="135"), convention
    )
    (circle,) = marked.circles
    assert circle.centre == (0.0, 0.0)
    flag = next(fill for fill in marked.fills if all(y < 0.0 for _, y in fill.points))
    pole = next(s for s in marked.strokes if s.points[0] == (0.0, 0.0) and s.points[1][0] == 0.0)
    assert pole.points[1] in flag.points
    tail = word(marked, "135")
    fork = next(s for s in marked.strokes if len(s.points) == 3 and not s.closed)
    assert fork.points[1][1] == 0.0
    assert tail.at[0] > fork.points[0][0]


@pytest.mark.parametrize("convention", CONVENTIONS)
def test_nothing_stands_over_anything_else(convention: Convention) -> None:
    """Whatever is called for together: no word over a word, a triangle, or the circle."""
    welds = (None, Intermittent(40.0, 100.0, 12), Intermittent(40.0, 100.0, staggered=True))
    for side, weld, unequal in product(("arrow", "other", "both"), welds, (False, True)):
        callout = Callout(
            12.0,
            "leg",
            "12 mm",
            upright_size=10.0 if unequal else None,
            upright_text="10 mm" if unequal else "",
            side=side,  # type: ignore[arg-type]
            intermittent=weld,
            all_around=True,
            site=True,
            tail="detail C",
        )
        symbol = symbol_of(callout, convention)
        boxes = [
            (w.at[0], w.at[1] - TEXT / 2, w.at[0] + w.width, w.at[1] + TEXT / 2)
            for w in symbol.words
        ]
        for triangle in triangles(symbol):
            xs, ys = [x for x, _ in triangle.points], [y for _, y in triangle.points]
            boxes.append((min(xs), min(ys), max(xs), max(ys)))
        for one, other in combinations(boxes, 2):
            apart = (
                one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
            )
            assert apart, (convention, side, weld, one, other)
        assert min(box[0] for box in boxes) > symbol.circles[0].radius


def test_the_drawing_s_unit_suggests_the_standard_and_a_choice_holds() -> None:
    inch, throat = Callout(7.9375, "leg", "5/16 in"), Callout(5.0, "throat", "5 mm")
    assert convention_for(inch, None) == "a2.4"
    assert convention_for(LEG, None) == "iso-a"
    for convention in CONVENTIONS:
        assert convention_for(LEG, convention) == convention
        assert convention_for(inch, convention) == convention
    assert convention_for(throat, "a2.4") == "iso-b", "A2.4 has no sign for a fillet's throat"
