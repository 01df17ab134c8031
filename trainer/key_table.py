"""A screen's keys: one table that the keys are read by, and that the sheet of keys is made of."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QKeyEvent

__all__ = ["KeyGroup", "KeyRow", "KeyTable"]

_HELD = (
    Qt.KeyboardModifier.ControlModifier
    | Qt.KeyboardModifier.AltModifier
    | Qt.KeyboardModifier.MetaModifier
)


@dataclass(frozen=True, slots=True)
class KeyGroup:
    """Keys that belong together, in the user's language: rows of keys and what they do."""

    title: str
    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class KeyRow:
    """One row of the sheet, and the keys that it stands for.

    Parameters
    ----------
    shown
        The keys as a person reads them; two spaces between those that do different things.
    what
        What they do.
    does
        Each key and the name of what it asks for; nothing where a row tells of the pointer.
    control
        Whether they are pressed with Ctrl.
    """

    shown: str
    what: str
    does: tuple[tuple[Qt.Key, str], ...] = ()
    control: bool = False


class KeyTable:
    """The keys of one screen.

    Parameters
    ----------
    context
        Where the words are translated.
    groups
        Title and rows, in the order of the sheet; English, marked for translation.

    Raises
    ------
    ValueError
        If two rows would have one key ask for different things.

    Examples
    --------
    >>> row = KeyRow("F", "turn over", ((Qt.Key.Key_F, "over"),))
    >>> table = KeyTable("Keys", (("Leaf", (row,)),))
    >>> table.names, table.groups()[0].rows
    (('over',), (('F', 'turn over'),))
    """

    def __init__(self, context: str, groups: Sequence[tuple[str, Sequence[KeyRow]]]) -> None:
        self._context = context
        self.sheet = tuple((title, tuple(rows)) for title, rows in groups)
        self._names: dict[tuple[Qt.Key, bool], str] = {}
        for row in self.rows:
            for key, name in row.does:
                if self._names.setdefault((key, row.control), name) != name:
                    raise ValueError(f"{key} is both {self._names[key, row.control]} and {name}")

    @property
    def rows(self) -> tuple[KeyRow, ...]:
        """All rows, in order."""
        return tuple(row for _, rows in self.sheet for row in rows)

    @property
    def names(self) -> tuple[str, ...]:
        """All that can be asked for by a key, each once."""
        return tuple(dict.fromkeys(self._names.values()))

    def name_of(self, event: QKeyEvent) -> str | None:
        """Return what a key asks for, or None. Keys with Alt or Meta belong to the menus."""
        held = event.modifiers() & _HELD
        if held not in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier):
            return None
        return self._names.get((Qt.Key(event.key()), bool(held)))

    def groups(self, refuses: Callable[[str], bool] = lambda _: False) -> tuple[KeyGroup, ...]:
        """The sheet, in the user's language, without the rows all of whose keys are refused."""

        def told(words: str) -> str:
            return QCoreApplication.translate(self._context, words)

        def there(row: KeyRow) -> bool:
            return not row.does or not all(refuses(name) for _, name in row.does)

        return tuple(
            KeyGroup(
                told(title), tuple((told(row.shown), told(row.what)) for row in rows if there(row))
            )
            for title, rows in self.sheet
        )
