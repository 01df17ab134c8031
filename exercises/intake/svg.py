"""Outlines out of SVG drawings: paths and shapes, with their transforms and units."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

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
from exercises.intake.refusal import IntakeError, Note, note, refused
from exercises.intake.units import MM_PER, FileUnit
from geometry.faults import Fault

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

try:
    from defusedxml.common import DefusedXmlException
    from defusedxml.ElementTree import ParseError, fromstring
    from svgelements import Arc, Close, Line, Matrix, Move, Path, PathSegment
except ImportError:  # pragma: no cover  # the extra "drawings" isn't installed
    READS_SVG = False
else:
    READS_SVG = True

__all__ = ["READS_SVG", "read_svg"]

FloatArray = NDArray[np.float64]

_LARGEST: Final = 8 * 1024 * 1024
_DEEPEST: Final = 60
_MOST_ELEMENTS: Final = 20_000
_MOST_SEGMENTS: Final = 20_000
_LONGEST_PATH: Final = 1024 * 1024
_FARTHEST: Final = 1e9

_MM: Final[dict[str, float]] = {
    "mm": 1.0, "cm": 10.0, "q": 0.25, "in": 25.4, "pt": 25.4 / 72.0, "pc": 25.4 / 6.0,
}  # fmt: skip
"""Millimetres in SVG's absolute units; px, which most programs write for anything, isn't one."""

_LENGTH: Final = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)\s*([a-zA-Z%]*)\s*")
_HIDDEN: Final = re.compile(
    r"(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*hidden)", re.IGNORECASE
)
_NOT_DRAWN: Final = frozenset(
    ["defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "title", "desc",
     "style", "script", "linearGradient", "radialGradient", "filter", "namedview"]
)  # fmt: skip
_TROUBLE: Final = (
    ValueError, TypeError, KeyError, IndexError, AttributeError, ArithmeticError, RecursionError,
    AssertionError,
)  # fmt: skip
"""What the library for paths raises at one that is none."""


def read_svg(data: bytes, name: str = "", *, unit: FileUnit | None = None) -> Drawing:
    """Return the outlines in an SVG drawing, y up.

    Parameters
    ----------
    data
        The file's bytes.
    name
        What messages call it.
    unit
        What one unit of it is, where its ``width`` and ``height`` don't say so in mm, cm, in, pt
        or pc. Where they do, the outlines are in millimetres. Curves are flattened to within
        0.002 mm by it, and as if it were mm while nothing is known: read again once it is.

    Raises
    ------
    IntakeError
        If it is no SVG, has entities or a document type, holds no outline, or too many.
    """
    if not READS_SVG:
        text, right = "SVG drawings can't be read here", "the extra: toe-and-throat[drawings]"
        raise refused(name, Fault("", "drawing-library", text, right, {"extra": "drawings"}))
    decoded(data, name, largest=_LARGEST)
    root = _parsed(data, name)
    scale = _scale(root)
    flatness = FLATNESS if scale else FLATNESS / MM_PER[unit or "mm"]
    walk = _Walk(name, root, flatness)
    turned = np.diag([1.0, -1.0])
    begun = Matrix(f"scale({scale!r})") if scale else Matrix()
    try:
        walk.down(root, begun * _view_box(root, framed=scale is not None), 0)
    except RecursionError as error:
        raise too_much(name) from error
    if not walk.found:
        text = "the drawing holds no path, line, polyline, polygon, rectangle, circle or ellipse"
        right = "the section's outline as a path or a polyline; text and pictures are none"
        raise refused(name, Fault("", "drawing-empty-svg", text, right))
    outlines = [Outline(one.points @ turned, one.closed, one.layer) for one in walk.found]
    return Drawing(tuple(joined(outlines)), "mm" if scale else None, walk.notes())


def _parsed(data: bytes, name: str) -> Element:
    try:
        root: Element = fromstring(data, forbid_dtd=False, forbid_entities=True)
    except DefusedXmlException as error:
        text = "the file defines entities, which could grow without bound"
        right = "an SVG without <!ENTITY ...> in it"
        raise refused(name, Fault("", "drawing-entities", text, right)) from error
    except ParseError as error:
        line, column = error.position
        text = f"line {line}, column {column + 1} can't be read as XML"
        right = "a whole, well-formed SVG file"
        told: dict[str, float | str] = {"line": line, "column": column + 1}
        raise refused(name, Fault("", "drawing-no-xml", text, right, told)) from error
    except (ValueError, LookupError, RecursionError) as error:
        text, right = "the file's encoding can't be read as XML", "an SVG file in UTF-8"
        raise refused(name, Fault("", "drawing-xml-encoding", text, right)) from error
    if _tag(root) != "svg":
        kind = _tag(root)[:40]
        text = f"the document is <{kind}>, not <svg>"
        raise refused(name, Fault("", "drawing-no-svg", text, "an SVG drawing", {"tag": kind}))
    return root


def _tag(element: Element) -> str:
    return element.tag.rsplit("}", 1)[-1]


def _length(text: str | None, otherwise: float = 0.0) -> float:
    """A coordinate in user units; absolute units by CSS's 96 px to the inch."""
    match = _LENGTH.fullmatch(text or "")
    if match is None:
        return otherwise
    value, unit = float(match[1]), match[2].lower()
    return value * _MM[unit] * 96.0 / 25.4 if unit in _MM else value


