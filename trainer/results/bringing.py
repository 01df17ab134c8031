"""Result files brought in: one passphrase for all, opened beside the window, each wholly or not."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QDialogButtonBox,
    QFileDialog,
    QLabel,
    QLineEdit,
    QProgressBar,
    QWidget,
)

from exercises.text import Text
from trainer.bench import words
from trainer.bench.translation import translate
from trainer.fault_words import fault_words
from trainer.loading import Loading
from trainer.logbook.store import LogbookError
from trainer.logbook.words import trouble_words
from trainer.notices import Notice
from trainer.results.arranging import Column
from trainer.results.opening import Opened, Opening, open_results, result_files
from trainer.results.rows_table import RowsTable
from trainer.school.merging import Merged
from trainer.sealing.result_files import SUFFIXES
from trainer.sealing.words import seal_words
from trainer.window import WindowFrame

__all__ = ["Bringing", "Brought", "BroughtDialog", "PassphraseDialog", "ProgressDialog"]

_LOOK: Final = 60
"""ms between two looks at how far it is."""

_FAULTS: Final = 3
"""Faults of one file that are told; how many more there are is said."""

Merge = Callable[[Opened], Merged]
"""Takes an opened file into the logbook, wholly or not at all; raises `LogbookError`."""


@dataclass(frozen=True, slots=True)
class Brought:
    """What came of one file.

    Parameters
    ----------
    path
        The file.
    came
        ``new``, ``known``, ``clash``, or ``not``.
    code, sitting
        Whose it is and of which sitting, where it could be opened.
    words
        What came of it, and what to do.
    again
        Whether another passphrase might open it.
    """

    path: Path
    came: str
    code: str
    sitting: str
    words: str
    again: bool = False


class PassphraseDialog(Notice):
    """Asks for the passphrase of sealed results.

    Signals
    -------
    stated(passphrase)
        That is it.
    """

    stated = Signal(str)

    def __init__(self, files: int, parent: QWidget | None = None) -> None:
        super().__init__(
            self.tr("Bring in %n result file(s)", "", files),
            self.tr(
                "They were sealed with the sitting's passphrase. It is asked for once and tried on "
                "each; files that another one seals are listed at the end."
            ),
            parent,
        )
        caption = QLabel(self.tr("Passphrase"))
        self.field = QLineEdit()
        self.field.setEchoMode(QLineEdit.EchoMode.Password)
        self.field.setAccessibleName(self.tr("Passphrase"))
        caption.setBuddy(self.field)
        self.body.addWidget(caption)
        self.body.addWidget(self.field)
        self.show_it = QCheckBox(self.tr("Show it"))
        self.show_it.toggled.connect(self._show)
        self.body.addWidget(self.show_it)
        self.button = self.buttons.addButton(
            self.tr("Bring in"), QDialogButtonBox.ButtonRole.AcceptRole
        )
        self.button.setDefault(True)
        self.button.setEnabled(False)
        self.buttons.accepted.connect(self._state)
        self.field.textChanged.connect(lambda said: self.button.setEnabled(bool(said)))
        self.finish()
        self.field.setFocus()

    def _show(self, shown: bool) -> None:
        plain, hidden = QLineEdit.EchoMode.Normal, QLineEdit.EchoMode.Password
        self.field.setEchoMode(plain if shown else hidden)

    def _state(self) -> None:
        said = self.field.text()
        if said:
            self.accept()
            self.stated.emit(said)


class ProgressDialog(Notice):
    """Says how far it is, and stops it."""

    def __init__(self, files: int, parent: QWidget | None = None) -> None:
        super().__init__(self.tr("Bringing results in"), "", parent)
        self.said = QLabel()
        self.said.setMinimumWidth(420)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setRange(0, 2 * files)
        self.bar.setAccessibleName(self.tr("How far it is"))
        self.body.addWidget(self.said)
        self.body.addWidget(self.bar)
        self.finish()
        close = self.buttons.button(QDialogButtonBox.StandardButton.Close)
        close.setText(self.tr("Stop"))
        self.show_done(0)

    def show_done(self, done: int) -> None:
        """Say how far it is: 2 for each file that is in, 1 for one that is open."""
        self.bar.setValue(done)
        text = self.tr("{done} of {of} files")
        # Each is seen to twice: opened, and taken in.
        self.said.setText(text.format(done=done // 2, of=self.bar.maximum() // 2))


def _columns() -> list[Column[Brought]]:
    return [
        Column("file", translate("Results", "File"), "", lambda row: row.path.name),
        Column(
            "came", translate("Results", "Came in"), "", lambda row: _came_word(row.came),
            lambda row: float(_ORDER.index(row.came)),
            lambda row: "bad" if row.came in ("not", "clash") else "plain",
        ),
        Column("code", translate("Results", "Code"), "", lambda row: row.code),
        Column("sitting", translate("Results", "Sitting"), "", lambda row: row.sitting),
        Column("words", translate("Results", "Why, and what to do"), "", lambda row: row.words),
    ]  # fmt: skip


_ORDER: Final = ("not", "clash", "known", "new")


def _came_word(came: str) -> str:
    return {
        "new": translate("Results", "yes"),
        "known": translate("Results", "was here already"),
        "clash": translate("Results", "yes, two of one code"),
        "not": translate("Results", "no"),
    }[came]


class BroughtDialog(Notice):
    """What came in, what didn't, and why.

    Signals
    -------
    again_asked()
        Another passphrase is to be tried on those that this one doesn't open.
    """

    again_asked = Signal()

    def __init__(self, rows: Sequence[Brought], parent: QWidget | None = None) -> None:
        new = sum(row.came in ("new", "clash") for row in rows)
        title = self.tr("Results that came in: {count}").format(count=new)
        super().__init__(title, _told(rows), parent)
        self.table: RowsTable[Brought] = RowsTable(_columns(), lambda row: str(row.path))
        self.table.setAccessibleName(self.tr("What came of each file"))
        self.table.setMinimumSize(760, 240)
        self.table.show_rows(sorted(rows, key=lambda row: _ORDER.index(row.came)))
        self.table.setCurrentIndex(self.table.rows.index(0, 0))
        self.body.addWidget(self.table, 1)
        self.whole = QLabel()
        self.whole.setWordWrap(True)
        self.whole.setMinimumHeight(3 * self.whole.fontMetrics().lineSpacing())
        self.body.addWidget(self.whole)
        self.table.moved.connect(self._show_whole)
        self._show_whole()
        self.again = self.buttons.addButton(
            self.tr("Try another passphrase..."), QDialogButtonBox.ButtonRole.ActionRole
        )
        self.again.setVisible(any(row.again for row in rows))
        self.again.clicked.connect(self._again)
        self.finish()

    def _show_whole(self) -> None:
        """What came of the file that has the focus, in full: a cell may be too narrow for it."""
        row = self.table.current
        self.whole.setText(f"{row.path.name}: {row.words}" if row is not None else "")

    def _again(self) -> None:
        self.accept()
        self.again_asked.emit()


def _told(rows: Sequence[Brought]) -> str:
    """How many of each there are, in a sentence."""
    counts = {came: sum(row.came == came for row in rows) for came in _ORDER}
    said = []
    for came, text in (
        ("known", translate("Results", "Here already: {count}.")),
        ("clash", translate("Results", "With the code of another paper: {count}.")),
        ("not", translate("Results", "Not come in, and nothing of it: {count}.")),
    ):
        if counts[came]:
            said.append(text.format(count=counts[came]))
    return " ".join(said)


class Bringing(QObject):
    """Brings files in, with the dialogs that it takes.

    Parameters
    ----------
    window
        Shows the dialogs.
    merge
        Takes an opened file into the logbook.

    Signals
    -------
    brought(rows)
        It is over; what came of each file (`Brought`).
    """

    brought = Signal(list)

    def __init__(self, window: WindowFrame, merge: Merge, parent: QWidget) -> None:
        super().__init__(parent)
        self._window, self._merge, self._page = window, merge, parent
        self._loading: Loading[list[Opened]] | None = None
        self._opening = Opening(0)
        self._progress: ProgressDialog | None = None
        self._paths: list[Path] = []
        self._opened: list[Opened] = []
        self._rows: list[Brought] = []
        self._look = QTimer(self, interval=_LOOK)
        self._look.timeout.connect(self._show_done)
        self._next = QTimer(self, interval=0)
        self._next.timeout.connect(self._take_next)

    @property
    def busy(self) -> bool:
        """Whether files are being brought in."""
        return self._loading is not None

    def ask_for_files(self) -> None:
        """Let files be chosen, several at once."""
        settings = self._window.settings
        kinds = self.tr("Results (*{suffix});;All files (*)").format(suffix=SUFFIXES["result"])
        names, _ = QFileDialog.getOpenFileNames(
            self._page, self.tr("Bring in results"), settings.folder("trays"), kinds
        )
        if names:
            self.bring([Path(name) for name in names])

    def bring(self, paths: Sequence[Path]) -> None:
        """Ask for the passphrase, then bring these in; of a folder, the results in it."""
        if self.busy:
            return
        files = result_files(paths)
        if not files:
            notice = Notice(
                self.tr("No results there"),
                self.tr("The names of result files end with {suffix}.").format(
                    suffix=SUFFIXES["result"]
                ),
                self._page.window(),
            )
            notice.finish()
            self._window.show_dialog(notice)
            return
        dialog = PassphraseDialog(len(files), self._page.window())
        dialog.stated.connect(partial(self.begin, files))
        self._window.show_dialog(dialog)

    def begin(self, paths: Sequence[Path], passphrase: str) -> None:
        """Open these with a passphrase, and take in what opens."""
        self._paths, self._rows, self._opened = list(paths), [], []
        self._opening = Opening(len(self._paths))
        self._progress = ProgressDialog(len(self._paths), self._page.window())
        self._progress.rejected.connect(self._stop)
        self._window.show_dialog(self._progress)
        self._loading = Loading(
            partial(open_results, tuple(self._paths), passphrase, self._opening)
        )
        self._loading.over.connect(self._take)
        self._loading.start()
        self._look.start()

    def stop(self) -> None:
        """Open no more; what has come in stays."""
        self._opening.stop()
        if self._loading is not None:
            self._loading.wait()

    def _stop(self) -> None:
        self._opening.stop()
        # It is gone once it was closed.
        self._progress = None

    def _show_done(self) -> None:
        if self._progress is not None:
            self._progress.show_done(self._opening.done + len(self._rows))

    def _take(self) -> None:
        assert self._loading is not None
        self._opened = list(self._loading.result)
        self._next.start()

    def _take_next(self) -> None:
        """Take one file in, and give way to the window."""
        if self._opened and not self._opening.stopped:
            self._rows.append(self._taken(self._opened.pop(0)))
            self._show_done()
            return
        self._next.stop()
        self._look.stop()
        seen = {row.path for row in self._rows}
        stopped = self.tr("Stopped before its turn. Bring it in again.")
        self._rows += [
            Brought(path, "not", "", "", stopped) for path in self._paths if path not in seen
        ]
        self._loading = None
        progress, self._progress = self._progress, None
        if progress is not None:
            progress.accept()
        self.brought.emit(self._rows)
        self._show_rows(self._rows)

    def _taken(self, opened: Opened) -> Brought:
        path = opened.path
        if opened.result is None:
            return Brought(path, "not", "", "", refused_words(opened), opened.wants_passphrase)
        title = sitting_title(opened.result.plan)
        code = opened.result.code
        try:
            merged = self._merge(opened)
        except LogbookError as error:
            said = " ".join(trouble_words(error.trouble, str(error.path))).replace("\n", " ")
            return Brought(path, "not", code, title, said)
        return Brought(path, merged.came, code, title, merged_words(merged))

    def _show_rows(self, rows: Sequence[Brought]) -> None:
        dialog = BroughtDialog(rows, self._page.window())
        again = [row.path for row in rows if row.again]
        dialog.again_asked.connect(partial(self.bring, again))
        # Whoever brought something in wants to see it, not to press the same button again.
        dialog.finished.connect(lambda _: self._page.setFocus())
        self._window.show_dialog(dialog)


def sitting_title(plan: Mapping[str, Any]) -> str:
    """What a sitting is called, in the language that is spoken."""
    title: Any = plan.get("title", "")
    return Text.of(title).in_language(words.language())


def merged_words(merged: Merged) -> str:
    """What came of a file that could be opened."""
    if merged.came == "known":
        return translate("Results", "The same paper came in before; nothing was changed.")
    if merged.came == "clash":
        return translate(
            "Results",
            "Another paper of this code is in the sitting. Both are kept and marked: see whose "
            "they are.",
        )
    return translate("Results", "Answers: {count}.").format(count=merged.attempts)


def refused_words(opened: Opened) -> str:
    """Why a file could not be opened, and what to do."""
    if opened.seal is not None:
        first, then = seal_words(opened.seal)
        return f"{first}. {then}"
    said = []
    for fault in opened.faults[:_FAULTS]:
        wrong, right = fault_words(fault)
        at = f"{fault.pointer}: " if fault.pointer else ""
        needed = translate("Results", "right would be {right}").format(right=right)
        said.append(f"{at}{wrong}; {needed}" if right else f"{at}{wrong}")
    more = len(opened.faults) - len(said)
    if more > 0:
        said.append(translate("Results", "and {count} more").format(count=more))
    return ". ".join(said) + "."
