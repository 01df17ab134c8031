"""Where the window stood, and where it may stand now: always on a screen, never larger. No Qt.

Logical pixels throughout. A window's own rectangle has no frame; the frame that a window manager
puts around it counts all the same, since a title bar would push the lowest row off the screen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

__all__ = ["LIKELY_FRAME", "USUAL", "Frame", "Placement", "Screen", "kept_placement", "placed"]


class Frame(NamedTuple):
    """How much a window manager's frame adds on each side."""

    left: int
    top: int
    right: int
    bottom: int


class Screen(NamedTuple):
    """A screen's name, and its rectangle that panels and docks leave free."""

    name: str
    x: int
    y: int
    width: int
    height: int


LIKELY_FRAME: Final = Frame(2, 32, 2, 4)
"""What is reckoned with before a window manager has spoken: a title bar and thin edges."""

USUAL: Final = (1280, 760)
"""The size of a window that has never been open."""

_FARTHEST: Final = 100_000
"""No screen is as far off as this; a file that says so is damaged."""


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a window stands when it isn't maximised, whether it is, and on which screen.

    Parameters
    ----------
    x, y, width, height
        Of the window without its frame.
    maximised
        Whether it fills its screen.
    screen
        The screen's name.
    """

    x: int
    y: int
    width: int
    height: int
    maximised: bool = False
    screen: str = ""


def kept_placement(found: object) -> Placement | None:
    """Return the placement that a file of settings states, or None if that isn't one.

    Examples
    --------
    >>> kept_placement({"x": 10, "y": 20, "width": 1000, "height": 700})
    Placement(x=10, y=20, width=1000, height=700, maximised=False, screen='')
    >>> kept_placement({"x": 10}) is None
    True
    """
    if not isinstance(found, Mapping):
        return None
    numbers = [found.get(key) for key in ("x", "y", "width", "height")]
    whole = [one for one in numbers if type(one) is int and abs(one) < _FARTHEST]
    maximised, screen = found.get("maximised", False), found.get("screen", "")
    if len(whole) < 4 or min(whole[2:]) <= 0:
        return None
    if not isinstance(maximised, bool) or not isinstance(screen, str):
        return None
    x, y, width, height = whole
    return Placement(x, y, width, height, maximised, screen)


def placed(kept: Placement | None, screens: Sequence[Screen], frame: Frame) -> Placement:
    """Return where the window may stand: as it was kept, or moved and made smaller until it fits.

    Parameters
    ----------
    kept
        Where it was last; None puts it in the middle of the first screen.
    screens
        Those there are now, the usual one first; at least one.
    frame
        Around the window.

    Examples
    --------
    >>> small = Screen("one", 0, 0, 1280, 720)
    >>> placed(None, [small], Frame(1, 20, 1, 4))
    Placement(x=1, y=20, width=1278, height=696, maximised=False, screen='one')
    """
    if kept is None:
        screen = screens[0]
        width, height = USUAL
        middle_x = screen.x + (screen.width - width - frame.left - frame.right) // 2 + frame.left
        middle_y = screen.y + (screen.height - height - frame.top - frame.bottom) // 2 + frame.top
        kept = Placement(middle_x, middle_y, width, height)
    else:
        screen = _screen_of(kept, screens)
    width, x = _within(kept.x, kept.width, screen.x, screen.width, frame.left, frame.right)
    height, y = _within(kept.y, kept.height, screen.y, screen.height, frame.top, frame.bottom)
    return replace(kept, x=x, y=y, width=width, height=height, screen=screen.name)


def _screen_of(kept: Placement, screens: Sequence[Screen]) -> Screen:
    """The screen that has most of the window, else the one it was on, else the usual one."""

    def shared(screen: Screen) -> int:
        across = min(kept.x + kept.width, screen.x + screen.width) - max(kept.x, screen.x)
        down = min(kept.y + kept.height, screen.y + screen.height) - max(kept.y, screen.y)
        return max(0, across) * max(0, down)

    best = max(screens, key=shared)
    if shared(best):
        return best
    return next((screen for screen in screens if screen.name == kept.screen), screens[0])


def _within(at: int, size: int, start: int, room: int, before: int, after: int) -> tuple[int, int]:
    """Size and place along one direction, with the frame within the room."""
    size = max(1, min(size, room - before - after))
    return size, max(start + before, min(at, start + room - after - size))
