"""The tables of a rule set, to be read: every limit in a row, and how each callout is judged."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from exercises.callout import CalloutMeasure
from exercises.disposition import Disposition
from exercises.rules import RuleSet, SizeRow, Source
from exercises.rules.limits import LimitMeasure
from exercises.rules.wording import (
    joined,
    limit_formula,
    measure_title,
    minimum_formula,
    opening_formula,
    sureness_words,
    undersize_formula,
)
from exercises.source_words import source_words
from exercises.text import NO_TEXT, Text
from geometry.leaf import Edge
from geometry.measures import FaceShape

__all__ = [
    "CALLED",
    "EDGES",
    "FACES",
    "NEEDS",
    "Cell",
    "Table",
    "compared_words",
    "leaf_words",
    "limit_table",
    "measured_by",
    "size_table",
]


@dataclass(frozen=True, slots=True)
class Cell:
    """What stands in one place of a table, and the key of the entry that says more of it."""

    text: Text
    to: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """A table to be read.

    Parameters
    ----------
    title
        What it is of.
    heads
        One for each column.
    rows
        Each as wide as `heads`.

    Raises
    ------
    ValueError
        If a row is of another width.

    Examples
    --------
    >>> Table(NO_TEXT, (Text.of("mm"),), ((Cell(Text.of("8")),),)).rows[0][0].to
    ''
    """

    title: Text
    heads: tuple[Text, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def __post_init__(self) -> None:
        if any(len(row) != len(self.heads) for row in self.rows):
            raise ValueError("a row is not as wide as the table's head")


def _both(english: str, spanish: str) -> Text:
    return Text.of({"en": english, "es": spanish})


NEEDS: Final[Mapping[Disposition, Text]] = {
    "refer": _both("refer", "remitir"),
    "dress back": _both("dress back", "rebajar"),
    "add weld metal": _both("add weld metal", "aportar metal"),
    "accept": _both("accept", "aceptar"),
}
"""The dispositions, in words."""

FACES: Final[Mapping[FaceShape, Text]] = {
    "convex": _both("convex", "convexa"),
    "flat": _both("flat", "plana"),
    "concave": _both("hollow", "cóncava"),
}

CALLED: Final[Mapping[tuple[CalloutMeasure, bool], Text]] = {
    ("leg", False): _both("leg", "cateto"),
    ("leg", True): _both("two different legs", "dos catetos distintos"),
    ("throat", False): _both("throat", "garganta"),
}
"""What is called for, by its measure and whether the legs differ."""

EDGES: Final[Mapping[Edge, Text]] = {
    "leg": _both("leg edge", "canto de cateto"),
    "throat": _both("throat edge", "canto de garganta"),
}

_MEASURED: Final[Mapping[LimitMeasure, tuple[str, ...]]] = {
    "undercut": ("measure.undercut",),
    "overlap": ("measure.overlap",),
    "toe_angle": ("measure.toe_angle_base", "measure.toe_angle_upright"),
    "convexity": ("measure.convexity",),
    "asymmetry": ("measure.asymmetry", "measure.leg_base", "measure.leg_upright"),
    "excess_throat": ("measure.excess_throat", "measure.actual_throat"),
    "root_opening": ("measure.root_opening",),
    "maximum_size": ("measure.maximum_size",),
    "joint_angle": ("measure.joint_angle",),
}

_KEY_WORDS: Final[Mapping[str, Text]] = {
    "leg_base": _both("leg on the base", "cateto en la base"),
    "leg_upright": _both("leg on the upright", "cateto en el montante"),
    "effective_size": _both("effective size", "tamaño efectivo"),
    "effective_throat": _both("effective throat", "garganta efectiva"),
    "theoretical_throat": _both("theoretical throat", "garganta teórica"),
}

_JUDGED: Final[Mapping[LimitMeasure, Text]] = {
    "undercut": _both("undercut at each toe, mm", "mordedura en cada borde, mm"),
    "overlap": _both("overlap at each toe, mm", "solape en cada borde, mm"),
    "toe_angle": _both("toe angle, degrees", "ángulo en el borde, grados"),
    "convexity": _both("convexity, mm", "convexidad, mm"),
    "asymmetry": _both("difference of the legs, mm", "diferencia de los catetos, mm"),
    "excess_throat": _both("excess throat, mm", "exceso de garganta, mm"),
    "root_opening": _both("root opening, mm", "separación en la raíz, mm"),
    "maximum_size": _both("size called for, mm", "tamaño indicado, mm"),
    "joint_angle": _both("angle of the joint, degrees", "ángulo de la unión, grados"),
}


def measured_by(measure: LimitMeasure) -> tuple[str, ...]:
    """Return the keys of the entries that say what a limit judges.

    Examples
    --------
    >>> measured_by("convexity")
    ('measure.convexity',)
    """
    return _MEASURED[measure]


def _source_cell(source: Source) -> Cell:
    return Cell(joined(source_words(source.name), " (", sureness_words(source.sureness), ")"))


def limit_table(rules: RuleSet) -> Table:
    """Return every limit of a rule set in a row: what, how much, of what, what else, whose.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> row = limit_table(RULE_SETS["iso-5817-c"]).rows[2]
    >>> [str(cell.text) for cell in row][:3]
    ['Convexity', '≤ 1 mm + 0.15 × face width, 4 mm at most', 'convexity, mm']
    """
    at = f"rules.{rules.id}"
    rows = [*_added_rows(rules, at)]
    rows += [
        (
            Cell(measure_title(limit.measure), f"{at}.{limit.measure}"),
            Cell(limit_formula(limit)),
            Cell(_JUDGED[limit.measure], _MEASURED[limit.measure][0]),
            Cell(NEEDS[limit.needs], "word.disposition"),
            _source_cell(limit.source),
        )
        for limit in rules.limits
    ]
    heads = (
        _both("Limit", "Límite"),
        _both("What is allowed", "Lo que se admite"),
        _both("It judges", "Juzga"),
        _both("If not", "Si no"),
        _both("Source, and how sure", "Fuente y certeza"),
    )
    return Table(_both("Limits", "Límites"), heads, tuple(rows))


def _added_rows(rules: RuleSet, at: str) -> list[tuple[Cell, ...]]:
    """What is allowed under a size, added to it, and the least there is."""
    size = Cell(_both("size needed, mm", "tamaño necesario, mm"), f"{at}.size.leg-convex")
    add = Cell(NEEDS["add weld metal"], "word.disposition")
    found: list[tuple[Cell, ...]] = []
    if rules.undersize is not None:
        what = Cell(_both("Undersize", "Tamaño escaso"), f"{at}.undersize")
        judged = size
        if rules.undersize.measured_as == "throat":
            judged = Cell(_both("throat, mm", "garganta, mm"), "measure.effective_throat")
        formula = Cell(undersize_formula(rules.undersize))
        found.append((what, formula, judged, add, _source_cell(rules.undersize.source)))
    if rules.opening is not None:
        what = Cell(_both("Root opening, added", "Separación en la raíz, suma"), f"{at}.opening")
        formula = Cell(opening_formula(rules.opening))
        found.append((what, formula, size, add, _source_cell(rules.opening.source)))
    if rules.minimum_size is not None:
        name = _both("Least leg", "Cateto mínimo")
        if rules.minimum_size.measured_as == "throat":
            name = _both("Least throat", "Garganta mínima")
        what = Cell(name, f"{at}.minimum_size")
        formula = Cell(minimum_formula(rules.minimum_size))
        found.append((what, formula, size, add, _source_cell(rules.minimum_size.source)))
    return found


def size_table(rules: RuleSet) -> Table:
    """Return how each callout is judged on each face: measures, edges, seats and leaves.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> [str(cell.text) for cell in size_table(RULE_SETS["en-1993-1-8"]).rows[-1]][2:4]
    ['theoretical throat', 'throat edge']
    """
    at = f"rules.{rules.id}.size"
    heads = (
        _both("Called for", "Se indica"),
        _both("Face", "Cara"),
        _both("Must reach it", "Debe alcanzarlo"),
        _both("Edge", "Canto"),
        _both("Seats", "Asientos"),
        _both("Leaf", "Hoja"),
    )
    rows = tuple(
        (
            Cell(CALLED[row.measure, row.unequal], f"{at}.{row.name}"),
            Cell(FACES[row.face], "word.face"),
            Cell(compared_words(row)),
            Cell(_listed([EDGES[edge] for edge in row.edges], " / ")),
            Cell(_seats_words(row)),
            Cell(leaf_words(row)),
        )
        for row in rules.sizes
    )
    return Table(_both("How a size is judged and gauged", "Cómo se juzga y se mide un tamaño"),
                 heads, rows)  # fmt: skip


def _listed(texts: Sequence[Text], between: str) -> Text:
    spaced = [part for text in texts for part in (between, text)]
    return joined(*spaced[1:]) if texts else NO_TEXT


def compared_words(row: SizeRow) -> Text:
    """Return the measures that must reach the size needed, in words."""
    keys = dict.fromkeys(comparison.key for comparison in row.compared)
    return _listed([_KEY_WORDS[key] for key in keys], ", ")


def _seats_words(row: SizeRow) -> Text:
    legs = [member for edge, member in row.seats if edge == "leg"]
    parts: list[Text] = []
    if legs:
        parts.append(_both("tip to the base, tip to the upright", "punta a la base, al montante"))
    if row.throat:
        parts.append(_both("spur to the face", "espolón a la cara"))
    return _listed(parts, "; ")


def leaf_words(row: SizeRow) -> Text:
    """Return which leaf shows whether the size needed is reached, in words.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> str(leaf_words(RULE_SETS["as-drawn"].sizes[0]))
    'leg needed × sin(angle)'
    """
    legs = _both("leg needed × sin(angle)", "cateto necesario × sen(ángulo)")
    if row.unequal:
        legs = _both("each leg's own × sin(angle)", "la de cada cateto × sen(ángulo)")
    spur = _both("at the spur: leg needed", "en el espolón: cateto necesario")
    if row.unequal:
        spur = _both("at the spur: 2ab / (a + b)", "en el espolón: 2ab / (a + b)")
    parts = [legs] if row.legs else []
    if row.throat:
        parts.append(spur)
    return _listed(parts, "; ")
