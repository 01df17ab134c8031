"""Tables to gauge by: what a leaf shows, how it is held, what hangs on a rack, skewed joints."""

from __future__ import annotations

import math
from typing import Final

from exercises.gauging import leg_leaf_size
from exercises.rule_tables import Cell, Table
from exercises.text import NO_TEXT, Text
from geometry.joint import LARGEST_ANGLE, SMALLEST_ANGLE, Joint
from geometry.leaf import RackName, rack
from geometry.lengths import MM_PER_INCH
from geometry.reading import EYE_LIMIT

__all__ = ["TABLES", "rack_table", "skewed_table"]

_STEP: Final = 5
"""Degrees between the rows of the table of skewed joints."""

_E: Final = f"{EYE_LIMIT:g} mm"


def _both(english: str, spanish: str) -> Cell:
    return Cell(Text.of({"en": english, "es": spanish}))


def _plain(words: str) -> Cell:
    return Cell(Text.of(words))


def _decimal(value: float, places: int) -> Cell:
    """A figure with the language's own decimal sign."""
    said = f"{value:.{places}f}"
    return Cell(Text.of({"en": said, "es": said.replace(".", ",")}))


def _exact(value: float) -> Cell:
    """A figure to the tenth of a micrometre, no more places than it has."""
    said = f"{value:.4f}".rstrip("0").rstrip(".")
    return Cell(Text.of({"en": said, "es": said.replace(".", ",")}))


def _table(title: Cell, heads: tuple[Cell, ...], rows: tuple[tuple[Cell, ...], ...]) -> Table:
    return Table(title.text, tuple(head.text for head in heads), rows)


def rack_table(name: RackName) -> Table:
    """Return the leaves of a rack: mark, leg and throat in mm, leg in inches.

    Examples
    --------
    >>> [str(cell.text) for cell in rack_table("inch").rows[3]]
    ['5/16 in', '7.9375', '5.613', '0.3125']
    """
    heads = (
        _both("Mark", "Marca"),
        _both("Leg, mm", "Cateto, mm"),
        _both("Throat at 90°, mm", "Garganta a 90°, mm"),
        _both("Leg, in", "Cateto, in"),
    )
    rows = tuple(
        (
            _plain(leaf.mark),
            _exact(leaf.size),
            _decimal(leaf.size * math.sqrt(0.5), 3),
            _decimal(leaf.size / MM_PER_INCH, 4),
        )
        for leaf in rack(name)
    )
    return _table(Cell(NO_TEXT), heads, rows)


def skewed_table() -> Table:
    """Return what a joint's angle does: the leaf for a leg, the throat, and a throat's leg.

    Examples
    --------
    >>> [str(cell.text) for cell in skewed_table().rows[6]]
    ['90°', '1.000', '0.707', '1.414']
    """
    heads = (
        _both("Angle", "Ángulo"),
        _both("Leaf / leg", "Hoja / cateto"),
        _both("Throat / leg", "Garganta / cateto"),
        _both("Leg / throat", "Cateto / garganta"),
    )
    angles = range(round(SMALLEST_ANGLE), round(LARGEST_ANGLE) + 1, _STEP)
    rows = tuple(
        (
            _plain(f"{angle}°"),
            _decimal(leg_leaf_size(1.0, Joint(angle=float(angle))), 3),
            _decimal(math.cos(math.radians(angle / 2.0)), 3),
            _decimal(1.0 / math.cos(math.radians(angle / 2.0)), 3),
        )
        for angle in angles
    )
    return _table(Cell(NO_TEXT), heads, rows)


_STATES: Final = _table(
    Cell(NO_TEXT),
    (
        _both("It shows", "Muestra"),
        _both("Leg edge", "Canto de cateto"),
        _both("Throat edge", "Canto de garganta"),
        _both("So the weld is", "El cordón es"),
    ),
    (
        (
            _both("not seated", "sin asentar"),
            _both(
                "long edge not flush; or something other than weld metal keeps the tip off; or not "
                "home",
                "el canto largo no está a ras; o algo que no es el cordón aparta la punta; o no "
                "está arrimada",
            ),
            _both(
                "the joint is not square enough for both edges; or something other than weld metal "
                "at the spur keeps an edge off; or not home",
                "la unión no está lo bastante a escuadra; o algo que no es el cordón aparta un "
                "canto; o no está arrimada",
            ),
            _both("unknown: it says nothing", "desconocido: no dice nada"),
        ),
        (
            _both("touch", "contacto"),
            _both(
                f"tip within {_E} of the member, weld metal within {_E} of the tip",
                f"punta a {_E} o menos de la pieza, metal a {_E} o menos de la punta",
            ),
            _both(
                f"both edges flush, face within {_E} of the spur",
                f"los dos cantos a ras, cara a {_E} o menos del espolón",
            ),
            _both("the leaf's size", "del tamaño de la hoja"),
        ),
        (
            _both("held off", "apartada"),
            _both(
                f"weld metal at the tip keeps it more than {_E} off the member",
                f"el metal bajo la punta la aparta más de {_E} de la pieza",
            ),
            _both(
                f"weld metal at the spur keeps an edge more than {_E} off",
                f"el metal en el espolón aparta un canto más de {_E}",
            ),
            _both("larger", "mayor"),
        ),
        (
            _both("daylight", "luz"),
            _both(
                f"tip within {_E} of the member, the toe more than {_E} short of it",
                f"punta a {_E} o menos de la pieza, el borde a más de {_E} de ella",
            ),
            _both(
                f"both edges flush, the face more than {_E} short",
                f"los dos cantos a ras, la cara a más de {_E}",
            ),
            _both("smaller", "menor"),
        ),
    ),
)

_HOLDING: Final = _table(
    Cell(NO_TEXT),
    (
        _both("Face", "Cara"),
        _both("Edge", "Canto"),
        _both("Placements", "Posiciones"),
        _both("Because", "Porque"),
    ),
    (
        (
            _both("convex", "convexa"),
            _both("leg edge", "canto de cateto"),
            _both("two: one for each leg", "dos: una por cateto"),
            _both("at the throat its crown flatters it", "en la garganta la convexidad engaña"),
        ),
        (
            _both("hollow", "cóncava"),
            _both("throat edge, and the leg edge for the legs",
                  "canto de garganta, y el de cateto para los catetos"),
            _both("one at the throat, two at the legs", "una en la garganta, dos en los catetos"),
            _both("it is thin in the middle: legs of the size don't show that",
                  "es fina en el medio: los catetos no lo muestran"),
        ),
        (
            _both("flat", "plana"),
            _both("either", "cualquiera"),
            _both("two at the legs, or one at the throat and both legs",
                  "dos en los catetos, o una en la garganta y los dos catetos"),
            _both("both tell the same", "los dos dicen lo mismo"),
        ),
    ),
)  # fmt: skip

TABLES: Final = {
    "states": _STATES,
    "holding": _HOLDING,
    "skewed": skewed_table(),
    "rack_inch": rack_table("inch"),
    "rack_metric": rack_table("metric"),
    "rack_throat": rack_table("throat"),
}
"""The tables that definitions speak of, by name."""
