"""Who is ready, and by which evidence, out of everything that a learner did before being told.

The verdict comes from `exercises.sitting.readiness`; a bare percentage is nowhere. Calls that were
made after something had told how such calls went count for nothing here, and are counted as that.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Final

from exercises.learner.demonstration import Share
from exercises.sitting.readiness import Evidence, Readiness, readiness
from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.figures import length_words
from trainer.results.figures_of import percent
from trainer.results.rows import ReadyRow
from trainer.school.reading import ClassMember, LearnerCall

__all__ = ["NEWEST", "Seen", "evidence_words", "ready_rows", "see"]

NEWEST: Final = 2000
"""Calls that count at most, the latest ones: so many, decided beforehand."""

_SAME: Final = 0.03
"""mm: a line this near the limit lies at it."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What was seen of somebody, and what it comes to.

    Parameters
    ----------
    member
        Who.
    readiness
        The verdict with its evidence.
    counted, others
        How many calls count, and how many don't.
    last
        When the latest that counts was made.
    """

    member: ClassMember
    readiness: Readiness
    counted: int
    others: int
    last: datetime | None


def see(members: Sequence[ClassMember], calls: Mapping[str, Sequence[LearnerCall]]) -> list[Seen]:
    """Return what was seen of each: figures alone, so it can go on beside the window."""
    found = []
    for member in members:
        made = calls.get(member.id, ())
        count = [call for call in made if call.before_feedback]
        found.append(
            Seen(
                member=member,
                readiness=readiness(call.outcome for call in count),
                counted=len(count),
                others=len(made) - len(count),
                last=max((call.at for call in count), default=None),
            )
        )
    return found


def ready_rows(seen: Sequence[Seen], unit: Unit) -> list[ReadyRow]:
    """Return a row for each learner, with all its evidence in words."""
    return [_row(one, unit) for one in seen]


def _row(seen: Seen, unit: Unit) -> ReadyRow:
    caught, through, line = (one.params for one in seen.readiness.evidence)
    known: Any = line
    told = seen.readiness.evidence[2].code != "line-unseen"
    bias = (known["bias"], known["bias_low"], known["bias_high"]) if told else None
    blur = (known["spread"], known["spread_low"], known["spread_high"]) if told else None
    member = seen.member
    needed: list[Any] = [
        one.params["still_needed"] for one in seen.readiness.evidence[:2] if one.verdict != "ready"
    ]
    sentences = [evidence_words(one, unit) for one in seen.readiness.evidence]
    sentences.append(_others_words(seen.others))
    return ReadyRow(
        id=member.id,
        code=member.code,
        name="" if member.name == member.code else member.name,
        groups=member.groups,
        verdict=seen.readiness.verdict,
        caught=_share(caught),
        let_through=_share(through),
        more=int(sum(needed)),
        bias=bias,
        blur=blur,
        counted=seen.counted,
        others=seen.others,
        last=seen.last,
        sentence=" ".join(one for one in sentences if one),
    )


def _share(params: Mapping[str, Any]) -> Share | None:
    return Share(int(params["hits"]), int(params["trials"])) if params["trials"] else None


def _others_words(others: int) -> str:
    if not others:
        return ""
    text = translate(
        "Results",
        "Calls made after being told how such calls went, which count for nothing here: {count}.",
    )
    return text.format(count=others)


def evidence_words(evidence: Evidence, unit: Unit) -> str:
    """One thing that has to be shown, and how far it is, in a sentence or two."""
    params: Any = evidence.params
    if evidence.kind == "the line":
        return _line_words(evidence.code, params, unit)
    known = {
        "caught-shown": translate(
            "Results",
            "{hits} of {trials} bad welds caught: that shows, with {confidence} confidence, that "
            "{share} or more are.",
        ),
        "caught-not-yet": translate(
            "Results",
            "{hits} of {trials} bad welds caught: {share} isn't shown; {more} more without a miss "
            "would.",
        ),
        "caught-unseen": translate(
            "Results",
            "{hits} of {trials} bad welds caught: {more} more without a miss would show {share}.",
        ),
        "let-through-shown": translate(
            "Results",
            "{hits} of {trials} good welds let through: {share} or more, with {confidence} "
            "confidence.",
        ),
        "let-through-not-yet": translate(
            "Results",
            "{hits} of {trials} good welds let through: {share} isn't shown; {more} more without "
            "a false alarm would.",
        ),
        "let-through-unseen": translate(
            "Results",
            "{hits} of {trials} good welds let through: {more} more without a false alarm would "
            "show {share}.",
        ),
    }
    text = known.get(evidence.code)
    if text is None:
        return evidence.text
    if not params["trials"]:
        text = (
            translate(
                "Results", "No bad weld called yet: {more} caught in a row would show {share}."
            )
            if evidence.kind == "bad welds caught"
            else translate(
                "Results",
                "No good weld called yet: {more} let through in a row would show {share}.",
            )
        )
    return text.format(
        hits=params["hits"], trials=params["trials"], more=params["still_needed"],
        share=percent(params["share"]), confidence=percent(params["confidence"]),
    )  # fmt: skip


def _line_words(code: str, params: Mapping[str, Any], unit: Unit) -> str:
    if code == "line-unseen":
        text = translate(
            "Results",
            "{calls} of the {needed} calls near a limit that would say where the line is.",
        )
        return text.format(calls=params["calls"], needed=params["needed"])
    where = translate(
        "Results", "The line lies {middle} (95 %: {low} to {high}), blurred by {blur}:"
    ).format(
        middle=_side(params["bias"], unit), low=_side(params["bias_low"], unit),
        high=_side(params["bias_high"], unit), blur=length_words(params["spread"], unit),
    )  # fmt: skip
    then = {
        "line-shown": translate("Results", "{away} off the limit the calls are as sure as asked."),
        "line-not-yet": translate("Results", "{away} off the limit too many calls go wrong."),
        "line-open": translate(
            "Results", "more calls would tell whether {away} off the limit is surely told."
        ),
    }.get(code, "")
    return f"{where} {then.format(away=length_words(params['away'], unit))}"


def _side(value: float, unit: Unit) -> str:
    if abs(value) < _SAME:
        return translate("Results", "at the limit")
    text = (
        translate("Results", "{off} above it")
        if value > 0.0
        else translate("Results", "{off} below it")
    )
    return text.format(off=length_words(abs(value), unit))
