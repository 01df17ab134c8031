"""What a composed sitting comes to, worked out beside the window: its faults, and a paper of it.

Dice are thrown for it, which can take seconds; what is asked for meanwhile replaces what waits.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QObject, QTimer, Signal

from exercises.coupon import Coupon
from exercises.sitting.paper import paper_of
from exercises.sitting.plan import Plan
from geometry.faults import Fault
from trainer.loading import Loading
from trainer.sittings.truths import Outline, Truths, outline_of

__all__ = ["Checked", "Checking"]


@dataclass(frozen=True)
class Checked:
    """What a plan comes to.

    Parameters
    ----------
    plan, code
        Of what, for whom; an empty code is somebody who has none yet.
    faults
        All that keeps it from being sat.
    paper, outline
        What that learner is asked, and how many of which answers it has; None where it can't be.
    """

    plan: Plan
    code: str
    faults: tuple[Fault, ...]
    paper: tuple[Coupon, ...] | None
    outline: Outline | None


class Checking(QObject):
    """Works out what a plan comes to.

    Signals
    -------
    checked()
        `found` is of what was asked for last.
    """

    checked = Signal()

    def __init__(self, truths: Truths, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.found: Checked | None = None
        self._truths = truths
        self._asked: tuple[Plan, str] | None = None
        self._work: Loading[Checked] | None = None

    @property
    def busy(self) -> bool:
        """Whether what was asked for last isn't there yet."""
        return self._asked is not None and not self._is_there

    @property
    def _is_there(self) -> bool:
        found = self.found
        return found is not None and self._asked == (found.plan, found.code)

    def ask(self, plan: Plan, code: str) -> None:
        """Ask what a plan comes to, for the learner with that code."""
        if self._asked == (plan, code):
            return
        self._asked = plan, code
        if self._work is None and not self._is_there:
            # All that is changed by one gesture is asked for together.
            QTimer.singleShot(0, self, self._begin)

    def _begin(self) -> None:
        if self._asked is None or self._work is not None or self._is_there:
            return
        self._work = Loading(partial(_found, *self._asked, self._truths))
        self._work.over.connect(self._end)
        self._work.start()

    def _end(self) -> None:
        work, self._work = self._work, None
        if work is None:
            return
        self.found = work.result
        if self._is_there:
            self.checked.emit()
        else:
            self._begin()

    def stop(self) -> None:
        """Wait for what goes on, and begin nothing more."""
        self._asked = None
        if self._work is not None:
            self._work.wait()


def _found(plan: Plan, code: str, truths: Truths) -> Checked:
    faults = tuple(plan.faults())
    # A paper can be looked at while the sitting still lacks a title or a time.
    if any(fault.at.startswith("/parts") for fault in faults):
        return Checked(plan, code, faults, None, None)
    paper = paper_of(plan, code)
    return Checked(plan, code, faults, paper, outline_of(paper, truths))
