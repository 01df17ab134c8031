"""A stored picture: the drawings of a section and a leaf as plain JSON, painted without geometry.

The first frame is painted from one before numpy, shapely or a tray are loaded. It goes through the
same painter as every other frame.
"""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from typing import Any, Final

from trainer.canvas.drawing import Blade, Drawing, Outline, Place, Step, Vec

__all__ = ["StillDrawing", "still_from_json", "still_to_json"]

_DECIMALS: Final = 6
_FORMAT: Final = "toe-and-throat/still"
_VERSION: Final = 1


@dataclass(frozen=True)
class StillDrawing:
    """What a first frame shows: a section, and a leaf where it lies, if there is one.

    Parameters
    ----------
    section
        The section's drawing.
    leaf, place
        The leaf's drawing and where it lies; both or neither.
    of
        What it was made from, in any words that its owner compares: a digest of the coupon.
    """

    section: Drawing
    leaf: Blade | None = None
    place: Place | None = None
    of: str = ""


def still_to_json(still: StillDrawing) -> str:
    """Return `still` as JSON, lengths to a nanometre.

    Examples
    --------
    >>> corner = Outline("face", (2.0, 0.0), ((0.0, 2.0),), closed=False)
    >>> drawing = Drawing((), corner, corner, 90.0)
    >>> still_from_json(still_to_json(StillDrawing(drawing, of="a"))).section.toes
    ((2.0, 0.0), (0.0, 2.0))
    """
    section = still.section
    value: dict[str, Any] = {
        "format": _FORMAT,
        "version": _VERSION,
        "of": still.of,
        "angle": section.angle,
        "bodies": [_plain(body) for body in section.bodies],
        "steel": _plain(section.steel),
        "face": _plain(section.face),
    }
    if still.leaf is not None and still.place is not None:
        leaf, place = still.leaf, still.place
        value["leaf"] = {
            "outline": _plain(leaf.outline), "back": _plain(leaf.back), "mark": leaf.mark,
            "size": leaf.size, "edge": leaf.edge, "point": list(leaf.point),
        }
        value["place"] = [place.x, place.y, place.angle, place.turned]
    return json.dumps(value, separators=(",", ":"), allow_nan=False)


def still_from_json(text: str) -> StillDrawing:
    """Return the picture that `still_to_json` wrote.

    Raises
    ------
    ValueError
        If the text is no such picture, or of another version. A caller then does without.
    """
    try:
        value = json.loads(text)
        if (value["format"], value["version"]) != (_FORMAT, _VERSION):
            raise ValueError(f"version {value['version']} of {value['format']}")
        section = Drawing(
            tuple(_outline(body) for body in value["bodies"]),
            _outline(value["steel"]), _outline(value["face"]), _number(value["angle"]),
        )
        leaf = _blade(value["leaf"]) if "leaf" in value else None
        place = _place(value["place"]) if "place" in value else None
        return StillDrawing(section, leaf, place, str(value["of"]))
    except (KeyError, TypeError, IndexError, AttributeError, RecursionError) as error:
        raise ValueError(f"no stored picture: {error!r}") from error


def _plain(outline: Outline) -> dict[str, Any]:
    return {
        "name": outline.name,
        "start": _rounded(outline.start),
        "steps": [_rounded(step) for step in outline.steps],
        "closed": outline.closed,
    }


def _rounded(step: Step) -> list[float]:
    """A line's end to a nanometre; an arc in full, since its angles act over its radius."""
    return [round(value, _DECIMALS) for value in step] if len(step) == 2 else list(step)


def _number(value: object) -> float:
    if not isinstance(value, (int, float)) or not math.isfinite(value):
        raise ValueError(f"{value!r} is no length")
    return float(value)


def _vec(value: list[object]) -> Vec:
    x, y = value
    return (_number(x), _number(y))


def _step(value: list[object]) -> Step:
    if len(value) not in (2, 7):
        raise ValueError(f"a step of {len(value)} numbers")
    return tuple(_number(each) for each in value)


def _outline(value: dict[str, Any]) -> Outline:
    steps = tuple(_step(step) for step in value["steps"])
    if not steps:
        raise ValueError("an outline without a step")
    return Outline(str(value["name"]), _vec(value["start"]), steps, bool(value["closed"]))


def _blade(value: dict[str, Any]) -> Blade:
    return Blade(
        _outline(value["outline"]), str(value["mark"]), _number(value["size"]),
        str(value["edge"]), _vec(value["point"]), _outline(value["back"]),
    )


def _place(value: list[Any]) -> Place:
    x, y, angle, turned = value
    return Place(_number(x), _number(y), _number(angle), bool(turned))
