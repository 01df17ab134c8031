"""The one module that imports late: the window is painted first, what it needs is loaded after.

Qt alone takes most of the time that a start may take. So the window is shown with a stored drawing
of the first coupon, and the geometry, the trays and the bench's panels come in after its first
paint. Commands come in here too, so that they never load Qt, nor the window them.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Final

from trainer.assets import asset
from trainer.records import Records
from trainer.settings import Settings, load_settings, save_settings
from trainer.start import StartError, check_platform_libraries, explain_missing_library

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication

    from exercises.tray import Tray, TrayError
    from trainer.bench.layout import BenchLayout
    from trainer.bench.screen import BenchScreen
    from trainer.window import MainWindow

__all__ = ["open_window", "run_command", "shipped_tray"]

NAME: Final = "toe-and-throat"
_SIZE: Final = (1280, 760)


def run_command(words: Sequence[str]) -> int:
    """Run one of the commands that need no window, and return its exit code."""
    from trainer.commands import run

    return run(words)


def shipped_tray() -> Path:
    """Return the tray that opens when none is named."""
    return asset("trays", "heron-footbridge.tray.json")


def open_window(argv: Sequence[str], tray: Path | None) -> int:
    """Open the window, on `tray` or on the shipped one, and return the exit code.

    Raises
    ------
    StartError
        If Qt or a library that it needs is missing; says what to install.
    """
    check_platform_libraries()
    try:
        from PySide6.QtWidgets import QApplication
    except ImportError as error:
        words = explain_missing_library(error)
        if words is None:
            raise
        raise StartError(words) from error
    app = QApplication(list(argv))
    app.setApplicationName(NAME)
    app.setDesktopFileName(NAME)
    opening = _Opening(app, tray)
    opening.show()
    return app.exec()


class _Opening:
    """The window from before its first paint until everything has been loaded.

    Parameters
    ----------
    app
        The application.
    tray
        What was named on the command line, if anything.
    """

    def __init__(self, app: QApplication, tray: Path | None) -> None:
        from PySide6.QtCore import QStandardPaths

        self._app = app
        self._tray = tray
        place = QStandardPaths.StandardLocation
        config = QStandardPaths.writableLocation(place.GenericConfigLocation)
        data = QStandardPaths.writableLocation(place.GenericDataLocation)
        self._settings_file = Path(config) / NAME / "settings.json"
        self._records = Records(Path(data) / NAME / "calls.jsonl")
        self._bench, self.window = self._light_window(load_settings(self._settings_file))
        self.screen: BenchScreen | None = None

    def _light_window(self, settings: Settings) -> tuple[BenchLayout, MainWindow]:
        """The window with nothing in it but the canvas and a stored drawing."""
        from trainer.bench.layout import BenchLayout
        from trainer.canvas.canvas import Canvas
        from trainer.canvas.scene import Scene
        from trainer.canvas.still import still_from_json
        from trainer.window import MainWindow

        bench = BenchLayout(Canvas())
        window = MainWindow(settings, bench)
        window.resize(*_SIZE)
        still = None
        if self._tray is None:
            # A picture that can't be read is no reason not to start: the section follows anyway.
            with suppress(OSError, ValueError):
                file = asset("stills", "first-coupon.json")
                still = still_from_json(file.read_text(encoding="utf-8"))
        section = still.section if still is not None else None
        bench.canvas.set_scene(Scene(section=section, theme=window.theme, capped=True))
        return bench, window

    def show(self) -> None:
        """Show the window; once it has been painted, load the rest."""
        from PySide6.QtCore import QTimer

        def painted() -> None:
            self._bench.canvas.painted.disconnect(painted)
            QTimer.singleShot(0, self._load)

        sys.excepthook = self._unforeseen
        self._bench.canvas.painted.connect(painted)
        self.window.show()

    def _load(self) -> None:
        """Load the core, open the tray, fill the bench."""
        from exercises.tray import TrayError, load_tray
        from trainer.bench.screen import BenchScreen

        broken: TrayError | None = None
        try:
            tray = load_tray(self._tray or shipped_tray())
        except TrayError as error:
            tray, broken = load_tray(shipped_tray()), error
        self.screen = BenchScreen(self.window, self._bench, tray, self._records)
        self.window.tray_asked.connect(self._open)
        self.window.settings_changed.connect(self._keep_settings)
        self._bench.canvas.setFocus()
        if broken is not None:
            self._say_broken(broken)
        elif not self.window.settings.first_start_seen:
            self.window.show_first_start()

    def _open(self, path: Path) -> None:
        """Open another tray; a broken one is refused whole, and says why."""
        from exercises.tray import TrayError, load_tray

        try:
            tray: Tray = load_tray(path)
        except TrayError as error:
            self._say_broken(error)
            return
        if self.screen is not None:
            self.screen.open_tray(tray)

    def _say_broken(self, error: TrayError) -> None:
        from trainer.notices import FaultRow

        rows = [FaultRow(fault.pointer, fault.text, fault.right) for fault in error.faults]
        self.window.show_faults(error.faults[0].file if error.faults else "", rows)

    def _keep_settings(self) -> None:
        save_settings(self._settings_file, self.window.settings)

    def _unforeseen(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Tell of an error that nobody foresaw, on the terminal and in the window."""
        sys.__excepthook__(kind, error, trace)
        if not issubclass(kind, KeyboardInterrupt):
            self.window.show_unforeseen(kind, error, trace)
        else:
            self._app.quit()
