"""The controller: each gesture replaces the state whole; undo is the list of earlier ones."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Final

import numpy as np
from PySide6.QtCore import QObject, QTimer

from exercises.intake.photo import Outline, Wire, outline_of
from exercises.intake.photo_file import Picture
from exercises.intake.photo_frame import Spot, frame_of, missing_in, scale_of
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError
from trainer.shop.photo.state import PhotoState, Step, stepped
from trainer.shop.undoable import Undoable

__all__ = ["PhotoController"]


class PhotoController(Undoable[PhotoState]):
    """Holds the picture and what was put into it."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(PhotoState(), _marked, parent)
        self.picture: Picture | None = None
        self.wire: Wire | None = None
        self.outline: Outline | None = None
        self.faults: tuple[Fault, ...] = ()
        # Once for all changes of one turn of the loop: a drag brings many.
        self._due = QTimer(self)
        self._due.setSingleShot(True)
        self._due.setInterval(0)
        self._due.timeout.connect(self.work_out)

    def lay(self, picture: Picture) -> None:
        """Begin with another picture."""
        self.picture, self.wire = picture, Wire(picture)
        before = self.state
        self.begin_anew(replace(stepped(PhotoState(), "straighten"), keeps=before.keeps))
        self.follow(before)

    def follow(self, before: PhotoState) -> None:
        """Have it shown, and worked out soon."""
        self._due.start()
        super().follow(before)

    def work_out(self) -> None:
        """Work out what the marks come to, now."""
        self._due.stop()
        self.outline, self.faults = None, ()
        if self.wire is not None:
            try:
                self.outline = outline_of(self.state.marks, self.wire)
            except GeometryError as error:
                self.faults = error.faults
            except np.linalg.LinAlgError:
                # Three corners in a line while one is dragged past another.
                self.faults = (_ASKEW,)
        self.changed.emit()

    def about_weld(self) -> list[Vec]:
        """Points of the picture that lie about the weld: its toes and root, or where it must be."""
        try:
            frame = frame_of(self.state.marks)
        except (GeometryError, np.linalg.LinAlgError):
            return []
        marks = self.state.marks
        known = [spot.at for spot in marks.face]
        if self.outline is not None:
            known = [self.outline.face.trace[0], self.outline.face.trace[-1]]
            seen = frame.pixels(np.array([(0.0, 0.0), *known]))
        else:
            # Bare faces are marked clear of the weld: it lies nearer to the root than they do.
            root = frame.pixels(np.zeros((1, 2)))[0]
            near = [
                min((spot.at for spot in spots), key=lambda at: math.dist(at, root))
                for spots in (marks.base, marks.upright)
            ]
            seen = np.array([root, *near, *known])
        return [(float(x), float(y)) for x, y in seen]

    def is_done(self, step: Step) -> bool:
        """Whether a step has all that it needs."""
        marks = self.state.marks
        if step == "open":
            return self.picture is not None
        if step == "straighten":
            return len(marks.corners) == 4 and not self._complains("/corners")
        if step == "scale":
            return scale_of(marks) is not None and not self._complains("/scale")
        if step == "members":
            try:
                frame_of(marks)
            except (GeometryError, np.linalg.LinAlgError):
                return len(marks.base) > 1 and len(marks.upright) > 1 and self._unscaled
            return True
        return self.outline is not None

    @property
    def _unscaled(self) -> bool:
        """Whether all that the members lack is a scale."""
        try:
            frame_of(replace(self.state.marks, scale=_ANY, length=1.0))
        except (GeometryError, np.linalg.LinAlgError):
            return False
        return True

    def _complains(self, at: str) -> bool:
        return any(fault.at == at for fault in missing_in(self.state.marks))


_ANY: Final = (Spot(0.0, 0.0), Spot(100.0, 0.0))

_ASKEW: Final = Fault(
    "/corners",
    "photo-corners",
    "the four points are no rectangle seen askew",
    "the corners of one",
)


def _marked(state: PhotoState) -> tuple[object, ...]:
    """What undo brings back: not the step that is looked at, nor the choice."""
    return state.marks, state.known, state.keeps
