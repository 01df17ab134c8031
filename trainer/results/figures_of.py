"""How figures of a class are written: shares, times, dates, numbers with what they are worth."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QDateTime, QLocale

from exercises.learner.demonstration import Share
from trainer.bench.translation import translate
from trainer.figures import figures

__all__ = ["between", "counted", "minutes", "number", "percent", "seconds", "when"]

_NOTHING = "\N{EN DASH}"


def percent(share: float | None) -> str:
    """A share in whole per cent; a dash where there is none.

    Examples
    --------
    >>> percent(0.856), percent(None)
    ('86 %', '–')
    """
    return _NOTHING if share is None else figures(f"{100.0 * share:.0f} %")


def number(value: float | None, digits: int = 2) -> str:
    """A number with a true minus sign; a dash where there is none.

    Examples
    --------
    >>> number(-0.254), number(None), number(-0.001)
    ('−0.25', '–', '0.00')
    """
    if value is None:
        return _NOTHING
    text = f"{value:.{digits}f}"
    if float(text) == 0.0:
        text = text.lstrip("-")
    return figures(text.replace("-", "\N{MINUS SIGN}"))


def between(value: float | None, low: float | None, high: float | None, *, share: bool) -> str:
    """A figure with the 95 % that it lies in, where that is known.

    Examples
    --------
    >>> between(0.8, 0.61, 0.92, share=True), between(0.31, -0.05, 0.6, share=False)
    ('80 % (61 to 92)', '0.31 (−0.05 to 0.60)')
    """
    said = percent(value) if share else number(value)
    if value is None or low is None or high is None:
        return said
    ends = (
        (figures(f"{100.0 * low:.0f}"), figures(f"{100.0 * high:.0f}"))
        if share
        else (number(low), number(high))
    )
    text = translate("Results", "{value} ({low} to {high})")
    return text.format(value=said, low=ends[0], high=ends[1])


def counted(share: Share | None) -> str:
    """A count of a whole; a dash where there was nothing to count.

    Examples
    --------
    >>> counted(Share(3, 14)), counted(None)
    ('3 of 14', '–')
    """
    if share is None:
        return _NOTHING
    return translate("Results", "{count} of {of}").format(count=share.count, of=share.of)


def minutes(ms: float | None) -> str:
    """Minutes, to a tenth.

    Examples
    --------
    >>> minutes(90_000)
    '1.5'
    """
    return _NOTHING if ms is None else figures(f"{ms / 60_000.0:.1f}")


def seconds(ms: float | None) -> str:
    """Whole seconds.

    Examples
    --------
    >>> seconds(90_400)
    '90'
    """
    return _NOTHING if ms is None else figures(f"{ms / 1000.0:.0f}")


def when(at: datetime | None) -> str:
    """A moment by the clock on the wall here, short; a dash where there is none."""
    if at is None:
        return _NOTHING
    local = QDateTime.fromSecsSinceEpoch(int(at.timestamp()))
    return QLocale().toString(local, QLocale.FormatType.ShortFormat)
