"""What the next start says of the last one, and of settings that were no use: quietly."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication

from exercises.file_faults import FileError
from trainer.about import show_folder
from trainer.band import Saying
from trainer.crash import Aftermath, aftermath
from trainer.fault_words import fault_rows
from trainer.places import Places
from trainer.screen_kinds import ShowsPages, opened_by_its_screen
from trainer.settings import Kept
from trainer.shop.locking import is_free
from trainer.window import WindowFrame

__all__ = ["damaged_settings", "ended_badly", "say_broken", "say_unfinished", "say_unsaved"]


def say_what_was(frame: WindowFrame, kept: Kept, places: Places) -> None:
    """Say what is to be said of the settings, of how the last program ended, of what it left."""
    if kept.damaged is not None:
        frame.band.say(damaged_settings(kept, places.settings))
    ended = aftermath(places.running, places.reports)
    if ended is not None:
        frame.band.say(ended_badly(ended))
    say_unsaved(frame, places.unsaved)
    say_unfinished(frame, places.sittings)


def say_broken(frame: WindowFrame, error: FileError, path: Path | None) -> None:
    """Say why a file that was named is no tray, unless a screen of its own opens it."""
    if not opened_by_its_screen(frame, path):
        frame.show_faults(*fault_rows(error))


def ended_badly(ended: Aftermath) -> Saying:
    """Return what to say of a program that didn't close as it should."""
    report = ended.report
    if not ended.crashed:
        return Saying(
            QCoreApplication.translate(
                "Afterwards",
                "Last time this program ended without closing: someone or something ended it, or "
                "the power went. Calls on record are kept.",
            )
        )
    if report is None:
        return Saying(
            QCoreApplication.translate(
                "Afterwards",
                "Last time this program crashed, and its report could not be written. Calls on "
                "record are kept.",
            )
        )
    return Saying(
        QCoreApplication.translate(
            "Afterwards",
            "Last time this program crashed. Calls on record are kept. A report that helps to mend "
            "it lies at {file}",
        ).format(file=report),
        ((_show_words(), lambda: show_folder(report.parent)),),
    )


def damaged_settings(kept: Kept, file: Path) -> Saying:
    """Return what to say of a file of settings that was no use."""
    aside = kept.aside
    if aside is None:
        return Saying(
            QCoreApplication.translate(
                "Afterwards",
                "Your settings could not be read ({reason}), so the usual ones hold. Their file is "
                "{file}",
            ).format(reason=kept.damaged, file=file)
        )
    return Saying(
        QCoreApplication.translate(
            "Afterwards",
            "Your settings were damaged, so the usual ones hold. What the file held is kept as "
            "{file}",
        ).format(file=aside),
        ((_show_words(), lambda: show_folder(aside.parent)),),
    )


def say_unsaved(frame: WindowFrame, folder: Path) -> None:
    """Say that coupons wait which an earlier start has left unsaved, if some do."""
    if any(is_free(path) for path in folder.glob("*.shop-journal")):
        words = QCoreApplication.translate(
            "Afterwards", "Coupons that an earlier start left unsaved wait in the coupon shop."
        )
        show = QCoreApplication.translate("Afterwards", "Go there")
        saying = Saying(words, ((show, lambda: frame.show_screen("shop")),))
        frame.band.say(saying)
        # There it is offered anew, however one came there.
        frame.screen_shown.connect(lambda key: frame.band.end(saying) if key == "shop" else None)


def say_unfinished(frame: WindowFrame, folder: Path) -> None:
    """Say that a sitting waits which was begun here and not handed in, if one does."""
    if not any(is_free(path) for path in folder.glob("*.sitting-journal")):
        return
    words = QCoreApplication.translate(
        "Afterwards",
        "A sitting was begun here and is not handed in. All that was called is kept; the proctor's "
        "passphrase opens it again.",
    )

    def go_there() -> None:
        frame.show_screen("sittings")
        screen: object = frame.make_screen("sittings")
        if isinstance(screen, ShowsPages):
            screen.show_page("take")

    show = QCoreApplication.translate("Afterwards", "Go there")
    saying = Saying(words, ((show, go_there),))
    frame.band.say(saying, first=True)
    frame.bench_lent.connect(lambda: frame.band.end(saying))


def _show_words() -> str:
    return QCoreApplication.translate("Afterwards", "Show folder")
