"""Who is ready, and by which evidence: never a bare percentage.

Three things must be shown. Bad welds are caught: so many in a row, or of so many, that nine in ten
are caught with 95 % confidence (29 of 29 show it). Good welds are let through: whoever rejects
everything catches every bad one. And the line that the learner draws between short and sound lies
where it should: at a stated distance on either side of the limit the fitted line is past those
shares, with the same confidence. Calls within the doubt count for the line and for no share.

What is asked is a `Bar`; its figures are ours but for the first pair. The confidence is that of a
count fixed beforehand: whoever goes on until it is reached reaches it somewhat too easily.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from exercises.learner.demonstration import Share, demonstrate, trials_needed
from exercises.learner.line import Belief, believe
from exercises.learner.outcome import Outcome

__all__ = ["Bar", "Evidence", "Kind", "Readiness", "Verdict", "readiness"]

Verdict = Literal["ready", "not yet", "not enough seen"]
Kind = Literal["bad welds caught", "good welds let through", "the line"]

Params = Mapping[str, float | str]

_FEWEST_CALLS: Final = 16
"""Calls near enough to a limit to say something of the line, before it is judged (ours)."""


@dataclass(frozen=True, slots=True)
class Bar:
    """What has to be shown.

    Parameters
    ----------
    caught, let_through
        Shares of bad welds that are caught and of good ones that are let through, 0 to 1.
    confidence
        With which, one-sided.
    away
        mm of size from the limit, on either side, at which the line must have reached the shares.
    """

    caught: float = 0.9
    let_through: float = 0.8
    confidence: float = 0.95
    away: float = 0.3


@dataclass(frozen=True, slots=True)
class Evidence:
    """One thing that has to be shown, and how far it is.

    Parameters
    ----------
    kind
        What.
    verdict
        ``ready`` if it is shown, ``not yet`` if what was seen speaks against it, else
        ``not enough seen``.
    code, params
        A stable name for what is to be said, and what it speaks of; translations hang on them.
    text
        Plain English.
    """

    kind: Kind
    verdict: Verdict
    code: str
    params: Params
    text: str


@dataclass(frozen=True, slots=True)
class Readiness:
    """Whether a learner is ready: if all evidence says so.

    Parameters
    ----------
    verdict
        ``not yet`` if any evidence says so, else ``not enough seen`` if any does, else ``ready``.
    evidence
        One of each kind.
    """

    verdict: Verdict
    evidence: tuple[Evidence, ...]


def readiness(outcomes: Iterable[Outcome], bar: Bar | None = None) -> Readiness:
    """Return whether calls show that a learner is ready.

    Parameters
    ----------
    outcomes
        Of the calls that count: made without help and before anything told how they went, as those
        of sittings are. All of the learner's, or the last so many: chosen before looking.
    bar
        What has to be shown; the usual without it.

    Examples
    --------
    >>> bad = Outcome(-0.6, True, True, True, False, True)
    >>> found = readiness([bad] * 29)
    >>> found.verdict, [(each.kind, each.verdict) for each in found.evidence][:2]
    ('not enough seen', [('bad welds caught', 'ready'), ('good welds let through',
    'not enough seen')])
    >>> print(found.evidence[0].text)
    29 of 29 bad welds caught: 90 % or more, with 95 % confidence
    """
    asked = bar or Bar()
    seen = list(outcomes)
    clear = [each for each in seen if not each.in_doubt and each.called_bad is not None]
    bad = [each.called_bad is True for each in clear if each.bad]
    good = [each.called_bad is False for each in clear if not each.bad]
    evidence = (
        _shown("bad welds caught", "caught", bad, asked.caught, asked.confidence),
        _shown("good welds let through", "let-through", good, asked.let_through, asked.confidence),
        _line(believe(each.call for each in seen if each.call is not None), asked),
    )
    return Readiness(_least([each.verdict for each in evidence]), evidence)


def _least(verdicts: Sequence[Verdict]) -> Verdict:
    order: tuple[Verdict, ...] = ("not yet", "not enough seen")
    return next((verdict for verdict in order if verdict in verdicts), "ready")


def _shown(
    kind: Kind, code: str, hits: Sequence[bool], share: float, confidence: float
) -> Evidence:
    """What a count of right calls shows."""
    count, of = sum(hits), len(hits)
    found = demonstrate(count, of, share, confidence)
    params = {
        "hits": count,
        "trials": of,
        "share": share,
        "confidence": confidence,
        "bound": found.bound,
        "still_needed": found.still_needed,
    }
    counted = f"{count} of {of} {kind}"
    if found.shown:
        text = f"{counted}: {share:.0%} or more, with {confidence:.0%} confidence"
        return Evidence(kind, "ready", f"{code}-shown", params, _spaced(text))
    if _speaks_against(count, of, share, confidence):
        text = f"{counted}: {share:.0%} isn't shown; {found.still_needed} more without a miss would"
        return Evidence(kind, "not yet", f"{code}-not-yet", params, _spaced(text))
    text = f"{counted}: {found.still_needed} more without a miss would show {share:.0%}"
    return Evidence(kind, "not enough seen", f"{code}-unseen", params, _spaced(text))


def _speaks_against(count: int, of: int, share: float, confidence: float) -> bool:
    """Whether as many were seen as would have shown it, or so many missed that it can't be."""
    if not of:
        return False
    two_sided = 1.0 - 2.0 * (1.0 - confidence)
    too_few = Share(count, of, two_sided).high < share
    return too_few or of >= trials_needed(0, share, confidence)


