"""Marking texts so that lupdate finds them: it knows these two names, whatever they call."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

__all__ = ["QT_TRANSLATE_NOOP", "translate"]

translate = QCoreApplication.translate


def QT_TRANSLATE_NOOP(_context: str, text: str) -> str:
    """Mark `text` for translation without translating it yet; Qt's own has no useful type.

    Examples
    --------
    >>> QT_TRANSLATE_NOOP("Steps", "Undo")
    'Undo'
    """
    return text
