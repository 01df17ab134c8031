"""In the middle of the class: its learners, found, sorted and chosen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from typing import Final

from PySide6.QtCore import QDate, QLocale, Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMenu,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.sitting.codes import code_key
from trainer.hint import Hint
from trainer.look.tokens import Theme
from trainer.school.roster import Group, Person
from trainer.sittings.tick_table import Row, TickTable

__all__ = ["PeopleView"]

_EARLY: Final = datetime.min.replace(tzinfo=UTC)

_SORTS: Final[tuple[Callable[[Person], object], ...]] = (
    lambda one: (one.code is None, code_key(one.code or "")),
    lambda one: one.name.casefold(),
    lambda one: len(one.groups),
    lambda one: one.attempts,
    lambda one: one.last or _EARLY,
)
"""What each column is sorted by."""


class PeopleView(QFrame):
    """Buttons, a field to find somebody, and the table.

    Signals
    -------
    asked(name)
        ``add``, ``paste``, ``change``, ``erase``, ``import``, ``export``, ``slips``.
    grouped(group, on)
        Those who are chosen are put into a group, or taken out of it.
    """

    asked = Signal(str)
    grouped = Signal(str, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "panel")
        self._people: tuple[Person, ...] = ()
        self._groups: tuple[Group, ...] = ()
        self._theme: Theme | None = None
        self._sort: tuple[int, bool] = (1, False)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(8)
        self._add_bar(column)
        self.rooms = QStackedWidget()
        column.addWidget(self.rooms, 1)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.said.setProperty("tone", "gloss")
        column.addWidget(self.said)
        self.rooms.addWidget(self._nobody())
        self.rooms.addWidget(self._somebody())

    def _add_bar(self, column: QVBoxLayout) -> None:
        self.add = self._button(self.tr("Add..."), "add", self.tr("Ins"))
        self.paste = self._button(self.tr("Add many..."), "paste", "Ctrl+V")
        self.change = self._button(self.tr("Change..."), "change", "F2")
        self.groups = QPushButton(self.tr("Groups"))
        self.groups.setProperty("kind", "segment")
        self.groups.setMinimumHeight(28)
        self.groups.setToolTip(self.tr("Put those chosen into a group, or take them out"))
        self._group_menu = QMenu(self)
        self._group_menu.aboutToShow.connect(self._fill_groups)
        self.groups.setMenu(self._group_menu)
        self.erase = self._button(self.tr("Erase..."), "erase", self.tr("Del"))
        self.more = QPushButton(self.tr("Table"))
        self.more.setProperty("kind", "segment")
        self.more.setMinimumHeight(28)
        menu = QMenu(self)
        for words, name in (
            (self.tr("&Add from a file (CSV)..."), "import"),
            (self.tr("&Save as a file (CSV)..."), "export"),
            (self.tr("Code slips to &print (PDF)..."), "slips"),
        ):
            action = menu.addAction(words)
            action.triggered.connect(lambda _=False, name=name: self.asked.emit(name))
        self.more.setMenu(menu)
        row = QHBoxLayout()
        row.setSpacing(6)
        for button in (self.add, self.paste, self.more):
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)
        self.search = QLineEdit()
        self.search.setPlaceholderText(self.tr("Find a name or a code"))
        self.search.setAccessibleName(self.search.placeholderText())
        self.search.setClearButtonEnabled(True)
        self.search.textChanged.connect(lambda _: self._show())
        row = QHBoxLayout()
        row.setSpacing(6)
        row.addWidget(self.search, 1)
        for button in (self.change, self.groups, self.erase):
            row.addWidget(button)
        column.addLayout(row)

    def _nobody(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setSpacing(12)
        column.addStretch(2)
        self.empty = Hint(400)
        column.addWidget(self.empty, alignment=Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
        return holder

    def _somebody(self) -> QWidget:
        self.table = TickTable(
            (
                self.tr("Code"),
                self.tr("Name"),
                self.tr("Groups"),
                self.tr("Calls"),
                self.tr("Last"),
            ),
            self.tr("Learners"),
            boxes=False,
        )
        header = self.table.horizontalHeader()
        header.setSectionsClickable(True)
        header.setSortIndicatorShown(True)
        header.setSortIndicator(1, Qt.SortOrder.AscendingOrder)
        header.sectionClicked.connect(self._sort_by)
        self.table.chosen.connect(self._show_buttons)
        self.table.cellDoubleClicked.connect(lambda *_: self.asked.emit("change"))
        return self.table

    def _button(self, words: str, name: str, keys: str) -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setMinimumHeight(28)
        button.setToolTip(f"{words.rstrip('.')} ({keys})")
        button.clicked.connect(lambda: self.asked.emit(name))
        return button

    # What it shows

    def show_people(
        self, people: Sequence[Person], groups: Sequence[Group], theme: Theme, *, whole: bool
    ) -> None:
        """Show who there is.

        Parameters
        ----------
        people
            Of the group that is shown.
        groups
            All groups.
        theme
            Of the window.
        whole
            Whether it is everybody.
        """
        self._people, self._groups, self._theme = tuple(people), tuple(groups), theme
        self.empty.setText(
            self.tr(
                "Nobody is in the class yet. Add learners one by one, or many at once from a "
                "spreadsheet: each gets a code, by which they are known in sittings."
            )
            if whole
            else self.tr(
                "Nobody is in this group yet. Add learners here, or choose some of everybody and "
                "put them into it by the button Groups."
            )
        )
        self._show()

    def _show(self) -> None:
        if self._theme is None:
            return
        wanted = self.search.text().strip().casefold()
        names = {group.id: group.name for group in self._groups}
        found = [
            one
            for one in self._people
            if wanted in one.name.casefold() or wanted in (one.code or "").casefold()
        ]
        column, falling = self._sort
        found.sort(key=lambda one: one.name.casefold())
        found.sort(key=_SORTS[column], reverse=falling)  # type: ignore[arg-type]  # one kind a column
        rows = [self._row(one, names) for one in found]
        self.table.show_rows(rows, self._theme)
        self.rooms.setCurrentIndex(1 if self._people else 0)
        for widget in (self.search, self.change, self.groups, self.erase):
            widget.setVisible(bool(self._people))
        codeless = sum(one.code is None for one in self._people)
        self.said.setVisible(codeless > 0)
        self.said.setText(
            self.tr(
                "%n learner(s) without a code: they can't sit, and nothing of them is sent.",
                "",
                codeless,
            )
        )
        self._show_buttons()

    def _row(self, one: Person, names: dict[str, str]) -> Row:
        groups = ", ".join(sorted(names[key] for key in one.groups if key in names))
        last = ""
        if one.last is not None:
            day = one.last.astimezone()
            shown = QDate(day.year, day.month, day.day)
            last = QLocale().toString(shown, QLocale.FormatType.ShortFormat)
        code = one.code or self.tr("none")
        cells = (code, one.name, groups, str(one.attempts), last)
        return Row(one.id, cells, quiet=one.code is None)

    def _show_buttons(self) -> None:
        chosen = self.chosen
        self.change.setEnabled(len(chosen) == 1)
        self.groups.setEnabled(bool(chosen) and bool(self._groups))
        self.erase.setEnabled(bool(chosen))

    @property
    def chosen(self) -> list[Person]:
        """Those who are chosen."""
        keys = set(map(str, self.table.chosen_keys))
        return [one for one in self._people if one.id in keys]

    def _sort_by(self, column: int) -> None:
        before, falling = self._sort
        self._sort = (column, not falling if column == before else False)
        order = Qt.SortOrder.DescendingOrder if self._sort[1] else Qt.SortOrder.AscendingOrder
        self.table.horizontalHeader().setSortIndicator(column, order)
        self._show()

    def _fill_groups(self) -> None:
        self._group_menu.clear()
        chosen = self.chosen
        for group in self._groups:
            inside = all(group.id in one.groups for one in chosen)
            action = self._group_menu.addAction(group.name.replace("&", "&&"))
            action.setCheckable(True)
            action.setChecked(inside)
            action.triggered.connect(lambda on, group=group.id: self.grouped.emit(group, bool(on)))
