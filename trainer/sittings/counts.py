"""Counted things in words: Qt's tool knows a plural only by a class's own `tr`."""

from __future__ import annotations

from PySide6.QtCore import QObject

__all__ = ["SittingCounts"]


class SittingCounts(QObject):
    """What is counted on the pages of the sittings."""

    def coupons(self, count: int) -> str:
        """Coupons of a part, or of a paper."""
        return self.tr("%n coupon(s)", "", count)

    def learners(self, count: int) -> str:
        """Learners of a class."""
        return self.tr("%n learner(s)", "", count)

    def faults(self, count: int) -> str:
        """Faults that are not said one by one."""
        return self.tr("and %n more", "", count)

    def wrongs(self, count: int) -> str:
        """What is wrong with a table of learners."""
        return self.tr("%n thing(s) to put right; nobody is added before that:", "", count)

    def calls(self, count: int) -> str:
        """Calls that somebody made."""
        return self.tr("%n call(s)", "", count)

    def answers(self, count: int) -> str:
        """Calls of sittings and practice, for a server."""
        return self.tr("%n answer(s)", "", count)

    def papers(self, count: int) -> str:
        """Papers that were handed in."""
        return self.tr("%n paper(s)", "", count)

    def marks(self, count: int) -> str:
        """Marks that were set by hand."""
        return self.tr("%n mark(s) set by hand", "", count)
