"""What a face may rightly be called, and how a leaf may rightly be held to it."""

from __future__ import annotations

from geometry.measures import FaceShape, Measures
from geometry.tolerances import FLAT_FACE

__all__ = ["right_faces"]


def right_faces(measures: Measures) -> set[FaceShape]:
    """Return every name that is right for a face whose bulge or hollow may be off by `FLAT_FACE`.

    Examples
    --------
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.measures import measure
    >>> from geometry.section import Section
    >>> sorted(right_faces(measure(Section.of(Joint(), Bead(8.0, 8.0, crown=0.08)))))
    ['convex', 'flat']
    """
    rounding = 1e-9
    faces: set[FaceShape] = {measures.face}
    if max(measures.convexity, measures.concavity) <= 2.0 * FLAT_FACE + rounding:
        faces.add("flat")
        if measures.convexity > rounding:
            faces.add("convex")
        if measures.concavity > rounding:
            faces.add("concave")
    return faces
