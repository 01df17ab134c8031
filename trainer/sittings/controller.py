"""The one place where a composed sitting is replaced: widgets call it, and repaint from it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from trainer import history as steps
from trainer.history import History
from trainer.sittings import draft as changes
from trainer.sittings.draft import Draft

__all__ = ["ComposeController"]


class ComposeController(QObject):
    """Holds the sitting that is composed, and what was before each gesture.

    It is held in memory alone: a draft on the disk would be a sitting without its seal.

    Signals
    -------
    changed()
        The state was replaced.
    """

    changed = Signal()

    def __init__(self, draft: Draft, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._history = History(draft)
        self._saved = draft

    @property
    def history(self) -> History[Draft]:
        """The value now, and the way here and back."""
        return self._history

    @property
    def draft(self) -> Draft:
        """The value now."""
        return self._history.now

    @property
    def dirty(self) -> bool:
        """Whether the sitting is another than the one last sealed."""
        now, saved = self.draft, self._saved
        return (now.base, now.parts) != (saved.base, saved.parts)

    def mark_saved(self, draft: Draft) -> None:
        """Take `draft` as the one that is sealed on the disk."""
        self._saved = draft
        self.changed.emit()

    def open(self, draft: Draft) -> None:
        """Begin with another sitting."""
        self._history, self._saved = History(draft), draft
        self.changed.emit()

    def go_on_from(self, other: ComposeController) -> None:
        """Take over what another one holds, which is given up."""
        self._history, self._saved = other._history, other._saved  # one of the same kind
        self.changed.emit()

    def do(self, change: Callable[[Draft], Draft], what: str, *, going_on: bool = False) -> None:
        """Replace the state by what `change` makes of it; changes that go on are one step."""
        before = self._history
        after = steps.done(before, change(before.now), what, going_on=going_on)
        if after is not before:
            self._history = after
            self.changed.emit()

    def show(self, at: int) -> None:
        """Open another part; this is no step that can be undone."""
        if at != self.draft.at:
            self._history = History(
                changes.shown(self.draft, at), self._history.past, self._history.future
            )
            self.changed.emit()

    def undo(self) -> None:
        """Go back one step."""
        self._step(steps.undone(self._history))

    def redo(self) -> None:
        """Do again what was undone last."""
        self._step(steps.redone(self._history))

    def _step(self, after: History[Draft]) -> None:
        if after is not self._history:
            self._history = after
            self.changed.emit()
