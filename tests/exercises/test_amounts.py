"""Amounts: nothing that is written there crashes, and what is found sound can be worked out."""

from __future__ import annotations

import json
import math
from typing import Any

import jsonschema
from hypothesis import given
from hypothesis import strategies as st

from exercises.amounts import amount_faults
from exercises.rule_files import rules_schema
from exercises.rules.formula import FACTS, QUANTITIES, Given
from exercises.rules.reading import read_rules
from exercises.rules.wording import amount_words

SOURCE = {"document": "a shop", "sureness": "own"}
LENGTHS = st.one_of(
    st.floats(0.0, 1000.0),
    st.integers(0, 1000),
    st.sampled_from(["1/16 in", "3 mm", '0.25"']),
    st.builds(lambda mm: {"mm": mm, "in": "1/8 in"}, st.floats(0.0, 100.0)),
)


def amounts(inner: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    quantity = st.sampled_from(QUANTITIES)
    share = st.fixed_dictionaries({"of": quantity, "by": st.floats(0.01, 5.0)})
    linear = st.fixed_dictionaries(
        {"share": share}, optional={"base": LENGTHS, "less": LENGTHS, "cap": LENGTHS}
    )
    table = st.builds(
        lambda by, first, rest, key: {
            "by": by, "rows": [{key: 12, "amount": first}, {"amount": rest}],
        },
        quantity, inner, inner, st.sampled_from(["up_to", "below"]),
    )  # fmt: skip
    where = st.builds(
        lambda fact, then, other: {"where": fact, "then": then, "else": other},
        st.sampled_from(FACTS), inner, inner,
    )  # fmt: skip
    several = st.lists(inner, min_size=1, max_size=3)
    extreme = st.one_of(
        st.builds(lambda each: {"least_of": each}, several),
        st.builds(lambda each: {"greatest_of": each}, several),
    )
    return st.one_of(linear, table, where, extreme)


SOUND = st.recursive(LENGTHS, amounts, max_leaves=6)
JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["mm", "in", "share", "of", "by", "rows", "amount", "up_to", "where",
                             "then", "else", "least_of", "greatest_of", "cap", "zzz"]),
            inner, max_size=4,
        )
    ),
    max_leaves=12,
)  # fmt: skip


def read(amount: Any) -> Any:
    limit = {"measure": "convexity", "at_most": amount, "source": SOURCE}
    document = {"id": "shop", "title": "Shop", "source": SOURCE, "limits": [limit]}
    return read_rules(document).limits[0].amount


@given(SOUND, st.sampled_from(["mm", "in"]), st.sets(st.sampled_from(FACTS)))
def test_what_is_sound_can_be_worked_out_and_said(amount: Any, unit: Any, facts: Any) -> None:
    assert amount_faults(amount, "") == []
    found = read(amount)
    value = found.value(Given(unit, dict.fromkeys(QUANTITIES, 12.0), frozenset(facts)))
    assert math.isfinite(value)
    assert str(amount_words(found))


@given(SOUND)
def test_the_schema_takes_what_is_sound(amount: Any) -> None:
    schema = {"$ref": "#/$defs/Amount", "$defs": rules_schema()["$defs"]}
    jsonschema.Draft202012Validator(schema).validate(json.loads(json.dumps(amount)))


@given(JSON)
def test_anything_else_gets_faults_with_a_place_and_never_crashes(amount: Any) -> None:
    faults = amount_faults(amount, "/at_most")
    assert all(fault.at.startswith("/at_most") and fault.code and fault.right for fault in faults)
    if not faults:
        assert math.isfinite(read(amount).value(Given("mm", dict.fromkeys(QUANTITIES, 1.0))))
