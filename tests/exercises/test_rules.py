"""The rule set as drawn: whole, and each limit with its source."""

from __future__ import annotations

import itertools
from dataclasses import fields

import pytest

from exercises.coupon import DISPOSITIONS
from exercises.rules import AS_DRAWN, RULE_SETS
from geometry.joint import MEMBERS
from geometry.measures import Measures


def test_every_callout_and_face_has_one_row() -> None:
    rows = [(row.measure, row.face) for row in AS_DRAWN.sizes]
    wanted = itertools.product(("leg", "throat"), ("convex", "flat", "concave"))
    assert sorted(rows) == sorted(wanted)


def test_a_row_that_is_not_there_is_an_error() -> None:
    with pytest.raises(KeyError):
        AS_DRAWN.row("leg", "wavy")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("measure", "face", "compared", "edges", "legs", "throat"),
    [
        # What a student must learn with a leaf (contract, section 1): convex, both legs, two
        # placements; hollow, the throat and the legs; flat, either.
        ("leg", "convex", {"leg_base", "leg_upright"}, {"leg"}, True, False),
        ("leg", "flat", {"leg_base", "leg_upright"}, {"leg", "throat"}, True, False),
        ("leg", "concave", {"effective_size", "leg_base", "leg_upright"}, {"leg", "throat"},
         True, True),
        ("throat", "convex", {"effective_throat"}, {"leg"}, True, False),
        ("throat", "flat", {"effective_throat"}, {"leg", "throat"}, True, False),
        ("throat", "concave", {"effective_throat"}, {"throat"}, False, True),
    ],
)  # fmt: skip
def test_what_each_row_compares_and_how(
    measure: str, face: str, compared: set[str], edges: set[str], legs: bool, throat: bool
) -> None:
    row = AS_DRAWN.row(measure, face)  # type: ignore[arg-type]
    assert {comparison.key for comparison in row.compared} == compared
    assert set(row.edges) == edges
    assert row.legs == (MEMBERS if legs else ())
    assert row.throat == throat


@pytest.mark.parametrize("rules", RULE_SETS.values(), ids=lambda rules: rules.id)
def test_rule_sets_speak_of_measures_that_there_are(rules: object) -> None:
    keys = {field.name for field in fields(Measures)}
    assert rules is AS_DRAWN
    for row in AS_DRAWN.sizes:
        for comparison in row.compared:
            assert comparison.key in keys
            assert bool(comparison.legs) == (comparison.edge == "leg")


def test_every_limit_has_a_source_and_a_remedy() -> None:
    for limit in AS_DRAWN.limits:
        assert limit.source.text
        assert limit.source.confidence in ("own", "S", "S2", "M")
        assert limit.disposition in DISPOSITIONS


def test_what_a_job_card_says_is_there_in_both_languages() -> None:
    for text in (AS_DRAWN.title, *AS_DRAWN.lines):
        assert text.in_language("en") != text.in_language("es")


def test_nothing_is_allowed_under_and_an_opening_is_added_whole() -> None:
    assert AS_DRAWN.allowed_under == 0.0
    assert [AS_DRAWN.added_for_opening(gap) for gap in (0.0, 0.5, 3.0)] == [0.0, 0.5, 3.0]
