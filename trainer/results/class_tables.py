"""The other tables of a class: coupons, pairs got wrong together, and who is ready."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from exercises.learner.demonstration import Share
from trainer.bench.translation import translate
from trainer.results.arranging import Column
from trainer.results.figures_of import between, counted, number, percent, seconds, when
from trainer.results.rows import CouponRow, PairRow, ReadyRow
from trainer.results.sieve import Choice, Option

__all__ = [
    "coupon_choices",
    "coupon_columns",
    "pair_columns",
    "ready_choices",
    "ready_columns",
    "verdict_word",
]

_EASY, _HARD = 0.9, 0.3
"""Share of the marks beyond which a coupon tells little of who is better: a rule of thumb."""


def coupon_columns() -> list[Column[CouponRow]]:
    """Return the columns of a sitting's coupons."""
    return [*_what(), *_figures(), *_agreements(), *_rest()]


def _what() -> list[Column[CouponRow]]:
    return [
        Column(
            "number", translate("Results", "No."),
            translate("Results", "Place in the sitting as it was composed."),
            lambda row: str(row.number), lambda row: float(row.number), number=True,
        ),
        Column(
            "title", translate("Results", "Coupon"),
            translate("Results", "What it is called; dice give each learner their own, as hard."),
            lambda row: row.title,
        ),
        Column(
            "kind", translate("Results", "Right call"),
            translate("Results", "What the rules say of it (the key)."), lambda row: row.kind,
        ),
        Column(
            "answers", translate("Results", "Papers"),
            translate("Results", "How many papers have it."),
            lambda row: str(row.answers), lambda row: float(row.answers), number=True,
        ),
    ]  # fmt: skip


def _figures() -> list[Column[CouponRow]]:
    return [
        Column(
            "difficulty", translate("Results", "Difficulty"),
            translate(
                "Results",
                "Share of its marks that the class got: low is hard (item difficulty, p), with "
                "the 95 % that it lies in.",
            ),
            lambda row: between(
                row.difficulty, row.difficulty_low, row.difficulty_high, share=True
            ),
            lambda row: row.difficulty, number=True,
        ),
        Column(
            "discrimination", translate("Results", "Discrimination"),
            translate(
                "Results",
                "Whether those who are better at the rest are better here: 0 not at all, below 0 "
                "worse (corrected item-rest correlation), with its 95 %.",
            ),
            lambda row: between(
                row.discrimination, row.discrimination_low, row.discrimination_high, share=False
            ),
            lambda row: row.discrimination, _backwards, number=True,
        ),
        Column(
            "misses", translate("Results", "Misses"),
            translate("Results", "Bad welds that were let go, of those called (type II)."),
            lambda row: counted(row.misses), lambda row: _value(row.misses), number=True,
        ),
        Column(
            "false alarms", translate("Results", "False alarms"),
            translate("Results", "Good welds that were rejected, of those called (type I)."),
            lambda row: counted(row.false_alarms), lambda row: _value(row.false_alarms),
            number=True,
        ),
    ]  # fmt: skip


def _backwards(row: CouponRow) -> str:
    """Bad only where it is below 0 for certain: what luck may have done is no fault of a coupon."""
    high = row.discrimination_high
    return "bad" if high is not None and high < 0.0 else "plain"


def _agreements() -> list[Column[CouponRow]]:
    return [
        Column(
            "truth", translate("Results", "Right"),
            translate("Results", "Calls that agree with the truth, in doubt or not (accuracy)."),
            lambda row: counted(row.right), lambda row: _value(row.right), number=True,
        ),
        Column(
            "others", translate("Results", "Alike"),
            translate(
                "Results",
                "How many gave the commonest call: whether the class agrees, right or wrong "
                "(modal agreement).",
            ),
            lambda row: counted(row.agreed), lambda row: _value(row.agreed), number=True,
        ),
    ]  # fmt: skip


def _rest() -> list[Column[CouponRow]]:
    return [
        Column(
            "seconds", translate("Results", "Time, s"),
            translate("Results", "Half of the class took less, half more (median time)."),
            lambda row: seconds(None if row.seconds is None else 1000.0 * row.seconds),
            lambda row: row.seconds, number=True,
        ),
        Column(
            "overridden", translate("Results", "Overridden"),
            translate("Results", "How many marks of it were set by hand."),
            lambda row: str(row.overridden) if row.overridden else "",
            lambda row: float(row.overridden), number=True,
        ),
    ]  # fmt: skip


def _value(share: Share | None) -> float | None:
    return share.value if share is not None else None


def coupon_choices(rows: Sequence[CouponRow]) -> list[Choice[CouponRow]]:
    """Return what coupons can be sifted by."""
    kinds = sorted({row.kind for row in rows})
    return [
        Choice("kind", translate("Results", "Right call"), [
            Option(translate("Results", "Any right call"), None),
            *(Option(kind, partial(_is_kind, kind)) for kind in kinds),
        ]),
        Choice("look", translate("Results", "What to look at"), [
            Option(translate("Results", "All coupons"), None),
            Option(translate("Results", "Hard"), _is_hard),
            Option(translate("Results", "Easy"), _is_easy),
            Option(translate("Results", "Below 0"), _is_below),
            Option(translate("Results", "Overridden"), lambda row: row.overridden > 0),
        ]),
    ]  # fmt: skip


def _is_kind(kind: str, row: CouponRow) -> bool:
    return row.kind == kind


def _is_hard(row: CouponRow) -> bool:
    return row.difficulty is not None and row.difficulty < _HARD


