"""The names of sources in other languages: documents keep theirs, what is said about them not."""

from __future__ import annotations

import re
from typing import Final

from exercises.text import Text

__all__ = ["source_words"]

_SPANISH: Final = (
    ("contract of this trainer", "convenio de este programa"),
    (r"own rule of this trainer", "regla propia de este programa"),
    (r", and this trainer's own rule", " y regla propia de este programa"),
    ("international inch, 1959", "pulgada internacional, 1959"),
    ("optics, rule of thumb", "óptica, regla práctica"),
    ("varies by maker", "según el fabricante"),
    ("unchanged from memory", "sin cambios, de memoria"),
    (r"January (?=\d{4})", "enero de "),
    (r"\bTable (?=[A-Z]?\.?\d)", "tabla "),
    (r"\bTables (?=\d)", "tablas "),
    (r"(?<=\d) and (?=\d)", " y "),
    (r"(?<=\d) to (?=\d)", " a "),
)
"""Patterns of what is said about documents; nothing in them is a name that a shop could have."""


def source_words(source: str) -> Text:
    """Return a source's name in words.

    Examples
    --------
    >>> source_words("ISO 5817:2014 and 2023, Table 1, 1.10").in_language("es")
    'ISO 5817:2014 y 2023, tabla 1, 1.10'
    >>> source_words("Smith and Sons").in_language("es")
    'Smith and Sons'
    """
    spanish = source
    for english, words in _SPANISH:
        spanish = re.sub(english, words, spanish)
    return Text.of({"en": source, "es": spanish})
