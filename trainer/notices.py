"""Dialogs that say something: a file that is broken, something unforeseen, keys, about."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from PySide6.QtCore import QCoreApplication, QEvent, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QIcon, QShowEvent
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QPlainTextEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from trainer.key_sheet import KeySheet
from trainer.key_table import KeyGroup
from trainer.unforeseen import Trouble

__all__ = ["FaultRow", "FaultsDialog", "KeysDialog", "Notice", "UnforeseenDialog"]

_ROUND: Final = QSize(48, 120)
"""What a dialog has about its contents, px: margins, heading, buttons."""


@dataclass(frozen=True, slots=True)
class FaultRow:
    """One fault of a file: where, what is wrong, what would be right."""

    place: str
    wrong: str
    right: str


class Notice(QDialog):
    """A titled dialog with a body and a closing button.

    Parameters
    ----------
    title
        Heading, and title of the dialog.
    text
        A paragraph under it; may be empty.
    """

    def __init__(self, title: str, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setModal(True)
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(24, 20, 24, 18)
        self.body.setSpacing(12)
        heading = QLabel(title)
        heading.setProperty("tone", "title")
        heading.setWordWrap(True)
        self.body.addWidget(heading)
        if text:
            paragraph = QLabel(text)
            paragraph.setWordWrap(True)
            paragraph.setTextFormat(Qt.TextFormat.PlainText)
            paragraph.setMinimumWidth(420)
            self.body.addWidget(paragraph)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        self.buttons.button(QDialogButtonBox.StandardButton.Close).setIcon(QIcon())
        self.buttons.rejected.connect(self.reject)

    def finish(self) -> None:
        """Put the buttons at the end; call it once the body is filled."""
        self.body.addWidget(self.buttons)
        for button in self.buttons.buttons():
            # A dialog hears which button Enter presses only once the button is in it.
            if isinstance(button, QPushButton) and button.isDefault():
                button.setDefault(False)
                button.setDefault(True)

    def showEvent(self, event: QShowEvent) -> None:
        """Tab stops at each button."""
        super().showEvent(event)
        # Qt hands what the box gets to the default button; Tab then leaps over those before it.
        self.buttons.setFocusProxy(None)  # type: ignore[arg-type]  # the stub lacks None

    def event(self, event: QEvent) -> bool:
        """What has come to be shown pushes the dialog's edge down, and no field onto another."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest and self.isVisible():
            # A layout asks for the height of words as if they stood on one line.
            needed = self.body.minimumHeightForWidth(self.width())
            if needed > self.height():
                self.resize(self.width(), min(needed, self.screen().availableSize().height()))
        return done


class FaultsDialog(Notice):
    """Why a file was not opened: every fault at once, and that nothing has changed.

    Parameters
    ----------
    file, faults
        Which file, and all that is wrong with it.
    words
        Title, and what is said below it, where the file is no tray; with a place for ``{file}``.
    """

    def __init__(
        self,
        file: str,
        faults: Sequence[FaultRow],
        parent: QWidget | None = None,
        words: tuple[str, str] | None = None,
    ) -> None:
        title, text = words or (
            QCoreApplication.translate("FaultsDialog", "This tray can't be opened"),
            QCoreApplication.translate(
                "FaultsDialog", "{file}\n\nThe tray that is open stays as it was."
            ),
        )
        super().__init__(title, text.format(file=file), parent)
        holder = QWidget()
        holder.setProperty("kind", "holder")
        rows = QVBoxLayout(holder)
        rows.setContentsMargins(12, 12, 12, 12)  # off the ring of the focus
        rows.setSpacing(12)
        for fault in faults:
            rows.addLayout(self._row(fault))
        rows.addStretch(1)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setWidget(holder)
        scroll.setMinimumSize(484, min(300, 40 + 72 * len(faults)))
        scroll.setAccessibleName(self.tr("Faults"))
        self.body.addWidget(scroll, 1)
        self.finish()

    def _row(self, fault: FaultRow) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 1)
        words = (
            (self.tr("Place"), fault.place or self.tr("whole file")),
            (self.tr("Wrong"), fault.wrong),
            (self.tr("Right would be"), fault.right),
        )
        for row, (name, text) in enumerate(words):
            key, value = QLabel(name), QLabel(text)
            key.setProperty("tone", "quiet")
            key.setAlignment(Qt.AlignmentFlag.AlignTop)
            value.setWordWrap(True)
            value.setTextFormat(Qt.TextFormat.PlainText)
            value.setTextInteractionFlags(
                Qt.TextInteractionFlag.TextSelectableByMouse
                | Qt.TextInteractionFlag.TextSelectableByKeyboard
            )
            grid.addWidget(key, row, 0)
            grid.addWidget(value, row, 1)
        return grid


