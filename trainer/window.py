"""The window around every screen: bar, menus, themes, files that are dropped on it.

Only Qt and the look are loaded here, so that it can be painted at once; what the
screens need comes later and is handed in.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import Final, TypeVar

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import (
    QAction,
    QActionGroup,
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
)
from PySide6.QtWidgets import QApplication, QFileDialog, QMainWindow, QMenu, QVBoxLayout, QWidget

from trainer.first_start import FirstStartCard
from trainer.look.theme import DARK, LIGHT, Theme, apply, theme_for
from trainer.notices import FaultRow, FaultsDialog, KeysDialog, Notice, UnforeseenDialog
from trainer.settings import Appearance, LengthUnit, Settings
from trainer.sheet import screen_sheet
from trainer.top_bar import TopBar

__all__ = ["MainWindow"]

TRAY_SUFFIX: Final = ".tray.json"

Value = TypeVar("Value")


class MainWindow(QMainWindow):
    """The one window.

    Parameters
    ----------
    settings
        Preferences to begin with.
    screen
        What fills it below the bar.

    Signals
    -------
    tray_asked
        A file to open.
    coupon_asked
        The place in the tray of a coupon to lay out.
    settings_changed
        Preferences to keep and to show from now on.
    theme_changed
        The theme that is now on.
    """

    tray_asked = Signal(Path)
    coupon_asked = Signal(int)
    settings_changed = Signal()
    theme_changed = Signal()

    def __init__(self, settings: Settings, screen: QWidget) -> None:
        super().__init__()
        self.settings = settings
        self.theme: Theme = LIGHT
        self._dialogs: list[Notice | FirstStartCard] = []
        self.keys: Sequence[tuple[str, str]] = ()
        # Before any widget: a font that comes later doesn't reach those that have one of their own.
        self.dress()
        self.setWindowTitle("Toe & Throat")
        self.setAcceptDrops(True)
        self.bar = TopBar()
        self.bar.coupon_asked.connect(self.coupon_asked)
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        column.addWidget(screen, 1)
        self.setCentralWidget(body)
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
        theme = replace(chosen, reduced_motion=wanted.reduced_motion)
        self.theme = theme
        apply(app, theme)
        self.setStyleSheet(screen_sheet(theme))
        self.theme_changed.emit()

    def change_settings(self, settings: Settings) -> None:
        """Replace the preferences."""
        before, self.settings = self.settings, settings
        if before.appearance != settings.appearance:
            self.dress()
        if before != settings:
            self.settings_changed.emit()

    # Menus

    def _add_menus(self) -> None:
        self._add_file_menu(self.bar.menus.addMenu(self.tr("&File")))
        self.view_menu = self.bar.menus.addMenu(self.tr("&View"))
        self._add_view_menu(self.view_menu)
        self._add_help_menu(self.bar.menus.addMenu(self.tr("&Help")))
        hints = self._application().styleHints()
        hints.colorSchemeChanged.connect(self.dress)

    def _action(
        self, menu: QMenu, words: str, do: Callable[[], object], keys: QKeySequence | None = None
    ) -> QAction:
        action = QAction(words, self)
        if keys is not None:
            action.setShortcut(keys)
        action.triggered.connect(lambda _=False: do())
        menu.addAction(action)
        return action

    def _add_file_menu(self, menu: QMenu) -> None:
        self.open_action = self._action(
            menu, self.tr("&Open tray..."), self.ask_for_tray,
            QKeySequence(QKeySequence.StandardKey.Open),
        )
        menu.addSeparator()
        self.quit_action = self._action(
            menu, self.tr("&Quit"), self.close, QKeySequence(QKeySequence.StandardKey.Quit)
        )

    def _add_view_menu(self, menu: QMenu) -> None:
        looks: tuple[tuple[str, Appearance], ...] = (
            (self.tr("As the &system has it"), "system"),
            (self.tr("&Light"), "light"),
            (self.tr("&Dark"), "dark"),
        )
        self.look_actions = self._one_of(
            menu, looks, self.settings.appearance,
            lambda look: self.change_settings(replace(self.settings, appearance=look)),
        )
        menu.addSeparator()
        units: tuple[tuple[str, LengthUnit | None], ...] = (
            (self.tr("Lengths as the &drawing has them"), None),
            (self.tr("Lengths in &millimetres"), "mm"),
            (self.tr("Lengths in &inches"), "in"),
        )
        self.unit_actions = self._one_of(
            menu, units, self.settings.unit,
            lambda unit: self.change_settings(replace(self.settings, unit=unit)),
        )

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

    def _show(self, dialog: Notice | FirstStartCard) -> None:
        """Open a dialog without a loop of its own, and keep it while it is open."""
        self._dialogs.append(dialog)
        dialog.finished.connect(lambda _: self._dialogs.remove(dialog))
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def show_first_start(self) -> None:
        """Show what this program is and is not; read once, it isn't shown by itself again."""
        card = FirstStartCard(self)
        card.accepted.connect(
            lambda: self.change_settings(replace(self.settings, first_start_seen=True))
        )
        self._show(card)

    def show_keys(self) -> None:
        """Show which key does what."""
        self._show(KeysDialog(self.keys, self))

    def show_faults(self, file: str, faults: Sequence[FaultRow]) -> None:
        """Say why a file was not opened."""
        self._show(FaultsDialog(file, faults, self))

    def show_notice(self, title: str, text: str) -> None:
        """Say something that has to be read."""
        notice = Notice(title, text, self)
        notice.finish()
        self._show(notice)

    def show_unforeseen(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Say that something went wrong and what to do; one at a time is enough."""
        if not any(isinstance(dialog, UnforeseenDialog) for dialog in self._dialogs):
            self._show(UnforeseenDialog(kind, error, trace, self))

    @property
    def dialogs(self) -> tuple[Notice | FirstStartCard, ...]:
        """The dialogs that are open."""
        return tuple(self._dialogs)

    # Files

    def ask_for_tray(self) -> None:
        """Let a tray be chosen."""
        name, _ = QFileDialog.getOpenFileName(
            self,
            self.tr("Open tray"),
            "",
            self.tr("Trays (*{suffix});;All files (*)").format(suffix=TRAY_SUFFIX),
        )
        if name:
            self.tray_asked.emit(Path(name))

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """One local file may be dropped; whether it is a tray is found out then."""
        urls = event.mimeData().urls()
        if len(urls) == 1 and urls[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open what was dropped, once the drop is over: the source must not wait for a dialog."""
        path = Path(event.mimeData().urls()[0].toLocalFile())
        event.acceptProposedAction()
        QTimer.singleShot(0, self, lambda: self.tray_asked.emit(path))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close the dialogs along."""
        for dialog in self.dialogs:
            dialog.reject()
        super().closeEvent(event)
