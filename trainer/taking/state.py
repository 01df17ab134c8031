"""Where somebody is on the page that a sitting is taken from: one frozen value. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from exercises.sitting.codes import is_code
from trainer.school.codes import mistyped, spelt, tidy_code
from trainer.taking.handing_in import HandedIn
from trainer.taking.opening import Opened

__all__ = ["CodeTrouble", "Step", "Taking", "code_trouble", "meant_code"]

Step = Literal["file", "passphrase", "code", "rules", "handing in", "handed in"]

CodeTrouble = Literal["empty", "no code", "mistyped", "not listed"]


@dataclass(frozen=True, slots=True)
class Taking:
    """Where it is.

    Parameters
    ----------
    step
        What is asked now.
    file
        The sitting that was chosen, or the journal of one that is to be gone on with.
    unfinished
        Whether it is a journal.
    opened
        The sitting, once its passphrase was given.
    code
        The learner's.
    busy
        Whether something goes on beside the window.
    handed
        What was handed in, once it was.
    """

    step: Step = "file"
    file: Path | None = None
    unfinished: bool = False
    opened: Opened | None = None
    code: str = ""
    busy: bool = False
    handed: HandedIn | None = None

    def chosen(self, file: Path, *, unfinished: bool = False) -> Taking:
        """A file was chosen: its passphrase is next.

        Examples
        --------
        >>> Taking().chosen(Path("friday.sitting")).step
        'passphrase'
        """
        return Taking("passphrase", file, unfinished)

    def unsealed(self, opened: Opened) -> Taking:
        """It is open: the learner's code is next."""
        return replace(self, step="code", opened=opened, busy=False)

    def named(self, code: str) -> Taking:
        """A code that may sit: the rules are next."""
        return replace(self, step="rules", code=code.strip())

    def back(self) -> Taking:
        """One step back; what was typed as a passphrase is typed again."""
        if self.step == "rules":
            return replace(self, step="code")
        return Taking()


def code_trouble(taking: Taking, code: str) -> CodeTrouble | None:
    """Return why a code can't sit the sitting that is open; None if it can."""
    said = code.strip()
    if not said:
        return "empty"
    if not is_code(said):
        return "no code"
    if taking.opened is None or not taking.opened.plan.admits(said):
        return "mistyped" if mistyped(said) else "not listed"
    if not taking.opened.plan.entrants and mistyped(said):
        # Anybody may sit it: nothing else would tell that it is nobody's.
        return "mistyped"
    return None


def meant_code(taking: Taking, code: str) -> str:
    """Return a code as the list spells it, typed small or without its hyphen; any other tidied."""
    said = code.strip()
    if taking.opened is None or not taking.opened.plan.entrants:
        return tidy_code(said)
    plan = taking.opened.plan
    entrant = plan.entrant(said) or plan.entrant(spelt(said))
    return entrant.code if entrant is not None else said
