"""Importing late: the window is painted first, what it needs is loaded after.

Qt alone takes most of the time that a start may take. So a bare window is shown with a stored
picture of the first coupon; the core and the bench come in after its first paint. Commands come in
by `trainer.late_commands`, so that they never load Qt, nor the window them.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from trainer.assets import asset
from trainer.placement import USUAL
from trainer.settings import read_settings, save_settings
from trainer.standing import Standing
from trainer.start import (
    StartError,
    check_platform_libraries,
    explain_missing_library,
    explained,
)
from trainer.swift_imports import swift_imports

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication, QWidget

    from exercises.file_faults import TrayError
    from exercises.tray import Tray
    from trainer.bench.layout import BenchLayout
    from trainer.bench.panels import BenchPanels
    from trainer.bench.screen import BenchScreen
    from trainer.crash import Session
    from trainer.drill.drilling import Drilling
    from trainer.farewell import Farewell
    from trainer.first_hands import FirstHands
    from trainer.guide.guiding import Guiding
    from trainer.language import Speech
    from trainer.loading import Loading
    from trainer.logbook.keeping import Keeping
    from trainer.logbook_opener import LogbookOpener
    from trainer.records import Records
    from trainer.tray_opener import TrayOpener
    from trainer.unforeseen import Trouble
    from trainer.window import WindowFrame

__all__ = ["open_window", "shipped_tray"]


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
    from trainer.crash import Session
    from trainer.places import NAME, places

    session = Session(places().running, f"Toe & Throat; Python {sys.version}; {sys.platform}")
    session.begin()
    try:
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
        return _run(_Opening(app, tray, session))
    finally:
        session.end()


def _run(opening: _Opening) -> int:
    """Show the window until it is closed."""
    opening.keep_on_screen()
    opening.show()
    try:
        code = opening.app.exec()
    finally:
        opening.finish()
    if opening.hindrance is not None:
        raise opening.hindrance
    return code


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
    session
        The file of this program that runs, if there is one.
    """

    def __init__(
        self, app: QApplication, tray: Path | None, session: Session | None = None
    ) -> None:
        from PySide6.QtCore import QLocale

        from trainer.first_paint import FirstPaint, MainWindow
        from trainer.language import language_for
        from trainer.places import move_in, old_places, places
        from trainer.unforeseen import Unforeseen

        self.app = app
        self.hindrance: StartError | None = None  # what the core can't be loaded for
        self._tray = tray
        self._session = session
        self.settled = False  # whether all is there, and what comes first has been said
        self._farewell: Farewell | None = None
        self._places = places()
        move_in(old_places(), self._places)
        self._unforeseen = Unforeseen(self._places.reports, self._about, session)
        self._unforeseen.happened.connect(self._tell)
        self._unforeseen.interrupted.connect(app.quit)
        self._kept = read_settings(self._places.settings)
        self._settings = self._kept.settings
        self.window = MainWindow()
        self.window.setWindowTitle("Toe & Throat")
        self.window.resize(*USUAL)
        self._standing = Standing(app, self.window, self._settings.placement)
        look = self._likely_look()
        language = language_for(self._settings.language, QLocale.system().name())
        self.first = FirstPaint(
            asset("stills"), look, self.window, pictured=tray is None, language=language
        )
        self.hands: FirstHands | None = None
        self._loading: Loading[_Loaded] | None = None
        self.frame: WindowFrame | None = None
        self.screen: BenchScreen | None = None
        self.guiding: Guiding | None = None
        self._speech: Speech | None = None
        self._screens: dict[str, QWidget] = {}
        self._opener: TrayOpener | None = None
        self._logbook: LogbookOpener | None = None
        self._drilling: Drilling | None = None

    def _likely_look(self) -> str:
        """Light or dark, as chosen or as the system's colours are.

        Asking for the scheme itself loads a part of Qt that takes longer than the first paint.
        """
        if self._settings.appearance != "system":
            return self._settings.appearance
        palette = self.app.palette()
        behind, before = palette.window().color(), palette.windowText().color()
        return "dark" if behind.lightness() < before.lightness() else "light"

    def _look(self) -> str:
        """Light or dark, as chosen or as the system has it."""
        if self._settings.appearance != "system":
            return self._settings.appearance
        scheme = self.app.styleHints().colorScheme()
        return "dark" if scheme == type(scheme).Dark else "light"

    def keep_on_screen(self) -> None:
        """Let the window stand where it stood, if it fits there, and on a screen in any case."""
        self._standing.settle()

    def show(self) -> None:
        """Show the window; once its first paint is on the screen, load the rest."""
        from PySide6.QtCore import QTimer

        def painted() -> None:
            self.first.painted.disconnect(painted)
            # One turn of the loop for the paint to be sent off, then one to begin.
            QTimer.singleShot(0, lambda: QTimer.singleShot(0, self._begin))

        self._unforeseen.listen()
        self.first.painted.connect(painted)
        self._standing.show()

    def _begin(self) -> None:
        """Let leaves be taken, and load the rest beside that."""
        from trainer.first_hands import FirstHands
        from trainer.loading import Loading

        self._standing.clear_frame()
        self._unforeseen.listen_to_qt()
        look = self._look()
        if look != self.first.look:
            self.first.wear(look)
        self.hands = FirstHands(self.first, self.window)
        self._loading = Loading(self._load)
        self._loading.over.connect(self._fill)
        self._loading.start()

    def _listen_for_the_end(self) -> None:
        """Hear when the system or a terminal asks for the end, as a program of its own."""
        from trainer.farewell import Farewell

        if self._session is None:
            return
        self._session.note(self._about())
        self._farewell = Farewell(lambda: self.frame)
        self._farewell.asked.connect(self.app.quit)
        self._farewell.listen()

    def finish(self) -> None:
        """Keep how the window was left, and wait for what may still be loading behind it."""
        settings = self._settings if self.frame is None else self.frame.settings
        stands = replace(settings, placement=self._standing.now())
        if stands != settings:
            save_settings(self._places.settings, stands)
        if self._loading is not None:
            self._loading.wait()
        if self._opener is not None:
            self._opener.wait()
        if self._logbook is not None:
            self._logbook.end()
        self._unforeseen.stop()
        if self._farewell is not None:
            self._farewell.stop()

    def _load(self) -> _Loaded:
        """Load the core and the bench's modules, and open the tray: nothing of the window's."""
        with explained(), swift_imports():
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
        from trainer.language import Speech
        from trainer.turns import in_turns

        if self._loading is None:
            return
        try:
            loaded = self._loading.result
        except StartError as error:
            self._say_hindrance(error)
            return
        # Before any widget: each says its words once, when it is made.
        self._speech = Speech(self.app)
        self._speech.speak(self._settings.language)
        in_turns(self._filling(loaded))

    def _filling(self, loaded: _Loaded) -> Iterator[None]:
        """Fill it, a part in each turn; what is placed in one is laid out by the next."""
        from trainer.bench.panels import BenchPanels
        from trainer.look.fonts import load_fonts

        load_fonts()
        yield
        frame, bench = self._make_frame()
        self.first.raise_()
        yield
        yield from (panels := BenchPanels(bench))
        screen = self._make_bench(frame, bench, loaded.tray, panels)
        self.first.raise_()
        screen.canvas.setFocus()
        # For the parts to find their places.
        yield
        self._hand_over(screen, loaded.broken)

    def _say_hindrance(self, error: StartError) -> None:
        """Say what the core can't be loaded for, and end the program."""
        from trainer.notices import Notice

        self.hindrance = error
        first, _, more = str(error).partition("\n")
        notice = Notice(first, more, self.window)
        notice.finish()
        notice.finished.connect(lambda _: self.app.exit(2))
        notice.open()

    def _make_frame(self) -> tuple[WindowFrame, BenchLayout]:
        """Make the frame and an empty bench in it, in the language that is spoken."""
        from trainer.bench.layout import BenchLayout
        from trainer.canvas.canvas import Canvas
        from trainer.window import WindowFrame

        bench = BenchLayout(Canvas())
        settings = self._settings if self.frame is None else self.frame.settings
        self.frame = WindowFrame(self.window, settings, bench)
        return self.frame, bench

    def _make_bench(
        self, frame: WindowFrame, bench: BenchLayout, tray: Tray, panels: BenchPanels | None = None
    ) -> BenchScreen:
        """Make what stands on the bench, and let the frame have what it asks for."""
        from PySide6.QtCore import QCoreApplication

        from trainer.bench.screen import BenchScreen
        from trainer.bench.trying import Trying
        from trainer.logbook_opener import LogbookOpener
        from trainer.records import Records
        from trainer.tray_opener import TrayOpener

        if self._logbook is None:
            first = QCoreApplication.translate("Logbook", "Learner 1")
            load = partial(self._load_logbook, first=first)
            self._logbook = LogbookOpener(Records(self._places.calls), load)
        screen = BenchScreen(frame, bench, tray, self._logbook.relay, panels)
        Trying(frame, screen)
        self._opener = TrayOpener(frame)
        self._opener.opened.connect(self._lay_out)
        frame.tray_asked.connect(self._opener.open)
        frame.settings_changed.connect(self._keep_settings)
        frame.drill_asked.connect(self._drill)
        self._drilling = None
        bench.setFocusProxy(bench.canvas)
        self._add_screens(frame, self._logbook)
        self._logbook.serve(frame.settings.server)
        return screen

    def _load_logbook(self, aside: Records, first: str) -> Keeping:
        from trainer.screens import load_logbook

        with explained(), swift_imports():
            return load_logbook(self._places.logbook, aside, self._settings.learner, first)

    def _keeping(self) -> Keeping:
        """The logbook's keeper, waited for if need be."""
        assert self._logbook is not None
        return self._logbook.keeping

    def _drill(self) -> None:
        """Ask what a drill is to be about."""
        from trainer.drill.drilling import Drilling

        if self.frame is not None and self.screen is not None:
            if self._drilling is None:
                self._drilling = Drilling(self.frame, self.screen, self._keeping)
            self._drilling.ask()

    def _add_screens(self, frame: WindowFrame, books: LogbookOpener) -> None:
        """Let each screen be shown; nothing of it is loaded before that."""
        from trainer.screens import screens

        for key, title, make in screens(books):
            action = frame.add_screen(key, title, partial(self._made_screen, frame, key, make))
            if key == "reference":
                frame.help_menu.insertAction(frame.keys_action, action)

    def _made_screen(
        self, frame: WindowFrame, key: str, make: Callable[[WindowFrame], QWidget]
    ) -> QWidget:
        """Make a screen; after a change of language it goes on with what the last one had."""
        from trainer.screen_kinds import GoesOn

        before, made = self._screens.get(key), make(frame)
        if before is not None and isinstance(made, GoesOn):
            made.go_on_from(before)
        self._screens[key] = made
        return made

    def _speak_anew(self) -> None:
        """Make all anew in another language, since words are said once; the bench goes on."""
        from PySide6.QtWidgets import QLayout

        from trainer.guide.guiding import Guiding

        before, frame = self.screen, self.frame
        if before is None or frame is None:
            return
        if self._opener is not None:
            self._opener.wait()
        shown, body = frame.shown_screen, self.window.takeCentralWidget()
        old = [child for child in self.window.children() if not isinstance(child, QLayout)]
        self.screen = self._make_bench(*self._make_frame(), before.course.tray)
        self.screen.go_on_from(before)
        self.guiding = Guiding(self.screen.window, self.screen)
        for saying in frame.band.said:
            self.screen.window.band.say(saying)
        # At once: what they go on with is about to be gone.
        for key in self._screens:
            self.screen.window.make_screen(key)
        self.screen.canvas.setFocus()
        if shown != "bench":
            self.screen.window.show_screen(shown)
        for child in (*old, body):
            if child is not None:
                child.deleteLater()

    def _hand_over(self, screen: BenchScreen, broken: TrayError | None) -> None:
        """Let the bench have what was done on the first paint, and what is being done."""
        from trainer.guide.guiding import Guiding
        from trainer.turns import in_turns

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
            hands.freed.connect(lambda: in_turns(self._settling(broken)))
        else:
            in_turns(self._settling(broken))

    def _settling(self, broken: TrayError | None) -> Iterator[None]:
        """Say what has to be said first, now that no hand is on a leaf."""
        from trainer.afterwards import say_broken, say_what_was
        from trainer.look.program_icon import program_icon

        # A press that is already on its way is the bench's.
        self.first.hide()
        self.first.deleteLater()
        yield
        self.app.setWindowIcon(program_icon())
        self._listen_for_the_end()
        yield
        if self.frame is None:
            return
        if self._logbook is not None:
            self._logbook.begin_soon()
        say_what_was(self.frame, self._kept, self._places)
        if broken is not None:
            say_broken(self.frame, broken, self._tray)
        elif not self._settings.first_start_seen:
            self.frame.show_first_start()
        elif self.guiding is not None:
            self.guiding.offer()
        self.settled = True

    def _lay_out(self, tray: Tray, path: Path) -> None:
        """Lay out another tray, and remember it."""
        if self.screen is not None and self.frame is not None:
            self.screen.open_tray(tray)
            self.frame.show_screen("bench")
            self.frame.change_settings(self.frame.settings.with_recent(path.absolute()))

    def _keep_settings(self) -> None:
        from PySide6.QtCore import QTimer

        if self.frame is None:
            return
        save_settings(self._places.settings, self.frame.settings)
        if self._speech is not None and self._speech.speak(self.frame.settings.language):
            # Not from within the menu that it was chosen in.
            QTimer.singleShot(0, self._speak_anew)

    def _about(self) -> str:
        from trainer.about import about_words

        return about_words()

    def _tell(self, trouble: Trouble) -> None:
        """Say that something went wrong; before the bench there is nothing that could go on."""
        from trainer.notices import UnforeseenDialog

        if self.frame is not None and self.screen is not None:
            self.frame.show_unforeseen(trouble)
            return
        dialog = UnforeseenDialog(trouble, self.window, can_go_on=False)
        dialog.quit_asked.connect(lambda: self.app.exit(1))
        dialog.open()
