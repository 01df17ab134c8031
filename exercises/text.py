"""Words that a tray carries, in one language or in several."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

__all__ = ["FALLBACK_LANGUAGE", "NO_TEXT", "Text"]

FALLBACK_LANGUAGE: Final = "en"


@dataclass(frozen=True, slots=True)
class Text:
    """A text with its translations.

    Parameters
    ----------
    versions
        Pairs of language tag and words, in file order. The tag ``""`` holds for any language: it
        is what a plain string in a file becomes.

    Examples
    --------
    >>> title = Text.of({"en": "Bracket", "es": "Soporte"})
    >>> title.in_language("es_MX"), title.in_language("fr"), str(Text.of("Bracket"))
    ('Soporte', 'Bracket', 'Bracket')
    """

    versions: tuple[tuple[str, str], ...] = ()

    @classmethod
    def of(cls, source: str | Mapping[str, str]) -> Text:
        """Return the text that a file states as a string or as an object of languages."""
        if isinstance(source, str):
            return cls((("", source),))
        return cls(tuple(source.items()))

    def in_language(self, language: str) -> str:
        """Return the words in `language` ("es", "es-MX", "es_MX"), or the nearest there are.

        Nearest is the same language without its region, then a text that holds for any language,
        then English, then the first; an empty text gives ``""``.
        """
        by_tag = {tag.lower(): words for tag, words in self.versions}
        tag = language.replace("_", "-").lower()
        for wanted in (tag, tag.split("-")[0], "", FALLBACK_LANGUAGE):
            if wanted in by_tag:
                return by_tag[wanted]
        return self.versions[0][1] if self.versions else ""

    def as_document(self) -> str | dict[str, str]:
        """The text as a tray file states it."""
        if len(self.versions) == 1 and self.versions[0][0] == "":
            return self.versions[0][1]
        return dict(self.versions)

    def __bool__(self) -> bool:
        return any(words for _, words in self.versions)

    def __str__(self) -> str:
        return self.in_language(FALLBACK_LANGUAGE)


NO_TEXT: Final = Text()
