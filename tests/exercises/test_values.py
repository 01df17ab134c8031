"""What judges hands out values: nobody can change one, or hang something on it."""

from __future__ import annotations

import importlib
from dataclasses import MISSING, fields, is_dataclass

import pytest

from exercises.coupon import Callout, Coupon
from exercises.judging import judge
from exercises.required import given
from exercises.rules import RULE_SETS, RuleSet
from exercises.rules.formula import Length
from exercises.rules.limits import Limit, MinimumSize, Opening, Source, Undersize, Within
from exercises.rules.reading import read_rules
from exercises.rules.wording import minimum_line
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


# --- a rules document --------------------------------------------------------------------------

OWN = {"document": "a shop", "sureness": "own"}
SHOP: dict[str, object] = {"id": "shop", "title": "Shop", "source": OWN}


def test_what_a_rules_document_leaves_out() -> None:
    rules = read_rules(SHOP)
    assert rules == RuleSet("shop", 1, rules.title, Source("a shop", "", "", "own"))
    assert (rules.undersize, rules.opening, rules.minimum_size) == (None, None, None)
    assert (rules.limits, rules.stated_lines, rules.notes, rules.digest) == ((), (), (), "")
    assert rules.throat_is == "effective_throat"


def test_everything_that_a_rules_document_states_is_read() -> None:
    limit = {"measure": "convexity", "at_most": 2, "needs": "refer", "source": OWN}
    size = {"measured_as": "throat", "at_least": 3, "source": OWN}
    under = {"measured_as": "leg", "at_most": 1, "source": OWN}
    own = Source("a shop", "", "", "own")
    rules = read_rules(
        {
            **SHOP,
            "revision": 4,
            "throat_is": "theoretical_throat",
            "undersize": under,
            "opening": {"free": 1.5, "source": OWN},
            "minimum_size": size,
            "limits": [limit],
            "lines": ["Our own words."],
            "notes": ["One.", "Two."],
        }
    )
    assert (rules.id, rules.version, str(rules.title)) == ("shop", 4, "Shop")
    assert rules.throat_is == "theoretical_throat"
    assert rules.undersize == Undersize("leg", Length.plain(1.0), own, None)
    assert rules.opening == Opening(Length.plain(1.5), own)
    assert rules.minimum_size == MinimumSize("throat", Length.plain(3.0), own)
    assert rules.limits == (Limit("convexity", Length.plain(2.0), "refer", own, None, None),)
    assert [str(line) for line in rules.stated_lines] == ["Our own words."]
    assert [str(note) for note in rules.notes] == ["One.", "Two."]
    assert RuleSet("shop", 1, rules.title, own).digest == ""


def test_a_source_is_read_as_stated() -> None:
    stated = {**OWN, "edition": "2024", "clause": "3.1", "note": "Since the new hall."}
    source = read_rules({**SHOP, "source": stated}).source
    assert (source.document, source.edition, source.clause) == ("a shop", "2024", "3.1")
    assert (source.sureness, str(source.note)) == ("own", "Since the new hall.")


def test_a_share_of_a_length_is_prorated_where_it_says_so() -> None:
    for prorate in (True, False):
        within = {"length": 50, "each": 300, "prorate": prorate}
        limit = {
            "measure": "undercut", "at_most": 1, "short": 2, "within": within, "source": OWN,
        }  # fmt: skip
        read = read_rules({**SHOP, "limits": [limit]}).limits[0].within
        assert read == Within(length=Length.plain(50.0), each=Length.plain(300.0), prorate=prorate)
        # A weld of 200 mm has its share, 33 mm of it, or none.
        assert read.admits(1.0 / 6.0, 200.0, "mm") is prorate


def test_each_column_has_its_own_share_of_a_length() -> None:
    """50 in 300 mm is a sixth; 3 in 12 inches, kept in mm, a quarter."""
    within = Within(length=Length(50.0, 76.2), each=Length(300.0, 304.8))
    assert within.share_in("mm") == pytest.approx(1.0 / 6.0)
    assert within.share_in("in") == pytest.approx(0.25)
    assert [within.admits(0.2, None, unit) for unit in ("mm", "in")] == [False, True]
    # A weld of 302 mm is as long as the one, and shorter than the other.
    assert [within.admits(0.1, 302.0, unit) for unit in ("mm", "in")] == [True, False]


def test_rules_that_say_the_same_are_the_same_whatever_file_they_came_in() -> None:
    assert read_rules(SHOP, "one") == read_rules(SHOP, "other")
    assert read_rules(SHOP, "one").digest == "one"


def test_a_job_card_says_every_rule_once() -> None:
    """Undersize, opening, least size, then each limit, then the notes."""
    rules = RULE_SETS["aws-d1.1-static"]
    assert rules.opening is not None
    assert rules.minimum_size is not None
    assert len(rules.lines) == 3 + len(rules.limits) + len(rules.notes)
    assert len(set(map(str, rules.lines))) == len(rules.lines)
    least = str(minimum_line(rules.minimum_size, "both"))
    assert [str(line) for line in rules.lines].count(least) == 1
    bare = read_rules(SHOP)
    assert len(bare.lines) == 1
