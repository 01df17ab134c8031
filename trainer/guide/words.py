"""What the guide says: two short sentences a step at most, and nothing that a leaf shows."""

from __future__ import annotations

from trainer.bench.translation import translate
from trainer.guide.steps import StepName, Target

__all__ = ["offer_words", "step_title", "step_words"]


def offer_words() -> tuple[str, str]:
    """Title and text of the offer."""
    return (
        translate("Guide", "New here?"),
        translate("Guide", "Judge the first coupon step by step. It takes five minutes."),
    )


def step_title(name: StepName) -> str:
    """What a step is about, in a few words."""
    return {
        "face": translate("Guide", "Name the face"),
        "pick": translate("Guide", "Take a leaf"),
        "turn over": translate("Guide", "Turn it over"),
        "press home": translate("Guide", "Press it home"),
        "look": translate("Guide", "Look closely"),
        "state": translate("Guide", "Say what it shows"),
        "other leg": translate("Guide", "Gauge the other leg"),
        "disposition": translate("Guide", "Make the call"),
        "record": translate("Guide", "Put it on record"),
        "debrief": translate("Guide", "Read the debrief"),
    }[name]


def step_words(name: StepName, target: Target) -> str:
    """What to do in a step, and with what, as things stand."""
    if target == "swap ends":
        return translate("Guide", "This is the throat edge. Swap ends (E): legs need the leg edge.")
    if name == "other leg":
        return _other_leg(target)
    if target == "loupe switch":
        return translate("Guide", "Switch the loupe on (L). It stays on the leaf's point.")
    return {
        "face": translate(
            "Guide", "Look at the weld: is its face convex, flat or hollow? Choose that here."
        ),
        "pick": translate(
            "Guide", "Take the leaf of the size called for. Click it, drag it, or press its number."
        ),
        "turn over": translate(
            "Guide", "Turn the leaf over (F). Its tip now faces the other member."
        ),
        "press home": translate(
            "Guide", "Press Space. Or drag the leaf into the corner until its edge lies flush."
        ),
        "look": translate(
            "Guide",
            "The loupe stays on the tip. Look there for light; zoom with + or Ctrl+wheel.",
        ),
        "state": translate(
            "Guide", "Daylight: a gap at the tip. Held off: the weld keeps the tip away."
        ),
        "disposition": translate(
            "Guide", "Set both readings against the callout. Then choose what the weld needs."
        ),
        "record": translate(
            "Guide", "Say how sure you are if you like. Then put the call on record (Enter)."
        ),
        "debrief": translate(
            "Guide", "This is the true section, and why. Play your handling back (Space)."
        ),
    }[name]


def _other_leg(target: Target) -> str:
    return {
        "turn over": translate("Guide", "One leg proves nothing. Turn the leaf over again (F)."),
        "press home": translate("Guide", "Now press it home on this side too (Space)."),
        "states": translate("Guide", "Look again, and say what it shows here."),
    }[target]
