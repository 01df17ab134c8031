"""The real program in this process, played through its own controls, and photographed.

No X server: Qt's offscreen platform paints with the shipped fonts, so that pictures of two machines
are alike. The clock stands still but for what is played, so that a replay shows the same seconds.
"""

from __future__ import annotations

import json
import os
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from trainer.bench.screen import BenchScreen
from trainer.bench.state import BenchState
from trainer.guide.guiding import Guiding
from trainer.late import _Opening
from trainer.reference.screen import ReferenceScreen
from trainer.settings import Appearance
from trainer.window import WindowFrame

__all__ = ["Stage", "stage"]

_PATIENCE: Final = 120.0
"""Seconds until what is waited for counts as never coming."""

_STEP: Final = 700.0
"""ms that the bench's clock goes on by with each thing done."""


class Stage:
    """The program once its bench is there.

    Parameters
    ----------
    opening
        Its window, shown, with everything loaded.
    """

    def __init__(self, opening: _Opening) -> None:
        assert opening.frame is not None
        assert opening.screen is not None
        assert opening.guiding is not None
        self.frame: WindowFrame = opening.frame
        self.bench: BenchScreen = opening.screen
        self.guiding: Guiding = opening.guiding
        self.window = opening.window
        self._clock = 0.0
        # Qt's own clocks go on; this one decides what the handling says and where a press is.
        self.bench.controller.now = lambda: self._clock  # type: ignore[method-assign]

    @property
    def state(self) -> BenchState:
        """The bench's."""
        return self.bench.controller.state

    def settle(self) -> None:
        """Let everything that moves or waits come to rest."""
        for _ in range(4):
            # Deleted widgets are gone, timers of no length have run, layouts are done.
            QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
            QApplication.processEvents()
        if self.bench.controller.moving:
            self._clock += _STEP
            while self.bench.controller.moving:
                QTest.qWait(5)

    def resize(self, width: int, height: int) -> None:
        """Give the window another size, logical pixels."""
        self.window.resize(width, height)
        self.settle()

    def wear(self, look: Appearance) -> None:
        """Switch to a look, as the menu does."""
        self.frame.change_settings(replace(self.frame.settings, appearance=look))
        self.settle()

    def take_up(self) -> None:
        """Have the hands at the picture, even after a dialog."""
        self.window.activateWindow()
        self.bench.canvas.setFocus()

    def key(self, *keys: Qt.Key) -> None:
        """Press keys one after the other, with the hands at the picture."""
        for key in keys:
            self.take_up()
            self._clock += _STEP
            QTest.keyClick(self.window.windowHandle(), key)
            self.settle()

    def click(self, widget: QWidget) -> None:
        """Click in the middle of a widget."""
        self._clock += _STEP
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.settle()

    def state_call(self, face: str, disposition: str) -> None:
        """Choose face and disposition, and put the call on record."""
        call = self.bench.call_panel
        self.click(call.faces.buttons[face])
        self.click(call.dispositions.buttons[disposition])
        self.key(Qt.Key.Key_Return)

    def lay_out(self, index: int) -> None:
        """Lay a coupon out anew."""
        self.bench.go_to(index)
        self.bench.again()
        # Loupe and card stay where they were while that is as good: here nothing was before.
        self.bench.canvas._corner = None
        self.take_up()
        self.settle()

    def look_for(self, words: str) -> None:
        """Type into the search of the reference, which is shown."""
        screen = self.frame.make_screen("reference")
        assert isinstance(screen, ReferenceScreen)
        self.window.activateWindow()
        screen.search.setFocus()
        QTest.keyClicks(screen.search, words)
        self.settle()

    def picture(self, widget: QWidget | None = None) -> QImage:
        """Return what is seen: the window, or a dialog alone."""
        self.settle()
        shown = widget if widget is not None else self.window
        return shown.grab().toImage().convertToFormat(QImage.Format.Format_RGB888)

    def dialog(self, show: Callable[[], object]) -> QImage:
        """Open a dialog, photograph it, and close it again."""
        show()
        self.settle()
        dialog = self.frame.dialogs[-1]
        picture = self.picture(dialog)
        dialog.reject()
        self.settle()
        return picture

    def tab_to(self, widget: QWidget) -> None:
        """Let Tab go on from the picture until a control has the focus."""
        self.take_up()
        for _ in range(200):
            if widget.hasFocus():
                return
            QTest.keyClick(self.window.windowHandle(), Qt.Key.Key_Tab)
        raise LookupError(f"Tab doesn't come to {widget.accessibleName()!r}")

    def over(self, widget: QWidget) -> QPoint:
        """Where the middle of a widget is in the window."""
        return widget.mapTo(self.window, widget.rect().center())


@contextmanager
def stage(look: Appearance, *, settled: bool = True, language: str = "en") -> Iterator[Stage]:
    """Start the program in a home of its own and yield it once it is ready.

    Parameters
    ----------
    look
        Light, dark, or as the system has it.
    settled
        Whether first card and guide have been seen to.
    language
        The tag of the language that it speaks.

    Raises
    ------
    TimeoutError
        If the bench never comes.
    """
    app = QApplication.instance() or QApplication(["trainer"])
    assert isinstance(app, QApplication)
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        (home / "toe-and-throat").mkdir()
        kept = {
            "first_start_seen": settled,
            "guide_done": settled,
            "appearance": look,
            "language": language,
        }
        (home / "toe-and-throat" / "settings.json").write_text(json.dumps(kept), encoding="utf-8")
        os.environ.update(XDG_CONFIG_HOME=folder, XDG_DATA_HOME=folder)
        opening = _Opening(app, None)
        opening.show()
        until = time.monotonic() + _PATIENCE
        while opening.guiding is None:
            if time.monotonic() > until:
                raise TimeoutError("the bench never came")
            app.processEvents()
        made = Stage(opening)
        made.settle()
        try:
            yield made
        finally:
            opening.window.close()
            opening.finish()
            made.settle()
