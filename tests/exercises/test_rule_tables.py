"""The tables that are shown: row by row what judges, and nothing else."""

from __future__ import annotations

import math

import pytest

from exercises.definitions import definitions, reference
from exercises.gauging_tables import TABLES
from exercises.reference import GROUPS, as_markdown
from exercises.rule_tables import NEEDS, Cell, Table, limit_table, size_table
from exercises.rules import RULE_SETS, RuleSet
from exercises.rules.wording import (
    limit_formula,
    measure_title,
    minimum_formula,
    opening_formula,
    undersize_formula,
)
from exercises.text import NO_TEXT, Text
from geometry.joint import MEMBERS
from geometry.leaf import RACKS, rack

SETS = pytest.mark.parametrize("rules", RULE_SETS.values(), ids=lambda rules: rules.id)


@SETS
def test_every_limit_has_its_row(rules: RuleSet) -> None:
    rows = list(limit_table(rules).rows)
    added = [
        (rules.undersize, undersize_formula, "undersize"),
        (rules.opening, opening_formula, "opening"),
        (rules.minimum_size, minimum_formula, "minimum_size"),
    ]
    for stated, formula, name in added:
        if stated is None:
            continue
        what, allowed, _, beyond, source = rows.pop(0)
        assert what.to == f"rules.{rules.id}.{name}"
        assert allowed.text == formula(stated)  # type: ignore[operator]  # each its own kind
        assert beyond.text == NEEDS["add weld metal"]
        assert str(source.text) == f"{stated.source.name} ({_sure(stated.source.sureness)})"
    assert len(rows) == len(rules.limits)
    for limit, (what, allowed, judges, beyond, source) in zip(rules.limits, rows, strict=True):
        assert (what.text, what.to) == (
            measure_title(limit.measure),
            f"rules.{rules.id}.{limit.measure}",
        )
        assert allowed.text == limit_formula(limit)
        assert str(judges.text).endswith(limit.unit)
        assert str(beyond.text) == limit.needs
        assert str(source.text) == f"{limit.source.name} ({_sure(limit.source.sureness)})"


def _sure(sureness: str) -> str:
    return "own rule" if sureness == "own" else sureness


@SETS
def test_every_callout_and_face_has_its_edge_seats_and_leaf(rules: RuleSet) -> None:
    rows = size_table(rules).rows
    assert len(rows) == len(rules.sizes) == 9
    for row, cells in zip(rules.sizes, rows, strict=True):
        called, face, reach, edge, seats, leaf = (str(cell.text) for cell in cells)
        assert cells[0].to == f"rules.{rules.id}.size.{row.name}"
        assert called == ("two different legs" if row.unequal else row.measure)
        assert face == ("hollow" if row.face == "concave" else row.face)
        keys = dict.fromkeys(comparison.key for comparison in row.compared)
        assert reach.split(", ") == [_said(key) for key in keys]
        assert edge.split(" / ") == [f"{each} edge" for each in row.edges]
        for member in MEMBERS:
            assert (f"tip to the {member}" in seats) == (("leg", member) in row.seats)
        assert ("spur to the face" in seats) == row.throat
        assert ("sin(angle)" in leaf) == bool(row.legs)
        assert ("at the spur" in leaf) == row.throat


def _said(key: str) -> str:
    what, _, member = key.rpartition("_")
    return f"{what} on the {member}" if what == "leg" else key.replace("_", " ")


def test_what_a_table_leads_to_is_there() -> None:
    keys = {entry.key for entry in reference()}
    for entry in reference():
        for table in entry.tables:
            leads = [cell.to for row in table.rows for cell in row if cell.to]
            assert not [key for key in leads if key not in keys], entry.key


def test_every_table_is_said_in_both_languages() -> None:
    for entry in reference():
        for table in entry.tables:
            for text in (*table.heads, *(cell.text for row in table.rows for cell in row)):
                assert text.in_language("en")
                assert text.in_language("es")


@pytest.mark.parametrize("name", RACKS)
def test_racks_hang_as_their_tables_say(name: str) -> None:
    rows = TABLES[f"rack_{name}"].rows
    leaves = rack(name)  # type: ignore[arg-type]  # one of its names
    assert [str(row[0].text) for row in rows] == [leaf.mark for leaf in leaves]
    for row, leaf in zip(rows, leaves, strict=True):
        leg, throat, inches = (float(str(cell.text)) for cell in row[1:])
        assert leg == pytest.approx(leaf.size, abs=5e-5)
        assert throat == pytest.approx(leaf.size / math.sqrt(2.0), abs=5e-4)
        assert inches == pytest.approx(leaf.size / 25.4, abs=5e-5)
    assert str(TABLES["rack_inch"].rows[1][1].text) == "4.7625"
    assert TABLES["rack_inch"].rows[1][1].text.in_language("es") == "4,7625"


def test_skewed_joints_from_first_to_last() -> None:
    """Leaf = leg · sin, throat = leg · cos of half the angle: trigonometry, no other source."""
    rows = TABLES["skewed"].rows
    assert (str(rows[0][0].text), str(rows[-1][0].text)) == ("60°", "135°")
    for row in rows:
        angle = math.radians(float(str(row[0].text)[:-1]))
        leaf, throat, leg = (float(str(cell.text)) for cell in row[1:])
        assert leaf == pytest.approx(math.sin(angle), abs=5e-4)
        assert throat == pytest.approx(math.cos(angle / 2.0), abs=5e-4)
        assert leg == pytest.approx(1.0 / math.cos(angle / 2.0), abs=5e-4)


def test_states_stand_in_the_order_that_they_are_asked() -> None:
    shown = [str(row[0].text) for row in TABLES["states"].rows]
    assert shown == ["not seated", "touch", "held off", "daylight"]


def test_a_row_is_as_wide_as_its_head() -> None:
    cell = Cell(Text.of("8"))
    with pytest.raises(ValueError, match="not as wide"):
        Table(NO_TEXT, (Text.of("mm"),), ((cell, cell),))


def test_the_page_holds_the_tables_and_every_group() -> None:
    page = as_markdown(reference())
    assert page.count("| Limit | What is allowed |") == len(RULE_SETS)
    assert {entry.group for entry in reference()} == set(GROUPS)
    assert "| touch |" in page
    assert as_markdown(definitions(), "es").count("## ") > len(GROUPS)
