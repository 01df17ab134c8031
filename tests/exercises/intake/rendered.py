"""Pictures of cut welds whose true section is known: rendered, tilted, blurred, lit and noised.

Our own renderer, which shares no code with what reads the pictures: outlines are mapped to pixels
by the homography of a camera that stands askew, filled at several times the resolution, reduced.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw
from shapely.geometry import Point

from exercises.intake.photo import Wire
from exercises.intake.photo_edges import snap
from exercises.intake.photo_file import Picture
from exercises.intake.photo_follow import snap_corners, snap_length, snap_line
from exercises.intake.photo_frame import Marks, Spot
from geometry.bead import Bead
from geometry.joint import Joint
from geometry.section import Section

FINER = 4
CARD = (24.0, 12.0)
"""mm: the sides of a card that lies in the plane of the cut."""

RULE = 30.0
"""mm: a bar of known length."""


@dataclass(frozen=True)
class Shot:
    """How a picture was taken.

    Parameters
    ----------
    per_mm
        Pixels a mm, about.
    tilt
        How far the camera leans, as the share by which the far side is smaller.
    blur, noise
        Pixels, levels (one sigma).
    uneven
        By which share the light falls off across the picture.
    bright
        Whether what is behind the weld is brighter than it.
    mirrored
        Whether the upright stands at the right.
    """

    per_mm: float = 20.0
    tilt: tuple[float, float] = (0.0, 0.0)
    turn: float = 0.0
    blur: float = 0.8
    noise: float = 3.0
    uneven: float = 0.0
    bright: bool = False
    mirrored: bool = False
    seed: int = 0


@dataclass(frozen=True, eq=False)
class Rendered:
    """A picture and where, in pixels, the true points of its section are."""

    picture: Picture
    section: Section
    to_pixels: NDArray[np.float64]
    per_mm: float

    def at(self, *points: tuple[float, float]) -> list[tuple[float, float]]:
        """Points of the section (mm) in the picture, pixels."""
        return [tuple(p) for p in _mapped(self.to_pixels, np.array(points, float)).tolist()]


def _mapped(matrix: NDArray[np.float64], points: NDArray[np.float64]) -> NDArray[np.float64]:
    full = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    mapped: NDArray[np.float64] = full[:, :2] / full[:, 2:]
    return mapped


def _camera(shot: Shot, box: tuple[float, float, float, float]) -> NDArray[np.float64]:
    """The homography from mm to pixels of a camera that stands a little askew."""
    left, low, right, high = box
    k = shot.per_mm
    flip = np.diag([-1.0 if shot.mirrored else 1.0, -1.0, 1.0])
    middle = np.array([[1, 0, -(left + right) / 2], [0, 1, -(low + high) / 2], [0, 0, 1.0]])
    cos, sin = math.cos(math.radians(shot.turn)), math.sin(math.radians(shot.turn))
    turned = np.array([[cos, -sin, 0], [sin, cos, 0], [0, 0, 1.0]])
    span = max(right - left, high - low)
    lean = np.array([[1, 0, 0], [0, 1, 0], [shot.tilt[0] / span, shot.tilt[1] / span, 1.0]])
    placed = np.array([[k, 0, k * (right - left) / 2], [0, k, k * (high - low) / 2], [0, 0, 1.0]])
    camera: NDArray[np.float64] = placed @ lean @ turned @ flip @ middle
    return camera


def rendered(section: Section, shot: Shot) -> Rendered:
    """Return a picture of a section with a card and a rule beside it."""
    box = (-26.0, -36.0, 40.0, 38.0)
    camera = _camera(shot, box)
    size = (round((box[2] - box[0]) * shot.per_mm), round((box[3] - box[1]) * shot.per_mm))
    random = np.random.default_rng(shot.seed)
    ground, plate, weld = (215, 120, 150) if shot.bright else (28, 140, 178)
    image = Image.new("L", (size[0] * FINER, size[1] * FINER), ground)
    draw = ImageDraw.Draw(image)

    def fill(points: Any, level: int) -> None:
        pixels = _mapped(camera, np.array(points, float)) * FINER
        draw.polygon([tuple(p) for p in pixels.tolist()], fill=level)

    bodies: dict[str, Any] = {body.name: body.polygon for body in section.bodies}
    for name in ("base", "upright"):
        fill(bodies[name].exterior.coords, plate)
    for grown, level in ((2.0, plate - 14), (1.0, plate - 25)):
        zone = bodies["weld"].buffer(grown)
        for name in ("base", "upright"):
            cut = zone.intersection(bodies[name])
            if cut.geom_type == "Polygon" and not cut.is_empty:
                fill(cut.exterior.coords, level)
    fill(bodies["weld"].exterior.coords, weld)
    card = 190 if not shot.bright else 60
    wide, high = CARD
    fill(box_points(CARD_AT[0], CARD_AT[1], wide, high), card)
    fill(box_points(RULE_AT[0], RULE_AT[1], RULE, 2.0), 245 if not shot.bright else 25)
    grey = np.asarray(image.reduce(FINER), float)
    grain = random.normal(0.0, 4.0, grey.shape)
    inside = (grey > ground + 30) if not shot.bright else (grey < ground - 30)
    grey = grey + grain * inside
    x, y = np.meshgrid(np.linspace(-1, 1, size[0]), np.linspace(-1, 1, size[1]))
    way = random.uniform(0, 2 * math.pi)
    grey *= 1.0 - shot.uneven * (0.5 + 0.5 * (x * math.cos(way) + y * math.sin(way)) / math.sqrt(2))
    soft = Image.fromarray(np.clip(grey, 0, 255).astype(np.float32), "F")
    blurred = np.asarray(_blurred(np.asarray(soft), shot.blur))
    noisy = np.clip(np.rint(blurred + random.normal(0.0, shot.noise, grey.shape)), 0, 255)
    levels = noisy.astype(np.float32)
    pixels = np.repeat(levels.astype(np.uint8)[..., None], 3, axis=2)
    return Rendered(Picture("weld.png", pixels, levels), section, camera, shot.per_mm)


CARD_AT = (4.0, -25.5)
RULE_AT = (2.0, 30.0)


def box_points(left: float, low: float, wide: float, high: float) -> list[tuple[float, float]]:
    return [(left, low + high), (left + wide, low + high), (left + wide, low), (left, low)]


def _blurred(grey: NDArray[np.float32], width: float) -> NDArray[np.float32]:
    reach = math.ceil(4 * width)
    bell = np.exp(-0.5 * (np.arange(-reach, reach + 1) / width) ** 2)
    bell /= bell.sum()
    for axis in (0, 1):
        padded = np.pad(grey, [(reach, reach) if a == axis else (0, 0) for a in (0, 1)], "edge")
        grey = np.asarray(
            sum(
                weight * np.take(padded, range(at, at + grey.shape[axis]), axis)
                for at, weight in enumerate(bell)
            ),
            np.float32,
        )
    return grey


@dataclass(frozen=True)
class Hand:
    """A hand that clicks beside what it means: up to `off` pixels, any way."""

    off: float
    seed: int

    def clicks(self, points: list[tuple[float, float]]) -> tuple[Spot, ...]:
        """Where it clicks."""
        random = np.random.default_rng(self.seed)
        spots = []
        for x, y in points:
            far, way = self.off * math.sqrt(random.uniform()), random.uniform(0, 2 * math.pi)
            spots.append(Spot(x + far * math.cos(way), y + far * math.sin(way)))
        return tuple(spots)


def marked(shown: Rendered, hand: Hand, *, straighten: bool, clicks: int = 5) -> Marks:
    """Return the marks that a hand puts in, each snapped as the page snaps it."""
    grey, section = shown.picture.grey, shown.section
    legs = section.bead.leg_base, section.bead.leg_upright
    up = section.joint.direction("upright")
    base = shown.at(*((legs[0] + far, 0.0) for far in (3.0, 9.0, 16.0)))
    upright = shown.at(*((up[0] * (legs[1] + far), up[1] * (legs[1] + far)) for far in (3, 8, 14)))
    face = shown.at(*face_points(section, clicks))
    every = iter(range(100))

    def click(points: list[tuple[float, float]]) -> tuple[Spot, ...]:
        return replace(hand, seed=hand.seed * 100 + next(every)).clicks(points)

    marks = Marks(
        base=snap_line(grey, click(base)),
        upright=snap_line(grey, click(upright)),
        face=snapped_face(shown.picture, click(face)),
    )
    if straighten:
        corners = (
            replace(marks, corners=click(shown.at(*box_points(*CARD_AT, *CARD)))).ordered().corners
        )
        sides = CARD if not _sideways(shown) else CARD[::-1]
        return replace(marks, corners=snap_corners(grey, corners), sides=sides, sides_known=True)
    left, low = RULE_AT
    ends = shown.at((left, low + 1.0), (left + RULE, low + 1.0))
    return replace(marks, scale=snap_length(grey, click(ends)), length=RULE)


def _sideways(shown: Rendered) -> bool:
    (ax, ay), (bx, by) = shown.at((0.0, 0.0), (1.0, 0.0))
    return abs(by - ay) > abs(bx - ax)


def snapped_face(picture: Picture, spots: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Spots of a face as the page takes them: each moved onto the strongest edge nearby."""
    moved = []
    for spot in spots:
        at = snap(picture.grey, spot.at)
        moved.append(spot if at is None else Spot(*at))
    return tuple(moved)


