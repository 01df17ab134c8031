"""The pictures of a class, each with its heading and what it says in sentences."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Final

from matplotlib.figure import Figure
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from trainer.bench.translation import translate
from trainer.bench.worded import toned, wrapped
from trainer.logbook.plot_view import FigureView
from trainer.logbook.plots import Style
from trainer.results.plots import PLOTS, Picture, draw

__all__ = ["PicturesPage", "picture_heading", "picture_words"]

_TWO_COLUMNS: Final = 900
"""Logical px of the room from which two pictures stand side by side."""

_TALLER: Final = 18
"""Logical px that a picture of rows gets for each."""


def picture_heading(name: str) -> str:
    """The heading of a picture by its name."""
    return {
        "skills": translate("Results", "Scores by skill"),
        "items": translate("Results", "Difficulty and discrimination"),
        "distance": translate("Results", "Misses and false alarms by distance to the limit"),
        "times": translate("Results", "Time by coupon"),
    }[name]


def picture_words() -> dict[str, str]:
    """Every word inside the pictures, by its key."""
    return {
        "score": translate("Results", "Score (dots: learners; bar: their middle half)"),
        "minutes": translate("Results", "Minutes (dots: learners; bar: their middle half)"),
        "difficulty": translate("Results", "Share of the papers that are right"),
        "discrimination": translate("Results", "Discrimination"),
        "backwards": translate("Results", "below 0: the better do worse here"),
        "misses": translate("Results", "misses \u25a0"),
        "false alarms": translate("Results", "\u25cf false alarms"),
        "doubt": translate("Results", "grey: within a leaf's doubt"),
        "distance": translate("Results", "Distance from the limit, mm (left: short of it)"),
        "wrong": translate("Results", "Called wrong"),
    }


@dataclass(slots=True)
class _Card:
    frame: QFrame
    said: QLabel
    view: FigureView


class PicturesPage(QWidget):
    """The page."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._columns = 0
        room = QWidget()
        room.setProperty("kind", "holder")
        self._grid = QGridLayout(room)
        self._grid.setContentsMargins(0, 0, 4, 0)
        self._grid.setSpacing(12)
        self.cards: dict[str, _Card] = {name: self._card(name) for name in PLOTS}
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setAccessibleName(self.tr("Pictures of the class"))
        self._scroll.setWidget(room)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._scroll)
        self.setFocusProxy(self._scroll)

    def _card(self, name: str) -> _Card:
        frame = QFrame()
        frame.setProperty("kind", "panel")
        column = QVBoxLayout(frame)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(6)
        said = wrapped("", "quiet")
        said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        view = FigureView()
        view.setMinimumSize(260, 220)
        view.setAccessibleName(picture_heading(name))
        column.addWidget(toned(picture_heading(name), "heading"))
        column.addWidget(said)
        column.addWidget(view, 100)
        column.addStretch(1)
        return _Card(frame, said, view)

    def show_class(
        self, picture: Picture, sentences: Mapping[str, Sequence[str]], style: Style
    ) -> None:
        """Show a class: its pictures, and what each says."""
        rows = {"skills": len(picture.skills), "times": len(picture.times)}
        some = {
            "skills": bool(picture.skills), "items": bool(picture.spots),
            "distance": bool(picture.steps), "times": bool(picture.times),
        }  # fmt: skip
        for name, card in self.cards.items():
            said = list(sentences.get(name, ()))
            card.said.setText("\n".join(said))
            card.view.setAccessibleDescription(" ".join(said))
            card.view.setVisible(some[name])
            card.view.setMinimumHeight(max(240, 70 + _TALLER * rows.get(name, 0)))
            card.view.show_figure(partial(_draw, name, picture, style))

    def _arrange(self) -> None:
        columns = 2 if self.width() >= _TWO_COLUMNS else 1
        if columns == self._columns:
            return
        self._columns = columns
        for at, card in enumerate(self.cards.values()):
            self._grid.removeWidget(card.frame)
            self._grid.addWidget(card.frame, at // columns, at % columns)
        for at in range(2):
            self._grid.setColumnStretch(at, 1 if at < columns else 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One column or two."""
        super().resizeEvent(event)
        self._arrange()

    def sizeHint(self) -> QSize:
        """Room for two pictures."""
        return QSize(1100, 560)


def _draw(name: str, picture: Picture, style: Style, figure: Figure) -> None:
    draw(name, figure, picture, style)
