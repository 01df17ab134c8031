"""Checks: what they measure where there is nothing to measure, and whose limit decides."""

from __future__ import annotations

from dataclasses import replace

import pytest

from exercises.checks import Check
from exercises.coupon import Coupon
from exercises.judging import judge
from exercises.required import Required, called_size, limit_for, required
from exercises.rules import RuleSet, Source
from exercises.rules.formula import Length, Linear, Share
from exercises.rules.limits import MinimumSize, Undersize
from exercises.text import Text
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.trays import coupon

ISO = ("iso-5817-b", "iso-5817-c", "iso-5817-d")
AWS = ("aws-d1.1-static", "aws-d1.1-cyclic")


def flat(legs: tuple[float, float], rules: str, **others: object) -> Coupon:
    callout = {"size": 8, "measure": "leg", **dict(others.pop("callout", {}))}  # type: ignore[call-overload]
    bead = {"leg_base": legs[0], "leg_upright": legs[1]}
    return coupon(bead=bead, callout=callout, rules=rules, **others)


def check(made: Coupon, key: str) -> Check:
    return next(each for each in judge(made).checks if each.key == key)


@pytest.mark.parametrize("rules", [*ISO, *AWS])
def test_what_is_not_there_measures_nothing(rules: str) -> None:
    """No groove, no lip, no crown, no opening; legs of 7 have no throat beyond that of 8."""
    nothing = ("undercut", "overlap", "excess_throat", "convexity", "root_opening", "asymmetry")
    measured = {
        each.key: each.measured
        for each in judge(flat((7.0, 7.0), rules)).checks
        if each.key.startswith(nothing)
    }
    assert {"undercut_base", "undercut_upright", "overlap_base", "overlap_upright"} <= set(measured)
    assert set(measured.values()) == {0.0}


def test_an_excess_is_what_the_throat_has_beyond_what_is_asked() -> None:
    """Flat 10 for 8: 10 / 1.4142 - 8 / 1.4142 = 1.4142 mm."""
    assert check(flat((10.0, 10.0), "iso-5817-c"), "excess_throat").measured == pytest.approx(
        2.0**0.5
    )


@pytest.mark.parametrize("rules", [*ISO, *AWS])
def test_what_no_leaf_decides_has_no_doubt(rules: str) -> None:
    """The contract's U is a leaf's; a groove, a lip, a crown are measured otherwise."""
    for each in judge(flat((8.0, 8.0), rules)).checks:
        by_leaf = each.required is not None or each.key in ("asymmetry", "excess_throat")
        assert (each.doubt > 0.0) is by_leaf
        if not by_leaf:
            assert (each.doubt, each.near, each.decided_by_leaf) == (0.0, False, False)


def test_the_least_size_is_the_source_only_where_it_raises_the_callout() -> None:
    """AWS D1.1:2010 Table 5.8: 5 mm for 6 to 12 mm, 8 mm over 20; Table 6.1 (6) allows less."""
    thin = flat((8.0, 8.0), "aws-d1.1-static")
    rules = thin.rule_set
    assert rules.undersize is not None
    assert rules.minimum_size is not None
    assert rules.undersize.source != rules.minimum_size.source
    assert check(thin, "leg_base").source == rules.undersize.source
    thick = flat(
        (8.0, 8.0),
        "aws-d1.1-static",
        callout={"size": 6},
        joint={"base_thickness": 25, "upright_thickness": 25},
    )
    assert check(thick, "leg_base").source == rules.minimum_size.source
    # A callout of just the least size is not raised by it.
    same = flat(
        (8.0, 8.0),
        "aws-d1.1-static",
        joint={"base_thickness": 25, "upright_thickness": 25},
    )
    assert check(same, "leg_base").required == required(same) == Required(8.0, 8.0, withheld=3.0)
    assert check(same, "leg_base").source == rules.undersize.source
    assert check(flat((8.0, 8.0), "as-drawn"), "leg_base").source == (
        flat((8.0, 8.0), "as-drawn").rule_set.source
    )


def test_without_a_member_the_smaller_leg_is_meant() -> None:
    for legs in ((6.0, 9.0), (9.0, 6.0)):
        callout = {"size": legs[0], "upright_size": legs[1]}
        made = flat(legs, "as-drawn", callout=callout)
        assert called_size(made) == limit_for(made, "leg") == 6.0
        assert limit_for(made, "leg", "base") == legs[0]
        assert limit_for(made, "leg", "upright") == legs[1]
        hollow = replace(made, section=Section.of(Joint(), Bead(*legs, crown=-0.5)))
        asked = check(hollow, "theoretical_throat").required
        assert asked == required(made) == Required(6.0)


def test_an_allowance_by_the_throat_goes_by_the_throat_that_is_asked() -> None:
    """6 raised to 8: a tenth of 8 cos 45 = 5.657 is 0.566 of throat, which is 0.8 of leg."""
    own = Source("a shop", "", "", "own")
    tenth = Linear(Length.plain(0.0), Share("throat", 0.1))
    rules = RuleSet(
        "shop",
        1,
        Text.of("Shop"),
        own,
        undersize=Undersize("throat", tenth, own),
        minimum_size=MinimumSize("leg", Length.plain(8.0), own),
    )
    asked = required(replace(flat((8.0, 8.0), "as-drawn", callout={"size": 6}), shop_rules=rules))
    assert (asked.called, asked.nominal) == (6.0, 8.0)
    assert asked.size == pytest.approx(7.2)


def test_a_dip_beside_the_bisector_is_not_told_by_the_spur() -> None:
    """On the bisector the face stands at (4.5, 4.5), that of a 9; the dip at (6, 2) leaves 8."""
    dipped = Bead.traced(((9.0, 0.0), (6.0, 2.0), (4.5, 4.5), (0.0, 9.0)), Joint())
    made = flat((9.0, 9.0), "as-drawn", callout={"size": 8.8})
    found = check(replace(made, section=Section.of(Joint(), dipped)), "effective_size")
    assert (found.measured, found.passed) == (pytest.approx(8.0), False)
    assert found.decided_by_leaf is False
