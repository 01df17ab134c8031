"""At the right of the class: the school's server, and how pushing to it stands."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from PySide6.QtCore import QDateTime, QLocale, Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from trainer.bench.translation import translate
from trainer.loading import Loading
from trainer.logbook.words import trouble_words
from trainer.school.address import Address, address_of, keep_password, password_file
from trainer.school.pushing import PushState
from trainer.school.server import Rights, try_server
from trainer.school.trouble import SchoolError
from trainer.school.words import school_words
from trainer.shop.entry import message_label
from trainer.shop.question import Answer, Question
from trainer.sittings.counts import SittingCounts
from trainer.sittings.station import Station
from trainer.window import WindowFrame

__all__ = ["ServerPanel", "rights_words", "state_lines"]


def state_lines(state: PushState | None) -> list[str]:
    """How pushing stands, in sentences.

    Examples
    --------
    >>> from trainer.school.outbox import Waiting
    >>> state_lines(PushState(Waiting(attempts=0)))
    ['Nothing here waits to be sent.']
    """
    if state is None:
        return [translate("Server", "No server: what is done here stays on this machine.")]
    lines = []
    counts = SittingCounts()
    waiting = state.waiting
    if waiting is None:
        if state.trouble is None:
            lines.append(translate("Server", "Looking what there is to send..."))
    elif not waiting:
        # That it has it all is known once it has said so.
        lines.append(
            translate("Server", "Nothing here waits to be sent.")
            if state.last is None
            else translate("Server", "The server has all that is here.")
        )
    else:
        parts = (
            (waiting.attempts, counts.answers(waiting.attempts)),
            (waiting.papers, counts.papers(waiting.papers)),
            (waiting.overrides, counts.marks(waiting.overrides)),
        )
        words = (
            translate("Server", "Being sent: {what}.")
            if state.busy
            else translate("Server", "Waiting here: {what}. Nothing of it is lost.")
        )
        lines.append(words.format(what=", ".join(said for count, said in parts if count)))
    if state.last is not None:
        last = QDateTime.fromSecsSinceEpoch(round(state.last.timestamp()))
        when = QLocale().toString(last, QLocale.FormatType.ShortFormat)
        lines.append(translate("Server", "Last acknowledged: {when}.").format(when=when))
    return lines


def rights_words(rights: Rights) -> str:
    """What a login may do, in a sentence.

    Examples
    --------
    >>> rights_words(Rights(sends=True, reads=False))
    'The server is there. This login may send, and read nothing.'
    """
    if not rights.reads:
        return translate("Server", "The server is there. This login may send, and read nothing.")
    if not rights.sends:
        return translate("Server", "The server is there. This login may read, and send nothing.")
    return translate(
        "Server",
        "The server is there. This login may read and erase what everybody did: it is an "
        "instructor's, and not for a machine that learners use.",
    )


class ServerPanel(QWidget):
    """The address, a test of it, and how pushing stands.

    Parameters
    ----------
    window
        Its settings keep the address.
    station
        Pushes there.
    """

    told = Signal()

    def __init__(
        self, window: WindowFrame, station: Station, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        self.window_frame, self.station = window, station
        self._work: Loading[Rights] | None = None
        self._asked: Address | None = None
        self._used = False
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 8, 4, 4)  # room for a ring of the focus
        column.setSpacing(8)
        self._add_address(column)
        heading = QLabel(self.tr("What is here and what is there"))
        heading.setProperty("tone", "heading")
        column.addWidget(heading)
        self.state = QLabel()
        self.state.setWordWrap(True)
        self.state.setProperty("tone", "quiet")
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setProperty("tone", "warning")
        self.trouble.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.now = QPushButton(self.tr("Send now"))
        self.now.setProperty("kind", "tall")
        self.now.clicked.connect(station.retry)
        for widget in (self.state, self.trouble, self.now):
            column.addWidget(widget)
        column.addStretch(1)
        station.changed.connect(self.show_state)
        self._show_address()
        self.show_state()

    def _add_address(self, column: QVBoxLayout) -> None:
        said = QLabel(
            self.tr(
                "Each machine keeps what is done on it, and sends it to the school's PostgreSQL "
                "server when that can be reached. Names are never sent, codes are. Learners "
                "without a code stay here."
            )
        )
        said.setWordWrap(True)
        said.setProperty("tone", "gloss")
        column.addWidget(said)
        label = QLabel(self.tr("Address of the server"))
        label.setProperty("tone", "quiet")
        self.address = QLineEdit()
        self.address.setAccessibleName(label.text())
        self.address.setPlaceholderText(self.tr("postgresql://station@host/school"))
        self.address.setMaxLength(1000)
        label.setBuddy(self.address)
        column.addWidget(label)
        column.addWidget(self.address)
        self._add_password(column)
        for field in (self.address, self.password):
            field.textEdited.connect(lambda _: self._say("", wrong=False))
            field.returnPressed.connect(self.keep)
        row = QHBoxLayout()
        row.setSpacing(6)
        self.use = QPushButton(self.tr("Use it"))
        self.use.clicked.connect(self.keep)
        self.test = QPushButton(self.tr("Test the connection"))
        self.test.clicked.connect(self.test_address)
        for button in (self.use, self.test):
            button.setProperty("kind", "segment")
            button.setMinimumHeight(28)
            row.addWidget(button)
        column.addLayout(row)
        # Below the buttons: they stay where they are, whatever is said.
        self.message = message_label()
        column.addWidget(self.message)

    def _add_password(self, column: QVBoxLayout) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        label = QLabel(self.tr("Password"))
        label.setProperty("tone", "quiet")
        self.password = QLineEdit()
        self.password.setEchoMode(QLineEdit.EchoMode.Password)
        self.password.setAccessibleName(label.text())
        self.password.setPlaceholderText(self.tr("unless it is kept already"))
        self.password.setMaxLength(1000)
        label.setBuddy(self.password)
        row.addWidget(label)
        row.addWidget(self.password, 1)
        column.addLayout(row)

    # The address

    def _show_address(self) -> None:
        kept = self.window_frame.settings.server
        if not self.address.hasFocus():
            self.address.setText(kept)
            self.address.setCursorPosition(0)

    def _address(self) -> Address | None:
        """What was typed; says what is wrong with it if it is none."""
        try:
            typed = address_of(self.address.text())
        except SchoolError as error:
            self._say(_sentences(error), wrong=True)
            return None
        if self.password.text():
            return replace(typed, password=self.password.text())
        known = self.station.address
        # The fields show no password: one that was typed before goes on holding.
        return (
            known if known is not None and known.url == typed.url and not typed.password else typed
        )

    def keep(self) -> None:
        """Push there from now on, and see whether it can be; to none where nothing is typed."""
        if not self.address.text().strip():
            self.password.clear()
            self._keep("")
            self.station.serve(None)
            self._say(self.tr("No server any more."), wrong=False)
            return
        address = self._address()
        if address is None:
            return
        self._keep(address.url)
        self.address.setText(address.url)
        self.address.setCursorPosition(0)
        self.password.clear()
        self.station.serve(address)
        self._ask(address, used=True)

    def _keep(self, url: str) -> None:
        self.window_frame.change_settings(replace(self.window_frame.settings, server=url))

    def _offer_to_keep(self, address: Address) -> None:
        file = password_file()
        self.window_frame.show_dialog(
            Question(
                self.tr("Keep the password?"),
                self.tr(
                    "It is not kept in this program's settings. It can be kept in the file where "
                    "PostgreSQL's own programs look for it, which only you may read:\n\n{file}\n\n"
                    "Otherwise it holds until the program ends."
                ).format(file=file),
                (
                    Answer(self.tr("Keep it there"), partial(self._keep_password, address)),
                    Answer(self.tr("Don't keep it")),
                ),
                self.window_frame.window,
            )
        )

    def _keep_password(self, address: Address) -> None:
        try:
            keep_password(address)
        except (OSError, ValueError) as error:
            self._say(str(error), wrong=True)

    def test_address(self) -> None:
        """See what can be done at the server, beside the window; nothing is kept."""
        address = self._address()
        if address is not None:
            self._ask(address, used=False)

    def _ask(self, address: Address, *, used: bool) -> None:
        """Ask a server; who asks again meanwhile is told of the last that was asked."""
        # The button stays as it is: disabled it would hand the focus on to another.
        self._asked, self._used = address, used
        self._say(self.tr("Asking the server..."), wrong=False)
        if self._work is None:
            self._begin(address)

    def _begin(self, address: Address) -> None:
        self._work = Loading(partial(try_server, address))
        self._work.over.connect(partial(self._tested, address))
        self._work.start()

    def _tested(self, address: Address) -> None:
        work, self._work = self._work, None
        if work is None:
            return
        if self._asked is not None and self._asked != address:
            self._begin(self._asked)
            return
        kept = self.tr("Kept.") + " " if self._used else ""
        wrong_password = False
        try:
            self._say(kept + rights_words(work.result), wrong=False)
        except SchoolError as error:
            wrong_password = error.trouble == "password"
            self._say(kept + _sentences(error), wrong=True)
        if self._used and address.password and not wrong_password:
            self._offer_to_keep(address)
        self.told.emit()

    def _say(self, words: str, *, wrong: bool) -> None:
        self.message.setText(words)
        self.message.setProperty("tone", "wrong" if wrong else "quiet")
        self.message.style().unpolish(self.message)
        self.message.style().polish(self.message)
        self.message.setVisible(bool(words))
        self.address.setAccessibleDescription(words)

    # How it stands

    def show_state(self) -> None:
        """Show what waits, when something was acknowledged last, and what is in the way."""
        state = self.station.state
        self.state.setText("\n".join(state_lines(state)))
        trouble = state.trouble if state is not None else None
        self.trouble.setVisible(trouble is not None)
        self.now.setVisible(state is not None)
        self.now.setEnabled(state is not None and not state.busy)
        if trouble is not None:
            lines = (
                school_words(trouble)
                if isinstance(trouble, SchoolError)
                else trouble_words(trouble.trouble, str(trouble.path))
            )
            self.trouble.setText("\n".join((*lines, self.tr("It is tried again by itself."))))

    def showEvent(self, event: QShowEvent) -> None:
        """The settings may have another address since."""
        super().showEvent(event)
        self._show_address()
        self.show_state()


def _sentences(error: SchoolError) -> str:
    return ". ".join(school_words(error))
