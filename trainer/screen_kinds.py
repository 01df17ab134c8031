"""What a screen may be able to do beside being shown: asked by the frame and by what opens it."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import Any, Final, Protocol, runtime_checkable

__all__ = ["GoesOn", "LooksUp", "OpensTrays", "screen_for"]

_FILES: Final = {".sitting": "sittings", ".result": "sittings"}


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


def screen_for(path: Path, screens: Collection[str]) -> str | None:
    """Return the key of the screen that alone opens such a file; None if whichever is shown may.

    Examples
    --------
    >>> screen_for(Path("friday.sitting"), ["bench", "sittings"]), screen_for(Path("a"), ["bench"])
    ('sittings', None)
    """
    key = _FILES.get(path.suffix)
    return key if key in screens else None
