"""The one module that imports late: the window is painted first, what it needs is loaded after.

Qt alone takes most of the time that a start may take. So a bare window is shown with a stored
picture of the first coupon; the core and the bench come in after its first paint. Commands come in
here too, so that they never load Qt, nor the window them.
"""

from __future__ import annotations

import builtins
import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Final, NamedTuple

from trainer.assets import asset
from trainer.placement import LIKELY_FRAME, USUAL, Frame, Placement, Screen, placed
from trainer.places import NAME, move_in, old_places, places
from trainer.settings import read_settings, save_settings
from trainer.start import StartError, check_platform_libraries, explain_missing_library

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication

    from exercises.file_faults import TrayError
    from exercises.tray import Tray
    from trainer.bench.screen import BenchScreen
    from trainer.corners.screen import CornersScreen
    from trainer.first_hands import FirstHands
    from trainer.guide.guiding import Guiding
    from trainer.language import Speech
    from trainer.loading import Loading
    from trainer.shop.screen import ShopScreen
    from trainer.window import WindowFrame

__all__ = ["open_window", "run_command", "shipped_tray"]

_PLAIN_IMPORT: Final = builtins.__import__
"""Python's own, taken before Qt is there."""


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
    opening.keep_on_screen()
    opening.show()
    try:
        return app.exec()
    finally:
        opening.finish()


@contextmanager
def _swift_imports() -> Iterator[None]:
    """Let the core be imported by Python's own import.

    Qt's binding puts a function of its own before every import, for a feature that we don't use:
    it makes numpy's thousands of imports half as slow again.
    """
    # Our arrays are small: threads for linear algebra would only take time to start.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    qt_import, builtins.__import__ = builtins.__import__, _PLAIN_IMPORT
    try:
        yield
    finally:
        builtins.__import__ = qt_import


