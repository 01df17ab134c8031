"""What should happen to a weld: four dispositions, in the order in which they take precedence."""

from __future__ import annotations

from typing import Final, Literal

__all__ = ["DISPOSITIONS", "Disposition"]

Disposition = Literal["refer", "dress back", "add weld metal", "accept"]
DISPOSITIONS: Final[tuple[Disposition, ...]] = (
    "refer",
    "dress back",
    "add weld metal",
    "accept",
)
"""In order of precedence: the first that is needed is right (contract)."""
