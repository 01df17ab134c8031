"""The coupon shop, put together: one controller, and views that repaint from its state."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final, Protocol, cast

from PySide6.QtCore import QSize, Qt, Signal, SignalInstance
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from exercises.intake.traced import Traced
from exercises.tray import Tray
from exercises.versions import Document
from geometry.faults import GeometryError
from geometry.leaf import RackName
from geometry.lengths import Unit
from trainer.bench.picture import unit_of
from trainer.bench.saying import Saying
from trainer.shop import state as changes
from trainer.shop.building import coupon_of
from trainer.shop.controller import ShopController
from trainer.shop.history import History
from trainer.shop.keys import KEYS
from trainer.shop.knob_bar import KnobBar
from trainer.shop.section_view import SectionView, Shown
from trainer.shop.state import PLAIN, new_shop, shop_of
from trainer.shop.taking_in import coupon_from
from trainer.shop.tracing import trace_document, with_point, without_point
from trainer.shop.tray_panel import TrayPanel
from trainer.shop.turning import Limit
from trainer.shop.words import fault_sentence, limit_words
from trainer.window import WindowFrame

__all__ = ["IntakePage", "ShopScreen"]

_LEAST: Final = QSize(900, 420)
_TRAY: Final = 236
"""Logical px: how wide the tray's panel is."""


class IntakePage(Protocol):
    """A page that takes a section in: a widget with these signals."""

    @property
    def made(self) -> SignalInstance:
        """A `Traced` was made."""

    @property
    def left(self) -> SignalInstance:
        """The page is to be left with nothing made."""


