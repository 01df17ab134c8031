"""The reference: made from what judges, whole, searchable, and the same in the docs."""

from __future__ import annotations

import json
import re
from dataclasses import fields
from importlib.resources import files
from pathlib import Path

import pytest

from exercises.definitions import definitions, reference
from exercises.doubt import doubt
from exercises.reference import Entry, as_markdown, of_rules, search
from exercises.rules import RULE_SETS, RuleSet
from exercises.rules.wording import limit_formula
from exercises.source_words import source_words
from geometry.measures import Measures

PAGE = Path(__file__).resolve().parents[2] / "assets" / "reference.md"


@pytest.fixture(scope="module")
def entries() -> dict[str, Entry]:
    return {entry.key: entry for entry in reference()}


def test_the_page_in_the_docs_is_up_to_date() -> None:
    """To renew it: write `as_markdown(reference())` to the file."""
    assert PAGE.read_text(encoding="utf-8") == as_markdown(reference())


def test_keys_are_unique_and_what_is_related_is_there(entries: dict[str, Entry]) -> None:
    assert len(entries) == len(reference())
    for entry in entries.values():
        assert not [key for key in entry.related if key not in entries]
        assert entry.key not in entry.related


def test_every_measure_is_defined(entries: dict[str, Entry]) -> None:
    for field in fields(Measures):
        key = "word.face" if field.name == "face" else f"measure.{field.name}"
        assert key in entries, field.name


@pytest.mark.parametrize("rules", RULE_SETS.values(), ids=lambda rules: rules.id)
def test_every_limit_of_every_set_is_there(rules: RuleSet, entries: dict[str, Entry]) -> None:
    at = f"rules.{rules.id}"
    for limit in rules.limits:
        entry = entries[f"{at}.{limit.measure}"]
        assert entry.formula == limit_formula(limit)
        assert (entry.source, entry.sureness) == (limit.source.name, limit.source.sureness)
        assert limit.needs in str(entry.text)
    assert (f"{at}.undersize" in entries) == (rules.undersize is not None)
    assert (f"{at}.opening" in entries) == (rules.opening is not None)
    assert (f"{at}.minimum_size" in entries) == (rules.minimum_size is not None)
    assert len([key for key in entries if key.startswith(f"{at}.size.")]) == len(rules.sizes)


def test_all_is_said_in_both_languages(entries: dict[str, Entry]) -> None:
    for entry in entries.values():
        assert entry.title.in_language("en")
        assert {tag for tag, _ in entry.title.versions} >= {"en", "es"}
        for text in (entry.text, entry.formula):
            assert "{" not in text.in_language("en") + text.in_language("es")
        if entry.text and not entry.key.startswith("leaf.rack."):
            assert entry.text.in_language("en") != entry.text.in_language("es"), entry.key


def test_sources_keep_the_names_of_documents_and_nothing_english_in_spanish(
    entries: dict[str, Entry],
) -> None:
    for entry in entries.values():
        said = source_words(entry.source).in_language("es")
        assert not re.search(r"\b(and|of|this|own|from|memory|Tables?|by|January|to)\b", said), said
    shop = "Yard and Sons, Table of ours"
    assert source_words(shop).in_language("es") == shop


def test_figures_come_from_the_modules_that_use_them(entries: dict[str, Entry]) -> None:
    text = str(entries["doubt.leaf"].text)
    assert f"{doubt('leg'):.2f} mm at a leg" in text
    assert f"{doubt('throat'):.2f} mm at the throat" in text
    stated = (files("exercises") / "definitions.json").read_text(encoding="utf-8")
    numbers = [entry["text"]["en"] for entry in json.loads(stated) if entry["key"] == "doubt.leaf"]
    assert not [text for text in numbers if "0.1" in text]


def test_an_undersize_is_told_from_a_crack(entries: dict[str, Entry]) -> None:
    assert "It is no crack" in str(entries["word.undersize"].text)
    assert "word.undersize" in entries["rules.aws-d1.1-static.undersize"].related


def test_a_shop_s_own_rules_come_last() -> None:
    rules = RULE_SETS["as-drawn"]
    assert reference(rules)[-len(of_rules(rules)) :] == of_rules(rules)
    assert reference()[: len(definitions())] == definitions()


# --- searching ------------------------------------------------------------------------------------


def test_titles_come_first_and_every_word_must_be_there() -> None:
    found = [entry.key for entry in search(reference(), "convexity", "en")]
    assert found[0] == "measure.convexity"
    assert "rules.iso-5817-c.convexity" in found
    narrowed = [entry.key for entry in search(reference(), "convexity aws static", "en")]
    assert narrowed[0] == "rules.aws-d1.1-static.convexity"
    assert set(narrowed) < set(found)
    assert search(reference(), "convexity zzz", "en") == ()


def test_nothing_typed_finds_all_in_order() -> None:
    assert search(reference(), "  ", "en") == reference()


@pytest.mark.parametrize("typed", ["ángulo del borde", "ANGULO  DEL BORDE"])
def test_accents_and_capitals_don_t_matter(typed: str) -> None:
    found = [entry.key for entry in search(reference(), typed, "es")]
    assert "measure.toe_angle_base" in found


def test_sureness_and_source_can_be_searched() -> None:
    found = search(reference(), "second-hand iso", "en")
    assert {entry.sureness for entry in found} == {"second-hand"}
    assert search(reference(), "jcgm 106", "en")[0].key == "doubt.leaf"
