"""What a drill says of itself."""

from __future__ import annotations

from exercises.drill import BEFORE_FEEDBACK, Drill, Ending
from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.figures import length_words
from trainer.logbook.findings import FEWEST

__all__ = ["ending_words", "progress_words"]

_SAME = 0.03
"""mm: a line this near the limit lies at it."""


def progress_words(drill: Drill) -> str:
    """How far a drill is, and whether anything tells yet how the calls go."""
    made = len(drill.outcomes)
    if drill.before_feedback:
        left = BEFORE_FEEDBACK - drill.today
        text = translate(
            "Drill",
            "Drill, {made} calls made. The day's first calls are made before anything tells you "
            "how they went: {left} more.",
        )
        return text.format(made=made, left=left)
    right, counted = drill.scored
    text = translate(
        "Drill", "Drill, {made} calls made; where only one answer was right, {right} of {counted}."
    )
    return text.format(made=made, right=right, counted=counted)


def ending_words(drill: Drill, ending: Ending | None, unit: Unit) -> tuple[str, str]:
    """What a drill found, at its end: a heading, and a few sentences."""
    heading = {
        "sharp": translate("Drill", "Your line is known well enough"),
        "tired": translate("Drill", "Enough for one day"),
        None: translate("Drill", "The drill so far"),
    }[ending]
    if not drill.outcomes:
        return heading, translate("Drill", "No call was made.")
    told = sum(outcome.call is not None for outcome in drill.outcomes)
    right, counted = drill.scored
    score = translate(
        "Drill", "Where only one answer was right, {right} of {counted} calls gave it."
    )
    score = score.format(right=right, counted=counted)
    kept = translate("Drill", "All of them are in the logbook.")
    if told < FEWEST["line"]:
        few = translate("Drill", "Too few calls to say where you draw the line: {told} of {need}.")
        return heading, "\n".join((few.format(told=told, need=FEWEST["line"]), score, kept))
    known = drill.estimate
    off = length_words(abs(known.bias.middle), unit)
    if abs(known.bias.middle) < _SAME:
        where = translate("Drill", "You call a weld short just where the limit is.")
    elif known.bias.middle > 0.0:
        where = translate("Drill", "You call welds short up to {off} above the limit.")
    else:
        where = translate("Drill", "You let welds pass down to {off} below the limit.")
    blur = translate("Drill", "Your line is blurred by {spread}, between {low} and {high}.")
    range_ = translate("Drill", "With 95 % confidence it lies between {low} and {high}.")
    lines = [
        where.format(off=off),
        range_.format(low=_side(known.bias.low, unit), high=_side(known.bias.high, unit)),
        blur.format(
            spread=length_words(known.spread.middle, unit),
            low=length_words(known.spread.low, unit),
            high=length_words(known.spread.high, unit),
        ),
        score,
        kept,
    ]
    return heading, "\n".join(lines)


def _side(distance: float, unit: Unit) -> str:
    length = length_words(abs(distance), unit)
    if distance < 0.0:
        return translate("Drill", "{length} below the limit").format(length=length)
    return translate("Drill", "{length} above the limit").format(length=length)
