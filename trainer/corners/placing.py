"""Where things stand in a corner's picture: the section, its heading, its card.

The screen and every saved picture are laid out by this, in logical pixels.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from geometry.lengths import Unit
from geometry.reading import State
from trainer.canvas.scene import Overlay, Ring, Scene
from trainer.canvas.view import LARGEST_SCALE, Box, View
from trainer.corners.card import Card, card_size, heading_size
from trainer.corners.drawing import drawn_over
from trainer.corners.pressing import Corner
from trainer.corners.state import Corners
from trainer.look.tokens import Role, Theme

__all__ = ["Placed", "box_of", "needed_reach", "place", "scene_of"]


@dataclass(frozen=True, slots=True)
class Placed:
    """Rectangles of the heading and of the card, and the view of the section."""

    heading: QRectF
    card: QRectF
    view: View

    @property
    def covered(self) -> tuple[Box, ...]:
        """What lies over the picture, logical px."""
        return tuple(
            (rect.left(), rect.top(), rect.right(), rect.bottom())
            for rect in (self.heading, self.card)
        )


def needed_reach(state: Corners) -> float:
    """Return how far from the root (mm) a picture of `state` has to reach at its usual scale."""
    return max(state.leg_base, state.leg_upright, state.leaf("leg").size)


def box_of(reach: float, angle: float) -> Box:
    """Return what a picture shows, mm: bead and leaf whole but for the leaf's far end."""
    lean = min(0.0, math.cos(math.radians(angle)))
    return (-0.62 + 1.25 * lean) * reach, -0.5 * reach, 2.8 * reach, 2.3 * reach


def place(
    size: tuple[float, float], ratio: float, cards: tuple[Card, ...], box: Box, theme: Theme
) -> tuple[Placed, ...]:
    """Return the places in four pictures of one size, each with the same view.

    Parameters
    ----------
    size, ratio
        Of one picture, logical px, and device px per logical px.
    cards
        What is said in each. The room kept for them is that of the longest.
    box
        What has to be seen of the sections, mm.
    theme
        Decides how large the type is.
    """
    margin = 0.75 * theme.text_size("body")
    wide, high = size
    beside = _beside(size, cards, theme, margin)
    aspect = (box[2] - box[0]) / (box[3] - box[1])
    tallest = max(card_size(card, theme, beside) for card in cards)
    lies_beside = wide - beside - 2.0 * margin > 0.62 * aspect * high and (
        tallest + 2.0 * margin <= high
    )
    if lies_beside:
        free = QRectF(0.0, 0.0, wide - beside - 1.5 * margin, high)
    else:
        beside = wide - 2.0 * margin
        tallest = max(card_size(card, theme, beside) for card in cards)
        free = QRectF(0.0, 0.0, wide, high - tallest - 1.5 * margin)
    view = _view(size, ratio, free, box)
    # Where a heading would hide the leaf's mark it stands over the card instead, in all four.
    mark = view.to_screen((0.48 * box[2], 0.9 * box[3]))
    hides = any(
        margin + heading_size(card.heading, theme).width() > mark[0]
        and margin + heading_size(card.heading, theme).height() > mark[1]
        for card in cards
    )
    above = lies_beside and hides and tallest + _over(cards[0], theme) + 2.0 * margin <= high
    placed = []
    for card in cards:
        needed = card_size(card, theme, beside)
        rect = QRectF(wide - margin - beside, high - margin - needed, beside, needed)
        chip = heading_size(card.heading, theme)
        at = QPointF(margin, margin)
        if above:
            at = QPointF(rect.right() - chip.width(), rect.top() - chip.height() - 0.5 * margin)
        heading = QRectF(at, chip)
        placed.append(Placed(heading, rect, view))
    return tuple(placed)


def _beside(
    size: tuple[float, float], cards: tuple[Card, ...], theme: Theme, margin: float
) -> float:
    """The least width of a card beside a section that keeps clear of the heading, logical px."""
    wide, high = size
    body = theme.text_size("body")
    beside = 0.0
    for share in (0.36, 0.42, 0.48):
        beside = min(max(share * wide, 15.5 * body), 26.0 * body)
        clear = True
        for card in cards:
            chip = heading_size(card.heading, theme)
            under = margin + chip.width() > wide - margin - beside
            top = margin + (chip.height() + 0.3 * margin if under else 0.0)
            clear = clear and card_size(card, theme, beside) + top + margin <= high
        if clear:
            break
    return beside


def _over(card: Card, theme: Theme) -> float:
    """Height that a heading takes over a card, logical px."""
    return heading_size(card.heading, theme).height() + 0.4 * theme.text_size("body")


def _view(size: tuple[float, float], ratio: float, free: QRectF, box: Box) -> View:
    """The view whose `free` part (logical px) shows `box` (mm), larger where there is room."""
    wide, high = box[2] - box[0], box[3] - box[1]
    scale = min(free.width() / wide, free.height() / high)
    scale = min(max(scale, 2.0), LARGEST_SCALE)
    # The base's underside is the same everywhere, so spare height goes to the air above.
    x = (box[0] + box[2]) / 2.0 + (size[0] / 2.0 - free.center().x()) / scale
    y = box[1] + (free.height() / 2.0) / scale - (size[1] / 2.0 - free.center().y()) / scale
    if free.height() / scale > high:
        y -= (free.height() / scale - high) / 2.0
    return View((x, y), scale, size, ratio)


_ROLES: dict[State, Role] = {
    "touch": "touch",
    "daylight": "daylight",
    "held off": "held off",
    "not seated": "not seated",
}


def scene_of(corner: Corner, state: Corners, placed: Placed, unit: Unit, theme: Theme) -> Scene:
    """Return what is painted of a corner: its leaf at rest, a ring where it reads, drawings."""
    false = corner.verdict.trust in ("false comfort", "false alarm")
    role: Role = "fault" if false else _ROLES[corner.reading.state]
    overlays: tuple[Overlay, ...] = (
        *drawn_over(corner, state.drawn, unit),
        _ring(corner, 1.35 * theme.text_size("body") / placed.view.scale, role),
    )
    return Scene(
        section=corner.section,
        leaf=corner.leaf,
        pose=corner.reading.pose,
        overlays=overlays,
        theme=theme,
        unit=unit,
        grid=False,
        scale_bar=False,
        covered=placed.covered if state.drawn else (),
    )


def _ring(corner: Corner, radius: float, role: Role) -> Ring:
    """A ring about the tip or spur, where an eye looks."""
    return Ring(corner.reading.pose.to_section(corner.leaf.point), radius, role)