def _line(belief: Belief, bar: Bar) -> Evidence:
    """Where the learner's line lies, and whether that is where it should."""
    known = belief.estimate()
    below, above = (
        belief.curves([-bar.away], (1.0 - bar.confidence, 0.5)),
        belief.curves([bar.away], (0.5, bar.confidence)),
    )
    caught, surely = float(below[1][0]), float(below[0][0])
    passed, at_least = 1.0 - float(above[0][0]), 1.0 - float(above[1][0])
    params: dict[str, float | str] = {
        "calls": known.calls,
        "away": bar.away,
        "bias": known.bias.middle,
        "bias_low": known.bias.low,
        "bias_high": known.bias.high,
        "spread": known.spread.middle,
        "spread_low": known.spread.low,
        "spread_high": known.spread.high,
        "caught": caught,
        "caught_bound": surely,
        "let_through": passed,
        "let_through_bound": at_least,
        "confidence": bar.confidence,
    }
    where = (
        f"{known.calls} calls: the line lies {known.bias.middle:+.2f} mm from the limit "
        f"({known.bias.low:+.2f} to {known.bias.high:+.2f}), blurred by {known.spread.middle:.2f} "
        f"mm ({known.spread.low:.2f} to {known.spread.high:.2f})"
    )
    if known.calls < _FEWEST_CALLS:
        params["needed"] = _FEWEST_CALLS
        text = f"{known.calls} calls say something of the line; {_FEWEST_CALLS} are needed"
        return Evidence("the line", "not enough seen", "line-unseen", params, text)
    if surely >= bar.caught and at_least >= bar.let_through:
        text = f"{where}: {bar.away:g} mm either side of it the calls are as sure as asked"
        return Evidence("the line", "ready", "line-shown", params, text)
    if caught < bar.caught or passed < bar.let_through:
        text = f"{where}: {bar.away:g} mm off the limit too many calls go wrong"
        return Evidence("the line", "not yet", "line-not-yet", params, text)
    text = f"{where}: more calls would tell whether {bar.away:g} mm is surely told"
    return Evidence("the line", "not enough seen", "line-open", params, text)


def _spaced(text: str) -> str:
    """The text with its per cent signs apart from the figures, as the trade writes them."""
    return text.replace("%", " %")
