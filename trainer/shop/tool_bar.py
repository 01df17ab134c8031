"""Over the picture: the tray's file, undo and redo, and the way to the bench."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeySequence, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QMenu, QPushButton, QSizePolicy, QWidget

from trainer.shop.history import ShopHistory
from trainer.shop.words import gesture_word

__all__ = ["ToolBar"]

_TELLING: Final = 8
"""Letters of a file's name that still tell which one it is."""


class ToolBar(QFrame):
    """Buttons, and what is saved.

    Signals
    -------
    asked(name)
        ``new``, ``open``, ``save``, ``save as``, ``undo``, ``redo``, ``try``.
    dropped_focus
        The button that has the focus is about to be of no use.
    """

    asked = Signal(str)
    dropped_focus = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 5, 8, 5)
        row.setSpacing(6)
        self.file = QPushButton(self.tr("Tray file"))
        self.file.setProperty("kind", "segment")
        menu = QMenu(self)
        native = QKeySequence.SequenceFormat.NativeText
        for words, name, keys in (
            (self.tr("New"), "new", ""),
            (self.tr("Open..."), "open", "Ctrl+O"),
            (self.tr("Save"), "save", "Ctrl+S"),
            (self.tr("Save as..."), "save as", "Ctrl+Shift+S"),
        ):
            shown = f"{words}\t{QKeySequence(keys).toString(native)}" if keys else words
            action = menu.addAction(shown)
            action.triggered.connect(lambda _=False, name=name: self.asked.emit(name))
        self.file.setMenu(menu)
        self.save = self._button(self.tr("Save"), "save", "Ctrl+S")
        self.state = QLabel()
        self.state.setProperty("tone", "quiet")
        self.state.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.undo = self._button(self.tr("Undo"), "undo", "Ctrl+Z")
        self.redo = self._button(self.tr("Redo"), "redo", "Ctrl+Y")
        self.bench = self._button(self.tr("Try on the bench"), "try", "Ctrl+B")
        row.addWidget(self.file)
        row.addWidget(self.save)
        row.addWidget(self.state, 1)
        for button in (self.undo, self.redo, self.bench):
            row.addWidget(button)
        self._words, self._file, self._saved = "", "", ""

    def _button(self, words: str, name: str, keys: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setToolTip(f"{words} ({keys})")
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    def show_state(self, history: ShopHistory, file: str, *, dirty: bool) -> None:
        """Show what can be undone, and whether the tray is saved."""
        for button, step, words in (
            (self.undo, history.past, self.tr("Undo: {what} (Ctrl+Z)")),
            (self.redo, history.future, self.tr("Redo: {what} (Ctrl+Y)")),
        ):
            self._enable(button, step is not None)
            what = gesture_word(step.what) if step is not None else ""
            tip = words.format(what=what) if step is not None else button.text()
            if button.toolTip() != tip:
                button.setToolTip(tip)
                button.setAccessibleDescription(what)
        self._enable(self.save, dirty)
        name = file or self.tr("Not saved yet")
        saved = self.tr("changed") if dirty else self.tr("saved")
        self._file = name if file else ""
        self._saved = saved if file or dirty else name
        self._words = f"{name} \u00b7 {saved}" if file or dirty else name
        self._fit()

    def _enable(self, button: QPushButton, able: bool) -> None:
        """Qt would hand the focus to the next button, where Space does something else."""
        if not able and button.hasFocus():
            self.dropped_focus.emit()
        button.setEnabled(able)

    def minimumSizeHint(self) -> QSize:
        """No narrower than the buttons: the file's name is what gives way."""
        buttons = (self.file, self.save, self.undo, self.redo, self.bench)
        wide = sum(button.sizeHint().width() + 6 for button in buttons) + 22
        return QSize(wide, super().minimumSizeHint().height())

    def set_narrow(self, narrow: bool) -> None:
        """Say less where there is no room."""
        self.bench.setText(self.tr("Try") if narrow else self.tr("Try on the bench"))

    def _fit(self) -> None:
        """Show as much of the file's name as there is room for; first of all whether it is saved.

        What is left of the name must still say something.
        """
        metrics = self.state.fontMetrics()
        room = max(0, self.state.width() - 4)
        short = self._words
        if metrics.horizontalAdvance(short) > room:
            said = f" \u00b7 {self._saved}"
            left = room - metrics.horizontalAdvance(said)
            file = metrics.elidedText(self._file, Qt.TextElideMode.ElideMiddle, left)
            short = f"{file}{said}" if len(file) >= _TELLING else self._saved
            short = metrics.elidedText(short, Qt.TextElideMode.ElideRight, room)
        if self.state.text() != short:
            self.state.setText(short)
        self.state.setToolTip(self._words)
        self.state.setAccessibleName(self._words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See anew how much of the name fits."""
        super().resizeEvent(event)
        self._fit()
