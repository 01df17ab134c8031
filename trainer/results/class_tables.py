"""The other tables of a class: coupons, pairs got wrong together, and who is ready."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from exercises.learner.demonstration import Share
from trainer.bench.translation import translate
from trainer.results.arranging import Column
from trainer.results.figures_of import between, counted, number, seconds, when
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
"""Share right beyond which a coupon tells little of who is better: common practice, no source."""

_NONE = (None, None, None)


def coupon_columns() -> list[Column[CouponRow]]:
    """Return the columns of a sitting's coupons."""
    return [*_what(), *_figures(), *_rest()]


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
            "papers", translate("Results", "Papers"),
            translate("Results", "How many papers have it."),
            lambda row: str(row.papers), lambda row: float(row.papers), number=True,
        ),
    ]  # fmt: skip


def _figures() -> list[Column[CouponRow]]:
    return [
        Column(
            "difficulty", translate("Results", "Difficulty"),
            translate(
                "Results",
                "Share of the papers that have it right: low is hard (item difficulty, p), with "
                "the 95 % that it lies in.",
            ),
            lambda row: between(row.right.value, row.right.low, row.right.high, share=True),
            lambda row: row.right.value, number=True,
        ),
        Column(
            "discrimination", translate("Results", "Discrimination"),
            translate(
                "Results",
                "Whether those who are better at the rest are better here: 0 not at all, below 0 "
                "worse (corrected point-biserial correlation), with its 95 %.",
            ),
            lambda row: between(*(row.discrimination or _NONE), share=False),
            lambda row: row.discrimination[0] if row.discrimination else None, _backwards,
            number=True,
        ),
        Column(
            "ends", translate("Results", "Best less weakest"),
            translate(
                "Results",
                "Share right among the best of the class less that among the weakest (upper-lower "
                "index, 27 % at either end).",
            ),
            lambda row: number(row.upper_lower), lambda row: row.upper_lower, number=True,
        ),
        Column(
            "misses", translate("Results", "Misses"),
            translate(
                "Results", "Bad welds let go, of those called, outside the doubt (misses)."
            ),
            lambda row: counted(row.misses), lambda row: _value(row.misses), number=True,
        ),
        Column(
            "false alarms", translate("Results", "False alarms"),
            translate(
                "Results",
                "Good welds that were rejected, of those called, outside the doubt (false alarms).",
            ),
            lambda row: counted(row.false_alarms), lambda row: _value(row.false_alarms),
            number=True,
        ),
    ]  # fmt: skip


def _backwards(row: CouponRow) -> str:
    """Bad only where it is below 0 for certain: what luck may have done is no fault of a coupon."""
    return "bad" if row.discrimination is not None and row.discrimination[2] < 0.0 else "plain"


def _rest() -> list[Column[CouponRow]]:
    return [
        Column(
            "right", translate("Results", "Right"),
            translate("Results", "Papers that agree with the truth, doubt allowed for (accuracy)."),
            lambda row: counted(row.right), lambda row: float(row.right.count), number=True,
        ),
        Column(
            "alike", translate("Results", "Alike"),
            translate(
                "Results",
                "How many gave the commonest call: whether the class agrees with itself, right or "
                "wrong (modal agreement).",
            ),
            lambda row: counted(row.agreed), lambda row: _value(row.agreed), number=True,
        ),
        Column(
            "unanswered", translate("Results", "Unanswered"),
            translate("Results", "Papers that say nothing of it (omitted)."),
            lambda row: str(row.unanswered), lambda row: float(row.unanswered), number=True,
        ),
        Column(
            "seconds", translate("Results", "Time, s"),
            translate("Results", "Half of those who answered took less, half more (median time)."),
            lambda row: seconds(row.ms), lambda row: row.ms, number=True,
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
    return row.right.value < _HARD


def _is_easy(row: CouponRow) -> bool:
    return row.right.value > _EASY


def _is_below(row: CouponRow) -> bool:
    return row.discrimination is not None and row.discrimination[0] < 0.0


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
                "How many would be if each learner's and each coupon's errors fell at random "
                "(mean of random tables with the same margins), and the 95 % about it.",
            ),
            _by_chance, lambda row: row.expected, number=True,
        ),
        Column(
            "phi", translate("Results", "Strength"),
            translate("Results", "0 is none, 1 is always together (phi coefficient)."),
            lambda row: number(row.phi), lambda row: row.phi, number=True,
        ),
        Column(
            "beyond", translate("Results", "More than chance"),
            translate(
                "Results",
                "Whether luck would rarely do that, looking at so many pairs (false discovery "
                "rate 5 %, Benjamini-Hochberg).",
            ),
            lambda row: translate("Results", "yes") if row.beyond else
            translate("Results", "may be luck"),
            lambda row: float(row.beyond), lambda row: "bad" if row.beyond else "quiet",
        ),
    ]  # fmt: skip


