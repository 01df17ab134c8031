"""A sitting's progress: every answer that counts, and the time counted honestly."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.sitting.progress import (
    BEAT_MS,
    DRIFT_MS,
    Event,
    EventKind,
    Interruption,
    Progress,
    folded,
)
from exercises.strict_json import Json

NOON = 1_795_700_000_000
"""Some moment by the wall's clock, ms since 1970."""

LIMIT = 600_000


def begun(awake: int = 777, wall: int = NOON, items: int = 5) -> Event:
    return Event("begun", wall, awake, {"limit_ms": LIMIT, "items": items})


class Room:
    """A room with both clocks, in which a sitting is held; time passes as it is told to."""

    def __init__(self) -> None:
        self.wall, self.awake = NOON, 777
        self.events = [begun()]

    def passes(self, ms: int) -> Room:
        """The program runs."""
        self.wall, self.awake = self.wall + ms, self.awake + ms
        return self

    def sleeps(self, ms: int) -> Room:
        """The lid is closed."""
        self.wall += ms
        return self

    def is_set(self, ms: int) -> Room:
        """Somebody sets the wall's clock."""
        self.wall += ms
        return self

    def starts_anew(self, ms: int, awake: int = 40) -> Room:
        """The program is killed, and started again."""
        self.wall, self.awake = self.wall + ms, awake
        return self.notes("resumed")

    def notes(self, kind: EventKind, **said: Json) -> Room:
        self.events.append(Event(kind, self.wall, self.awake, said))
        return self

    @property
    def progress(self) -> Progress:
        return folded(self.events)


def moment(ms: int) -> datetime:
    return datetime(1970, 1, 1, tzinfo=UTC) + timedelta(milliseconds=ms)


def kinds(progress: Progress) -> list[str]:
    return [each.kind for each in progress.interruptions]


# --- time -----------------------------------------------------------------------------------------


def test_time_runs_by_the_clock_that_nobody_can_set() -> None:
    room = Room().passes(60_000).notes("beat").passes(30_500).notes("beat")
    assert (room.progress.used_ms, room.progress.left_ms) == (90_500, LIMIT - 90_500)
    assert room.progress.interruptions == ()
    assert room.progress.left_at(room.awake + 500) == LIMIT - 91_000
    assert room.progress.left_at(0) == LIMIT - 90_500, "a clock that runs back gives nothing"


def test_a_kill_is_charged_what_was_written_down_and_its_gap_to_nobody() -> None:
    room = Room().passes(100_000).notes("beat").passes(4_900).starts_anew(300_000)
    assert room.progress.used_ms == 100_000, "what came after the last beat is the learner's"
    gap = Interruption(moment(NOON + 100_000), 304_900, "closed")
    assert room.progress.interruptions == (gap,)
    assert room.passes(10_000).notes("beat").progress.used_ms == 110_000


def test_the_clock_may_begin_anywhere_after_a_start() -> None:
    for awake in (0, 5, 99_999_999):
        room = Room().passes(1_000).notes("beat").starts_anew(5_000, awake=awake)
        assert room.passes(2_000).notes("beat").progress.used_ms == 3_000


def test_a_lid_that_was_closed_is_an_interruption_and_no_used_time() -> None:
    room = Room().passes(5_000).notes("beat").sleeps(3_600_000).passes(1_000).notes("woke")
    assert room.progress.used_ms == 6_000
    asleep = Interruption(moment(NOON + 5_000), 3_600_000, "asleep")
    assert room.progress.interruptions == (asleep,)


def test_a_clock_set_back_changes_no_time_and_is_recorded() -> None:
    room = Room().passes(5_000).notes("beat").is_set(-3_600_000).passes(1_000).notes("beat")
    assert room.progress.used_ms == 6_000
    assert room.progress.interruptions == (Interruption(moment(NOON + 5_000), None, "clock"),)


def test_a_clock_set_back_while_the_program_was_closed_is_recorded_too() -> None:
    room = Room().passes(5_000).notes("beat").starts_anew(-60_000)
    found = [(each.ms, each.kind) for each in room.progress.interruptions]
    assert found == [(None, "closed"), (None, "clock")]
    assert room.progress.used_ms == 5_000


def test_a_clock_that_drifts_is_no_interruption() -> None:
    room = Room()
    for number in range(100):
        room.is_set(DRIFT_MS * (-1) ** number).passes(BEAT_MS).notes("beat")
    assert kinds(room.progress) == []
    assert room.progress.used_ms == 100 * BEAT_MS
    room.is_set(DRIFT_MS + 1).passes(BEAT_MS).notes("beat")
    room.is_set(-DRIFT_MS - 1).passes(BEAT_MS).notes("beat")
    assert kinds(room.progress) == ["asleep", "clock"]


class Step(NamedTuple):
    does: str
    ms: int


steps = st.lists(
    st.builds(
        Step,
        st.sampled_from(["passes", "sleeps", "is_set", "kill", "shown", "answered", "beat"]),
        st.integers(0, 40_000),
    ),
    max_size=40,
)


