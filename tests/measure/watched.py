"""The program, watched: run as a child by the scripts here, it writes down what happens in it.

It changes nothing in the program and imports nothing early: two classes are wrapped at the moment
when the program itself imports them. The log is JSON lines, times are seconds of a monotonic clock
that the parent shares:

- ``paint``: the first frame that shows a section is on its way to the screen;
- ``ready``: the bench is seen and answers; from now on lines on standard input are commands;
- ``drag``: the kernel has moved a leaf in a hand for the first time;
- ``frame``: one paint of a moving leaf, with the stamps of the pointer events that it shows.

Run it as ``python -m tests.measure.watched LOG [ARGUMENTS OF THE PROGRAM]``.
"""

from __future__ import annotations

import importlib.util
import json
import runpy
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from importlib.machinery import ModuleSpec

__all__ = ["Watch", "main"]

# What is wrapped here belongs to the program and to Qt, and is only known once it is there.
Wrapped = Any


class _AtImport:
    """A finder that calls back as soon as the program has imported one of some modules."""

    def __init__(self, wanted: dict[str, Callable[[ModuleType], None]]) -> None:
        self._wanted = wanted

    def find_spec(
        self, name: str, path: Sequence[str] | None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Find what others find, and add the call."""
        then = self._wanted.pop(name, None)
        spec = importlib.util.find_spec(name) if then else None
        if then is None or spec is None or spec.loader is None:
            return None
        execute = spec.loader.exec_module

        def executed(module: ModuleType) -> None:
            execute(module)
            then(module)

        spec.loader.exec_module = executed  # type: ignore[method-assign]  # this one module's own
        return spec


class Watch:
    """What is written down, and what the parent may ask for.

    Parameters
    ----------
    log
        The file to write to.
    """

    def __init__(self, log: Path) -> None:
        self._file = log.open("w", buffering=1, encoding="utf-8")
        self._canvas: Wrapped = None
        self._controller: Wrapped = None
        self._seen = {"paint": False, "ready": False, "drag": False}
        self._waiting: list[float] = []
        self._taken: list[float] = []
        self._pressed = 0.0
        self._film: list[float] = []
        self._pictures: Path | None = None
        self._notifier: Wrapped = None

    def note(self, kind: str, at: float | None = None, **what: object) -> None:
        """Write one line."""
        line = {"kind": kind, "at": time.monotonic() if at is None else at, **what}
        self._file.write(json.dumps(line) + "\n")

    def install(self) -> None:
        """Wait for the two classes."""
        wanted: dict[str, Callable[[ModuleType], None]] = {
            "trainer.first_paint": self._wrap_first_paint,
            "trainer.canvas.canvas": self._wrap_canvas,
            "trainer.bench.controller": self._wrap_controller,
        }
        sys.meta_path.insert(0, _AtImport(wanted))

    def _wrap_first_paint(self, module: ModuleType) -> None:
        """Note when the stored picture of the first coupon is on its way to the screen."""
        paint = module.FirstPaint.paintEvent

        def painted(made: Wrapped, event: Wrapped) -> None:
            paint(made, event)
            if made.pictured and not self._seen["paint"]:
                self._seen["paint"] = True
                self._after_flush(lambda at: self.note("paint", at))

        module.FirstPaint.paintEvent = painted

    def _wrap_canvas(self, module: ModuleType) -> None:
        """Note each pointer event, and each frame with those that it shows."""
        canvas = module.Canvas
        begin, paint = canvas.__init__, canvas.paintEvent
        press, move = canvas.mousePressEvent, canvas.mouseMoveEvent

        def __init__(made: Wrapped, *arguments: object, **named: object) -> None:  # noqa: N807
            begin(made, *arguments, **named)
            self._canvas = made
            made.dragged.connect(self._on_dragged)

        def mouse_press(made: Wrapped, event: Wrapped) -> None:
            self._waiting, self._taken = [], []
            self._pressed = time.monotonic()
            press(made, event)

        def mouse_move(made: Wrapped, event: Wrapped) -> None:
            # X stamps an event with the ms of the clock that time.monotonic reads.
            self._waiting.append(event.timestamp() / 1000.0)
            move(made, event)

        def painted(made: Wrapped, event: Wrapped) -> None:
            paint(made, event)
            self._on_painted(made)

        canvas.__init__, canvas.paintEvent = __init__, painted
        canvas.mousePressEvent, canvas.mouseMoveEvent = mouse_press, mouse_move

    def _wrap_controller(self, module: ModuleType) -> None:
        """Know the one that there is."""
        controller = module.BenchController
        begin = controller.__init__

        def __init__(made: Wrapped, *arguments: object, **named: object) -> None:  # noqa: N807
            begin(made, *arguments, **named)
            self._controller = made

        controller.__init__ = __init__

    def _listen(self) -> None:
        """Take commands as soon as there is somebody to carry them out."""
        self._seen["ready"] = True
        qt = sys.modules["PySide6.QtCore"]
        self._notifier = qt.QSocketNotifier(0, qt.QSocketNotifier.Type.Read)
        self._notifier.activated.connect(lambda *_: self._obey(sys.stdin.readline()))
        self.note("ready")

    def _on_dragged(self, _points: object) -> None:
        self._taken += self._waiting
        self._waiting = []

    def _on_painted(self, canvas: Wrapped) -> None:
        if canvas.scene.section is None:
            return
        if not self._seen["paint"]:
            self._seen["paint"] = True
            self._after_flush(lambda at: self.note("paint", at))
        # Until now the first paint lay over it.
        if not self._seen["ready"]:
            self._listen()
        state = self._controller.state if self._controller is not None else None
        if state is None or state.hand is None:
            return
        if not self._seen["drag"] and len(state.way) > 1:
            self._seen["drag"] = True
            self.note("drag")
        shown, self._taken = self._taken, []
        frame = self._frame(state)
        self._after_flush(lambda at: self.note("frame", at, events=shown, **frame))
        if self._film and frame["ms"] >= self._film[0]:
            self._film.pop(0)
            self._after_flush(lambda _at: self._shoot(frame["ms"]))

    def _after_flush(self, then: Callable[[float], None]) -> None:
        # Qt paints and flushes in one go, so the next turn of its loop is after the flush.
        qt = sys.modules["PySide6.QtCore"]
        qt.QTimer.singleShot(0, lambda: then(time.monotonic()))

    def _frame(self, state: Wrapped) -> dict[str, Any]:
        grab = state.pose.to_section(state.hand.grab)
        return {
            "ms": (time.monotonic() - self._pressed) * 1000.0,
            "pointer": list(state.hand.pointer),
            "grab": list(grab),
            "angle": state.pose.angle,
            "touches": sorted({f"{touch.moving} on {touch.fixed}" for touch in state.touches}),
        }

    def _shoot(self, ms: float) -> None:
        """Photograph the real screen, not a second rendering."""
        screen = self._canvas.screen()
        if self._pictures is not None:
            screen.grabWindow(0).save(str(self._pictures / f"{round(ms):06d}.png"))

    def _obey(self, line: str) -> None:
        """Carry out one command and answer in the log."""
        if not line:
            self._notifier.setEnabled(False)
            return
        asked = json.loads(line)
        if asked["do"] == "lay":
            self._lay(asked)
        elif asked["do"] == "film":
            self._film = list(asked["at"])
            self._pictures = Path(asked["folder"])
        elif asked["do"] == "resize":
            self._canvas.window().setGeometry(0, 0, asked["width"], asked["height"])
        elif asked["do"] == "shoot":
            self._canvas.screen().grabWindow(0).save(asked["file"])
        self._answer()

    def _lay(self, asked: dict[str, Any]) -> None:
        """Lay a leaf at a pose, as if it had been carried there."""
        moves = sys.modules["trainer.bench.moves"]
        pose = sys.modules["geometry.pose"].Pose(**asked["pose"])
        replaced = sys.modules["dataclasses"].replace

        def laid(state: Wrapped, now: float) -> Wrapped:
            picked = moves.pick(state, asked["leaf"], now)
            leaf = replaced(picked.leaf, edge=asked["edge"])
            return replaced(picked, leaf=leaf, pose=pose, way=(pose,))

        self._controller.do(laid)

    def _answer(self) -> None:
        """Say where the canvas and the leaves on the rack are, and how the section is looked at."""
        canvas, view = self._canvas, self._canvas.view
        origin = canvas.mapToGlobal(sys.modules["PySide6.QtCore"].QPoint(0, 0))
        leaves = canvas.window().findChildren(sys.modules["trainer.bench.rack"].LeafButton)
        places = {leaf.leaf.mark: leaf.mapToGlobal(leaf.rect().center()) for leaf in leaves}
        self.note(
            "view",
            origin=[origin.x(), origin.y()],
            rack={mark: [place.x(), place.y()] for mark, place in places.items()},
            window=[canvas.window().width(), canvas.window().height()],
            centre=list(view.centre),
            scale=view.scale,
            size=list(view.size),
            ratio=canvas.devicePixelRatioF(),
        )


def main() -> None:
    """Run the program with the rest of the arguments."""
    watch = Watch(Path(sys.argv[1]))
    watch.install()
    sys.argv = ["trainer", *sys.argv[2:]]
    runpy.run_module("trainer", run_name="__main__", alter_sys=True)


if __name__ == "__main__":
    main()
