"""A section out of a picture of a cut and etched weld: what the marks in it come to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np

from exercises.intake.photo_backdrop import backdrop_of
from exercises.intake.photo_doubt import Doubts, doubts_of, located
from exercises.intake.photo_edges import Floats
from exercises.intake.photo_file import Picture
from exercises.intake.photo_follow import Face, face_of, follow
from exercises.intake.photo_frame import Frame, Marks, Spot, frame_of
from exercises.intake.photo_plane import stretch
from exercises.intake.traced import Traced
from geometry.bead import Bead
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from geometry.joint import Joint
from geometry.measures import Measures, measure
from geometry.section import Section

__all__ = ["Outline", "Wire", "outline_of", "taken"]

_ROOM: Final = 60.0
"""mm of each member from the root, as a coupon has it that says nothing of it."""


class Wire:
    """The way along a picture's edges from click to click; a stretch that is known is kept."""

    def __init__(self, picture: Picture) -> None:
        self._follow = lru_cache(maxsize=256)(lambda a, b: follow(picture.grey, a, b))

    def along(self, spots: tuple[Spot, ...]) -> Floats:
        """Return the way through all spots, pixels, shape (n, 2)."""
        if len(spots) < 2:
            return np.array([spot.at for spot in spots], np.float64).reshape(-1, 2)
        parts = [self._follow(a, b) for a, b in pairwise(spots)]
        return np.vstack([parts[0], *(part[1:] for part in parts[1:])])


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """What the marks in a picture come to.

    Parameters
    ----------
    frame
        How the picture lies in the section frame.
    face
        The face, mm.
    section, measures
        The section that it is, and its measures.
    doubts
        How far its legs and throat may be off.
    pixel
        mm, in the middle of the face.
    """

    frame: Frame
    face: Face
    section: Section = field(repr=False)
    measures: Measures
    doubts: Doubts
    pixel: float


def outline_of(marks: Marks, wire: Wire) -> Outline:
    """Return what the marks come to.

    Raises
    ------
    GeometryError
        With a `Fault` for each thing that is missing, or that no section can be.
    """
    frame = frame_of(marks)
    if len(marks.face) < 2:
        words, right = "the face is not traced", "two points on it or more, from toe to toe"
        raise GeometryError([Fault("/face", "photo-face", words, right)])
    spots = _base_first(marks.face, frame)
    path = wire.along(spots)
    face = face_of(frame, path, (spots[0].by_hand, spots[-1].by_hand))
    if face is None:
        words, right = "the face meets no member", "a trace from one member to the other"
        raise GeometryError([Fault("/face", "photo-no-toe", words, right)])
    section = _section(frame.angle, face.trace)
    x, y = path[len(path) // 2]
    return Outline(
        frame,
        face,
        section,
        measure(section),
        doubts_of(located(marks, frame, face)),
        stretch(frame.to_mm, (float(x), float(y))),
    )


def _base_first(spots: tuple[Spot, ...], frame: Frame) -> tuple[Spot, ...]:
    """The spots from base to upright, whichever way they were put."""
    ends = frame.mm(np.array([spots[0].at, spots[-1].at]))
    turns = np.arctan2(ends[:, 1], ends[:, 0])
    return spots if turns[0] <= turns[1] else spots[::-1]


def _section(angle: float, trace: tuple[Vec, ...]) -> Section:
    legs = [float(np.hypot(*toe)) for toe in (trace[0], trace[-1])]
    room = max(_ROOM, 2.0 * max(legs))
    joint = Joint(angle=angle, base_length=room, upright_length=room)
    return Section.of(joint, Bead.traced(trace, joint))


def taken(outline: Outline, picture: Picture, *, keeps: bool) -> Traced:
    """Return the traced section as the shop takes it; `keeps` its picture behind it.

    What is known of its making goes along: file, scale, uncertainty.
    """
    doubts = outline.doubts
    source: Mapping[str, object] = {
        "kind": "photo",
        "file": picture.name,
        "mm_per_pixel": round(outline.pixel, 6),
        "uncertainty": {
            "leg_base": round(doubts.leg_base, 4),
            "leg_upright": round(doubts.leg_upright, 4),
            "actual_throat": round(doubts.actual_throat, 4),
        },
    }
    trace = tuple((round(x, 4), round(y, 4)) for x, y in outline.face.trace)
    backdrop = backdrop_of(picture, outline.frame, trace) if keeps else None
    return Traced(round(outline.frame.angle, 3), trace, round(doubts.leg, 4), source, backdrop)
