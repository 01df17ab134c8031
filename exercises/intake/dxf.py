"""Outlines out of DXF drawings: lines, arcs, polylines with bulges, splines, blocks."""

from __future__ import annotations

import io
import itertools
import logging
import struct
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

import numpy as np

from exercises.intake.decoding import decoded
from exercises.intake.outline import (
    FLATNESS,
    MOST_OUTLINES,
    MOST_VERTICES,
    Drawing,
    Outline,
    joined,
    too_much,
)
from exercises.intake.refusal import Note, note, refused
from exercises.intake.units import MM_PER, FileUnit
from geometry.faults import Fault

try:
    from ezdxf import disassemble, recover
    from ezdxf.document import Drawing as Document
    from ezdxf.entities.dxfgfx import DXFGraphic
    from ezdxf.lldxf.const import DXFError
    from ezdxf.path import make_path
except ImportError:  # pragma: no cover  # the extra "drawings" isn't installed
    READS_DXF = False
else:
    READS_DXF = True

__all__ = ["LARGEST_DRAWING", "READS_DXF", "read_dxf"]

LARGEST_DRAWING: Final = 24 * 1024 * 1024
"""Bytes: a section takes some kilobytes, a whole bridge too many."""

_INSUNITS: Final[dict[int, FileUnit]] = {
    1: "in", 4: "mm", 5: "cm", 6: "m", 9: "mil", 13: "µm",
}  # fmt: skip
_CURVES: Final = frozenset(["LINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE", "LWPOLYLINE", "POLYLINE"])
_SILENT: Final = frozenset(["VIEWPORT", "ATTRIB", "ATTDEF"])
_MOST_ENTITIES: Final = 20_000
_MOST_COPIES: Final = 10_000
_FARTHEST: Final = 1e9

_TROUBLE: Final = (
    DXFError, ValueError, TypeError, KeyError, IndexError, AttributeError, ArithmeticError,
    AssertionError, RecursionError, struct.error, LookupError, StopIteration, RuntimeError,
) if READS_DXF else ()  # fmt: skip
"""What a library for drawings raises at a file that is none."""


def read_dxf(data: bytes, name: str = "", *, unit: FileUnit | None = None) -> Drawing:
    """Return the outlines in a DXF drawing.

    Parameters
    ----------
    data
        The file's bytes.
    name
        What messages call it.
    unit
        What the drawing is in, where it doesn't say (``$INSUNITS``). Curves are flattened to
        within 0.002 mm by it, and as if it were mm while nothing is known: read again once it is.

    Raises
    ------
    IntakeError
        If it is no DXF, holds no outline, or too many.
    """
    if not READS_DXF:
        text, right = "DXF drawings can't be read here", "the extra: toe-and-throat[drawings]"
        raise refused(name, Fault("", "drawing-library", text, right, {"extra": "drawings"}))
    if data.startswith(b"AutoCAD Binary DXF"):
        text, right = "this is a binary DXF", "the drawing saved as DXF in text (ASCII)"
        raise refused(name, Fault("", "drawing-binary", text, right))
    decoded(data, name, largest=LARGEST_DRAWING)
    with _silence():
        try:
            document, _ = recover.read(io.BytesIO(data))
            said = _INSUNITS.get(int(document.header.get("$INSUNITS", 0)))
        except (*_TROUBLE, OSError) as error:
            raise _no_dxf(name, error) from error
        known = said or unit
        outlines, notes = _outlines(document, name, FLATNESS / MM_PER[known or "mm"])
    if not outlines:
        text = "the drawing holds no line, arc, polyline or spline"
        right = "the section's outline as lines, arcs, polylines or splines in model space"
        raise refused(name, Fault("", "drawing-empty", text, right))
    return Drawing(tuple(joined(outlines)), said, tuple(notes))


@contextmanager
def _silence() -> Iterator[None]:
    """Let the library's remarks on a damaged file go nowhere: the faults say what matters."""
    log = logging.getLogger("ezdxf")
    before, log.disabled = log.disabled, True
    try:
        yield
    finally:
        log.disabled = before


def _no_dxf(name: str, error: BaseException) -> Exception:
    reason = " ".join(str(error).split())[:120] or type(error).__name__
    text = f"this can't be read as DXF: {reason}"
    right = "a DXF drawing, of any version, saved anew by the program that made it"
    return refused(name, Fault("", "drawing-no-dxf", text, right, {"reason": reason}))


def _entities(document: Document) -> Iterator[DXFGraphic]:
    """What model space holds, blocks exploded; copies and depth are bounded by whoever takes."""
    for entity in document.modelspace():
        if entity.dxftype() == "INSERT":
            copies = max(1, entity.dxf.row_count) * max(1, entity.dxf.column_count)
            if copies > _MOST_COPIES:
                raise OverflowError
        for part in disassemble.recursive_decompose([entity]):
            if isinstance(part, DXFGraphic):
                yield part


def _outlines(document: Document, name: str, flatness: float) -> tuple[list[Outline], list[Note]]:
    found: list[Outline] = []
    left: Counter[str] = Counter()
    vertices = 0
    try:
        entities = list(itertools.islice(_entities(document), _MOST_ENTITIES + 1))
    except OverflowError as error:
        raise too_much(name) from error
    except _TROUBLE as error:
        raise _no_dxf(name, error) from error
    if len(entities) > _MOST_ENTITIES:
        raise too_much(name)
    for entity in entities:
        kind = entity.dxftype()
        if kind not in _CURVES:
            left[kind] += kind not in _SILENT
            continue
        try:
            outline = _flattened(entity, flatness, MOST_VERTICES - vertices)
        except OverflowError as error:
            raise too_much(name) from error
        except _TROUBLE:
            outline = None
        if outline is None:
            left[f"unsound {kind}"] += 1
            continue
        found.append(outline)
        vertices += len(outline.points)
        if len(found) > MOST_OUTLINES or vertices > MOST_VERTICES:
            raise too_much(name)
    return found, [_left_out(name, kind, count) for kind, count in left.items() if count]


def _flattened(entity: DXFGraphic, flatness: float, most: int) -> Outline | None:
    """One curve as points; None if there is nothing to it."""
    kind = entity.dxftype()
    if kind == "SPLINE" and len(entity.control_points) + len(entity.fit_points) > 5000:  # type: ignore[attr-defined]
        raise OverflowError
    if kind in {"SPLINE", "ELLIPSE", "ARC", "CIRCLE"}:
        vertices = itertools.islice(entity.flattening(flatness), most + 1)  # type: ignore[attr-defined]
    else:
        vertices = itertools.islice(make_path(entity).flattening(flatness), most + 1)
    points = np.array([(vertex.x, vertex.y) for vertex in vertices], float).reshape(-1, 2)
    if not np.all(np.isfinite(points)) or np.abs(points).max(initial=0.0) > _FARTHEST:
        return None
    if len(points) > 1:
        distinct = np.any(np.diff(points, axis=0) != 0.0, axis=1)
        points = points[np.concatenate([[True], distinct])]
    if len(points) < 2:
        return None
    closed = len(points) > 3 and bool(np.allclose(points[0], points[-1], atol=flatness, rtol=0.0))
    return Outline(points[:-1] if closed else points, closed, str(entity.dxf.get("layer", "")))


def _left_out(name: str, kind: str, count: int) -> Note:
    text = f"{count} of kind {kind} left out"
    right = "lines, arcs, polylines or splines"
    told: dict[str, float | str] = {"kind_of": kind, "count": count}
    return note(name, Fault("", "drawing-left-out", text, right, told))
