"""What a screen reader is told of a scene: its parts by name, and what can be done there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["Action", "Part", "PartKey", "differing"]

PartKey = Literal["section", "leaf", "tip"]
"""What of a picture can be told apart; the tip is the leaf's tip, or the spur of a throat edge."""


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a scene, in words that only the screen which shows it can choose.

    Parameters
    ----------
    key
        Which part: the canvas knows where it is.
    name
        What it is called.
    says
        What there is to say of it now; before a call no word here may come from the reading.
    """

    key: PartKey
    name: str
    says: str = ""


@dataclass(frozen=True, slots=True)
class Action:
    """Something that can be done to the leaf.

    Parameters
    ----------
    name
        What the screen calls it.
    words
        What it is called to a person.
    key
        Its key, as it is spoken; may be empty.
    """

    name: str
    words: str
    key: str = ""


def differing(
    before: tuple[Part, ...], after: tuple[Part, ...]
) -> tuple[tuple[PartKey, ...], tuple[PartKey, ...], tuple[PartKey, ...], tuple[PartKey, ...]]:
    """Return the parts that went, that came, whose name is another, of which other is said.

    Examples
    --------
    >>> differing((Part("leaf", "8 mm", "in the air"),), (Part("leaf", "8 mm", "on the base"),))
    ((), (), (), ('leaf',))
    """
    old, new = ({part.key: part for part in parts} for parts in (before, after))
    stays = [key for key in new if key in old]
    return (
        tuple(key for key in old if key not in new),
        tuple(key for key in new if key not in old),
        tuple(key for key in stays if old[key].name != new[key].name),
        tuple(key for key in stays if old[key].says != new[key].says),
    )
