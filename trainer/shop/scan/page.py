"""From a scan or a drawing, put together: one controller, the plot, and the panel beside it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Final, cast

import numpy as np
from PySide6.QtCore import QStandardPaths
from PySide6.QtGui import (
    QGuiApplication,
)
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.intake.outline import Drawing
from exercises.intake.scan import Fitted
from exercises.intake.units import MM_PER, FileUnit
from geometry.curves import Vec
from trainer.landing import Landing
from trainer.shop.intake_page import IntakePage
from trainer.shop.scan.controller import ScanController
from trainer.shop.scan.keys import KEYS
from trainer.shop.scan.panel import MOST_LISTED, ScanPanel
from trainer.shop.scan.plot import Plot
from trainer.shop.scan.source import SUFFIXES
from trainer.shop.scan.state import (
    HANDLES,
    Handle,
    laid,
    moved,
    places,
    put_back,
    rough_places,
    with_choice,
    with_outline,
    with_unit,
)
from trainer.shop.scan.view import ScanView
from trainer.shop.scan.words import handle_word, labels, legend, source_words
from trainer.window import WindowFrame

__all__ = ["ScanPage"]

_PANEL: Final = 352
_TOLERANCES: Final = (0.001, 0.5)
_NOTHING: Final = np.zeros((0, 2))


class ScanPage(IntakePage):
    """Takes a section out of a scanner's points or a drawing's outlines."""

    def __init__(self, window: WindowFrame, parent: QWidget | None = None) -> None:
        place = QStandardPaths.StandardLocation.DocumentsLocation
        super().__init__(window, KEYS, place, parent)
        self.controller = ScanController(self)
        self._frame: Fitted | None = None
        self.view = ScanView()
        self.view.setAccessibleName(self.tr("Plot of the points"))
        self.panel = ScanPanel()
        self._put_together(self.tr("From a scan or drawing"), self.view, self.panel, _PANEL)
        self._listen()
        Landing(self, lambda: self.panel.open)
        self.show_state()

    def _listen(self) -> None:
        panel, controller, view = self.panel, self.controller, self.view
        controller.changed.connect(self.show_state)
        controller.opened.connect(self._opened)
        panel.asked.connect(self.do)
        panel.unit_told.connect(
            lambda unit: controller.do(lambda s: with_unit(s, cast(FileUnit, unit)))
        )
        panel.columns_told.connect(self._tell_columns)
        panel.outline_told.connect(
            lambda at, on: controller.do(lambda s: with_outline(s, at, chosen=on))
        )
        panel.handle_chosen.connect(self._choose)
        panel.nudged.connect(self._nudge)
        panel.settled.connect(self._settle)
        panel.tolerance_told.connect(self._tell_tolerance)
        panel.smoothing.connect(self._smooth)
        view.chosen.connect(self._choose)
        view.put.connect(self._put)
        view.nudged.connect(self._nudge)
        view.settled.connect(self._settle)

    @property
    def busy(self) -> bool:
        """Whether a file is being read."""
        return self.controller.reading

    def takes(self, path: Path) -> bool:
        """Whether there is such a file: what kind it is, its text tells."""
        return path.is_file()

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        controller, view = self.controller, self.view
        deeds: dict[str, Callable[[], object]] = {
            "open": self.ask,
            "paste": self.paste,
            "leave": self.left.emit,
            "make": self._make,
            "undo": controller.undo,
            "redo": controller.redo,
            "closer": lambda: view.zoom(1.25),
            "back": lambda: view.zoom(0.8),
            "fit": view.fit,
            "before": lambda: self._choose_along(-1),
            "after": lambda: self._choose_along(1),
            "put back": lambda: controller.do(lambda s: put_back(s, s.chosen)),
            "swap": self._swap,
        }
        deeds[name]()

    def ask(self) -> None:
        """Ask for a file, and open it."""
        suffixes = " ".join(f"*{suffix}" for suffix in SUFFIXES)
        path, _ = QFileDialog.getOpenFileName(
            self,
            self.tr("Choose a scan or a drawing"),
            str(self._folder),
            ";;".join(
                [
                    self.tr("Scans and drawings ({suffixes})").format(suffixes=suffixes),
                    self.tr("All files (*)"),
                ]
            ),
        )
        if path:
            self.open(Path(path))

    def open(self, path: Path) -> None:
        """Read a file beside the window's loop, and begin with it."""
        self._folder = path.parent
        self.controller.open(path)

    def paste(self) -> None:
        """Take the points that were copied elsewhere."""
        text = QGuiApplication.clipboard().text()
        if text.strip():
            self.controller.open(text)
        else:
            self.saying.say(self.tr("Nothing to paste: copy two columns of numbers first."))

    def _opened(self) -> None:
        controller = self.controller
        if controller.refusal:
            self.announce(self.panel.fault.text())
        elif controller.source is not None:
            self._frame = None
            self.view.fit()
            self.view.setFocus()
            self.announce(source_words(controller.source))

    def _make(self) -> None:
        fitted, source = self.controller.found.fitted, self.controller.source
        if fitted is None or source is None or self.controller.busy:
            return
        drawn = isinstance(source.held, Drawing)
        choice, wishes = self.controller.state.choice, self.controller.state.wishes
        told: dict[str, object] = {
            "kind": "drawing" if drawn else "scan",
            "file": source.name,
            "unit": choice.unit or source.unit or "as stated",
            "tolerance": wishes.tolerance,
            "smoothed": wishes.smooth and not drawn,
        }
        self.made.emit(fitted.traced(told))

    # Handles

    def _choose(self, handle: str) -> None:
        self.controller.do(lambda s: replace(s, chosen=cast(Handle, handle)))

    def _choose_along(self, way: int) -> None:
        at = HANDLES.index(self.controller.state.chosen)
        handle = HANDLES[(at + way) % len(HANDLES)]
        self._choose(handle)
        self.announce(handle_word(handle))

    def _put(self, handle: str, at: Vec) -> None:
        fitted, shown = self.controller.last, cast(Handle, handle)
        cloud, to = self.controller.found.cloud, self._from_plot(at)
        if fitted is None and cloud is not None:
            self.controller.do(lambda s: laid(s, cloud, shown, to), f"put {handle}")
        elif fitted is not None:
            self.controller.do(lambda s: moved(s, fitted, shown, to), f"put {handle}")

    def _nudge(self, dx: float, dy: float) -> None:
        handle = self.controller.state.chosen
        at = (self.view.plot.handles or {}).get(handle)
        if at is not None:
            self._put(handle, (at[0] + dx, at[1] + dy))

    def _settle(self) -> None:
        self.controller.end_gesture()
        if not self.controller.busy:
            self._frame = None
        self.show_state()

    def _swap(self) -> None:
        self._frame = None
        self.controller.do(
            lambda s: replace(
                s,
                wishes=replace(
                    s.wishes,
                    swapped=not s.wishes.swapped,
                    base=s.wishes.upright,
                    upright=s.wishes.base,
                    toe_base=s.wishes.toe_upright,
                    toe_upright=s.wishes.toe_base,
                ),
            )
        )

    # What is said of the file and the face

    def _tell_columns(self, across: int, up: int) -> None:
        self.controller.do(lambda s: with_choice(s, replace(s.choice, columns=(across, up))))

    def _tell_tolerance(self, length: float) -> None:
        held = min(max(length, _TOLERANCES[0]), _TOLERANCES[1])
        self.controller.do(lambda s: replace(s, wishes=replace(s.wishes, tolerance=held)))
        self.show_state()

    def _smooth(self, smooth: bool) -> None:
        self.controller.do(lambda s: replace(s, wishes=replace(s.wishes, smooth=smooth)))

    # What is shown

    def _to_plot(self, points: np.ndarray) -> np.ndarray:
        """From the file's frame to the plot's: the section's, as it lay when a hand took it."""
        fitted = self._frame
        if fitted is None or not len(points):
            return points
        across, up = fitted.axes
        away = points - fitted.root
        return np.column_stack([away @ across, away @ up])

    def _from_plot(self, at: Vec) -> Vec:
        if self._frame is None:
            return at
        x, y = self._frame.in_file(np.array([at]))[0]
        return (float(x), float(y))

    def show_state(self) -> None:
        """Repaint everything from the state."""
        controller = self.controller
        if not self.view.dragging and not controller.busy:
            # Not while a hand moves a member: the plot would turn under it.
            self._frame = controller.found.fitted or self._frame
        if controller.source is None or controller.last is None:
            self._frame = None
        self.panel.show_state(controller, self.unit)
        self.view.lay(self._plot(), self.window_frame.theme, self.unit)
        chosen = handle_word(controller.state.chosen)
        self.view.setAccessibleDescription(chosen if controller.last is not None else "")

    def _plot(self) -> Plot:
        controller = self.controller
        cloud, fitted = controller.found.cloud, controller.found.fitted
        if controller.source is None:
            return Plot(
                _NOTHING,
                _NOTHING,
                np.zeros(0),
                words=self.tr(
                    "Choose or drop a file here, or paste points: x and z in columns (CSV, TSV), "
                    "or an outline (DXF, SVG)."
                ),
            )
        if cloud is None:
            words = self.panel.fault.text()
            faint, numbers = self._faint(), self._numbers()
            return Plot(_NOTHING, _NOTHING, np.zeros(0), faint, numbers, words=words)
        removed = cloud.removed if fitted is None else np.vstack([cloud.removed, fitted.strays])
        still = fitted or controller.last
        if still is None:
            wishes = controller.state.wishes
            rough = rough_places(cloud, wishes)
            by_hand = wishes.base is not None
            lines = ("base", "upright") if by_hand else ()
            return Plot(
                cloud.kept,
                removed,
                cloud.unseen,
                self._faint(),
                self._numbers(),
                tuple((rough[f"{name} near"], rough[f"{name} far"]) for name in lines),  # type: ignore[index]
                handles=rough,
                chosen=controller.state.chosen,
            )
        ends = {}
        for handle, at in places(still, controller.state.wishes).items():
            x, y = self._to_plot(np.array([at]))[0]
            ends[handle] = (float(x), float(y))
        unseen = np.column_stack(
            [cloud.unseen, np.full(len(cloud.unseen), cloud.kept[:, 1].mean())]
        )
        return Plot(
            self._to_plot(cloud.kept),
            self._to_plot(removed),
            self._to_plot(unseen)[:, 0],
            self._faint(),
            self._numbers(),
            tuple((ends["root"], ends[far]) for far in ("base far", "upright far")),
            None if fitted is None else self._to_plot(fitted.in_file(np.array(fitted.trace))),
            ends,
            controller.state.chosen,
            labels(still, self.unit),
            legend(controller.found),
        )

    def _faint(self) -> tuple[np.ndarray, ...]:
        source, choice = self.controller.source, self.controller.state.choice
        if source is None or not isinstance(source.held, Drawing):
            return ()
        scale = MM_PER[choice.unit or source.unit or "mm"]
        return tuple(
            self._to_plot(np.vstack([one.points, one.points[:1]]) * scale)
            if one.closed
            else self._to_plot(one.points * scale)
            for at, one in enumerate(source.held.outlines)
            if at not in choice.outlines
        )

    def _numbers(self) -> tuple[tuple[Vec, str], ...]:
        """Where each of several outlines has its number: a third of its way along."""
        source, choice = self.controller.source, self.controller.state.choice
        if source is None or not isinstance(source.held, Drawing) or len(source.held.outlines) < 2:
            return ()
        scale = MM_PER[choice.unit or source.unit or "mm"]
        found = []
        for number, one in enumerate(source.held.outlines[:MOST_LISTED], start=1):
            # Once there is a section its own figures stand there.
            if self.controller.found.fitted is not None and number - 1 in choice.outlines:
                continue
            way = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(one.points, axis=0).T))])
            third = [np.interp(way[-1] / 3.0, way, one.points[:, axis]) for axis in (0, 1)]
            x, y = self._to_plot(np.array([third]) * scale)[0]
            found.append(((float(x), float(y)), str(number)))
        return tuple(found)
