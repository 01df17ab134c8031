"""Limits and formulas in words, made from the very values that judge: in English and in Spanish."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final, Literal

from exercises.rules.formula import (
    Amount,
    Extreme,
    Fact,
    Length,
    Linear,
    Quantity,
    Table,
    Where,
)
from exercises.rules.limits import (
    Limit,
    LimitMeasure,
    MinimumSize,
    Opening,
    Sureness,
    Undersize,
    Within,
)
from exercises.text import Text
from geometry.lengths import format_length, inch_fraction

__all__ = [
    "LANGUAGES",
    "Column",
    "amount_words",
    "joined",
    "limit_formula",
    "limit_line",
    "measure_title",
    "minimum_formula",
    "minimum_line",
    "opening_formula",
    "opening_line",
    "sureness_words",
    "undersize_formula",
    "undersize_line",
    "within_words",
]

_POINT: Final = re.compile(r"(?<=\d)\.(?=\d)")

Language = Literal["en", "es"]
LANGUAGES: Final[tuple[Language, ...]] = ("en", "es")

Column = Literal["both", "mm", "in", "degrees"]
"""What lengths are said in: both columns of a code, one of them; or they are angles."""

_Words = dict[Language, str]

_QUANTITY: Final[dict[Quantity, _Words]] = {
    "size": {"en": "leg called for", "es": "cateto indicado"},
    "throat": {"en": "throat called for", "es": "garganta indicada"},
    "face_width": {"en": "face width", "es": "ancho de la cara"},
    "thickness": {"en": "thickness", "es": "espesor"},
    "thinner": {"en": "thickness of the thinner member", "es": "espesor de la pieza más delgada"},
    "thicker": {"en": "thickness of the thicker member", "es": "espesor de la pieza más gruesa"},
    "deciding": {
        "en": "thickness of the thinner member (without low hydrogen, of the thicker)",
        "es": "espesor de la pieza más delgada (sin bajo hidrógeno, de la más gruesa)",
    },
    "edge": {"en": "thickness of the edge", "es": "espesor del canto"},
}

_FACT: Final[dict[Fact, _Words]] = {
    "transverse_tension": {
        "en": "across the tension of a primary member",
        "es": "transversal a la tracción de una pieza principal",
    },
    "girder_end": {
        "en": "at the end of a girder's web-to-flange weld",
        "es": "en el extremo del cordón alma-ala de una viga",
    },
}

_MEASURE: Final[dict[LimitMeasure, _Words]] = {
    "undercut": {"en": "Undercut, depth", "es": "Mordedura, profundidad"},
    "overlap": {"en": "Overlap, length", "es": "Solape, longitud"},
    "toe_angle": {"en": "Toe angle", "es": "Ángulo en el borde"},
    "convexity": {"en": "Convexity", "es": "Convexidad"},
    "asymmetry": {"en": "Difference of the legs", "es": "Diferencia de los catetos"},
    "excess_throat": {"en": "Excess throat", "es": "Exceso de garganta"},
    "root_opening": {"en": "Root opening", "es": "Separación en la raíz"},
    "maximum_size": {"en": "Size called for along an edge", "es": "Tamaño indicado en un canto"},
    "joint_angle": {"en": "Angle of the joint", "es": "Ángulo de la unión"},
}

_SURENESS: Final[dict[Sureness, _Words]] = {
    "own": {"en": "own rule", "es": "regla propia"},
    "seen": {"en": "seen", "es": "visto"},
    "second-hand": {"en": "second-hand", "es": "de segunda mano"},
    "from memory": {"en": "from memory", "es": "de memoria"},
}


def _in_each(say: Callable[[Language], str]) -> Text:
    return Text.of({language: say(language) for language in LANGUAGES})


def sureness_words(sureness: Sureness) -> Text:
    """Return how surely a rule is known, in words.

    Examples
    --------
    >>> str(sureness_words("second-hand"))
    'second-hand'
    """
    return Text.of({language: _SURENESS[sureness][language] for language in LANGUAGES})


def measure_title(measure: LimitMeasure) -> Text:
    """Return what a limit is on."""
    return Text.of({language: _MEASURE[measure][language] for language in LANGUAGES})


def joined(*parts: Text | str) -> Text:
    """Return parts put together in every language."""

    def say(language: Language) -> str:
        said = (part if isinstance(part, str) else part.in_language(language) for part in parts)
        return "".join(said)

    return _in_each(say)


# --- amounts ------------------------------------------------------------------------------------


def amount_words(amount: Amount, column: Column = "both") -> Text:
    """Return an amount in words; a length of two columns with the inches in brackets.

    Examples
    --------
    >>> from exercises.rules.formula import Share
    >>> convexity = Linear(Length.plain(1.0), Share("face_width", 0.25), cap=Length.plain(5.0))
    >>> str(amount_words(convexity))
    '1 mm + 0.25 × face width, 5 mm at most'
    >>> str(amount_words(Length(2.0, 1.5875), "in")), str(amount_words(Length.plain(3.0), "in"))
    ('1/16 in', '3 mm')
    >>> str(amount_words(Length(2.0, 1.5875))), str(amount_words(Length.plain(100.0), "degrees"))
    ('2 mm [1/16 in]', '100°')
    """
    return _in_each(lambda language: _written(_amount(amount, language, column), language))


def _written(words: str, language: Language) -> str:
    """Figures with the language's own decimal sign."""
    return words if language == "en" else _POINT.sub(",", words)


