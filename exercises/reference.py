"""Every limit, formula and definition that the program uses, as entries to read and to search.

The entries are made from what judges: the tables of rule sets, the measures, the doubt, the leaf's
own proportions. So a page of them can't say what the program doesn't do.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from exercises.rule_tables import (
    CALLED,
    FACES,
    NEEDS,
    Table,
    compared_words,
    leaf_words,
    limit_table,
    measured_by,
    size_table,
)
from exercises.rules import RuleSet, SizeRow, Source
from exercises.rules.formula import Amount, Where
from exercises.rules.limits import Limit, Sureness, Within
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

__all__ = ["GROUPS", "Entry", "as_markdown", "of_rules", "search"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing to look up.

    Parameters
    ----------
    key
        Its name for good: ``rules.iso-5817-c.convexity``, ``measure.effective_size``.
    title, text
        What it is called, and what is to be said of it.
    formula
        How it is worked out, in signs or in words; empty where there is none.
    source, sureness
        Where it comes from, and how surely it is known.
    related
        Keys of other entries.
    tables
        What is best read in rows.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> of_rules(RULE_SETS["iso-5817-b"])[-1].key
    'rules.iso-5817-b.root_opening'
    """

    key: str
    title: Text
    text: Text
    formula: Text
    source: str
    sureness: Sureness
    related: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()

    @property
    def group(self) -> str:
        """The first part of its key: one of `GROUPS`."""
        return self.key.split(".", 1)[0]


def of_rules(rules: RuleSet) -> tuple[Entry, ...]:
    """Return the entries of a rule set: the set, its table of sizes, and every limit."""
    at = f"rules.{rules.id}"
    entries = [
        Entry(
            at,
            rules.title,
            _said((*rules.stated_lines, *rules.notes, rules.source.note)),
            NO_TEXT,
            rules.source.name,
            rules.source.sureness,
            tables=(limit_table(rules), size_table(rules)),
        ),
        *_size_entries(rules, at),
        *_added_entries(rules),
    ]
    entries += [
        _entry(rules, limit.measure, measure_title(limit.measure), limit_formula(limit),
               limit.source, _needs(limit),
               (*measured_by(limit.measure), *_more(limit.amount, limit.within)))
        for limit in rules.limits
    ]  # fmt: skip
    return tuple(entries)


def _entry(
    rules: RuleSet,
    name: str,
    title: Text,
    formula: Text,
    source: Source,
    text: Text,
    related: tuple[str, ...] = (),
) -> Entry:
    key = f"rules.{rules.id}"
    whole = joined(rules.title, ": ", title)
    return Entry(
        f"{key}.{name}", whole, _said((text, source.note)), formula, source.name, source.sureness,
        (key, *related),
    )  # fmt: skip


def _said(texts: Sequence[Text]) -> Text:
    """Sentences in a row; those that say nothing are left out."""
    present = [text for text in texts if text]
    spaced = [part for text in present for part in (" ", text)]
    return joined(*spaced[1:]) if present else NO_TEXT


def _more(amount: Amount, within: Within | None) -> tuple[str, ...]:
    """Keys of what has to be known for an amount: facts of the coupon, shares of the length."""
    facts = ("word.conditions",) if isinstance(amount, Where) else ()
    if within is None:
        return facts
    return (*facts, "word.extent") if within.each is None else (*facts, "word.length")


def _needs(limit: Limit) -> Text:
    needed = NEEDS[limit.needs]
    beyond = Text.of(
        {
            "en": f"Beyond it the right call is: {needed.in_language('en')}.",
            "es": f"Fuera de él lo correcto es: {needed.in_language('es')}.",
        }
    )
    return beyond if limit.within is None else joined(beyond, " ", _WITHIN)


_WITHIN: Final = Text.of(
    {
        "en": "The tray states what share of the weld's length its section stands for; the other "
        "figure holds only within that share.",
        "es": "La bandeja declara qué parte de la longitud del cordón representa la sección; la "
        "otra cifra vale solo dentro de esa parte.",
    }
)
"""A section has no length: so much in any so much is judged as a share."""


