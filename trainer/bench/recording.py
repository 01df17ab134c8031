"""A call as it is put on record."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from datetime import UTC, datetime

from exercises.learner.outcome import outcome_of
from trainer.bench.state import BenchState, attempt_of
from trainer.records import Entry

__all__ = ["record_of"]


def record_of(state: BenchState, zoom: Mapping[str, float | None]) -> Entry:
    """Return the record of a state's call.

    Parameters
    ----------
    state
        In its debrief: with a grade.
    zoom
        Device pixels per mm at the call, of the picture and of the loupe.

    Raises
    ------
    ValueError
        If the state has no grade yet.
    """
    if state.grade is None:
        raise ValueError("a call is recorded once it is graded")
    rules = state.coupon.rule_set
    named = {"id": rules.id, "version": rules.version}
    return Entry(
        coupon=state.coupon.canonical(),
        digest=state.coupon.digest,
        # A shop's file can change under the same version: its digest tells.
        rules={**named, "digest": rules.digest} if rules.digest else named,
        attempt=asdict(attempt_of(state)),
        grade=state.grade.as_dict(),
        handling=state.handling.as_json(),
        zoom=dict(zoom),
        at=datetime.now(UTC),
        outcome=asdict(outcome_of(state.coupon, attempt_of(state).disposition)),
    )
