"""Every tolerance of the core, with its unit and its reason, in one place.

Nothing here is a setting: a tolerance says how exactly the program computes, an eye limit (a
coupon's own) says how finely a person is asked to see. The two differ by orders of magnitude, so
that no reading hangs on a tolerance.
"""

from __future__ import annotations

from typing import Final

__all__ = [
    "CLEARANCE",
    "CONTACT",
    "FLATTENING",
    "FLAT_FACE",
    "LEGAL_DEPTH",
    "SMALLEST",
    "TRACE_END",
]

FLATTENING: Final = 5e-5
"""mm: the most that a polygon's side may stand off the arc it stands for (contract: 1e-4)."""

CLEARANCE: Final = 1e-7
"""mm: the kernel keeps bodies at least this far apart; a thousandth of any gap that is read."""

CONTACT: Final = 1e-3
"""mm: closer than this, two bodies touch. Well above CLEARANCE and FLATTENING, and a hundredth of
the usual eye limit."""

LEGAL_DEPTH: Final = 0.01
"""mm: how far a stated pose may stand inside steel and still be legal. Poses in attempt files are
written by hand or rounded to a hundredth; the kernel itself never enters at all."""

FLAT_FACE: Final = 0.05
"""mm: a face whose convexity and concavity are both within this is flat (contract)."""

TRACE_END: Final = 0.05
"""mm: how far the first and last point of a trace may lie from their members (contract)."""

SMALLEST: Final = 0.01
"""mm: lengths below this are no weld; they would only make slivers."""
