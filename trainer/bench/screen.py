"""The bench, put together: one controller, and views that repaint from its state."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import pairwise
from typing import Final, cast

from PySide6.QtCore import QObject, QPoint, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QApplication, QWidget

from exercises.tray import Tray
from geometry.curves import Vec
from geometry.leaf import RackName
from trainer.bench import spoken, words
from trainer.bench import state as changes
from trainer.bench.controller import BenchController
from trainer.bench.course import Course
from trainer.bench.focus_ring import FocusRing
from trainer.bench.hands import Hands
from trainer.bench.keys import KEYS, BenchKeys
from trainer.bench.layout import BenchLayout
from trainer.bench.panels import BenchPanels
from trainer.bench.picture import handling_scene, unit_of
from trainer.bench.rack import LeafButton
from trainer.bench.recording import record_of
from trainer.bench.review import Review
from trainer.bench.saying import Saying
from trainer.bench.state import BenchState
from trainer.bench.stating import Stating
from trainer.bench.stray import StrayCue
from trainer.bench.terms import FREE, Host, Terms
from trainer.first_hands import Gesture
from trainer.records import Keeper, RecordsError
from trainer.settings import LengthUnit, Settings
from trainer.symbols.menu import SymbolMenu
from trainer.window import WindowFrame

__all__ = ["BenchScreen", "Course"]

_SCROLL_BAR: Final = 12
"""Logical pixels."""


class BenchScreen(QObject):
    """Fills the window's bench with what a coupon needs.

    Parameters
    ----------
    window
        Its bar and settings are listened to.
    bench
        Is filled.
    tray
        What to begin with.
    records
        Where calls go; None keeps none.
    panels
        What has been made of it before.

    Signals
    -------
    announced
        What was said to a screen reader: contacts only, before a call.
    """

    announced = Signal(str)

    def __init__(
        self,
        window: WindowFrame,
        bench: BenchLayout,
        tray: Tray,
        records: Keeper | None,
        panels: BenchPanels | None = None,
    ) -> None:
        super().__init__(window)
        self.window = window
        self.bench = bench
        self.canvas = bench.canvas
        self.records = records
        self.course = Course(tray)
        self.onward: Callable[[], None] | None = None
        """What follows the coupon that lies there, where that isn't the tray's next."""
        self.host: Host | None = None
        """Who lays the coupons out and takes the calls, where that isn't the bench itself."""
        self.controller = BenchController(tray.coupons[0], self)
        self.hands = Hands(self.controller, self.canvas, window.window)
        self._said = ""
        self._shown_terms = FREE
        self._fill(panels or BenchPanels(bench))
        self.stating = Stating(self.controller, self.call_panel, self)
        self._listen(window)
        self._keys = BenchKeys(self.do, self)
        bench.installEventFilter(self._keys)
        window.add_keys(self.tr("Bench"), KEYS.groups)
        self._arrange()
        self._show_course()
        self.show_state()

    def _fill(self, panels: BenchPanels) -> None:
        self.rack_panel, self.job_card = panels.rack, panels.card
        self.call_panel, self.record_bar = panels.call, panels.record
        self.review = Review(self.bench, self.controller, self)
        self.canvas.setAccessibleName(self.tr("Section of the weld"))
        self.saying = Saying(self.canvas)
        self.stray = StrayCue(self.canvas)
        self.focus_ring = FocusRing(self.window.window)
        self.symbol_menu = SymbolMenu(self.window.window)
        self.window.view_menu.addSeparator()
        self.window.view_menu.addMenu(self.symbol_menu)
        self._order: tuple[QWidget, ...] = ()

    def _order_focus(self) -> None:
        """Let Tab go from the picture down and across, and to the bar over all of it last."""
        rack, call, review, bar = self.rack_panel, self.call_panel, self.review, self.window.bar
        # A debrief stands above the job card.
        called = self.controller.state.phase == "debrief"
        order: tuple[QWidget, ...] = (
            self.canvas,
            self.stray,
            *rack.sets.values(),
            *rack.rack.buttons,
            *rack.steps.buttons.values(),
            *rack.units.values(),
            *rack.looking.values(),
            *(review.stops() if called else ()),
            self.job_card.look_ups[0],
            self.job_card.rules,
            self.job_card.look_ups[1],
            *(row.remove for row in self.job_card.rows),
            *call.stops(),
            *call.notes.slips,
            self.record_bar.button,
            *(() if called else review.stops()),
            bar.previous,
            bar.chooser,
            bar.next,
        )
        if order != self._order:
            self._order = order
            for before, after in pairwise(order):
                QWidget.setTabOrder(before, after)

    def _see_focus(self, _: QWidget | None, now: QWidget | None) -> None:
        """Scroll what has the focus into view."""
        column = self.bench.column
        inner = column.widget()
        if now is not None and inner is not None and inner.isAncestorOf(now):
            column.ensureWidgetVisible(now, 8, 16)

    def _listen(self, window: WindowFrame) -> None:
        self.controller.changed.connect(self.show_state)
        self.canvas.asked.connect(lambda name: self.do(name, False))
        self.hands.said.connect(self.saying.say)
        self.stray.clicked.connect(self._bring_back)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._see_focus)
        panel = self.rack_panel
        panel.picked.connect(self.hands.pick)
        panel.pulled.connect(self.pull)
        panel.let_go.connect(self.hands.let_go)
        panel.rack_asked.connect(self._show_rack)
        panel.unit_asked.connect(self._choose_unit)
        panel.stepped.connect(lambda name: self.do(name, False))
        self.job_card.taken_back.connect(
            lambda at: self._change(lambda state, now: changes.without_reading(state, at, now))
        )
        self.job_card.rules_asked.connect(self._show_rules)
        self.job_card.entry_asked.connect(window.look_up)
        self.review.panel.entry_asked.connect(window.look_up)
        self.stating.said.connect(self.saying.say)
        self.stating.noted.connect(self._see_notes)
        self.record_bar.recorded.connect(self._record)
        self.review.next_asked.connect(lambda: self.go_to(self.course.index + 1))
        self.review.again_asked.connect(self.again)
        self.symbol_menu.chosen.connect(
            lambda symbols: window.change_settings(replace(window.settings, symbols=symbols))
        )
        window.coupon_asked.connect(self.go_to)
        window.settings_changed.connect(self.show_state)
        window.theme_changed.connect(self.show_state)
        self.bench.rearranged.connect(self._arrange)

    # What is asked for

    def do(self, name: str, shift: bool) -> bool:
        """Do what a key or a step button asks for; whether it meant anything here."""
        if self.terms.refuses(name):
            self.saying.say(self.tr("That help is not allowed in this sitting."))
            return True
        if self._look(name):
            return True
        if self.controller.state.phase == "debrief" and self.review.do(name, shift=shift):
            return True
        if self._turn_tray(name):
            return True
        if self.controller.state.phase == "debrief":
            if name == "record":
                self.saying.say(self.tr("It is on record. PgDn takes the next from the tray."))
            return name == "record"
        if name == "record":
            self._record()
        elif not self.stating.do(name, shift=shift):
            return self.hands.do(name, coarse=shift)
        return True

    def _turn_tray(self, name: str) -> bool:
        """Lay out the coupon before or after in the tray, as far as there is one."""
        step = {"coupon before": -1, "coupon after": 1}.get(name)
        if step is None:
            return False
        if self.host is not None or 0 <= self.course.index + step < len(self.course.tray.coupons):
            self.go_to(self.course.index + step)
        else:
            self.saying.say(self.tr("There is no other coupon that way in this tray."))
        return True

    def _look(self, name: str) -> bool:
        canvas = self.canvas
        looks: dict[str, Callable[[], None]] = {
            "zoom in": lambda: canvas.zoom_in(self._work()),
            "zoom out": lambda: canvas.zoom_out(self._work()),
            "fit": canvas.fit,
            "loupe": self._switch_loupe,
            "look left": lambda: canvas.step_view(-1, 0),
            "look right": lambda: canvas.step_view(1, 0),
            "look up": lambda: canvas.step_view(0, 1),
            "look down": lambda: canvas.step_view(0, -1),
        }
        if name not in looks:
            return False
        looks[name]()
        return True

    def _work(self) -> Vec:
        """What one looks at, logical px of the picture: the leaf's tip, or else the bead."""
        state, pose = self.controller.state, self.controller.shown_pose
        if state.leaf is not None and pose is not None:
            return self.canvas.view.to_screen(pose.to_section(state.leaf.point))
        (ax, ay), (bx, by) = state.section.toe("base"), state.section.toe("upright")
        return self.canvas.view.to_screen(((ax + bx) / 3.0, (ay + by) / 3.0))

    def open_tray(self, tray: Tray) -> None:
        """Lay out the first coupon of another tray."""
        self.course = Course(tray)
        self.controller.begin(tray.coupons[0])
        self._laid_out()

    def go_on_from(self, other: BenchScreen) -> None:
        """Go on with what lies on another bench, which is given up."""
        self.course = other.course
        self.controller.go_on_from(other.controller)
        self._laid_out()
        looked = other.canvas.chosen_view
        if looked is not None:
            # Once the canvas has its size.
            QTimer.singleShot(0, self.canvas, lambda: self.canvas.choose_view(looked))

    @property
    def terms(self) -> Terms:
        """On what terms the coupon lies there."""
        return FREE if self.host is None else self.host.terms

    @property
    def settings(self) -> Settings:
        """The preferences that hold here."""
        return self.terms.settings(self.window.settings)

    @property
    def zoom(self) -> dict[str, float | None]:
        """Device pixels per mm of the picture, and of the loupe if it is there."""
        lens = self.canvas.lens
        return {
            "picture": self.canvas.view.device_scale,
            "loupe": lens.view.device_scale if lens is not None else None,
        }

    def lay_out(self, course: Course, state: BenchState) -> None:
        """Lay a coupon of `course` out in that state."""
        self.course = course
        self.controller.take_up(state)
        self._laid_out()

    def go_to(self, index: int) -> None:
        """Lay out another coupon of the tray, as it was left."""
        if self.host is not None:
            self.host.go_to(index)
            return
        if self.onward is not None:
            self.onward()
            return
        self.course = self.course.moved(index)
        self.controller.lay_out(self.course.tray.coupons[self.course.index])
        self._laid_out()

    def again(self) -> None:
        """Lay the same coupon out anew; not where a call counts only once."""
        if self.onward is not None or self.host is not None:
            return
        self.controller.again()
        self._laid_out()

    def _laid_out(self) -> None:
        """Begin at the beginning everywhere: the hands are at the picture."""
        self.saying.hide()
        self.call_panel.start_afresh()
        self.show_state()
        self._show_course()
        self.bench.show_top_of_side()
        self.canvas.fit()
        self.canvas.setFocus()

    def _change(self, change: Callable[[BenchState, float], BenchState]) -> None:
        self.controller.do(change)

    def _see_notes(self) -> None:
        # Once its words have their place.
        notes = self.call_panel.notes
        QTimer.singleShot(0, notes, lambda: self.bench.column.ensureWidgetVisible(notes, 0, 8))

    def _bring_back(self) -> None:
        """Bring the leaf that has gone out of the picture back to where it is held ready."""
        leaf = self.controller.state.leaf
        if leaf is not None:
            self.hands.pick(leaf.mark)

    def _show_rules(self) -> None:
        coupon = self.controller.state.coupon
        self.window.show_notice(words.rules_word(coupon.rule_set), words.rules_lines(coupon))

    def _show_rack(self, name: str) -> None:
        self._change(lambda state, _: changes.show_rack(state, cast(RackName, name)))

    def _choose_unit(self, unit: str) -> None:
        wanted = cast(LengthUnit, unit)
        self.window.change_settings(replace(self.window.settings, unit=wanted))

    def _switch_loupe(self) -> None:
        settings = self.window.settings
        self.window.change_settings(replace(settings, loupe=not settings.loupe))

    def pull(self, mark: str, at: QPoint) -> None:
        """Carry a leaf from the rack to a point of the screen."""
        self.hands.pull(mark, at, self._leaf_button(mark).picture())

    def catch_up(self, gesture: Gesture) -> None:
        """Do what a hand did with a leaf before the bench was there."""
        mark, way = gesture.mark, gesture.way
        if gesture.pulled:
            self.hands.follow(mark, way, self._leaf_button(mark).picture())
        if gesture.ended and gesture.pulled:
            self.hands.let_go(mark, way[-1])
        elif gesture.ended:
            self.hands.pick(mark)

    def _leaf_button(self, mark: str) -> LeafButton:
        return next(b for b in self.rack_panel.rack.buttons if b.leaf.mark == mark)

    # What is shown

    def show_state(self) -> None:
        """Repaint every view from the state."""
        state, terms = self.controller.state, self.terms
        settings, theme = self.settings, self.window.theme
        self.controller.reduced_motion = theme.reduced_motion
        self.focus_ring.theme = theme
        # Not while a hand has it: the pointer shows where it is.
        lies = state.pose if state.hand is None and state.can_move else None
        self.stray.follow(state.leaf, lies, theme)
        unit = unit_of(state.coupon, settings)
        debrief = state.phase == "debrief"
        self.rack_panel.setVisible(not debrief)
        self.call_panel.setVisible(not debrief)
        self.record_bar.setVisible(not debrief)
        drill = self.onward is not None
        self.review.show_state(state, settings, theme, last=self.course.last, drill=drill)
        self.job_card.show_state(state, unit, settings.symbols)
        self.symbol_menu.show_choice(settings.symbols)
        if not debrief:
            self.rack_panel.show_state(state, theme, unit, loupe=settings.loupe)
            self.call_panel.show_state(state, notes=terms.notes)
            self.record_bar.show_state(state)
            self._show_terms(terms)
            self.canvas.set_scene(
                handling_scene(state, self.controller.shown_pose, settings, theme, terms)
            )
            self._announce(state)
        self._order_focus()

    def _show_terms(self, terms: Terms) -> None:
        """Leave out what is not to be had."""
        if terms != self._shown_terms:
            self._shown_terms = terms
            self.rack_panel.show_terms(terms)
        for button in self.job_card.look_ups:
            button.setVisible(terms.reference)
        if self.host is None:
            self.record_bar.ask_as_ever()
        else:
            self.record_bar.ask(self.host.record_word)

    def _show_course(self) -> None:
        tag = words.language()
        tray = self.course.tray
        shop = {each.rules: each.shop_rules for each in tray.coupons if each.shop_rules}
        self.window.shop_rules = tuple(shop.values())
        titles = [coupon.title.in_language(tag) or coupon.id for coupon in tray.coupons]
        done = self.controller.judged
        judged = [at for at, coupon in enumerate(tray.coupons) if coupon.id in done]
        self.window.bar.show_tray(tray.title.in_language(tag), titles, self.course.index, judged)

    def _arrange(self) -> None:
        self.rack_panel.set_narrow(self.bench.narrow)
        for panel in (self.job_card, self.call_panel):
            panel.set_compact(self.bench.compact)
            panel.set_short(self.bench.short)
        # A bar may come to stand beside it.
        self.call_panel.fit(self.bench.side.width() - _SCROLL_BAR)

    def _announce(self, state: BenchState) -> None:
        """Tell a screen reader which parts touch, once the leaf is at rest."""
        if state.hand is not None or self.controller.moving:
            return
        text = spoken.contact_words(state.leaf, state.touches)
        if text == self._said:
            return
        self._said = text
        self.canvas.setAccessibleDescription(text)
        self._speak(text)

    def _speak(self, text: str) -> None:
        self.announced.emit(text)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.canvas, text))

    def _record(self) -> None:
        """Make the call, and keep it with the zoom that it was made at."""
        if self.host is not None:
            self.host.record()
            return
        zoom = self.zoom
        if self.controller.record():
            self.saying.hide()
            if self.records is not None:
                self._keep(self.records, zoom)
            # A drill may have laid out the next: then nothing is said of how this one went.
            if self.controller.state.phase == "debrief":
                self._show_debrief()
        else:
            self.saying.say(self.record_bar.missing(self.controller.state))

    def _show_debrief(self) -> None:
        # What had the focus is gone; what Space, R and Enter mean from here is the picture's.
        self.canvas.setFocus()
        self._show_course()
        self.bench.show_top_of_side()
        self._said = self.review.spoken()
        self.canvas.setAccessibleDescription(self._said)
        self._speak(self._said)

    def _keep(self, records: Keeper, zoom: Mapping[str, float | None]) -> None:
        try:
            records.add(record_of(self.controller.state, zoom))
        except RecordsError as error:
            self.window.show_notice(
                self.tr("The call could not be kept"),
                self.tr(
                    "The debrief is shown all the same, but the call is not in the records.\n\n"
                    "{file}: {reason}\n\nFree some space there, or make the folder writable, "
                    "and judge the coupon again."
                ).format(file=error.path, reason=error.reason),
            )
