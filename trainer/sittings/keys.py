"""Which key does what on the screen of sittings."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.key_table import KeyRow, KeyTable

__all__ = ["KEYS"]

_PAGES: Final = (
    KeyRow(
        QT_TRANSLATE_NOOP("SittingKeys", "Ctrl+PgUp  Ctrl+PgDn"),
        QT_TRANSLATE_NOOP("SittingKeys", "the page before, the next"),
    ),
)

KEYS: Final = KeyTable("SittingKeys", ((QT_TRANSLATE_NOOP("SittingKeys", "Pages"), _PAGES),))
"""The table."""
