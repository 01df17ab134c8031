"""What judges hands out values: nobody can change one, or hang something on it."""

from __future__ import annotations

import importlib
from dataclasses import MISSING, fields, is_dataclass

import pytest

from exercises.coupon import Callout, Coupon
from exercises.judging import judge
from exercises.required import given
from exercises.rules.formula import Length
from exercises.rules.limits import Source
from exercises.text import NO_TEXT
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section

MODULES = (
    "checks",
    "judging",
    "required",
    "rules.formula",
    "rules.limits",
    "rules.reading",
    "rules.ruleset",
    "rules.sizes",
)
WITHOUT_SLOTS = {"RuleSet"}
"""Rule sets keep what they have worked out once."""

DEFAULTS: dict[str, dict[str, object]] = {
    "Check": {"bound": "at_most", "unit": "mm", "required": None, "short": False},
    "Required": {"minimum": 0.0, "opening": 0.0, "allowed": 0.0, "withheld": 0.0},
    "Given": {"facts": frozenset()},
    "Linear": {"less": Length(0.0, 0.0), "cap": None},
    "Row": {"bound": None, "inclusive": True},
    "Source": {"note": NO_TEXT},
    "Within": {"share": 0.0, "length": None, "each": None, "prorate": False},
    "Limit": {"short": None, "within": None},
    "Undersize": {"within": None},
    "Comparison": {"legs": ()},
    "SizeRow": {"unequal": False},
}
"""What is not stated is not asked, not allowed and not known."""


def values() -> list[type]:
    modules = [importlib.import_module(f"exercises.{name}") for name in MODULES]
    return [
        found
        for module in modules
        for found in vars(module).values()
        if isinstance(found, type) and is_dataclass(found) and found.__module__ == module.__name__
    ]


@pytest.mark.parametrize("value", values(), ids=lambda value: value.__name__)
def test_a_value_stays_as_it_is(value: type) -> None:
    assert value.__dataclass_params__.frozen  # type: ignore[attr-defined]
    assert ("__slots__" in vars(value)) is (value.__name__ not in WITHOUT_SLOTS)


def test_all_kinds_of_values_are_looked_at() -> None:
    found = {value.__name__ for value in values()}
    assert found >= {"Check", "Judgement", "RightHandling", "Required", "Limit", "Source", "Table"}


@pytest.mark.parametrize("value", values(), ids=lambda value: value.__name__)
def test_what_is_not_stated(value: type) -> None:
    known = DEFAULTS.get(value.__name__, {})
    if value.__name__ != "RuleSet":
        stated = {f.name: f.default for f in fields(value) if f.default is not MISSING}
        assert stated == known


@pytest.mark.parametrize(
    ("edition", "clause", "name"),
    [("", "", "D"), ("2010", "", "D:2010"), ("", "5.24", "D, 5.24"), ("2010", "5", "D:2010, 5")],
)
def test_a_source_is_named_as_far_as_it_is_known(edition: str, clause: str, name: str) -> None:
    assert Source("D", edition, clause, "seen").name == name


def test_sizes_have_a_least_and_other_limits_a_most() -> None:
    """Common practice, no source: a weld may be larger than called for, a lip no longer."""
    section = Section.of(Joint(), Bead(8.0, 8.0))
    coupon = Coupon("a", section, Callout(8.0, "leg", "8 mm"))
    for check in judge(coupon).checks:
        assert check.bound == ("at_least" if check.required is not None else "at_most")
        assert check.unit == "mm"


def test_the_thicker_plate_is_told_from_the_thinner() -> None:
    section = Section.of(Joint(90.0, 0.0, 10.0, 16.0), Bead(8.0, 8.0))
    known = given(Coupon("a", section, Callout(8.0, "leg", "8 mm"))).quantities
    assert (known["thinner"], known["thicker"]) == (10.0, 16.0)
