"""Sections and leaves that the canvas is shown, and an ear for what it tells."""

from __future__ import annotations

import math
import random

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.curves import Arc
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.section import Section
from trainer.canvas.canvas import Canvas
from trainer.canvas.scene import Scene
from trainer.look.theme import apply
from trainer.look.tokens import LIGHT

ON_BLADE, OFF_BLADE = (18.0, 10.0), (3.0, 7.2)


def traced_section(count: int = 500) -> Section:
    """A section whose face is `count` slightly noisy points."""
    chance = random.Random(3)
    arc = Section.of(Joint(), Bead(8.0, 7.2, 1.0)).face[0]
    assert isinstance(arc, Arc)
    points = []
    for index in range(count):
        share = index / (count - 1)
        angle = arc.first + share * arc.sweep
        radius = arc.radius + math.sin(math.pi * share) * chance.uniform(-0.02, 0.02)
        points.append(
            (arc.centre[0] + radius * math.cos(angle), arc.centre[1] + radius * math.sin(angle))
        )
    return Section.of(Joint(), Bead.traced(tuple(points), Joint()))


SECTIONS = {
    "flat": Section.of(Joint(), Bead(8.0, 8.0)),
    "convex": Section.of(Joint(), Bead(8.0, 6.7, 0.9)),
    "hollow": Section.of(Joint(), Bead(8.0, 8.0, -1.2)),
    "leaning": Section.of(Joint(angle=80.0), Bead(8.0, 8.0, 0.6)),
    "undercut": Section.of(
        Joint(angle=100.0),
        Bead(8.0, 8.0, 0.4, undercut_upright=Undercut(0.6, 2.0), overlap_base=Overlap(1.6)),
    ),
    "spatter": Section.of(
        Joint(root_opening=2.0),
        Bead(10.0, 10.0, 1.2),
        (Spatter("base", 16.0, 0.8), Spatter("upright", 13.0, 0.6)),
    ),
    "traced": traced_section(),
}


@pytest.fixture(params=sorted(SECTIONS))
def section(request: pytest.FixtureRequest) -> Section:
    """Each kind of section in turn."""
    return SECTIONS[request.param]


@pytest.fixture
def convex() -> Section:
    """A convex bead of unequal legs."""
    return SECTIONS["convex"]


@pytest.fixture
def flat() -> Section:
    """A flat bead, both legs 8 mm."""
    return SECTIONS["flat"]


class Told:
    """Everything that a canvas says, in order."""

    def __init__(self, canvas: Canvas) -> None:
        self.all: list[tuple[object, ...]] = []
        for name in ("grabbed", "dragged", "released", "clicked", "wheel_turned", "hovered"):
            getattr(canvas, name).connect(
                lambda *values, name=name: self.all.append((name, *values))
            )

    def names(self, *leave_out: str) -> list[object]:
        """What was said, without its values."""
        return [each[0] for each in self.all if each[0] not in leave_out]

    def of(self, name: str) -> list[tuple[object, ...]]:
        """The values of each time that `name` was said."""
        return [each[1:] for each in self.all if each[0] == name]

    def path(self) -> list[tuple[float, float]]:
        """All points that were dragged through."""
        return [point for (points,) in self.of("dragged") for point in points]  # type: ignore[attr-defined]


@pytest.fixture
def canvas(qtbot: QtBot, qapp: QApplication, convex: Section) -> Canvas:
    """A shown canvas, 900 x 640, with an 8 mm leaf at home."""
    apply(qapp, LIGHT)
    widget = Canvas()
    qtbot.addWidget(widget)
    widget.resize(900, 640)
    widget.set_scene(Scene(section=convex, leaf=leaf_of_mark("8 mm"), pose=Pose(0.0, 0.0)))
    widget.show()
    qtbot.waitExposed(widget)
    # Off the blade, wherever an earlier test left the pointer.
    QTest.mouseMove(widget, at(widget, OFF_BLADE))
    QApplication.processEvents()
    return widget


@pytest.fixture
def told(canvas: Canvas) -> Told:
    """What the canvas says from now on."""
    return Told(canvas)


def at(canvas: Canvas, point: tuple[float, float]) -> QPoint:
    """A point of the section (mm) on the widget."""
    x, y = canvas.view.to_screen(point)
    return QPoint(round(x), round(y))


def settle(qtbot: QtBot) -> None:
    """Let timers and paints run."""
    qtbot.wait(30)
