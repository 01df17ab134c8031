"""The guide at the bench: hears what is done, moves on with it, and puts the card where it fits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Qt, QTimer
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from trainer.bench.screen import BenchScreen
from trainer.bench.state import BenchState, logged
from trainer.canvas.drawing import Vec
from trainer.guide.card import GuideCard, Pointing
from trainer.guide.placing import Box, Spot, place_for, spots_in
from trainer.guide.steps import (
    OFF,
    OFFERED,
    STEPS,
    Guide,
    Seen,
    Target,
    advanced,
    shown_step,
    skipped,
    started,
    target_of,
)
from trainer.guide.words import offer_words, step_title, step_words
from trainer.window import WindowFrame

__all__ = ["GUIDED", "Guiding"]

GUIDED: Final = "guided"
"""The event in the handling that says that the guide spoke meanwhile."""

_TIP: Final = 56.0
"""Logical pixels about the leaf's point that the card must leave free."""

_HIDES_TIP, _HIDES_LOUPE, _HIDES_BEAD, _HIDES_LEAF, _HIDES_MARK = 20.0, 12.0, 4.0, 1.5, 0.6
_HIDES_LABEL: Final = 3.0
_LIES_OUTSIDE: Final = 5.0
"""What lying over the job card costs: only where the picture has no room at all."""