def _amount(amount: Amount, language: Language, column: Column) -> str:
    if isinstance(amount, Length):
        return _length(amount, column)
    if isinstance(amount, Linear):
        return _linear(amount, language, column)
    if isinstance(amount, Table):
        return _table(amount, language, column)
    if isinstance(amount, Where):
        then = _amount(amount.then, language, column)
        otherwise = _amount(amount.otherwise, language, column)
        rest = {"en": "otherwise", "es": "en otro caso"}[language]
        return f"{_FACT[amount.fact][language]}: {then}; {rest} {otherwise}"
    return _extreme(amount, language, column)


def _length(length: Length, column: Column) -> str:
    if column == "degrees":
        return f"{length.mm:g}\u00b0"
    mm = format_length(length.mm)
    if column == "in" and (length.mm != length.inch or inch_fraction(length.inch)):
        # What a code states in mm alone stays so, unless it is a fraction of an inch.
        return _inches(length.inch)
    if length.mm == length.inch or column == "mm":
        return mm
    return f"{mm} [{_inches(length.inch)}]"


def _inches(length: float) -> str:
    """An inch column as printed: in thirty-seconds where it is so."""
    parts = length / 25.4 * 32
    if abs(parts - round(parts)) < 1e-6 and round(parts) % 2:
        return f"{round(parts)}/32 in"
    return format_length(length, "in")


def _linear(amount: Linear, language: Language, column: Column) -> str:
    quantity, by = _QUANTITY[amount.share.of][language], amount.share.by
    said = quantity if by == 1.0 else f"{by:g} \u00d7 {quantity}"
    if amount.base.mm:
        said = f"{_length(amount.base, column)} + {said}"
    if amount.less.mm:
        said += f" \u2212 {_length(amount.less, column)}"
    if amount.cap is not None:
        most = {"en": "at most", "es": "como máximo"}[language]
        said += f", {_length(amount.cap, column)} {most}"
    return said


def _table(amount: Table, language: Language, column: Column) -> str:
    """Rows by their bounds: ``by face width: up to 8 mm: 2 mm; above that: 3 mm``."""
    rows: list[str] = []
    for before, row in zip((None, *amount.rows), amount.rows, strict=False):
        if row.bound is not None:
            place = {
                True: {"en": "up to", "es": "hasta"},
                False: {"en": "below", "es": "por debajo de"},
            }[row.inclusive][language]
            place = f"{place} {_length(row.bound, column)}"
        elif before is not None and not before.inclusive:
            place = {"en": "from there on", "es": "desde ahí"}[language]
        else:
            place = {"en": "above that", "es": "por encima"}[language]
        rows.append(f"{place}: {_amount(row.amount, language, column)}")
    by = {"en": "by", "es": "según"}[language]
    return f"{by} {_QUANTITY[amount.by][language]}: " + "; ".join(rows)


def _extreme(amount: Extreme, language: Language, column: Column) -> str:
    but = {
        "least": {"en": "but no more than", "es": "pero no más de"},
        "greatest": {"en": "but no less than", "es": "pero no menos de"},
    }[amount.which][language]
    return f", {but}: ".join(_amount(each, language, column) for each in amount.of)


def within_words(within: Within, column: Column = "both") -> Text:
    """Return for how much of a weld's length an allowance is.

    Examples
    --------
    >>> str(within_words(Within(share=0.1)))
    '10 % of the length'
    """
    if within.length is None or within.each is None:
        share = f"{100.0 * within.share:g} %"
        spanish = _written(f"el {share} de la longitud", "es")
        return Text.of({"en": f"{share} of the length", "es": spanish})
    length, each = _length(within.length, column), _length(within.each, column)
    tail: _Words = {"en": " (shorter welds: none)", "es": " (cordones más cortos: nada)"}
    if within.prorate:
        tail = {
            "en": " (shorter welds: that share)",
            "es": " (cordones más cortos: esa proporción)",
        }
    return Text.of(
        {
            "en": f"{length} of any {each}{tail['en']}",
            "es": _written(f"{length} en cada {each}{tail['es']}", "es"),
        }
    )


