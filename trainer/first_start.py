"""The card of the first start: what this program is and is not, and the usual shop cautions."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

__all__ = ["FirstStartCard"]


class FirstStartCard(QDialog):
    """Shown once, and again from the Help menu."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(self.tr("Before you begin"))
        self.setModal(True)
        box = QVBoxLayout(self)
        box.setContentsMargins(28, 24, 28, 20)
        box.setSpacing(10)
        title = QLabel(self.tr("Before you begin"))
        title.setProperty("tone", "title")
        box.addWidget(title)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setAccessibleName(self.tr("What this program is and is not"))
        scroll.setWidget(self._words())
        box.addWidget(scroll, 1)
        row = QHBoxLayout()
        row.addStretch(1)
        self.begin = QPushButton(self.tr("To the bench"))
        self.begin.setProperty("kind", "primary")
        self.begin.setMinimumSize(140, 40)
        self.begin.setDefault(True)
        self.begin.clicked.connect(self.accept)
        row.addWidget(self.begin)
        box.addLayout(row)
        self.resize(620, 500)
        self.begin.setFocus()

    def _words(self) -> QWidget:
        holder = QWidget()
        holder.setProperty("kind", "holder")
        box = QVBoxLayout(holder)
        box.setContentsMargins(0, 0, 12, 0)
        box.setSpacing(6)
        for heading, text in self._paragraphs():
            head, body = QLabel(heading), QLabel(text)
            head.setProperty("tone", "heading")
            body.setWordWrap(True)
            box.addWidget(head)
            box.addWidget(body)
            box.addSpacing(6)
        box.addStretch(1)
        return holder

    def _paragraphs(self) -> tuple[tuple[str, str], ...]:
        return (
            (
                self.tr("What this is"),
                self.tr(
                    "A training aid for the fillet weld gauge. You take a leaf off the rack, "
                    "seat it on the cross-section of a weld, say what it shows and make the call. "
                    "The program knows the true section and tells you afterwards."
                ),
            ),
            (
                self.tr("What it is not"),
                self.tr(
                    "It is not a measuring instrument, and it judges no real weld. It certifies "
                    "nobody. The governing code, the contract documents and qualified people "
                    "decide; where they differ from this program, they are right."
                ),
            ),
            (
                self.tr("Your own gauge"),
                self.tr(
                    "Leaves wear and bend, and a worn tip rejects good welds. A gauge needs checks "
                    "of its own, before use and at the intervals that your shop sets. A section "
                    "shows one place of a weld: on the real one, find the worst."
                ),
            ),
            (
                self.tr("In the shop"),
                self.tr(
                    "Arc radiation burns eyes and skin, your own and those of people nearby. "
                    "Metal stays hot long after it stops glowing. Edges, spatter and wire are "
                    "sharp. Grinding throws sparks and dust. Fumes and gases need extraction and "
                    "air. Follow your shop's rules and wear what they ask for."
                ),
            ),
        )
