"""What the rules make of the open coupon: the right call, the doubt, every check."""

from __future__ import annotations

from functools import cache
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QIcon, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from exercises.checks import Check
from exercises.judging import Judgement
from geometry.lengths import Unit
from trainer.bench.grounds import needed_words, source_word
from trainer.bench.reasons import measure_word
from trainer.bench.translation import translate
from trainer.bench.words import disposition_word, face_word
from trainer.figures import figures, length_words
from trainer.language import spoken
from trainer.look.icons import icon_pixmap
from trainer.look.tokens import Role, Theme

__all__ = ["ChecksTable", "MeasuresTable", "VerdictLine", "check_words", "verdict_of"]

_SIGNS: Final[dict[str, tuple[str, Role]]] = {
    "meets": ("disc", "good"),
    "near": ("slash", "not seated"),
    "fails": ("ring", "fault"),
}

_MARGIN: Final = 3
"""The column of margins."""
_WIDE: Final = 350
"""Logical px from which on every column may have room."""

_MEASURES: Final = (
    "leg_base",
    "leg_upright",
    "actual_throat",
    "theoretical_throat",
    "effective_throat",
    "effective_size",
    "convexity",
    "concavity",
)


@cache
def _icon(sign: str, colour: str, ratio: float) -> QIcon:
    return QIcon(icon_pixmap(sign, colour, 14, ratio))


def verdict_of(check: Check) -> str:
    """``meets``, ``fails``, or ``near``: too near to be told."""
    return "near" if check.near else "meets" if check.passed else "fails"


def _short_word(key: str) -> str:
    """A check by a name that has room in a column."""
    known = {
        "leg_base": translate("Shop", "Base leg"),
        "leg_upright": translate("Shop", "Upright leg"),
        "undercut_base": translate("Shop", "Base undercut"),
        "undercut_upright": translate("Shop", "Upright undercut"),
        "overlap_base": translate("Shop", "Base overlap"),
        "overlap_upright": translate("Shop", "Upright overlap"),
        "toe_angle_base": translate("Shop", "Base toe angle"),
        "toe_angle_upright": translate("Shop", "Upright toe angle"),
        "asymmetry": translate("Shop", "Legs differ by"),
        "maximum_size": translate("Shop", "Size at the edge"),
    }
    word = known.get(key) or measure_word(key)
    return word[:1].upper() + word[1:]


def _verdict_word(verdict: str) -> str:
    return {
        "meets": translate("Shop", "meets"),
        "fails": translate("Shop", "fails"),
        "near": translate("Shop", "in doubt"),
    }[verdict]


def _said(value: float, unit: Unit, kind: str = "mm") -> str:
    if kind == "degrees":
        return figures(f"{value:.1f}\u00b0")
    return length_words(value, unit, decimals=2 if unit == "mm" else 3)


def check_words(check: Check, unit: Unit) -> tuple[str, str, str, str, str]:
    """Name, measured value, limit, margin and verdict of a check."""
    sign = "\u2265" if check.bound == "at_least" else "\u2264"
    margin = check.measured - check.limit
    if check.bound == "at_most":
        margin = -margin
    over = "+" if margin > 0.0 else "\u2212" if margin < 0.0 else ""
    return (
        _short_word(check.key),
        _said(check.measured, unit, check.unit),
        f"{sign} {_said(check.limit, unit, check.unit)}",
        f"{over}{_said(abs(margin), unit, check.unit)}",
        _verdict_word(verdict_of(check)),
    )


