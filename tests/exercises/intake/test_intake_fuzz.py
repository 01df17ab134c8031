"""Whatever a file holds, each reader answers with what it read or with faults that help."""

from __future__ import annotations

import io
import math
from collections.abc import Callable

import numpy as np
import pytest
from ezdxf.filemanagement import new
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from exercises.intake.dxf import read_dxf
from exercises.intake.outline import Drawing
from exercises.intake.refusal import IntakeError
from exercises.intake.svg import read_svg
from exercises.intake.table import Table, read_table

RELAXED = settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])

Reader = Callable[[bytes], Table | Drawing]


def checked(reader: Reader, data: bytes) -> None:
    """Read, and look at the answer whichever it is."""
    try:
        held = reader(data)
    except IntakeError as error:
        faults = error.faults
    else:
        faults = held.notes
        if isinstance(held, Table):
            assert len(held.x) == len(held.z) == len(held.lines)
            assert np.isfinite(held.x).all()
        else:
            assert held.outlines
            assert all(np.isfinite(one.points).all() for one in held.outlines)
            assert all(len(one.points) > 1 and math.isfinite(one.length) for one in held.outlines)
        return
    assert faults
    assert all(fault.text and fault.right and fault.code and str(fault) for fault in faults)


FIELDS = st.one_of(
    st.floats().map(repr),
    st.integers(-(10**30), 10**30).map(str),
    st.sampled_from(["", "NaN", "1,5", "1.5", '"', '"1,5"', "x", "mm", "1e999", "-", "1_0", "٣"]),
    st.text(max_size=4),
)
ROWS = st.lists(st.lists(FIELDS, max_size=5), max_size=12)


@RELAXED
@given(st.binary(max_size=400))
@example(b"\xff\xfe\x00")
@example(b"1,2\n" * 3 + b'"')
def test_any_bytes_as_points(data: bytes) -> None:
    checked(lambda data: read_table(data, "a.csv"), data)


@RELAXED
@given(ROWS, st.sampled_from([",", ";", "\t", " ", "|"]), st.sampled_from(["\n", "\r\n", "\r"]))
def test_any_rows_as_points(rows: list[list[str]], delimiter: str, ending: str) -> None:
    text = ending.join(delimiter.join(row) for row in rows)
    checked(lambda data: read_table(data, "a.csv"), text.encode("utf-8", "surrogatepass"))


def drawn() -> bytes:
    document = new("R2010")
    model = document.modelspace()
    document.blocks.new("B").add_line((0, 0), (1, 1))
    model.add_blockref("B", (1, 1))
    model.add_lwpolyline([(0, 0, 1), (4, 0, 0)], format="xyb")
    model.add_open_spline([(0, 8), (3, 6), (5, 3), (8, 0)])
    model.add_ellipse((0, 0), (3, 0), 0.4)
    text = io.StringIO()
    document.write(text)
    return text.getvalue().encode()


DXF_LINES = drawn().split(b"\n")
ENTITIES = DXF_LINES.index(b"ENTITIES") - 3
SCRAPS = st.sampled_from(
    [
        b"0",
        b"10",
        b"40",
        b"1e999",
        b"nan",
        b"-1",
        b"INSERT",
        b"B",
        b"",
        b"99999999",
        b"SPLINE",
        b"x",
    ]
)


@settings(RELAXED, max_examples=60)
@given(st.lists(st.tuples(st.integers(0, 400), SCRAPS), min_size=1, max_size=6))
def test_a_dxf_with_other_lines(changes: list[tuple[int, bytes]]) -> None:
    lines = list(DXF_LINES)
    for at, scrap in changes:
        lines[(ENTITIES + at) % len(lines)] = scrap
    checked(lambda data: read_dxf(data, "a.dxf"), b"\n".join(lines))


@settings(RELAXED, max_examples=40)
@given(st.integers(0, len(DXF_LINES)))
def test_a_dxf_cut_short(end: int) -> None:
    checked(lambda data: read_dxf(data, "a.dxf"), b"\n".join(DXF_LINES[:end]))


NUMBERS = st.one_of(
    st.floats().map(lambda value: f"{value:g}"),
    st.sampled_from(["0", "1", "-1", "1e9", "1e-9", "1e300", ".", "-", "1.2.3"]),
)
COMMANDS = st.lists(st.one_of(st.sampled_from(list("MmLlHhVvCcSsQqTtAaZz")), NUMBERS), max_size=25)
TRANSFORMS = st.sampled_from(
    [
        "",
        "rotate(30)",
        "scale(0)",
        "scale(1e300)",
        "matrix(1 2)",
        "skewX(90)",
        "translate(nan)",
        "x(",
    ]
)


@RELAXED
@given(COMMANDS, TRANSFORMS, NUMBERS, NUMBERS)
def test_any_path(words: list[str], transform: str, across: str, up: str) -> None:
    text = (
        f'<svg width="{across}mm" viewBox="0 0 {across} {up}"><g transform="{transform}">'
        f'<path d="{" ".join(words)}"/><circle r="{up}"/><rect width="{across}" height="{up}"/>'
        f'<polyline points="{" ".join(words[:8])}"/></g></svg>'
    )
    checked(lambda data: read_svg(data, "a.svg"), text.encode())


@RELAXED
@given(st.binary(max_size=300), st.sampled_from([b"", b"<svg>", b"<?xml", b"<svg><path d='"]))
def test_any_bytes_as_svg(data: bytes, before: bytes) -> None:
    checked(lambda data: read_svg(data, "a.svg"), before + data)


@pytest.mark.parametrize("reader", [read_dxf, read_svg, read_table])
def test_nothing_is_said_so(reader: Callable[[bytes, str], Table | Drawing]) -> None:
    with pytest.raises(IntakeError, match="nothing"):
        reader(b"", "a")
