"""The entries as they are listed: group by group, rule set by rule set, or what was found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from exercises.definitions import reference
from exercises.reference import GROUPS, Entry, search
from exercises.rules import RULE_SETS, RuleSet

__all__ = ["FIRST", "Book", "Line"]

FIRST: Final = "gauge.holding"
"""What is shown before anything was looked up."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the list.

    Parameters
    ----------
    title
        What it says.
    key
        Of its entry; empty for the heading of a group.
    under
        Lines beneath it.
    """

    title: str
    key: str = ""
    under: tuple[Line, ...] = ()


@dataclass(frozen=True)
class Book:
    """All entries.

    Parameters
    ----------
    language
        Tag of the language that titles are in.
    shop
        Rule sets of a shop's own; those that ship come first.

    Examples
    --------
    >>> book = Book("en")
    >>> [line.title for line in book.lines("")][:2]
    ['Rules', 'Gauging']
    >>> book.entries["doubt.eye"].source
    'optics, rule of thumb'
    """

    language: str
    shop: tuple[RuleSet, ...] = ()

    @cached_property
    def entries(self) -> Mapping[str, Entry]:
        """Every entry by its key."""
        own = [rules for rules in self.shop if rules.id not in RULE_SETS]
        return {entry.key: entry for entry in reference(*own)}

    def title(self, key: str) -> str:
        """What an entry is called."""
        return self.entries[key].title.in_language(self.language)

    def group(self, key: str) -> str:
        """What an entry belongs to: its group, and its rule set where it has one."""
        entry = self.entries[key]
        group = GROUPS[entry.group].in_language(self.language)
        own = self._set_of(key)
        return f"{group} \u00b7 {self.title(own)}" if own and own != key else group

    def _set_of(self, key: str) -> str:
        """The key of the rule set that an entry is of; a set's id may hold full stops."""
        found = [own for own in self._sets if key == own or key.startswith(f"{own}.")]
        return max(found, key=len, default="")

    @cached_property
    def _sets(self) -> tuple[str, ...]:
        ids = dict.fromkeys((*RULE_SETS, *(rules.id for rules in self.shop)))
        return tuple(f"rules.{name}" for name in ids)

    def lines(self, words: str) -> tuple[Line, ...]:
        """Return the list: all of it, or what holds every one of some words."""
        if words.strip():
            return self._found(search(tuple(self.entries.values()), words, self.language))
        grouped = self._grouped(tuple(self.entries.values()))
        return tuple(
            Line(
                title.in_language(self.language),
                under=self._of_sets(grouped[group])
                if group == "rules"
                else self._plain(grouped[group]),
            )
            for group, title in GROUPS.items()
        )

    def _found(self, entries: Sequence[Entry]) -> tuple[Line, ...]:
        """What was found, the best first: a group stands where its first entry is."""
        grouped = self._grouped(entries)
        return tuple(
            Line(GROUPS[group].in_language(self.language), under=self._plain(under))
            for group, under in grouped.items()
        )

    def _grouped(self, entries: Sequence[Entry]) -> dict[str, list[Entry]]:
        grouped: dict[str, list[Entry]] = {}
        for entry in entries:
            grouped.setdefault(entry.group, []).append(entry)
        return grouped

    def _plain(self, entries: Sequence[Entry]) -> tuple[Line, ...]:
        return tuple(Line(entry.title.in_language(self.language), entry.key) for entry in entries)

    def _of_sets(self, entries: Sequence[Entry]) -> tuple[Line, ...]:
        """Rule sets, each with its own entries beneath it."""
        under: dict[str, list[Line]] = {}
        for entry in entries:
            own = self._set_of(entry.key)
            lines = under.setdefault(own, [])
            if entry.key != own:
                title = self.title(entry.key).removeprefix(f"{self.title(own)}: ")
                lines.append(Line(title[:1].upper() + title[1:], entry.key))
        return tuple(Line(self.title(own), own, tuple(lines)) for own, lines in under.items())
