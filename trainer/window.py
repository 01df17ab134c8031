"""The frame around every screen: bar, menus, themes, dialogs, files that are dropped on it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Final, TypeVar

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import (
    QAction,
    QActionGroup,
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
)
from PySide6.QtWidgets import (
    QApplication,
    QFileDialog,
    QMainWindow,
    QMenu,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.rules import RuleSet
from trainer.about import AboutDialog
from trainer.band import Band
from trainer.dropping import dropped_file
from trainer.first_start import FirstStartCard
from trainer.key_table import KeyGroup
from trainer.landing import EnterPresses
from trainer.language import LANGUAGES
from trainer.look.theme import DARK, LIGHT, Theme, apply, theme_for
from trainer.missing_tray import MissingTray
from trainer.notices import FaultRow, FaultsDialog, KeysDialog, Notice, UnforeseenDialog
from trainer.open_trays import OpenTrays
from trainer.places import places
from trainer.recent_menu import TRAY_SUFFIX, RecentMenu
from trainer.screen_kinds import LooksUp, OpensTrays, opened_by_its_screen
from trainer.settings import Appearance, LengthUnit, Settings
from trainer.sheet import screen_sheet
from trainer.shipped_menu import ShippedMenu
from trainer.spoken_buttons import speak_buttons
from trainer.top_bar import TopBar
from trainer.unforeseen import Trouble

__all__ = ["WindowFrame"]

Value = TypeVar("Value")

_NUMBERS: Final = {"corners": 2, "reference": 3, "shop": 4, "logbook": 5, "sittings": 6}
"""With Ctrl, the key of each screen, whichever of them there are; the bench's is 1."""


@dataclass(slots=True)
class _Screen:
    """A screen by its key: how it is made, and what was made."""

    key: str
    make: Callable[[], QWidget] | None
    widget: QWidget | None