class Guiding(QObject):
    """Leads through the first coupon; everything is done at the bench itself, nothing here.

    Parameters
    ----------
    frame
        Its Help menu gets an action; its settings remember that the guide is over.
    screen
        Whose first coupon it is.
    """

    def __init__(self, frame: WindowFrame, screen: BenchScreen) -> None:
        super().__init__(screen)
        self._frame, self._screen, self._bench = frame, screen, screen.bench
        self.guide: Guide = OFF
        self._coupon = ""
        self._looked, self._reviewed = False, False
        self._loupe = frame.settings.loupe
        self._view_size = screen.canvas.view.size
        self._target: QWidget | None = None
        self._place: Box | None = None
        self.pointing = Pointing(self._bench)
        self.card = GuideCard(self._bench)
        self.card.started.connect(self.begin)
        self.card.skip_asked.connect(self._skip)
        self.card.closed.connect(self.close)
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self._arrange)
        self.action = QAction(self.tr("&First coupon, step by step"), frame.window)
        self.action.triggered.connect(self.show_again)
        frame.help_menu.addAction(self.action)
        self._listen()

    def _listen(self) -> None:
        screen, frame = self._screen, self._frame
        screen.controller.changed.connect(self._follow)
        screen.review.player.changed.connect(self._on_player)
        screen.canvas.view_changed.connect(self._on_view)
        frame.settings_changed.connect(self._on_settings)
        frame.theme_changed.connect(self._show)
        frame.bench_lent.connect(self.close)
        self._bench.column.verticalScrollBar().valueChanged.connect(lambda _: self._place_soon())
        self._bench.installEventFilter(self)

    # What begins and ends it

    def offer(self) -> None:
        """Offer the guide to somebody who has not been through it, once nothing else is asked."""
        settings = self._frame.settings
        if settings.guide_done or not settings.first_start_seen or self.guide.phase != "off":
            return
        self.guide = OFFERED
        self._show()

    def show_again(self) -> None:
        """Begin with the tray's first coupon, laid out anew if its call is on record."""
        self._frame.show_screen("bench")
        if self._screen.course.index != 0:
            self._screen.go_to(0)
        if self._state.phase == "debrief":
            self._screen.again()
        self.begin()

    def begin(self) -> None:
        """Begin with the coupon that lies there; the hands are at the picture."""
        self._looked, self._reviewed = False, False
        self._coupon = self._state.coupon.id
        self.guide = started(self._seen())
        # Not before: whoever clicked the offer had the focus there, and it goes with the offer.
        self._screen.canvas.setFocus()
        self._mark()
        self._show()

    def close(self) -> None:
        """End it, done or not; it isn't offered again."""
        had_focus = any(button.hasFocus() for button in self.card.buttons)
        self.guide = OFF
        self._show()
        if had_focus:
            self._screen.canvas.setFocus()
        self._frame.change_settings(replace(self._frame.settings, guide_done=True))

    def _finish(self) -> None:
        self.close()
        self._screen.saying.say(self.tr("That was all of it. The guide stays in the Help menu."))

    # What is heard

    @property
    def _state(self) -> BenchState:
        return self._screen.controller.state

    def _seen(self) -> Seen:
        loupe = self._frame.settings.loupe
        return Seen(self._state, self._looked, loupe, self._reviewed)

    def _follow(self) -> None:
        """Go on as far as what has been done allows."""
        if self.guide.phase == "offered" and self._state.began is not None:
            # Somebody who has begun by themself needs no offer; it isn't declined either.
            self.guide = OFF
            self._show()
        if self.guide.phase != "on":
            return
        if self._state.coupon.id != self._coupon or self._is_laid_out_anew():
            self._leave()
            return
        self._mark()
        before = self.guide
        self.guide = advanced(self.guide, self._seen())
        if self.guide.over:
            self._finish()
        elif self.guide != before or not self._screen.controller.moving:
            self._show()

    def _is_laid_out_anew(self) -> bool:
        return STEPS[self.guide.at].name == "debrief" and self._state.phase != "debrief"

    def _leave(self) -> None:
        """Another coupon, or this one again: past the call that is the end, before it a break."""
        if STEPS[self.guide.at].name == "debrief":
            self._finish()
        else:
            self.guide = OFF
            self._show()

    def _mark(self) -> None:
        """Note in the handling, once, that it was guided."""
        state = self._state
        if state.phase != "handling" or state.began is None:
            return
        if all(entry.event != GUIDED for entry in state.handling.entries):
            self._screen.controller.do(lambda now_is, now: logged(now_is, GUIDED, now))

    def _on_player(self) -> None:
        player = self._screen.review.player
        now = player.now
        moved = now.runs or now.reading is not None or now.at < player.log.duration
        if self.guide.phase == "on" and self._state.phase == "debrief":
            self._reviewed = self._reviewed or moved or not now.covered
            # The player speaks in the middle of the bench's own repainting.
            QTimer.singleShot(0, self, self._follow)

    def _on_view(self) -> None:
        """Zoomed or moved by somebody, not by another size of the window."""
        size = self._screen.canvas.view.size
        same, self._view_size = size == self._view_size, size
        if same and self._standing() == "look":
            self._looked = True
            self._follow()
        self._place_soon()

    def _on_settings(self) -> None:
        switched = self._frame.settings.loupe != self._loupe
        self._loupe = self._frame.settings.loupe
        if switched and self._standing() == "look":
            self._looked = self._loupe
        self.offer()
        self._follow()

    def _standing(self) -> str | None:
        return shown_step(self.guide, self._state)

    def _skip(self) -> None:
        self.guide = skipped(self.guide, self._seen())
        if self.guide.over:
            self._finish()
        else:
            self._screen.canvas.setFocus()
            self._show()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Esc ends the guide before it means anything else; the card goes with what moves."""
        kind = event.type()
        if kind == QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and watched is self._bench:
            if event.key() == Qt.Key.Key_Escape and self.guide.phase != "off":
                self.close()
                return True
        elif kind in (QEvent.Type.Resize, QEvent.Type.LayoutRequest, QEvent.Type.Move):
            self._place_soon()
        elif kind == QEvent.Type.LanguageChange and watched is self._bench:
            self.action.setText(self.tr("&First coupon, step by step"))
            self._show()
        return False

    # What is shown

    def _show(self) -> None:
        """Show the step that is next, or nothing."""
        name = shown_step(self.guide, self._state)
        if self.guide.phase == "offered":
            self.card.show_offer(*offer_words())
            self._watch(None)
        elif name is None:
            self._place = None
            self.card.hide()
            self.pointing.hide()
            self._watch(None)
            return
        else:
            target = target_of(name, self._seen())
            words = step_title(name), step_words(name, target)
            looks = target == "loupe"
            self.card.show_step(*words, self.guide.at + 1, len(STEPS), looks=looks)
            self._watch(self._widget(target))
        self._arrange()
        self.card.say()
        self._order_focus()

    def _watch(self, widget: QWidget | None) -> None:
        """Go along with the widget that is pointed at, and bring it into view once."""
        if widget is self._target:
            return
        if self._target is not None:
            self._target.removeEventFilter(self)
        self._target = widget
        if widget is not None:
            widget.installEventFilter(self)
            inner = self._bench.column.widget()
            if inner is not None and inner.isAncestorOf(widget):
                self._bench.column.ensureWidgetVisible(widget, 8, 16)

    def _widget(self, target: Target) -> QWidget | None:
        """The widget that a step is about; None for what the picture shows."""
        screen = self._screen
        panel, call = screen.rack_panel, screen.call_panel
        found: dict[Target, Callable[[], QWidget | None]] = {
            "faces": lambda: call.faces,
            "rack": lambda: panel.rack,
            "loupe": lambda: None,
            "loupe switch": lambda: panel.looking["loupe"],
            "states": lambda: call.states,
            "dispositions": lambda: call.dispositions,
            "record": lambda: screen.record_bar.button,
            "replay": lambda: screen.review.replay.play,
        }
        other = found.get(target)
        return other() if other is not None else panel.steps.buttons[target]

    def _order_focus(self) -> None:
        """Let Tab come from the picture to the card, and go on from there."""
        last: QWidget = self._screen.canvas
        for button in self.card.buttons:
            if last.nextInFocusChain() is not button:
                QWidget.setTabOrder(last, button)
            last = button

    def _place_soon(self) -> None:
        if self.guide.phase != "off":
            self._later.start()

    def _arrange(self) -> None:
        """Put the card where it hides least, and point from it."""
        if self.guide.phase == "off":
            return
        canvas = self._screen.canvas
        room = self._room_of(canvas)
        size = self.card.size_in(room.width())
        target, is_round = self._target_box()
        # With nothing to point at it lies where the table is empty.
        box = _box(target) if target is not None else (room.right(), room.top(), 1.0, 1.0)
        wanted = (float(size.width()), float(size.height()))
        places = spots_in(_box(room), wanted)
        avoid = self._avoid(room, wanted)
        if canvas.isVisible():
            places.append(self._over_job_card(wanted))
        self._place = place_for(places, avoid, box, self._place)
        self.card.setGeometry(*(round(part) for part in self._place))
        self.pointing.theme = self._frame.theme
        lies = QRectF(*self._place)
        tip = self._tip_box(room)
        drawn = [_box(one.translated(room.topLeft())) for one in [*canvas.labels, *self._marks()]]
        self.pointing.point(
            lies,
            target,
            never=self._in_the_way(QAbstractButton) + drawn + ([] if tip is None else [_box(tip)]),
            rather_not=self._in_the_way(QLabel),
            round_one=is_round,
        )
        self.card.raise_()

    def _in_the_way(self, kind: type[QWidget]) -> list[Box]:
        """Where the bench's widgets of a kind are, but for what is pointed at and the card's."""
        target, bench = self._target, self._bench
        return [
            _box(self._room_of(one))
            for one in bench.findChildren(kind)
            if one.isVisibleTo(bench)
            and not self.card.isAncestorOf(one)
            and (target is None or (one is not target and not target.isAncestorOf(one)))
        ]

    def _room_of(self, widget: QWidget) -> QRectF:
        return QRectF(QRect(widget.mapTo(self._bench, QPoint(0, 0)), widget.size()))

    def _over_job_card(self, size: tuple[float, float]) -> Box:
        room = self._room_of(self._screen.job_card)
        return (room.left() + 8.0, room.top() + 8.0, min(size[0], room.width() - 16.0), size[1])

    def _target_box(self) -> tuple[QRectF | None, bool]:
        """Where what is pointed at is seen; and whether it is round."""
        if self._target is not None:
            room = self._room_of(self._target)
            column = self._bench.column
            if column.isAncestorOf(self._target):
                room &= self._room_of(column.viewport())
            return (None if room.isEmpty() else room), False
        lens = self._screen.canvas.lens if self._standing() == "look" else None
        if lens is None:
            return None, False
        return lens.rect.translated(self._room_of(self._screen.canvas).topLeft()), True

    def _tip_box(self, room: QRectF) -> QRectF | None:
        """Where the leaf's point is, with what is looked at beside it."""
        state, pose = self._state, self._screen.controller.shown_pose
        if state.phase != "handling" or state.leaf is None or pose is None:
            return None
        x, y = self._screen.canvas.view.to_screen(pose.to_section(state.leaf.point))
        tip = QRectF(x - _TIP, y - _TIP, 2.0 * _TIP, 2.0 * _TIP)
        return tip.translated(room.topLeft())

    def _avoid(self, room: QRectF, size: tuple[float, float]) -> list[Spot]:
        """What the card should not lie on."""
        canvas, state = self._screen.canvas, self._state
        at = room.topLeft()
        section = state.section
        corners = [(0.0, 0.0), section.toe("base"), section.toe("upright")]
        bead = _bounds([canvas.view.to_screen(corner) for corner in corners]).translated(at)
        spots = [Spot(_box(bead.adjusted(-24.0, -24.0, 24.0, 24.0)), _HIDES_BEAD)]
        tip = self._tip_box(room)
        if tip is not None:
            spots.append(Spot(_box(tip), _HIDES_TIP))
        lens = canvas.lens
        if lens is not None:
            left, top, right, bottom = lens.box
            glass = QRectF(left, top, right - left, bottom - top).translated(at)
            spots.append(Spot(_box(glass), _HIDES_LOUPE))
        pose = self._screen.controller.shown_pose
        if state.phase == "handling" and state.leaf is not None and pose is not None:
            handle = canvas.view.to_screen(pose.to_section(state.leaf.handle))
            spot = QRectF(handle[0] - 40.0, handle[1] - 40.0, 80.0, 80.0).translated(at)
            spots.append(Spot(_box(spot), _HIDES_LEAF))
        spots += [Spot(_box(mark.translated(at)), _HIDES_MARK) for mark in self._marks()]
        spots += [Spot(_box(label.translated(at)), _HIDES_LABEL) for label in canvas.labels]
        # The line that says why nothing happened, and the scale, have their places.
        spots.append(Spot((room.center().x() - 150.0, room.top() + 8.0, 300.0, 40.0), _HIDES_MARK))
        spots.append(Spot((room.left() + 8.0, room.bottom() - 48.0, 160.0, 40.0), _HIDES_MARK))
        spots.append(Spot(self._over_job_card(size), _LIES_OUTSIDE))
        return spots

    def _marks(self) -> list[QRectF]:
        """What is drawn over the section; logical pixels of the view."""
        canvas = self._screen.canvas
        points = [point for one in canvas.scene.overlays for point in _points_of(one)]
        seen = [canvas.view.to_screen(point) for point in points]
        return [QRectF(x - 60.0, y - 18.0, 120.0, 36.0) for x, y in seen]


def _points_of(overlay: object) -> tuple[Vec, ...]:
    points: tuple[Vec, ...] = getattr(overlay, "points", ())
    ends = [getattr(overlay, name, None) for name in ("at", "start", "end")]
    # A traced line has thousands of points, and those lie close.
    thin = points if len(points) < 16 else points[:: len(points) // 8]
    return thin + tuple(end for end in ends if end is not None)


def _box(rect: QRectF) -> Box:
    return rect.x(), rect.y(), rect.width(), rect.height()


def _bounds(points: list[Vec]) -> QRectF:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return QRectF(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
