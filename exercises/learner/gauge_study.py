"""A gauge study of measured values: repeatability, reproducibility, and what the parts differ by.

Two-way analysis of variance, operators by parts with repeats; the interaction is pooled with the
error where it isn't significant at 5 %.

References
----------
ISO 22514-7, Annex A; AIAG MSA manual, gauge R&R by analysis of variance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from exercises.learner.tails import f_tail

__all__ = ["GaugeStudy", "gauge_study"]


@dataclass(frozen=True, slots=True)
class GaugeStudy:
    """What varies in a gauge study; standard deviations in the unit of the values.

    Parameters
    ----------
    operators, parts, interaction, error
        Sums of squares.
    interaction_f, interaction_tail
        F of the interaction against the error, and the share of chance beyond it.
    pooled
        Whether the interaction was taken as error.
    repeatability
        Of one operator on one part.
    reproducibility
        Between operators, the interaction included where it isn't pooled.
    between_parts
        Of the parts themselves.
    """

    operators: float
    parts: float
    interaction: float
    error: float
    interaction_f: float
    interaction_tail: float
    pooled: bool
    repeatability: float
    reproducibility: float
    between_parts: float

    @property
    def gauge(self) -> float:
        """Repeatability and reproducibility together."""
        return math.hypot(self.repeatability, self.reproducibility)

    @property
    def total(self) -> float:
        """Gauge and parts together."""
        return math.hypot(self.gauge, self.between_parts)


def gauge_study(values: npt.ArrayLike) -> GaugeStudy:
    """Return the analysis of a full gauge study.

    Parameters
    ----------
    values
        Shape (operators, parts, repeats), each 2 or more, all finite.

    Raises
    ------
    ValueError
        If the shape is another, or a value isn't finite.

    Examples
    --------
    >>> study = gauge_study([[[1.0, 1.1], [2.0, 2.1]], [[1.1, 1.2], [2.0, 2.2]]])
    >>> study.pooled, round(study.between_parts, 3)
    (True, 0.688)
    """
    data = np.asarray(values, dtype=np.float64)
    if data.ndim != 3 or min(data.shape) < 2 or not np.all(np.isfinite(data)):
        right = "operators by parts by repeats, 2 or more of each, all finite"
        raise ValueError(f"values of shape {data.shape}; right would be {right}")
    o, p, r = data.shape
    grand = data.mean()
    operators = float(p * r * ((data.mean(axis=(1, 2)) - grand) ** 2).sum())
    parts = float(o * r * ((data.mean(axis=(0, 2)) - grand) ** 2).sum())
    cells = float(r * ((data.mean(axis=2) - grand) ** 2).sum())
    interaction = max(cells - operators - parts, 0.0)
    error = float(((data - data.mean(axis=2, keepdims=True)) ** 2).sum())
    free_interaction, free_error = (o - 1) * (p - 1), o * p * (r - 1)
    both, plain = interaction / free_interaction, error / free_error
    ratio = both / plain if plain > 0.0 else math.inf if both > 0.0 else 0.0
    tail = 0.0 if math.isinf(ratio) else f_tail(ratio, free_interaction, free_error)
    pooled = tail > 0.05
    within = (interaction + error) / (free_interaction + free_error) if pooled else plain
    against = within if pooled else both
    mixed = 0.0 if pooled else max((both - plain) / r, 0.0)
    between = max((operators / (o - 1) - against) / (p * r), 0.0)
    of_parts = max((parts / (p - 1) - against) / (o * r), 0.0)
    return GaugeStudy(
        operators, parts, interaction, error, ratio, tail, pooled,
        math.sqrt(within), math.sqrt(between + mixed), math.sqrt(of_parts),
    )  # fmt: skip