@given(steps)
def test_used_time_is_what_passed_awake_between_what_was_written(walk: list[Step]) -> None:
    """A model that only counts: awake time since the last event, lost at a kill."""
    room, used, since = Room(), 0, 0
    spent: dict[int, int] = {}
    at: int | None = None
    for step in walk:
        if step.does == "passes":
            room.passes(step.ms)
            since += step.ms
        elif step.does in {"sleeps", "is_set"}:
            sign = 1 if step.does == "sleeps" or step.ms % 2 else -1
            room.is_set(sign * step.ms)
        else:
            if step.does == "kill":
                room.starts_anew(step.ms)
            else:
                if at is not None and since:
                    spent[at] = spent.get(at, 0) + since
                used += since
                said: dict[str, Json] = {"item": step.ms % 5, "answer": step.ms}
                room.events.append(Event(step.does, room.wall, room.awake, said))  # type: ignore[arg-type]  # of three kinds
                at = step.ms % 5 if step.does == "shown" else at
            since = 0
    progress = room.progress
    assert progress.used_ms == used
    assert progress.left_ms == max(0, LIMIT - used)
    assert dict(progress.spent_ms) == spent
    assert sum(1 for each in progress.interruptions if each.kind == "closed") == sum(
        step.does == "kill" for step in walk
    )


@given(steps, st.integers(0, 40))
def test_folding_on_is_folding_the_whole(walk: list[Step], cut: int) -> None:
    room = Room()
    for step in walk:
        room.passes(step.ms).notes("shown", item=step.ms % 5)
    cut = min(cut, len(walk)) + 1
    progress = folded(room.events[:cut])
    for event in room.events[cut:]:
        progress = progress.after(event)
    assert progress == room.progress


# --- answers --------------------------------------------------------------------------------------


def test_the_latest_answer_counts_and_all_are_kept() -> None:
    room = Room().notes("shown", item=2).passes(1_000).notes("answered", item=2, answer="a")
    room.passes(1_000).notes("answered", item=2, answer="b").notes("answered", item=0, answer="c")
    assert room.progress.answers == {2: "b", 0: "c"}
    assert [(given.item, given.stated) for given in room.progress.given] == [
        (2, True), (2, True), (0, True)
    ]  # fmt: skip
    assert [given.used_ms for given in room.progress.given] == [1_000, 2_000, 2_000]
    assert room.progress.given[0].at == moment(NOON + 1_000)
    assert (room.progress.answered, room.progress.unanswered) == ({0, 2}, (1, 3, 4))


def test_what_was_superseded_counts_as_given_though_it_isn_t_kept() -> None:
    whole, bare = Room(), Room()
    for room in (whole, bare):
        old: dict[str, Json] = {"answer": "a"} if room is whole else {"superseded": True}
        room.passes(1_000).notes("answered", item=1, **old).passes(1_000)
        room.notes("answered", item=1, answer="b").notes("answered", item=1, answer=None)
        room.notes("answered", item=1, answer="c").passes(LIMIT + BEAT_MS)
        room.notes("answered", item=1, **old)
    assert whole.progress == bare.progress
    assert bare.progress.answers == {1: "c"}
    assert [given.stated for given in bare.progress.given] == [True, True, False, True]


def test_an_answer_can_be_taken_back() -> None:
    room = Room().notes("answered", item=1, answer="a").notes("answered", item=1, answer=None)
    assert room.progress.answers == {}
    assert room.progress.unanswered == (0, 1, 2, 3, 4)
    assert [given.stated for given in room.progress.given] == [True, False]


def test_an_answer_long_after_the_time_is_up_doesn_t_count() -> None:
    room = Room().passes(LIMIT + BEAT_MS).notes("answered", item=0, answer="in the last beat")
    assert room.progress.is_time_up
    room.passes(1).notes("answered", item=0, answer="later").notes("answered", item=1, answer="x")
    assert room.progress.answers == {0: "in the last beat"}
    assert room.progress.left_ms == 0


def test_marks_for_review_come_and_go() -> None:
    room = Room().notes("flagged", item=3, on=True).notes("flagged", item=1, on=True)
    room.notes("flagged", item=3, on=False).notes("flagged", item=0, on="yes")
    assert room.progress.flagged == {1}


def test_visits_count_each_coming_and_time_goes_to_what_is_shown() -> None:
    room = Room().passes(500).notes("shown", item=0).passes(3_000).notes("shown", item=1)
    room.passes(2_000).notes("beat").passes(2_000).notes("shown", item=0).passes(1_000)
    room.notes("finished", ended="finished")
    assert dict(room.progress.spent_ms) == {0: 4_000, 1: 4_000}
    assert dict(room.progress.visits) == {0: 2, 1: 1}
    assert room.progress.used_ms == 8_500