class KeysDialog(Notice):
    """Which key does what: a page a screen, groups beside each other, all of it at once.

    Parameters
    ----------
    screens
        Title of each screen and its groups; one without a title holds everywhere.
    """

    def __init__(
        self, screens: Sequence[tuple[str, Sequence[KeyGroup]]], parent: QWidget | None = None
    ) -> None:
        super().__init__(QCoreApplication.translate("KeysDialog", "Keys"), "", parent)
        self.sheet = KeySheet(screens)
        self.sheet.setAccessibleName(self.tr("Keys and what they do"))
        screen = self.screen().availableSize()
        room = QSize(screen.width() - 120, screen.height() - 200)
        self.sheet.setMinimumSize(self.sheet.least().boundedTo(room))
        self.body.addWidget(self.sheet, 1)
        self.finish()
        self.resize(self.sizeHint().expandedTo(self.sheet.wanted().boundedTo(room) + _ROUND))


def _toned(text: str, tone: str) -> QLabel:
    label = QLabel(text)
    label.setProperty("tone", tone)
    label.setTextFormat(Qt.TextFormat.PlainText)
    return label


class UnforeseenDialog(Notice):
    """Something went wrong that nobody foresaw: what to do, and the report to send along.

    Parameters
    ----------
    trouble
        What happened.
    can_go_on
        Whether the window is of use; else the program can only be ended.
    discreet
        Whether nothing is shown of what the report says: a sitting goes on.

    Signals
    -------
    quit_asked
        The program is to be ended.
    """

    quit_asked = Signal()

    def __init__(
        self,
        trouble: Trouble,
        parent: QWidget | None = None,
        *,
        can_go_on: bool = True,
        discreet: bool = False,
    ) -> None:
        title, text = self._words() if can_go_on else self._last_words()
        super().__init__(title, text, parent)
        what = _toned(trouble.what, "heading")
        what.setWordWrap(True)
        self.body.addWidget(what)
        self.details = QPlainTextEdit(trouble.text)
        self.details.setReadOnly(True)
        self.details.setTabChangesFocus(True)
        self.details.setAccessibleName(self.tr("Report"))
        self.details.setMinimumSize(520, 150)
        self.body.addWidget(self.details, 1)
        self.place = QLabel(self._place(trouble.report))
        self.place.setProperty("tone", "quiet")
        self.place.setWordWrap(True)
        self.place.setTextFormat(Qt.TextFormat.PlainText)
        self.place.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.body.addWidget(self.place)
        first = self._add_buttons(can_go_on)
        for told in (what, self.details, self.place, self.copy):
            told.setHidden(discreet)
        self.finish()
        first.setFocus()

    def _words(self) -> tuple[str, str]:
        return (
            QCoreApplication.translate("UnforeseenDialog", "Something went wrong"),
            QCoreApplication.translate(
                "UnforeseenDialog",
                "The last action may not have been done. What you have on the bench is still "
                "there, and calls on record are kept. Go on, or undo the last step (Z). If it "
                "happens again, quit and start anew.",
            ),
        )

    def _last_words(self) -> tuple[str, str]:
        return (
            QCoreApplication.translate("UnforeseenDialog", "The program can't go on"),
            QCoreApplication.translate(
                "UnforeseenDialog",
                "It failed while it was starting. Calls on record are kept. Start it again; if "
                "this happens every time, install it again.",
            ),
        )

    def _place(self, report: Path | None) -> str:
        if report is None:
            return self.tr("The report could not be written: copy it, it helps to mend this.")
        return self.tr("This report helps to mend it. It lies at {file}").format(file=report)

    def _add_buttons(self, can_go_on: bool) -> QPushButton:
        """Add what can be done; return what Enter does."""
        role = QDialogButtonBox.ButtonRole
        self.buttons.clear()
        self.copy = self.buttons.addButton(self.tr("Copy report"), role.ActionRole)
        self.copy.clicked.connect(
            lambda: QGuiApplication.clipboard().setText(self.details.toPlainText())
        )
        quits = self.buttons.addButton(self.tr("Quit"), role.DestructiveRole)
        quits.clicked.connect(self.quit_asked)
        if can_go_on:
            goes_on = self.buttons.addButton(self.tr("Go on"), role.RejectRole)
            goes_on.setProperty("kind", "primary")
            goes_on.setDefault(True)
            return goes_on
        self.rejected.connect(self.quit_asked)
        quits.setDefault(True)
        return quits
