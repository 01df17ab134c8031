"""Records and settings: what is written, and what a broken file or disk costs."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from trainer.records import Entry, Records, RecordsError, read_entries
from trainer.settings import Settings, load_settings, save_settings

ENTRY = Entry(
    coupon={"id": "a"},
    digest="0f",
    rules={"id": "as-drawn", "version": 1},
    attempt={"face": "convex"},
    grade={"score": 1.0},
    handling=[[0, 1.0, 2.0, 0.0, False, "pick 8 mm leg"]],
    zoom={"picture": 20.0, "loupe": 45.0},
    at=datetime(2026, 3, 1, 12, 0, tzinfo=UTC),
)


def test_a_call_is_one_line_and_calls_only_ever_follow(tmp_path: Path) -> None:
    records = Records(tmp_path / "new" / "calls.jsonl")
    records.add(ENTRY)
    first = records.path.read_bytes()
    records.add(replace(ENTRY, digest="10"))
    both = records.path.read_bytes()
    assert both.startswith(first)
    lines = [json.loads(line) for line in both.splitlines()]
    assert [line["digest"] for line in lines] == ["0f", "10"]
    assert lines[0]["at"] == "2026-03-01T12:00:00.000+00:00"
    assert lines[0]["handling"] == [[0, 1.0, 2.0, 0.0, False, "pick 8 mm leg"]]


def test_a_torn_line_does_not_swallow_the_next(tmp_path: Path) -> None:
    records = Records(tmp_path / "calls.jsonl")
    records.path.write_text('{"torn', encoding="utf-8")
    records.add(ENTRY)
    assert json.loads(records.path.read_text(encoding="utf-8").splitlines()[1])["digest"] == "0f"


def test_what_cannot_be_written_says_where_and_why(tmp_path: Path) -> None:
    (tmp_path / "calls.jsonl").mkdir()
    with pytest.raises(RecordsError) as caught:
        Records(tmp_path / "calls.jsonl").add(ENTRY)
    assert caught.value.path == tmp_path / "calls.jsonl"
    assert caught.value.reason


def test_settings_come_back_as_they_were_saved(tmp_path: Path) -> None:
    file = tmp_path / "here" / "settings.json"
    wanted = Settings(appearance="dark", unit="in", loupe=False, first_start_seen=True)
    assert save_settings(file, wanted)
    assert load_settings(file) == wanted
    assert [path.name for path in file.parent.iterdir()] == ["settings.json"]


@pytest.mark.parametrize(
    "text",
    ["", "[]", "{", '{"appearance": "pink"}', '{"loupe": 1}', '{"unit": "furlong"}', '{"x": 1}',
     '{"appearance": ["dark"]}', "\x00"],
)  # fmt: skip
def test_unusable_settings_are_the_default(tmp_path: Path, text: str) -> None:
    file = tmp_path / "settings.json"
    file.write_text(text, encoding="utf-8")
    assert load_settings(file) == Settings()


def test_a_home_that_cannot_be_written_costs_no_start(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    assert not save_settings(tmp_path / "file" / "settings.json", Settings())


def test_entries_come_back_and_torn_lines_are_told(tmp_path: Path) -> None:
    records = Records(tmp_path / "calls.jsonl")
    named = replace(ENTRY, learner="b7", source="drill", before_feedback=True,
                    outcome={"distance": -0.3, "short": True})  # fmt: skip
    records.add(ENTRY)
    records.add(named)
    lines = [*records.path.read_bytes().splitlines(), b'{"torn', b"[]", b'{"format": "other"}']
    assert list(read_entries(lines)) == [ENTRY, named, None, None, None]


def test_a_line_of_version_1_gets_an_id_that_stays_the_same() -> None:
    old = dict(ENTRY.as_dict(), version=1)
    for key in ("id", "outcome", "learner", "source", "before_feedback"):
        del old[key]
    line = json.dumps(old).encode()
    (first,) = read_entries([line])
    (again,) = read_entries([line])
    assert first is not None
    assert first == again
    assert first.grade == ENTRY.grade
    (other,) = read_entries([line.replace(b'"0f"', b'"1f"')])
    assert other is not None
    assert other.id != first.id
