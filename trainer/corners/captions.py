"""What the talk says at each stop, in one sentence."""

from __future__ import annotations

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.bench.words import edge_word, state_word
from trainer.corners.pressing import Corner, Pressed
from trainer.corners.state import Corners, crown_of
from trainer.corners.talk import Flip, Passage, Stop, Topic
from trainer.corners.words import angle_word, bead_word, crown_word, length_word

__all__ = ["caption", "topic_word"]


def topic_word(topic: Topic) -> str:
    """What a passage is about, in a few words."""
    return {
        "size": translate("Talk", "Size grows"),
        "crown": translate("Talk", "Crown turns to hollow"),
        "legs": translate("Talk", "Legs part"),
        "opens": translate("Talk", "The joint opens"),
        "closes": translate("Talk", "The joint closes"),
    }[topic]


def caption(passage: Passage, stop: Stop, corners: Pressed, state: Corners, unit: Unit) -> str:
    """The one sentence of a stop.

    Parameters
    ----------
    passage, stop
        Where the talk is.
    corners, state
        What is shown there.
    unit
        Of lengths.
    """
    value = _value(passage.topic, state, unit)
    if stop.flips:
        flips = _flips(stop, corners)
        return translate("Talk", "At {value}: {flips}.").format(value=value, flips=flips)
    if stop.share >= 1.0:
        return translate("Talk", "Up to {value} no verdict flips any more.").format(value=value)
    return _opening(passage.topic, state.mark)


def _opening(topic: Topic, leaf: str) -> str:
    return {
        "size": translate("Talk", "Both legs grow under the {leaf} leaf; watch who notices first."),
        "crown": translate(
            "Talk",
            "The upper bead goes from crown to hollow, the lower one back; the legs stay as they "
            "are.",
        ),
        "legs": translate("Talk", "The base leg grows while the upright leg shrinks."),
        "opens": translate("Talk", "The joint opens beyond a right angle."),
        "closes": translate("Talk", "The joint closes below a right angle."),
    }[topic].format(leaf=leaf)


def _value(topic: Topic, state: Corners, unit: Unit) -> str:
    """What has been reached: the value that the passage changes."""
    if topic == "size":
        return translate("Talk", "legs of {leg}").format(leg=length_word(state.leg_base, unit))
    if topic == "crown":
        return translate("Talk", "crowns of {upper} above and {lower} below").format(
            upper=crown_word(crown_of(state, "crown"), unit),
            lower=crown_word(crown_of(state, "hollow"), unit),
        )
    if topic == "legs":
        return translate("Talk", "legs of {base} and {upright}").format(
            base=length_word(state.leg_base, unit), upright=length_word(state.leg_upright, unit)
        )
    return angle_word(state.angle)


def _flips(stop: Stop, corners: Pressed) -> str:
    """All that flipped; in few words where all four did the same."""
    after = {flip.after for flip in stop.flips}
    if len(stop.flips) == len(corners) and len(after) == 1:
        return translate("Talk", "all four corners become {after}").format(
            after=_small(stop.flips[0].after[0])
        )
    return "; ".join(_flip(flip, corners) for flip in stop.flips)


def _where(corner: Corner) -> str:
    """A corner within a sentence."""
    return translate("Talk", "{bead} under the {edge}").format(
        bead=bead_word(corner.measures.face).lower(), edge=edge_word(corner.edge)
    )


def _flip(flip: Flip, corners: Pressed) -> str:
    """One corner's change: of its state, or of what that is worth."""
    where = _where(corners[flip.place])
    (before, worth_before), (after, worth_after) = flip.before, flip.after
    false = {
        "false comfort": translate("Talk", "false comfort"),
        "false alarm": translate("Talk", "false alarm"),
    }
    if before == after:
        if worth_after in false:
            return translate("Talk", "{corner}, {state} becomes {false}").format(
                corner=where, state=_small(before), false=false[worth_after]
            )
        return translate("Talk", "{corner}, {state} is no longer {false}").format(
            corner=where, state=_small(before), false=false.get(worth_before, "")
        )
    if worth_after in false:
        return translate("Talk", "{corner}, {before} becomes {after}, {false}").format(
            corner=where, before=_small(before), after=_small(after), false=false[worth_after]
        )
    return translate("Talk", "{corner}, {before} becomes {after}").format(
        corner=where, before=_small(before), after=_small(after)
    )


def _small(state: str) -> str:
    """A state within a sentence."""
    return state_word(state).lower()
