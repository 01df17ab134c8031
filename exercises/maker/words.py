"""What made coupons are called, and the one thing that each of them teaches: English and Spanish.

A title tells where the weld is and nothing of what is wrong with it.
"""

from __future__ import annotations

from typing import Final

from exercises.coupon import Coupon
from exercises.judging import Judgement
from exercises.strict_json import Json

__all__ = ["HINTS", "teaching_point", "title"]

_Words = tuple[str, str]

_PLACES: Final[tuple[_Words, ...]] = (
    ("Gantry leg", "Pata de pórtico"),
    ("Stair stringer", "Zanca de escalera"),
    ("Crane rail seat", "Asiento de carril de grúa"),
    ("Hopper wall", "Pared de tolva"),
    ("Sluice gate", "Compuerta"),
    ("Mast foot", "Pie de mástil"),
    ("Trailer frame", "Bastidor de remolque"),
    ("Walkway bearer", "Larguero de pasarela"),
    ("Silo skirt", "Faldón de silo"),
    ("Press bed", "Bancada de prensa"),
    ("Tank saddle", "Silla de depósito"),
    ("Roof purlin", "Correa de cubierta"),
)
_PARTS: Final[tuple[_Words, ...]] = (
    ("cleat", "casquillo"),
    ("stiffener", "rigidizador"),
    ("gusset", "cartela"),
    ("end plate", "placa de testa"),
    ("base plate", "placa base"),
    ("lug", "orejeta"),
    ("web", "alma"),
    ("bracket", "ménsula"),
)

HINTS: Final[list[Json]] = [
    {
        "en": "Name the face first: it says which edge to hold to the weld.",
        "es": "Nombre primero la cara: ella dice qué canto se apoya en el cordón.",
    },
    {
        "en": "Look at all there is, not at the size alone, before you make the call.",
        "es": "Antes de decidir, mire todo lo que hay, no solo la medida.",
    },
]

_TEACHES: Final[dict[str, _Words]] = {
    "doubt": (
        "So near its limit a leaf can't tell: either verdict is right, and so is to refer it.",
        "Tan cerca del límite una hoja no distingue: valen ambos dictámenes, y también remitirlo.",
    ),
    "accept convex": (
        "A convex weld is judged by its legs, both of them; its crown adds nothing to its size.",
        "Un cordón convexo se juzga por sus dos catetos; su abombamiento no suma medida.",
    ),
    "accept flat": (
        "A flat weld that reaches its size at both legs reaches it at the throat as well.",
        "Un cordón plano que da la medida en ambos catetos también la da en la garganta.",
    ),
    "accept concave": (
        "A hollow weld is judged at the throat, and its legs must be there as well.",
        "Un cordón cóncavo se juzga por la garganta, y sus catetos también deben estar.",
    ),
    "one leg": (
        "One leg is not the weld: turn the leaf over and gauge the other.",
        "Un cateto no es el cordón: voltee la hoja y mida el otro.",
    ),
    "short": (
        "Daylight at the toe is a leg that falls short, however full the face looks.",
        "Luz en el borde es un cateto que no llega, por llena que parezca la cara.",
    ),
    "throat": (
        "Legs that touch say nothing of a hollow face: the throat is what it lacks.",
        "Que los catetos toquen no dice nada de una cara cóncava: lo que falta es garganta.",
    ),
    "opening": (
        "An open root eats a leg: what the leaf reads from the corner isn't all weld.",
        "Una raíz abierta se come un cateto: lo que la hoja lee desde la esquina no es todo metal.",
    ),
    "undercut": (
        "Size is not all: a groove at the toe is filled, and no leaf reads how deep it is.",
        "La medida no lo es todo: la mordedura se rellena, y ninguna hoja dice su profundidad.",
    ),
    "overlap": (
        "A lip that lies unfused on the plate flatters a leg; it is dressed back.",
        "Un labio sin fundir sobre la chapa halaga al cateto; se rebaja.",
    ),
    "convexity": (
        "Metal above the line from toe to toe is no strength, and too much of it is dressed back.",
        "El metal por encima de la línea de borde a borde no da resistencia; si sobra, se rebaja.",
    ),
    "refer": (
        "Where the leaf can't sit, it can't judge: say so, and have it measured otherwise.",
        "Donde la hoja no asienta, no puede juzgar: dígalo, y que se mida de otro modo.",
    ),
    "dress back": (
        "What stands over the limit is taken off before the size is argued about.",
        "Lo que excede el límite se quita antes de discutir la medida.",
    ),
    "add weld metal": (
        "What the rules find missing is added; the rest of the weld can't make up for it.",
        "Lo que falta según las reglas se añade; el resto del cordón no lo compensa.",
    ),
}


def _text(words: _Words) -> Json:
    return {"en": words[0], "es": words[1]}


def title(number: int) -> Json:
    """Return the title of coupon `number` of a tray, from 0: each of the first 96 another.

    Examples
    --------
    >>> title(0) == title(1), title(0) == title(96)
    (False, False)
    """
    places, parts = len(_PLACES), len(_PARTS)
    # Part and place step on together, so that neighbours differ in both.
    place, part = _PLACES[number % places], _PARTS[(number + number // places) % parts]
    again = number // (places * parts)
    last = f" {again + 1}" if again else ""
    return {"en": f"{place[0]}, {part[0]}{last}", "es": f"{place[1]}, {part[1]}{last}"}


def teaching_point(coupon: Coupon, judgement: Judgement) -> Json:
    """Return the one thing that a coupon teaches, by what makes its right call right."""
    return _text(_TEACHES[_point(coupon, judgement)])


def _point(coupon: Coupon, judgement: Judgement) -> str:
    if judgement.in_doubt:
        return "doubt"
    if judgement.disposition == "accept":
        return f"accept {judgement.face}"
    failed = [
        check
        for check in judgement.checks
        if not check.passed and check.disposition == judgement.disposition
    ]
    keys = {check.key for check in failed}
    for key in ("overlap", "undercut", "convexity"):
        if any(found.startswith(key) for found in keys):
            return key
    if judgement.disposition != "add weld metal":
        return judgement.disposition
    return _short_of(coupon, judgement, failed[0].key if failed else "")


def _short_of(coupon: Coupon, judgement: Judgement, key: str) -> str:
    """What an undersize weld teaches."""
    legs = (judgement.measures.leg_base, judgement.measures.leg_upright)
    if coupon.section.joint.root_opening > 0.0:
        return "opening"
    if key.startswith("leg_") or judgement.face != "concave":
        return "one leg" if abs(legs[0] - legs[1]) > 0.5 else "short"
    return "throat"