class WindowFrame(QObject):
    """Fills a window that has been shown already, and speaks for it.

    Parameters
    ----------
    window
        Gets the bar and the screen, in place of what it had.
    settings
        Preferences to begin with.
    screen
        What stands below the bar.

    Signals
    -------
    tray_asked
        A file to open.
    coupon_asked
        The place in the tray of a coupon to lay out.
    trial_asked(tray, index)
        A coupon is to be tried on the bench, on no record.
    settings_changed
        There are preferences to keep and to show from now on.
    theme_changed
        Another theme is on.
    drill_asked
        A drill is to begin.
    screen_shown(key)
        Another screen is shown.
    bench_lent
        Somebody else takes the bench: whoever has it gives it back, and whoever speaks there ends.
    ending
        The system or a terminal asks for the end: nobody may be asked any more.
    """

    tray_asked = Signal(Path)
    coupon_asked = Signal(int)
    trial_asked = Signal(object, int)
    settings_changed = Signal()
    theme_changed = Signal()
    drill_asked = Signal()
    screen_shown = Signal(str)
    bench_lent = Signal()
    ending = Signal()

    def __init__(self, window: QMainWindow, settings: Settings, screen: QWidget) -> None:
        super().__init__(window)
        self.window = window
        self.settings = settings
        self.theme: Theme = LIGHT
        self.shop_rules: tuple[RuleSet, ...] = ()
        """Rule sets from files beside the tray that is open."""
        self.open_trays: OpenTrays = {}  # a screen that holds one adds it
        self.discreet = False
        """Whether nothing is shown of what a report of trouble says."""
        self._dialogs: list[Notice | FirstStartCard] = []
        self._keys: list[tuple[str, Callable[[], tuple[KeyGroup, ...]]]] = []
        # Before any widget: a font that comes later doesn't reach those that have one of their own.
        self.dress()
        speak_buttons()
        self.bar = TopBar()
        self.bar.coupon_asked.connect(self.coupon_asked)
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        self.band = Band()
        column.addWidget(self.band)
        self.screens = QStackedWidget()
        self.screens.addWidget(screen)
        self._screens: list[_Screen] = [_Screen("bench", None, screen)]
        self.bar.screen_asked.connect(lambda at: self.show_screen(self._screens[at].key))
        column.addWidget(self.screens, 1)
        window.setWindowTitle("Toe & Throat")
        window.setCentralWidget(body)
        window.setAcceptDrops(True)
        window.installEventFilter(self)
        EnterPresses(window)
        self._add_menus()

    def _application(self) -> QApplication:
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        return app

    def dress(self) -> None:
        """Put on the theme that the settings and the system ask for."""
        app = self._application()
        wanted = theme_for(app)
        chosen = {"light": LIGHT, "dark": DARK}.get(self.settings.appearance, wanted)
        less = wanted.reduced_motion or self.settings.less_motion
        theme = replace(chosen, reduced_motion=less)
        self.theme = theme
        apply(app, theme)
        self.window.setStyleSheet(screen_sheet(theme))
        self.theme_changed.emit()

    def change_settings(self, settings: Settings) -> None:
        """Replace the preferences."""
        before, self.settings = self.settings, settings
        looks = (before.appearance, before.less_motion) != (
            settings.appearance,
            settings.less_motion,
        )
        if looks:
            self.dress()
        self.recent_menu.set_recent(settings.recent)
        if before != settings:
            self.settings_changed.emit()

    # Screens

    def add_screen(self, key: str, title: str, make: Callable[[], QWidget]) -> QAction:
        """Add a screen: a tab in the bar, and Ctrl with its number. It is made when first shown.

        Parameters
        ----------
        key
            Its name, for `show_screen`.
        title
            What the tab says.
        make
            Makes it.

        Returns
        -------
        QAction
            Shows it: for a menu.
        """
        self._screens.append(_Screen(key, make, None))
        number = _NUMBERS.get(key, len(self._screens))
        keys = QKeySequence(f"Ctrl+{number}")
        self.bar.add_tab(title, keys.toString(QKeySequence.SequenceFormat.NativeText))
        if len(self._screens) == 2:
            self._add_screen_key("bench", self.bar.tabs[0].text(), QKeySequence("Ctrl+1"))
        return self._add_screen_key(key, title, keys)

    def _add_screen_key(self, key: str, title: str, keys: QKeySequence) -> QAction:
        action = QAction(title, self.window)
        action.setShortcut(keys)
        action.triggered.connect(lambda: self.show_screen(key))
        self.window.addAction(action)
        return action

    def look_up(self, entry: str) -> None:
        """Show an entry of the reference; Esc there leads back to the screen that is shown."""
        came_from = self.shown_screen
        reference: object = self.make_screen("reference")
        self.show_screen("reference")
        if isinstance(reference, LooksUp):
            reference.look_up(entry, came_from)

    def make_screen(self, key: str) -> QWidget | None:
        """Return a screen; make it, unless that has been done."""
        screen = self._screens[self._place(key)]
        if screen.widget is None and screen.make is not None:
            screen.widget = screen.make()
            self.screens.addWidget(screen.widget)
        return screen.widget

    def has_screen(self, key: str) -> bool:
        """Whether there is a screen of that key."""
        return any(screen.key == key for screen in self._screens)

    def _place(self, key: str) -> int:
        return next(at for at, screen in enumerate(self._screens) if screen.key == key)

    def show_screen(self, key: str) -> None:
        """Show a screen; make it, if it is shown for the first time."""
        at, widget = self._place(key), self.make_screen(key)
        if widget is not None:
            self.screens.setCurrentWidget(widget)
            widget.setFocus()
        self.bar.show_tab(at)
        self.bar.show_coupons(at == 0)
        self.screen_shown.emit(key)

    @property
    def shown_screen(self) -> str:
        """The key of the screen that is shown."""
        shown = self.screens.currentWidget()
        return next(screen.key for screen in self._screens if screen.widget is shown)

    # Menus

    def _add_menus(self) -> None:
        self._add_file_menu(self.bar.menus.addMenu(self.tr("&File")))
        self.view_menu = self.bar.menus.addMenu(self.tr("&View"))
        self._add_view_menu(self.view_menu)
        self.help_menu = self.bar.menus.addMenu(self.tr("&Help"))
        self._add_help_menu(self.help_menu)
        hints = self._application().styleHints()
        hints.colorSchemeChanged.connect(self.dress)

    def _action(
        self, menu: QMenu, words: str, do: Callable[[], object], keys: QKeySequence | None = None
    ) -> QAction:
        action = QAction(words, self.window)
        if keys is not None:
            action.setShortcut(keys)
        action.triggered.connect(lambda _=False: do())
        menu.addAction(action)
        return action

    def _add_file_menu(self, menu: QMenu) -> None:
        self.open_action = self._action(
            menu,
            self.tr("&Open tray..."),
            self.ask_for_tray,
            QKeySequence(QKeySequence.StandardKey.Open),
        )
        self.shipped_menu = ShippedMenu(self.tr("&Shipped trays"), menu)
        self.shipped_menu.chosen.connect(self.open_tray)
        menu.addMenu(self.shipped_menu)
        self.recent_menu = RecentMenu(self.tr("&Recent trays"), menu)
        self.recent_menu.set_recent(self.settings.recent)
        self.recent_menu.chosen.connect(self.open_tray)
        self.recent_menu.missed.connect(self._miss_tray)
        self.recent_menu.cleared.connect(
            lambda: self.change_settings(self.settings.without_recent())
        )
        menu.addMenu(self.recent_menu)
        menu.addSeparator()
        self.drill_action = self._action(
            menu, self.tr("&Drill..."), self.drill_asked.emit, QKeySequence("Ctrl+R")
        )
        menu.addSeparator()
        self.quit_action = self._action(
            menu, self.tr("&Quit"), self.window.close, QKeySequence(QKeySequence.StandardKey.Quit)
        )

    def _add_view_menu(self, menu: QMenu) -> None:
        looks: tuple[tuple[str, Appearance], ...] = (
            (self.tr("As the &system has it"), "system"),
            (self.tr("&Light"), "light"),
            (self.tr("&Dark"), "dark"),
        )
        self.look_actions = self._one_of(
            menu,
            looks,
            self.settings.appearance,
            lambda look: self.change_settings(replace(self.settings, appearance=look)),
        )
        self.motion_action = self._action(menu, self.tr("Less m&otion"), self._switch_motion)
        self.motion_action.setCheckable(True)
        self.motion_action.setChecked(self.theme.reduced_motion)
        # What the system asks for is not ours to refuse.
        asked = theme_for(self._application()).reduced_motion
        self.motion_action.setEnabled(not asked)
        menu.addSeparator()
        units: tuple[tuple[str, LengthUnit | None], ...] = (
            (self.tr("Lengths &as the drawing has them"), None),
            (self.tr("Lengths in &millimetres"), "mm"),
            (self.tr("Lengths in &inches"), "in"),
        )
        self.unit_actions = self._one_of(
            menu,
            units,
            self.settings.unit,
            lambda unit: self.change_settings(replace(self.settings, unit=unit)),
        )
        menu.addSeparator()
        self.language_actions = self._add_languages(menu.addMenu(self.tr("Lan&guage")))

    def _add_languages(self, menu: QMenu) -> dict[str | None, QAction]:
        """Each language in its own words, so that whoever took a wrong one finds back."""
        languages: list[tuple[str, str | None]] = [(self.tr("As the &system has it"), None)]
        languages += [(name, tag) for tag, name in LANGUAGES.items()]
        return self._one_of(
            menu,
            languages,
            self.settings.language,
            lambda tag: self.change_settings(replace(self.settings, language=tag)),
        )

    def _switch_motion(self) -> None:
        less = self.motion_action.isChecked()
        self.change_settings(replace(self.settings, less_motion=less))

    def _one_of(
        self,
        menu: QMenu,
        choices: Sequence[tuple[str, Value]],
        now: Value,
        choose: Callable[[Value], None],
    ) -> dict[Value, QAction]:
        group = QActionGroup(self)
        actions: dict[Value, QAction] = {}
        for words, value in choices:
            action = self._action(menu, words, partial(choose, value))
            action.setCheckable(True)
            action.setChecked(value == now)
            group.addAction(action)
            actions[value] = action
        return actions

    def _add_help_menu(self, menu: QMenu) -> None:
        self.card_action = self._action(
            menu, self.tr("&Before you begin..."), self.show_first_start
        )
        self.keys_action = self._action(
            menu, self.tr("&Keys..."), self.show_keys, QKeySequence(Qt.Key.Key_F1)
        )
        self.about_action = self._action(
            menu, self.tr("&About, and where my files are..."), self.show_about
        )

    def _show(self, dialog: Notice | FirstStartCard) -> None:
        """Open a dialog without a loop of its own, and keep it while it is open."""
        self._dialogs.append(dialog)
        dialog.finished.connect(lambda _: self._dialogs.remove(dialog))
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def show_dialog(self, dialog: Notice) -> None:
        """Show a screen's own dialog, as every other one is shown."""
        self._show(dialog)

    def show_first_start(self) -> None:
        """Show what this program is and is not; read once, it isn't shown by itself again."""
        card = FirstStartCard(self.window)
        card.accepted.connect(
            lambda: self.change_settings(replace(self.settings, first_start_seen=True))
        )
        self._show(card)

    def show_keys(self) -> None:
        """Show which key does what."""
        self._show(KeysDialog(self.key_sheet(), self.window))

    def add_keys(self, screen: str, groups: Callable[[], tuple[KeyGroup, ...]]) -> None:
        """Take the keys of a screen into the sheet; they are worded when it is opened."""
        self._keys.append((screen, groups))

    def key_sheet(self) -> list[tuple[str, tuple[KeyGroup, ...]]]:
        """All keys: of the screen shown, of the others, and those that hold everywhere."""
        shortcut = QKeySequence.SequenceFormat.NativeText
        rows = [
            (action.shortcut().toString(shortcut), action.text().replace("&", "").rstrip("."))
            for action in self.window.findChildren(QAction)
            if not action.shortcut().isEmpty()
        ]
        rows += [
            (self.tr("Tab"), self.tr("go on to the next control; with Shift back")),
            (self.tr("Alt"), self.tr("with a letter that is underlined: open that menu")),
        ]
        everywhere = KeyGroup(self.tr("Everywhere"), tuple(rows))
        shown = self.bar.tabs[self._place(self.shown_screen)].text()
        screens = sorted(self._keys, key=lambda each: not each[0].startswith(shown))
        return [*((screen, groups()) for screen, groups in screens), ("", (everywhere,))]

    def show_faults(self, file: str, faults: Sequence[FaultRow]) -> None:
        """Say why a file was not opened."""
        self._show(FaultsDialog(file, faults, self.window))

    def show_notice(self, title: str, text: str) -> None:
        """Say something that has to be read."""
        notice = Notice(title, text, self.window)
        notice.finish()
        self._show(notice)

    def show_unforeseen(self, trouble: Trouble) -> None:
        """Say that something went wrong and what to do; one at a time is enough."""
        if any(isinstance(dialog, UnforeseenDialog) for dialog in self._dialogs):
            return
        dialog = UnforeseenDialog(trouble, self.window, discreet=self.discreet)
        dialog.quit_asked.connect(self.window.close)
        self._show(dialog)

    def show_about(self) -> None:
        """Show the versions, and where all files lie."""
        self._show(AboutDialog(places(), self.window))

    @property
    def dialogs(self) -> tuple[Notice | FirstStartCard, ...]:
        """The dialogs that are open."""
        return tuple(self._dialogs)

    # Files

    def open_tray(self, path: Path) -> None:
        """Have a file opened: by the screen that it is for, by the one shown, or on the bench."""
        shown: object = self.screens.currentWidget()
        if opened_by_its_screen(self, path):
            return
        if isinstance(shown, OpensTrays):
            shown.open_path(path)
        else:
            self.tray_asked.emit(path)

    def ask_for_tray(self) -> None:
        """Let a tray be chosen."""
        name, _ = QFileDialog.getOpenFileName(
            self.window,
            self.tr("Open tray"),
            self.settings.folder("trays"),
            self.tr("Trays and sittings (*{suffix} *.sitting);;All files (*)").format(
                suffix=TRAY_SUFFIX
            ),
        )
        if name:
            folder = Path(name).parent
            self.change_settings(self.settings.with_folder("trays", folder))
            self.open_tray(Path(name))

    def _miss_tray(self, path: Path) -> None:
        """Say that a tray is gone; it may come back, so only who wants to forgets it."""
        notice = MissingTray(path, self.window)
        notice.forgotten.connect(
            lambda: self.change_settings(self.settings.without_recent(str(path)))
        )
        self._show(notice)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Hear what happens to the window: a file dragged over it or dropped, its end."""
        if isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            self._drop(event)
        elif isinstance(event, QDragEnterEvent) and dropped_file(event) is not None:
            event.acceptProposedAction()
        elif event.type() == QEvent.Type.Close:
            for dialog in self.dialogs:
                dialog.reject()
        else:
            return False
        return event.type() != QEvent.Type.Close

    def _drop(self, event: QDropEvent) -> None:
        """Open what was dropped, once the drop is over: the source must not wait for a dialog."""
        path = dropped_file(event)
        if path is not None:
            event.acceptProposedAction()
            QTimer.singleShot(0, self, lambda: self.open_tray(path))
