"""A state that is replaced whole, with undo: what the pages that take sections in stand on."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Generic, TypeVar

from PySide6.QtCore import QObject, Signal

from trainer.history import History, done, ended, redone, undone

__all__ = ["Undoable"]

State = TypeVar("State")


class Undoable(QObject, Generic[State]):
    """Holds a frozen state; each gesture is one step back.

    Parameters
    ----------
    state
        To begin with.
    counted
        What of a state undo brings back; a change of nothing else is no step.

    Signals
    -------
    changed()
        Something is to be shown anew.
    """

    changed = Signal()

    def __init__(
        self, state: State, counted: Callable[[State], object], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._history = History(state)
        self._counted = counted

    @property
    def state(self) -> State:
        """The state now."""
        return self._history.now

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to take back."""
        return self._history.past is not None

    @property
    def can_redo(self) -> bool:
        """Whether a step was taken back."""
        return self._history.future is not None

    def begin_anew(self, state: State) -> None:
        """Begin with another state; nothing leads back from it."""
        self._history = History(state)

    def do(self, change: Callable[[State], State], gesture: str = "") -> None:
        """Put `change` on the state: a step of its own, or part of a gesture that goes on."""
        before, after = self.state, change(self.state)
        if after == before:
            return
        if self._counted(after) != self._counted(before):
            self._history = done(self._history, after, gesture, going_on=bool(gesture))
        else:
            self._history = replace(ended(self._history), now=after)
        self.follow(before)

    def end_gesture(self) -> None:
        """Let the next change be a step of its own."""
        self._history = ended(self._history)

    def undo(self) -> None:
        """Take the last step back."""
        self._go(undone(self._history))

    def redo(self) -> None:
        """Do the step again that was taken back."""
        self._go(redone(self._history))

    def _go(self, history: History[State]) -> None:
        before, self._history = self.state, history
        if self.state is not before:
            self.follow(before)

    def follow(self, before: State) -> None:
        """Work out what follows from the state, which was `before`, and have it shown."""
        self.changed.emit()
