"""The shipped rule sets, row by row: what each limit judges, by how much, and whose it is."""

from __future__ import annotations

import itertools
import json
from dataclasses import fields

import pytest

from exercises.coupon import DISPOSITIONS
from exercises.rule_files import rules_faults
from exercises.rules import RULE_SETS, SHIPPED, Limit, RuleSet
from exercises.rules.formula import Given
from exercises.rules.limits import DEFAULT_NEEDS
from exercises.rules.shipped import rules_text
from geometry.joint import MEMBERS
from geometry.measures import Measures

EVERY = pytest.mark.parametrize("rules", RULE_SETS.values(), ids=lambda rules: rules.id)


def limit_of(rules: str, measure: str) -> Limit:
    return next(limit for limit in RULE_SETS[rules].limits if limit.measure == measure)


def allowed(rules: str, measure: str, unit: str = "mm", **quantities: float) -> float:
    given = Given(unit, quantities)  # type: ignore[arg-type]
    return limit_of(rules, measure).amount.value(given)


# --- the sets as files ----------------------------------------------------------------------------


@EVERY
def test_a_shipped_file_is_as_sound_as_a_shop_s_has_to_be(rules: RuleSet) -> None:
    assert rules_faults(json.loads(rules_text(rules.id)), shipped=True) == []


def test_the_sets_that_ship() -> None:
    assert list(RULE_SETS) == list(SHIPPED) == [
        "as-drawn", "iso-5817-b", "iso-5817-c", "iso-5817-d",
        "aws-d1.1-static", "aws-d1.1-cyclic", "en-1993-1-8",
    ]  # fmt: skip
    assert len(RULE_SETS) == 7
    assert [rules.id for rules in RULE_SETS.values()] == list(SHIPPED)
    assert "none" not in RULE_SETS
    with pytest.raises(KeyError):
        RULE_SETS["none"]


def test_a_set_is_read_once() -> None:
    assert RULE_SETS["iso-5817-b"] is RULE_SETS["iso-5817-b"]


@EVERY
def test_every_limit_has_a_source_and_a_remedy(rules: RuleSet) -> None:
    added = [rules.undersize, rules.opening, rules.minimum_size]
    sources = [rules.source, *(each.source for each in added if each)]
    sources += [limit.source for limit in rules.limits]
    for source in sources:
        assert source.document
        assert source.sureness in ("own", "seen", "second-hand", "from memory")
        assert source.name == source.text
    for limit in rules.limits:
        assert limit.needs == DEFAULT_NEEDS[limit.measure]
        assert limit.needs in DISPOSITIONS


@EVERY
def test_what_a_job_card_says_is_there_in_both_languages(rules: RuleSet) -> None:
    for text in (rules.title, *rules.lines):
        assert text.in_language("en") != text.in_language("es")


# --- sizes ----------------------------------------------------------------------------------------


@EVERY
def test_every_callout_and_face_has_one_row(rules: RuleSet) -> None:
    rows = [(row.measure, row.face, row.unequal) for row in rules.sizes]
    faces = ("convex", "flat", "concave")
    wanted = [
        *itertools.product(("leg",), faces, (False, True)),
        *itertools.product(("throat",), faces, (False,)),
    ]
    assert sorted(rows) == sorted(wanted)


def test_a_row_that_is_not_there_is_an_error() -> None:
    with pytest.raises(KeyError):
        RULE_SETS["as-drawn"].row("leg", "wavy")  # type: ignore[arg-type]
    with pytest.raises(KeyError):
        RULE_SETS["as-drawn"].row("throat", "flat", unequal=True)


BOTH = (("leg", "base"), ("leg", "upright"))
SPUR = ("throat", "base")


