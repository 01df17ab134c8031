"""Over the composer: the sitting's file, undo and redo, and the way to the bench."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeySequence, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QMenu, QPushButton, QSizePolicy, QWidget

from trainer.history import History
from trainer.recent_menu import RecentMenu
from trainer.sittings.draft import Draft
from trainer.sittings.words import gesture_word

__all__ = ["ComposeBar"]


class ComposeBar(QFrame):
    """Buttons, and what is sealed.

    Signals
    -------
    asked(name)
        ``new``, ``open``, ``seal``, ``seal again``, ``undo``, ``redo``, ``try``.
    recent_chosen(path), recent_missed(path), recent_cleared()
        From the menu of sittings that were composed last.
    """

    asked = Signal(str)
    recent_chosen = Signal(Path)
    recent_missed = Signal(Path)
    recent_cleared = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 5, 8, 5)
        row.setSpacing(6)
        self.file = QPushButton(self.tr("Sitting"))
        self.file.setProperty("kind", "segment")
        self.file.setMinimumHeight(28)
        self.file.setMenu(self._menu())
        self.state = QLabel()
        self.state.setProperty("tone", "quiet")
        self.state.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.undo = self._button(self.tr("Undo"), "undo", "Ctrl+Z")
        self.redo = self._button(self.tr("Redo"), "redo", "Ctrl+Y")
        self.trial = self._button(self.tr("Try it"), "try", "Ctrl+B")
        row.addWidget(self.file)
        row.addWidget(self.state, 1)
        for button in (self.undo, self.redo, self.trial):
            row.addWidget(button)
        self._words = ""

    def _menu(self) -> QMenu:
        menu = QMenu(self)
        native = QKeySequence.SequenceFormat.NativeText
        self.actions_by_name = {}
        for words, name, keys in (
            (self.tr("&New"), "new", "Ctrl+N"),
            (self.tr("&Open a sealed sitting..."), "open", "Ctrl+Shift+O"),
            (self.tr("&Seal again, same file and passphrase"), "seal again", "Ctrl+S"),
            (self.tr("Seal and save &as..."), "seal", "Ctrl+Shift+S"),
        ):
            action = menu.addAction(f"{words}\t{QKeySequence(keys).toString(native)}")
            action.triggered.connect(lambda _=False, name=name: self.asked.emit(name))
            self.actions_by_name[name] = action
        self.recent = RecentMenu(self.tr("&Recent sittings"), menu)
        self.recent.chosen.connect(self.recent_chosen)
        self.recent.missed.connect(self.recent_missed)
        self.recent.cleared.connect(self.recent_cleared)
        menu.insertMenu(self.actions_by_name["seal again"], self.recent)
        return menu

    def _button(self, words: str, name: str, keys: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setToolTip(f"{words} ({keys})")
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def show_state(
        self, history: History[Draft], file: str, *, dirty: bool, busy: bool, ready: bool
    ) -> None:
        """Show what can be undone, and whether the sitting is sealed."""
        for button, step, words in (
            (self.undo, history.past, self.tr("Undo: {what} (Ctrl+Z)")),
            (self.redo, history.future, self.tr("Redo: {what} (Ctrl+Y)")),
        ):
            button.setEnabled(step is not None)
            what = gesture_word(step.what) if step is not None else ""
            button.setToolTip(words.format(what=what) if step is not None else button.text())
            button.setAccessibleDescription(what)
        self.trial.setEnabled(ready)
        self.actions_by_name["seal again"].setEnabled(bool(file) and dirty)
        name = file or self.tr("Not sealed yet")
        if busy:
            self._words = self.tr("Sealing...")
        elif file:
            state = self.tr("changed since") if dirty else self.tr("sealed")
            self._words = f"{name} \u00b7 {state}"
        else:
            self._words = name
        self._fit()

    def minimumSizeHint(self) -> QSize:
        """No narrower than the buttons: the file's name is what gives way."""
        buttons = (self.file, self.undo, self.redo, self.trial)
        wide = sum(button.sizeHint().width() + 6 for button in buttons) + 22
        return QSize(wide, super().minimumSizeHint().height())

    def _fit(self) -> None:
        """Show as much of the file's name as there is room for."""
        room = max(0, self.state.width() - 4)
        metrics = self.state.fontMetrics()
        self.state.setText(metrics.elidedText(self._words, Qt.TextElideMode.ElideMiddle, room))
        self.state.setToolTip(self._words)
        self.state.setAccessibleName(self._words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See anew how much of the name fits."""
        super().resizeEvent(event)
        self._fit()
