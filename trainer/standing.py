"""Where the window stands on the screens: put there before it is shown, cleared of its frame after.

Only what the first paint needs of Qt is imported here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from trainer.placement import LIKELY_FRAME, Frame, Placement, Screen, placed

if TYPE_CHECKING:
    from PySide6.QtGui import QGuiApplication
    from PySide6.QtWidgets import QWidget

__all__ = ["Standing"]


class Standing:
    """Puts a window where it stood last.

    Parameters
    ----------
    app
        Knows the screens.
    window
        Is put there.
    kept
        Where it stood; None if it never did, then the window manager finds it a place.
    """

    def __init__(self, app: QGuiApplication, window: QWidget, kept: Placement | None) -> None:
        self._app, self._window, self._kept = app, window, kept
        self._settled = False

    def settle(self) -> None:
        """Give the window its place, and a size that its screen has room for."""
        self._settled = True
        stand = placed(self._kept, self._screens(), LIKELY_FRAME)
        self._window.resize(stand.width, stand.height)
        if self._kept is not None:
            self._window.setGeometry(stand.x, stand.y, stand.width, stand.height)

    def show(self) -> None:
        """Show the window, maximised if it was."""
        if self._kept is not None and self._kept.maximised:
            self._window.showMaximized()
        else:
            self._window.show()

    def clear_frame(self) -> None:
        """Keep the frame that the window manager has put around the window on the screen as well.

        Else a title bar would push the lowest row off it.
        """
        if not self._settled or self._large():
            return
        margins = self._window.windowHandle().frameMargins()
        frame = Frame(margins.left(), margins.top(), margins.right(), margins.bottom())
        stands = self.now()
        fits = placed(stands, self._screens(), frame)
        if fits != stands:
            self._window.setGeometry(fits.x, fits.y, fits.width, fits.height)

    def now(self) -> Placement:
        """Return where the window stands now, or would if it weren't as large as its screen."""
        window = self._window
        stands = window.normalGeometry() if self._large() else window.geometry()
        x, y, width, height = stands.x(), stands.y(), stands.width(), stands.height()
        return Placement(x, y, width, height, window.isMaximized(), window.screen().name())

    def _large(self) -> bool:
        return self._window.isMaximized() or self._window.isFullScreen()

    def _screens(self) -> list[Screen]:
        """The screens there are, the usual one first."""
        usual = self._app.primaryScreen()
        others = [screen for screen in self._app.screens() if screen is not usual]
        rooms = [(screen.name(), screen.availableGeometry()) for screen in (usual, *others)]
        return [
            Screen(name, room.x(), room.y(), room.width(), room.height()) for name, room in rooms
        ]