def _size_entries(rules: RuleSet, at: str) -> list[Entry]:
    entries: list[Entry] = []
    for row in rules.sizes:
        keys = dict.fromkeys(comparison.key for comparison in row.compared)
        needed = Text.of({"en": " \u2265 size needed", "es": " \u2265 tamaño necesario"})
        leaf = joined(Text.of({"en": "Leaf: ", "es": "Hoja: "}), leaf_words(row), ".")
        entries.append(
            Entry(
                f"{at}.size.{row.name}",
                joined(rules.title, ": ", _row_title(row)),
                _said((_seats_text(row.seats), leaf)),
                joined(compared_words(row), needed),
                rules.source.name,
                rules.source.sureness,
                (at, *(f"measure.{key}" for key in keys), *_LEAVES[row.face]),
            )
        )
    return entries


_LEAVES: Final[dict[str, tuple[str, ...]]] = {
    "convex": ("leaf.leg",),
    "flat": ("leaf.leg", "leaf.throat"),
    "concave": ("leaf.throat", "leaf.leg"),
}


def _added_entries(rules: RuleSet) -> list[Entry]:
    """What is taken off a size and put on it."""
    entries: list[Entry] = []
    less = Text.of({"en": "Undersize", "es": "Tamaño escaso"})
    if rules.undersize is not None:
        formula, source = undersize_formula(rules.undersize), rules.undersize.source
        text = Text.of(
            {
                "en": "Only where the part that is short is within that share of the length: 5 for "
                "8 along a whole weld is refused.",
                "es": "Solo si lo escaso cae dentro de esa parte de la longitud: 5 en lugar de 8 a "
                "lo largo de todo el cordón se rechaza.",
            }
        )
        more = _more(rules.undersize.amount, rules.undersize.within)
        related = ("word.undersize", *more)
        entries.append(_entry(rules, "undersize", less, formula, source, text, related))
    if rules.opening is not None:
        title = Text.of({"en": "Root opening, added", "es": "Separación en la raíz, suma"})
        formula, source = opening_formula(rules.opening), rules.opening.source
        entries.append(_entry(rules, "opening", title, formula, source, NO_TEXT))
    if rules.minimum_size is not None:
        leg = rules.minimum_size.measured_as == "leg"
        title = Text.of(
            {"en": "Least leg", "es": "Cateto mínimo"}
            if leg
            else {"en": "Least throat", "es": "Garganta mínima"}
        )
        formula, source = minimum_formula(rules.minimum_size), rules.minimum_size.source
        text = Text.of(
            {
                "en": "A smaller callout is raised to it.",
                "es": "Un tamaño indicado menor se eleva hasta él.",
            }
        )
        entries.append(_entry(rules, "minimum_size", title, formula, source, text))
    return entries


def _row_title(row: SizeRow) -> Text:
    face = FACES[row.face]
    called = CALLED[row.measure, row.unequal]
    named = Text.of(
        {"en": f"{face.in_language('en')} face", "es": f"cara {face.in_language('es')}"}
    )
    return joined(called, ", ", named)


def _seats_text(seats: Sequence[tuple[str, str]]) -> Text:
    edges = [edge for edge, _ in seats]
    legs, throat = edges.count("leg") == 2, "throat" in edges
    if legs and throat:
        return Text.of(
            {
                "en": "Held with the leg edge at both legs and with the throat edge: the leaf of "
                "the size needed, or the two about it.",
                "es": "Se apoya el canto de cateto en los dos catetos, y el de garganta: la hoja "
                "del tamaño necesario, o las dos vecinas.",
            }
        )
    if legs:
        return Text.of(
            {
                "en": "Held with the leg edge at both legs, two placements: the leaf of the size "
                "needed, or the two about it.",
                "es": "Se apoya el canto de cateto en los dos catetos, dos posiciones: la hoja del "
                "tamaño necesario, o las dos vecinas.",
            }
        )
    return Text.of(
        {
            "en": "Held with the throat edge: the leaf of the size needed, or the two about it.",
            "es": "Se apoya el canto de garganta: la hoja del tamaño necesario, o las dos vecinas.",
        }
    )


