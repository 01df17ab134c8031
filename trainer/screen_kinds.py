"""What a screen may be able to do beside being shown: asked by the frame and by what opens it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Protocol, runtime_checkable

if TYPE_CHECKING:
    from PySide6.QtCore import SignalInstance

__all__ = [
    "GoesOn",
    "LooksUp",
    "OpensTrays",
    "ShowsPages",
    "ShowsScreens",
    "TakesIn",
    "opened_by_its_screen",
]

_FILES: Final = {".sitting": "sittings", ".result": "sittings"}
"""Files that only one screen opens, by what their names end in."""


@runtime_checkable
class GoesOn(Protocol):
    """A screen that can go on with what another of its kind has, which is given up."""

    def go_on_from(self, other: Any) -> None:  # noqa: ANN401  # its own kind, which varies
        """Go on from there."""


@runtime_checkable
class OpensTrays(Protocol):
    """A screen that opens trays itself: while it is shown, none goes to the bench."""

    def open_path(self, path: Path) -> None:
        """Open a tray."""


@runtime_checkable
class LooksUp(Protocol):
    """A screen that shows an entry of the reference, and the way back."""

    def look_up(self, key: str, came_from: str) -> None:
        """Show an entry; `came_from` is the key of the screen to go back to."""


@runtime_checkable
class ShowsPages(Protocol):
    """A screen of several pages, each by its name."""

    def show_page(self, name: str) -> None:
        """Show a page."""


class TakesIn(Protocol):
    """A page of the coupon shop that takes a section in: a widget with these signals."""

    @property
    def made(self) -> SignalInstance:
        """A `Traced` was made."""

    @property
    def left(self) -> SignalInstance:
        """The page is to be left with nothing made."""


class ShowsScreens(Protocol):
    """What has screens by their keys."""

    def has_screen(self, key: str) -> bool:
        """Whether there is one of that key."""

    def make_screen(self, key: str) -> object:
        """Return a screen; make it, unless that has been done."""

    def show_screen(self, key: str) -> None:
        """Show it."""


def opened_by_its_screen(frame: ShowsScreens, path: Path | None) -> bool:
    """Open a file that is one screen's alone, and show that screen; return whether it is such.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> bare = SimpleNamespace(has_screen=lambda key: False)
    >>> opened_by_its_screen(bare, Path("friday.sitting"))
    False
    """
    key = None if path is None else _FILES.get(path.suffix)
    if path is None or key is None or not frame.has_screen(key):
        return False
    screen = frame.make_screen(key)
    if isinstance(screen, OpensTrays):
        screen.open_path(path)
    frame.show_screen(key)
    return True
