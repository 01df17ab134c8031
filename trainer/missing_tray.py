"""Says that a tray which was opened before is not there."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QDialogButtonBox, QWidget

from trainer.notices import Notice

__all__ = ["MissingTray"]


class MissingTray(Notice):
    """It may have been moved, or its disk be elsewhere; it can be taken off the list.

    Signals
    -------
    forgotten
        It is to be taken off the list.
    """

    forgotten = Signal()

    def __init__(self, path: Path, parent: QWidget | None = None) -> None:
        super().__init__(
            QCoreApplication.translate("MissingTray", "This tray is not there"),
            QCoreApplication.translate(
                "MissingTray",
                "{file}\n\nIt may have been moved or renamed, or its disk is not connected.",
            ).format(file=path),
            parent,
        )
        forget = self.buttons.addButton(
            self.tr("Take it off the list"), QDialogButtonBox.ButtonRole.DestructiveRole
        )
        forget.clicked.connect(self.forgotten)
        forget.clicked.connect(self.accept)
        self.finish()
