"""The coupon shop, put together: one controller, and views that repaint from its state."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final, cast

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QLineEdit,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from exercises.coupon import Coupon
from exercises.intake.traced import Traced
from exercises.versions import Document
from geometry.faults import GeometryError
from geometry.leaf import RackName
from geometry.lengths import Unit
from trainer.bench.picture import unit_of
from trainer.bench.saying import Saying
from trainer.bench.words import rules_lines, rules_word
from trainer.corners.state import Drawn
from trainer.landing import Landing
from trainer.open_trays import OpenTray
from trainer.places import places
from trainer.screen_kinds import TakesIn
from trainer.shop import state as changes
from trainer.shop.building import coupon_of
from trainer.shop.callouts import Value, size_words
from trainer.shop.controller import ShopController
from trainer.shop.expressions import EntryError
from trainer.shop.fields import document_of, with_drop, with_hint, without_hint
from trainer.shop.filing import Filing
from trainer.shop.from_dice import FromDice
from trainer.shop.keys import KEYS
from trainer.shop.knob_bar import KnobBar
from trainer.shop.lying import Lying
from trainer.shop.over_section import over_section
from trainer.shop.panels import Panels
from trainer.shop.placing import with_placed, without_placed
from trainer.shop.points import Points
from trainer.shop.section_view import SectionView, Shown
from trainer.shop.side import Side
from trainer.shop.state import PLAIN, new_shop
from trainer.shop.taking_in import coupon_from
from trainer.shop.tool_bar import ToolBar
from trainer.shop.tray_panel import TrayPanel
from trainer.shop.turning import Limit
from trainer.shop.words import entry_words, fault_sentence, limit_words
from trainer.shop.working import Working
from trainer.window import WindowFrame

__all__ = ["ShopScreen"]

_LEAST: Final = QSize(900, 420)
_TRAY: Final = 236
_SIDE: Final = 384
_NARROW: Final = 1180
"""Logical px: how wide the tray's panel is, and the column of entries and results, and below which
width of the window both are less."""


_SHIFTED: Final = {"undo": "redo", "save": "save as", "panel": "panel back"}
"""What a key asks for with Shift, where that is something else."""


class ShopScreen(QWidget):
    """The coupon shop.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    pages
        By name, ``photo`` and ``scan``, how the page is made that takes sections in: each comes
        with its libraries when it is first asked for.
    folder
        Where unsaved work is kept; None is where all of this person's is.

    """

    def __init__(
        self,
        window: WindowFrame,
        pages: Mapping[str, Callable[[], QWidget]],
        folder: Path | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self._makers = dict(pages)
        self._pages: dict[str, QWidget] = {}
        self.controller = ShopController(new_shop(), self)
        self.filing = Filing(window, self.controller, folder or places().unsaved, self)
        self.working = Working(self)
        self.dice = FromDice(window, self.controller, self._say_thrown, self)
        self._lying = Lying()
        self._seen: Coupon | None = None
        self._drawn: frozenset[Drawn] = frozenset()
        self._pictured = True
        self._edition = 0
        self._fresh = True
        self._goes_on = False
        self._fill()
        self._listen()
        self.show_state()
        # Not from within the making of it: then it is not seen yet.
        QTimer.singleShot(0, self, self._offer_recovery)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the picture what room there is: in a narrow window the panels beside it shrink."""
        super().resizeEvent(event)
        width = event.size().width()
        narrow = width < _NARROW
        self.tray.setFixedWidth(_TRAY - 40 if narrow else _TRAY)
        self.side.setFixedWidth(
            _SIDE - 32 if narrow else _SIDE + min(96, max(0, (width - 1500) // 4))
        )
        self.knobs.set_narrow(narrow)
        self.tools.set_narrow(narrow)

    def minimumSizeHint(self) -> QSize:
        """Not what the panels would like at their widest: no window could become narrow."""
        return _LEAST

    def _fill(self) -> None:
        self.rooms = QStackedWidget()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.rooms)
        room = QWidget()
        self.rooms.addWidget(room)
        row = QHBoxLayout(room)
        row.setContentsMargins(12, 12, 12, 12)
        row.setSpacing(10)
        self.tray = TrayPanel(("plain", *self._makers, "dice"))
        self.view = SectionView()
        self.knobs = KnobBar()
        self.tools = ToolBar()
        middle = QVBoxLayout()
        middle.setSpacing(8)
        middle.addWidget(self.tools)
        middle.addWidget(self.view, 1)
        middle.addWidget(self.knobs)
        self.side = Side(self.enter, self.choose)
        row.addWidget(self.tray)
        row.addLayout(middle, 1)
        row.addWidget(self.side)
        side, tools = self.side, self.tools
        self.panels = Panels(
            (self.tray, self.tray.list),
            (tools, tools.file),
            (self.view, self.view.canvas),
            (self.knobs, self.knobs.choice),
            (side.forms, side.forms.tabBar()),
            (side.results, side.results.tabBar()),
        )
        self.saying = Saying(self.view)
        self.setAccessibleName(self.tr("Coupon shop"))
        rooms = self.rooms
        Landing(self, lambda: rooms.currentWidget() if rooms.currentIndex() else self.tray.list)
        self.window_frame.add_keys(self.tr("Coupon shop"), KEYS.groups)
        self.window_frame.open_trays["shop"] = lambda: OpenTray(
            self.controller.shop.tray, self.filing.path.parent if self.filing.path else None
        )

    def _listen(self) -> None:
        controller, view, knobs, tray = self.controller, self.view, self.knobs, self.tray
        points = self.points = Points(controller, view, self._edit, self._choose)
        controller.changed.connect(self.show_state)
        controller.limited.connect(self._say_limit)
        view.turned.connect(lambda key, value: controller.turn(key, value, going_on=True))
        view.dragged.connect(
            lambda index, x, y: controller.drag_point(index, (x, y), going_on=True)
        )
        view.put_in.connect(points.put_in)
        view.taken_out.connect(points.take_out)
        view.let_go.connect(controller.end_gesture)
        view.chosen.connect(lambda _: self.show_state())
        knobs.stepped.connect(lambda key, value: controller.turn(key, value, going_on=True))
        knobs.nudged.connect(points.nudge)
        knobs.settled.connect(controller.end_gesture)
        knobs.chosen.connect(self._choose)
        knobs.asked.connect(self.do)
        tray.asked.connect(self.do)
        tray.opened.connect(self._open)
        tray.move_asked.connect(
            lambda start, to: controller.do(lambda s: changes.moved(s, start, to), "move")
        )
        tray.titled.connect(
            lambda words: controller.do(lambda s: changes.titled(s, words), "title")
        )
        self.tools.asked.connect(self.do)
        filing = self.filing
        filing.opened.connect(self._begin_afresh)
        filing.changed.connect(self.show_state)
        filing.said.connect(self.saying.say)
        filing.settling.connect(self._take_typed)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.aboutToQuit.connect(filing.leave)
            app.focusChanged.connect(self._see_focus)
        side, working = self.side, self.working
        side.asked.connect(self.do)
        side.settled.connect(controller.end_gesture)
        side.focused.connect(self._mark)
        side.rules_asked.connect(self._show_rules)
        side.rack_asked.connect(self._show_rack)
        side.laid.connect(self._lay)
        side.placed.connect(self._place)
        side.tab_changed.connect(self.show_state)
        working.judged.connect(self._show_judged)
        working.answered.connect(
            lambda: side.show_answers(working, self.unit, self.window_frame.theme)
        )
        self.window_frame.settings_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self._show_judged)
        self.tools.dropped_focus.connect(self.view.canvas.setFocus)

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        controller, canvas = self.controller, self.view.canvas
        at = controller.shop.at
        deeds: dict[str, Callable[[], object]] = {
            "new": self.filing.new,
            "open": self.filing.ask_and_open,
            "save": self.filing.save,
            "save as": self.filing.save_as,
            "split": self.filing.split,
            "merge": self.filing.merge,
            "undo": controller.undo,
            "redo": controller.redo,
            "add plain": self._add_plain,
            "add photo": lambda: self.show_page("photo"),
            "add scan": lambda: self.show_page("scan"),
            "add dice": lambda: self.dice.throw(self.unit),
            "duplicate": lambda: controller.do(changes.duplicated, "duplicate"),
            "delete": lambda: controller.do(changes.deleted, "delete"),
            "up": lambda: controller.do(lambda s: changes.moved(s, at, at - 1), "move"),
            "down": lambda: controller.do(lambda s: changes.moved(s, at, at + 1), "move"),
            "before": lambda: self._open(at - 1),
            "after": lambda: self._open(at + 1),
            "try": self._try,
            "fit": canvas.fit,
            "closer": canvas.zoom_in,
            "back": canvas.zoom_out,
            "point in": self.points.put_in_chosen,
            "point out": self.points.take_out_chosen,
            "spatter": lambda: self._edit(with_drop(controller.coupon), "spatter"),
            "face": self._switch_face,
            "draw legs": lambda: self._draw("legs"),
            "draw triangle": lambda: self._draw("triangle"),
            "draw throats": lambda: self._draw("throats"),
            "draw photo": self._show_photo,
            "hint": lambda: self._edit(with_hint(controller.coupon), "hint"),
            "unplace": lambda: self._edit(without_placed(controller.coupon), "place"),
            "panel": lambda: self.panels.go(1),
            "panel back": lambda: self.panels.go(-1),
        }
        if name.startswith("no hint "):
            self._edit(without_hint(controller.coupon, int(name[8:])), "hint")
        else:
            deeds[name]()

    def _try(self) -> None:
        self._take_typed()
        shop = self.controller.shop
        self.window_frame.trial_asked.emit(shop.tray, shop.at)

    def _take_typed(self) -> None:
        """Take what stands in a field and hasn't been entered: a key may come before Enter."""
        field = QApplication.focusWidget()
        if isinstance(field, QLineEdit) and self.isAncestorOf(field):
            field.editingFinished.emit()

    def _switch_face(self) -> None:
        traced = self.controller.coupon.section.bead.trace is not None
        self._edit(
            document_of(self.controller.coupon, "face", "arc" if traced else "traced"), "face"
        )

    # Fields

    def enter(self, key: str, value: object) -> str:
        """Take what was typed in a field; return what is wrong with it, or nothing."""
        coupon, what = self.controller.coupon, key
        if key == "id" and value != coupon.id and value in self.controller.shop.ids:
            return self.tr("Another coupon of this tray has this id; right would be one of its own")
        try:
            if key in ("callout.size", "callout.upright_size") and isinstance(value, str):
                value = size_words(value, coupon.callout.unit)
            self.controller.edit(
                document_of(coupon, key, cast("Value", value)), what, going_on=True
            )
        except EntryError as error:
            return entry_words(error, str(value), "size")
        except GeometryError as error:
            return fault_sentence(error.faults[0])
        return ""

    def choose(self, key: str, value: object) -> str:
        """Take what was chosen in a field; return what is wrong with it, or nothing."""
        wrong = self.enter(key, value)
        self.controller.end_gesture()
        return wrong

    def _add_plain(self) -> None:
        plain = coupon_of(PLAIN, {})
        self.controller.do(lambda s: changes.added(s, [plain]), "add")

    def _say_thrown(self, words: str) -> None:
        self._afresh()
        self.saying.say(words)

    def _open(self, at: int) -> None:
        """Open another coupon of the tray."""
        self.controller.show(at)
        self._afresh()

    def _choose(self, key: str) -> None:
        self.view.choose(key)
        self.show_state()

    def _edit(self, document: Document, what: str) -> bool:
        """Replace the open coupon, or say why it can't be so; whether it was."""
        try:
            self.controller.edit(document, what)
        except GeometryError as error:
            self.saying.say(fault_sentence(error.faults[0]))
            return False
        return True

    def go_on_from(self, other: ShopScreen) -> None:
        """Go on with what another shop has open, which is given up."""
        self._goes_on = True
        self.filing.go_on_from(other.filing)
        self.controller.go_on_from(other.controller)
        self._afresh()

    def _offer_recovery(self) -> None:
        """Offer what an earlier start has left, unless this one goes on for another that has."""
        if not self._goes_on:
            self.filing.offer_recovery()

    def open_path(self, path: Path) -> None:
        """Open a tray that was chosen from the menu, or dropped."""
        self.filing.open_path(path)

    def _begin_afresh(self) -> None:
        """Another tray is open."""
        self._edition += 1
        self._afresh()

    def _afresh(self) -> None:
        """Look at the open coupon from where all of it is seen."""
        self._fresh, self._lying = True, self._lying.with_leaf("", 0)
        self.show_state()

    # Pages that take a section in

    def show_page(self, name: str) -> None:
        """Show a page that takes a section in; it has the shop's room until it is left."""
        if name not in self._pages:
            page = self._makers[name]()
            wired = cast("TakesIn", page)
            wired.made.connect(self.take_in)
            wired.left.connect(self.show_shop)
            self._pages[name] = page
            self.rooms.addWidget(page)
        self.rooms.setCurrentWidget(self._pages[name])
        self._pages[name].setFocus()

    def show_shop(self) -> None:
        """Show the tray and the section again."""
        self.rooms.setCurrentIndex(0)
        self.tray.take_focus()

    def take_in(self, traced: Traced) -> None:
        """Make a coupon of a section that was taken in, and open it."""
        self.show_shop()
        rack: RackName = "inch" if self.window_frame.settings.unit == "in" else "metric"
        try:
            coupon = coupon_from(traced, rack, self.controller.shop.rules)
        except GeometryError as error:
            self.saying.say(fault_sentence(error.faults[0]))
            return
        self._fresh = True
        self.controller.do(lambda s: changes.added(s, [coupon]), "add")

    # What is shown

    @property
    def unit(self) -> Unit:
        """The unit that lengths are shown in: the one chosen, or the open coupon's own."""
        return unit_of(self.controller.coupon, self.window_frame.settings)

    @property
    def rack(self) -> RackName:
        """The rack whose leaves are tried: the one chosen, or that of the callout."""
        return self._lying.rack(self.controller.coupon)

    def show_state(self) -> None:
        """Repaint every view from the state."""
        shop, unit = self.controller.shop, self.unit
        self._see(shop.coupon)
        settings, theme = self.window_frame.settings, self.window_frame.theme
        leaves = self.side.shows_leaves or self._lying.laid is not None
        self.working.ask(shop.coupon, self.rack, leaves=leaves)
        if not self.controller.busy:
            # Its small picture follows once the hand lets go.
            self.tray.show_state(shop, theme, self.filing.trouble)
        path = self.filing.path
        self.tools.show_state(
            self.controller.history,
            path.name if path is not None else "",
            dirty=self.controller.dirty,
        )
        self.view.show_coupon(shop.coupon, self._shown(), afresh=self._fresh)
        self._fresh = False
        self.knobs.show_section(shop.coupon.section, self.view.key, unit)
        photo = shop.coupon.backdrop is not None
        self.knobs.show_drawn(self._drawn, photo=photo, pictured=self._pictured)
        # What was refused in a field waits there for its coupon, but not in another tray.
        of = f"{self._edition} {shop.coupon.id}"
        self.side.show_coupon(shop, of, unit, self.rack, settings.symbols)
        self.side.leaves.show_laid(self._lying.laid)
        if self.side.shows_leaves:
            self.side.show_answers(self.working, unit, theme)

    def _see(self, coupon: Coupon) -> None:
        """Look at another coupon afresh, whichever way it was opened: by undo too."""
        before, self._seen = self._seen, coupon
        if before and before.id != coupon.id and before.section != coupon.section:
            self._fresh, self._lying = True, self._lying.with_leaf("", 0)

    def _shown(self) -> Shown:
        """What lies over the section: the leaf that was chosen, at rest on it."""
        answer = self._lying.answer(self.working.answers)
        coupon, look = self.controller.coupon, (self.window_frame.theme, self.unit)
        return over_section(coupon, answer, self._drawn, look, pictured=self._pictured)

    def _draw(self, drawn: Drawn) -> None:
        self._drawn ^= {drawn}
        self.show_state()

    def _show_photo(self) -> None:
        self._pictured = not self._pictured
        self.show_state()

    def _show_judged(self) -> None:
        self.side.show_judged(self.working, self.unit, self.window_frame.theme)

    def _show_rack(self, name: str) -> None:
        self._lying = Lying(cast("RackName", name))
        self.show_state()

    def _place(self) -> None:
        """Leave the leaf that was chosen where it rests, for its fault to be found."""
        answer = self._lying.answer(self.working.answers)
        if answer is not None and self._edit(with_placed(self.controller.coupon, answer), "place"):
            self._lay("", 0)
            self.side.look_at_placed()

    def _lay(self, mark: str, seat: int) -> None:
        self._lying = self._lying.with_leaf(mark, seat)
        self.show_state()

    def _see_focus(self, _: QWidget | None, now: QWidget | None) -> None:
        self.side.see_focus(now)

    def _mark(self, key: str) -> None:
        self.view.mark(key)
        self.knobs.show_section(self.controller.coupon.section, self.view.key, self.unit)

    def _show_rules(self) -> None:
        coupon = self.controller.coupon
        self.window_frame.show_notice(rules_word(coupon.rule_set), rules_lines(coupon))

    def _say_limit(self, limit: Limit) -> None:
        self.saying.say(limit_words(limit, self.unit))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken for itself."""
        name = KEYS.name_of(event)
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if name is None:
            super().keyPressEvent(event)
        else:
            self.do(_SHIFTED.get(name, name) if shift else name)
