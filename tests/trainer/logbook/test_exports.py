"""Exports against independent readers: the csv module, and ralph's model of xAPI statements."""

from __future__ import annotations

import csv
import json
import re
from dataclasses import replace
from datetime import timedelta, timezone
from typing import Any

import pytest
from pydantic import ValidationError
from ralph.models.xapi.base.statements import BaseXapiStatement

from tests.trainer.logbook.entries import entry_of
from trainer.logbook.exports import COLUMNS, csv_lines, statement_of, statements
from trainer.logbook.store import Learner

ANN = Learner("6f0f2d5e-0000-4000-8000-000000000001", "Bench 1")


def nulls(value: object, path: str = "") -> list[str]:
    if isinstance(value, dict):
        return [f for key, inner in value.items() for f in nulls(inner, f"{path}/{key}")]
    if isinstance(value, list):
        return [f for inner in value for f in nulls(inner, f"{path}/-")]
    return [path] if value is None else []


@pytest.mark.parametrize("number", range(0, 120, 7))
def test_every_statement_is_valid_by_an_independent_model(number: int) -> None:
    said = json.loads(next(statements(ANN, [entry_of(number)])))
    BaseXapiStatement(**said)
    # What that model lets pass, by the specification: zone and milliseconds, no null, a duration
    # of hundredths, a score within its ends.
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z", said["timestamp"])
    assert re.fullmatch(r"PT\d+\.\d\dS", said["result"]["duration"])
    assert nulls(said) == []
    score = said["result"]["score"]
    assert score["min"] <= score["raw"] <= score["max"]
    assert "version" not in said


def test_that_model_refuses_what_is_wrong() -> None:
    good: dict[str, Any] = statement_of(ANN, entry_of(1))
    for broken in (
        {**good, "actor": {"objectType": "Agent"}},
        {**good, "verb": {"id": "no iri"}},
        {**good, "result": {"score": {"scaled": 1.2}}},
        {**good, "id": "not a uuid"},
    ):
        with pytest.raises(ValidationError):
            BaseXapiStatement(**broken)


def test_the_same_attempt_has_the_same_id_and_no_name_unless_asked() -> None:
    entry = entry_of(3)
    assert statement_of(ANN, entry) == statement_of(ANN, entry)
    assert statement_of(ANN, entry)["id"] == entry.id
    assert "Bench 1" not in json.dumps(statement_of(ANN, entry))
    assert statement_of(ANN, entry, named=True)["actor"]["name"] == "Bench 1"  # type: ignore[index]


def test_a_time_of_another_zone_is_told_in_utc() -> None:
    entry = replace(entry_of(0), at=entry_of(0).at.astimezone(timezone(timedelta(hours=5))))
    assert statement_of(ANN, entry)["timestamp"] == "2026-03-02T09:00:00.000Z"


def test_the_table_reads_back() -> None:
    entries = [entry_of(number) for number in range(20)]
    text = "".join(csv_lines(entries))
    assert text.count("\r\n") == 21
    rows = list(csv.DictReader(text.splitlines()))
    assert tuple(rows[0]) == COLUMNS
    for row, entry in zip(rows, entries, strict=True):
        assert row["attempt"] == entry.id
        assert float(row["distance_mm"]) == entry.outcome["distance"]
        assert float(row["score"]) == entry.grade["score"]
        assert row["seconds"] == "0.04"


@pytest.mark.parametrize("name", ["=1+1", "@cmd", "-2", "+x"])
def test_no_coupon_s_name_is_taken_for_a_formula(name: str) -> None:
    entry = replace(entry_of(1), coupon={"id": name})
    row = next(csv.DictReader("".join(csv_lines([entry])).splitlines()))
    assert row["coupon"] == f"'{name}"


def test_names_with_commas_quotes_and_new_lines_stay_whole() -> None:
    name = 'a "b", c\nd'
    entry = replace(entry_of(1), coupon={"id": name})
    lines = "".join(csv_lines([entry]))
    rows = list(csv.reader(lines.splitlines(keepends=True)))
    assert rows[1][2] == name
