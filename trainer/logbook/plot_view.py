"""A picture of matplotlib's in a widget: drawn anew when its size, theme or findings change."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from PySide6.QtCore import QSize, QTimer
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from trainer.logbook.findings import Findings
from trainer.logbook.plots import Style, draw

__all__ = ["FigureView", "PlotView", "image_of", "pictured"]

Paint = Callable[[Figure], None]
"""Draws onto an empty figure."""

_SETTLE: Final = 60
"""ms after the last change of size before it is drawn anew."""

_DPI: Final = 96.0


def image_of(name: str, findings: Findings, style: Style, size: QSize, scale: float) -> QImage:
    """Return a picture, `size` logical pixels at `scale` device pixels for each."""
    return pictured(lambda figure: draw(name, figure, findings, style), size, scale)


def pictured(paint: Paint, size: QSize, scale: float) -> QImage:
    """Return what `paint` draws, `size` logical pixels at `scale` device pixels for each."""
    dots = max(scale, 0.5) * _DPI
    inches = (max(size.width(), 80) / _DPI, max(size.height(), 60) / _DPI)
    figure = Figure(figsize=inches, dpi=dots)
    canvas = FigureCanvasAgg(figure)
    paint(figure)
    # matplotlib leaves these two without types.
    canvas.draw()  # type: ignore[no-untyped-call]
    pixels = np.ascontiguousarray(canvas.buffer_rgba())  # type: ignore[no-untyped-call]
    height, width = pixels.shape[:2]
    image = QImage(pixels.tobytes(), width, height, 4 * width, QImage.Format.Format_RGBA8888).copy()
    image.setDevicePixelRatio(scale)
    return image


class FigureView(QWidget):
    """A picture of matplotlib's in a window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._paint: Paint | None = None
        self._image: QImage | None = None
        self._timer = QTimer(self, singleShot=True, interval=_SETTLE)
        self._timer.timeout.connect(self._draw)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(260, 200)

    def sizeHint(self) -> QSize:
        """Room for a picture that reads well."""
        return QSize(460, 250)

    def show_figure(self, paint: Paint) -> None:
        """Draw this, once the loop comes to it."""
        self._paint = paint
        self._timer.start(0)

    def _draw(self) -> None:
        if self._paint is None or not self.isVisible():
            return
        self._image = pictured(self._paint, self.size(), self.devicePixelRatioF())
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Be drawn for the new size soon; until then the old picture is stretched."""
        super().resizeEvent(event)
        self._timer.start()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw what was to be shown while nobody could see it."""
        super().showEvent(event)
        self._timer.start(0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Show what was drawn."""
        del event
        if self._image is not None:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(self.rect(), self._image)
            painter.end()


class PlotView(FigureView):
    """One of `trainer.logbook.plots.PLOTS` in a window.

    Parameters
    ----------
    name
        Which.
    """

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._name = name

    def show_findings(self, findings: Findings, style: Style) -> None:
        """Draw these, once the loop comes to it."""
        self.show_figure(lambda figure: draw(self._name, figure, findings, style))
