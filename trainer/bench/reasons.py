"""Reasons and readings in the user's language: by code, with the core's English to fall back on."""

from __future__ import annotations

from exercises.grading import Params, Reason
from geometry.lengths import Unit
from geometry.reading import Reading
from trainer.bench import words
from trainer.bench.placed_words import fault_list, fault_word
from trainer.bench.translation import translate
from trainer.figures import figures, length_words

__all__ = ["mark_word", "measure_word", "reason_text", "short_reason", "what_it_shows"]


def mark_word(mark: str) -> str:
    """What a mark is for."""
    known = {
        "face": translate("Debrief", "Face"),
        "leaf": translate("Debrief", "Leaf"),
        "edge": translate("Debrief", "Edge"),
        "seat": translate("Debrief", "Seat"),
        "legs": translate("Debrief", "Both legs"),
        "reading": translate("Debrief", "Reading"),
        "disposition": translate("Debrief", "Disposition"),
        "fault": translate("Debrief", "What is wrong"),
        "size": translate("Debrief", "Size"),
        "hints": translate("Debrief", "Bench notes"),
    }
    return known.get(mark, mark)


def measure_word(key: str) -> str:
    """A measure or a limit by its key."""
    known = {
        "leg_base": translate("Debrief", "leg on the base"),
        "leg_upright": translate("Debrief", "leg on the upright"),
        "actual_throat": translate("Debrief", "actual throat"),
        "theoretical_throat": translate("Debrief", "theoretical throat"),
        "effective_size": translate("Debrief", "effective size"),
        "effective_throat": translate("Debrief", "effective throat"),
        "convexity": translate("Debrief", "convexity"),
        "concavity": translate("Debrief", "concavity"),
        "undercut_base": translate("Debrief", "undercut at the base toe"),
        "undercut_upright": translate("Debrief", "undercut at the upright toe"),
        "overlap_base": translate("Debrief", "overlap on the base"),
        "overlap_upright": translate("Debrief", "overlap on the upright"),
        "root_opening": translate("Debrief", "root opening"),
        "toe_angle_base": translate("Debrief", "toe angle on the base"),
        "toe_angle_upright": translate("Debrief", "toe angle on the upright"),
        "asymmetry": translate("Debrief", "difference of the legs"),
        "excess_throat": translate("Debrief", "throat's excess"),
        "maximum_size": translate("Debrief", "size called for along the edge"),
        "joint_angle": translate("Debrief", "joint's angle"),
    }
    return known.get(key, key)


def _length(value: object, unit: Unit) -> str:
    return length_words(float(value), unit) if isinstance(value, (int, float)) else ""


def reason_text(reason: Reason, unit: Unit) -> str:
    """A reason in full, lengths in `unit`."""
    params = reason.params
    of_reading = _reading_words(reason, unit)
    if of_reading:
        return of_reading
    if reason.code.startswith("right-"):
        return _disposition_words(reason, unit)
    if reason.mark in ("fault", "size", "hints"):
        return _asked_words(reason)
    member = str(params.get("member", ""))
    known = {
        "face-convex": translate(
            "Debrief", "The face is convex: {off} beyond the line from toe to toe."
        ),
        "face-concave": translate(
            "Debrief", "The face is hollow: {off} short of the line from toe to toe."
        ),
        "face-flat": translate("Debrief", "The face is flat: {off} off the line from toe to toe."),
        "no-reading": translate("Debrief", "No leaf was held to the weld."),
        "leaf-other": _leaf_words(params),
        "edge-throat": translate(
            "Debrief", "A hollow face is read at the throat, with the throat edge."
        ),
        "edge-leg": translate(
            "Debrief",
            "A convex face is gauged at its legs, with the leg edge: at the throat its crown "
            "flatters it.",
        ),
        "leg-not-gauged": translate(
            "Debrief", "The leg on the {member} was not gauged with the leg edge."
        ),
    }
    text = known.get(reason.code)
    if text is None:
        return reason.text
    return text.format(
        off=_length(params.get("off"), unit),
        member=words.piece_word(member) if member else "",
    )


