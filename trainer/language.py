"""The language that the program speaks: English from the sources, others from their files.

Which one is spoken is Qt's to know: the translators that are installed, and its default locale.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QObject, QTranslator

from trainer.assets import asset

__all__ = [
    "LANGUAGES",
    "PSEUDO",
    "FileTranslator",
    "PseudoTranslator",
    "Speech",
    "language_for",
    "pseudo",
    "spoken",
]

LANGUAGES: Final = {"en": "English", "es": "Espa\u00f1ol"}
"""By tag, each as its speakers call it."""

PSEUDO: Final = "qps"
"""Accented English, a third longer and in brackets: shows what was never made translatable. It is
spoken if the file of settings says so; no menu offers it."""

_LOCALES: Final = {"en": "en_GB", PSEUDO: "en_GB", "es": "es_ES"}
"""Whose figures go with a language. One for all of Spanish, because its texts hold figures too."""

_KEPT: Final = re.compile(r"\{[^}]*\}|%n|&&|<[^>]+>|\*\.?[\w.]+|;;")
_PLAIN: Final = "aeiouycnszAEIOUYCNSZ"
_ACCENTED: Final = (
    "\u00e1\u00e9\u00ed\u00f3\u00fa\u00fd\u00e7\u00f1\u0161\u017e"
    "\u00c1\u00c9\u00cd\u00d3\u00da\u00dd\u00c7\u00d1\u0160\u017d"
)
_ACCENTS: Final = str.maketrans(_PLAIN, _ACCENTED)
_LONGER: Final = 0.35


def language_for(chosen: str | None, system: str) -> str:
    """Return the tag of the language to speak.

    Parameters
    ----------
    chosen
        From the settings; None is the system's, if we speak it.
    system
        Name of the system's locale.

    Examples
    --------
    >>> language_for(None, "es_MX"), language_for("en", "es_MX"), language_for(None, "de_DE")
    ('es', 'en', 'en')
    """
    if chosen is not None and chosen in _LOCALES:
        return chosen
    near = system.replace("-", "_").split("_", maxsplit=1)[0].lower()
    return near if near in LANGUAGES else "en"


def spoken() -> str:
    """Return the tag of the language that is spoken now, for texts that a tray carries."""
    return QLocale().name()


def pseudo(text: str) -> str:
    """Return `text` accented, a third longer and in brackets; what is filled in stays as it is.

    Examples
    --------
    >>> pseudo("Hint ({left} left)") == "\u00abH\u00ed\u00f1t ({left} l\u00e9ft)~~~~\u00bb"
    True
    """
    parts: list[str] = []
    end = 0
    for kept in _KEPT.finditer(text):
        parts += [text[end : kept.start()].translate(_ACCENTS), kept.group()]
        end = kept.end()
    parts.append(text[end:].translate(_ACCENTS))
    letters = sum(len(part) for part in parts[::2])
    return f"\u00ab{''.join(parts)}{'~' * max(1, round(letters * _LONGER))}\u00bb"


class FileTranslator(QTranslator):
    """Says what a file says, or nothing if it can't be read or is damaged.

    Qt by itself would map the file into memory, and the program end, with a segmentation fault or a
    bus error, at the next word after somebody wrote the file anew. So it is read, and kept here.
    """

    def __init__(self, file: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        try:
            self._words = file.read_bytes()  # Qt makes no copy
        except OSError:
            return
        self.load(self._words)


class PseudoTranslator(QTranslator):
    """Brackets what a translation reaches: what one of `real` knows, and nothing else."""

    def __init__(self, real: list[QTranslator], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._real = real

    def isEmpty(self) -> bool:
        """It isn't."""
        return False

    def translate(
        self,
        context: str,
        sourceText: str,  # noqa: N803  # Qt's name
        disambiguation: str | None = None,
        n: int = -1,
    ) -> str | None:
        """Return the bracketed text, or None for what no translation reaches."""
        for real in self._real:
            if real.translate(context, sourceText, disambiguation or "", n):
                return pseudo(sourceText).replace("%n", str(n))
        return None


class Speech(QObject):
    """Has the application speak a language; widgets that are there already must be made anew.

    Parameters
    ----------
    application
        Whose translators these are.
    """

    def __init__(self, application: QCoreApplication) -> None:
        super().__init__(application)
        self._application = application
        self._translators: list[QTranslator] = []
        self.language = "en"

    def speak(self, chosen: str | None) -> bool:
        """Speak what was chosen, or the system's language; return whether that is a change.

        A language whose file is damaged is spoken in English, with its own figures.
        """
        language = language_for(chosen, QLocale.system().name())
        changes, self.language = language != self.language, language
        QLocale.setDefault(QLocale(_LOCALES[language]))
        for translator in self._translators:
            self._application.removeTranslator(translator)
            translator.deleteLater()
        self._translators = self._made(language)
        for translator in self._translators:
            self._application.installTranslator(translator)
        return changes

    def _made(self, language: str) -> list[QTranslator]:
        """Return the translators of a language; the last is asked first."""
        if language == "en":
            # All else stands in the sources; this knows one from several.
            return [FileTranslator(asset("translations") / "en.qm", self)]
        if language == PSEUDO:
            return [PseudoTranslator(self._made("es"), self)]
        theirs = Path(QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath))
        return [
            FileTranslator(theirs / f"qtbase_{language}.qm", self),
            FileTranslator(asset("translations") / f"{language}.qm", self),
        ]
