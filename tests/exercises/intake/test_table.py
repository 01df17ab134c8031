"""Points out of text: layouts, encodings, units, and what is refused or noted, with its place."""

from __future__ import annotations

import math

import numpy as np
import pytest

from exercises.intake.decoding import LARGEST_SCAN
from exercises.intake.refusal import IntakeError
from exercises.intake.table import read_table

POINTS = [(0.5, 1.25), (0.75, 1.5), (1.0, 2.0)]


@pytest.mark.parametrize(
    ("delimiter", "decimal"),
    [
        ("\t", "."), ("\t", ","), (";", "."), (";", ","), (",", "."), (" ", "."), ("  ", ","),
        ("|", "."),
    ],
)  # fmt: skip
@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("head", ["", "x{0}z", "# a profile\nx{0}z", "Device 7\n\nx{0}z"])
def test_every_layout_reads_the_same(delimiter: str, decimal: str, ending: str, head: str) -> None:
    lines = [head.format(delimiter)] if head else []
    lines += [f"{x:.3f}{delimiter}{z:.3f}".replace(".", decimal) for x, z in POINTS]
    table = read_table(ending.join("\n".join(lines).split("\n")).encode(), "a.csv")
    assert list(zip(table.x, table.z, strict=True)) == POINTS
    assert table.layout.decimal == decimal
    assert not table.notes


def test_quoted_decimal_commas() -> None:
    table = read_table('"x","z"\n"1,5","2,5"\n"1,6","2,75"\n')
    assert (table.x.tolist(), table.z.tolist()) == ([1.5, 1.6], [2.5, 2.75])


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-32", "cp1252"]
)
def test_encodings(encoding: str) -> None:
    text = "x [µm];Höhe z [µm]\n100,5;200\n101,5;300\n"
    table = read_table(text.encode(encoding), "a.csv")
    assert table.x.tolist() == [100.5, 101.5]
    assert table.units == ("µm", "µm")


@pytest.mark.parametrize(
    ("head", "units"),
    [
        ("x [mm],z [um]", ("mm", "µm")),
        ("x_mm,z_mm", ("mm", "mm")),
        ("x (in),z", ("in", "in")),
        ("# unit: inch\nx,z", ("in", "in")),
        ("Units;mils\nx,z", ("mil", "mil")),
        ("x,z", (None, None)),
    ],
)
def test_units_are_read_where_they_are_stated(head: str, units: tuple[str, str]) -> None:
    assert read_table(f"{head}\n1.0,2.0\n1.5,2.5\n").units == units


def test_columns_are_found_by_name_else_by_what_moves() -> None:
    named = read_table("i,z,y,x\n1,10,0,3\n2,20,0,4\n")
    assert (named.x.tolist(), named.z.tolist()) == ([3.0, 4.0], [10.0, 20.0])
    rows = "".join(f"{i} {i * 0.1:.2f} 7 {i * i * 0.01:.4f}\n" for i in range(20))
    counted = read_table(rows)
    assert counted.columns == (1, 3, 4)
    chosen = read_table(rows, columns=(0, 3))
    assert chosen.x[:3].tolist() == [0.0, 1.0, 2.0]


@pytest.mark.parametrize("nothing", ["NaN", "nan", "", "---", "#N/A", "1.#QNAN", "inf", "n/a"])
def test_drop_outs_keep_their_place(nothing: str) -> None:
    table = read_table(f"0.1;1.5\n0.2;{nothing}\n0.3;1.7\n")
    assert table.x.tolist() == [0.1, 0.2, 0.3]
    assert math.isnan(table.z[1])
    assert not table.notes


def test_text_among_numbers_is_noted_by_line_and_column() -> None:
    table = read_table("x,z\n0,1\n1,oops\n2,3\nEND\n4,5\n", "probe.csv")
    assert table.x.tolist() == [0.0, 2.0, 4.0]
    said = [str(one).partition("; right")[0] for one in table.notes]
    assert said == [
        'probe.csv:3: column 2: "oops" is no number',
        "probe.csv:5: (whole document): the row has 1 of 2 columns",
    ]


def test_of_many_notes_the_rest_is_counted() -> None:
    rows = "".join(f"{i},{'x' if i % 3 == 0 and i else i}\n" for i in range(120))
    notes = read_table(rows).notes
    assert len(notes) == 21
    assert notes[-1].params["count"] == 39 - 20


REFUSED: list[tuple[str, bytes, str]] = [
    ("empty", b"", "scan-empty"),
    ("zeros", b"\0" * 50, "scan-empty"),
    ("a picture", b"\x89PNG\r\n\x1a\n1234", "scan-not-text"),
    ("a spreadsheet", b"PK\x03\x04" + b"x" * 50, "scan-not-text"),
    ("binary", b"1,2\n\x01\x02\x033,4\n", "scan-not-text"),
    ("words", b"hello\nworld\n", "scan-no-columns"),
    ("one column", b"1\n2\n3\n", "scan-no-columns"),
    ("unclear commas", b"1,5,2,5\n1,6,2,7\n1,7,2,8\n", "scan-commas"),
    ("mostly text", b"1,2\na,b\nc,d\ne,f\n3,4\n", "scan-text"),
    ("odd UTF-16", b"\xff\xfe1\x00,\x002\x00\n\x00\x00\xd8", "scan-encoding"),
    ("huge", b"1,2\n" * (LARGEST_SCAN // 4 + 1), "scan-too-large"),
]


@pytest.mark.parametrize(
    ("data", "code"), [row[1:] for row in REFUSED], ids=[r[0] for r in REFUSED]
)
def test_what_no_points_can_come_from_is_refused(data: bytes, code: str) -> None:
    with pytest.raises(IntakeError) as caught:
        read_table(data, "a.csv")
    fault = caught.value.faults[0]
    assert fault.code == code
    assert fault.file == "a.csv"
    assert fault.text
    assert fault.right


def test_a_column_that_is_not_there() -> None:
    with pytest.raises(IntakeError, match="no column 5"):
        read_table("1,2\n3,4\n", columns=(0, 4))


def test_more_points_than_are_read(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("exercises.intake.table.MOST_POINTS_READ", 10)
    with pytest.raises(IntakeError, match="more than"):
        read_table("1,2\n3,4\n" * 10)


def test_ten_thousand_points_as_they_were() -> None:
    rng = np.random.default_rng(1)
    points = rng.uniform(-100.0, 100.0, (10_000, 2)).round(5)
    table = read_table("\n".join(f"{x:.5f}\t{z:.5f}" for x, z in points))
    assert np.array_equal(np.column_stack([table.x, table.z]), points)
