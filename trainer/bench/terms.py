"""On what terms a coupon lies on the bench: which helps there are, and who takes the call."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Protocol

from trainer.settings import Settings

__all__ = ["FREE", "Host", "Terms"]


@dataclass(frozen=True, slots=True)
class Terms:
    """Which helps there are.

    Parameters
    ----------
    loupe, press_home
        The loupe on the tip; pressing the leaf home in one go.
    unit_switch
        Whether one may choose what lengths are shown in; else it is as the drawing has them.
    notes
        Whether bench notes lie there.
    reference
        Whether one may look things up.

    Examples
    --------
    >>> Terms(press_home=False).refuses("press home"), FREE.refuses("press home")
    (True, False)
    """

    loupe: bool = True
    press_home: bool = True
    unit_switch: bool = True
    notes: bool = True
    reference: bool = True

    def refuses(self, name: str) -> bool:
        """Whether what a key, a button or a screen reader asks for by `name` is not to be had."""
        allowed = {"loupe": self.loupe, "press home": self.press_home, "note": self.notes}
        return not allowed.get(name, True)

    def settings(self, settings: Settings) -> Settings:
        """Return preferences as far as they hold on these terms."""
        return replace(
            settings,
            loupe=settings.loupe and self.loupe,
            unit=settings.unit if self.unit_switch else None,
        )


FREE: Final = Terms()
"""Nothing is held back."""


class Host(Protocol):
    """Whoever lays coupons out and takes the calls in unjudged, so that each can be changed."""

    @property
    def terms(self) -> Terms:
        """On what terms they lie there."""

    @property
    def record_word(self) -> str:
        """What the button says that elsewhere puts the call on record."""

    def record(self) -> None:
        """Take in what has been stated, and go on."""

    def go_to(self, index: int) -> None:
        """Lay the coupon at that place out."""
