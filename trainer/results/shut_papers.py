"""Papers that were handed in at this machine: their sitting's passphrase shows them.

See `trainer.logbook.shut` for why, and for what that can't do.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton

from trainer.bench.worded import wrapped
from trainer.loading import Loading
from trainer.logbook.keeping import Keeping
from trainer.school.shutting import Shut, opened_by
from trainer.sealing.key import SealError
from trainer.sealing.words import seal_words
from trainer.sittings.seal_dialog import UnsealDialog
from trainer.window import WindowFrame

__all__ = ["ShutPapers", "ShutStrip"]


class ShutStrip(QFrame):
    """Says how many papers are shut, and offers to open them.

    Signals
    -------
    open_asked
        They are to be opened.
    """

    open_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("kind", "card")
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 8, 12, 8)
        row.setSpacing(12)
        self.words = wrapped("")
        row.addWidget(self.words, 1)
        self.button = QPushButton(self.tr("Open with the passphrase..."))
        self.button.clicked.connect(self.open_asked)
        row.addWidget(self.button)
        self.hide()

    def show_shut(self, shut: Sequence[Shut]) -> None:
        """Say what is shut; nothing if nothing is."""
        papers = sum(one.papers for one in shut)
        self.words.setText(
            self.tr(
                "Shut: %n paper(s) handed in at this machine, so that whoever sits here next can't "
                "look up the right calls. The passphrase shows them until the program is closed or "
                "the next sitting begins.",
                "",
                papers,
            )
        )
        self.setVisible(papers > 0)


class ShutPapers(QObject):
    """Asks for a passphrase, and shows the papers that it opens.

    Parameters
    ----------
    window
        Shows the dialog.
    keeping
        Its logbook holds the papers.

    Signals
    -------
    opened
        Papers were: what is shown is to be read anew.
    """

    opened = Signal()

    def __init__(self, window: WindowFrame, keeping: Keeping, parent: QObject) -> None:
        super().__init__(parent)
        self._window, self._keeping = window, keeping
        self._trying: Loading[set[str]] | None = None

    def ask(self, shut: Sequence[Shut]) -> None:
        """Ask for the passphrase of papers that are shut."""
        words = (
            self.tr("Open papers that are shut"),
            self.tr(
                "Type the passphrase that their sitting was sealed with. Papers of a sitting with "
                "another passphrase stay shut."
            ),
        )
        dialog = UnsealDialog("", self._window.window, words)
        dialog.entered.connect(partial(self._try, tuple(shut), dialog))
        self._window.show_dialog(dialog)

    def wait(self) -> None:
        """Wait until what is being tried was, as when the window closes."""
        if self._trying is not None:
            self._trying.wait()

    def _try(self, shut: tuple[Shut, ...], dialog: UnsealDialog, passphrase: str) -> None:
        if self._trying is None:
            self._trying = Loading(partial(opened_by, passphrase, shut))
            self._trying.over.connect(partial(self._tried, dialog))
            self._trying.start()

    def _tried(self, dialog: UnsealDialog) -> None:
        trying, self._trying = self._trying, None
        logbook = self._keeping.logbook
        if trying is None or dialog not in self._window.dialogs or logbook is None:
            # It was called off meanwhile.
            return
        try:
            found = trying.result
        except SealError as error:
            dialog.tried(". ".join(seal_words(error)))
            return
        if not found:
            dialog.tried(
                self.tr(
                    "This passphrase opens none of them. Type it again: capitals, spaces and "
                    "accents count."
                )
            )
            return
        logbook.opened |= found
        dialog.accept()
        self.opened.emit()
