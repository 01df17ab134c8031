"""The words of the faults of sittings, of results, and of marks that are overridden."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.fault_table import Variant

__all__ = ["CODES", "VALUES"]

CODES: Final[dict[str, tuple[Variant, ...]]] = {
    "sitting-id": (
        (
            QT_TRANSLATE_NOOP("Faults", "the id is {value}"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters"),
        ),
    ),
    "sitting-title": (
        (
            QT_TRANSLATE_NOOP("Faults", "the sitting has no title"),
            QT_TRANSLATE_NOOP("Faults", "a title"),
        ),
    ),
    "sitting-seed": (
        (
            QT_TRANSLATE_NOOP("Faults", "the seed is {value}"),
            QT_TRANSLATE_NOOP("Faults", "0 to {most}"),
        ),
    ),
    "sitting-empty": (
        (
            QT_TRANSLATE_NOOP("Faults", "nothing is asked"),
            QT_TRANSLATE_NOOP("Faults", "coupons of a tray, or dice"),
        ),
    ),
    "sitting-part": (
        (
            QT_TRANSLATE_NOOP("Faults", "says what is asked in no way, or in two"),
            QT_TRANSLATE_NOOP("Faults", 'either "tray" or "recipe"'),
        ),
    ),
    "sitting-none-chosen": (
        (
            QT_TRANSLATE_NOOP("Faults", "no coupon is chosen"),
            QT_TRANSLATE_NOOP("Faults", "one coupon or more"),
        ),
    ),
    "sitting-rules-missing": (
        (
            QT_TRANSLATE_NOOP("Faults", "the shop's rules {rules} don't come with the coupons"),
            QT_TRANSLATE_NOOP("Faults", "the coupons with their rules files"),
        ),
    ),
    "repeated-rule-set": (
        (
            QT_TRANSLATE_NOOP("Faults", "{rules} is the id of another of these rule sets too"),
            QT_TRANSLATE_NOOP("Faults", "an id of its own"),
        ),
    ),
    "sitting-too-many": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} coupons are asked"),
            QT_TRANSLATE_NOOP("Faults", "at most {most}"),
        ),
    ),
    "sitting-minutes": (
        (
            QT_TRANSLATE_NOOP("Faults", "the time is {value} minutes"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most}"),
        ),
    ),
    "sitting-pass-mark": (
        (
            QT_TRANSLATE_NOOP("Faults", "the pass mark is {value}"),
            QT_TRANSLATE_NOOP("Faults", "0 to 1"),
        ),
    ),
    "sitting-skill-unasked": (
        (
            QT_TRANSLATE_NOOP("Faults", "no coupon of this sitting can be marked on {named}"),
            QT_TRANSLATE_NOOP("Faults", "another skill, or coupons that ask for it"),
        ),
    ),
    "sitting-entrants": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} learners are named"),
            QT_TRANSLATE_NOOP("Faults", "at most {most}"),
        ),
    ),
    "sitting-code": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is no code"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters, no space around them"),
        ),
    ),
    "sitting-repeated-code": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is the code of learner {other} too"),
            QT_TRANSLATE_NOOP("Faults", "a code of their own"),
        ),
    ),
    "sitting-extra": (
        (
            QT_TRANSLATE_NOOP("Faults", "the time more is {value}"),
            QT_TRANSLATE_NOOP("Faults", "0 to {most} of the whole"),
        ),
    ),
    "result-id": (
        (QT_TRANSLATE_NOOP("Faults", "{value} is no id"), QT_TRANSLATE_NOOP("Faults", "a UUID")),
    ),
    "result-learner": (
        (
            QT_TRANSLATE_NOOP("Faults", "the learner is not whose code is {code}"),
            QT_TRANSLATE_NOOP("Faults", "the code and the id of one learner"),
        ),
    ),
    "result-numbers": (
        (
            QT_TRANSLATE_NOOP("Faults", "the items' numbers don't run from 1"),
            QT_TRANSLATE_NOOP("Faults", "each number once"),
        ),
    ),
    "result-slots": (
        (
            QT_TRANSLATE_NOOP("Faults", "two items fill one place of the plan"),
            QT_TRANSLATE_NOOP("Faults", "one item for each"),
        ),
    ),
    "result-time": (
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP(
                "Faults", "a date and time with its zone, as 2026-03-02T09:00:00.000+00:00"
            ),
        ),
    ),
    "result-handling": (
        (
            QT_TRANSLATE_NOOP("Faults", "is no record of a leaf's path"),
            QT_TRANSLATE_NOOP(
                "Faults", "rows of ms, x, y, angle, turned and event, in order of time"
            ),
        ),
    ),
    "result-grade": (
        (
            QT_TRANSLATE_NOOP("Faults", "a grade of nothing that was stated"),
            QT_TRANSLATE_NOOP("Faults", "the attempt too, or neither"),
        ),
    ),
    "result-stranger": (
        (
            QT_TRANSLATE_NOOP("Faults", "an answer to another coupon"),
            QT_TRANSLATE_NOOP("Faults", "one to {coupon}"),
        ),
    ),
    "result-rules-missing": (
        (
            QT_TRANSLATE_NOOP("Faults", "the shop's rules {rules} are not in the file"),
            QT_TRANSLATE_NOOP("Faults", "a result with the rules that it was judged by"),
        ),
    ),
    "result-digest": (
        (
            QT_TRANSLATE_NOOP("Faults", "the coupon is not the one that was judged"),
            QT_TRANSLATE_NOOP("Faults", "the coupon of that digest"),
        ),
    ),
    "override-mark": (
        (
            QT_TRANSLATE_NOOP("Faults", "{value} is no mark"),
            QT_TRANSLATE_NOOP("Faults", "one of: {known}"),
        ),
    ),
    "override-value": ((QT_TRANSLATE_NOOP("Faults", "the mark is {value}"), "{range}"),),
    "override-reason": (
        (
            QT_TRANSLATE_NOOP("Faults", "no reason is given"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters"),
        ),
    ),
    "override-reason/long": (
        (
            QT_TRANSLATE_NOOP("Faults", "the reason is too long"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most} characters"),
        ),
    ),
    "override-by": (
        (
            QT_TRANSLATE_NOOP("Faults", "nobody is named"),
            QT_TRANSLATE_NOOP("Faults", "who overrides the mark"),
        ),
    ),
}

VALUES: Final = {
    "0 or 1": QT_TRANSLATE_NOOP("Faults", "0 or 1"),
    "0 to 1": QT_TRANSLATE_NOOP("Faults", "0 to 1"),
}
"""What is wanted, where the core says it in words."""
