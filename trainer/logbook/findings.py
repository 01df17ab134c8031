"""What a learner's attempts say of them, with what they don't say yet left unsaid. No Qt.

Everything is made of tallies, so a logbook of a million attempts is read as quickly as one of a
hundred. Each finding says how many calls it rests on; below what `FEWEST` asks it is None.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from exercises.learner.agreement import Standing, cohen_kappa, fleiss_kappa
from exercises.learner.demonstration import Demonstration, Share, demonstrate
from exercises.learner.hit_miss import Curve, NoCurve, fit_curve
from exercises.learner.line import Belief, Call, Estimate, believe
from trainer.logbook.tallies import Tally, calls_of

__all__ = [
    "FEWEST",
    "NEWEST",
    "CaughtSize",
    "Findings",
    "Rates",
    "Repeats",
    "SureStep",
    "Week",
    "findings_of",
]

FEWEST: Final = {"line": 12, "rates": 20, "kappa": 20, "sure": 20, "weeks": 2}
"""Calls (or weeks) below which nothing is claimed."""

NEWEST: Final = 400
"""Calls that the learner's line is made of: what they were a year ago isn't what they are."""

_LIMITS: Final = {"misses": (0.02, 0.05), "false alarms": (0.05, 0.1)}


@dataclass(frozen=True, slots=True)
class Rates:
    """Misses and false alarms, outside the doubt; a part is None where there was nothing to count.

    Their limits are those of the attribute study in the AIAG MSA manual, 3rd edition.
    """

    misses: Share | None
    false_alarms: Share | None
    kappa: float | None

    def standing(self, of: str) -> Standing | None:
        """Where a rate stands by the manual's limits; of ``misses`` or ``false alarms``."""
        share = self.misses if of == "misses" else self.false_alarms
        if share is None or share.of < FEWEST["rates"]:
            return None
        good, fair = _LIMITS[of]
        if share.value <= good:
            return "acceptable"
        return "marginal" if share.value <= fair else "unacceptable"


@dataclass(frozen=True, slots=True)
class CaughtSize:
    """The smallest shortfall caught nine times in ten, mm; `surely` with 95 % confidence."""

    fitted: float
    surely: float | None


@dataclass(frozen=True, slots=True)
class SureStep:
    """How sure, in tenths, against how often right."""

    sure: float
    right: Share


@dataclass(frozen=True, slots=True)
class Week:
    """A week of practice, by the Monday that it begins on."""

    monday: date
    calls: int
    score: float
    misses: Share | None


@dataclass(frozen=True, slots=True)
class Repeats:
    """Coupons that were called more than once.

    Parameters
    ----------
    alike
        How many of them were called the same each time.
    kappa
        Fleiss' kappa over the first two calls of each; None where chance alone would agree wholly,
        or they are too few.
    """

    alike: Share
    kappa: float | None


@dataclass(frozen=True)
class Findings:
    """All that is said of a learner.

    Parameters
    ----------
    calls
        The calls that show their line, newest last.
    line, first_line
        What is known of it from all of these, and from the calls before a day's feedback; None
        where there are too few.
    belief
        What `line` is an estimate of, for drawing.
    curve
        Share of calls of short against distance, or why there is none.
    caught
        None where there is no curve.
    rates
        Misses and false alarms.
    demonstrated
        Of all bad welds outside the doubt, what their rejections show of nine in ten.
    faults
        Handling faults by code, commonest first.
    repeats
        How far calls on the same coupon agree with each other; None where none came twice.
    sure
        By tenths; empty where there are too few.
    weeks
        Oldest first.
    """

    calls: tuple[Call, ...]
    line: Estimate | None
    first_line: Estimate | None
    belief: Belief | None
    curve: Curve | NoCurve
    caught: CaughtSize | None
    rates: Rates
    demonstrated: Demonstration
    faults: tuple[tuple[str, int], ...]
    repeats: Repeats | None
    sure: tuple[SureStep, ...]
    weeks: tuple[Week, ...]

    @property
    def attempts(self) -> int:
        """How many calls outside the doubt there are."""
        return sum(week.calls for week in self.weeks)

    def shares(self, width: float = 0.1) -> list[tuple[float, Share]]:
        """Share called short in each step of distance, mm: (middle of the step, share)."""
        steps: dict[int, list[bool]] = {}
        for call in self.calls:
            steps.setdefault(round(call.distance / width), []).append(call.short)
        return [(at * width, Share(sum(said), len(said))) for at, said in sorted(steps.items())]


