"""What this program is, on what it runs, and where somebody's files lie."""

from __future__ import annotations

import platform
from functools import partial
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from PySide6.QtCore import QCoreApplication, Qt, QUrl, qVersion
from PySide6.QtGui import QDesktopServices, QGuiApplication
from PySide6.QtWidgets import QDialogButtonBox, QGridLayout, QLabel, QPushButton, QWidget

from trainer.notices import Notice
from trainer.places import NAME, Places

__all__ = ["AboutDialog", "about_words", "show_folder"]


def about_words() -> str:
    """Return the versions that a report of trouble needs."""
    try:
        own = version(NAME)
    except PackageNotFoundError:
        own = "dev"
    python = platform.python_version()
    return f"Toe & Throat {own}; Python {python}; Qt {qVersion()}; {platform.platform()}"


def show_folder(path: Path) -> None:
    """Show a folder, or the one nearest above it that is there, as the system shows folders."""
    there = next(folder for folder in (path, *path.parents) if folder.is_dir())
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(there)))


class AboutDialog(Notice):
    """Versions, and the places of all files, each to be shown or copied.

    Parameters
    ----------
    places
        Of whoever runs this.
    """

    def __init__(self, places: Places, parent: QWidget | None = None) -> None:
        super().__init__(
            QCoreApplication.translate("AboutDialog", "About Toe & Throat"),
            QCoreApplication.translate(
                "AboutDialog",
                "A trainer for the fillet weld gauge. It keeps everything on this computer and "
                "sends nothing anywhere.",
            ),
            parent,
        )
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(8)
        grid.setColumnStretch(1, 1)
        rows = (
            (self.tr("Settings"), places.settings),
            (self.tr("Calls on record"), places.calls),
            (self.tr("Reports of trouble"), places.reports),
        )
        for at, (name, path) in enumerate(rows):
            self._add_row(grid, at, name, path)
        self.body.addLayout(grid)
        self.versions = QLabel("\n".join(about_words().split("; ")))
        self.versions.setProperty("tone", "quiet")
        self.versions.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse
            | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.versions.setAccessibleName(self.tr("Versions"))
        self.body.addWidget(self.versions)
        copy = self.buttons.addButton(
            self.tr("Copy versions and places"), QDialogButtonBox.ButtonRole.ActionRole
        )
        told = [about_words(), *(str(path) for _, path in rows)]
        copy.clicked.connect(lambda: QGuiApplication.clipboard().setText("\n".join(told)))
        self.setMinimumWidth(620)
        self.finish()
        self.buttons.button(QDialogButtonBox.StandardButton.Close).setFocus()

    def _add_row(self, grid: QGridLayout, at: int, name: str, path: Path) -> None:
        key, value = QLabel(name), QLabel(str(path))
        key.setProperty("tone", "quiet")
        value.setWordWrap(True)
        value.setTextFormat(Qt.TextFormat.PlainText)
        value.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        show = QPushButton(self.tr("Show folder"))
        show.setAccessibleName(self.tr("Show the folder of: {what}").format(what=name))
        show.clicked.connect(partial(self._show, path))
        grid.addWidget(key, at, 0)
        grid.addWidget(value, at, 1)
        grid.addWidget(show, at, 2)

    def _show(self, path: Path, _: bool = False) -> None:
        show_folder(path if not path.suffix else path.parent)
