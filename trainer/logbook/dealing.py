"""What is done with a logbook: learners added, renamed, erased; exports and copies."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Final, TypeVar

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QDialogButtonBox, QFileDialog, QLabel, QLineEdit, QWidget

from trainer.language import spoken
from trainer.logbook.backups import back_up, restore
from trainer.logbook.exports import csv_lines, statements
from trainer.logbook.findings import NEWEST, findings_of
from trainer.logbook.keeping import Keeping
from trainer.logbook.plots import style_of
from trainer.logbook.sheets import Sheet, html_sheet, write_pdf
from trainer.logbook.store import Learner, Logbook, LogbookError
from trainer.logbook.words import plot_words, trouble_words
from trainer.look.tokens import LIGHT
from trainer.notices import Notice
from trainer.window import WindowFrame

Result = TypeVar("Result")

__all__ = ["AskDialog", "Dealing", "write_lines"]

_SUFFIX: Final[Mapping[str, str]] = {
    "csv": ".csv",
    "xapi": ".jsonl",
    "pdf": ".pdf",
    "html": ".html",
    "back up": ".sqlite3",
}


class AskDialog(Notice):
    """Asks for a name, or for a word that shows that something is meant.

    Parameters
    ----------
    title, text
        What it is about.
    label
        Of the field.
    button
        What the button says that does it.
    begin
        What stands in the field.
    word
        Where this isn't empty, the button does it only once the field says this.
    """

    answered = Signal(str)

    def __init__(
        self, title: str, text: str, label: str, button: str,
        begin: str = "", word: str = "", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(title, text, parent)
        self._word = word
        caption = QLabel(label)
        self.field = QLineEdit(begin)
        self.field.setMaxLength(200)
        self.field.setAccessibleName(label)
        caption.setBuddy(self.field)
        self.body.addWidget(caption)
        self.body.addWidget(self.field)
        self.button = self.buttons.addButton(button, QDialogButtonBox.ButtonRole.AcceptRole)
        self.button.setDefault(True)
        self.buttons.accepted.connect(self._answer)
        self.field.textChanged.connect(self._check)
        self._check()
        self.finish()
        self.field.selectAll()
        self.field.setFocus()

    def _check(self) -> None:
        said = self.field.text().strip()
        self.button.setEnabled(said == self._word if self._word else bool(said))

    def _answer(self) -> None:
        if self.button.isEnabled():
            self.answered.emit(self.field.text().strip())
            self.accept()


class Dealing(QObject):
    """Does what the panel asks for, with the dialogs that it takes.

    Signals
    -------
    changed
        The logbook has other learners or other attempts than before.
    """

    changed = Signal()

    def __init__(self, window: WindowFrame, keeping: Keeping, parent: QWidget) -> None:
        super().__init__(parent)
        self._window = window
        self._keeping = keeping
        self._screen = parent

    def deal(self, name: str) -> None:
        """Do what is called `name` by `PeoplePanel.asked`."""
        logbook, learner = self._keeping.logbook, self._keeping.learner
        if name == "restore":
            self._ask_for_copy()
        elif logbook is None or learner is None:
            return
        elif name == "add":
            self._ask_name(self.tr("Add a learner"), self.tr("Add"), "", self._add)
        elif name == "rename":
            self._ask_name(self.tr("Rename {name}").format(name=learner.name), self.tr("Rename"),
                           learner.name, self._rename)  # fmt: skip
        elif name == "erase":
            self._ask_erase(learner)
        else:
            self._export(name, logbook, learner)

    def choose(self, learner: str) -> None:
        """Somebody else is at the bench."""
        logbook = self._keeping.logbook
        if logbook is not None:
            for one in self._tried(logbook.learners) or []:
                if one.id == learner:
                    self._keeping.choose(one)
            self.changed.emit()

    # --- learners -------------------------------------------------------------------------------

    def _ask_name(self, title: str, button: str, begin: str, then: Callable[[str], None]) -> None:
        text = self.tr("A name of their own choosing: it needn't be the one in their passport.")
        dialog = AskDialog(title, text, self.tr("Name"), button, begin, parent=self._screen)
        dialog.answered.connect(then)
        self._window.show_dialog(dialog)

    def _add(self, name: str) -> None:
        logbook = self._keeping.logbook
        assert logbook is not None
        made = self._tried(lambda: logbook.add_learner(name))
        if made is not None:
            self._keeping.choose(made)
            self.changed.emit()

    def _rename(self, name: str) -> None:
        logbook, learner = self._keeping.logbook, self._keeping.learner
        assert logbook is not None
        assert learner is not None
        if self._done(lambda: logbook.rename(learner.id, name)):
            self._keeping.choose(Learner(learner.id, name))
            self.changed.emit()

    def _ask_erase(self, learner: Learner) -> None:
        text = self.tr(
            "All attempts of {name} are erased for good, from the logbook and from its own dated "
            "backups. Copies that were carried away are not reached, nor what was handed in "
            "sealed: the class page, under Sittings, erases that too. To go on, write the name."
        )
        dialog = AskDialog(
            self.tr("Erase {name}").format(name=learner.name), text.format(name=learner.name),
            self.tr("Name"), self.tr("Erase for good"), word=learner.name, parent=self._screen,
        )  # fmt: skip
        dialog.answered.connect(lambda _: self._erase(learner))
        self._window.show_dialog(dialog)

    def _erase(self, learner: Learner) -> None:
        if self._done(lambda: self._keeping.erase(learner)):
            self.changed.emit()

    # --- files ----------------------------------------------------------------------------------

    def _export(self, kind: str, logbook: Logbook, learner: Learner) -> None:
        path = self._where_to(kind, learner)
        if path is None:
            return
        acts: dict[str, Callable[[], None]] = {
            "csv": lambda: write_lines(path, csv_lines(logbook.every(learner.id)), bom=True),
            "xapi": lambda: write_lines(
                path, (f"{line}\n" for line in statements(learner, logbook.every(learner.id)))
            ),
            "pdf": lambda: write_pdf(
                self._sheet(logbook, learner), style_of(LIGHT, plot_words()), path
            ),
            "html": lambda: write_lines(path, [html_sheet(self._sheet(logbook, learner))]),
            "back up": lambda: back_up(logbook.path, path),
        }
        if self._done(acts[kind]):
            notice = Notice(self.tr("It is written"), str(path), self._screen)
            notice.finish()
            self._window.show_dialog(notice)

    def _sheet(self, logbook: Logbook, learner: Learner) -> Sheet:
        tallies = logbook.tallies(learner.id, newest_lines=NEWEST)
        found = findings_of(tallies, logbook.repeats(learner.id))
        unit = self._window.settings.unit or "mm"
        return Sheet(learner.name, datetime.now(UTC).astimezone().date(), found, unit, spoken())

    def _where_to(self, kind: str, learner: Learner) -> Path | None:
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        plain = "".join(c if c.isalnum() else "-" for c in learner.name).strip("-") or "learner"
        stem = f"toe-and-throat-{'logbook' if kind == 'back up' else plain}"
        suffix = _SUFFIX[kind]
        kinds = f"{suffix[1:].upper()} (*{suffix})"
        name, _ = QFileDialog.getSaveFileName(
            self._screen, self.tr("Save as"), str(Path(folder) / f"{stem}{suffix}"), kinds
        )
        if not name:
            return None
        return Path(name if name.endswith(suffix) else name + suffix)

    def _ask_for_copy(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self._screen, self.tr("Put a backup back"), str(self._keeping.backups),
            self.tr("Logbook (*.sqlite3)"),
        )  # fmt: skip
        if name:
            self.put_back(Path(name))

    def put_back(self, copy: Path) -> None:
        """Put the logbook back from a copy, and open it."""
        self._keeping.close()
        now = datetime.now(UTC)
        before = self._tried(lambda: (restore(copy, self._keeping.path, now),))
        self._keeping.open(self._keeping.learner.id if self._keeping.learner else None)
        if before is not None and before[0] is not None:
            text = self.tr("What was there until now is kept as {path}.")
            notice = Notice(
                self.tr("The backup is back"), text.format(path=before[0]), self._screen
            )
            notice.finish()
            self._window.show_dialog(notice)
        self.changed.emit()

    def _done(self, act: Callable[[], None]) -> bool:
        """Do something, or say why it couldn't be done; return whether it was."""

        def acted() -> bool:
            act()
            return True

        return self._tried(acted) is True

    def _tried(self, act: Callable[[], Result]) -> Result | None:
        """Do something, or say why it couldn't be done."""
        try:
            return act()
        except LogbookError as error:
            first, more = trouble_words(error.trouble, str(error.path))
        except OSError as error:
            first = self.tr("It could not be written.")
            more = f"{error.filename or ''}\n{error.strerror or error}".strip()
        notice = Notice(first, more, self._screen)
        notice.finish()
        self._window.show_dialog(notice)
        return None


def write_lines(path: Path, lines: Iterable[str], *, bom: bool = False) -> None:
    """Write text whole, or leave what was there.

    Parameters
    ----------
    path
        Where to.
    lines
        With their ends.
    bom
        Whether it begins with a mark that spreadsheets take UTF-8 by.

    Raises
    ------
    OSError
        If it can't be written.
    """
    temporary = path.with_name(f".{path.name}.new")
    try:
        with temporary.open("w", encoding="utf-8-sig" if bom else "utf-8", newline="") as file:
            file.writelines(lines)
        temporary.replace(path)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise
