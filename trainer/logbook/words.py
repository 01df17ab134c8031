"""What a logbook's findings are in words: one plain sentence or two above each picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from typing import Final

from exercises.learner.demonstration import Share
from exercises.learner.hit_miss import Curve, NoCurve
from exercises.learner.line import Estimate
from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.figures import figures, length_words
from trainer.logbook.findings import FEWEST, Findings, Repeats

__all__ = [
    "fault_label",
    "faults_by_label",
    "heading",
    "plot_words",
    "sentences",
    "standing_word",
    "trouble_words",
]

_SAME: Final = 0.03
"""mm: a line this near the limit lies at it."""


def heading(name: str) -> str:
    """The heading of a picture by its name."""
    return {
        "line": translate("Logbook", "Where you draw the line"),
        "rates": translate("Logbook", "Misses and false alarms"),
        "faults": translate("Logbook", "What went wrong, by kind"),
        "sure": translate("Logbook", "How sure, and how right"),
        "weeks": translate("Logbook", "Week by week"),
    }[name]


def plot_words() -> dict[str, str]:
    """Every word inside the pictures, by its key."""
    return {
        "distance": translate("Logbook", "Distance from the limit, mm (left: short of it)"),
        "called short": translate("Logbook", "Called short"),
        "limit": translate("Logbook", "limit"),
        "doubt": translate("Logbook", "grey: within a leaf's doubt"),
        "misses": translate("Logbook", "Bad, let go"),
        "false alarms": translate("Logbook", "Good, rejected"),
        "sure": translate("Logbook", "How sure you were"),
        "right": translate("Logbook", "How often right"),
        "times": translate("Logbook", "Times"),
        "score": translate("Logbook", "Marks"),
        "acceptable": standing_word("acceptable"),
        "marginal": standing_word("marginal"),
        **_fault_labels(),
    }


def _fault_labels() -> Mapping[str, str]:
    face = translate("Logbook", "face named wrong")
    return {
        "face-convex": face,
        "face-concave": face,
        "face-flat": face,
        "no-reading": translate("Logbook", "no leaf held to the weld"),
        "leaf-other": translate("Logbook", "another leaf was needed"),
        "edge-throat": translate("Logbook", "hollow, not read at the throat"),
        "edge-leg": translate("Logbook", "convex, read at the throat"),
        "leg-not-gauged": translate("Logbook", "one leg only"),
        "seat-in-steel": translate("Logbook", "leaf inside steel"),
        "seat-open": translate("Logbook", "leaf not seated"),
        "reading-other": translate("Logbook", "leaf read otherwise"),
        "fault-other": translate("Logbook", "a fault of a placed leaf not seen"),
        "size-other": translate("Logbook", "another leaf was the largest met"),
        "size-none": translate("Logbook", "a size stated where no leaf is met"),
        "hints-asked": translate("Logbook", "bench notes turned up"),
        "right-accept": translate("Logbook", "a good weld not accepted"),
        "right-add-weld-metal": translate("Logbook", "weld metal was missing"),
        "right-dress-back": translate("Logbook", "should have been dressed back"),
        "right-refer": translate("Logbook", "should have been referred"),
    }


def fault_label(code: str) -> str:
    """A kind of fault in a few words; the code itself if it has none."""
    return _fault_labels().get(code, code)


def faults_by_label(found: Findings) -> list[tuple[str, int]]:
    """How often each kind of fault was marked, those that are called alike together."""
    counts: Counter[str] = Counter()
    for code, count in found.faults:
        counts[fault_label(code)] += count
    return counts.most_common()


def standing_word(standing: str | None) -> str:
    """Where a rate stands by the limits that measurement-systems practice has for appraisers."""
    return {
        "acceptable": translate("Logbook", "acceptable"),
        "marginal": translate("Logbook", "marginal"),
        "unacceptable": translate("Logbook", "unacceptable"),
        None: translate("Logbook", "too few to say"),
    }[standing]


def sentences(name: str, found: Findings, unit: Unit) -> list[str]:
    """What a picture says, in plain sentences, the first one the most important."""
    return {
        "line": _line,
        "rates": _rates,
        "faults": _faults,
        "sure": _sure,
        "weeks": _weeks,
    }[name](found, unit)


def _few(have: int, need: int) -> str:
    text = translate("Logbook", "{have} of the {need} calls that anything could be said from.")
    return text.format(have=have, need=need)


def _line(found: Findings, unit: Unit) -> list[str]:
    if found.line is None:
        near = translate(
            "Logbook", "Nothing can be said yet: only calls that hang on a size count here."
        )
        return [near, _few(len(found.calls), FEWEST["line"])]
    said = [_where(found.line, unit), _blur(found.line, unit), *_caught(found, unit)]
    if found.first_line is not None:
        text = translate(
            "Logbook",
            "In a day's first calls, before anything told you how they went, the line lies "
            "{where}: that is the honest measure.",
        )
        bias = found.first_line.bias
        where = translate("Logbook", "{middle} the limit (95 %: from {low} to {high})").format(
            middle=_side(bias.middle, unit), low=_side(bias.low, unit), high=_side(bias.high, unit)
        )
        said.append(text.format(where=where))
    return said


def _where(line: Estimate, unit: Unit) -> str:
    bias = line.bias
    span = translate("Logbook", "from {low} to {high}").format(
        low=_side(bias.low, unit), high=_side(bias.high, unit)
    )
    if abs(bias.middle) < _SAME:
        text = translate("Logbook", "You call a weld short just where the limit is (95 %: {span}).")
        return text.format(span=span)
    off = length_words(abs(bias.middle), unit)
    text = (
        translate("Logbook", "You call welds short up to {off} above the limit (95 %: {span}).")
        if bias.middle > 0.0
        else translate(
            "Logbook", "You let welds pass down to {off} below the limit (95 %: {span})."
        )
    )
    return text.format(off=off, span=span)


def _side(value: float, unit: Unit) -> str:
    text = length_words(abs(value), unit)
    if value < 0.0:
        return translate("Logbook", "{length} below").format(length=text)
    return translate("Logbook", "{length} above").format(length=text)


def _blur(line: Estimate, unit: Unit) -> str:
    text = translate(
        "Logbook",
        "Your line is blurred by {spread}: two welds that differ by less are told apart by luck.",
    )
    return text.format(spread=length_words(line.spread.middle, unit))


def _caught(found: Findings, unit: Unit) -> list[str]:
    if found.caught is not None and isinstance(found.curve, Curve):
        if found.caught.fitted <= 0.0:
            return [translate("Logbook", "Nine short welds in ten are caught, however little.")]
        fitted = length_words(found.caught.fitted, unit)
        if found.caught.surely is None:
            text = translate("Logbook", "Of welds {fitted} short nine in ten are caught.")
            return [text.format(fitted=fitted)]
        text = translate(
            "Logbook",
            "Of welds {fitted} short nine in ten are caught; with 95 % confidence, of welds "
            "{surely} short.",
        )
        return [text.format(fitted=fitted, surely=length_words(found.caught.surely, unit))]
    if isinstance(found.curve, NoCurve) and found.curve.reason == "separated":
        return [
            translate(
                "Logbook",
                "No call crossed the line yet, so how steep the curve is can't be told: only "
                "calls nearer the limit would.",
            )
        ]
    return []


def _share(share: Share) -> str:
    return figures(f"{100.0 * share.value:.1f} %")


def _rates(found: Findings, _unit: Unit) -> list[str]:
    rates = found.rates
    if rates.misses is None and rates.false_alarms is None:
        return [translate("Logbook", "No call outside the doubt yet.")]
    said = []
    if rates.misses is not None:
        text = translate("Logbook", "Of {of} bad welds {count} were let go, {share}: {standing}.")
        said.append(_rated(text, rates.misses, rates.standing("misses")))
    if rates.false_alarms is not None:
        text = translate(
            "Logbook", "Of {of} good welds {count} were rejected, {share}: {standing}."
        )
        said.append(_rated(text, rates.false_alarms, rates.standing("false alarms")))
    said.append(_shown(found))
    if any(rates.standing(of) for of in ("misses", "false alarms")):
        said.append(
            translate(
                "Logbook",
                "Limits for appraisers: 2 and 5 % of the bad, 5 and 10 % of the good (AIAG MSA, "
                "third edition).",
            )
        )
    if rates.kappa is not None:
        text = translate("Logbook", "Agreement with the truth beyond chance (kappa): {kappa}.")
        said.append(text.format(kappa=_kappa(rates.kappa)))
    if found.repeats is not None:
        said.append(_repeats(found.repeats))
    return said


def _repeats(repeats: Repeats) -> str:
    alike = repeats.alike
    if repeats.kappa is None:
        text = translate("Logbook", "Called again, {count} of {of} coupons were called alike.")
        return text.format(count=alike.count, of=alike.of)
    text = translate(
        "Logbook",
        "Called again, {count} of {of} coupons were called alike (Fleiss' kappa {kappa}).",
    )
    kappa = _kappa(repeats.kappa)
    return text.format(count=alike.count, of=alike.of, kappa=kappa)


def _kappa(value: float) -> str:
    """With a minus sign, which a hyphen is not."""
    return figures(f"{value:.2f}").replace("-", "\u2212")


def _rated(text: str, share: Share, standing: str | None) -> str:
    return text.format(
        of=share.of, count=share.count, share=_share(share), standing=standing_word(standing)
    )


def _shown(found: Findings) -> str:
    shown = found.demonstrated
    if shown.shown:
        text = translate(
            "Logbook",
            "{hits} of {trials} bad welds caught shows, with 95 % confidence, that nine in ten "
            "are.",
        )
        return text.format(hits=shown.hits, trials=shown.trials)
    text = translate(
        "Logbook",
        "{hits} of {trials} bad welds caught doesn't show yet that nine in ten are: {more} more "
        "without a miss would.",
    )
    return text.format(hits=shown.hits, trials=shown.trials, more=shown.still_needed)


def _faults(found: Findings, _unit: Unit) -> list[str]:
    if not found.faults:
        return [translate("Logbook", "Nothing was marked down yet.")]
    label, count = faults_by_label(found)[0]
    text = translate("Logbook", "Commonest: {fault} ({count}).")
    return [text.format(fault=label, count=count)]


def _sure(found: Findings, _unit: Unit) -> list[str]:
    if not found.sure:
        return [translate("Logbook", "Too few calls said how sure they were.")]
    of = sum(step.right.of for step in found.sure)
    stated = sum(step.sure * step.right.of for step in found.sure) / of
    right = sum(step.right.count for step in found.sure) / of
    parts = {"sure": f"{100 * stated:.0f}", "right": f"{100 * right:.0f}"}
    if stated - right > 0.05:
        text = translate(
            "Logbook", "You are surer than you are right: {sure} % sure, {right} % right."
        )
    elif right - stated > 0.05:
        text = translate(
            "Logbook", "You are right more often than you think: {sure} % sure, {right} % right."
        )
    else:
        text = translate("Logbook", "You know what you know: {sure} % sure, {right} % right.")
    return [text.format(**parts)]


def _weeks(found: Findings, _unit: Unit) -> list[str]:
    if len(found.weeks) < FEWEST["weeks"]:
        return [translate("Logbook", "One week is no course yet: a second one is needed.")]
    first, last = found.weeks[0], found.weeks[-1]
    text = translate("Logbook", "Marks went from {first} % to {last} % over {weeks} weeks.")
    weeks = (last.monday - first.monday).days // 7 + 1
    marks = {"first": f"{100 * first.score:.0f}", "last": f"{100 * last.score:.0f}"}
    return [text.format(**marks, weeks=weeks)]


def trouble_words(trouble: str, path: str) -> tuple[str, str]:
    """What keeps a logbook shut: a heading, and what to do."""
    aside = translate(
        "Logbook", "Practice goes on: calls are kept aside and taken in when it opens again."
    )
    told = {
        "newer": (
            translate("Logbook", "The logbook is from a newer version of this program."),
            translate("Logbook", "Use that version, or put a backup back."),
        ),
        "damaged": (
            translate("Logbook", "The logbook can't be read: its file is damaged."),
            translate("Logbook", "Put a backup back; the damaged file is kept beside it."),
        ),
        "locked": (
            translate("Logbook", "Another program holds the logbook."),
            translate("Logbook", "Close that program, then try again."),
        ),
        "full": (
            translate("Logbook", "The disk is full: the logbook can't be written."),
            translate("Logbook", "Make room, then try again."),
        ),
        "unwritable": (
            translate("Logbook", "The logbook can't be opened or written."),
            translate("Logbook", "See that its folder exists and may be written to."),
        ),
        "no such learner": (
            translate("Logbook", "That learner isn't in this logbook any more."),
            translate("Logbook", "Choose another one."),
        ),
        "name": (
            translate("Logbook", "That name is taken, empty or too long."),
            translate("Logbook", "Choose another one."),
        ),
    }
    first, then = told[trouble]
    lines = [path, then]
    if trouble in {"newer", "damaged", "locked", "full", "unwritable"}:
        lines.append(aside)
    return first, "\n".join(line for line in lines if line)