def face_points(section: Section, clicks: int) -> list[tuple[float, float]]:
    """Points along the true face, from base toe to upright toe."""
    polygon = next(body for body in section.bodies if body.name == "weld").polygon
    start = np.array(section.toe("base"))
    end = np.array(section.toe("upright"))
    found: list[tuple[float, float]] = []
    for share in np.linspace(0.0, 1.0, clicks):
        aim = start + share * (end - start)
        way = aim / np.hypot(*aim)
        near, far = 0.0, 60.0
        while far - near > 1e-4:
            middle = (near + far) / 2
            inside = polygon.distance(Point(*(way * middle))) < 1e-9
            near, far = (middle, far) if inside else (near, middle)
        found.append((float(way[0] * near), float(way[1] * near)))
    found[0], found[-1] = tuple(start.tolist()), tuple(end.tolist())
    return found


def wire_of(shown: Rendered) -> Wire:
    """The wire along the picture's edges."""
    return Wire(shown.picture)


def section_of(seed: int) -> Section:
    """A section out of dice: any face, legs of 5 to 11 mm, square or not."""
    random = np.random.default_rng(1000 + seed)
    angle = float(random.choice([90.0, 90.0, 90.0, 75.0, 105.0, 120.0]))
    base, upright = random.uniform(5.0, 11.0, 2)
    kind = seed % 3
    chord = math.hypot(base, upright)
    crown = (0.0, 0.10 * chord * random.uniform(0.4, 1.6), -0.07 * chord * random.uniform(0.3, 1.0))
    joint = Joint(angle=angle, base_length=52.0, upright_length=28.0)
    return Section.of(joint, Bead(float(base), float(upright), float(crown[kind])))


def shot_of(seed: int) -> Shot:
    """A camera out of dice."""
    random = np.random.default_rng(2000 + seed)
    return Shot(
        per_mm=float(random.uniform(12.0, 26.0)),
        tilt=(float(random.uniform(-0.16, 0.16)), float(random.uniform(-0.16, 0.16))),
        turn=float(random.uniform(-8.0, 8.0)),
        blur=float(random.uniform(0.6, 2.0)),
        noise=float(random.uniform(1.0, 8.0)),
        uneven=float(random.uniform(0.0, 0.5)),
        bright=bool(random.integers(2)),
        mirrored=bool(random.integers(2)),
        seed=seed,
    )
