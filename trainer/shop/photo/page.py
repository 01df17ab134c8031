"""From a photo, put together: one controller, the picture, and the panel beside it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.file_faults import FileError
from exercises.intake.photo import taken
from exercises.intake.photo_file import Picture, load_picture
from exercises.intake.traced import Traced
from trainer.landing import Landing
from trainer.loading import Loading
from trainer.shop.intake_page import IntakePage
from trainer.shop.photo.controller import PhotoController
from trainer.shop.photo.keys import KEYS
from trainer.shop.photo.panel import PhotoPanel
from trainer.shop.photo.state import (
    STEPS,
    Sides,
    Step,
    stepped,
    with_hand,
    with_keeping,
    with_length,
    with_member,
    with_sides,
)
from trainer.shop.photo.view import PictureView
from trainer.shop.photo.words import file_words, picture_words, point_words
from trainer.window import WindowFrame

__all__ = ["PhotoPage"]

_PANEL: Final = 372
_SUFFIXES: Final = (".png", ".jpg", ".jpeg", ".jpe", ".tif", ".tiff", ".webp")


class PhotoPage(IntakePage):
    """Takes a section out of a picture, step by step."""

    def __init__(self, window: WindowFrame, parent: QWidget | None = None) -> None:
        place = QStandardPaths.StandardLocation.PicturesLocation
        super().__init__(window, KEYS, place, parent)
        self.controller = PhotoController(self)
        self._loading: Loading[Picture] | None = None
        self._making: Loading[Traced] | None = None
        self.view = PictureView(self.controller)
        self.view.setAccessibleName(self.tr("Picture"))
        self.panel = PhotoPanel()
        self._put_together(self.tr("From a photo"), self.view, self.panel, _PANEL)
        self._listen()
        Landing(self, self._first)
        self.show_state()

    def _listen(self) -> None:
        panel, controller = self.panel, self.controller
        controller.changed.connect(self.show_state)
        panel.step_asked.connect(self.go)
        panel.asked.connect(self.do)
        panel.nudged.connect(self.view.nudge)
        panel.settled.connect(controller.end_gesture)
        panel.sides_told.connect(self._tell_sides)
        panel.length_told.connect(lambda length: controller.do(lambda s: with_length(s, length)))
        panel.keeping.connect(lambda keeps: controller.do(lambda s: with_keeping(s, keeps=keeps)))

    @property
    def busy(self) -> bool:
        """Whether a picture is being read, or a section taken from one."""
        return self._loading is not None or self._making is not None

    def _first(self) -> QWidget:
        return self.panel.open if self.controller.state.step == "open" else self.view

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        controller, view = self.controller, self.view
        at = STEPS.index(controller.state.step)
        deeds: dict[str, Callable[[], object]] = {
            "open": self.ask,
            "leave": self._leave,
            "make": self._make,
            "undo": controller.undo,
            "redo": controller.redo,
            "closer": lambda: view.zoom(1.25),
            "back": lambda: view.zoom(0.8),
            "fit": view.fit,
            "before": lambda: view.choose_along(-1),
            "after": lambda: view.choose_along(1),
            "remove": view.remove_chosen,
            "edge": lambda: self._by_hand(by_hand=False),
            "hand": lambda: self._by_hand(by_hand=True),
            "snap": lambda: self._by_hand(by_hand=controller.state.snaps),
            "base": lambda: controller.do(lambda s: with_member(s, "base")),
            "upright": lambda: controller.do(lambda s: with_member(s, "upright")),
            "step before": lambda: self.go(STEPS[max(0, at - 1)]),
            "step after": lambda: self.go(STEPS[min(len(STEPS) - 1, at + 1)]),
        }
        deeds[name]()

    def go(self, step: Step) -> None:
        """Go to a step; all but the first need a picture."""
        if self.controller.picture is None and step != "open":
            return
        self.controller.do(lambda s: stepped(s, step))
        self._look(step)
        if step != "open":
            self.view.setFocus()

    def _look(self, step: Step) -> None:
        """See what the step is about: the weld at the last two, at the others the whole."""
        points = self.controller.about_weld() if step in ("trace", "check") else []
        if points:
            self.view.close_in(points, 60.0)
        elif step != "trace":
            self.view.fit()

    def _by_hand(self, *, by_hand: bool) -> None:
        picture = self.controller.picture
        if picture is not None:
            self.controller.do(lambda s: with_hand(s, picture, by_hand=by_hand))
            self.controller.end_gesture()

    def _tell_sides(self, known: Sides, wide: float, high: float) -> None:
        sides = (wide, high) if wide > 0.0 and high > 0.0 else None
        self.controller.do(lambda s: with_sides(s, known, sides))

    def _leave(self) -> None:
        if self.controller.state.chosen is not None and self.view.hasFocus():
            self.view.let_go()
            return
        self.left.emit()

    # Opening

    def ask(self) -> None:
        """Ask for a picture, and open it."""
        if self.busy:
            return
        suffixes = " ".join(f"*{suffix}" for suffix in _SUFFIXES)
        path, _ = QFileDialog.getOpenFileName(
            self,
            self.tr("Choose a picture"),
            str(self._folder),
            self.tr("Pictures ({suffixes})").format(suffixes=suffixes),
        )
        if path:
            self.open(Path(path))

    def open(self, path: Path) -> None:
        """Read a picture beside the window's loop, and begin with it."""
        if self.busy:
            return
        self._folder = path.parent
        self._loading = Loading(lambda: load_picture(path))
        self._loading.over.connect(self._opened)
        self.panel.file.setProperty("tone", "quiet")
        self.panel.file.setText(self.tr("Reading {file}...").format(file=path.name))
        self.show_state()
        self._loading.start()

    def _opened(self) -> None:
        loading, self._loading = self._loading, None
        if loading is None:
            return
        try:
            picture = loading.result
        except FileError as error:
            words = file_words(error)
            self.panel.file.setText(words)
            self.announce(words)
            self.controller.do(lambda s: stepped(s, "open"))
            self.show_state()
            return
        wide, high = picture.size
        words = self.tr("{file}: {wide} \u00d7 {high} pixels")
        if picture.reduced > 1:
            words = self.tr("{file}: reduced {n} to 1, to {wide} \u00d7 {high} pixels")
        said = words.format(file=picture.name, wide=wide, high=high, n=picture.reduced)
        self.panel.file.setText(said)
        self.view.lay(picture)
        self.controller.lay(picture)
        self.view.setFocus()
        self.announce(said)

    def takes(self, path: Path) -> bool:
        """Whether it is called like a picture."""
        return path.suffix.lower() in _SUFFIXES

    # Making

    def _make(self) -> None:
        self.controller.work_out()
        outline, picture = self.controller.outline, self.controller.picture
        if outline is None or picture is None or self.busy:
            return
        keeps = self.controller.state.keeps
        self._making = Loading(lambda: taken(outline, picture, keeps=keeps))
        self._making.over.connect(self._made)
        self.show_state()
        self._making.start()

    def _made(self) -> None:
        making, self._making = self._making, None
        self.show_state()
        if making is not None:
            traced = making.result
            self.go("open")
            self.made.emit(traced)

    # What is shown

    def show_state(self) -> None:
        """Repaint everything from the state."""
        controller, unit = self.controller, self.unit
        self.panel.show_state(controller, unit, busy=self.busy)
        words = picture_words(controller.state, controller.outline, unit)
        self.view.dress(self.window_frame.theme, words)
        self.view.setAccessibleDescription(point_words(controller.state))
