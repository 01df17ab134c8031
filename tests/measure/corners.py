"""Four corners: how long a changed leaf, and a changed section, take to be shown.

Prints the 10th percentile (a busy machine's quiet moments), median and 95th, in ms of this
process's own time and beside a plain step of the same run, for pressing and reading all four
(computing), and for repainting them at a window of 1280 x 760 (painting). Offscreen.

    python -m tests.measure.corners [--profile]
"""

from __future__ import annotations

import argparse
import cProfile
import itertools
import os
import pstats
import statistics
import time
from collections.abc import Callable, Iterator
from dataclasses import replace

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from trainer.corners.pressing import Pressing
from trainer.corners.stage import Stage
from trainer.corners.state import Corners
from trainer.look.theme import LIGHT, apply

ROUNDS = 60


def leaves() -> Iterator[Corners]:
    """Another leaf each time, on the same two sections."""
    for mark in itertools.cycle(("5 mm", "6 mm", "7 mm", "8 mm", "10 mm", "12 mm")):
        # In a circle, so that none is still known from last time.
        yield Corners(mark=mark)


def sections() -> Iterator[Corners]:
    """A drag of the toes, then of the crown, then of the joint; never the same section twice."""
    count = 0
    while True:
        count += 1
        part = 0.03 * (count % 20) + 0.0007 * count
        if count % 3 == 0:
            yield replace(Corners(), leg_base=7.6 + part, leg_upright=7.6 + part)
        elif count % 3 == 1:
            yield replace(Corners(), crown=0.7 + part, hollow=-1.0 - part)
        else:
            yield replace(Corners(), angle=90.0 + 20.0 * part)


def plain_step() -> float:
    """ms of a fixed piece of arithmetic: how busy the machine is."""
    start = time.process_time()
    total = 0.0
    for index in range(20_000):
        total += index * 0.5
    return (time.process_time() - start) * 1000.0


def measured(states: Iterator[Corners], stage: Stage) -> dict[str, list[float]]:
    """Times of computing and of painting, and of the plain step, ms."""
    pressing = Pressing()
    target = QPixmap(stage.size())
    times: dict[str, list[float]] = {"computing": [], "painting": [], "whole": [], "plain": []}
    for index in range(ROUNDS + 5):
        state = next(states)
        start = time.process_time()
        corners = pressing.corners(state)
        middle = time.process_time()
        stage.show_corners(corners, state, "mm", LIGHT)
        stage.render(target)
        end = time.process_time()
        if index >= 5:
            times["computing"].append((middle - start) * 1000.0)
            times["painting"].append((end - middle) * 1000.0)
            times["whole"].append((end - start) * 1000.0)
            times["plain"].append(plain_step())
    return times


def report(name: str, times: dict[str, list[float]]) -> None:
    """Print a line for each part."""
    plain = statistics.median(times["plain"])
    for part in ("computing", "painting", "whole"):
        found = sorted(times[part])
        early, median, late = found[len(found) // 10], statistics.median(found), found[-4]
        print(
            f"{name:8} {part:9} 10 % {early:6.1f} ms  median {median:6.1f} ms  95 % {late:6.1f} ms"
            f"  {median / plain:5.1f} plain steps"
        )


def profiled(work: Callable[[], object]) -> None:
    """Run `work` and print what takes the time."""
    profile = cProfile.Profile()
    profile.runcall(work)
    pstats.Stats(profile).sort_stats("cumulative").print_stats(45)


def main() -> None:
    """Measure."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--profile", action="store_true", help="show where the time goes")
    wanted = parser.parse_args()
    app = QApplication([])
    apply(app, LIGHT)
    window = QWidget()
    column = QVBoxLayout(window)
    stage = Stage()
    column.addWidget(stage)
    window.resize(1280, 580)
    window.show()
    app.processEvents()
    for name, states in (("leaf", leaves), ("section", sections)):
        report(name, measured(states(), stage))
    if wanted.profile:
        profiled(lambda: measured(sections(), stage))


if __name__ == "__main__":
    main()
