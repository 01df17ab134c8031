"""Points of a traced face by hand: nudged, put in, taken out; the next one is worked with then."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject

from exercises.versions import Document
from geometry.curves import Vec
from trainer.shop.controller import ShopController
from trainer.shop.section_view import SectionView
from trainer.shop.tracing import trace_document, with_point, without_point

__all__ = ["Points"]


class Points(QObject):
    """What is done to the points of the open coupon's trace.

    Parameters
    ----------
    controller, view
        Hold the coupon, and know which point is worked with.
    edit
        Replaces the coupon, or says why it can't be so; whether it was.
    choose
        Has another handle worked with.
    """

    def __init__(
        self,
        controller: ShopController,
        view: SectionView,
        edit: Callable[[Document, str], bool],
        choose: Callable[[str], None],
    ) -> None:
        super().__init__(controller)
        self._controller, self._view = controller, view
        self._edit, self._choose = edit, choose

    @property
    def _trace(self) -> tuple[Vec, ...]:
        return self._controller.coupon.section.bead.trace or ()

    @property
    def chosen(self) -> int:
        """The point that is worked with; -1 where none is."""
        key = self._view.key
        return int(key[6:]) if key.startswith("trace.") else -1

    def nudge(self, dx: float, dy: float) -> None:
        """Move the chosen point, mm."""
        trace, index = self._trace, self.chosen
        if 0 <= index < len(trace):
            x, y = trace[index]
            self._controller.drag_point(index, (x + dx, y + dy), going_on=True)

    def put_in_chosen(self) -> None:
        """Put a point in half-way from the chosen one to the next."""
        trace, index = self._trace, self.chosen
        if 0 <= index < len(trace) - 1:
            (ax, ay), (bx, by) = trace[index], trace[index + 1]
            self.put_in(index, (ax + bx) / 2.0, (ay + by) / 2.0)

    def put_in(self, after: int, x: float, y: float) -> None:
        """Put a point in after another one, at a place (mm)."""
        coupon, trace = self._controller.coupon, self._trace
        if trace:
            document = trace_document(coupon, with_point(trace, after, (x, y)))
            if self._edit(document, "point in"):
                self._choose(f"trace.{after + 1}")

    def take_out_chosen(self) -> None:
        """Take the chosen point out."""
        self.take_out(self.chosen)

    def take_out(self, index: int) -> None:
        """Take a point out; the first and the last stay."""
        coupon, trace = self._controller.coupon, self._trace
        if not 0 < index < len(trace) - 1:
            return
        if self._edit(trace_document(coupon, without_point(trace, index)), "point out"):
            left = len(trace) - 3
            self._choose(f"trace.{min(index, left)}" if left > 0 else "leg_base")
