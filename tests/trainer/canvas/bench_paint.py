"""How long a frame takes: the whole canvas against only the leaf moving. Run as a script.

    QT_QPA_PLATFORM=offscreen python tests/trainer/canvas/bench_paint.py

Prints milliseconds (median and 99th percentile) and the ratio leaf-only / full, at 1600 x 1000.
"""

from __future__ import annotations

import math
import random
import statistics
import sys
import time
from dataclasses import replace

from PySide6.QtWidgets import QApplication

from geometry.bead import Bead
from geometry.curves import Arc
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.section import Section
from trainer.canvas.canvas import Canvas
from trainer.canvas.scene import Loupe, Scene

FRAMES = 200


def traced(count: int) -> Section:
    """A section whose face is `count` slightly noisy points."""
    chance = random.Random(3)
    arc = Section.of(Joint(), Bead(8.0, 7.2, 1.0)).face[0]
    assert isinstance(arc, Arc)
    points = []
    for index in range(count):
        share = index / (count - 1)
        angle = arc.first + share * arc.sweep
        radius = arc.radius + math.sin(math.pi * share) * chance.uniform(-0.01, 0.01)
        points.append(
            (arc.centre[0] + radius * math.cos(angle), arc.centre[1] + radius * math.sin(angle))
        )
    return Section.of(Joint(), Bead.traced(tuple(points), Joint()))


def frame_times(canvas: Canvas, *, full: bool) -> list[float]:
    """Milliseconds that each of `FRAMES` frames took to paint."""
    times = []
    for index in range(FRAMES // 5 if full else FRAMES):
        angle = index / 20.0
        pose = Pose(1.0 + math.cos(angle), 1.0 + math.sin(angle), 3.0 * math.sin(angle))
        if full:
            canvas.pan(1.0 if index % 2 else -1.0, 0.0)
        start = time.perf_counter()
        canvas.set_scene(replace(canvas.scene, pose=pose))
        QApplication.processEvents()
        times.append((time.perf_counter() - start) * 1000.0)
    return times


def report(name: str, section: Section, loupe: Loupe | None) -> None:
    """Print the figures of one section."""
    canvas = Canvas()
    canvas.resize(1600, 1000)
    leaf = leaf_of_mark("8 mm")
    canvas.set_scene(Scene(section=section, leaf=leaf, pose=Pose(1.0, 1.0), loupe=loupe))
    canvas.show()
    QApplication.processEvents()
    full, leaf_only = frame_times(canvas, full=True), frame_times(canvas, full=False)
    medians = statistics.median(full), statistics.median(leaf_only)
    slow = sorted(leaf_only)[int(len(leaf_only) * 0.99) - 1]
    sys.stdout.write(
        f"{name:28s} full {medians[0]:6.2f} ms   leaf only {medians[1]:6.2f} ms "
        f"(p99 {slow:6.2f})   ratio {medians[1] / medians[0]:.3f}\n"
    )
    canvas.close()


def main() -> None:
    """Measure arcs and a traced face, without and with the loupe."""
    app = QApplication([])
    for name, section in (
        ("arc", Section.of(Joint(), Bead(8.0, 6.7, 0.9))),
        ("traced, 1,000 points", traced(1000)),
        ("traced, 4,000 points", traced(4000)),
    ):
        report(name, section, None)
        report(f"{name}, loupe", section, Loupe())
    del app


if __name__ == "__main__":
    main()
