"""Sealing: the passphrase, typed twice, and plainly what it protects against and what not."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.bench.worded import point
from trainer.notices import Notice
from trainer.shop.entry import message_label
from trainer.sittings.passphrases import LEAST, Worth, suggested, worth_of

__all__ = ["SealDialog", "UnsealDialog"]

_CONTEXT: Final = "Seal"
_WIDE: Final = 700

_WORTH: Final[dict[Worth, str]] = {
    "none": QT_TRANSLATE_NOOP(
        "Seal",
        "Whoever has the file can try as many passphrases as they like. Length is what stops "
        "them: several words that have nothing to do with each other.",
    ),
    "short": QT_TRANSLATE_NOOP("Seal", "Too short: at least {least} characters."),
    "weak": QT_TRANSLATE_NOOP(
        "Seal", "Weak: found by trying, by somebody who wants to. Make it longer."
    ),
    "fair": QT_TRANSLATE_NOOP(
        "Seal", "Fair, if it is no name, no date and no saying. Longer is better."
    ),
    "good": QT_TRANSLATE_NOOP("Seal", "Long. Good, unless it is a line that others know too."),
}

_PROTECTS: Final = (
    QT_TRANSLATE_NOOP(
        "Seal", "Without the passphrase nobody can read the coupons, the right calls or the marks."
    ),
    QT_TRANSLATE_NOOP("Seal", "A sitting or a result of which one byte was changed is refused."),
    QT_TRANSLATE_NOOP(
        "Seal",
        "Result files are sealed with it too: nobody reads or changes them on their way to you.",
    ),
)
_NOT: Final = (
    QT_TRANSLATE_NOOP(
        "Seal",
        "On a learner's own machine the opened sitting lies in its memory: who owns the machine "
        "can get at it, or at the program itself.",
    ),
    QT_TRANSLATE_NOOP(
        "Seal",
        "What was handed in lies in the logbook of that machine as well. The program shows it only "
        "for the passphrase, but the file is not sealed.",
    ),
    QT_TRANSLATE_NOOP("Seal", "A screen can be photographed, and a neighbour asked."),
    QT_TRANSLATE_NOOP("Seal", "An older copy of a half-done sitting can be put back in its place."),
    QT_TRANSLATE_NOOP(
        "Seal", "A passphrase that is forgotten can't be got back: nobody else has it."
    ),
)


def _line(name: str) -> QLineEdit:
    field = QLineEdit()
    field.setEchoMode(QLineEdit.EchoMode.Password)
    field.setMaxLength(1000)
    field.setAccessibleName(name)
    field.setInputMethodHints(
        Qt.InputMethodHint.ImhSensitiveData | Qt.InputMethodHint.ImhNoPredictiveText
    )
    return field


class SealDialog(Notice):
    """Asks for a passphrase to seal with.

    Parameters
    ----------
    note
        What has to be said of this sitting; may be empty.

    Signals
    -------
    entered(passphrase)
        This one.
    """

    entered = Signal(str)

    def __init__(self, note: str = "", parent: QWidget | None = None) -> None:
        super().__init__(
            translate("Seal", "Seal the sitting"),
            translate(
                "Seal",
                "The proctor types this passphrase to begin, and whenever the sitting has to be "
                "left or taken up again. Don't send it along with the file.",
            ),
            parent,
        )
        if note:
            said = QLabel(note)
            said.setWordWrap(True)
            said.setProperty("tone", "warning")
            self.body.addWidget(said)
        self._add_fields()
        self._add_limits()
        self._add_buttons()
        self.finish()
        self.setMinimumWidth(_WIDE)
        self._check()
        self.first.setFocus()

    def showEvent(self, event: QShowEvent) -> None:
        """Stand as high as its words are, which Qt by itself doesn't ask of a dialog."""
        super().showEvent(event)
        self.setMinimumHeight(self.body.totalHeightForWidth(self.width()))

    def _add_fields(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(1, 1)
        words = (
            translate("Seal", "Passphrase"),
            translate("Seal", "The same again"),
        )
        self.first, self.again = (_line(name) for name in words)
        for row, (name, field) in enumerate(zip(words, (self.first, self.again), strict=True)):
            label = QLabel(name)
            label.setBuddy(field)
            grid.addWidget(label, row, 0)
            grid.addWidget(field, row, 1)
            field.textChanged.connect(self._check)
        self.body.addLayout(grid)
        row_of = QHBoxLayout()
        self.seen = QCheckBox(translate("Seal", "Show what is typed"))
        self.seen.toggled.connect(self._show_typed)
        self.suggest = QPushButton(translate("Seal", "Suggest one"))
        self.suggest.setProperty("kind", "segment")
        self.suggest.setAutoDefault(False)
        self.suggest.setToolTip(
            translate("Seal", "Ten syllables drawn by the machine: write them down")
        )
        self.suggest.clicked.connect(self._suggest)
        row_of.addWidget(self.seen)
        row_of.addStretch(1)
        row_of.addWidget(self.suggest)
        self.body.addLayout(row_of)
        self.hint = QLabel()
        self.hint.setWordWrap(True)
        self.hint.setMinimumHeight(40)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.hint.setProperty("tone", "quiet")
        self.body.addWidget(self.hint)

    def _add_limits(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(28)
        grid.setVerticalSpacing(4)
        sides = (
            (translate("Seal", "What the seal does"), _PROTECTS),
            (translate("Seal", "What it can't do"), _NOT),
        )
        for column, (title, lines) in enumerate(sides):
            heading = QLabel(title)
            heading.setProperty("tone", "heading")
            grid.addWidget(heading, 0, column)
            told = QVBoxLayout()
            told.setSpacing(2)
            for line in lines:
                told.addWidget(point(translate(_CONTEXT, line), "quiet"))
            told.addStretch(1)
            grid.addLayout(told, 1, column)
            grid.setColumnMinimumWidth(column, 280)
            grid.setColumnStretch(column, 1)
        self.body.addLayout(grid)
        advice = QLabel(
            translate(
                "Seal",
                "For marks that matter, let it be sat on machines that you look after, with "
                "somebody in the room.",
            )
        )
        advice.setWordWrap(True)
        self.body.addWidget(advice)

    def _add_buttons(self) -> None:
        self.buttons.clear()
        self.seal = QPushButton(translate("Seal", "Seal and save..."))
        self.seal.setProperty("kind", "primary")
        self.seal.setDefault(True)
        self.seal.clicked.connect(self._enter)
        self.leave = QPushButton(translate("Seal", "Cancel"))
        self.leave.setProperty("kind", "tall")
        self.leave.setAutoDefault(False)
        self.leave.clicked.connect(self.reject)
        for button in (self.seal, self.leave):
            self.buttons.addButton(button, QDialogButtonBox.ButtonRole.ActionRole)

    def _show_typed(self, shown: bool) -> None:
        mode = QLineEdit.EchoMode.Normal if shown else QLineEdit.EchoMode.Password
        for field in (self.first, self.again):
            field.setEchoMode(mode)

    def _suggest(self) -> None:
        words = suggested()
        self.seen.setChecked(True)
        for field in (self.first, self.again):
            field.setText(words)
        self.first.setFocus()
        self.first.selectAll()

    def _check(self) -> None:
        worth = worth_of(self.first.text())
        lines = [translate(_CONTEXT, _WORTH[worth]).format(least=LEAST)]
        same = self.first.text() == self.again.text()
        if self.again.text() and not same:
            lines.append(translate("Seal", "The two are not the same yet."))
        self.hint.setText("\n".join(lines))
        self.first.setAccessibleDescription(self.hint.text())
        self.seal.setEnabled(same and worth not in ("none", "short"))

    def _enter(self) -> None:
        if self.seal.isEnabled():
            self.entered.emit(self.first.text())
            self.accept()


class UnsealDialog(Notice):
    """Asks for the passphrase of a sitting that is to be composed further, or of what `words` say.

    Parameters
    ----------
    file
        Its name.
    words
        What the dialog is called, and what it asks, where that is something else.

    Signals
    -------
    entered(passphrase)
        This one is to be tried; whoever hears it says `tried` or accepts the dialog.
    """

    entered = Signal(str)

    def __init__(
        self, file: str, parent: QWidget | None = None, words: tuple[str, str] | None = None
    ) -> None:
        title, text = words or (
            translate("Seal", "Open a sealed sitting"),
            translate(
                "Seal", "{file}\n\nIt is opened to be composed further. Type its passphrase."
            ).format(file=file),
        )
        super().__init__(title, text, parent)
        name = translate("Seal", "Passphrase")
        label = QLabel(name)
        self.field = _line(name)
        label.setBuddy(self.field)
        self.body.addWidget(label)
        self.body.addWidget(self.field)
        self.message = message_label()
        self.body.addWidget(self.message)
        self.buttons.clear()
        self.open_button = QPushButton(translate("Seal", "Open"))
        self.open_button.setProperty("kind", "primary")
        self.open_button.setDefault(True)
        self.open_button.clicked.connect(self._enter)
        leave = QPushButton(translate("Seal", "Cancel"))
        leave.setProperty("kind", "tall")
        leave.setAutoDefault(False)
        leave.clicked.connect(self.reject)
        for button in (self.open_button, leave):
            self.buttons.addButton(button, QDialogButtonBox.ButtonRole.ActionRole)
        self.field.textChanged.connect(self._check)
        self.finish()
        self._check()
        self.field.setFocus()

    def _check(self) -> None:
        self.message.hide()
        self.open_button.setEnabled(bool(self.field.text()))

    def _enter(self) -> None:
        if self.open_button.isEnabled():
            self.open_button.setEnabled(False)
            self.open_button.setText(translate("Seal", "Opening..."))
            self.entered.emit(self.field.text())

    def tried(self, wrong: str) -> None:
        """Say what came of the one that was tried."""
        self.open_button.setText(translate("Seal", "Open"))
        self.open_button.setEnabled(True)
        self.message.setText(wrong)
        self.message.show()
        self.field.setAccessibleDescription(wrong)
        self.field.selectAll()
        self.field.setFocus()
