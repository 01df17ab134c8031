"""What attempts say of a learner, against learners whose line is known."""

from __future__ import annotations

import random
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from exercises.learner.hit_miss import Curve, NoCurve
from exercises.learner.line import called_short
from tests.trainer.logbook.entries import BEGIN, entry_of
from trainer.logbook.findings import FEWEST, Findings, findings_of
from trainer.logbook.migrating import bring_up_to_date
from trainer.logbook.store import Logbook
from trainer.logbook.tallies import Tally
from trainer.records import Entry


def call_of(number: int, bias: float, spread: float, rng: random.Random) -> Entry:
    distance = rng.uniform(-0.9, 0.9)
    short = rng.random() < float(called_short(distance, bias, spread, 0.0))
    bad = distance < 0.0
    right = short == bad
    made = entry_of(number)
    return replace(
        made,
        at=BEGIN + timedelta(hours=5 * number),
        attempt={"disposition": "add weld metal" if short else "accept", "sure": 0.7},
        grade={
            "score": float(right), "marks": {"disposition": float(right)}, "critical": False,
            "right": "add weld metal" if bad else "accept", "in_doubt": False,
            "reasons": [] if right else [{"code": "too-small-leaf"}],
        },
        outcome={"distance": distance, "short": short, "bad": bad, "called_bad": short,
                 "in_doubt": False, "clean": True},
    )  # fmt: skip


def of(tmp_path: Path, count: int, bias: float, spread: float) -> Findings:
    rng = random.Random(5)
    with closing(Logbook.open(tmp_path / "logbook.sqlite3", bring_up_to_date)) as logbook:
        ann = logbook.add_learner("Bench 1")
        logbook.add_all(ann.id, [call_of(n, bias, spread, rng) for n in range(count)])
        return findings_of(logbook.tallies(ann.id))


def test_a_learner_who_draws_the_line_too_high_is_found_out(tmp_path: Path) -> None:
    found = of(tmp_path, 300, 0.2, 0.15)
    assert found.line is not None
    assert found.line.bias.low <= 0.2 <= found.line.bias.high
    assert found.line.spread.low <= 0.15 <= found.line.spread.high
    assert isinstance(found.curve, Curve)
    assert found.caught is not None
    # Nine in ten are called short 1.28 spreads under the line: 0.2 - 0.19 above the limit.
    assert found.caught.fitted == pytest.approx(-0.008, abs=0.08)
    assert found.caught.surely is not None
    assert found.caught.surely > found.caught.fitted
    assert found.rates.misses is not None
    assert found.rates.false_alarms is not None
    assert found.rates.false_alarms.value > found.rates.misses.value
    assert found.rates.standing("false alarms") == "unacceptable"
    assert found.faults[0][0] == "too-small-leaf"
    # Sure of seven in ten each time: one step, and how often right.
    (step,) = found.sure
    assert step.sure == 0.7
    assert step.right.of == 300
    assert sum(week.calls for week in found.weeks) == found.attempts == 300
    assert len(found.weeks) >= 8
    assert [week.monday.weekday() for week in found.weeks] == [0] * len(found.weeks)
    assert found.demonstrated.trials == found.rates.misses.of


def test_a_sharp_learner_has_no_curve_and_a_small_spread(tmp_path: Path) -> None:
    found = of(tmp_path, 120, 0.0, 0.001)
    assert isinstance(found.curve, NoCurve)
    assert found.curve.reason == "separated"
    assert found.caught is None
    assert found.line is not None
    assert found.line.spread.middle < 0.06
    assert found.demonstrated.shown
    assert found.rates.kappa == 1.0


def test_nothing_is_claimed_from_too_few(tmp_path: Path) -> None:
    found = of(tmp_path, FEWEST["line"] - 2, 0.0, 0.2)
    assert found.line is None
    assert found.first_line is None
    assert isinstance(found.curve, NoCurve)
    assert found.rates.kappa is None
    assert found.rates.standing("misses") is None
    assert found.sure == ()
    assert not found.demonstrated.shown


def test_steps_of_distance_hold_every_call(tmp_path: Path) -> None:
    found = of(tmp_path, 90, 0.0, 0.2)
    steps = found.shares(0.2)
    assert sum(share.of for _, share in steps) == 90
    assert [at for at, _ in steps] == sorted(at for at, _ in steps)
    assert steps[0][1].value > 0.9
    assert steps[-1][1].value < 0.1


def test_repeats_agree_or_don_t(tmp_path: Path) -> None:
    """Fleiss' kappa of 30 coupons called twice, 24 alike in balance: by hand 0.6."""
    calls = [(True, True)] * 12 + [(False, False)] * 12 + [(True, False)] * 6
    found = findings_of([], calls).repeats
    assert found is not None
    assert (found.alike.count, found.alike.of) == (24, 30)
    # Seen 24/30 = 0.8, by chance 0.5: (0.8 - 0.5) / 0.5.
    assert found.kappa == pytest.approx(0.6)
    few = findings_of([], calls[:3]).repeats
    assert few is not None
    assert few.kappa is None
    assert findings_of([]).repeats is None


def test_a_coupon_called_again_is_found_in_the_file(tmp_path: Path) -> None:
    with closing(Logbook.open(tmp_path / "logbook.sqlite3", bring_up_to_date)) as logbook:
        ann = logbook.add_learner("Bench 1")
        entries = [entry_of(n, coupons=5) for n in range(12)]
        logbook.add_all(ann.id, entries)
        said: dict[str, list[object]] = {}
        for entry in entries:
            said.setdefault(entry.digest, []).append(entry.outcome["called_bad"])
        assert sorted(logbook.repeats(ann.id)) == sorted(tuple(calls) for calls in said.values())


def test_only_the_newest_calls_make_the_line() -> None:
    old = [Tally(f"2025-{1 + n // 28:02}-{1 + n % 28:02}", "line", "20 short later", 4, 0.0)
           for n in range(300)]  # fmt: skip
    new = [Tally("2026-02-01", "line", "20 sound first", 400, 0.0)]
    found = findings_of([*new, *old])
    assert len(found.calls) == 400
    assert not any(call.short for call in found.calls)
