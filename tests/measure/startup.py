"""How long until something can be seen, and until a leaf can be dragged, beside a bare window.

Fresh processes, one after the other in turn, so that whatever else the machine does falls on both:
a bare PySide6 window of the same size up to its first paint, and the program up to three moments:

- the first paint of the first coupon;
- the first drag that was accepted: a leaf was pressed on the rack, the pointer moved on, and the
  screen shows the leaf there, as read from the X server by this process;
- the first drag in which the kernel moved a leaf, so that contact is felt.

What counts are the ratios. Run it as ``python -m tests.measure.startup [RUNS]``. Real X events from
the first paint on, as an impatient hand would.
"""

from __future__ import annotations

import itertools
import os
import statistics
import subprocess
import sys
import time
from typing import NamedTuple

from tests.measure.child import Child
from tests.measure.xscreen import Pointer, virtual_screen

__all__ = ["main"]

RUNS = 15
PATIENCE = 60.0
"""Seconds until a run counts as failed."""

TRY = 0.002
"""Seconds between two looks at the screen: a hand's own time is not the program's."""

MOVE = 0.008
"""Seconds between two moves of a usual mouse."""

GLANCES = 25
"""Looks until a hand that sees nothing come along lets go and tries again."""

DIFFERENT = 24
"""Steps of 255 in a colour that can't be mistaken for the same picture."""

MOMENTS = ("first coupon painted", "first drag accepted", "first drag felt")

BARE = """
import sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget
class Middle(QWidget):
    def paintEvent(self, event):
        QTimer.singleShot(0, lambda: (print(time.monotonic(), flush=True), app.quit()))
app = QApplication(sys.argv)
window = QMainWindow()
window.setCentralWidget(Middle())
window.resize({width}, {height})
window.show()
app.exec()
"""

Place = tuple[float, float]
Colour = tuple[int, int, int]


class Sight(NamedTuple):
    """Where things are on the screen, in pixels.

    Parameters
    ----------
    size
        The window's.
    rack
        Where a leaf hangs.
    bench
        Where it is dragged to, in the picture and clear of the steel.
    colour
        What is seen there when no leaf is.
    """

    size: Place
    rack: Place
    bench: Place
    colour: Colour


def bare(size: Place) -> float:
    """Return the seconds from the start of a process to the paint of its empty window."""
    code = BARE.format(width=round(size[0]), height=round(size[1]))
    start = time.monotonic()
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return float(done.stdout) - start


def sight(pointer: Pointer) -> Sight:
    """Return where things are, as a program that has been opened for this shows them."""
    with Child() as child:
        child.awaited("ready")
        view = child.tell("look")
        x, y = next(iter(view["rack"].values()))
        width, height = view["size"]
        bench = (view["origin"][0] + width * 0.8, view["origin"][1] + height * 0.2)
        return Sight((view["window"][0], view["window"][1]), (x, y), bench, pointer.pixel(*bench))


def differ(one: Colour, other: Colour) -> bool:
    """Return whether two colours are of different things."""
    return max(abs(a - b) for a, b in zip(one, other, strict=True)) > DIFFERENT


def drag(pointer: Pointer, child: Child, seen: Sight) -> float:
    """Pull a leaf off the rack until the screen shows it at the pointer; return when it did.

    The button is then still down.
    """
    while time.monotonic() - child.began < PATIENCE:
        pointer.move(*seen.rack)
        pointer.press()
        pointer.move(*seen.bench)
        for _ in range(GLANCES):
            if differ(pointer.pixel(*seen.bench), seen.colour):
                return time.monotonic()
            time.sleep(TRY)
        pointer.move(*seen.rack)
        pointer.release()
    raise TimeoutError("no drag was accepted")


def feel(pointer: Pointer, child: Child, seen: Sight) -> float:
    """Move a leaf that is held to and fro until the kernel has moved it; return when it had."""
    for there in itertools.cycle((6.0, 0.0)):
        pointer.move(seen.bench[0] + there, seen.bench[1] - there)
        time.sleep(MOVE)
        if child.notes("drag"):
            break
        if time.monotonic() - child.began > PATIENCE:
            raise TimeoutError(f"no drag reached the kernel; it noted {child.kinds}")
    pointer.release()
    return float(child.notes("drag")[0]["at"])


def program(pointer: Pointer, seen: Sight) -> tuple[float, float, float]:
    """Return the seconds to first paint, to the first drag accepted, and to the first felt."""
    pointer.move(*seen.rack)
    with Child() as child:
        painted = float(child.awaited("paint")["at"])
        while differ(pointer.pixel(*seen.bench), seen.colour):
            time.sleep(TRY)
        accepted = drag(pointer, child, seen)
        felt = feel(pointer, child, seen)
        return painted - child.began, accepted - child.began, felt - child.began


def told(name: str, seconds: list[float]) -> str:
    """Return a line of the table."""
    return (
        f"{name:<30} median {statistics.median(seconds) * 1000:5.0f} ms"
        f"   from {min(seconds) * 1000:.0f} to {max(seconds) * 1000:.0f}"
    )


def main() -> None:
    """Measure and print."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    # An installed program is compiled. The first look, which isn't measured, compiles this one.
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    with virtual_screen(), Pointer() as pointer:
        seen = sight(pointer)
        rows = [(bare(seen.size), *program(pointer, seen)) for _ in range(runs)]
    columns = [list(column) for column in zip(*rows, strict=True)]
    print(f"{runs} runs of each in turn, fresh processes, window {seen.size[0]} x {seen.size[1]}")
    names = ("bare window, first paint", *(f"program, {name}" for name in MOMENTS))
    for name, column in zip(names, columns, strict=True):
        print(told(name, column))
    base = statistics.median(columns[0])
    for name, column in zip(MOMENTS, columns[1:], strict=True):
        print(f"{name:<30} {statistics.median(column) / base:.2f} times the bare window's paint")


if __name__ == "__main__":
    main()
