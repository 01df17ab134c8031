"""How long until something can be seen, and until a leaf can be dragged, beside a bare window.

Fresh processes, one after the other in turn, so that whatever else the machine does falls on both:
a bare PySide6 window of the same size up to its first paint, and the program up to the first paint
of the first coupon and up to the first drag that moved a leaf. What counts are the ratios.

Run it as ``python -m tests.measure.startup [RUNS]``. A drag is tried again and again from the first
paint on with real X events, as an impatient hand would.
"""

from __future__ import annotations

import itertools
import statistics
import subprocess
import sys
import time

from tests.measure.child import Child
from tests.measure.xscreen import Pointer, virtual_screen

__all__ = ["main"]

RUNS = 15
PATIENCE = 60.0
"""Seconds until a run counts as failed."""

TRY = 0.005
"""Seconds between two moves of the pointer: a hand's own time is not the program's."""

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


def bare(size: Place) -> float:
    """Return the seconds from the start of a process to the paint of its empty window."""
    code = BARE.format(width=round(size[0]), height=round(size[1]))
    start = time.monotonic()
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return float(done.stdout) - start


def places() -> tuple[Place, Place, Place]:
    """Return the window's size, and where a leaf hangs and the picture is, in pixels."""
    with Child() as child:
        child.awaited("ready")
        child.awaited("paint")
        view = child.tell("look")
    x, y = next(iter(view["rack"].values()))
    width, height = view["size"]
    middle = (view["origin"][0] + width * 0.8, view["origin"][1] + height * 0.2)
    return (view["window"][0], view["window"][1]), (x, y), middle


def snatch(pointer: Pointer, child: Child, rack: Place, bench: Place) -> float:
    """Drag from the rack to the bench until a leaf comes along; return when it did."""
    for part in itertools.cycle(range(12)):
        # Off the rack at once, then to and fro long enough for a frame to show it.
        share = 0.0 if part == 0 else 0.98 + 0.02 * (part % 2)
        pointer.move(rack[0] + (bench[0] - rack[0]) * share, rack[1] + (bench[1] - rack[1]) * share)
        if part == 0:
            pointer.press()
        elif part == 11:
            pointer.release()
        time.sleep(TRY)
        if child.notes("drag"):
            break
        if time.monotonic() - child.began > PATIENCE:
            raise TimeoutError("no drag was accepted")
    pointer.release()
    return float(child.notes("drag")[0]["at"])


def program(pointer: Pointer, rack: Place, bench: Place) -> tuple[float, float]:
    """Return the seconds to the program's first paint, and to the first drag that moved a leaf."""
    pointer.move(*rack)
    with Child() as child:
        painted = float(child.awaited("paint")["at"])
        dragged = snatch(pointer, child, rack, bench)
        return painted - child.began, dragged - child.began


def told(name: str, seconds: list[float]) -> str:
    """Return a line of the table."""
    return (
        f"{name:<30} median {statistics.median(seconds) * 1000:5.0f} ms"
        f"   from {min(seconds) * 1000:.0f} to {max(seconds) * 1000:.0f}"
    )


def main() -> None:
    """Measure and print."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    with virtual_screen(), Pointer() as pointer:
        size, rack, bench = places()
        rows = [(bare(size), *program(pointer, rack, bench)) for _ in range(runs)]
    bares, paints, drags = (list(column) for column in zip(*rows, strict=True))
    print(f"{runs} runs of each in turn, fresh processes, window {size[0]} x {size[1]}")
    print(told("bare window, first paint", bares))
    print(told("program, first coupon painted", paints))
    print(told("program, first drag accepted", drags))
    base = statistics.median(bares)
    print(f"first paint {statistics.median(paints) / base:.2f} times the bare window's")
    print(f"first drag  {statistics.median(drags) / base:.2f} times")


if __name__ == "__main__":
    main()
