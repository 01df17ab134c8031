"""The class: groups, learners with their codes, how long is kept, and the school's server."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.saying import Saying
from trainer.landing import Landing
from trainer.logbook.keeping import Keeping
from trainer.logbook.opening import LogbookError
from trainer.logbook.words import trouble_words
from trainer.school.roster import Group, Person
from trainer.sittings.class_dealing import ClassDealing
from trainer.sittings.class_keys import KEYS
from trainer.sittings.groups_panel import GroupsPanel
from trainer.sittings.people_view import PeopleView
from trainer.sittings.retention_panel import RetentionPanel
from trainer.sittings.server_panel import ServerPanel
from trainer.sittings.station import Station
from trainer.window import WindowFrame

__all__ = ["ClassPage"]

_LEFT: Final = 208
_RIGHT: Final = 332
_NARROW: Final = 1180
"""Logical px: how wide the panels at both sides are, and below which width of the window less."""


class ClassPage(QWidget):
    """The page of the class.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    keeping
        What keeps the logbook that the class is in.
    station
        Pushes to the school's server.
    """

    def __init__(
        self,
        window: WindowFrame,
        keeping: Keeping,
        station: Station,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self.keeping = keeping
        self.dealing = ClassDealing(window, keeping, self)
        self._groups: tuple[Group, ...] = ()
        self._shown = ""
        self._fill(station)
        self._listen()

    def _fill(self, station: Station) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(8)
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self.trouble.setProperty("tone", "warning")
        self.again = QPushButton(self.tr("Try again"))
        self.again.clicked.connect(self._try_again)
        for widget in (self.trouble, self.again):
            widget.hide()
            whole.addWidget(widget)
        row = QHBoxLayout()
        row.setSpacing(10)
        whole.addLayout(row, 1)
        self.groups = GroupsPanel()
        self.people = PeopleView()
        self.right = QFrame()
        self.right.setProperty("kind", "panel")
        inner = QVBoxLayout(self.right)
        inner.setContentsMargins(10, 4, 10, 10)
        self.side = QTabWidget()
        self.side.setDocumentMode(True)
        self.retention = RetentionPanel()
        self.server = ServerPanel(self.window_frame, station)
        self.side.addTab(self.retention, self.tr("Kept how long"))
        self.side.addTab(_scrolled(self.server), self.tr("School's server"))
        inner.addWidget(self.side)
        row.addWidget(self.groups)
        row.addWidget(self.people, 1)
        row.addWidget(self.right)
        self.saying = Saying(self.people)
        Landing(self, lambda: self.people.table)
        self.setAccessibleName(self.tr("The class"))
        self.window_frame.add_keys(self.tr("Sittings: class"), KEYS.groups)

    def _listen(self) -> None:
        dealing = self.dealing
        dealing.changed.connect(self.show_all)
        dealing.said.connect(self.saying.say)
        self.groups.chosen.connect(self._show_group)
        for part in (self.groups, self.people, self.retention):
            part.asked.connect(self.do)
        self.people.grouped.connect(
            lambda group, on: dealing.put(self.people.chosen, group, inside=on)
        )
        self.retention.days_given.connect(self._keep_for)
        self.window_frame.theme_changed.connect(self.show_all)

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        dealing, groups, chosen = self.dealing, self._groups, self.people.chosen
        group = self.group
        if dealing.keeping.logbook is None:
            self.show_all()
            return
        deeds: dict[str, Callable[[], object]] = {
            "add": lambda: dealing.add(groups, self._shown),
            "paste": lambda: dealing.add_many(groups, self._shown, self._clipboard()),
            "import": lambda: dealing.take_in(groups, self._shown),
            "export": lambda: dealing.give_out(chosen or self._people(), groups),
            "slips": lambda: dealing.print_slips(chosen or self._people()),
            "group new": lambda: dealing.new_group(groups),
            "due": self._look_for_due,
            "find": self.people.search.setFocus,
        }
        if len(chosen) == 1:
            deeds["change"] = lambda: dealing.change(chosen[0], groups)
        if chosen:
            deeds["erase"] = lambda: dealing.erase(chosen)
        if group is not None:
            deeds["group rename"] = lambda: dealing.rename_group(group, groups)
            deeds["group remove"] = lambda: dealing.remove_group(group)
        if self.retention.due:
            deeds["erase due"] = lambda: dealing.erase_due(self.retention.due)
        if name in deeds:
            deeds[name]()

    def _clipboard(self) -> str:
        """What was copied, if it could be a table of learners."""
        text = QGuiApplication.clipboard().text()
        return text if "\n" in text.strip() or "\t" in text else ""

    def _keep_for(self, days: int | None) -> None:
        if self.group is not None:
            self.dealing.keep_for(self.group, days)

    def _look_for_due(self) -> None:
        due = self.dealing.due()
        self.retention.show_due(due, self.window_frame.theme)

    @property
    def group(self) -> Group | None:
        """The group that is shown; None if it is everybody."""
        return next((one for one in self._groups if one.id == self._shown), None)

    def _show_group(self, group: str) -> None:
        self._shown = group
        self.show_all()

    def _people(self) -> list[Person]:
        return self.dealing.tried(lambda: self.dealing.roster.people(self._shown or None)) or []

    # What is shown

    def show_all(self) -> None:
        """Read the class anew, and show it."""
        trouble = self.keeping.trouble
        everybody: list[Person] = []
        groups: list[Group] = []
        if self.keeping.logbook is not None:
            try:
                everybody = self.dealing.roster.people()
                groups = self.dealing.roster.groups()
                trouble = None
            except LogbookError as error:
                trouble = error
        self._groups = tuple(groups)
        if self.group is None:
            self._shown = ""
        people = [one for one in everybody if not self._shown or self._shown in one.groups]
        theme = self.window_frame.theme
        self.groups.show_groups(groups, len(everybody), self._shown)
        self.people.show_people(people, groups, theme, whole=not self._shown)
        self.retention.show_group(self.group)
        self.retention.show_due(None, theme)
        self._show_trouble(trouble)

    def _show_trouble(self, trouble: LogbookError | None) -> None:
        for widget in (self.trouble, self.again):
            widget.setVisible(trouble is not None)
        for part in (self.groups, self.people, self.retention):
            part.setEnabled(trouble is None)
        if trouble is not None:
            self.trouble.setText("\n".join(trouble_words(trouble.trouble, str(trouble.path))))

    def _try_again(self) -> None:
        self.keeping.open(self.keeping.learner.id if self.keeping.learner else None)
        self.show_all()

    # The screen around it

    def open_path(self, path: Path) -> None:
        """Take in a table that was dropped."""
        self.dealing.take_in_file(path, self._groups, self._shown)

    def go_on_from(self, other: ClassPage) -> None:
        """Show the group that another one shows, which is given up."""
        self._shown = other._shown

    def showEvent(self, event: QShowEvent) -> None:
        """Whoever came since is in it."""
        super().showEvent(event)
        self.show_all()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow window the panels at the sides shrink."""
        super().resizeEvent(event)
        narrow = event.size().width() < _NARROW
        self.groups.setFixedWidth(_LEFT - 36 if narrow else _LEFT)
        self.right.setFixedWidth(_RIGHT - 44 if narrow else _RIGHT)

    def minimumSizeHint(self) -> QSize:
        """Not what the panels would like at their widest."""
        return QSize(880, 360)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken for itself."""
        name = KEYS.name_of(event)
        if name is None or event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            super().keyPressEvent(event)
        else:
            self.do(name)


def _scrolled(inner: QWidget) -> QScrollArea:
    """Room for what may say more than there is room for."""
    room = QScrollArea()
    room.setWidgetResizable(True)
    room.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    room.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    room.setProperty("kind", "holder")
    room.setFrameShape(QFrame.Shape.NoFrame)
    room.setWidget(inner)
    return room