def _scale(root: Element) -> float | None:
    """Millimetres in a pixel, if the drawing's size is stated in an absolute unit."""
    match = _LENGTH.fullmatch(root.get("width") or root.get("height") or "")
    return 25.4 / 96.0 if match is not None and match[2].lower() in _MM else None


def _view_box(root: Element, *, framed: bool) -> Matrix:
    """From user units to the viewport; ``preserveAspectRatio`` as by default, without its shift."""
    words = re.split(r"[\s,]+", root.get("viewBox", "").strip())
    box = [_length(word, math.nan) for word in words]
    if len(box) != 4 or not framed or not min(box[2:]) > 0.0:
        return Matrix()
    sizes = [
        _length(root.get(key)) / side
        for key, side in (("width", box[2]), ("height", box[3]))
        if root.get(key) and not (root.get(key) or "").strip().endswith("%")
    ]
    by = min((size for size in sizes if size > 0.0), default=1.0)
    return Matrix(f"scale({by!r})")


class _Walk:
    """Down an SVG's tree, gathering outlines; nothing is followed without a bound."""

    def __init__(self, name: str, root: Element, flatness: float) -> None:
        self._name, self._flatness = name, flatness
        self._by_id = {element.get("id", ""): element for element in root.iter()}
        self._seen = self._vertices = 0
        self._left: Counter[str] = Counter()
        self.found: list[Outline] = []

    def down(self, element: Element, outer: Matrix, depth: int) -> None:
        """Gather what is drawn at and below an element."""
        self._seen += 1
        if self._seen > _MOST_ELEMENTS or depth > _DEEPEST:
            raise too_much(self._name)
        if element.get("display") == "none" or _HIDDEN.search(element.get("style", "")):
            return
        tag = _tag(element)
        try:
            own = Matrix(element.get("transform", "")) * outer
        except _TROUBLE:
            self._left["unsound transform"] += 1
            return
        if tag == "use":
            self._use(element, own, depth)
            return
        if tag in {"svg", "g", "a", "switch"} or depth == 0:
            for child in element:
                if _tag(child) not in _NOT_DRAWN:
                    self.down(child, own, depth + 1)
            return
        self._draw(tag, element, own)

    def _draw(self, tag: str, element: Element, own: Matrix) -> None:
        text = _path_text(tag, element)
        if text is None:
            self._left[f"<{tag[:30]}>"] += 1
            return
        try:
            self._add(text, own, element.get("id", ""))
        except _TROUBLE as error:
            if isinstance(error, IntakeError):
                raise
            self._left[f"unsound <{tag[:30]}>"] += 1

    def _use(self, element: Element, own: Matrix, depth: int) -> None:
        link = element.get("href") or element.get("{http://www.w3.org/1999/xlink}href") or ""
        meant = self._by_id.get(link.removeprefix("#"))
        if meant is None or not link.startswith("#"):
            self._left["<use> of nothing here"] += 1
            return
        shift = Matrix(f"translate({_length(element.get('x'))!r},{_length(element.get('y'))!r})")
        if _tag(meant) == "symbol":
            for child in meant:
                self.down(child, shift * own, depth + 1)
        else:
            self.down(meant, shift * own, depth + 1)

    def _add(self, text: str, matrix: Matrix, layer: str) -> None:
        if len(text) > _LONGEST_PATH:
            raise too_much(self._name)
        path = Path(text)
        if len(path) > _MOST_SEGMENTS:
            raise too_much(self._name)
        for run, closed in _runs(path):
            if not run:
                continue
            placed = [segment * matrix for segment in run]
            most = MOST_VERTICES - self._vertices
            points = _flattened(placed, self._flatness, most)
            if len(points) > most or len(self.found) >= MOST_OUTLINES:
                raise too_much(self._name)
            self._vertices += len(points)
            if len(points) > 1 and np.abs(points).max() <= _FARTHEST:
                self.found.append(Outline(points, closed and len(points) > 2, layer))

    def notes(self) -> tuple[Note, ...]:
        """What was left out."""
        right = "paths, lines, polylines, polygons, rectangles, circles or ellipses"
        return tuple(
            note(
                self._name,
                Fault(
                    "",
                    "drawing-left-out",
                    f"{count} of kind {kind} left out",
                    right,
                    {"kind_of": kind, "count": count},
                ),
            )
            for kind, count in self._left.items()
        )


