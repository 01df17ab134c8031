"""What the reference says of its own: how surely a thing is known, and the headings of a page."""

from __future__ import annotations

from exercises.rules.limits import Sureness
from trainer.bench.translation import translate

__all__ = ["SIGNS", "surely"]

SIGNS: dict[Sureness, str] = {
    "seen": "\u25cf",
    "second-hand": "\u25d1",
    "from memory": "\u25cb",
    "own": "\u25c6",
}
"""A shape for each sureness: full, half, empty; and a lozenge for what is ours."""


def surely(sureness: Sureness) -> str:
    """How surely a thing is known, in a sentence."""
    return {
        "own": translate("Reference", "Own rule: this trainer's, from no document."),
        "seen": translate("Reference", "Seen: the text itself was read."),
        "second-hand": translate("Reference", "Second-hand: read where others repeat it."),
        "from memory": translate(
            "Reference",
            "From memory: not checked against its text. Check it before you rely on it.",
        ),
    }[sureness]