@EVERY
@pytest.mark.parametrize(
    ("measure", "face", "unequal", "compared", "edges", "seats"),
    [
        # What a student must learn with a leaf (contract, section 1): convex, both legs, two
        # placements; hollow, the throat and the legs; flat, either.
        ("leg", "convex", False, ["leg_base", "leg_upright"], ("leg",), BOTH),
        ("leg", "flat", False, ["leg_base", "leg_upright"], ("leg", "throat"), BOTH),
        ("leg", "concave", False, ["effective_size", "leg_base", "leg_upright"],
         ("leg", "throat"), (*BOTH, SPUR)),
        ("leg", "convex", True, ["leg_base", "leg_upright"], ("leg",), BOTH),
        ("leg", "flat", True, ["leg_base", "leg_upright"], ("leg",), BOTH),
        ("leg", "concave", True, ["theoretical_throat", "leg_base", "leg_upright"],
         ("leg", "throat"), (*BOTH, SPUR)),
        ("throat", "convex", False, ["throat"], ("leg",), BOTH),
        ("throat", "flat", False, ["throat"], ("leg", "throat"), BOTH),
        ("throat", "concave", False, ["throat"], ("throat",), (SPUR,)),
    ],
)  # fmt: skip
def test_what_each_row_compares_and_how(
    rules: RuleSet, measure: str, face: str, unequal: bool, compared: list[str],
    edges: tuple[str, ...], seats: tuple[tuple[str, str], ...],
) -> None:  # fmt: skip
    row = rules.row(measure, face, unequal=unequal)  # type: ignore[arg-type]
    # ISO a: effective_throat; EN 1993-1-8, 4.5.2: theoretical_throat (check_values, section 3).
    throat = "theoretical_throat" if rules.id == "en-1993-1-8" else "effective_throat"
    wanted = [throat if key == "throat" else key for key in compared]
    assert [comparison.key for comparison in row.compared] == wanted
    assert row.edges == edges
    assert row.seats == seats
    assert row.legs == (MEMBERS if BOTH[0] in seats else ())
    assert row.throat == (SPUR in seats)
    keys = {field.name for field in fields(Measures)}
    for comparison in row.compared:
        assert comparison.key in keys
        assert bool(comparison.legs) == (comparison.edge == "leg")


# --- ISO 5817: worked inputs, caps included (check_values, section 1) -----------------------------


@pytest.mark.parametrize(
    ("width", "d", "c", "b"),
    [(5.0, 2.25, 1.75, 1.50), (10.0, 3.50, 2.50, 2.00), (14.1, 4.525, 3.115, 2.41),
     (16.0, 5.0, 3.4, 2.6), (20.0, 5.0, 4.0, 3.0), (30.0, 5.0, 4.0, 3.0)],
)  # fmt: skip
def test_iso_convexity(width: float, d: float, c: float, b: float) -> None:
    for level, value in (("d", d), ("c", c), ("b", b)):
        found = allowed(f"iso-5817-{level}", "convexity", face_width=width)
        assert found == pytest.approx(value)


@pytest.mark.parametrize(
    ("t", "d", "c", "b"),
    [(2.0, 0.0, 0.0, 0.0), (3.0, 0.0, 0.0, 0.0), (3.01, 0.602, 0.301, 0.1505),
     (4.0, 0.8, 0.4, 0.2), (10.0, 1.0, 0.5, 0.5), (12.0, 1.0, 0.5, 0.5)],
)  # fmt: skip
def test_iso_undercut(t: float, d: float, c: float, b: float) -> None:
    for level, value in (("d", d), ("c", c), ("b", b)):
        found = allowed(f"iso-5817-{level}", "undercut", thickness=t)
        assert found == pytest.approx(value)


@pytest.mark.parametrize(("level", "value"), [("d", 0.4), ("c", 0.2)])
def test_iso_undercut_of_thin_plate_is_for_short_lengths(level: str, value: float) -> None:
    limit = limit_of(f"iso-5817-{level}", "undercut")
    assert limit.short is not None
    assert limit.short.value(Given("mm", {"thickness": 2.0})) == pytest.approx(value)
    assert limit_of("iso-5817-b", "undercut").short is None


@pytest.mark.parametrize(
    ("t", "a", "d", "c"),
    [(12.0, 5.0, 0.8, 0.8), (12.0, 7.0, 1.0, 1.0), (12.0, 8.0, 1.1, 1.0), (12.0, 17.0, 2.0, 1.0),
     (12.0, 20.0, 2.0, 1.0), (3.0, 3.0, 0.5, 0.2), (3.1, 3.0, 0.6, 0.6)],
)  # fmt: skip
def test_iso_short_throat(t: float, a: float, d: float, c: float) -> None:
    for level, value in (("d", d), ("c", c)):
        undersize = RULE_SETS[f"iso-5817-{level}"].undersize
        assert undersize is not None
        assert undersize.within is not None
        assert undersize.measured_as == "throat"
        assert undersize.within.share_in("mm") == 0.25
        given = Given("mm", {"thickness": t, "throat": a})
        assert undersize.amount.value(given) == pytest.approx(value)
    assert RULE_SETS["iso-5817-b"].undersize is None


@pytest.mark.parametrize(("a", "c", "b"), [(5.0, 2.0, 1.75), (15.0, 4.0, 3.0), (13.3, 3.66, 2.995)])
def test_iso_excess_throat(a: float, c: float, b: float) -> None:
    assert allowed("iso-5817-c", "excess_throat", throat=a) == pytest.approx(c)
    assert allowed("iso-5817-b", "excess_throat", throat=a) == pytest.approx(b)
    # Permitted at level D.
    assert "excess_throat" not in [limit.measure for limit in RULE_SETS["iso-5817-d"].limits]


