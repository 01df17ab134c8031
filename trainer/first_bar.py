"""The bar in the first paint: the name, all tabs and the menus, in the language to come.

Recorded from the real bar, as strokes, since letters would need fonts before the first paint. After
a change to its words, its tabs or its look, record it anew: ``python -m trainer.bar_recorder``.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Final

from trainer.first_rack import picture_of

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter, QPicture

__all__ = ["FORMAT", "FirstBar", "file_name"]

FORMAT: Final = "toe-and-throat/first-bar"


def file_name(language: str, look: str) -> str:
    """Return what the recording for a language and a look is called.

    Examples
    --------
    >>> file_name("es", "dark")
    'bar.es.dark.json'
    """
    return f"bar.{language}.{look}.json"


class FirstBar:
    """The bar's strokes, for windows with room for all of it and for narrower ones.

    Parameters
    ----------
    folder
        Holds the recording.
    look
        ``light`` or ``dark``.
    language
        The tag of the language that will be spoken.

    Raises
    ------
    OSError, KeyError, TypeError, ValueError
        If there is no recording for those.
    """

    def __init__(self, folder: Path, look: str, language: str) -> None:
        told = json.loads((folder / file_name(language, look)).read_text(encoding="utf-8"))
        if told["format"] != FORMAT:
            raise ValueError(f"not {FORMAT}")
        self._recorded = [(int(one["from"]), str(one["strokes"])) for one in told["bars"]]
        self._made: tuple[int, QPicture] | None = None

    def replay(self, painter: QPainter, width: int) -> None:
        """Paint the bar of a window of that width, logical pixels; too narrow a one has none."""
        for least, strokes in self._recorded:
            if width >= least:
                if self._made is None or self._made[0] != least:
                    self._made = least, picture_of(strokes)
                painter.drawPicture(0, 0, self._made[1])
                return