def _asked_words(reason: Reason) -> str:
    """Reasons that speak of a named fault, of a stated size, or of hints."""
    params = reason.params
    stated = str(params.get("stated", ""))
    if reason.code == "fault-other":
        true = str(params["faults"]).split(", ")
        text = (
            translate("Debrief", "Nothing is wrong with how the leaf is held; you said: {stated}.")
            if true == ["nothing"]
            else translate("Debrief", "What is wrong: {faults}; you said: {stated}.")
        )
        return text.format(faults=fault_list(true), stated=fault_word(stated).lower())
    if reason.code == "size-other":
        text = translate(
            "Debrief", "The largest leaf that the weld meets: {leaf}; you said {mark}."
        )
        return text.format(leaf=params.get("leaf", ""), mark=stated)
    if reason.code == "size-none":
        text = translate("Debrief", "The weld meets no leaf of this set; you said {mark}.")
        return text.format(mark=stated)
    off = round(100 * float(params.get("off", 0.0)))
    text = translate("Debrief", "Bench notes turned up: {count}. That takes {off} off the score.")
    return text.format(count=params.get("count", 0), off=off)


def _leaf_words(params: Params) -> str:
    """Which leaf should have been used, by the marks that are engraved on them."""
    marks = [mark for mark in str(params.get("leaves", "")).split(", ") if mark]
    named = [
        translate("Debrief", "the leaf {mark}").format(mark=mark.removesuffix(" mm"))
        if mark.startswith("a")
        else translate("Debrief", "the {mark} leaf").format(mark=mark)
        for mark in marks
    ]
    if len(named) < 2:
        return translate("Debrief", "Use {leaf}.").format(leaf="".join(named))
    text = (
        translate("Debrief", "Use {leaf} and {other}, one on either side of the weld.")
        if params.get("task") == "size"
        else translate("Debrief", "Use {leaf} and {other}, one on either side of the limit.")
    ).format(leaf=named[0], other=named[1])
    if "angle" not in params:
        return text
    why = translate(
        "Debrief",
        "A leaf reads a leg square to the member that its long edge lies on: leg \u00d7 "
        "sin({angle}\u00b0).",
    )
    return f"{text} {why.format(angle=figures(format(float(params['angle']), 'g')))}"


def _reading_words(reason: Reason, unit: Unit) -> str:
    """Reasons that speak of one stated reading; empty for others."""
    params = reason.params
    index = params.get("reading")
    if index is None:
        return ""
    name = translate("Debrief", "Reading {n}").format(n=int(index) + 1)
    if reason.code == "seat-in-steel":
        text = translate("Debrief", "{name}: the leaf stands {depth} inside steel.")
        return text.format(name=name, depth=_length(params.get("depth"), unit))
    if reason.code == "seat-open":
        way = [piece for piece in str(params.get("in_the_way", "")).split(", ") if piece]
        if not way:
            return translate("Debrief", "{name}: the leaf is not seated.").format(name=name)
        text = translate("Debrief", "{name}: the leaf is not seated; in the way: {way}.")
        return text.format(name=name, way=", ".join(words.piece_word(piece) for piece in way))
    if reason.code == "reading-other":
        text = translate("Debrief", "{name}: the leaf shows {state}{gap}; you said {stated}.")
        gap = params.get("gap")
        return text.format(
            name=name,
            state=words.state_word(str(params.get("state"))).lower(),
            gap=f" ({_length(gap, unit)})" if gap else "",
            stated=words.state_word(str(params.get("stated"))).lower(),
        )
    return ""


def _disposition_words(reason: Reason, unit: Unit) -> str:
    params = reason.params
    right = words.disposition_word(str(params.get("right"))).lower()
    if "keys" in params:
        keys = ", ".join(measure_word(key) for key in str(params["keys"]).split(", "))
        text = translate("Debrief", "Right call: {right}. No leaf can settle the {keys} here.")
        return text.format(right=right, keys=keys)
    if "key" not in params:
        text = translate("Debrief", "Right call: {right}. Every measure meets its limit.")
        return text.format(right=right)
    key = str(params["key"])
    said = translate("Debrief", "Right call: {right}. The {key} is {found};").format(
        right=right, key=measure_word(key), found=_amount(params.get("measured"), params, unit)
    )
    return f"{said} {_limit_words(key, params, unit)}{_withheld_words(params, unit)}."


def _amount(value: object, params: Params, unit: Unit) -> str:
    """A measured value or a limit: a length, or an angle."""
    if params.get("unit") == "degrees" and isinstance(value, (int, float)):
        return figures(f"{value:.1f}\u00b0")
    return _length(value, unit)


