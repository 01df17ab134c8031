"""The four corners, put together: one controller, and views that repaint from its state."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Final, cast

from PySide6.QtCore import QRectF, QStandardPaths, Qt, QTimer, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QFocusEvent,
    QHideEvent,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QShortcut,
)
from PySide6.QtWidgets import QVBoxLayout, QWidget

from geometry.leaf import RackName
from geometry.lengths import Unit
from trainer.corners import state as changes
from trainer.corners.captions import caption, topic_word
from trainer.corners.composing import Subject
from trainer.corners.controller import CornersController
from trainer.corners.keys import KEYS
from trainer.corners.panel import CaptionBar, Panel
from trainer.corners.placing import needed_reach
from trainer.corners.pressing import Corner
from trainer.corners.saving import KINDS, Kind, ask_where, copy_picture, save_picture
from trainer.corners.stage import Stage
from trainer.corners.state import Corners, Drawn, Knob, Limit
from trainer.corners.talk import signs
from trainer.corners.talker import Talker
from trainer.corners.whisper import Whisper
from trainer.corners.words import limit_words, spoken
from trainer.look.tokens import Theme
from trainer.window import WindowFrame

__all__ = ["CornersScreen"]

_DEBOUNCE: Final = 600
"""ms without a change, after which a screen reader is told what changed."""

_TYPE_FOR: Final = 760.0
"""Logical px of height of the pictures at which the cards' type has its usual size."""
_PROJECTED: Final = 1.25
"""Times that, for who sits at the back."""

_RING: Final = 2.0
"""Logical pixels: how wide the ring of the focus is."""