@pytest.mark.parametrize(("level", "value"), [("d", 3.0), ("c", 2.75), ("b", 2.25)])
def test_iso_asymmetry(level: str, value: float) -> None:
    assert allowed(f"iso-5817-{level}", "asymmetry", throat=5.0) == pytest.approx(value)


@pytest.mark.parametrize(
    ("t", "a", "d", "c", "b"),
    [(12.0, 5.0, 2.5, 1.5, 1.0), (12.0, 20.0, 4.0, 3.0, 2.0), (3.0, 3.0, 0.8, 0.6, 0.5)],
)
def test_iso_root_gap(t: float, a: float, d: float, c: float, b: float) -> None:
    for level, value in (("d", d), ("c", c), ("b", b)):
        found = allowed(f"iso-5817-{level}", "root_opening", thickness=t, throat=a)
        assert found == pytest.approx(value)


@pytest.mark.parametrize(("level", "angle", "lip"), [("d", 90, 2.0), ("c", 100, 0), ("b", 110, 0)])
def test_iso_toes(level: str, angle: float, lip: float) -> None:
    assert allowed(f"iso-5817-{level}", "toe_angle") == angle
    assert limit_of(f"iso-5817-{level}", "toe_angle").bound == "at_least"
    assert allowed(f"iso-5817-{level}", "overlap", face_width=10.0) == lip


# --- AWS D1.1 (check_values, section 2) -----------------------------------------------------------

AWS = ("aws-d1.1-static", "aws-d1.1-cyclic")


@pytest.mark.parametrize("rules", AWS)
@pytest.mark.parametrize(
    ("unit", "size", "allowance"),
    [("in", 3 / 16, 1 / 16), ("in", 7 / 32, 1 / 16), ("in", 1 / 4, 3 / 32), ("in", 9 / 32, 3 / 32),
     ("in", 5 / 16, 1 / 8), ("in", 1 / 2, 1 / 8), ("mm", 5, 2), ("mm", 6, 2.5), ("mm", 7, 2.5),
     ("mm", 8, 3), ("mm", 16, 3)],
)  # fmt: skip
def test_aws_undersize(rules: str, unit: str, size: float, allowance: float) -> None:
    per = 25.4 if unit == "in" else 1.0
    undersize = RULE_SETS[rules].undersize
    assert undersize is not None
    assert undersize.within is not None
    assert (undersize.measured_as, undersize.within.share_in("in")) == ("leg", 0.1)
    given = Given(unit, {"size": size * per})  # type: ignore[arg-type]
    assert undersize.amount.value(given) == pytest.approx(allowance * per)
    end = Given(unit, {"size": size * per}, frozenset({"girder_end"}))  # type: ignore[arg-type]
    assert undersize.amount.value(end) == 0.0


@pytest.mark.parametrize("rules", AWS)
@pytest.mark.parametrize(
    ("unit", "width", "limit"),
    [("in", 5 / 16, 1 / 16), ("in", 0.354, 1 / 8), ("in", 0.999, 1 / 8), ("in", 1.0, 3 / 16),
     ("mm", 8, 2), ("mm", 8.01, 3), ("mm", 24.9, 3), ("mm", 25, 5)],
)  # fmt: skip
def test_aws_convexity_goes_by_the_face_not_the_leg(
    rules: str, unit: str, width: float, limit: float
) -> None:
    per = 25.4 if unit == "in" else 1.0
    found = allowed(rules, "convexity", unit, face_width=width * per)
    assert found == pytest.approx(limit * per)


@pytest.mark.parametrize(
    ("unit", "t", "limit"),
    [("in", 0.99, 1 / 32), ("in", 1.0, 1 / 16), ("mm", 24.9, 1), ("mm", 25, 2)],
)
def test_aws_static_undercut(unit: str, t: float, limit: float) -> None:
    per = 25.4 if unit == "in" else 1.0
    found = allowed("aws-d1.1-static", "undercut", unit, thickness=t * per)
    assert found == pytest.approx(limit * per)
    rule = limit_of("aws-d1.1-static", "undercut")
    assert rule.within is not None
    assert rule.short is not None
    assert rule.within.share_in("in") == pytest.approx(2 / 12)
    assert rule.within.share_in("mm") == pytest.approx(50 / 300)
    assert rule.short.value(Given("in", {})) == 25.4 / 16


