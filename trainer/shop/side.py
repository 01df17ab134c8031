"""The column beside the picture: above it what is entered, below it what follows from that."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSplitter, QTabWidget, QVBoxLayout, QWidget

from exercises.coupon import Coupon
from geometry.leaf import RackName
from geometry.lengths import Unit
from trainer.look.tokens import Theme
from trainer.settings import SymbolStandard
from trainer.shop.choices import Choice
from trainer.shop.drawing_form import DrawingForm
from trainer.shop.entry import Entry, Take
from trainer.shop.judged_panel import ChecksTable, MeasuresTable, VerdictLine
from trainer.shop.leaves_table import LeavesTable
from trainer.shop.state import Shop
from trainer.shop.weld_form import WeldForm
from trainer.shop.words_form import WordsForm
from trainer.shop.working import Working

__all__ = ["Side"]

_BELOW: Final = 0.4
_CHECKS: Final = 300
"""Share of the height that what is judged begins with; and logical px, so that no check is hidden.
"""


class Side(QFrame):
    """Forms, and what is judged.

    Parameters
    ----------
    take, choose
        Take what is typed, and what is chosen.

    Signals
    -------
    asked(name), settled(), focused(key)
        From the forms.
    rules_asked()
        What the rules say is wanted.
    rack_asked(name), laid(mark, seat), placed()
        From the table of leaves.
    """

    asked = Signal(str)
    settled = Signal()
    focused = Signal(str)
    rules_asked = Signal()
    rack_asked = Signal(str)
    laid = Signal(str, int)
    placed = Signal()
    tab_changed = Signal()

    def __init__(self, take: Take, choose: Take, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.setChildrenCollapsible(False)
        column.addWidget(self.splitter)
        self._split = False
        self._shown: tuple[Shop, str, Unit, SymbolStandard | None] | None = None
        self._fill_forms(take, choose)
        self._fill_results()

    def _fill_forms(self, take: Take, choose: Take) -> None:
        self.weld = WeldForm(take, choose)
        self.drawing = DrawingForm(take, choose)
        self.words = WordsForm(take, choose)
        self.forms = QTabWidget()
        self.forms.addTab(self.weld, self.tr("Weld"))
        self.forms.addTab(self.drawing, self.tr("Drawing, rules"))
        self.forms.addTab(self.words, self.tr("Task, words"))
        self.forms.currentChanged.connect(lambda _: self._show_form())
        self.splitter.addWidget(_panel(self.forms))
        self.weld.asked.connect(self.asked)
        self.words.asked.connect(self.asked)
        self.weld.focused.connect(self.focused)
        self.drawing.rules_asked.connect(self.rules_asked)
        for form in (self.weld, self.drawing, self.words):
            form.settled.connect(self.settled)

    def _fill_results(self) -> None:
        self.verdict = VerdictLine()
        self.checks = ChecksTable()
        self.leaves = LeavesTable()
        self.measures = MeasuresTable()
        self.results = QTabWidget()
        self.results.addTab(self.checks, self.tr("Checks"))
        self.results.addTab(self.leaves, self.tr("Leaves"))
        self.results.setTabToolTip(1, self.tr("What each leaf would show"))
        self.results.addTab(self.measures, self.tr("Measures"))
        self.results.currentChanged.connect(lambda _: self.tab_changed.emit())
        self.leaves.rack_asked.connect(self.rack_asked)
        self.leaves.laid.connect(self.laid)
        self.leaves.placed.connect(self.placed)
        self.splitter.addWidget(_panel(self.verdict, self.results))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the height out once there is any."""
        super().resizeEvent(event)
        if not self._split and event.size().height() > 100:
            self._split = True
            high = event.size().height()
            below = min(max(round(_BELOW * high), _CHECKS), high // 2)
            self.splitter.setSizes([high - below, below])

    @property
    def shows_leaves(self) -> bool:
        """Whether the table of leaves is seen."""
        return self.results.currentWidget() is self.leaves

    def show_coupon(
        self, shop: Shop, of: str, unit: Unit, name: RackName, symbols: SymbolStandard | None
    ) -> None:
        """Show what a coupon says in its fields."""
        self._shown = (shop, of, unit, symbols)
        self._show_form()
        self.leaves.show_rack(name)

    def _show_form(self) -> None:
        """Show the page of entries that is seen; the others when they are."""
        if self._shown is None:
            return
        shop, of, unit, symbols = self._shown
        coupon: Coupon = shop.coupon
        seen = self.forms.currentWidget()
        if seen is self.weld:
            self.weld.show_coupon(coupon, of, unit)
        elif seen is self.drawing:
            self.drawing.show_coupon(coupon, of, unit, shop.rules, symbols)
        else:
            self.words.show_coupon(coupon, of, unit)

    def show_judged(self, working: Working, unit: Unit, theme: Theme) -> None:
        """Show what the rules make of it."""
        judgement = working.judgement
        if judgement is not None:
            self.verdict.show_judgement(judgement, unit, theme)
            self.checks.show_checks(judgement, unit, theme)
            self.measures.show_measures(judgement, unit)

    def show_answers(self, working: Working, unit: Unit, theme: Theme) -> None:
        """Show what the leaves would show, as far as they have been pressed."""
        self.leaves.show_answers(working.answers, unit, theme)

    def see_focus(self, now: QWidget | None) -> None:
        """Scroll what has the focus into view."""
        form = self.forms.currentWidget()
        if now is not None and isinstance(form, QScrollArea) and form.isAncestorOf(now):
            form.ensureWidgetVisible(now, 0, 24)

    def look_at_placed(self) -> None:
        """Go to what is said of the placed leaf: its author goes on there."""
        self.forms.setCurrentWidget(self.words)
        field = self.words.fields["placed.gauged"]
        if isinstance(field, Choice):
            field.box.setFocus(Qt.FocusReason.TabFocusReason)

    def look_at(self, key: str) -> None:
        """Have the field of a handle in sight."""
        field = self.weld.fields.get(key)
        if isinstance(field, Entry) and self.forms.currentWidget() is self.weld:
            self.weld.ensureWidgetVisible(field.field, 0, 40)


def _panel(*widgets: QWidget) -> QFrame:
    panel = QFrame()
    panel.setProperty("kind", "panel")
    column = QVBoxLayout(panel)
    column.setContentsMargins(10, 6, 10, 8)
    column.setSpacing(4)
    for widget in widgets:
        column.addWidget(widget)
    return panel
