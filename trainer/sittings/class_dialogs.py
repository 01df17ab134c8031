"""Dialogs of the class: a learner, many at once, a group, and what is erased for good."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Collection, Sequence
from typing import Final

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QSizePolicy,
    QWidget,
)

from geometry.faults import Fault
from trainer.bench.translation import translate
from trainer.notices import Notice
from trainer.school.people import Newcomer, code_faults, newcomers, there_already
from trainer.school.roster import Group, Person
from trainer.shop.entry import message_label
from trainer.shop.words import fault_sentence
from trainer.sittings.counts import SittingCounts
from trainer.sittings.words import learners_word

__all__ = ["EraseDialog", "GroupDialog", "PasteDialog", "PersonDialog", "sentence"]

_PAUSE: Final = 150
"""ms that typing rests before what was typed is looked through."""


def sentence(fault: Fault) -> str:
    """A fault as a sentence; of a table with its line."""
    words = fault_sentence(fault)
    words = words[:1].upper() + words[1:]
    line = fault.at.removeprefix("/")
    if not line.isdecimal():
        return words
    return translate("Class", "Line {n}: {words}").format(n=line, words=words)


class _Asking(Notice):
    """A dialog with two buttons, of which the first does something."""

    def __init__(self, title: str, text: str, button: str, parent: QWidget | None) -> None:
        super().__init__(title, text, parent)
        self.buttons.clear()
        self.take = QPushButton(button)
        self.take.setProperty("kind", "primary")
        self.take.setDefault(True)
        self.take.clicked.connect(self._take)
        self.leave = QPushButton(translate("Class", "Cancel"))
        self.leave.setProperty("kind", "tall")
        self.leave.clicked.connect(self.reject)
        for each in (self.take, self.leave):
            self.buttons.addButton(each, QDialogButtonBox.ButtonRole.ActionRole)

    def _take(self) -> None:
        """Do it."""
        self.accept()


def _field(grid: QGridLayout, row: int, name: str, text: str) -> QLineEdit:
    label, field = QLabel(name), QLineEdit(text)
    field.setAccessibleName(name)
    label.setBuddy(field)
    grid.addWidget(label, row, 0)
    grid.addWidget(field, row, 1)
    return field


class PersonDialog(_Asking):
    """Somebody new, or somebody who is there already.

    Parameters
    ----------
    person
        Who is there; None to add somebody.
    others
        Everybody else.
    groups
        All groups; `chosen` those that they are in.
    new_code
        Makes a code that nobody has.

    Signals
    -------
    entered(name, code, groups)
        Ids of groups; an empty code is none.
    """

    entered = Signal(str, str, object)

    def __init__(
        self,
        person: Person | None,
        others: Sequence[Person],
        groups: Sequence[Group],
        chosen: Collection[str],
        new_code: Callable[[], str],
        parent: QWidget | None = None,
    ) -> None:
        title = (
            translate("Class", "Add a learner")
            if person is None
            else translate("Class", "Change a learner")
        )
        text = translate(
            "Class",
            "The name stays on this machine. In sittings, in results and on the school's server "
            "there is the code alone.",
        )
        button = translate("Class", "Add") if person is None else translate("Class", "Change")
        super().__init__(title, text, button, parent)
        self._person, self._others = person, tuple(others)
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        name = person.name if person is not None else ""
        code = (person.code or "") if person is not None else new_code()
        self.name = _field(grid, 0, translate("Class", "Name here"), name)
        self.name.setMaxLength(400)
        self.code = _field(grid, 1, translate("Class", "Code"), code)
        self.code.setMaxLength(200)
        self.new = QPushButton(translate("Class", "New code"))
        self.new.setProperty("kind", "segment")
        self.new.setMinimumHeight(28)
        self.new.clicked.connect(lambda: self.code.setText(new_code()))
        grid.addWidget(self.new, 1, 2)
        self.body.addLayout(grid)
        self.message = message_label()
        self.body.addWidget(self.message)
        self.groups = _boxes(groups, chosen)
        if groups:
            heading = QLabel(translate("Class", "Groups"))
            heading.setProperty("tone", "heading")
            self.body.addWidget(heading)
            self.body.addLayout(_in_columns(list(self.groups.values())))
        for field in (self.name, self.code):
            field.textChanged.connect(self._check)
        self.finish()
        self._check()
        self.name.setFocus()

    def _faults(self) -> list[Fault]:
        name, code = self.name.text().strip(), self.code.text().strip()
        codes = [one.code for one in self._others if one.code]
        if self._person is not None and not code:
            faults: list[Fault] = []
        else:
            faults = code_faults(code, codes)
        # What a table says of a name holds of one name too.
        out = io.StringIO()
        csv.writer(out).writerow((name, ""))
        found = newcomers("name,code\r\n" + out.getvalue(), [one.name for one in self._others])[1]
        return [*faults, *(fault for fault in found if fault.code != "learners-none")]

    def _check(self) -> None:
        faults = self._faults()
        nameless = not self.name.text().strip()
        self.message.setText("\n".join(sentence(_bare(fault)) for fault in faults))
        self.message.setVisible(bool(faults))
        # Somebody new may be called by their code.
        self.take.setEnabled(not faults and not (nameless and self._person is not None))

    def _take(self) -> None:
        if not self.take.isEnabled():
            return
        code = self.code.text().strip()
        name = self.name.text().strip() or code
        chosen = [key for key, box in self.groups.items() if box.isChecked()]
        self.entered.emit(name, code, chosen)
        self.accept()


def _bare(fault: Fault) -> Fault:
    """A fault without its place: there is but one."""
    return Fault("", fault.code, fault.text, fault.right, fault.params)


def _boxes(groups: Sequence[Group], chosen: Collection[str]) -> dict[str, QCheckBox]:
    found = {}
    for group in groups:
        box = QCheckBox(group.name.replace("&", "&&"))
        box.setAccessibleName(group.name)
        box.setChecked(group.id in chosen)
        found[group.id] = box
    return found


def _in_columns(boxes: Sequence[QWidget]) -> QGridLayout:
    grid = QGridLayout()
    for at, box in enumerate(boxes):
        grid.addWidget(box, at // 2, at % 2)
    return grid


class PasteDialog(_Asking):
    """Many at once, pasted or out of a file: whatever is wrong with it is said all at once.

    Parameters
    ----------
    people
        Who is there already.
    groups
        All groups; `group` is the id of the one that is shown, or None.
    text
        What it begins with.

    Signals
    -------
    entered(newcomers, group)
        These, into that group; None if into none.
    """

    entered = Signal(object, object)

    def __init__(
        self,
        people: Sequence[Person],
        groups: Sequence[Group],
        group: str | None,
        text: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(
            translate("Class", "Add many learners"),
            translate(
                "Class",
                "A line for each: a name, then a code if they have one. Whoever has none gets one "
                "that is made. Paste from a spreadsheet, or type.",
            ),
            translate("Class", "Add"),
            parent,
        )
        self._names = [one.name for one in people]
        self._there = [(one.name, one.code) for one in people if one.code]
        self._found: list[Newcomer] = []
        self.text = QPlainTextEdit(text)
        self.text.setAccessibleName(translate("Class", "Names and codes"))
        self.text.setPlaceholderText(translate("Class", "Pia; HK4-7TK\nOdo"))
        self.text.setTabChangesFocus(True)
        self.text.setMinimumSize(560, 190)
        self.body.addWidget(self.text, 3)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.body.addWidget(self.said)
        self.faults = QPlainTextEdit()
        self.faults.setReadOnly(True)
        self.faults.setTabChangesFocus(True)
        self.faults.setAccessibleName(translate("Class", "What is wrong"))
        self.faults.setMinimumHeight(96)
        self.faults.hide()
        self.body.addWidget(self.faults, 2)
        row = QHBoxLayout()
        label = QLabel(translate("Class", "Into the group"))
        self.group = QComboBox()
        self.group.setAccessibleName(label.text())
        self.group.addItem(translate("Class", "none"), None)
        for each in groups:
            self.group.addItem(each.name, each.id)
        self.group.setCurrentIndex(max(0, self.group.findData(group)) if group else 0)
        label.setBuddy(self.group)
        row.addWidget(label)
        row.addWidget(self.group)
        row.addStretch(1)
        self.body.addLayout(row)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_PAUSE)
        self._rest.timeout.connect(self.look_through)
        self.text.textChanged.connect(self._begin)
        self.take.setDefault(False)
        self.finish()
        self.look_through()
        self.text.setFocus()

    def _begin(self) -> None:
        self.take.setEnabled(False)
        self._rest.start()

    def look_through(self) -> None:
        """Look through what was typed, and say all that is wrong with it."""
        self._rest.stop()
        text = self.text.toPlainText()
        codes = [code for _, code in self._there]
        self._found, faults = newcomers(text, self._names, codes, self._there)
        if not text.strip():
            faults = []
        self.faults.setPlainText("\n".join(sentence(fault) for fault in faults))
        self.faults.setVisible(bool(faults))
        if faults:
            self.said.setText(SittingCounts().wrongs(len(faults)))
        else:
            words = translate("Class", "{learners} to be added.")
            said = words.format(learners=learners_word(len(self._found)))
            known = there_already(text, self._there)
            if known:
                passed = translate("Class", "Here already, and passed over: {count}.")
                said = f"{said} {passed.format(count=known)}"
            self.said.setText(said)
        self.take.setEnabled(bool(self._found) and not faults)

    def _take(self) -> None:
        if self._rest.isActive():
            self.look_through()
        if self.take.isEnabled():
            self.entered.emit(self._found, self.group.currentData())
            self.accept()


class GroupDialog(_Asking):
    """A group's name.

    Parameters
    ----------
    group
        The one to rename; None to add one.
    taken
        Names of the others.

    Signals
    -------
    entered(name)
        This one.
    """

    entered = Signal(str)

    def __init__(
        self, group: Group | None, taken: Collection[str], parent: QWidget | None = None
    ) -> None:
        new = group is None
        super().__init__(
            translate("Class", "New group") if new else translate("Class", "Rename the group"),
            translate("Class", "A class, a course, a shift. A learner can be in several."),
            translate("Class", "Add") if new else translate("Class", "Rename"),
            parent,
        )
        self._taken = frozenset(taken)
        grid = QGridLayout()
        begin = group.name if group is not None else ""
        self.name = _field(grid, 0, translate("Class", "Name"), begin)
        self.name.setMaxLength(100)
        self.body.addLayout(grid)
        self.message = message_label()
        self.body.addWidget(self.message)
        self.name.textChanged.connect(self._check)
        self.finish()
        self._check()
        self.name.selectAll()
        self.name.setFocus()

    def _check(self) -> None:
        name = self.name.text().strip()
        twice = name in self._taken
        self.message.setText(translate("Class", "There is a group of that name.") if twice else "")
        self.message.setVisible(twice)
        self.take.setEnabled(bool(name) and not twice)

    def _take(self) -> None:
        if self.take.isEnabled():
            self.entered.emit(self.name.text().strip())
            self.accept()


class EraseDialog(_Asking):
    """What is erased for good: all of it is listed, and has to be confirmed by a tick.

    Parameters
    ----------
    lines
        What goes, a line each.

    Signals
    -------
    confirmed()
        It is to be erased.
    """

    confirmed = Signal()

    def __init__(
        self, title: str, text: str, lines: Sequence[str], parent: QWidget | None = None
    ) -> None:
        super().__init__(title, text, translate("Class", "Erase for good"), parent)
        self.list = QPlainTextEdit("\n".join(lines))
        self.list.setReadOnly(True)
        self.list.setTabChangesFocus(True)
        self.list.setAccessibleName(translate("Class", "What is erased"))
        self.list.setMinimumSize(480, 110)
        self.list.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.body.addWidget(self.list, 1)
        self.sure = QCheckBox(
            translate("Class", "I have read the list, and nothing of it is needed any more")
        )
        self.sure.toggled.connect(self.take.setEnabled)
        self.body.addWidget(self.sure)
        self.take.setEnabled(False)
        self.take.setDefault(False)
        self.leave.setDefault(True)
        self.finish()
        self.leave.setFocus()

    def _take(self) -> None:
        if self.sure.isChecked():
            self.confirmed.emit()
            self.accept()
