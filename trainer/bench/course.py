"""Which coupon of which tray is on the bench."""

from __future__ import annotations

from dataclasses import dataclass, replace

from exercises.tray import Tray

__all__ = ["Course"]


@dataclass(frozen=True, slots=True)
class Course:
    """A tray, and the place in it."""

    tray: Tray
    index: int = 0

    @property
    def last(self) -> bool:
        """Whether it is the tray's last coupon."""
        return self.index == len(self.tray.coupons) - 1

    def moved(self, index: int) -> Course:
        """The same tray at another coupon; past the last comes the first."""
        return replace(self, index=index % len(self.tray.coupons))
