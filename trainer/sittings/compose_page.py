"""Composing a sitting: one controller, and views that repaint from its state."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final, cast

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QFileDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.file_faults import FileError
from exercises.maker import Recipe
from exercises.sitting.embedded import chosen_of, load_chosen
from exercises.sitting.plan import Chosen, Help, Skill
from exercises.text import NO_TEXT, Text
from exercises.tray import Tray
from trainer.bench.saying import Saying
from trainer.fault_words import fault_rows
from trainer.landing import Landing
from trainer.recent_menu import TRAY_SUFFIX
from trainer.shop.recipe_dialog import RecipeDialog
from trainer.sittings import draft as changes
from trainer.sittings.checking import Checking
from trainer.sittings.compose_bar import ComposeBar
from trainer.sittings.compose_keys import KEYS
from trainer.sittings.controller import ComposeController
from trainer.sittings.draft import Draft, FromDice, FromTray, new_draft
from trainer.sittings.entrants_panel import EntrantsPanel
from trainer.sittings.files import SUFFIX
from trainer.sittings.filing import SittingFiling
from trainer.sittings.paper_view import PaperView
from trainer.sittings.part_view import PartView
from trainer.sittings.parts_panel import PartsPanel
from trainer.sittings.roll import Candidate
from trainer.sittings.terms_form import TermsForm
from trainer.sittings.truths import Truths
from trainer.sittings.words import coupons_word, duration_words, faults_words
from trainer.window import WindowFrame

__all__ = ["ComposePage"]

_LEFT: Final = 264
_RIGHT: Final = 344
_NARROW: Final = 1180
_SIDES: Final = 24
"""Logical px: how wide the panels at both sides are, below which width of the window less, and
what the right one has beside its form."""

_FAULTS: Final = 3
"""How many of its faults are said at once."""


class ComposePage(QWidget):
    """The composer.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    candidates
        Who could sit: asked whenever the page is shown.

    Signals
    -------
    page_asked(name)
        Another page is to be shown.
    """

    page_asked = Signal(str)

    def __init__(
        self,
        window: WindowFrame,
        candidates: Callable[[], Sequence[Candidate]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self._ask_candidates = candidates
        self._candidates: tuple[Candidate, ...] = ()
        self._code = ""
        self.truths = Truths()
        self.controller = ComposeController(new_draft(), self)
        self.filing = SittingFiling(window, self.controller, self)
        self.checking = Checking(self.truths, self)
        self._fill()
        self._listen()
        self.show_state()

    def _fill(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(10)
        self.parts = PartsPanel()
        self.bar = ComposeBar()
        self.middle = QTabWidget()
        self.middle.setDocumentMode(True)
        self.part = PartView(self.truths)
        self.part.from_tray.setMenu(self.parts.tray_menu(self))
        self.paper = PaperView(self.truths)
        self.middle.addTab(self.part, self.tr("Coupons"))
        self.middle.addTab(self.paper, self.tr("A learner's paper"))
        holder = QFrame()
        holder.setProperty("kind", "panel")
        inner = QVBoxLayout(holder)
        inner.setContentsMargins(10, 4, 10, 10)
        inner.addWidget(self.middle)
        column = QVBoxLayout()
        column.setSpacing(8)
        column.addWidget(self.bar)
        column.addWidget(holder, 1)
        row.addWidget(self.parts)
        row.addLayout(column, 1)
        self.right = self._right()
        row.addWidget(self.right)
        self.saying = Saying(holder)
        Landing(self, lambda: self.parts.list)
        self.setAccessibleName(self.tr("Compose a sitting"))
        self.window_frame.add_keys(self.tr("Sittings: compose"), KEYS.groups)

    def _right(self) -> QFrame:
        panel = QFrame()
        panel.setProperty("kind", "panel")
        column = QVBoxLayout(panel)
        column.setContentsMargins(10, 4, 10, 10)
        column.setSpacing(8)
        self.side = QTabWidget()
        self.side.setDocumentMode(True)
        self.terms = TermsForm()
        self.entrants = EntrantsPanel()
        self.side.addTab(self.terms, self.tr("Time and marks"))
        self.side.addTab(self.entrants, self.tr("Learners"))
        column.addWidget(self.side, 1)
        self.faults, self.verdict = QLabel(), QLabel()
        for label, tone in ((self.faults, "warning"), (self.verdict, "quiet")):
            label.setWordWrap(True)
            label.setProperty("tone", tone)
            column.addWidget(label)
        self.seal = QPushButton(self.tr("Seal and save..."))
        self.seal.setProperty("kind", "primary")
        self.seal.setToolTip(self.tr("Seal and save (Ctrl+Shift+S)"))
        self.seal.clicked.connect(lambda: self.do("seal"))
        column.addWidget(self.seal)
        return panel

    def _listen(self) -> None:
        controller, filing, parts = self.controller, self.filing, self.parts
        controller.changed.connect(self.show_state)
        filing.changed.connect(self.show_state)
        filing.said.connect(self.saying.say)
        self.checking.checked.connect(self._show_checked)
        parts.asked.connect(self.do)
        parts.tray_chosen.connect(self.add_tray)
        parts.titled.connect(self._title)
        parts.opened.connect(self._open)
        self.part.asked.connect(self.do)
        self.part.ticked.connect(self._pick)
        self.paper.code_asked.connect(self._show_paper_of)
        self.paper.others_asked.connect(self._draw_others)
        self.terms.given.connect(self._give)
        self.entrants.ticked.connect(
            lambda codes, on: controller.do(
                lambda d: changes.with_entrants(d, codes, sits=on), "entrants"
            )
        )
        self.entrants.extra_given.connect(
            lambda codes, share: controller.do(
                lambda d: changes.with_extra(d, codes, share), "extra"
            )
        )
        self.entrants.class_asked.connect(lambda: self.page_asked.emit("class"))
        self.bar.asked.connect(self.do)
        self.bar.recent_chosen.connect(filing.open_path)
        self.bar.recent_missed.connect(filing.say_missing)
        self.bar.recent_cleared.connect(
            lambda: self.window_frame.change_settings(
                replace(self.window_frame.settings, sittings=())
            )
        )
        self.window_frame.settings_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self.show_state)

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        controller, filing = self.controller, self.filing
        deeds: dict[str, Callable[[], object]] = {
            "new": filing.new,
            "open": filing.ask_and_open,
            "seal": filing.seal,
            "seal again": filing.seal_again,
            "undo": controller.undo,
            "redo": controller.redo,
            "try": self._try,
            "tray": self._ask_for_tray,
            "from bench": lambda: self._take_open("bench"),
            "from shop": lambda: self._take_open("shop"),
            "dice": self._ask_for_dice,
            "recipe": self._ask_for_recipe,
            "remove": lambda: controller.do(changes.without_part, "remove"),
            "up": lambda: controller.do(lambda d: changes.with_moved(d, -1), "move"),
            "down": lambda: controller.do(lambda d: changes.with_moved(d, 1), "move"),
            "all": lambda: self._pick_all(on=True),
            "none": lambda: self._pick_all(on=False),
            "coupons": lambda: self._turn_to(self.middle, 0, self.part.table),
            "paper": lambda: self._turn_to(self.middle, 1, self.paper.whose),
            "terms": lambda: self._turn_to(self.side, 0, self.terms),
            "entrants": lambda: self._turn_to(self.side, 1, self.entrants.table),
        }
        deeds[name]()

    def _turn_to(self, tabs: QTabWidget, at: int, widget: QWidget) -> None:
        tabs.setCurrentIndex(at)
        (widget if widget.isVisible() and widget is not self.terms else tabs.tabBar()).setFocus()

    def _title(self, words: str) -> None:
        title = Text.of(words) if words else NO_TEXT
        self.controller.do(lambda d: changes.with_plan(d, replace(d.base, title=title)), "title")

    def _open(self, at: int) -> None:
        self.controller.show(at)
        self.middle.setCurrentIndex(0)

    def _give(self, key: str, value: object) -> None:
        """Take what was entered of the terms."""
        kind, _, name = key.partition(" ")

        def changed(draft: Draft) -> Draft:
            base, share = draft.base, cast("float", value)
            if kind == "minutes":
                return changes.with_plan(draft, replace(base, minutes=share))
            if kind == "pass":
                return changes.with_plan(draft, replace(base, pass_mark=share))
            if kind == "order":
                return changes.with_plan(draft, replace(base, shuffled=bool(value)))
            if kind == "critical":
                return changes.with_plan(draft, replace(base, critical_fails=bool(value)))
            if kind == "skill":
                mark = cast("float | None", value)
                return changes.with_skill_mark(draft, cast("Skill", name), mark)
            return changes.with_help(draft, cast("Help", name), stays=bool(value))

        self.controller.do(changed, "pass" if kind == "skill" else kind)

    # Parts

    def _ask_for_tray(self) -> None:
        settings = self.window_frame.settings
        name, _ = QFileDialog.getOpenFileName(
            self.window_frame.window,
            self.tr("Coupons from a tray"),
            settings.folder("trays"),
            self.tr("Trays (*{suffix});;All files (*)").format(suffix=TRAY_SUFFIX),
        )
        if name:
            path = Path(name)
            self.window_frame.change_settings(settings.with_folder("trays", path.parent))
            self.add_tray(path)

    def add_tray(self, path: Path) -> None:
        """Add the coupons of a tray's file, all of them picked; a broken one is refused whole."""
        try:
            chosen = load_chosen(path)
        except FileError as error:
            self.window_frame.show_faults(*fault_rows(error))
            return
        self._add_chosen(chosen)

    def _take_open(self, screen: str) -> None:
        given = self.window_frame.open_trays.get(screen)
        if given is None:
            self.saying.say(self.tr("The coupon shop has no tray open: visit it first."))
            return
        tray, folder = given()
        try:
            chosen = chosen_of(tray, folder)
        except FileError as error:
            self.window_frame.show_faults(*fault_rows(error))
            return
        needed = {coupon.rules for coupon in tray.coupons if coupon.shop_rules is not None}
        if needed - set(chosen.rules):
            self.window_frame.show_notice(
                self.tr("Its rules are not at hand"),
                self.tr(
                    "Some of these coupons are judged by rules of the shop's own, from a file "
                    "beside their tray. Open the tray from its file instead."
                ),
            )
            return
        self._add_chosen(chosen)

    def _add_chosen(self, chosen: Chosen) -> None:
        part = FromTray.whole(chosen)
        self.controller.do(lambda d: changes.with_part(d, part), "add tray")
        self.middle.setCurrentIndex(0)
        self.saying.say(self.tr("Added: {coupons}").format(coupons=coupons_word(part.count)))

    def _ask_for_dice(self) -> None:
        unit = self.window_frame.settings.unit or "mm"
        recipe = Recipe(12, seed=random.randint(1, 9999), unit=unit, nearest=2.0, farthest=6.0)
        self._ask_recipe(
            recipe,
            self.tr("Add"),
            lambda found: self.controller.do(
                lambda d: changes.with_part(d, FromDice(found)), "add dice"
            ),
        )

    def _ask_for_recipe(self) -> None:
        part = self.controller.draft.part
        if isinstance(part, FromDice):
            self._ask_recipe(
                part.recipe,
                self.tr("Change"),
                lambda found: self.controller.do(lambda d: changes.with_recipe(d, found), "recipe"),
            )

    def _ask_recipe(self, recipe: Recipe, button: str, take: Callable[[Recipe], object]) -> None:
        dialog = RecipeDialog(
            recipe,
            self.tr("Coupons from dice"),
            self.tr(
                "Each learner gets welds of their own by this recipe, equally hard. Nothing is "
                "kept but the recipe: the same learner always gets the same."
            ),
            button,
            self.window_frame.window,
        )
        dialog.taken.connect(take)
        self.window_frame.show_dialog(dialog)

    def _pick(self, places: Sequence[int], on: bool) -> None:
        part = self.controller.draft.part
        if isinstance(part, FromTray):
            picked = part.picked | set(places) if on else part.picked - set(places)
            self.controller.do(lambda d: changes.with_picked(d, picked), "pick")

    def _pick_all(self, *, on: bool) -> None:
        part = self.controller.draft.part
        if isinstance(part, FromTray):
            self._pick(range(len(part.coupons)), on)

    # Papers

    def _show_paper_of(self, code: str) -> None:
        self._code = code
        self.show_state()

    def _draw_others(self) -> None:
        seed = random.SystemRandom().randrange(1, 2**31)
        self.controller.do(lambda d: changes.with_plan(d, replace(d.base, seed=seed)), "seed")

    def _try(self) -> None:
        """Lay the paper that is shown out on the bench, on no record."""
        found = self.checking.found
        if found is None or not found.paper or self.checking.busy:
            self.saying.say(self.tr("There is no paper to try yet."))
            return
        tray = Tray(self.controller.draft.base.title, found.paper)
        self.window_frame.trial_asked.emit(tray, 0)

    # What is shown

    def show_state(self) -> None:
        """Repaint every view from the state."""
        draft, filing = self.controller.draft, self.filing
        theme, settings = self.window_frame.theme, self.window_frame.settings
        if self._code and not any(one.code == self._code for one in draft.base.entrants):
            self._code = ""
        self.checking.ask(draft.plan, self._code)
        self.parts.show_draft(draft)
        self.part.show_draft(draft, theme)
        names = {one.code: one.name for one in self._candidates}
        codes = [one.code for one in draft.base.entrants]
        self.paper.show_codes(codes, [names.get(code, "") for code in codes], self._code)
        self.terms.show_plan(draft.base)
        self.entrants.show_entrants(self._candidates, draft.base.entrants, theme)
        self.side.setTabText(1, self._learners_title(len(codes)))
        self.bar.recent.set_recent(settings.sittings)
        self._show_checked()
        path = filing.sealed.path if filing.sealed is not None else None
        self.bar.show_state(
            self.controller.history,
            path.name if path is not None else "",
            dirty=self.controller.dirty,
            busy=filing.busy,
            ready=draft.count > 0,
        )

    def _learners_title(self, count: int) -> str:
        return self.tr("Learners ({n})").format(n=count) if count else self.tr("Learners")

    def _show_checked(self) -> None:
        draft = self.controller.draft
        found = None if self.checking.busy else self.checking.found
        minutes = draft.plan.minutes_for(self._code) if self._code else draft.base.minutes
        self.paper.show_checked(found, minutes, self.window_frame.theme)
        faults = found.faults if found is not None else ()
        self.seal.setEnabled(found is not None and not faults and not self.filing.busy)
        self.faults.setVisible(bool(faults))
        self.verdict.setVisible(not faults)
        if faults:
            lines = [self.tr("Not yet:"), *faults_words(faults, _FAULTS)]
            self.faults.setText("\n".join(lines))
        elif found is None:
            self.verdict.setText(self.tr("Looking it through..."))
        else:
            coupons, time = coupons_word(draft.count), duration_words(draft.base.minutes)
            words = self.tr("Can be sealed: {coupons} in {time}.")
            self.verdict.setText(words.format(coupons=coupons, time=time))

    # The screen around it

    def open_path(self, path: Path) -> None:
        """Open a sealed sitting, or add a tray's coupons, as it was chosen or dropped."""
        if path.suffix == SUFFIX:
            self.filing.open_path(path)
        else:
            self.add_tray(path)

    def go_on_from(self, other: ComposePage) -> None:
        """Go on with what another one composes, which is given up."""
        other.checking.stop()
        self.filing.go_on_from(other.filing)
        self.controller.go_on_from(other.controller)

    def showEvent(self, event: QShowEvent) -> None:
        """The class may have others in it since."""
        super().showEvent(event)
        self.look_who_could_sit()

    def look_who_could_sit(self) -> None:
        """Ask the class anew."""
        self._candidates = tuple(self._ask_candidates())
        self.show_state()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow window the panels at the sides shrink."""
        super().resizeEvent(event)
        width = event.size().width()
        narrow = width < _NARROW
        self.part.set_narrow(narrow)
        self.paper.set_narrow(narrow)
        self.parts.setFixedWidth(_LEFT - 62 if narrow else _LEFT)
        room = _RIGHT - 52 if narrow else _RIGHT + min(96, max(0, (width - 1500) // 4))
        self.right.setFixedWidth(max(room, self.terms.needed_width + _SIDES))

    def minimumSizeHint(self) -> QSize:
        """Not what the panels would like at their widest."""
        return QSize(880, 360)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken for itself."""
        name = KEYS.name_of(event)
        if name is None:
            super().keyPressEvent(event)
            return
        shifted = {"undo": "redo", "seal again": "seal"}
        shift = bool(event.modifiers() & event.modifiers().ShiftModifier)
        self.do(shifted.get(name, name) if shift else name)