class VerdictLine(QFrame):
    """The right call in a word, and a warning where learners may call it either way."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "holder")
        column = QVBoxLayout(self)
        column.setContentsMargins(2, 2, 2, 2)
        column.setSpacing(2)
        row = QHBoxLayout()
        row.setSpacing(8)
        self.sign = QLabel()
        self.sign.setFixedSize(18, 18)
        self.words = QLabel()
        self.words.setProperty("tone", "title")
        self.words.setWordWrap(True)
        self.face = QLabel()
        self.face.setProperty("tone", "quiet")
        row.addWidget(self.sign)
        row.addWidget(self.words, 1)
        row.addWidget(self.face)
        column.addLayout(row)
        self.doubt = QLabel()
        self.doubt.setWordWrap(True)
        self.doubt.setProperty("tone", "warning")
        self.doubt.hide()
        column.addWidget(self.doubt)

    def show_judgement(self, judgement: Judgement, unit: Unit, theme: Theme) -> None:
        """Show a judgement."""
        right = disposition_word(judgement.disposition)
        self.words.setText(self.tr("Right call: {call}").format(call=right))
        self.face.setText(face_word(judgement.face))
        sign, role = {
            "accept": ("disc", "good"),
            "refer": ("slash", "not seated"),
        }.get(judgement.disposition, ("ring", "fault"))
        colour = theme.role(role)  # type: ignore[arg-type]
        self.sign.setPixmap(icon_pixmap(sign, colour, 18, self.devicePixelRatioF()))
        said = _doubt_words(judgement, unit)
        self.doubt.setText(said)
        self.doubt.setVisible(bool(said))
        self.setAccessibleName(f"{self.words.text()}. {said}")


def _doubt_words(judgement: Judgement, unit: Unit) -> str:
    """What has to be known before learners meet the coupon; empty where it is clear."""
    if judgement.in_doubt:
        near = [check for check in judgement.checks if check.near]
        names = ", ".join(measure_word(check.key) for check in near)
        doubt = max((check.doubt for check in near), default=0.0)
        return translate(
            "Shop",
            "Inside the leaf\u2019s doubt (\u00b1{doubt}): learners may call it either way. "
            "Too near its limit: {names}.",
        ).format(doubt=_said(doubt, unit), names=names)
    if judgement.undecided:
        names = ", ".join(measure_word(key) for key in judgement.undecided)
        return translate(
            "Shop", "No leaf of any rack settles this, so it is referred: {names}."
        ).format(names=names)
    return ""


class ChecksTable(QTableWidget):
    """Every check, with what was measured, the limit, the margin and the verdict.

    Signals
    -------
    picked(key)
        A check is looked at.
    """

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(0, 5, parent)
        self.setAccessibleName(self.tr("Checks"))
        self.setProperty("kind", "close")
        dress(self)
        self._keys: list[str] = []
        self._rows: dict[int, tuple[Check, Unit, str, float, str]] = {}
        self.itemSelectionChanged.connect(self._pick)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow column the margin, which follows from the rest, leaves its room to names."""
        super().resizeEvent(event)
        self._share_room()

    def _share_room(self) -> None:
        header = self.horizontalHeader()
        wanted = sum(
            max(header.sectionSizeHint(column), self.sizeHintForColumn(column))
            for column in range(self.columnCount())
        )
        self.setColumnHidden(_MARGIN, self.viewport().width() < max(_WIDE, wanted))

    def show_checks(self, judgement: Judgement, unit: Unit, theme: Theme) -> None:
        """Show the checks of a judgement."""
        self.blockSignals(True)
        heads = (
            self.tr("Check"),
            self.tr("Is, {unit}").format(unit=unit),
            self.tr("Limit"),
            self.tr("Margin"),
            self.tr("Verdict"),
        )
        self.setHorizontalHeaderLabels(heads)
        self.setRowCount(len(judgement.checks))
        self._keys = [check.key for check in judgement.checks]
        ratio = self.devicePixelRatioF()
        self._rows = {row: told for row, told in self._rows.items() if row < self.rowCount()}
        for row, check in enumerate(judgement.checks):
            shown = (check, unit, theme.name, ratio, spoken())
            if self._rows.get(row) != shown:
                self._rows[row] = shown
                self._show_check(row, check, unit, theme)
        self._share_room()
        self.blockSignals(False)

    def _show_check(self, row: int, check: Check, unit: Unit, theme: Theme) -> None:
        words = check_words(check, unit)
        sign, role = _SIGNS[verdict_of(check)]
        told = [needed_words(check, unit), source_word(check.source)]
        if not check.decided_by_leaf and check.doubt:
            told.insert(0, translate("Shop", "No leaf of any rack settles it."))
        tip = "\n".join(line for line in told if line)
        name = measure_word(check.key)
        for column, text in enumerate(words):
            item = self._cell(row, column)
            item.setText(text.removesuffix(f" {unit}"))
            item.setToolTip(f"{name}\n{tip}")
            item.setData(Qt.ItemDataRole.AccessibleTextRole, text)
            if 0 < column < 4:
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        verdict = self._cell(row, 4)
        colour = theme.role(role)
        verdict.setIcon(_icon(sign, colour, self.devicePixelRatioF()))
        verdict.setForeground(QColor(colour))

    def _cell(self, row: int, column: int) -> QTableWidgetItem:
        item = self.item(row, column)
        if item is None:
            item = QTableWidgetItem()
            self.setItem(row, column, item)
        return item

    def _pick(self) -> None:
        row = self.currentRow()
        if 0 <= row < len(self._keys):
            self.picked.emit(self._keys[row])


class MeasuresTable(QTableWidget):
    """The true measures."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(len(_MEASURES) + 2, 2, parent)
        self.setHorizontalHeaderLabels((self.tr("Measure"), self.tr("Is")))
        self.setAccessibleName(self.tr("True measures"))
        dress(self)

    def show_measures(self, judgement: Judgement, unit: Unit) -> None:
        """Show the measures."""
        values = judgement.measures.as_dict()
        rows = [(measure_word(key), _said(float(values[key]), unit)) for key in _MEASURES]
        rows += [
            (measure_word(key), _said(float(values[key]), unit, "degrees"))
            for key in ("toe_angle_base", "toe_angle_upright")
        ]
        for row, (name, value) in enumerate(rows):
            for column, text in enumerate((name[:1].upper() + name[1:], value)):
                item = self.item(row, column)
                if item is None:
                    item = QTableWidgetItem()
                    self.setItem(row, column, item)
                item.setText(text)
                if column:
                    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
                    item.setTextAlignment(right)


def dress(table: QTableWidget) -> None:
    """Make a table read only, quiet, and as wide as its place."""
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setTabKeyNavigation(False)
    table.setShowGrid(False)
    table.setWordWrap(False)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(26)
    header = table.horizontalHeader()
    header.setHighlightSections(False)
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    header.setMinimumSectionSize(30)
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    table.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    table.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