def findings_of(tallies: Sequence[Tally], repeats: Sequence[Sequence[bool]] = ()) -> Findings:
    """Return what a learner's tallies say, and what was called of coupons that came again.

    Examples
    --------
    >>> nothing = findings_of([])
    >>> nothing.line is None, nothing.curve.reason, nothing.weeks
    (True, 'too few', ())
    """
    ordered = sorted(tallies, key=lambda tally: tally.day)
    calls = calls_of(ordered, newest=NEWEST)
    first = calls_of(ordered, before_feedback=True, newest=NEWEST)
    belief = believe(calls) if len(calls) >= FEWEST["line"] else None
    curve = fit_curve([-call.distance for call in calls], [call.short for call in calls])
    caught = None
    if isinstance(curve, Curve):
        caught = CaughtSize(curve.size_caught(0.9), curve.size_surely_caught(0.9))
    rates = _rates(ordered)
    misses = rates.misses
    return Findings(
        calls=tuple(calls),
        line=belief.estimate() if belief else None,
        first_line=believe(first).estimate() if len(first) >= FEWEST["line"] else None,
        belief=belief,
        curve=curve,
        caught=caught,
        rates=rates,
        demonstrated=demonstrate(misses.of - misses.count, misses.of)
        if misses
        else demonstrate(0, 0),
        faults=_faults(ordered),
        repeats=_repeats(repeats),
        sure=_sure(ordered),
        weeks=_weeks(ordered),
    )


def _counted(tallies: Iterable[Tally], kind: str) -> Counter[str]:
    found: Counter[str] = Counter()
    for tally in tallies:
        if tally.kind == kind:
            found[tally.key] += tally.count
    return found


def _rates(tallies: Iterable[Tally]) -> Rates:
    said = _counted(tallies, "call")
    table = [
        [said["bad rejected"], said["bad let go"]],
        [said["good rejected"], said["good let go"]],
    ]
    bad, good = sum(table[0]), sum(table[1])
    return Rates(
        misses=Share(table[0][1], bad) if bad else None,
        false_alarms=Share(table[1][0], good) if good else None,
        kappa=cohen_kappa(np.array(table)) if bad + good >= FEWEST["kappa"] else None,
    )


def _repeats(repeats: Sequence[Sequence[bool]]) -> Repeats | None:
    if not repeats:
        return None
    alike = Share(sum(len(set(calls)) == 1 for calls in repeats), len(repeats))
    if len(repeats) < FEWEST["kappa"]:
        return Repeats(alike, None)
    counts = [[calls[:2].count(True), calls[:2].count(False)] for calls in map(tuple, repeats)]
    return Repeats(alike, fleiss_kappa(counts))


def _faults(tallies: Iterable[Tally]) -> tuple[tuple[str, int], ...]:
    return tuple(_counted(tallies, "fault").most_common())


def _sure(tallies: Iterable[Tally]) -> tuple[SureStep, ...]:
    counts: Counter[int] = Counter()
    right: Counter[int] = Counter()
    for tally in tallies:
        if tally.kind == "sure":
            counts[int(tally.key)] += tally.count
            right[int(tally.key)] += round(tally.total)
    if counts.total() < FEWEST["sure"]:
        return ()
    return tuple(SureStep(at / 10, Share(right[at], counts[at])) for at in sorted(counts))


def _weeks(tallies: Iterable[Tally]) -> tuple[Week, ...]:
    found: dict[date, list[Tally]] = {}
    for tally in tallies:
        if tally.kind == "call":
            day = date.fromisoformat(tally.day)
            found.setdefault(day - timedelta(days=day.weekday()), []).append(tally)
    weeks = []
    for monday, of in sorted(found.items()):
        calls = sum(tally.count for tally in of)
        score = sum(tally.total for tally in of) / calls
        weeks.append(Week(monday, calls, score, _rates(of).misses))
    return tuple(weeks)
