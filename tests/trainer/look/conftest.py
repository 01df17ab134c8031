"""The real bench, to be looked at."""

from __future__ import annotations

from tests.trainer.bench.conftest import person, tray

__all__ = ["person", "tray"]