_WORD: Final = re.compile(r"[\w./-]+")


def _plain(text: str) -> str:
    """Small letters without accents: what somebody types is found however they type it."""
    split = unicodedata.normalize("NFKD", text.casefold())
    return "".join(letter for letter in split if not unicodedata.combining(letter))


def search(entries: Sequence[Entry], words: str, language: str) -> tuple[Entry, ...]:
    """Return the entries that hold every one of some words.

    First come those whose title has each as a word of its own, then those with all in the title.

    Parameters
    ----------
    entries
        What is looked through, in the order that is kept.
    words
        As somebody types them; without any, all entries are found.
    language
        Tag of the language that they are typed in.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> found = search(of_rules(RULE_SETS["iso-5817-c"]), "CONVEXITY level c", "en")
    >>> found[0].key
    'rules.iso-5817-c.convexity'
    """
    wanted = _plain(words).split()
    named: list[Entry] = []
    in_title: list[Entry] = []
    elsewhere: list[Entry] = []
    for entry in entries:
        title = _plain(entry.title.in_language(language))
        whole: list[str | Text] = [title, entry.key, source_words(entry.source)]
        whole += [sureness_words(entry.sureness), entry.text, entry.formula]
        if entry.group != "rules":  # Else its tables say what the entries of their rows say.
            whole += [cell.text for table in entry.tables for row in table.rows for cell in row]
        told = " ".join(
            part if isinstance(part, str) else part.in_language(language) for part in whole
        )
        if set(wanted) <= set(_WORD.findall(title)):
            named.append(entry)
        elif all(word in title for word in wanted):
            in_title.append(entry)
        elif all(word in _plain(told) for word in wanted):
            elsewhere.append(entry)
    return (*named, *in_title, *elsewhere)


GROUPS: Final[dict[str, Text]] = {
    "rules": Text.of({"en": "Rules", "es": "Reglas"}),
    "gauge": Text.of({"en": "Gauging", "es": "Cómo se mide"}),
    "leaf": Text.of({"en": "Leaves", "es": "Hojas"}),
    "measure": Text.of({"en": "Measures", "es": "Medidas"}),
    "doubt": Text.of({"en": "Doubt", "es": "Duda"}),
    "callout": Text.of({"en": "Callouts", "es": "Lo indicado"}),
    "word": Text.of({"en": "Words", "es": "Palabras"}),
}
"""What entries belong to, by the first part of their keys, in the order of a page."""


def as_markdown(entries: Sequence[Entry], language: str = "en") -> str:
    """Return the entries as a page of Markdown, in their order.

    Examples
    --------
    >>> from exercises.rules import RULE_SETS
    >>> print(as_markdown(of_rules(RULE_SETS["iso-5817-b"])[-1:]).splitlines()[4])
    ### ISO 5817, level B: Root opening
    """
    lines = ["# Reference", ""]
    group = ""
    for entry in entries:
        if entry.group != group:
            group = entry.group
            lines += [f"## {GROUPS[group].in_language(language)}", ""]
        lines += [f"### {entry.title.in_language(language)}", ""]
        if entry.formula:
            lines += [f"`{entry.formula.in_language(language)}`", ""]
        if entry.text:
            lines += [entry.text.in_language(language), ""]
        for table in entry.tables:
            lines += _table_lines(table, language)
        sure = sureness_words(entry.sureness).in_language(language)
        lines += [f"Source: {source_words(entry.source).in_language(language)} ({sure}).", ""]
    return "\n".join(lines)


def _table_lines(table: Table, language: str) -> list[str]:
    def line(texts: Sequence[Text]) -> str:
        told = (text.in_language(language).replace("|", "\\|") for text in texts)
        return f"| {' | '.join(told)} |"

    title = [f"**{table.title.in_language(language)}**", ""] if table.title else []
    rows = [line([cell.text for cell in row]) for row in table.rows]
    return [*title, line(table.heads), "| --- " * len(table.heads) + "|", *rows, ""]
