"""Dialogs of a sitting: before handing in, the proctor's word, a disk that takes nothing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialogButtonBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.worded import wrapped
from trainer.loading import Loading
from trainer.notices import Notice
from trainer.sealing.key import Key, SealError
from trainer.taking.sitting import Place, counts
from trainer.taking.words import count_words, place_words

__all__ = ["HandInDialog", "PassphraseLine", "ProctorDialog"]

_ROWS: Final = 8
"""Rows of the list that are seen at once."""


class HandInDialog(Notice):
    """What is unanswered or marked, with a way to each, before all is handed in.

    Signals
    -------
    place_asked
        The coupon to go to, from 0.
    handed_in
        It is to be handed in as it is.
    """

    place_asked = Signal(int)
    handed_in = Signal()

    def __init__(self, places: Sequence[Place], parent: QWidget | None = None) -> None:
        self._open = [p for p in places if p.flagged or p.standing != "answered"]
        super().__init__("", "", parent)
        title = self.tr("Hand in?")
        self.setWindowTitle(title)
        for label in self.findChildren(QLabel):
            label.setText(title)
        text = count_words(counts(places))
        if self._open:
            text = self.tr(
                "{counts}.\n\nThese are not answered, or are marked for review. A call that is "
                "not complete counts as unanswered. Choose one to go back to it."
            ).format(counts=text)
        else:
            text = self.tr("{counts}.\n\nNothing is left open.").format(counts=text)
        words = wrapped(text)
        words.setMinimumWidth(440)
        self.body.addWidget(words)
        if self._open:
            self.body.addWidget(self._list())
        self.buttons.clear()
        role = QDialogButtonBox.ButtonRole
        self.hand_in = self.buttons.addButton(self.tr("Hand in now"), role.DestructiveRole)
        self.hand_in.clicked.connect(self._hand_in)
        self.back = self.buttons.addButton(self.tr("Go on with the sitting"), role.RejectRole)
        first = self.back if self._open else self.hand_in
        first.setProperty("kind", "primary")
        first.setDefault(True)
        self.finish()
        first.setFocus()

    def _list(self) -> QScrollArea:
        holder = QWidget()
        holder.setProperty("kind", "holder")
        rows = QVBoxLayout(holder)
        rows.setContentsMargins(4, 4, 4, 4)
        rows.setSpacing(4)
        self.rows: list[QPushButton] = []
        for place in self._open:
            row = QPushButton(place_words(place))
            row.setProperty("kind", "segment")
            row.setAutoDefault(False)
            row.setStyleSheet("text-align: left;")
            row.clicked.connect(lambda _=False, at=place.number - 1: self._go_to(at))
            self.rows.append(row)
            rows.addWidget(row)
        rows.addStretch(1)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setWidget(holder)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setMinimumHeight(min(len(self._open), _ROWS) * 36 + 12)
        scroll.setAccessibleName(self.tr("Not answered, or marked for review"))
        return scroll

    def _go_to(self, at: int) -> None:
        self.accept()
        self.place_asked.emit(at)

    def _hand_in(self) -> None:
        self.accept()
        self.handed_in.emit()


class PassphraseLine(QLineEdit):
    """Where the proctor types the passphrase; nobody reads it over a shoulder."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setEchoMode(QLineEdit.EchoMode.Password)
        self.setAccessibleName(self.tr("The proctor's passphrase"))
        # Nothing that learns words or offers them again.
        self.setInputMethodHints(
            Qt.InputMethodHint.ImhHiddenText
            | Qt.InputMethodHint.ImhSensitiveData
            | Qt.InputMethodHint.ImhNoPredictiveText
        )


class ProctorDialog(Notice):
    """Asks the proctor how the sitting is to be left; the time runs meanwhile.

    Parameters
    ----------
    key
        Of the sitting: what the passphrase must come to.

    Signals
    -------
    suspended
        It is to be gone on with later.
    ended
        It is to be handed in as it stands.
    """

    suspended = Signal()
    ended = Signal()

    def __init__(self, key: Key, parent: QWidget | None = None) -> None:
        super().__init__("", "", parent)
        title = self.tr("Leave the sitting")
        self.setWindowTitle(title)
        for label in self.findChildren(QLabel):
            label.setText(title)
        self._key = key
        self._loading: Loading[bool] | None = None
        text = wrapped(
            self.tr(
                "Only the proctor can let you leave before you hand in. The clock runs on "
                "meanwhile, and that you left will stand in the result.\n\nSuspended, the sitting "
                "can be gone on with at this machine, at the same coupon; the time away is not "
                "counted."
            )
        )
        text.setMinimumWidth(460)
        self.body.addWidget(text)
        self.body.addWidget(QLabel(self.tr("The proctor's passphrase")))
        self.line = PassphraseLine()
        self.line.textEdited.connect(lambda _: self._say(""))
        self.body.addWidget(self.line)
        self.trouble = wrapped("", "wrong")
        self.body.addWidget(self.trouble)
        self._add_ways()
        self.finish()
        self.line.setFocus()

    def _add_ways(self) -> None:
        self.buttons.clear()
        role = QDialogButtonBox.ButtonRole
        self.end = self.buttons.addButton(self.tr("End and hand in"), role.ActionRole)
        self.end.clicked.connect(lambda: self._ask(self.ended.emit))
        self.suspend = self.buttons.addButton(self.tr("Suspend"), role.ActionRole)
        self.suspend.clicked.connect(lambda: self._ask(self.suspended.emit))
        self.back = self.buttons.addButton(self.tr("Go on with the sitting"), role.RejectRole)
        self.back.setProperty("kind", "primary")
        for button in (self.end, self.suspend, self.back):
            button.setAutoDefault(False)

    def _say(self, words: str) -> None:
        self.trouble.setText(words)

    def _ask(self, then: Callable[[], object]) -> None:
        """See whether the passphrase is right, beside the window, then do what was asked."""
        if self._loading is not None:
            return
        key, said = self._key, self.line.text()
        if not said:
            self._say(self.tr("Type the passphrase first."))
            self.line.setFocus()
            return
        self._say(self.tr("One moment\u2026"))
        self._loading = Loading(lambda: Key.derived(said, key.cost, key.salt).check == key.check)
        self._loading.over.connect(lambda: self._answer(then))
        self._loading.start()

    def _answer(self, then: Callable[[], object]) -> None:
        loading, self._loading = self._loading, None
        if loading is None:
            return
        try:
            right = loading.result
        except SealError:
            right = False
        if not self.isVisible():
            return
        if not right:
            self._say(self.tr("That is not the passphrase of this sitting."))
            self.line.selectAll()
            self.line.setFocus()
            return
        self.accept()
        then()
