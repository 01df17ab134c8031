"""A sitting whose journal was damaged: what of it is whole, and going on from there.

Nobody but the proctor decides so: what was called after the damage is lost, and its time is not
charged, so whoever can reach the file could win time by it. The gap stands in the result, and the
damaged journal is kept.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QDateTime, QLocale
from PySide6.QtWidgets import QWidget

from exercises.sitting.progress import Event, folded
from trainer.bench.translation import translate
from trainer.sealing.clocks import Clock
from trainer.sealing.journal import Journal
from trainer.sealing.key import Key, SealError
from trainer.shop.question import Answer, Question
from trainer.taking.sitting import Sitting

__all__ = ["Damaged", "damage_of", "damage_question", "go_on", "take_up"]


@dataclass(frozen=True, slots=True)
class Damaged:
    """What is whole of a sitting that was damaged.

    Parameters
    ----------
    path, key
        Of its journal, and what opens it.
    answered, count
        How many coupons are answered in the part that is whole, of how many.
    until
        When that part ends.
    """

    path: Path
    key: Key
    answered: int
    count: int
    until: datetime


def take_up(path: Path, secret: Key | str, clock: Clock | None = None) -> Sitting | Damaged:
    """Go on with a sitting that was left; or return what is whole of it if it was damaged.

    Raises
    ------
    JournalError, SealError, ValueError
        As `Sitting.resume` does; `SealError` ``changed`` only if not even its beginning is whole.
    """
    try:
        return Sitting.resume(path, secret, clock)
    except SealError as error:
        if error.trouble != "changed":
            raise
        return damage_of(path, secret)


def damage_of(path: Path, secret: Key | str) -> Damaged:
    """Return what is whole of a sitting whose journal was damaged; nothing is written.

    Raises
    ------
    JournalError, SealError
        As `Journal.sound_part` does; ``changed`` too if no line is damaged, and what they hold is.
    """
    part = Journal.sound_part(path, secret)
    if not part.lost:
        raise SealError("changed")
    try:
        progress = folded(Event.of(each) for each in part.events)
    except (ValueError, IndexError) as error:
        raise SealError("changed") from error
    until = datetime.fromtimestamp(progress.last.wall / 1000.0, UTC)
    return Damaged(path, part.key, len(progress.answered), progress.items, until)


def go_on(damaged: Damaged, clock: Clock | None = None) -> Sitting:
    """Keep the damaged journal beside, and go on from its sound part.

    Raises
    ------
    JournalError, SealError, ValueError
        As `Journal.cut_to_sound_part` and `Sitting.resume` do.
    """
    Journal.cut_to_sound_part(damaged.path, damaged.key)
    return Sitting.resume(damaged.path, damaged.key, clock)


def damage_question(damaged: Damaged, go_on: Callable[[], object], parent: QWidget) -> Question:
    """Return the dialog that asks the proctor whether to go on from the sound part."""
    moment = QDateTime.fromSecsSinceEpoch(round(damaged.until.timestamp()))
    text = translate(
        "Taking",
        "A disk or a person has changed its journal. Until {when} it is whole; calls made after "
        "that are lost.\n\nThere, {answered} of {count} coupons are answered. The time after it is "
        "given again, and the gap stands in the result. The damaged journal is kept beside it, in "
        "{folder}.",
    ).format(
        when=QLocale().toString(moment, QLocale.FormatType.ShortFormat),
        answered=damaged.answered,
        count=damaged.count,
        folder=damaged.path.parent,
    )
    answers = (
        Answer(translate("Taking", "Go on from there"), go_on),
        Answer(translate("Taking", "Leave it as it is")),
    )
    return Question(translate("Taking", "This sitting is damaged"), text, answers, parent)
