"""What a sitting says: how coupons stand, what time is left, what holds, what went wrong."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from exercises.sitting.plan import HELPS, Help, Plan
from exercises.sitting.progress import Interruption, Progress
from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.figures import number_words
from trainer.taking.sitting import Place, Standing

__all__ = [
    "FINAL_MS",
    "TIME_MARKS",
    "count_words",
    "interruption_words",
    "left_words",
    "mark_passed",
    "place_words",
    "rule_words",
    "spoken_left",
    "standing_word",
    "stop_words",
]

_CONTEXT: Final = "Sitting"
_SECOND: Final = 1000
_MINUTE: Final = 60 * _SECOND

FINAL_MS: Final = 5 * _MINUTE
"""Ms at the end in which the time is always shown, with its seconds."""

TIME_MARKS: Final = tuple(minutes * _MINUTE for minutes in (60, 30, 15, 10, 5, 2, 1))
"""Ms left at which the time is spoken, and at no other."""

_STANDINGS: Final[dict[Standing, str]] = {
    "answered": QT_TRANSLATE_NOOP("Sitting", "answered"),
    "begun": QT_TRANSLATE_NOOP("Sitting", "begun"),
    "seen": QT_TRANSLATE_NOOP("Sitting", "seen"),
    "unseen": QT_TRANSLATE_NOOP("Sitting", "not yet seen"),
}

_HELPS: Final[dict[Help, str]] = {
    "loupe": QT_TRANSLATE_NOOP("Sitting", "the loupe"),
    "press home": QT_TRANSLATE_NOOP("Sitting", "press home"),
    "unit switch": QT_TRANSLATE_NOOP("Sitting", "millimetres or inches, as you like"),
}


def standing_word(standing: Standing) -> str:
    """How a coupon stands, in a word.

    Examples
    --------
    >>> standing_word("unseen")
    'not yet seen'
    """
    return translate(_CONTEXT, _STANDINGS[standing])


def place_words(place: Place) -> str:
    """A coupon of the map in words.

    Examples
    --------
    >>> place_words(Place(3, "begun", flagged=True))
    'Coupon 3: begun, marked for review'
    """
    words = standing_word(place.standing)
    if place.flagged:
        words = translate("Sitting", "{standing}, marked for review").format(standing=words)
    if place.here:
        words = translate("Sitting", "{standing}, on the bench now").format(standing=words)
    return translate("Sitting", "Coupon {number}: {standing}").format(
        number=place.number, standing=words
    )


def count_words(found: Mapping[str, int]) -> str:
    """How many coupons stand how, in a line.

    Examples
    --------
    >>> count_words({"answered": 4, "begun": 1, "seen": 0, "unseen": 7, "flagged": 2})
    '4 answered, 1 begun, 7 not yet seen; 2 marked for review'
    """
    said = [f"{found[each]} {standing_word(each)}" for each in _STANDINGS if found[each]]
    line = ", ".join(said)
    if not found["flagged"]:
        return line
    return translate("Sitting", "{line}; {flagged} marked for review").format(
        line=line, flagged=found["flagged"]
    )


def left_words(ms: int) -> str:
    """What time is left: whole minutes, never more than there are; with seconds at the end.

    Examples
    --------
    >>> left_words(41 * 60_000 + 59_999), left_words(72 * 60_000), left_words(272_000)
    ('41 min left', '1 h 12 min left', '4 min 32 s left')
    >>> left_words(31_000), left_words(0)
    ('31 s left', 'time is up')
    """
    if ms <= 0:
        return translate("Sitting", "time is up")
    minutes, seconds = ms // _MINUTE, ms % _MINUTE // _SECOND
    if ms > FINAL_MS:
        hours = minutes // 60
        if not hours:
            return translate("Sitting", "{minutes} min left").format(minutes=minutes)
        return translate("Sitting", "{hours} h {minutes} min left").format(
            hours=hours, minutes=minutes % 60
        )
    if minutes:
        return translate("Sitting", "{minutes} min {seconds} s left").format(
            minutes=minutes, seconds=seconds
        )
    return translate("Sitting", "{seconds} s left").format(seconds=seconds)


def spoken_left(mark: int) -> str:
    """What a screen reader is told at a mark of `TIME_MARKS`.

    Examples
    --------
    >>> spoken_left(5 * 60_000)
    '5 minutes left'
    """
    minutes = mark // _MINUTE
    if minutes == 1:
        return translate("Sitting", "1 minute left")
    return translate("Sitting", "{minutes} minutes left").format(minutes=minutes)


def mark_passed(before: int, now: int) -> int | None:
    """Return the last of `TIME_MARKS` that was passed as the time left went from one to another.

    Examples
    --------
    >>> mark_passed(300_400, 299_400), mark_passed(299_400, 298_400), mark_passed(130_000, 50_000)
    (300000, None, 60000)
    """
    passed = [mark for mark in TIME_MARKS if now <= mark < before]
    return min(passed) if passed else None


def interruption_words(progress: Progress) -> str:
    """What is said to whoever goes on with a sitting: what it was interrupted by, what is left."""
    stops = progress.interruptions
    if not stops:
        return ""
    last = [each for each in stops if each.kind == "closed"] or list(stops)
    return translate("Sitting", "{stop} {left}. This stands in the result.").format(
        stop=stop_words(last[-1]), left=left_words(progress.left_ms)
    )


def stop_words(stop: Interruption) -> str:
    """One interruption in words."""
    if stop.ms is None:
        if stop.kind == "clock":
            return translate("Sitting", "The clock of this machine was set back.")
        return translate("Sitting", "The sitting stood still; how long, its clock can't tell.")
    minutes, seconds = stop.ms // _MINUTE, stop.ms % _MINUTE // _SECOND
    long = (
        translate("Sitting", "{minutes} min {seconds} s").format(minutes=minutes, seconds=seconds)
        if minutes
        else translate("Sitting", "{seconds} s").format(seconds=seconds)
    )
    if stop.kind == "asleep":
        words = translate("Sitting", "The machine slept for {long}; that is not counted.")
    else:
        words = translate("Sitting", "The sitting stood still for {long}; that is not counted.")
    return words.format(long=long)


def rule_words(plan: Plan, code: str) -> tuple[str, ...]:
    """What holds in this sitting for whoever sits it with this code, in plain words."""
    return (*_time_words(plan, code), *_help_words(plan), *_call_words(plan))


def _time_words(plan: Plan, code: str) -> tuple[str, ...]:
    minutes, found = plan.minutes_for(code), plan.entrant(code)
    words = translate(
        "Sitting", "You have {minutes} minutes for {count} coupons, in any order."
    ).format(minutes=number_words(round(minutes, 1)), count=plan.count)
    if found is not None and found.extra > 0.0:
        more = translate("Sitting", "{minutes} minutes of that are your extra time.").format(
            minutes=number_words(round(minutes - plan.minutes, 1))
        )
        words = f"{words} {more}"
    return (
        words,
        translate(
            "Sitting",
            "The clock runs until you hand in. When the time is up the sitting ends by itself, and "
            "what you have stated by then counts.",
        ),
    )


def _help_words(plan: Plan) -> tuple[str, ...]:
    allowed = [translate(_CONTEXT, _HELPS[each]) for each in HELPS if each in plan.helps]
    off = [translate(_CONTEXT, _HELPS[each]) for each in HELPS if each not in plan.helps]
    found = []
    if allowed:
        found.append(
            translate("Sitting", "Allowed helps: {helps}.").format(helps=", ".join(allowed))
        )
    if off:
        found.append(translate("Sitting", "Not allowed: {helps}.").format(helps=", ".join(off)))
    found.append(
        translate(
            "Sitting",
            "There are no bench notes, no reference and no debrief. The rules of each coupon can "
            "be read on its job card.",
        )
    )
    return tuple(found)


def _call_words(plan: Plan) -> tuple[str, ...]:
    critical = (
        translate(
            "Sitting",
            "Accepting a weld that clearly fails its rules is critical: one such call fails the "
            "whole sitting.",
        )
        if plan.critical_fails
        else translate(
            "Sitting",
            "Accepting a weld that clearly fails its rules is critical: that coupon scores "
            "nothing.",
        )
    )
    return (
        translate(
            "Sitting",
            "Every call is kept as you make it, and can be changed until you hand in. A call that "
            "is not complete counts as unanswered.",
        ),
        critical,
        translate(
            "Sitting",
            "How the leaf is handled is recorded, and so is every interruption. Only the proctor "
            "can let you leave before you hand in.",
        ),
    )
