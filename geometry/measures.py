"""The true measures of a section: legs, throats, sizes, convexity, toe angles."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Literal

from geometry.section import Section

__all__ = ["FaceShape", "Measures", "measure"]

FaceShape = Literal["convex", "concave", "flat"]


@dataclass(frozen=True, slots=True)
class Measures:
    """True measures (mm, degrees); the keys that the `measure` command prints."""

    leg_base: float
    leg_upright: float
    actual_throat: float
    theoretical_throat: float
    effective_size: float
    effective_throat: float
    convexity: float
    concavity: float
    face: FaceShape
    face_width: float
    toe_angle_base: float
    toe_angle_upright: float

    def as_dict(self) -> dict[str, float | str]:
        """The measures by key."""
        return asdict(self)


def measure(section: Section) -> Measures:
    """Return the true measures of `section`."""
    raise ValueError("not written yet")