def _is_easy(row: CouponRow) -> bool:
    return row.difficulty is not None and row.difficulty > _EASY


def _is_below(row: CouponRow) -> bool:
    return row.discrimination is not None and row.discrimination < 0.0


def pair_columns() -> list[Column[PairRow]]:
    """Return the columns of pairs of coupons that the same learners got wrong."""
    return [
        Column("first", translate("Results", "Coupon"),
               translate("Results", "One of the two."), lambda row: row.first),
        Column("second", translate("Results", "and coupon"),
               translate("Results", "The other."), lambda row: row.second),
        Column(
            "together", translate("Results", "Wrong together"),
            translate("Results", "How many learners got both wrong."),
            lambda row: translate("Results", "{count} of {of}").format(
                count=row.together, of=row.of
            ),
            lambda row: float(row.together), number=True,
        ),
        Column(
            "expected", translate("Results", "By chance"),
            translate(
                "Results",
                "How many would be if the one had nothing to do with the other (expected count).",
            ),
            lambda row: number(row.expected, 1), lambda row: row.expected, number=True,
        ),
        Column(
            "phi", translate("Results", "Strength"),
            translate("Results", "0 is none, 1 is always together (phi coefficient)."),
            lambda row: number(row.phi), lambda row: row.phi, number=True,
        ),
        Column(
            "chance", translate("Results", "Luck"),
            translate(
                "Results",
                "How often so many would come together by luck alone somewhere among all pairs "
                "(p-value, Holm's correction).",
            ),
            lambda row: percent(row.chance) if row.chance >= 0.005 else
            translate("Results", "under {limit}").format(limit=percent(0.01)),
            lambda row: row.chance, number=True,
        ),
    ]  # fmt: skip


def verdict_word(verdict: str) -> str:
    """What the evidence comes to."""
    return {
        "ready": translate("Results", "ready"),
        "not yet": translate("Results", "not yet"),
        "not enough seen": translate("Results", "not enough seen"),
    }[verdict]


_ORDER = ("ready", "not yet", "not enough seen")


def ready_columns() -> list[Column[ReadyRow]]:
    """Return the columns of who is ready."""
    return [
        Column("code", translate("Results", "Code"),
               translate("Results", "What the learner is called in sittings (pseudonym)."),
               lambda row: row.code),
        Column("name", translate("Results", "Name here"),
               translate("Results", "The name that this machine's logbook knows."),
               lambda row: row.name),
        Column(
            "verdict", translate("Results", "Ready?"),
            translate(
                "Results",
                "Ready: nine bad welds in ten are caught, shown with 95 % confidence, and the "
                "line lies where the limit is.",
            ),
            lambda row: verdict_word(row.verdict),
            lambda row: float(_ORDER.index(row.verdict)),
            lambda row: {"ready": "good", "not yet": "bad"}.get(row.verdict, "quiet"),
        ),
        Column(
            "caught", translate("Results", "Bad welds caught"),
            translate(
                "Results",
                "Of bad welds outside the doubt; 29 of 29 would show nine in ten (exact binomial "
                "demonstration).",
            ),
            lambda row: counted(Share(row.hits, row.trials) if row.trials else None),
            lambda row: row.hits / row.trials if row.trials else None, number=True,
        ),
        Column(
            "more", translate("Results", "More needed"),
            translate("Results", "Bad welds caught in a row, from now on, that would show it."),
            lambda row: str(row.more) if row.more else "", lambda row: float(row.more),
            number=True,
        ),
        Column(
            "line", translate("Results", "Line, mm"),
            translate(
                "Results",
                "Where they call a weld short: above 0 too early, below 0 too late (bias), with "
                "its 95 %.",
            ),
            lambda row: _known(row.bias), lambda row: row.bias[0] if row.bias else None,
            number=True,
        ),
        Column(
            "blur", translate("Results", "Blur, mm"),
            translate("Results", "How blurred that line is (spread of the fitted curve)."),
            lambda row: _known(row.blur), lambda row: row.blur[0] if row.blur else None,
            number=True,
        ),
        Column(
            "calls", translate("Results", "Calls"),
            translate("Results", "How many calls of logbook and sittings the line rests on."),
            lambda row: str(row.calls), lambda row: float(row.calls), number=True,
        ),
        Column("last", translate("Results", "Latest"),
               translate("Results", "The latest call."), lambda row: when(row.last),
               lambda row: row.last.timestamp() if row.last else None),
        Column("groups", translate("Results", "Groups"),
               translate("Results", "Of the class, as they stand on this machine."),
               lambda row: ", ".join(row.groups)),
    ]  # fmt: skip


def _known(value: tuple[float, float, float] | None) -> str:
    return between(*(value or (None, None, None)), share=False)


def ready_choices(groups: Sequence[str]) -> list[Choice[ReadyRow]]:
    """Return what learners can be sifted by."""
    return [
        Choice("group", translate("Results", "Group"), [
            Option(translate("Results", "All groups"), None),
            *(Option(name, partial(_in_group, name)) for name in groups),
        ]),
        Choice("verdict", translate("Results", "Ready?"), [
            Option(translate("Results", "Ready or not"), None),
            *(Option(verdict_word(one), partial(_is, one)) for one in _ORDER),
        ]),
    ]  # fmt: skip


def _in_group(name: str, row: ReadyRow) -> bool:
    return name in row.groups


def _is(verdict: str, row: ReadyRow) -> bool:
    return row.verdict == verdict
