"""A slider that goes where it is clicked, and then along with the pointer."""

from __future__ import annotations

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QSlider, QStyle, QStyleOptionSlider, QWidget

__all__ = ["SeekSlider"]


class SeekSlider(QSlider):
    """A horizontal slider; the system's own goes a page towards a click, not there."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setMinimumHeight(24)

    def value_at(self, x: float) -> int:
        """Return the value that stands at `x`, logical pixels from the left."""
        span, wide = self._span()
        at = round(x - wide / 2.0)
        return QStyle.sliderValueFromPosition(self.minimum(), self.maximum(), at, span)

    def place_of(self, value: int) -> float:
        """Return where `value` stands, logical pixels from the left: the middle of the handle."""
        span, wide = self._span()
        at = QStyle.sliderPositionFromValue(self.minimum(), self.maximum(), value, span)
        return at + wide / 2.0

    def _span(self) -> tuple[int, int]:
        """The way that the handle has to go, and how wide it is."""
        wide = self._handle().width()
        return max(1, self.width() - wide), wide

    def _handle(self) -> QRect:
        option = QStyleOptionSlider()
        self.initStyleOption(option)
        return self.style().subControlRect(
            QStyle.ComplexControl.CC_Slider, option, QStyle.SubControl.SC_SliderHandle, self
        )

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Set the value under the pointer, then drag on as usual."""
        left = event.button() == Qt.MouseButton.LeftButton
        if left and not self._handle().contains(event.position().toPoint()):
            self.setValue(self.value_at(event.position().x()))
        super().mousePressEvent(event)
