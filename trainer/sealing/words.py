"""What is wrong with a sealed file or a journal, in the language that is spoken."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP, translate
from trainer.sealing.journal import Hindrance, JournalError
from trainer.sealing.key import SealError, Trouble

__all__ = ["journal_words", "seal_words"]

_CONTEXT: Final = "Sealing"

_TROUBLES: Final[dict[Trouble, tuple[str, str]]] = {
    "passphrase": (
        QT_TRANSLATE_NOOP("Sealing", "This passphrase does not open it"),
        QT_TRANSLATE_NOOP(
            "Sealing",
            "Type it again. Capitals, spaces and accents count. The file itself is whole.",
        ),
    ),
    "changed": (
        QT_TRANSLATE_NOOP("Sealing", "It has been changed since it was sealed"),
        QT_TRANSLATE_NOOP(
            "Sealing",
            "A disk, a transfer or a person has changed it, so nothing of it is used. "
            "Take another copy.",
        ),
    ),
    "truncated": (
        QT_TRANSLATE_NOOP("Sealing", "Its end is missing"),
        QT_TRANSLATE_NOOP("Sealing", "It was not copied to the end. Copy it again."),
    ),
    "newer": (
        QT_TRANSLATE_NOOP("Sealing", "It is from a newer version of this program"),
        QT_TRANSLATE_NOOP(
            "Sealing", "It has version {version}, and this program knows {known}. Update it."
        ),
    ),
    "not sealed": (
        QT_TRANSLATE_NOOP("Sealing", "It is no sealed file of this program"),
        QT_TRANSLATE_NOOP("Sealing", "Sittings end with .sitting, results with .result."),
    ),
    "kind": (
        QT_TRANSLATE_NOOP("Sealing", "It is a {kind}, not a {asked}"),
        QT_TRANSLATE_NOOP("Sealing", "Choose another file."),
    ),
    "cost": (
        QT_TRANSLATE_NOOP("Sealing", "It asks for more work than any file of this program"),
        QT_TRANSLATE_NOOP("Sealing", "Somebody has made it to keep this machine busy."),
    ),
    "too large": (
        QT_TRANSLATE_NOOP("Sealing", "It is too large"),
        QT_TRANSLATE_NOOP("Sealing", "At most {mib} MiB can be read."),
    ),
    "memory": (
        QT_TRANSLATE_NOOP("Sealing", "There is too little memory to open it"),
        QT_TRANSLATE_NOOP("Sealing", "Opening takes {mib} MiB. Close other programs."),
    ),
}
_KINDS: Final = {
    "sitting": QT_TRANSLATE_NOOP("Sealing", "sitting"),
    "result": QT_TRANSLATE_NOOP("Sealing", "result"),
}
_HINDRANCES: Final[dict[Hindrance, tuple[str, str]]] = {
    "unwritable": (
        QT_TRANSLATE_NOOP("Sealing", "The sitting can't be written down"),
        QT_TRANSLATE_NOOP(
            "Sealing",
            "{path}: {reason}. What was written before is safe. "
            "Make room, and do it again; leave the program open.",
        ),
    ),
    "held": (
        QT_TRANSLATE_NOOP("Sealing", "Another window has this sitting"),
        QT_TRANSLATE_NOOP("Sealing", "Go on there, or close it first."),
    ),
    "gone": (
        QT_TRANSLATE_NOOP("Sealing", "The sitting's journal is not there any more"),
        QT_TRANSLATE_NOOP("Sealing", "{path}: it was removed, or another file lies in its place."),
    ),
}


def seal_words(error: SealError) -> tuple[str, str]:
    """Return what is wrong with a sealed file, and what to do.

    Examples
    --------
    >>> seal_words(SealError("kind", kind="result", asked="sitting"))
    ('It is a result, not a sitting', 'Choose another file.')
    """
    return _said(_TROUBLES[error.trouble], dict(error.params))


def journal_words(error: JournalError) -> tuple[str, str]:
    """Return what is wrong with a journal, and what to do.

    Examples
    --------
    >>> from pathlib import Path
    >>> journal_words(JournalError("held", Path("a"), ""))
    ('Another window has this sitting', 'Go on there, or close it first.')
    """
    return _said(_HINDRANCES[error.hindrance], {"path": str(error.path), "reason": error.reason})


def _said(words: tuple[str, str], params: dict[str, float | str]) -> tuple[str, str]:
    said = {
        key: translate(_CONTEXT, _KINDS[value]) if value in _KINDS else value
        for key, value in params.items()
        if isinstance(value, str)
    } | {key: f"{value:g}" for key, value in params.items() if not isinstance(value, str)}
    what, then = (translate(_CONTEXT, each).format(**said) for each in words)
    return what, then
