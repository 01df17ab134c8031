"""Rule sets as data: limits, the formulas in them, where they come from and how surely."""

from __future__ import annotations

from exercises.rules.limits import (
    Limit,
    LimitMeasure,
    MinimumSize,
    Opening,
    Source,
    Sureness,
    Undersize,
    Within,
)
from exercises.rules.ruleset import RuleSet
from exercises.rules.shipped import RULE_SETS, SHIPPED
from exercises.rules.sizes import Comparison, SizeRow

__all__ = [
    "RULE_SETS",
    "SHIPPED",
    "Comparison",
    "Limit",
    "LimitMeasure",
    "MinimumSize",
    "Opening",
    "RuleSet",
    "SizeRow",
    "Source",
    "Sureness",
    "Undersize",
    "Within",
]
