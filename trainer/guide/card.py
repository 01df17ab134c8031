"""The card that says what to do next, and the ring and line that show where. Neither is modal."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPaintEvent,
    QPen,
    QRegion,
)
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from trainer.guide.placing import Box, leader, rim
from trainer.look.tokens import LIGHT, Theme

__all__ = ["GuideCard", "Pointing"]

_WIDTH: Final = 300
_NARROW: Final = 248
"""Logical pixels; the narrow one where the picture is small."""

_BORDER: Final = 2
"""Logical pixels, as the stylesheet has it: a layout's height doesn't count it."""

_RING: Final = 2.0
_OUT: Final = 3.0
"""Logical pixels: width of the ring, and how far it lies outside of what it is about."""


class GuideCard(QFrame):
    """A few words, and two ways out.

    Signals
    -------
    started
        The offer was taken.
    skip_asked
        This step should be passed over.
    closed
        No more of the guide.
    """

    started = Signal()
    skip_asked = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("kind", "card")
        # Clicks on the card are nobody else's, and it never takes the focus by itself.
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        box = QVBoxLayout(self)
        box.setContentsMargins(14, 10, 10, 8)
        box.setSpacing(4)
        head = QHBoxLayout()
        self._title = QLabel()
        self._title.setProperty("tone", "heading")
        self._count = QLabel()
        self._count.setProperty("tone", "gloss")
        head.addWidget(self._title, 1)
        head.addWidget(self._count)
        head.addSpacing(4)
        box.addLayout(head)
        self._text = QLabel()
        self._text.setWordWrap(True)
        self._text.setTextFormat(Qt.TextFormat.PlainText)
        self._text.setAlignment(Qt.AlignmentFlag.AlignTop)
        box.addWidget(self._text, 1)
        box.addLayout(self._ways_out())
        self._said = ""
        self.hide()

    def _ways_out(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.start, self.skip, self.close_guide = QPushButton(), QPushButton(), QPushButton()
        self.start.setProperty("kind", "segment")
        self.start.clicked.connect(self.started)
        self.skip.clicked.connect(self.skip_asked)
        self.close_guide.clicked.connect(self.closed)
        row.addWidget(self.start)
        row.addWidget(self.skip)
        row.addStretch(1)
        row.addWidget(self.close_guide)
        for button in (self.skip, self.close_guide):
            button.setProperty("kind", "link")
        for button in self.buttons:
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setMinimumHeight(24)
        return row

    @property
    def buttons(self) -> tuple[QPushButton, ...]:
        """Where Tab can stop on the card."""
        return self.start, self.skip, self.close_guide

    @property
    def words(self) -> tuple[str, str]:
        """Title and text that are shown."""
        return self._title.text(), self._text.text()

    def show_offer(self, title: str, text: str) -> None:
        """Offer the guide."""
        self._show(title, text, "")
        self.start.show()
        self.skip.hide()
        self.start.setText(self.tr("Show me"))
        self._name_close(self.tr("Not now"))

    def show_step(self, title: str, text: str, place: int, count: int, *, looks: bool) -> None:
        """Show step `place` of `count`, from 1; `looks` if nothing but an eye can do it."""
        self._show(title, text, self.tr("{n} of {count}").format(n=place, count=count))
        self.start.hide()
        last = place == count
        self.skip.setVisible(not last)
        self.skip.setText(self.tr("I have looked") if looks else self.tr("Skip this step"))
        self._name_close(self.tr("Done") if last else self.tr("Close the guide"))

    def _name_close(self, words: str) -> None:
        key = self.tr("Esc")
        self.close_guide.setText(f"{words}  {key}")
        self.close_guide.setAccessibleName(words)
        self.close_guide.setAccessibleDescription(key)

    def _show(self, title: str, text: str, count: str) -> None:
        self._title.setText(title)
        self._text.setText(text)
        self._count.setText(count)
        self.setAccessibleName(self.tr("Guide: {title}").format(title=title))
        self.setAccessibleDescription(text)
        self.show()

    def say(self) -> None:
        """Speak what is shown, once."""
        words = " ".join(part for part in (self._count.text(), *self.words) if part)
        if words != self._said:
            self._said = words
            if QAccessible.isActive():
                QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))

    def size_in(self, width: float) -> QSize:
        """Return how large the card is in a picture of that width."""
        wide = _WIDTH if width >= 2.2 * _WIDTH else _NARROW
        layout = self.layout()
        inner = wide - 2 * _BORDER
        high = layout.heightForWidth(inner) + 2 * _BORDER if layout is not None else 0
        return QSize(wide, max(high, self.minimumSizeHint().height()))


class Pointing(QWidget):
    """A ring about what is spoken of, and a line from the card to it; clicks go through both."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._over = parent
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.theme: Theme = LIGHT
        self._path = QPainterPath()
        parent.installEventFilter(self)
        self.hide()

    def point(
        self,
        card: QRectF,
        target: QRectF | None,
        *,
        never: Sequence[Box],
        rather_not: Sequence[Box],
        round_one: bool,
    ) -> None:
        """Point from `card` at `target`, both in the parent's logical pixels; at nothing if None.

        Parameters
        ----------
        never
            What the line must not cross; without a way past it there is the ring alone.
        rather_not
            What it crosses only where there is no other way.
        round_one
            Whether the target is a circle, as the loupe is.
        """
        if target is None:
            self.hide()
            return
        path = QPainterPath()
        ring = target.adjusted(-_OUT, -_OUT, _OUT, _OUT) & QRectF(self._over.rect())
        if round_one:
            path.addEllipse(ring)
        else:
            path.addRoundedRect(ring, self.theme.radius, self.theme.radius)
        starts, ends = rim(_box(card)), rim(_box(ring), round_one=round_one)
        line = None if card.intersects(ring) else leader(starts, ends, never, rather_not)
        if line is not None:
            path.moveTo(*line[0])
            path.lineTo(*line[1])
        if path != self._path or self.isHidden():
            self._path = path
            # Hidden first, so that what is no longer covered is painted anew.
            self.hide()
            self.setGeometry(self._over.rect())
            self.setMask(_around(path))
            self.show()

    @property
    def path(self) -> QPainterPath:
        """What is drawn, logical pixels of the parent."""
        return self._path

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Be as large as the parent."""
        if event.type() == QEvent.Type.Resize:
            self.setGeometry(self._over.rect())
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """The accent over a casing, so that it shows on steel, on light and on paper."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for colour, width in ((self.theme.panel, _RING + 1.0), (self.theme.accent, _RING)):
            painter.setPen(QPen(QColor(colour), width))
            painter.drawPath(self._path)
        painter.end()


def _box(rect: QRectF) -> Box:
    return rect.x(), rect.y(), rect.width(), rect.height()


def _around(path: QPainterPath) -> QRegion:
    """The pixels that drawing a path may touch."""
    stroker = QPainterPathStroker()
    stroker.setWidth(_RING + 5.0)
    region = QRegion()
    for polygon in stroker.createStroke(path).toFillPolygons():
        region += QRegion(polygon.toPolygon())
    return region
