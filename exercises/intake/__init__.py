"""Sections taken in from outside: scans, drawings and pictures of cut welds."""

from __future__ import annotations

from exercises.intake.traced import Traced

__all__ = ["Traced"]