def test_aws_cyclic_undercut_asks_how_it_is_loaded() -> None:
    rule = limit_of("aws-d1.1-cyclic", "undercut").amount
    across = frozenset({"transverse_tension"})
    assert rule.value(Given("mm", {}, across)) == 0.25  # type: ignore[arg-type]
    assert rule.value(Given("in", {}, across)) == pytest.approx(0.254)  # type: ignore[arg-type]
    assert (rule.value(Given("mm", {})), rule.value(Given("in", {}))) == (1.0, 25.4 / 32)


@pytest.mark.parametrize(
    ("unit", "t", "size"),
    [("in", 1 / 4, 1 / 8), ("in", 0.26, 3 / 16), ("in", 1 / 2, 3 / 16), ("in", 0.51, 1 / 4),
     ("in", 3 / 4, 1 / 4), ("in", 0.76, 5 / 16), ("mm", 6, 3), ("mm", 12, 5), ("mm", 12.1, 6),
     ("mm", 20, 6), ("mm", 20.1, 8)],
)  # fmt: skip
def test_aws_minimum_size(unit: str, t: float, size: float) -> None:
    per = 25.4 if unit == "in" else 1.0
    for rules, floor in (("aws-d1.1-static", 0.0), ("aws-d1.1-cyclic", 3 / 16)):
        minimum = RULE_SETS[rules].minimum_size
        assert minimum is not None
        given = Given(unit, {"deciding": t * per, "thinner": t * per})  # type: ignore[arg-type]
        least = floor if unit == "in" else 5.0 * bool(floor)
        assert minimum.amount.value(given) == pytest.approx(max(size, least) * per)


def test_aws_minimum_size_need_not_exceed_the_thinner_member() -> None:
    minimum = RULE_SETS["aws-d1.1-static"].minimum_size
    assert minimum is not None
    assert minimum.amount.value(Given("mm", {"deciding": 25.0, "thinner": 7.0})) == 7.0


@pytest.mark.parametrize("rules", AWS)
@pytest.mark.parametrize(
    ("unit", "edge", "size"),
    [("in", 3 / 16, 3 / 16), ("in", 1 / 4, 3 / 16), ("in", 1 / 2, 7 / 16), ("mm", 5.9, 5.9),
     ("mm", 6, 4), ("mm", 10, 8)],
)  # fmt: skip
def test_aws_maximum_size_along_an_edge(rules: str, unit: str, edge: float, size: float) -> None:
    per = 25.4 if unit == "in" else 1.0
    found = allowed(rules, "maximum_size", unit, edge=edge * per)
    assert found == pytest.approx(size * per)


@pytest.mark.parametrize("rules", AWS)
@pytest.mark.parametrize(
    ("unit", "t", "gap"),
    [("in", 2.9, 3 / 16), ("in", 3.0, 5 / 16), ("mm", 74, 5), ("mm", 75, 8)],
)
def test_aws_root_opening_limit(rules: str, unit: str, t: float, gap: float) -> None:
    per = 25.4 if unit == "in" else 1.0
    assert allowed(rules, "root_opening", unit, thinner=t * per) == pytest.approx(gap * per)


@pytest.mark.parametrize("rules", AWS)
@pytest.mark.parametrize(
    ("gap", "added"),
    # Trap: the whole gap is added, not the part above 1/16 (check_values, 2.5).
    [(1 / 16, 0.0), (1 / 15, 1 / 15), (3 / 32, 3 / 32), (1 / 8, 1 / 8), (3 / 16, 3 / 16)],
)
def test_aws_opening_is_added_whole(rules: str, gap: float, added: float) -> None:
    found = RULE_SETS[rules].added_for_opening(gap * 25.4, "in")
    assert found == pytest.approx(added * 25.4)
    assert RULE_SETS[rules].added_for_opening(2.0, "mm") == 0.0
    assert RULE_SETS[rules].added_for_opening(2.01, "mm") == 2.01


# --- the others -----------------------------------------------------------------------------------


def test_as_drawn_allows_nothing_and_adds_an_opening_whole() -> None:
    rules = RULE_SETS["as-drawn"]
    assert (rules.version, rules.undersize, rules.minimum_size) == (1, None, None)
    assert [rules.added_for_opening(gap) for gap in (0.0, 0.5, 3.0)] == [0.0, 0.5, 3.0]
    assert {limit.measure for limit in rules.limits} == {"overlap", "undercut"}
    assert [allowed("as-drawn", measure) for measure in ("overlap", "undercut")] == [0.0, 0.0]


def test_eurocode_has_a_least_throat_and_a_widest_angle() -> None:
    rules = RULE_SETS["en-1993-1-8"]
    assert rules.minimum_size is not None
    assert rules.minimum_size.measured_as == "throat"
    assert rules.minimum_size.amount.value(Given("mm", {})) == 3.0
    assert allowed("en-1993-1-8", "joint_angle") == 120.0
