"""What is dragged over the window or dropped on it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtGui import QDropEvent

__all__ = ["dropped_file"]


def dropped_file(event: QDropEvent) -> Path | None:
    """Return the one local file that is dragged, if it is one."""
    urls = event.mimeData().urls()
    return Path(urls[0].toLocalFile()) if len(urls) == 1 and urls[0].isLocalFile() else None
