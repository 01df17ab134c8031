"""Marking texts so that lupdate finds them: it knows these two names, whatever they call."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

__all__ = ["QT_TRANSLATE_NOOP", "translate"]

translate = QCoreApplication.translate


def QT_TRANSLATE_NOOP(context: str, text: str) -> str:  # noqa: N802
    """Mark `text` for translation without translating it yet; Qt's own has no useful type.

    Examples
    --------
    >>> QT_TRANSLATE_NOOP("Steps", "Undo")
    'Undo'
    """
    return text