def _path_text(tag: str, element: Element) -> str | None:
    """An element as the text of a path; None if it draws none."""
    size = {key: _length(element.get(key)) for key in
            ("x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "width", "height")}  # fmt: skip
    if tag == "path":
        return element.get("d", "")
    if tag == "line":
        return f"M{size['x1']},{size['y1']}L{size['x2']},{size['y2']}"
    if tag in {"polyline", "polygon"}:
        return f"M{element.get('points', '')}{'Z' if tag == 'polygon' else ''}"
    if tag == "rect":
        return f"M{size['x']},{size['y']}h{size['width']}v{size['height']}h{-size['width']}Z"
    if tag in {"circle", "ellipse"}:
        across = size["r"] if tag == "circle" else _length(element.get("rx"))
        up = size["r"] if tag == "circle" else _length(element.get("ry"))
        half = f"a{across},{up} 0 0 1"
        return f"M{size['cx'] - across},{size['cy']}{half} {2 * across},0{half} {-2 * across},0Z"
    return None


def _runs(path: Path) -> Iterator[tuple[list[PathSegment], bool]]:
    """The segments of each subpath that draw something, and whether it closes."""
    run: list[PathSegment] = []
    for segment in path:
        if isinstance(segment, Move):
            yield run, False
            run = []
        elif isinstance(segment, Close):
            if segment.start is not None and segment.end is not None:
                run.append(Line(segment.start, segment.end))
            yield run, True
            run = []
        else:
            run.append(segment)
    yield run, False


def _flattened(run: list[PathSegment], flatness: float, most: int) -> FloatArray:
    """Segments as points, each curve cut evenly and finely enough."""
    parts: list[FloatArray] = []
    count = 1
    for segment in run:
        cuts = _cuts(segment, flatness)
        count += cuts
        if count > most:
            return np.zeros((most + 1, 2))
        at = np.arange(1 if parts else 0, cuts + 1) / cuts
        if cuts == 1:
            ends = [(end.x, end.y) for end in (segment.start, segment.end)]
            parts.append(np.array(ends[1 if parts else 0 :], float))
        else:
            parts.append(np.asarray(segment.npoint(at), float).reshape(-1, 2))
    points = np.vstack(parts)
    if not np.all(np.isfinite(points)):
        raise ValueError
    distinct = np.concatenate([[True], np.any(np.diff(points, axis=0) != 0.0, axis=1)])
    points = points[distinct]
    if len(points) > 3 and math.dist(points[0], points[-1]) <= flatness:
        points = points[:-1]
    return np.asarray(points, float)


def _cuts(segment: PathSegment, flatness: float) -> int:
    """How many chords keep within `flatness` of a segment: h² · |second derivative| / 8."""
    if isinstance(segment, Line):
        return 1
    if isinstance(segment, Arc):
        bend = max(abs(segment.rx), abs(segment.ry)) * segment.sweep**2
    else:
        knots = [complex(p.x, p.y) for p in (
            segment.start, *(getattr(segment, key) for key in ("control", "control1", "control2")
                             if hasattr(segment, key)), segment.end)]  # fmt: skip
        degree = len(knots) - 1
        bends = [abs(a - 2 * b + c) for a, b, c in zip(knots, knots[1:], knots[2:], strict=False)]
        bend = degree * (degree - 1) * max(bends, default=0.0)
    if not math.isfinite(bend):
        raise ValueError
    return max(1, min(MOST_VERTICES + 1, math.ceil(math.sqrt(bend / (8.0 * flatness)))))
