"""The table of a sitting's papers: its columns, and what it can be sifted by."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from trainer.bench.reasons import mark_word
from trainer.bench.translation import translate
from trainer.results.arranging import Column, Key
from trainer.results.figures_of import minutes, percent, when
from trainer.results.rows import LearnerRow
from trainer.results.sieve import Choice, Option

__all__ = ["learner_choices", "learner_columns"]


def learner_columns(skills: Sequence[str]) -> list[Column[LearnerRow]]:
    """Return the columns, one for each of the skills that the sitting asks for."""
    return [*_who(), *_came(), *(_skill(name) for name in skills), *_counts(), *_times(), *_where()]


def _who() -> list[Column[LearnerRow]]:
    return [
        Column(
            "code", translate("Results", "Code"),
            translate("Results", "What the learner is called in sittings (pseudonym)."),
            lambda row: row.code,
        ),
        Column(
            "name", translate("Results", "Name here"),
            translate("Results", "The name that this machine's logbook knows; no file carries it."),
            lambda row: row.name,
        ),
    ]  # fmt: skip


def _came() -> list[Column[LearnerRow]]:
    return [
        Column(
            "score", translate("Results", "Score"),
            translate(
                "Results",
                "Mean of the coupons' scores; unanswered and critical ones count 0 (total score).",
            ),
            lambda row: percent(row.score), lambda row: row.score, number=True,
        ),
        Column(
            "passed", translate("Results", "Result"),
            translate(
                "Results", "Passed if every pass mark is reached and nothing stands against it."
            ),
            _verdict, lambda row: float(row.passed), lambda row: "good" if row.passed else "bad",
        ),
        Column(
            "why", translate("Results", "Why"),
            translate("Results", "What the result hangs on."), lambda row: row.why,
        ),
    ]  # fmt: skip


def _verdict(row: LearnerRow) -> str:
    return translate("Results", "Passed") if row.passed else translate("Results", "Not passed")


def _skill(name: str) -> Column[LearnerRow]:
    text = translate(
        "Results",
        "{skill}: mean of this mark over the coupons that ask for it (subscore); marked where it "
        "is below its own pass mark.",
    )

    def said(row: LearnerRow) -> str:
        share = percent(row.by_skill.get(name))
        # Not by colour alone.
        return f"{share} \N{DOWNWARDS ARROW}" if name in row.below else share

    def key(row: LearnerRow) -> Key:
        return row.by_skill.get(name)

    return Column(
        f"skill {name}", mark_word(name), text.format(skill=mark_word(name)), said, key,
        lambda row: "bad" if name in row.below else "plain", number=True,
    )  # fmt: skip


def _counts() -> list[Column[LearnerRow]]:
    return [
        Column(
            "critical", translate("Results", "Critical"),
            translate("Results", "Calls that accept what the rules reject (critical errors)."),
            lambda row: str(row.critical), lambda row: float(row.critical),
            lambda row: "bad" if row.critical else "plain", number=True,
        ),
        Column(
            "unanswered", translate("Results", "Unanswered"),
            translate("Results", "Coupons without a call (omitted items); each scores 0."),
            lambda row: str(row.unanswered), lambda row: float(row.unanswered), number=True,
        ),
    ]  # fmt: skip


def _times() -> list[Column[LearnerRow]]:
    return [
        Column(
            "used", translate("Results", "Time, min"),
            translate("Results", "Time used while the program ran; breaks are not in it."),
            lambda row: minutes(row.used_ms), lambda row: float(row.used_ms), number=True,
        ),
        Column(
            "extra", translate("Results", "Extra time"),
            translate("Results", "Share of time more than the others have (accommodation)."),
            lambda row: f"+{percent(row.extra)}" if row.extra else "",
            lambda row: row.extra, number=True,
        ),
        Column(
            "interruptions", translate("Results", "Breaks"),
            translate(
                "Results",
                "How often it was broken off: closed, asleep, or the clock set (interruptions).",
            ),
            lambda row: str(row.interruptions), lambda row: float(row.interruptions), number=True,
        ),
    ]  # fmt: skip


def _where() -> list[Column[LearnerRow]]:
    return [
        Column(
            "station", translate("Results", "Station"),
            translate("Results", "The machine that it was sat on."), lambda row: row.station,
        ),
        Column(
            "finished", translate("Results", "Handed in"),
            translate("Results", "When it was handed in, by that machine's clock."),
            lambda row: when(row.finished),
            lambda row: row.finished.timestamp() if row.finished else None,
        ),
        Column(
            "ended", translate("Results", "Ended"),
            translate("Results", "Whether the learner finished it, or the time did."), _ended,
        ),
        Column(
            "groups", translate("Results", "Groups"),
            translate("Results", "Of the class, as they stand on this machine."),
            lambda row: ", ".join(row.groups),
        ),
        Column(
            "note", translate("Results", "Note"),
            translate(
                "Results",
                "Whether there are two papers of one code, and how many marks were overridden.",
            ),
            _note, tone=lambda row: "bad" if row.clash else "plain",
        ),
    ]  # fmt: skip


def _ended(row: LearnerRow) -> str:
    return {
        "finished": translate("Results", "finished"),
        "time up": translate("Results", "time up"),
    }.get(row.ended, row.ended)


def _note(row: LearnerRow) -> str:
    said = []
    if row.clash:
        said.append(translate("Results", "another paper of this code"))
    if row.overridden:
        text = translate("Results", "marks overridden: {count}")
        said.append(text.format(count=row.overridden))
    return "; ".join(said)


def learner_choices(
    rows: Sequence[LearnerRow], skills: Sequence[str], groups: Sequence[str]
) -> list[Choice[LearnerRow]]:
    """Return what the papers can be sifted by."""
    del rows
    return [
        Choice("group", translate("Results", "Group"), [
            Option(translate("Results", "All groups"), None),
            *(Option(name, partial(_in_group, name)) for name in groups),
        ]),
        Choice("passed", translate("Results", "Result"), [
            Option(translate("Results", "Passed or not"), None),
            Option(translate("Results", "Passed"), lambda row: row.passed),
            Option(translate("Results", "Not passed"), lambda row: not row.passed),
            Option(translate("Results", "Two of one code"), lambda row: row.clash),
        ]),
        Choice("below", translate("Results", "Skill below its mark"), [
            Option(translate("Results", "Any skills"), None),
            Option(translate("Results", "Some skill below"), lambda row: bool(row.below)),
            *(Option(_below_words(name), partial(_is_below, name)) for name in skills),
        ]),
    ]  # fmt: skip


def _below_words(name: str) -> str:
    return translate("Results", "{skill} below").format(skill=mark_word(name))


def _in_group(name: str, row: LearnerRow) -> bool:
    return name in row.groups


def _is_below(name: str, row: LearnerRow) -> bool:
    return name in row.below


Keeps = Callable[[LearnerRow], bool]
