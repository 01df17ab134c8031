"""What the canvas shows: one frozen value, replaced whole."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from geometry.lengths import Unit
from trainer.canvas.drawing import Blade, Drawing, Place, Vec
from trainer.canvas.spoken import Action, Part
from trainer.look.tokens import LIGHT, Role, Theme

if TYPE_CHECKING:
    from geometry.leaf import Leaf
    from geometry.pose import Pose
    from geometry.section import Section

__all__ = [
    "Area",
    "Backing",
    "Dimension",
    "Line",
    "Loupe",
    "Mark",
    "Overlay",
    "Ring",
    "Scene",
    "Shape",
    "Tether",
]

Shape = Literal["disc", "ring", "triangle", "slash", "diamond", "square", "cross"]


@dataclass(frozen=True, slots=True)
class Line:
    """A line through `points` (mm); `dashed` for what is thought, not seen."""

    points: tuple[Vec, ...]
    role: Role
    label: str = ""
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Area:
    """A tinted, hatched area within `points` (mm)."""

    points: tuple[Vec, ...]
    role: Role
    label: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark at a point (mm). Its shape follows from its role unless given."""

    at: Vec
    role: Role
    label: str = ""
    shape: Shape | None = None


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle about a point, both mm: here is where to look."""

    at: Vec
    radius: float
    role: Role
    label: str = ""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance from `start` to `end` (mm), its line set off by `offset` pixels.

    A positive offset lies to the left of the way from start to end.
    """

    start: Vec
    end: Vec
    label: str
    role: Role
    offset: float = 0.0


Overlay = Line | Area | Mark | Ring | Dimension


@dataclass(frozen=True, slots=True)
class Loupe:
    """A round magnifier.

    Parameters
    ----------
    at
        What it stays on, mm; None for the leaf's tip or spur.
    zoom
        Magnification over the picture around it.
    label
        What stands before the magnification: "Loupe on the tip".
    """

    at: Vec | None = None
    zoom: float = 4.0
    label: str = ""


@dataclass(frozen=True, slots=True)
class Backing:
    """A picture behind the section; the section is then drawn as lines over it.

    Parameters
    ----------
    jpeg
        The picture.
    left, top
        Where its upper left corner lies, mm.
    mm_per_pixel
        How large a pixel is, mm.
    """

    jpeg: bytes = field(repr=False)
    left: float
    top: float
    mm_per_pixel: float


@dataclass(frozen=True, slots=True)
class Tether:
    """The pull of a hand: from the grabbed point of the leaf to the pointer, mm."""

    grab: Vec
    pointer: Vec


@dataclass(frozen=True, slots=True)
class Scene:
    """Everything that is painted, and nothing about why.

    Parameters
    ----------
    section, leaf, pose
        The true things, or their stored drawings.
    overlays
        Drawn over them in this order; only who hands them in knows what they mean.
    unit
        Of the grid and the scale bar.
    hover, held
        Whether a hand is over the leaf, or on it.
    covered
        What will lie over the picture (left, top, right, bottom; logical px): labels keep clear.
    eye_limit
        mm: the smallest gap that an eye is asked to see.
    capped
        Whether zoom and loupe are held to marked work's cap: a gap of `eye_limit` spans 3 to 6
        device pixels in the loupe, and at most 6 outside it.
    parts
        What a screen reader is told of section, leaf and tip; only who hands them in knows how
        much may be said.
    actions
        What a screen reader is offered to do.
    backing
        The picture that the section was taken from, to be shown through it.
    loose
        Whether a hand can take the leaf; else it is part of what is looked at.

    Examples
    --------
    >>> Scene().unit
    'mm'
    """

    section: Section | Drawing | None = None
    leaf: Leaf | Blade | None = None
    pose: Pose | Place | None = None
    overlays: tuple[Overlay, ...] = ()
    theme: Theme = LIGHT
    unit: Unit = "mm"
    loupe: Loupe | None = None
    tether: Tether | None = None
    hover: bool = False
    held: bool = False
    grid: bool = True
    scale_bar: bool = True
    covered: tuple[tuple[float, float, float, float], ...] = ()
    eye_limit: float = 0.1
    capped: bool = False
    parts: tuple[Part, ...] = ()
    actions: tuple[Action, ...] = ()
    backing: Backing | None = None
    loose: bool = True