def test_the_same_coupon_after_a_kill_is_no_second_visit() -> None:
    room = Room().notes("shown", item=4).passes(1_000).notes("beat").starts_anew(9_000)
    assert room.progress.at == 4
    assert dict(room.notes("shown", item=4).progress.visits) == {4: 1}


# --- the end --------------------------------------------------------------------------------------


@pytest.mark.parametrize("ended", ["finished", "time up"])
def test_it_ends_once_and_nothing_follows(ended: str) -> None:
    room = Room().notes("shown", item=0).passes(9_000).notes("finished", ended=ended)
    progress = room.progress
    assert (progress.ended, progress.at, progress.finished) == (ended, None, moment(room.wall))
    for kind in ("shown", "answered", "flagged", "beat", "woke", "finished", "begun"):
        with pytest.raises(ValueError, match=r"ended|once"):
            progress.after(Event(kind, room.wall, room.awake, {"item": 0, "ended": ended}))


def test_what_was_stated_in_time_counts_however_late_the_disk_takes_it() -> None:
    room = Room().notes("answered", item=1, answer="a").passes(LIMIT + 10 * BEAT_MS)
    room.notes("answered", item=0, answer="too late")
    room.notes("finished", ended="time up", held=[[1, "b"], [2, {"face": "flat"}]])
    assert room.progress.answers == {1: "b", 2: {"face": "flat"}}
    assert [each.used_ms for each in room.progress.given] == [0, LIMIT, LIMIT]


@pytest.mark.parametrize("held", [{}, "a", [1], [[1]], [[1, "a", 2]], [[9, "a"]], [["1", "a"]]])
def test_what_was_held_is_pairs(held: Json) -> None:
    with pytest.raises(ValueError, match=r"pairs|no item|no whole number"):
        Room().notes("finished", ended="finished", held=held).progress  # noqa: B018  # as above


def test_one_that_ended_can_be_resumed_to_be_handed_in() -> None:
    room = Room().passes(9_000).notes("finished", ended="finished")
    before = room.progress
    after = room.starts_anew(60_000).progress
    assert after.used_ms == before.used_ms == 9_000
    assert after.interruptions == before.interruptions == ()
    assert (after.finished, after.ended) == (before.finished, "finished")


# --- what is no sitting ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    "said",
    [
        {"limit_ms": 0, "items": 3}, {"limit_ms": 5, "items": 0}, {"items": 3}, {"limit_ms": 5},
        {"limit_ms": True, "items": 3}, {"limit_ms": 5.5, "items": 3},
        {"limit_ms": "5", "items": 3},
    ],
)  # fmt: skip
def test_a_beginning_says_time_and_coupons(said: dict[str, Json]) -> None:
    with pytest.raises(ValueError, match=r"no whole number|has time"):
        folded([Event("begun", NOON, 0, said)])


@pytest.mark.parametrize("item", [-1, 5, None, "1", 1.0, True])
@pytest.mark.parametrize("kind", ["shown", "answered", "flagged"])
def test_an_item_that_isn_t_there_is_refused(kind: EventKind, item: Json) -> None:
    with pytest.raises(ValueError, match=r"item|no whole number"):
        Room().notes(kind, item=item).progress  # noqa: B018  # asking for it is what is refused


def test_events_come_in_an_order_that_can_be() -> None:
    with pytest.raises(ValueError, match="nothing"):
        folded([])
    with pytest.raises(ValueError, match="beginning"):
        folded([Event("beat", NOON, 0)])
    with pytest.raises(ValueError, match="once"):
        folded([begun(), begun()])
    with pytest.raises(ValueError, match="ends as"):
        folded([begun(), Event("finished", NOON, 900, {"ended": "fled"})])


@pytest.mark.parametrize(
    "written",
    [
        {}, {"kind": "shown"}, {"kind": "sung", "wall": 1, "awake": 1},
        {"kind": "beat", "wall": "1", "awake": 1}, {"kind": "beat", "wall": 1, "awake": None},
        {"kind": "beat", "wall": -1, "awake": 1}, {"kind": "beat", "wall": 10**18, "awake": 1},
        {"kind": ["beat"], "wall": 1, "awake": 1}, {"kind": "beat", "wall": True, "awake": 1},
    ],
)  # fmt: skip
def test_what_is_no_event_is_refused(written: dict[str, Json]) -> None:
    with pytest.raises(ValueError, match=r"kind of event|whole number|no date"):
        Event.of(written)


@given(
    st.sampled_from(["begun", "answered", "beat"]),
    st.integers(0, 253_402_300_799_000),
    st.integers(),
    st.dictionaries(st.text().filter(lambda k: k not in {"kind", "wall", "awake"}), st.integers()),
)
def test_an_event_is_read_as_it_was_written(
    kind: EventKind, wall: int, awake: int, said: dict[str, Json]
) -> None:
    event = Event(kind, wall, awake, said)
    assert Event.of(event.as_dict()) == event
    assert event.at.tzinfo is not None
