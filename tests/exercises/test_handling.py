"""Handling: a record that only grows, and replays as it was."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.handling import Entry, HandlingLog
from geometry.pose import Pose


def log(*events: str) -> HandlingLog:
    record = HandlingLog()
    for index, event in enumerate(events):
        record = record.added(Entry(index * 100, float(index), 0.5, 0.0, False, event))
    return record


def test_a_record_is_extended_only_by_a_longer_one() -> None:
    short = log("pick 8 mm leg", "grab")
    longer = short.added(Entry(300, 2.0, 2.0, 90.0, True, "turn over"))
    assert len(short) == 2
    assert longer.entries[:2] == short.entries
    assert longer.entries[2].pose == Pose(2.0, 2.0, 90.0, turned=True)


def test_undoing_adds() -> None:
    undone = log("pick 8 mm leg", "press home", "undo 8 mm leg")
    assert [entry.event for entry in undone.entries][-2:] == ["press home", "undo 8 mm leg"]


def test_time_never_runs_back() -> None:
    record = log("a", "b", "c").added(Entry(5, 0.0, 0.0, 0.0, False, "d"))
    assert [entry.ms for entry in record.entries] == [0, 100, 200, 200]
    assert record.duration == 200


def test_each_picture_shows_its_own_pose_and_the_leaf_of_that_time() -> None:
    frames = list(
        log("look", "pick 8 mm leg", "drag", "swap ends 8 mm throat", "pick a 4.5 mm leg",
            "put back", "undo a 4.5 mm leg", "pick 1 in leg",
            "pick 5/16 in throat", "undo").frames()
    )  # fmt: skip
    shown = [(f.leaf.mark, f.leaf.edge) if f.leaf else None for f in frames]
    assert shown == [
        None, ("8 mm", "leg"), ("8 mm", "leg"), ("8 mm", "throat"), ("a 4.5 mm", "leg"),
        None, ("a 4.5 mm", "leg"), ("1 in", "leg"), ("5/16 in", "throat"), None,
    ]  # fmt: skip
    assert [f.pose.x for f in frames] == [float(i) for i in range(10)]


def test_a_leaf_that_no_rack_has_any_more_is_not_drawn() -> None:
    assert [frame.leaf for frame in log("pick 9 mm leg", "drag").frames()] == [None, None]


def test_clean_toes_stay_clean_until_undone() -> None:
    frames = log("drag", "clean", "drag", "undo 8 mm leg spattered", "drag").frames()
    assert [frame.cleaned for frame in frames] == [False, True, True, False, False]


@pytest.mark.parametrize(
    ("ms", "event"), [(-5, "a"), (0, "a"), (99.9, "a"), (100, "b"), (9e9, "c")]
)
def test_the_picture_at_a_time_is_the_last_before_it(ms: float, event: str) -> None:
    assert log("a", "b", "c").frame_at(ms).event == event


def test_an_empty_record_has_no_picture() -> None:
    assert list(HandlingLog().frames()) == []
    assert HandlingLog().duration == 0
    with pytest.raises(IndexError):
        HandlingLog().frame_at(0)


NUMBERS = st.floats(-1e4, 1e4)
ENTRIES = st.builds(
    Entry, st.integers(0, 10**7), NUMBERS, NUMBERS, NUMBERS, st.booleans(),
    st.text(min_size=1, max_size=20),
)  # fmt: skip


@given(st.lists(ENTRIES, max_size=20))
def test_a_record_comes_back_from_json_exactly(entries: list[Entry]) -> None:
    record = HandlingLog()
    for entry in entries:
        record = record.added(entry)
    assert HandlingLog.from_json(json.loads(json.dumps(record.as_json()))) == record
    assert len(list(record.frames())) == len(entries)


@pytest.mark.parametrize(
    ("listed", "why"),
    [
        ({}, "a record is a list of entries"),
        ([3], "entry 1: an entry is a list of six"),
        ([[0, 0, 0, 0, False]], "entry 1: an entry is a list of six"),
        ([[-1, 0, 0, 0, False, "a"]], "entry 1: ms is -1"),
        ([[0.5, 0, 0, 0, False, "a"]], "entry 1: ms is 0.5"),
        ([[True, 0, 0, 0, False, "a"]], "entry 1: ms is True"),
        ([[0, "0", 0, 0, False, "a"]], "entry 1: '0' is no coordinate"),
        ([[0, 0, float("nan"), 0, False, "a"]], "entry 1: nan is no coordinate"),
        ([[0, 0, 0, 0, 0, "a"]], "entry 1: turned is 0"),
        ([[0, 0, 0, 0, False, ""]], "entry 1: the event is no text"),
        ([[0, 0, 0, 0, False, "x" * 101]], "entry 1: the event is no text"),
        ([[9, 0, 0, 0, False, "a"], [8, 0, 0, 0, False, "b"]], "entry 2: time runs back"),
    ],
)
def test_what_is_no_record_is_refused_with_its_entry(listed: object, why: str) -> None:
    with pytest.raises(ValueError, match="^" + why):
        HandlingLog.from_json(listed)  # type: ignore[arg-type]
