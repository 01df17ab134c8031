"""What is done with a class: learners and groups added, changed, erased; tables in and out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import Final, TypeVar

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.file_faults import FileError, read_bytes
from exercises.writing import replace_file
from trainer.fault_words import fault_words
from trainer.logbook.erasing import Erasure
from trainer.logbook.keeping import Keeping
from trainer.logbook.opening import LogbookError
from trainer.logbook.words import trouble_words
from trainer.school.people import Newcomer, csv_of
from trainer.school.roster import Due, Group, Person, Roster, RosterError, due_erasures
from trainer.shop.question import Answer, Question
from trainer.sittings.class_dialogs import (
    EraseDialog,
    GroupDialog,
    PasteDialog,
    PersonDialog,
    sentence,
)
from trainer.sittings.retention_panel import due_line
from trainer.sittings.slips import slips_pdf
from trainer.sittings.words import learners_word
from trainer.window import WindowFrame

__all__ = ["ClassDealing"]

Result = TypeVar("Result")

_LARGEST: Final = 1024 * 1024
_KIND: Final = "sittings"


class ClassDealing(QObject):
    """Does what the page of the class asks for, with the dialogs that it takes.

    Signals
    -------
    changed()
        The class is another than before.
    said(words)
        Something was done that is worth a line.
    """

    changed = Signal()
    said = Signal(str)

    def __init__(self, window: WindowFrame, keeping: Keeping, parent: QWidget) -> None:
        super().__init__(parent)
        self._window, self._screen = window, parent
        self.keeping = keeping
        self.roster = Roster(keeping)

    # Learners

    def add(self, groups: Sequence[Group], group: str) -> None:
        """Ask for somebody new."""
        others = self.tried(self.roster.people)
        if others is None:
            return
        dialog = PersonDialog(
            None, others, groups, {group} - {""}, self.roster.new_code, self._screen
        )
        dialog.entered.connect(self._add)
        self._window.show_dialog(dialog)

    def _add(self, name: str, code: str, groups: Sequence[str]) -> None:
        def act() -> None:
            (person,) = self.roster.add([Newcomer(name, code, 1)])
            for group in groups:
                self.roster.join(group, [person.id])

        self._done(act)

    def add_many(self, groups: Sequence[Group], group: str, text: str = "") -> None:
        """Ask for many at once."""
        people = self.tried(self.roster.people)
        if people is None:
            return
        dialog = PasteDialog(
            people,
            groups,
            group or None,
            text,
            self._screen,
        )
        dialog.entered.connect(self._add_many)
        self._window.show_dialog(dialog)

    def _add_many(self, found: Sequence[Newcomer], group: str | None) -> None:
        if self._done(lambda: self.roster.add(found, group)):
            self.said.emit(self.tr("Added: {learners}").format(learners=learners_word(len(found))))

    def change(self, person: Person, groups: Sequence[Group]) -> None:
        """Ask for another name, code or other groups."""
        people = self.tried(self.roster.people)
        if people is None:
            return
        others = [one for one in people if one.id != person.id]
        dialog = PersonDialog(
            person, others, groups, person.groups, self.roster.new_code, self._screen
        )
        dialog.entered.connect(partial(self._change, person))
        self._window.show_dialog(dialog)

    def _change(self, person: Person, name: str, code: str, groups: Sequence[str]) -> None:
        def act() -> None:
            if (code or None) != person.code:
                self.roster.set_code(person.id, code or None)
            if name != person.name:
                self.roster.logbook.rename(person.id, name)
            for group in set(groups) - set(person.groups):
                self.roster.join(group, [person.id])
            for group in set(person.groups) - set(groups):
                self.roster.leave(group, [person.id])

        self._done(act)

    def put(self, people: Sequence[Person], group: str, inside: bool) -> None:
        """Put learners into a group, or take them out of it."""
        ids = [one.id for one in people]
        put = self.roster.join if inside else self.roster.leave
        self._done(lambda: put(group, ids))

    def erase(self, people: Sequence[Person]) -> None:
        """Ask whether learners are to be erased, with all that they did."""
        lines = [
            self.tr("{name}: %n call(s)", "", one.attempts).format(name=one.name) for one in people
        ]
        self._ask_erase(
            self.tr("Erase {learners}").format(learners=learners_word(len(people))),
            lines,
            [Erasure(one.id) for one in people],
        )

    def erase_due(self, due: Sequence[Due]) -> None:
        """Ask whether what is due is to be erased."""
        self._ask_erase(
            self.tr("Erase what is due"),
            [due_line(one) for one in due],
            due_erasures(due),
        )

    def _ask_erase(self, title: str, lines: Sequence[str], erasures: Sequence[Erasure]) -> None:
        sealed = self.tried(lambda: self.roster.sealed(erasures))
        if sealed is None:
            return
        text = self.tr(
            "It goes for good: from the logbook, from its log and dated backups, and with the "
            "sealed files on this machine that are named below. What was saved or carried "
            "elsewhere isn't reached; nor is the school's server, where an instructor erases a "
            "code: toe-and-throat school URL --erase CODE"
        )
        if sealed.unknown:
            text += "\n\n" + self.tr(
                "Begun and not handed in: %n sitting(s), sealed in {folder}. Whose doesn't show "
                "before it is resumed, so nothing of that is erased.",
                "",
                len(sealed.unknown),
            ).format(folder=sealed.unknown[0].parent)
        dialog = EraseDialog(
            title, text, [*lines, *(path.name for path in sealed.goes)], self._screen
        )
        dialog.confirmed.connect(lambda: self._erase(erasures, sealed.goes))
        self._window.show_dialog(dialog)

    def _erase(self, erasures: Sequence[Erasure], files: Sequence[Path]) -> None:
        troubles: list[OSError] = []
        self._done(lambda: troubles.extend(self.roster.erase(erasures, files)))
        if troubles:
            said = "\n".join(f"{error.filename}: {error.strerror or error}" for error in troubles)
            self._window.show_notice(self.tr("Some files could not be erased"), said)

    # Groups

    def new_group(self, groups: Sequence[Group]) -> None:
        """Ask for a group's name."""
        dialog = GroupDialog(None, [one.name for one in groups], self._screen)
        dialog.entered.connect(lambda name: self._done(lambda: self.roster.add_group(name)))
        self._window.show_dialog(dialog)

    def rename_group(self, group: Group, groups: Sequence[Group]) -> None:
        """Ask for another name."""
        taken = [one.name for one in groups if one.id != group.id]
        dialog = GroupDialog(group, taken, self._screen)
        dialog.entered.connect(
            lambda name: self._done(
                lambda: self.roster.change_group(group.id, name, group.keep_days)
            )
        )
        self._window.show_dialog(dialog)

    def keep_for(self, group: Group, days: int | None) -> None:
        """What a group's members did is kept so long."""
        self._done(lambda: self.roster.change_group(group.id, group.name, days))

    def remove_group(self, group: Group) -> None:
        """Ask whether a group may go."""
        question = Question(
            self.tr("Remove the group {name}?").format(name=group.name),
            self.tr("Its learners and what they did stay; they are in the group no more."),
            (
                Answer(
                    self.tr("Remove it"),
                    lambda: self._done(lambda: self.roster.remove_group(group.id)),
                ),
                Answer(self.tr("Cancel")),
            ),
            self._screen,
        )
        self._window.show_dialog(question)

    # Tables

    def take_in(self, groups: Sequence[Group], group: str) -> None:
        """Let a table's file be chosen, and show what it would add."""
        name, _ = QFileDialog.getOpenFileName(
            self._screen,
            self.tr("Add learners from a table"),
            self._folder(),
            self.tr("Tables (*.csv *.txt *.tsv);;All files (*)"),
        )
        if name:
            self.take_in_file(Path(name), groups, group)

    def take_in_file(self, path: Path, groups: Sequence[Group], group: str) -> None:
        """Show what a table's file would add."""
        try:
            data = read_bytes(path, _LARGEST)
        except FileError as error:
            lines = [". ".join(fault_words(fault)) for fault in error.faults]
            self._window.show_notice(self.tr("It can't be read"), "\n".join(lines))
            return
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            # A spreadsheet on Windows saves so unless it is told otherwise.
            text = data.decode("cp1252", "replace")
        self.add_many(groups, group, text)

    def give_out(self, people: Sequence[Person], groups: Sequence[Group]) -> None:
        """Save the people that are shown as a table."""
        names = {one.id: one.name for one in groups}
        rows = [
            (one.name, one.code or "", ", ".join(names[key] for key in one.groups if key in names))
            for one in people
        ]
        path = self._where(self.tr("Save the class as a table"), "class.csv", "CSV (*.csv)")
        if path is not None:
            # With a mark that spreadsheets take UTF-8 by.
            self._write(path, csv_of(rows).encode("utf-8-sig"))

    def print_slips(self, people: Sequence[Person]) -> None:
        """Save slips with the codes, to be cut and handed out."""
        coded = [(one.name, one.code) for one in people if one.code]
        if not coded:
            self.said.emit(self.tr("Nobody here has a code."))
            return
        path = self._where(self.tr("Save code slips"), "codes.pdf", "PDF (*.pdf)")
        if path is not None:
            self._write(path, slips_pdf(coded))

    def _where(self, title: str, name: str, kinds: str) -> Path | None:
        begin = str(Path(self._folder()) / name)
        chosen, _ = QFileDialog.getSaveFileName(self._screen, title, begin, kinds)
        if not chosen:
            return None
        suffix = Path(name).suffix
        return Path(chosen if chosen.endswith(suffix) else chosen + suffix)

    def _write(self, path: Path, data: bytes) -> None:
        try:
            replace_file(path, data)
        except OSError as error:
            self._window.show_notice(
                self.tr("It could not be written"), f"{path}\n{error.strerror or error}"
            )
            return
        self.said.emit(self.tr("Written: {file}").format(file=path.name))

    def _folder(self) -> str:
        documents = QStandardPaths.StandardLocation.DocumentsLocation
        return self._window.settings.folder(_KIND) or QStandardPaths.writableLocation(documents)

    # Doing

    def due(self) -> list[Due] | None:
        """Return what is due today; None if that can't be found out, which is said."""
        today = datetime.now(UTC).astimezone().date()
        return self.tried(lambda: self.roster.due(today))

    def _done(self, act: Callable[[], object]) -> bool:
        """Do something, or say why it couldn't be done; return whether it was."""

        def acted() -> bool:
            act()
            return True

        done = self.tried(acted) is True
        # Half of it may have been done.
        self.changed.emit()
        return done

    def tried(self, act: Callable[[], Result]) -> Result | None:
        """Do something, or say why it couldn't be done."""
        try:
            return act()
        except RosterError as error:
            title = self.tr("That can't be")
            self._window.show_notice(title, "\n".join(map(sentence, error.faults)))
        except LogbookError as error:
            self._window.show_notice(*trouble_words(error.trouble, str(error.path)))
        return None