class CornersScreen(QWidget):
    """Four corners.

    Parameters
    ----------
    window
        Its settings, theme and dialogs are used.

    Signals
    -------
    announced
        What was said to a screen reader.
    """

    announced = Signal(str)

    def __init__(self, window: WindowFrame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.window_frame = window
        self.controller = CornersController(self._first(), self)
        self.talker = Talker(self.controller, self)
        self.projected = False
        self._was_maximised = False
        self._folder = Path(
            window.settings.folder("pictures")
            or QStandardPaths.writableLocation(QStandardPaths.StandardLocation.PicturesLocation)
            or Path.home()
        )
        self._fill()
        self._listen()
        self._said = self.controller.corners
        self._tell = QTimer(self)
        self._tell.setSingleShot(True)
        self._tell.setInterval(_DEBOUNCE)
        self._tell.timeout.connect(self._announce)
        self.show_state()

    def _first(self) -> Corners:
        state = Corners()
        return changes.with_rack(state, "inch") if self.unit == "in" else state

    def _fill(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 12)
        column.setSpacing(10)
        self.stage = Stage()
        self.bar = CaptionBar()
        self.panel = Panel()
        column.addWidget(self.stage, 1)
        column.addWidget(self.bar)
        column.addWidget(self.panel)
        self.bar.hide()
        self.saying = Whisper(self.stage.panes[0])
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.tr("Four corners"))
        self.window_frame.add_keys(self.tr("Four corners"), KEYS.groups)

    def _listen(self) -> None:
        controller, panel, stage = self.controller, self.panel, self.stage
        controller.changed.connect(self.show_state)
        controller.limited.connect(self._say_limit)
        self.talker.changed.connect(self._show_talk)
        panel.turned.connect(lambda knob, value: self._turn(knob, value, f"slider {knob}"))
        panel.settled.connect(controller.end_gesture)
        panel.refused.connect(self.saying.say)
        panel.picked.connect(lambda mark: controller.do(lambda s: changes.with_leaf(s, mark)))
        panel.rack_asked.connect(
            lambda name: controller.do(lambda s: changes.with_rack(s, cast(RackName, name)))
        )
        panel.asked.connect(self.do)
        stage.knob_moved.connect(lambda knob, value: self._turn(knob, value, f"handle {knob}"))
        stage.leaf_pulled.connect(
            lambda size: controller.do(lambda s: changes.with_leaf_near(s, size), "leaf")
        )
        stage.leaf_stepped.connect(
            lambda step: controller.do(lambda s: changes.leaf_beside(s, step))
        )
        stage.let_go.connect(controller.end_gesture)
        self.bar.forward.connect(self.talker.forward)
        self.bar.back.connect(self.talker.back)
        self.bar.ended.connect(self.talker.end)
        self.window_frame.settings_changed.connect(self.show_state)
        self.window_frame.theme_changed.connect(self.show_state)
        # A presenter's remote sends these, wherever the focus may be: also on a slider.
        for key, name in ((Qt.Key.Key_PageDown, "forward"), (Qt.Key.Key_PageUp, "back")):
            shortcut = QShortcut(QKeySequence(key), self)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(lambda name=name: self.do(name))

    # What is asked for

    def _turn(self, knob: str, value: float, gesture: str) -> None:
        self.controller.set_value(cast(Knob, knob), value, gesture)
        self.panel.show_state(
            self.controller.state,
            self.unit,
            can_undo=self.controller.can_undo,
            talking=self.talker.on,
        )

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        word, _, rest = name.partition(" ")
        deeds: dict[str, Callable[[], None]] = {
            "forward": self._forward,
            "back": self.talker.back,
            "leave": self._leave,
            "talk": self._switch_talk,
            "full": lambda: self.project(not self.projected),
            "over": lambda: self.controller.do(changes.turned_over),
            "equal": lambda: self.controller.do(
                lambda s: changes.with_equal_legs(s, equal=not s.equal)
            ),
            "draw": lambda: self._draw(cast(Drawn, rest)),
            "leaf": lambda: self.controller.do(
                lambda s: changes.leaf_beside(s, 1 if rest == "after" else -1)
            ),
            "fit": self.stage.fit,
            "again": self._again,
            "undo": self.controller.undo,
            "copy": self.copy,
            "save": lambda: self.save(cast(Kind, rest)),
        }
        deeds[word]()

    def _draw(self, drawn: Drawn) -> None:
        """Drawings change no section: a talk goes on under them."""
        self.talker.draw(drawn)

    def _again(self) -> None:
        drawn = self.controller.state.drawn
        self.controller.do(lambda _: replace(self._first(), drawn=drawn))

    def _forward(self) -> None:
        if not self.talker.on:
            self.setFocus()
        self.talker.forward()

    def _switch_talk(self) -> None:
        if self.talker.on:
            self.talker.end()
        else:
            self._forward()

    def _leave(self) -> None:
        if self.talker.on:
            self.talker.end()
        elif self.projected:
            self.project(False)

    def project(self, on: bool) -> None:
        """Fill the screen with the pictures alone, in large type; or go back."""
        window = self.window_frame.window
        if on == self.projected:
            return
        self.projected = on
        self.window_frame.bar.setVisible(not on)
        self.panel.setVisible(not on)
        if on:
            self._was_maximised = window.isMaximized()
            window.showFullScreen()
            self.setFocus()
            self.saying.say(self.tr("Esc leaves the full screen; the right arrow gives the talk"))
        elif self._was_maximised:
            window.showMaximized()
        else:
            window.showNormal()
        self.show_state()

    def hideEvent(self, event: QHideEvent) -> None:
        """Another screen is shown: it needs the bar."""
        super().hideEvent(event)
        if self.projected and not event.spontaneous():
            self.project(False)

    def paintEvent(self, event: QPaintEvent) -> None:
        """A ring about all of it while the keys are the talk's; on a projector nothing but it."""
        super().paintEvent(event)
        if self.hasFocus() and not self.projected:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(QColor(self.window_frame.theme.accent), _RING))
            inset = _RING + 1.0
            ring = QRectF(self.rect()).adjusted(inset, inset, -inset, -inset)
            painter.drawRoundedRect(ring, 8.0, 8.0)
            painter.end()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the focus."""
        super().focusOutEvent(event)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no control has taken for itself."""
        name = KEYS.name_of(event)
        if name is None or (name == "leave" and not (self.talker.on or self.projected)):
            super().keyPressEvent(event)
            return
        self.do(name)

    def go_on_from(self, other: CornersScreen) -> None:
        """Go on with what another one shows, which is given up."""
        self.controller.go_on_from(other.controller)

    # Pictures

    @property
    def unit(self) -> Unit:
        """The unit that lengths are shown in."""
        return self.window_frame.settings.unit or "mm"

    @property
    def subject(self) -> Subject:
        """What a picture would be of now."""
        self.controller.flush()
        return Subject(
            self.controller.corners, self.controller.shown, self.unit, self.window_frame.theme
        )

    def copy(self) -> None:
        """Copy the picture."""
        copy_picture(self.subject)
        self.saying.say(self.tr("Copied, 1920 \u00d7 1080"))

    def save(self, kind: Kind) -> None:
        """Ask where to, and save the picture there."""
        if kind not in KINDS:
            return
        path = ask_where(self, kind, self._folder)
        if path is not None:
            self.save_to(kind, path)

    def save_to(self, kind: Kind, path: Path) -> None:
        """Save the picture, or say why that can't be."""
        try:
            save_picture(self.subject, kind, path)
        except OSError as error:
            self.window_frame.show_notice(
                self.tr("The picture could not be saved"),
                self.tr(
                    "{file}: {reason}\n\nWhatever was there is as it was. Choose another folder, "
                    "or free some space in this one."
                ).format(file=path, reason=error.strerror or error),
            )
            return
        self._folder = path.parent
        window = self.window_frame
        window.change_settings(window.settings.with_folder("pictures", path.parent))
        self.saying.say(self.tr("Saved: {file}").format(file=path.name))

    # What is shown

    def _type(self) -> Theme:
        """The theme, its type as large as the room asks for."""
        theme = self.window_frame.theme
        factor = max(1.0, self.stage.height() / _TYPE_FOR) * (_PROJECTED if self.projected else 1.0)
        factor = min(round(factor, 1), 3.2)
        if factor == 1.0:
            return theme
        sizes = tuple((name, size * factor) for name, size in theme.text_sizes)
        return replace(theme, text_sizes=sizes)

    def show_state(self) -> None:
        """Repaint every view from the state."""
        controller = self.controller
        self.talker.reduced_motion = self.window_frame.theme.reduced_motion
        self.stage.quiet, self.stage.hands_off = bool(controller.shown.drawn), self.talker.on
        theme = self._type()
        self.stage.show_corners(controller.corners, controller.shown, self.unit, theme)
        self.saying.suit(theme.text_size("body"))
        self.panel.show_state(
            controller.state, self.unit, can_undo=controller.can_undo, talking=self.talker.on
        )
        if self.talker.on:
            self._show_caption()
        self._tell.start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Set the type for the height."""
        super().resizeEvent(event)
        QTimer.singleShot(0, self, self.show_state)

    def _show_talk(self) -> None:
        passage = self.talker.passage
        self.bar.setVisible(passage is not None)
        if passage is None:
            self.stage.kept_reach = None
        else:
            self.stage.kept_reach = max(needed_reach(passage.start), needed_reach(passage.end))
        if not self.talker.moving:
            self.controller.flush()
        self.show_state()

    def _show_caption(self) -> None:
        """Say what flipped, once the pictures have stopped there; on the way, nothing new."""
        stop, passage = self.talker.stop, self.talker.passage
        if stop is None or passage is None:
            return
        size = self._type().text_size("body") * (1.25 if self.projected else 1.1)
        words = (
            "\u2026"
            if self.talker.moving
            else caption(passage, stop, self.controller.corners, self.controller.shown, self.unit)
        )
        topic = topic_word(passage.topic)
        self.bar.say(stop.passage + 1, self.talker.count, topic, words, size)

    def _say_limit(self, limit: Limit) -> None:
        self.saying.say(limit_words(limit, self.unit))

    def _announce(self) -> None:
        """Tell a screen reader which verdicts are new, once nothing moves any more."""
        if self.talker.moving or not self.isVisible():
            return
        before, now = self._said, self.controller.corners
        self._said = now
        new: list[Corner] = [
            corner
            for corner, old, sign in zip(now, signs(before), signs(now), strict=True)
            if old != sign
        ]
        parts = [self.bar.words.text()] if self.talker.on else []
        parts += [spoken(corner, self.unit) for corner in new]
        if not parts:
            return
        text = " ".join(parts)
        self.announced.emit(text)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.stage, text))
