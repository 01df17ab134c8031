"""The stylesheet: every ordinary widget, dressed from the tokens."""

from __future__ import annotations

from trainer.look.tokens import Theme

__all__ = ["stylesheet"]


def stylesheet(theme: Theme) -> str:
    """Return the application's stylesheet."""
    return f"QWidget {{ color: {theme.ink}; }}"