class _Loaded(NamedTuple):
    """A tray to begin with, and why the one that was named can't be it."""

    tray: Tray
    broken: TrayError | None


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
        from trainer.first_paint import FirstPaint, MainWindow

        self._app = app
        self._tray = tray
        self._places = places()
        move_in(old_places(), self._places)
        self._keeps_on_screen = False
        self._kept = read_settings(self._places.settings)
        self._settings = self._kept.settings
        self.window = MainWindow()
        self.window.setWindowTitle("Toe & Throat")
        self.window.resize(*USUAL)
        look = self._likely_look()
        self.first = FirstPaint(asset("stills"), look, self.window, pictured=tray is None)
        self.hands: FirstHands | None = None
        self._loading: Loading[_Loaded] | None = None
        self.frame: WindowFrame | None = None
        self.screen: BenchScreen | None = None
        self.guiding: Guiding | None = None
        self._speech: Speech | None = None
        self._corners: CornersScreen | None = None
        self._shop: ShopScreen | None = None

    def _likely_look(self) -> str:
        """Light or dark, as chosen or as the system's colours are.

        Asking for the scheme itself loads a part of Qt that takes longer than the first paint.
        """
        if self._settings.appearance != "system":
            return self._settings.appearance
        palette = self._app.palette()
        behind, before = palette.window().color(), palette.windowText().color()
        return "dark" if behind.lightness() < before.lightness() else "light"

    def _look(self) -> str:
        """Light or dark, as chosen or as the system has it."""
        if self._settings.appearance != "system":
            return self._settings.appearance
        scheme = self._app.styleHints().colorScheme()
        return "dark" if scheme == type(scheme).Dark else "light"

    def keep_on_screen(self) -> None:
        """Let the window stand where it stood, if it fits there, and on a screen in any case."""
        self._keeps_on_screen = True
        kept = self._settings.placement
        stand = placed(kept, self._screens(), LIKELY_FRAME)
        self.window.resize(stand.width, stand.height)
        if kept is not None:
            # Else the window manager knows better.
            self.window.setGeometry(stand.x, stand.y, stand.width, stand.height)

    def _screens(self) -> list[Screen]:
        """The screens there are, the usual one first."""
        usual = self._app.primaryScreen()
        others = [screen for screen in self._app.screens() if screen is not usual]
        rooms = [(screen.name(), screen.availableGeometry()) for screen in (usual, *others)]
        return [
            Screen(name, room.x(), room.y(), room.width(), room.height()) for name, room in rooms
        ]

    def _stand(self) -> Placement:
        """Where the window stands now, or would if it weren't maximised."""
        window = self.window
        large = window.isMaximized() or window.isFullScreen()
        stands = window.normalGeometry() if large else window.geometry()
        x, y, width, height = stands.x(), stands.y(), stands.width(), stands.height()
        return Placement(x, y, width, height, window.isMaximized(), window.screen().name())

    def _clear_frame(self) -> None:
        """Now that the window manager has put its frame around the window, keep that on the screen.

        Else a title bar would push the lowest row off it.
        """
        if not self._keeps_on_screen or self.window.isMaximized() or self.window.isFullScreen():
            return
        margins = self.window.windowHandle().frameMargins()
        frame = Frame(margins.left(), margins.top(), margins.right(), margins.bottom())
        stands = self._stand()
        fits = placed(stands, self._screens(), frame)
        if fits != stands:
            self.window.setGeometry(fits.x, fits.y, fits.width, fits.height)

    def show(self) -> None:
        """Show the window; once its first paint is on the screen, load the rest."""
        from PySide6.QtCore import QTimer

        def painted() -> None:
            self.first.painted.disconnect(painted)
            # One turn of the loop for the paint to be sent off, then one to begin.
            QTimer.singleShot(0, lambda: QTimer.singleShot(0, self._begin))

        sys.excepthook = self._unforeseen
        self.first.painted.connect(painted)
        kept = self._settings.placement
        if kept is not None and kept.maximised:
            self.window.showMaximized()
        else:
            self.window.show()

    def _begin(self) -> None:
        """Let leaves be taken, and load the rest beside that."""
        from trainer.first_hands import FirstHands
        from trainer.loading import Loading

        self._clear_frame()
        look = self._look()
        if look != self.first.look:
            self.first.wear(look)
        self.hands = FirstHands(self.first, self.window)
        self._loading = Loading(self._load)
        self._loading.over.connect(self._fill)
        self._loading.start()

    def finish(self) -> None:
        """Keep how the window was left, and wait for what may still be loading behind it."""
        settings = self._settings if self.frame is None else self.frame.settings
        stands = replace(settings, placement=self._stand())
        if stands != settings:
            save_settings(self._places.settings, stands)
        if self._loading is not None:
            self._loading.wait()

    def _load(self) -> _Loaded:
        """Load the core and the bench's modules, and open the tray: nothing of the window's."""
        with _swift_imports():
            from exercises.tray import TrayError, load_tray
            from trainer import window  # noqa: F401  # imported here for those after it
            from trainer.bench import layout, screen  # noqa: F401
            from trainer.canvas import canvas  # noqa: F401
            from trainer.guide import guiding  # noqa: F401
        try:
            return _Loaded(load_tray(self._tray or shipped_tray()), None)
        except TrayError as error:
            return _Loaded(load_tray(shipped_tray()), error)

    def _fill(self) -> None:
        """Fill the window, beneath what was painted first."""
        from PySide6.QtCore import QTimer

        from trainer.language import Speech

        if self._loading is None:
            return
        loaded = self._loading.result
        # Before any widget: each says its words once, when it is made.
        self._speech = Speech(self._app)
        self._speech.speak(self._settings.language)
        screen = self._make_screen(loaded.tray)
        self.first.raise_()
        screen.canvas.setFocus()
        # A turn of the loop for the parts to find their places.
        QTimer.singleShot(0, lambda: self._hand_over(screen, loaded.broken))

    def _make_screen(self, tray: Tray) -> BenchScreen:
        """Make the frame and the bench in it, in the language that is spoken."""
        from trainer.bench.layout import BenchLayout
        from trainer.bench.screen import BenchScreen
        from trainer.canvas.canvas import Canvas
        from trainer.records import Records
        from trainer.window import WindowFrame

        bench = BenchLayout(Canvas())
        settings = self._settings if self.frame is None else self.frame.settings
        self.frame = WindowFrame(self.window, settings, bench)
        records = Records(self._places.calls)
        screen = BenchScreen(self.frame, bench, tray, records)
        self.frame.tray_asked.connect(self._open)
        self.frame.settings_changed.connect(self._keep_settings)
        bench.setFocusProxy(bench.canvas)
        self._add_corners(self.frame)
        self._add_shop(self.frame)
        return screen

    def _add_corners(self, frame: WindowFrame) -> None:
        """Let the four corners be shown; nothing of them is loaded before that."""
        from PySide6.QtCore import QCoreApplication

        def make() -> CornersScreen:
            from trainer.corners.screen import CornersScreen

            before, self._corners = self._corners, CornersScreen(frame)
            if before is not None:
                state = before.controller.state
                self._corners.controller.do(lambda _: state)
            return self._corners

        frame.add_screen("corners", QCoreApplication.translate("TopBar", "Four corners"), make)

    def _add_shop(self, frame: WindowFrame) -> None:
        """Let the coupon shop be shown; nothing of it is loaded before that."""
        from PySide6.QtCore import QCoreApplication

        def make() -> ShopScreen:
            from trainer.shop.screen import ShopScreen

            before, self._shop = self._shop, ShopScreen(frame, {})
            if before is not None:
                self._shop.go_on_from(before)
            return self._shop

        frame.add_screen("shop", QCoreApplication.translate("TopBar", "Coupon shop"), make)

    def _speak_anew(self) -> None:
        """Make everything anew in another language; what lies on the bench goes on there.

        Nearly all words are said when a widget is made: made anew, none can be forgotten.
        """
        from PySide6.QtWidgets import QLayout

        from trainer.guide.guiding import Guiding

        before, frame = self.screen, self.frame
        if before is None or frame is None:
            return
        shown, body = frame.shown_screen, self.window.takeCentralWidget()
        old = [child for child in self.window.children() if not isinstance(child, QLayout)]
        self.screen = self._make_screen(before.course.tray)
        self.screen.go_on_from(before)
        self.guiding = Guiding(self.screen.window, self.screen)
        self.screen.canvas.setFocus()
        if shown != "bench":
            self.screen.window.show_screen(shown)
        for child in (*old, body):
            if child is not None:
                child.deleteLater()

    def _hand_over(self, screen: BenchScreen, broken: TrayError | None) -> None:
        """Let the bench have what was done on the first paint, and what is being done."""
        from trainer.guide.guiding import Guiding

        self.screen = screen
        if self.frame is not None:
            self.guiding = Guiding(self.frame, screen)
        hands = self.hands
        if hands is not None:
            hands.pulled.connect(screen.pull)
            hands.let_go.connect(screen.hands.let_go)
            hands.picked.connect(screen.hands.pick)
            for gesture in hands.hand_over():
                screen.catch_up(gesture)
        if hands is not None and hands.holding:
            hands.freed.connect(lambda: self._settle(broken))
        else:
            self._settle(broken)

    def _settle(self, broken: TrayError | None) -> None:
        """Say what has to be said first, now that no hand is on a leaf."""
        self.first.deleteLater()
        if broken is not None:
            self._say_broken(broken)
        elif self.frame is not None and not self._settings.first_start_seen:
            self.frame.show_first_start()
        elif self.guiding is not None:
            self.guiding.offer()

    def _open(self, path: Path) -> None:
        """Open another tray; a broken one is refused whole, and says why."""
        from exercises.tray import TrayError, load_tray

        try:
            tray = load_tray(path)
        except TrayError as error:
            self._say_broken(error)
            return
        if self.screen is not None and self.frame is not None:
            self.screen.open_tray(tray)
            self.frame.change_settings(self.frame.settings.with_recent(path.absolute()))

    def _say_broken(self, error: TrayError) -> None:
        from trainer.fault_words import fault_words
        from trainer.notices import FaultRow

        rows = [FaultRow(fault.pointer, *fault_words(fault)) for fault in error.faults]
        if self.frame is not None:
            self.frame.show_faults(error.faults[0].file if error.faults else "", rows)

    def _keep_settings(self) -> None:
        from PySide6.QtCore import QTimer

        if self.frame is None:
            return
        save_settings(self._places.settings, self.frame.settings)
        if self._speech is not None and self._speech.speak(self.frame.settings.language):
            # Not from within the menu that it was chosen in.
            QTimer.singleShot(0, self._speak_anew)

    def _unforeseen(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Tell of an error that nobody foresaw, on the terminal and in the window."""
        sys.__excepthook__(kind, error, trace)
        if issubclass(kind, KeyboardInterrupt):
            self._app.quit()
        elif self.frame is not None:
            self.frame.show_unforeseen(kind, error, trace)
        else:
            # Before the frame there is nothing that could be used: say it on the terminal, and end.
            self._app.exit(1)
