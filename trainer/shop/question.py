"""A dialog that asks what to do: every answer is a button that says what it does."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import QDialogButtonBox, QPushButton, QWidget

from trainer.notices import Notice

__all__ = ["Answer", "Question"]


@dataclass(frozen=True)
class Answer:
    """What can be answered: its words, and what is done then."""

    words: str
    do: Callable[[], object] | None = None


class Question(Notice):
    """Asks; Escape gives the last answer, which changes nothing.

    Parameters
    ----------
    title, text
        What is asked.
    answers
        The first is the usual one.
    """

    def __init__(
        self, title: str, text: str, answers: Sequence[Answer], parent: QWidget | None = None
    ) -> None:
        super().__init__(title, text, parent)
        self.buttons.clear()
        self.answers: list[QPushButton] = []
        for at, answer in enumerate(answers):
            button = QPushButton(answer.words)
            button.setProperty("kind", "primary" if at == 0 else "tall")
            button.setDefault(at == 0)
            self.buttons.addButton(button, QDialogButtonBox.ButtonRole.ActionRole)
            button.clicked.connect(lambda _=False, do=answer.do: self._answer(do))
            self.answers.append(button)
        self.finish()
        self.answers[0].setFocus()

    def _answer(self, do: Callable[[], object] | None) -> None:
        self.accept()
        if do is not None:
            do()
