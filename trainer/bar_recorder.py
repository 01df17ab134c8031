"""Records the bar that the first paint shows: ``python -m trainer.bar_recorder``."""

from __future__ import annotations

import base64
import json
from pathlib import Path
from typing import Any, Final, NoReturn

from PySide6.QtCore import QDataStream, QPoint, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPicture
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget

from trainer.assets import asset
from trainer.first_bar import FORMAT, file_name
from trainer.language import LANGUAGES, Speech
from trainer.look.tokens import Theme
from trainer.screens import screens
from trainer.settings import Appearance, Settings
from trainer.window import WindowFrame

__all__ = ["LOOKS", "main", "told_of", "write"]

LOOKS: Final[tuple[Appearance, ...]] = ("light", "dark")
_HIGH: Final = 600


class _NoBooks:
    """No screen is made here, so none asks for anything."""

    @property
    def keeping(self) -> NoReturn:
        """Nothing."""
        raise RuntimeError("only titles are recorded, no screen is made")

    @property
    def station(self) -> NoReturn:
        """Nothing."""
        raise RuntimeError("only titles are recorded, no screen is made")


def told_of(look: Appearance) -> dict[str, Any]:
    """Return what the first paint must know of the bar, in the language that is spoken.

    Dresses the application.
    """
    window = QMainWindow()
    frame = WindowFrame(window, Settings(appearance=look), QWidget())
    for key, title, _ in screens(_NoBooks()):
        frame.add_screen(key, title, QWidget)
    bar = frame.bar
    # Once, for all to be dressed: what they need is asked before they have their places.
    window.grab()
    widths, least = bar.widths, bar.minimumSizeHint().width()
    recorded = []
    # Each as it stands with room for all of its menus; the last also where they are shortened.
    for width, since in zip(widths, (*widths[:-1], least), strict=True):
        window.resize(width, _HIGH)
        # Never shown: so nothing is laid out unless it is asked for.
        window.grab()
        recorded.append({"from": since, "strokes": _strokes(frame, frame.theme)})
    words = [tab.text() for tab in bar.tabs] + [menu.text() for menu in bar.menus.actions()]
    window.deleteLater()
    return {"format": FORMAT, "words": words, "bars": recorded}


def _strokes(frame: WindowFrame, theme: Theme) -> str:
    """What the bar paints at the left, written down."""
    bar = frame.bar
    # A recording can be replayed by the Qt that made it and by later ones only, unless it says so.
    picture = QPicture(QDataStream.Version.Qt_6_8.value)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if bar.product.isVisibleTo(bar):
        room = QRectF(bar.product.geometry())
        _write(painter, room, bar.product.text(), bar.product.font(), theme.ink, middle=False)
    for at, tab in enumerate(bar.tabs):
        room = QRectF(tab.mapTo(bar, QPoint(0, 0)), tab.size())
        font = QFont(tab.font())
        if at == 0:
            font.setWeight(QFont.Weight.DemiBold)
        colour = theme.accent if at == 0 else theme.muted
        _write(painter, room, tab.text(), font, colour)
        if at == 0:
            line = QRectF(room.left(), room.bottom() - 3.0, room.width(), 3.0)
            painter.fillRect(line, QColor(theme.accent))
    for action in bar.menus.actions():
        room = QRectF(bar.menus.actionGeometry(action))
        room.translate(bar.menus.mapTo(bar, QPoint(0, 0)))
        words = action.text().replace("&", "")
        _write(painter, room, words, bar.menus.font(), theme.ink)
    painter.end()
    strokes = picture.data()
    assert isinstance(strokes, memoryview)
    return base64.b64encode(strokes).decode("ascii")


def _write(
    painter: QPainter, room: QRectF, words: str, font: QFont, colour: str, *, middle: bool = True
) -> None:
    """Write words as a widget does: in the middle of their room, or from its left."""
    metrics = QFontMetricsF(font)
    left = room.left() + (room.width() - metrics.horizontalAdvance(words)) / 2 * middle
    base = room.top() + (room.height() - metrics.height()) / 2 + metrics.ascent()
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    path.addText(round(left), round(base), font, words)
    painter.fillPath(path, QColor(colour))


def write(folder: Path, app: QApplication) -> None:
    """Write the recordings of every language and look into `folder`."""
    speech = Speech(app)
    for language in LANGUAGES:
        speech.speak(language)
        for look in LOOKS:
            text = json.dumps(told_of(look)) + "\n"
            (folder / file_name(language, look)).write_text(text, encoding="utf-8")
    speech.speak("en")


def main() -> None:
    """Record the bar of every language and look."""
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    write(asset("trays").parent / "stills", app)


if __name__ == "__main__":
    main()
