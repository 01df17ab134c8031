"""Buttons that are as large as what stands in them: for choices, for steps, for notes."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from trainer.figures import unbroken

__all__ = ["WordedButton", "point", "toned", "wrapped"]


class WordedButton(QPushButton):
    """A button with a layout of words and signs in it, which take no click away from it.

    Parameters
    ----------
    kind
        What the stylesheet calls it.
    said
        Its name for a screen reader.
    keys
        The key that does the same, as a person calls it; may be empty.
    least
        Smallest width and height, logical pixels.
    """

    def __init__(
        self,
        kind: str,
        said: str,
        keys: str,
        least: tuple[int, int],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._least = QSize(*least)
        self.setAutoDefault(False)
        self.setProperty("kind", kind)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(said)
        self.setAccessibleDescription(keys)
        self.setToolTip(f"{said}  {keys}".rstrip())

    def sizeHint(self) -> QSize:
        """As large as what it says."""
        layout = self.layout()
        hint = layout.sizeHint() if layout is not None else super().sizeHint()
        return hint.expandedTo(self._least)

    def minimumSizeHint(self) -> QSize:
        """No smaller than what it says."""
        return self.sizeHint()

    def label(self, text: str, tone: str) -> QLabel:
        """Return a word to stand in the button."""
        label = toned(text, tone)
        label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        return label


def toned(text: str, tone: str) -> QLabel:
    """Return a label of a tone that the stylesheet knows."""
    label = QLabel(text)
    label.setProperty("tone", tone)
    return label


def wrapped(text: str, tone: str = "plain") -> QLabel:
    """Return a label that breaks into lines, and takes nothing in its text for a command."""
    label = _Lines()
    label.setProperty("tone", tone)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    label.setText(text)
    return label


class _Lines(QLabel):
    """Words in lines; a figure and its unit stay in one."""

    def __init__(self) -> None:
        super().__init__()
        self._words = ""

    def setText(self, text: str) -> None:
        """Say the words."""
        self._words = text
        super().setText(unbroken(text))

    def text(self) -> str:
        """The words as they were given."""
        return self._words


def point(text: str, tone: str = "plain") -> QWidget:
    """Return one of several points: its lines stand under each other, beside the dot."""
    holder = QWidget()
    line = QHBoxLayout(holder)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(8)
    line.addWidget(toned("\u2022", tone), alignment=Qt.AlignmentFlag.AlignTop)
    line.addWidget(wrapped(text, tone), 1)
    return holder
