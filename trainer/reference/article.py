"""The page that is read: links, selection, and a line no longer than can be read."""

from __future__ import annotations

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from trainer.reference.page import key_of

__all__ = ["Article"]

_WIDEST = 860
"""Logical pixels: a line of text is no longer, however wide the window."""
_SIDE, _NARROW_SIDE, _TOP = 36, 24, 28
_NARROW = 720
"""Logical pixels: below that width the margins are smaller."""


class Article(QTextBrowser):
    """One entry.

    Signals
    -------
    asked
        A link to the entry with this key was followed.
    """

    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setOpenLinks(False)
        self.setOpenExternalLinks(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.anchorClicked.connect(self._follow)

    def show_page(self, title: str, html: str) -> None:
        """Show a page from its beginning."""
        self.setAccessibleName(title)
        self.setHtml(html)
        self._keep_margins()
        self.verticalScrollBar().setValue(0)

    def _follow(self, address: QUrl) -> None:
        key = key_of(address.toString())
        if key:
            self.asked.emit(key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the lines short."""
        super().resizeEvent(event)
        self._keep_margins()

    def _keep_margins(self) -> None:
        frame = self.document().rootFrame()
        form = frame.frameFormat()
        width = self.viewport().width()
        side = _NARROW_SIDE if width < _NARROW else _SIDE
        spare = max(0, width - _WIDEST - 2 * side)
        if (form.rightMargin(), form.leftMargin()) == (side + spare, side):
            return
        form.setLeftMargin(side)
        form.setRightMargin(side + spare)
        form.setTopMargin(_TOP)
        form.setBottomMargin(_TOP)
        frame.setFrameFormat(form)
