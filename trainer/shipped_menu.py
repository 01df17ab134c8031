"""The menu of the trays that ship with the program, from the first day to the exam."""

from __future__ import annotations

import json
from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu, QWidget

from trainer.assets import asset
from trainer.language import spoken

__all__ = ["Shipped", "ShippedMenu", "shipped"]


class Shipped(NamedTuple):
    """A tray that ships: its file, and what it is called by language."""

    file: Path
    title: dict[str, str]
    coupons: int


def shipped() -> list[Shipped]:
    """Return the trays that ship, in the order that they build on each other.

    Examples
    --------
    >>> [tray.file.name.removesuffix(".tray.json") for tray in shipped()][:2]
    ['wren-workshop', 'heron-footbridge']
    """
    found: list[tuple[int, Shipped]] = []
    for file in asset("trays").glob("*.tray.json"):
        said = json.loads(file.read_text(encoding="utf-8"))
        title = said["title"] if isinstance(said["title"], dict) else {"en": said["title"]}
        tray = Shipped(file, title, len(said["coupons"]))
        found.append((said.get("x-order", len(found) + 1000), tray))
    return [tray for _, tray in sorted(found, key=lambda one: (one[0], one[1].file.name))]


class ShippedMenu(QMenu):
    """Lists them when it is opened: a start reads none of the files for it.

    Signals
    -------
    chosen(file)
        A tray is to be opened.
    """

    chosen = Signal(Path)

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self.aboutToShow.connect(self._fill)

    def _fill(self) -> None:
        if self.actions():
            return
        tag = spoken()
        for tray in shipped():
            words = tray.title.get(tag) or next(iter(tray.title.values()))
            action = self.addAction(self.tr("{title} ({n})").format(title=words, n=tray.coupons))
            action.triggered.connect(lambda _=False, file=tray.file: self.chosen.emit(file))
