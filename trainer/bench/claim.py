"""On the job card: what the person says who has placed the leaf."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from exercises.coupon import Coupon
from trainer.bench.placed_words import claim_lines
from trainer.bench.worded import toned, wrapped

__all__ = ["ClaimView"]


class ClaimView(QWidget):
    """Their claim, in their words and in ours."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(3)
        box.addWidget(toned(self.tr("What is claimed"), "heading"))
        self.held = wrapped("")
        self.gauged = wrapped("", "quiet")
        box.addWidget(self.held)
        box.addWidget(self.gauged)
        self.hide()

    def show_coupon(self, coupon: Coupon) -> None:
        """Show what is claimed of the leaf on a coupon, if one is to be judged there."""
        lines = claim_lines(coupon) if coupon.task == "find the fault" else ()
        self.setVisible(bool(lines))
        if lines:
            self.held.setText(lines[0])
            self.gauged.setText(lines[1])
            self.setAccessibleName(" ".join(lines))