# --- limits -------------------------------------------------------------------------------------

_NONE: Final = Text.of({"en": "not permitted", "es": "no se admite"})
_OVER: Final = Text.of({"en": "over at most ", "es": "como máximo en "})


def _bounded(
    amount: Amount, bound: Literal["at_most", "at_least"], column: Column = "both"
) -> Text:
    """An amount with the side of it that is right; a sign where there is one figure to sign."""
    words = amount_words(amount, column)
    if isinstance(amount, (Length, Linear)):
        return joined("\u2265 " if bound == "at_least" else "\u2264 ", words)
    if bound == "at_least":
        return joined(Text.of({"en": "at least, ", "es": "al menos, "}), words)
    return joined(Text.of({"en": "at most, ", "es": "como máximo, "}), words)


def limit_formula(limit: Limit, column: Column = "both") -> Text:
    """Return what a limit allows.

    Examples
    --------
    >>> from exercises.rules.limits import Source
    >>> str(limit_formula(Limit("overlap", Length.plain(0.0), "dress back", \
Source("a shop", "", "", "own"))))
    'not permitted'
    """
    read = "degrees" if limit.unit == "degrees" else column
    said = _bounded(limit.amount, limit.bound, read)
    if isinstance(limit.amount, Length) and limit.amount.mm == 0.0:
        said = _NONE
    if limit.short is None or limit.within is None:
        return said
    short = _bounded(limit.short, limit.bound, read)
    return joined(said, "; ", _OVER, within_words(limit.within, column), ": ", short)


def undersize_formula(undersize: Undersize, column: Column = "both") -> Text:
    """Return by how much a size may be short, and over how much of the length."""
    said = _bounded(undersize.amount, "at_most", column)
    if undersize.within is None:
        return said
    return joined(said, "; ", _OVER, within_words(undersize.within, column))


def opening_formula(opening: Opening, column: Column = "both") -> Text:
    """Return what a root opening adds to the size called for."""
    free = amount_words(opening.free, column)
    english, spanish = free.in_language("en"), free.in_language("es")
    return Text.of(
        {
            "en": f"above {english} the whole opening is added to the leg called for",
            "es": f"por encima de {spanish} se suma toda la separación al cateto indicado",
        }
    )


def minimum_formula(minimum: MinimumSize, column: Column = "both") -> Text:
    """Return the size that a smaller callout is raised to."""
    return _bounded(minimum.amount, "at_least", column)


def _line(title: _Words, formula: Text, sureness: Sureness) -> Text:
    return joined(
        Text.of({"en": title["en"], "es": title["es"]}),
        ": ",
        formula,
        " (",
        sureness_words(sureness),
        ").",
    )


def limit_line(limit: Limit, column: Column = "both") -> Text:
    """Return a limit as a line of a job card, with how surely it is known."""
    return _line(_MEASURE[limit.measure], limit_formula(limit, column), limit.source.sureness)


def undersize_line(undersize: Undersize | None, column: Column = "both") -> Text:
    """Return the allowance as a line of a job card."""
    if undersize is None:
        return Text.of(
            {
                "en": "Nothing is allowed under the callout.",
                "es": "No se admite nada por debajo de lo indicado.",
            }
        )
    title: _Words = {"en": "Leg under its size", "es": "Cateto por debajo de su tamaño"}
    if undersize.measured_as == "throat":
        title = {"en": "Throat under its size", "es": "Garganta por debajo de su tamaño"}
    return _line(title, undersize_formula(undersize, column), undersize.source.sureness)


def opening_line(opening: Opening, column: Column = "both") -> Text:
    """Return what an opening adds as a line of a job card."""
    title: _Words = {"en": "Root opening", "es": "Separación en la raíz"}
    return _line(title, opening_formula(opening, column), opening.source.sureness)


def minimum_line(minimum: MinimumSize, column: Column = "both") -> Text:
    """Return the least size as a line of a job card."""
    title: _Words = {"en": "Least leg", "es": "Cateto mínimo"}
    if minimum.measured_as == "throat":
        title = {"en": "Least throat", "es": "Garganta mínima"}
    return _line(title, minimum_formula(minimum, column), minimum.source.sureness)
