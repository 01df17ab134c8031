"""The one place where the corners' state is replaced; all four are pressed home once a frame."""

from __future__ import annotations

import time
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal

from trainer.corners.pressing import Pressed, Pressing
from trainer.corners.state import Corners, Knob, changed

__all__ = ["CornersController"]

_FRAME = 16.0
"""ms between two presses at the least: what is asked in between comes in one."""

_MOST_UNDONE = 200


class CornersController(QObject):
    """Holds the state and the four corners that follow from it.

    Signals
    -------
    changed
        All four corners have been replaced, at once.
    limited(limit)
        A value was held: the `Limit` says where and why.
    touched
        Somebody changed the state by hand, not the talk.
    """

    changed = Signal()
    limited = Signal(object)
    touched = Signal()

    def __init__(self, state: Corners, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pressing = Pressing()
        self._wanted = state
        self._shown = state
        self._corners = self._pressing.corners(state)
        self._earlier: list[Corners] = []
        self._gesture = ""
        self._last = 0.0
        self._frame = QTimer(self)
        self._frame.setSingleShot(True)
        self._frame.timeout.connect(self.flush)

    @property
    def state(self) -> Corners:
        """The state that is wanted now; what is shown follows within a frame."""
        return self._wanted

    @property
    def corners(self) -> Pressed:
        """The four corners as last pressed home."""
        return self._corners

    @property
    def shown(self) -> Corners:
        """The state that `corners` are of."""
        return self._shown

    @property
    def can_undo(self) -> bool:
        """Whether there is an earlier state."""
        return bool(self._earlier)

    def set_value(self, knob: Knob, value: float, gesture: str) -> None:
        """Turn a knob; changes of one `gesture` are undone together."""
        change = changed(self._wanted, knob, value)
        self.do(lambda _: change.state, gesture)
        if change.limit is not None:
            self.limited.emit(change.limit)

    def do(self, change: Callable[[Corners], Corners], gesture: str = "") -> None:
        """Replace the state by what `change` makes of it; changes of one gesture are one step."""
        after = change(self._wanted)
        self.touched.emit()
        if after == self._wanted:
            return
        if not gesture or gesture != self._gesture:
            self._earlier = [*self._earlier[-_MOST_UNDONE:], self._wanted]
        self._gesture = gesture
        self.show(after)

    def go_on_from(self, other: CornersController) -> None:
        """Take over what another one shows, and the way back from there."""
        self._earlier = list(other._earlier)  # one of the same kind
        self.show(other.state)

    def end_gesture(self) -> None:
        """What comes now is another step."""
        self._gesture = ""

    def undo(self) -> None:
        """Go back one gesture."""
        if self._earlier:
            self.touched.emit()
            self._gesture = ""
            self.show(self._earlier.pop())

    def show(self, state: Corners) -> None:
        """Show another state within a frame; this is no step that can be undone."""
        self._wanted = state
        if not self._frame.isActive():
            since = time.perf_counter() * 1000.0 - self._last
            self._frame.start(max(0, round(_FRAME - since)))

    def flush(self) -> None:
        """Press all four home now, if the state has changed."""
        self._frame.stop()
        self._last = time.perf_counter() * 1000.0
        if self._wanted is not self._shown:
            # Whole or not at all: nobody sees two states beside each other.
            self._corners = self._pressing.corners(self._wanted)
            self._shown = self._wanted
            self.changed.emit()
