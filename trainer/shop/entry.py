"""A field for a value: typed as a sum in either unit, or stepped by a click.

What is wrong is said under it, and what was typed stays there until it is right or taken back.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, Literal

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from geometry.lengths import Unit
from trainer.bench.translation import translate
from trainer.shop.expressions import EntryError, parse_angle, parse_number, parse_value
from trainer.shop.fields import begin_value
from trainer.shop.words import entry_words, said_value

__all__ = ["Entry", "Measure", "Take", "message_label"]

Measure = Literal["length", "angle", "share", "count", "text", "size"]
"""What a field is of; ``text`` is taken as it is typed, ``size`` is a callout's."""

Take = Callable[[str, object], str]
"""Takes a field's key and its value; returns what is wrong with it, or nothing."""

_STEPS: Final[dict[str, float]] = {
    "length": 0.1, "angle": 1.0, "share": 0.05, "count": 1.0,
}  # fmt: skip


def message_label() -> QLabel:
    """Return the label that says under a field what is wrong with what was typed."""
    label = QLabel()
    label.setProperty("tone", "wrong")
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.hide()
    return label


class Entry(QObject):
    """Label, field, steps and message of one value; `put` lays them into a grid.

    Parameters
    ----------
    key
        Which value.
    name
        What it is called.
    measure
        What it is of.
    take
        Takes what was entered.
    optional
        Whether there may be nothing: an empty field then.
    step
        What a step is; None is what is usual for the measure.
    begin
        Of a count that may be nothing: where the first step up from nothing leads.

    Signals
    -------
    settled()
        The end of a step.
    """

    settled = Signal()
    focused = Signal(str)

    def __init__(
        self,
        key: str,
        name: str,
        measure: Measure,
        take: Take,
        *,
        optional: bool = False,
        step: float | None = None,
        begin: float = 1.0,
    ) -> None:
        super().__init__()
        self.key, self.measure = key, measure
        self._take, self._optional = take, optional
        self._by, self._begin = step, begin
        self._value: object = None
        self._unit: Unit = "mm"
        self._shown = ""
        self._of = ""
        self._wrong: dict[str, tuple[str, str]] = {}
        self.label = QLabel(name)
        self.label.setProperty("tone", "quiet")
        self.label.setWordWrap(True)
        self.field = QLineEdit()
        self.field.setAccessibleName(name)
        self.field.setStyleSheet("padding: 2px 5px;")
        self.label.setBuddy(self.field)
        if optional:
            self.field.setPlaceholderText(translate("Shop", "none"))
        self.message = message_label()
        self._holder: QWidget = self.field
        self.steps: tuple[QPushButton, ...] = ()
        if measure in _STEPS:
            self.field.setAlignment(Qt.AlignmentFlag.AlignRight)
            self.steps = (
                self._button("\u2212", translate("Shop", "{name}: less").format(name=name), -1.0),
                self._button("+", translate("Shop", "{name}: more").format(name=name), 1.0),
            )
        self.field.editingFinished.connect(self._enter)
        self.field.installEventFilter(self)

    def _button(self, sign: str, name: str, way: float) -> QPushButton:
        button = QPushButton(sign)
        button.setProperty("kind", "small")
        button.setFixedSize(26, 26)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.setAutoRepeat(True)
        button.setAutoDefault(False)  # in a dialog, Enter is for what takes it
        button.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        button.clicked.connect(lambda: self._step(way))
        button.released.connect(lambda: None if button.isDown() else self.settled.emit())
        return button

    def put(self, grid: QGridLayout, row: int, column: int = 0) -> int:
        """Lay it into a grid, which has two rows of it from `row`; return the row after it."""
        if self.measure == "text" and self.key not in ("id", "callout.tail"):
            return self._put_wide(grid, row, column)
        grid.addWidget(self.label, row, column)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        line = QHBoxLayout(holder)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(4)
        if self.steps:
            line.addWidget(self.steps[0])
        line.addWidget(self.field, 1)
        if self.steps:
            line.addWidget(self.steps[1])
        grid.addWidget(holder, row, column + 1)
        grid.addWidget(self.message, row + 1, column, 1, 2)
        self._holder = holder
        return row + 2

    def _put_wide(self, grid: QGridLayout, row: int, column: int) -> int:
        """A text has all of the width, under its label."""
        self._holder = self.field
        grid.addWidget(self.label, row, column, 1, 2)
        grid.addWidget(self.field, row + 1, column, 1, 2)
        grid.addWidget(self.message, row + 2, column, 1, 2)
        return row + 3

    def set_visible(self, visible: bool) -> None:
        """Show it or not."""
        for widget in (self.label, self._holder):
            widget.setVisible(visible)
        self.message.setVisible(visible and bool(self.message.text()))

    @property
    def wrong(self) -> bool:
        """Whether what stands in the field is refused."""
        return self._of in self._wrong

    def show_value(self, of: str, value: object, unit: Unit) -> None:
        """Show what the value is of one coupon; what was refused there stands there still."""
        another = of != self._of
        self._of, self._value, self._unit = of, value, unit
        words = self._words(value)
        if of in self._wrong:
            if another:
                text, wrong = self._wrong[of]
                self._write(text, wrong)
            self._shown = words
            return
        if another or words != self._shown or self.message.text():
            self._shown = words
            self._write(words, "")

    def _words(self, value: object) -> str:
        if value is None or value == "":
            return ""
        if isinstance(value, str):
            return value
        number = float(value) if isinstance(value, (int, float)) else 0.0
        if self.measure in ("length", "angle"):
            return said_value(number, self.measure, self._unit)
        return f"{number:g}"

    def _write(self, text: str, wrong: str) -> None:
        if self.field.text() != text:
            with QSignalBlocker(self.field):
                self.field.setText(text)
                if self.measure == "text" and not self.field.hasFocus():
                    self.field.setCursorPosition(0)
        self.message.setText(wrong)
        self.message.setVisible(bool(wrong) and not self.field.isHidden())
        self.field.setProperty("wrong", bool(wrong))
        self.field.style().polish(self.field)
        self.field.setAccessibleDescription(wrong)

    def _enter(self) -> None:
        """Take what was typed, if it is another value than the one shown."""
        text = self.field.text().strip()
        if text == self._shown:
            self._wrong.pop(self._of, None)
            self._write(self._shown, "")
            return
        refused = self._wrong.get(self._of)
        if refused is not None and refused[0] == text:
            return
        of = self._of
        wrong = self._tried(text)
        self.settled.emit()
        if wrong:
            self._wrong[of] = (text, wrong)
            if of == self._of:
                self._write(text, wrong)
            return
        self._wrong.pop(of, None)
        self._shown = "\0"
        self.show_value(of, self._value, self._unit)

    def _tried(self, text: str) -> str:
        """Hand on what was typed; return what is wrong with it."""
        if not text and self._optional:
            return self._take(self.key, None)
        try:
            value = self._parsed(text)
        except EntryError as error:
            return entry_words(error, text, self.measure)
        return self._take(self.key, value)

    def _parsed(self, text: str) -> object:
        if self.measure == "length":
            return round(parse_value(text, self._unit), 6)
        if self.measure == "angle":
            return round(parse_angle(text), 6)
        if self.measure in ("share", "count"):
            return round(parse_number(text), 6)
        return text

    def _step(self, way: float) -> None:
        step = _STEPS[self.measure] if self._by is None else self._by
        held = QApplication.keyboardModifiers()
        if held & Qt.KeyboardModifier.ShiftModifier:
            step *= 10.0
        elif held & Qt.KeyboardModifier.ControlModifier and self.measure != "count":
            step /= 10.0
        if isinstance(self._value, (int, float)) and not isinstance(self._value, bool):
            value = round((float(self._value) + way * step) / step) * step
        elif way < 0.0:
            return
        else:
            value = begin_value(self.key) if self.measure != "count" else self._begin
        nothing = self._optional and value <= 1e-9
        wrong = self._take(self.key, None if nothing else round(value, 6))
        if wrong:
            self._wrong[self._of] = (self._words(round(value, 6)), wrong)
            self._write(*self._wrong[self._of])
        else:
            self._wrong.pop(self._of, None)
            self._shown = "\0"
            self.show_value(self._of, self._value, self._unit)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Escape takes back what was typed; Enter takes it; up and down step."""
        if event.type() == QEvent.Type.FocusIn:
            self.focused.emit(self.key)
        if not isinstance(event, QKeyEvent) or event.type() != QEvent.Type.KeyPress:
            return False
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape and (self.field.text() != self._shown or self.wrong):
            self._wrong.pop(self._of, None)
            self._write(self._shown, "")
            self.field.selectAll()
            return True
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            typed = self.field.text().strip() != self._shown
            self._enter()
            self.field.selectAll()
            # With nothing new in the field it means what it means in the dialog around it.
            return typed
        if key in (Qt.Key.Key_Up, Qt.Key.Key_Down) and self.steps:
            self._step(1.0 if key == Qt.Key.Key_Up else -1.0)
            self.settled.emit()
            return True
        return False