def _by_chance(row: PairRow) -> str:
    reach = 1.96 * row.spread
    text = translate("Results", "{value} ({low} to {high})")
    return text.format(
        value=number(row.expected, 1), low=number(max(0.0, row.expected - reach), 1),
        high=number(row.expected + reach, 1),
    )  # fmt: skip


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
    return [*_whom(), *_counts(), *_line(), *_behind()]


def _whom() -> list[Column[ReadyRow]]:
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
                "Ready if all three are shown with 95 % confidence: bad welds caught, good ones "
                "let through, the line where the limit is. A training record, no qualification.",
            ),
            lambda row: verdict_word(row.verdict),
            lambda row: float(_ORDER.index(row.verdict)),
            lambda row: {"ready": "good", "not yet": "bad"}.get(row.verdict, "quiet"),
        ),
    ]  # fmt: skip


def _counts() -> list[Column[ReadyRow]]:
    return [
        Column(
            "caught", translate("Results", "Bad caught"),
            translate(
                "Results",
                "Bad welds that were rejected, outside the doubt; 29 of 29 would show nine in ten "
                "(exact binomial demonstration).",
            ),
            lambda row: counted(row.caught), lambda row: _value(row.caught), number=True,
        ),
        Column(
            "through", translate("Results", "Good let through"),
            translate(
                "Results",
                "Good welds that were accepted: who rejects everything catches every bad one.",
            ),
            lambda row: counted(row.let_through), lambda row: _value(row.let_through),
            number=True,
        ),
        Column(
            "more", translate("Results", "More needed"),
            translate(
                "Results", "Calls without a mistake, from now on, that would show what is missing."
            ),
            lambda row: str(row.more) if row.more else "", lambda row: float(row.more),
            number=True,
        ),
    ]  # fmt: skip


def _line() -> list[Column[ReadyRow]]:
    return [
        Column(
            "line", translate("Results", "Line, mm"),
            translate(
                "Results",
                "Where they begin to call a weld short: above 0 too early, below 0 too late "
                "(bias of the fitted line), with its 95 %.",
            ),
            lambda row: between(*(row.bias or _NONE), share=False),
            lambda row: row.bias[0] if row.bias else None, number=True,
        ),
        Column(
            "blur", translate("Results", "Blur, mm"),
            translate(
                "Results", "How blurred that line is (spread of the fitted line), with its 95 %."
            ),
            lambda row: between(*(row.blur or _NONE), share=False),
            lambda row: row.blur[0] if row.blur else None, number=True,
        ),
    ]  # fmt: skip


def _behind() -> list[Column[ReadyRow]]:
    return [
        Column(
            "calls", translate("Results", "Calls"),
            translate(
                "Results",
                "Calls that count: made before anything told how they went, at the bench or in "
                "sittings.",
            ),
            lambda row: str(row.counted), lambda row: float(row.counted), number=True,
        ),
        Column("last", translate("Results", "Latest"),
               translate("Results", "The latest call that counts."), lambda row: when(row.last),
               lambda row: row.last.timestamp() if row.last else None),
        Column("groups", translate("Results", "Groups"),
               translate("Results", "Of the class, as they stand on this machine."),
               lambda row: ", ".join(row.groups)),
    ]  # fmt: skip


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