class ShopScreen(QWidget):
    """The coupon shop.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.
    pages
        By name, ``photo`` and ``scan``, how the page is made that takes sections in: each comes
        with its libraries when it is first asked for.

    Signals
    -------
    try_asked(tray, at)
        A coupon is to be tried on the bench.
    """

    try_asked = Signal(object, int)

    def __init__(
        self,
        window: WindowFrame,
        pages: Mapping[str, Callable[[], QWidget]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.window_frame = window
        self._makers = dict(pages)
        self._pages: dict[str, QWidget] = {}
        self.controller = ShopController(new_shop(), self)
        self._fresh = True
        self._fill()
        self._listen()
        self.show_state()

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
        self.tray = TrayPanel(("plain", *self._makers))
        self.tray.setFixedWidth(_TRAY)
        self.view = SectionView()
        self.knobs = KnobBar()
        middle = QVBoxLayout()
        middle.setSpacing(8)
        middle.addWidget(self.view, 1)
        middle.addWidget(self.knobs)
        row.addWidget(self.tray)
        row.addLayout(middle, 1)
        self.saying = Saying(self.view)
        self.setAccessibleName(self.tr("Coupon shop"))
        self.window_frame.add_keys(self.tr("Coupon shop"), KEYS.groups)

    def _listen(self) -> None:
        controller, view, knobs, tray = self.controller, self.view, self.knobs, self.tray
        controller.changed.connect(self.show_state)
        controller.limited.connect(self._say_limit)
        view.turned.connect(lambda key, value: controller.turn(key, value, going_on=True))
        view.dragged.connect(
            lambda index, x, y: controller.drag_point(index, (x, y), going_on=True)
        )
        view.put_in.connect(self._put_in)
        view.taken_out.connect(self._take_out)
        view.let_go.connect(controller.end_gesture)
        view.chosen.connect(lambda _: self.show_state())
        knobs.stepped.connect(lambda key, value: controller.turn(key, value, going_on=True))
        knobs.nudged.connect(self._nudge)
        knobs.settled.connect(controller.end_gesture)
        knobs.chosen.connect(self._choose)
        knobs.asked.connect(self.do)
        tray.asked.connect(self.do)
        tray.opened.connect(controller.show)
        tray.move_asked.connect(
            lambda start, to: controller.do(lambda s: changes.moved(s, start, to), "move")
        )
        tray.titled.connect(
            lambda words: controller.do(lambda s: changes.titled(s, words), "title")
        )
        self.window_frame.settings_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self.show_state)

    # What is asked for

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        controller, canvas = self.controller, self.view.canvas
        at = controller.shop.at
        deeds: dict[str, Callable[[], object]] = {
            "undo": controller.undo,
            "redo": controller.redo,
            "add plain": self._add_plain,
            "add photo": lambda: self.show_page("photo"),
            "add scan": lambda: self.show_page("scan"),
            "duplicate": lambda: controller.do(changes.duplicated, "duplicate"),
            "delete": lambda: controller.do(changes.deleted, "delete"),
            "up": lambda: controller.do(lambda s: changes.moved(s, at, at - 1), "move"),
            "down": lambda: controller.do(lambda s: changes.moved(s, at, at + 1), "move"),
            "before": lambda: controller.show(at - 1),
            "after": lambda: controller.show(at + 1),
            "try": lambda: self.try_asked.emit(controller.shop.tray, at),
            "fit": canvas.fit,
            "closer": canvas.zoom_in,
            "back": canvas.zoom_out,
            "point in": self._put_in_chosen,
            "point out": lambda: self._take_out(self._chosen_point),
        }
        deeds[name]()

    def _add_plain(self) -> None:
        plain = coupon_of(PLAIN, {})
        self.controller.do(lambda s: changes.added(s, [plain]), "add")

    def _choose(self, key: str) -> None:
        self.view.choose(key)
        self.show_state()

    @property
    def _chosen_point(self) -> int:
        key = self.view.key
        return int(key[6:]) if key.startswith("trace.") else -1

    def _nudge(self, dx: float, dy: float) -> None:
        trace, index = self.controller.coupon.section.bead.trace, self._chosen_point
        if trace is not None and 0 <= index < len(trace):
            x, y = trace[index]
            self.controller.drag_point(index, (x + dx, y + dy), going_on=True)

    def _put_in_chosen(self) -> None:
        trace, index = self.controller.coupon.section.bead.trace, self._chosen_point
        if trace is not None and 0 <= index < len(trace) - 1:
            (ax, ay), (bx, by) = trace[index], trace[index + 1]
            self._put_in(index, (ax + bx) / 2.0, (ay + by) / 2.0)

    def _put_in(self, after: int, x: float, y: float) -> None:
        coupon = self.controller.coupon
        trace = coupon.section.bead.trace
        if trace is None:
            return
        document = trace_document(coupon, with_point(trace, after, (x, y)))
        if self._edit(document, "point in"):
            self._choose(f"trace.{after + 1}")

    def _take_out(self, index: int) -> None:
        coupon = self.controller.coupon
        trace = coupon.section.bead.trace
        if trace is None or not 0 < index < len(trace) - 1:
            return
        if self._edit(trace_document(coupon, without_point(trace, index)), "point out"):
            left = len(trace) - 3
            self._choose(f"trace.{min(index, left)}" if left > 0 else "leg_base")

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
        self._fresh = True
        self.controller.go_on_from(other.controller)

    def open_tray(self, tray: Tray) -> None:
        """Begin with another tray."""
        self._fresh = True
        self.controller.open(History(shop_of(tray)), saved=True)

    # Pages that take a section in

    def show_page(self, name: str) -> None:
        """Show a page that takes a section in; it has the shop's room until it is left."""
        if name not in self._pages:
            page = self._makers[name]()
            wired = cast("IntakePage", page)
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

    def show_state(self) -> None:
        """Repaint every view from the state."""
        shop, theme, unit = self.controller.shop, self.window_frame.theme, self.unit
        shown = Shown(theme, unit)
        self.tray.show_state(shop, theme)
        self.view.show_coupon(shop.coupon, shown, afresh=self._fresh)
        self._fresh = False
        self.knobs.show_section(shop.coupon.section, self.view.key, unit)

    def _say_limit(self, limit: Limit) -> None:
        self.saying.say(limit_words(limit, self.unit))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken for itself."""
        name = KEYS.name_of(event)
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if name is None:
            super().keyPressEvent(event)
        else:
            self.do("redo" if name == "undo" and shift else name)