def _limit_words(key: str, params: Params, unit: Unit) -> str:
    """What the measure had to be, and of what that is made."""
    limit = _amount(params.get("limit"), params, unit)
    if "called" in params:
        return translate("Debrief", "{sum} = {limit} needed").format(
            sum=_size_sum(params, unit), limit=limit
        )
    if key.startswith(("leg_", "effective_", "theoretical_")):
        return translate("Debrief", "{limit} is called for").format(limit=limit)
    if key.startswith("toe_angle"):
        return translate("Debrief", "{limit} is needed").format(limit=limit)
    return translate("Debrief", "{limit} is allowed").format(limit=limit)


def _size_sum(params: Params, unit: Unit) -> str:
    """The size called for or the least size, what an opening adds, what is allowed under."""
    if "minimum" in params:
        text = translate("Debrief", "{size} least size")
        text = text.format(size=_length(params["minimum"], unit))
    else:
        text = translate("Debrief", "{size} called for")
        text = text.format(size=_length(params["called"], unit))
    if "opening" in params:
        more = translate("Debrief", "{size} root opening")
        text += f" + {more.format(size=_length(params['opening'], unit))}"
    if "allowed" in params:
        less = translate("Debrief", "{size} allowed under")
        text += f" \u2212 {less.format(size=_length(params['allowed'], unit))}"
    return text


def _withheld_words(params: Params, unit: Unit) -> str:
    """The allowance that would have sufficed, were the short place shorter."""
    if "withheld" not in params:
        return ""
    text = translate(
        "Debrief",
        "; {size} under is allowed over {share} % of the length at most, and this section stands "
        "for {extent} %",
    )
    return text.format(
        size=_length(params["withheld"], unit),
        share=round(100 * float(params["share"])),
        extent=round(100 * float(params["extent"])),
    )


def short_reason(reason: Reason, unit: Unit) -> str:
    """A reason in two or three words, for standing beside its place."""
    params = reason.params
    member = str(params.get("member", ""))
    known = {
        "face-convex": translate("Debrief", "convex, {off}"),
        "face-concave": translate("Debrief", "hollow, {off}"),
        "face-flat": translate("Debrief", "flat face"),
        "no-reading": translate("Debrief", "no reading"),
        "leaf-other": translate("Debrief", "leaf {leaves}"),
        "edge-throat": translate("Debrief", "throat edge here"),
        "edge-leg": translate("Debrief", "legs, not throat"),
        "leg-not-gauged": translate("Debrief", "not gauged"),
        "seat-in-steel": translate("Debrief", "inside steel"),
        "seat-open": translate("Debrief", "not seated"),
        "fault-other": fault_list(str(params.get("faults", "")).split(", ")),
        "size-other": translate("Debrief", "largest met: {leaf}"),
        "size-none": translate("Debrief", "no leaf met"),
    }
    if reason.code == "reading-other":
        return words.state_word(str(params.get("state"))).lower()
    if reason.code.startswith("right-"):
        if "measured" not in params:
            return words.disposition_word(str(params.get("right"))).lower()
        return f"{measure_word(str(params.get('key')))} {_amount(params['measured'], params, unit)}"
    text = known.get(reason.code, mark_word(reason.mark))
    return text.format(
        off=_length(params.get("off"), unit),
        leaves=params.get("leaves", ""),
        leaf=params.get("leaf", ""),
        member=member,
    )


def what_it_shows(shown: Reading, edge: str, unit: Unit) -> str:
    """What a leaf showed, and what that means."""
    gap = length_words(shown.gap, unit) if shown.gap is not None else ""
    if shown.state == "touch":
        text = (
            translate("Debrief", "Touch: tip and toe meet; the leg is the leaf's size.")
            if edge == "leg"
            else translate("Debrief", "Touch: the spur meets the face, both edges flush.")
        )
    elif shown.state == "daylight":
        text = (
            translate("Debrief", "Daylight, {gap} from tip to toe: the leg is smaller.")
            if edge == "leg"
            else translate("Debrief", "Daylight, {gap} from spur to face: the throat is smaller.")
        )
    elif shown.state == "held off":
        text = (
            translate(
                "Debrief", "Held off by {gap}: weld metal lies under the tip; the leg is larger."
            )
            if edge == "leg"
            else translate(
                "Debrief", "Held off by {gap}: the spur rides on the face; the throat is larger."
            )
        )
    else:
        way = ", ".join(dict.fromkeys(words.piece_word(piece) for piece in shown.in_the_way))
        text = (
            translate("Debrief", "Not seated, and says nothing; in the way: {way}.")
            if way
            else translate("Debrief", "Not seated: it isn't home, and says nothing.")
        )
        return text.format(way=way)
    return text.format(gap=gap)
