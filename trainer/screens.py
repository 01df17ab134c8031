"""The screens beside the bench, each loaded with its libraries when it is first shown."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import QCoreApplication

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QWidget
    from sqlalchemy.engine import Engine

    from trainer.logbook.keeping import Keeping
    from trainer.records import Records
    from trainer.sittings.station import Station
    from trainer.window import WindowFrame

__all__ = ["Books", "load_logbook", "load_station", "screens"]


class Books(Protocol):
    """What is kept for good: asked for when a screen that shows it is made, and waited for."""

    @property
    def keeping(self) -> Keeping:
        """What keeps the calls."""

    @property
    def station(self) -> Station:
        """What pushes them to the school's server."""


def load_logbook(path: Path, aside: Records, learner: str | None, first: str) -> Keeping:
    """Open the logbook with all that it is made of, and make the day's backup.

    Parameters
    ----------
    path
        Of the logbook.
    aside
        Takes calls while it can't.
    learner
        Id of whose calls come next; the first by name if nobody has it.
    first
        What the first learner is called where there is none yet: in words of the window's, since
        this is run in a thread of its own, where nothing may be translated.
    """
    from trainer.logbook.keeping import Keeping

    def migrate(engine: Engine) -> None:
        from trainer.logbook.migrating import bring_up_to_date

        bring_up_to_date(engine)

    keeping = Keeping(path, aside, migrate, first)
    keeping.open(learner)
    keeping.back_up()
    return keeping


def load_station(logbook: Path) -> Station:
    """Return what pushes a logbook to the school's server; it pushes to none yet."""
    from trainer.sittings.station import Station

    return Station(logbook)


def screens(books: Books) -> list[tuple[str, str, Callable[[WindowFrame], QWidget]]]:
    """Return the screens beside the bench: key, title, and what makes one when it is first shown.

    Another one is another line here, and `python -m trainer.bar_recorder` for the first paint.

    Parameters
    ----------
    books
        What is kept for good.
    """

    def corners(frame: WindowFrame) -> QWidget:
        from trainer.corners.screen import CornersScreen

        return CornersScreen(frame)

    def reference(frame: WindowFrame) -> QWidget:
        from trainer.reference.screen import ReferenceScreen

        return ReferenceScreen(frame)

    def shop(frame: WindowFrame) -> QWidget:
        from trainer.shop.screen import ShopScreen

        def photo() -> QWidget:
            from trainer.shop.photo.page import PhotoPage

            return PhotoPage(frame)

        def scan() -> QWidget:
            from trainer.shop.scan.page import ScanPage

            return ScanPage(frame)

        return ShopScreen(frame, {"photo": photo, "scan": scan})

    def logbook(frame: WindowFrame) -> QWidget:
        from trainer.logbook.screen import LogbookScreen

        kept = books.keeping
        screen = LogbookScreen(frame, kept)
        screen.dealing.changed.connect(lambda: _remember_learner(frame, kept))
        return screen

    return [
        ("corners", QCoreApplication.translate("TopBar", "Four corners"), corners),
        ("reference", QCoreApplication.translate("TopBar", "Reference"), reference),
        ("shop", QCoreApplication.translate("TopBar", "Coupon shop"), shop),
        ("logbook", QCoreApplication.translate("TopBar", "Logbook"), logbook),
        ("sittings", QCoreApplication.translate("TopBar", "Sittings"), partial(_sittings, books)),
    ]


def _sittings(books: Books, frame: WindowFrame) -> QWidget:
    """The screen of sittings, each of its pages loaded when it is first shown."""
    from trainer.sittings.screen import SittingsScreen

    def compose() -> QWidget:
        from trainer.sittings.compose_page import ComposePage
        from trainer.sittings.roll import candidates

        return ComposePage(frame, lambda: candidates(books.keeping))

    def class_page() -> QWidget:
        from trainer.sittings.class_page import ClassPage

        return ClassPage(frame, books.keeping, books.station)

    def results() -> QWidget:
        from trainer.results.page import ResultsPage

        return ResultsPage(frame, books.keeping, lambda: books.station.address)

    return SittingsScreen(
        frame,
        {
            "compose": compose,
            "take": lambda: _take(frame, books),
            "class": class_page,
            "results": results,
        },
    )


def _take(frame: WindowFrame, books: Books) -> QWidget:
    """The page that a sitting is taken from; it borrows the bench of this window."""
    from trainer.bench.screen import BenchScreen
    from trainer.places import places
    from trainer.taking.page import TakingPage

    def bench() -> BenchScreen:
        found = frame.findChild(BenchScreen)
        assert found is not None
        return found

    page = TakingPage(frame, bench, lambda: books.keeping, places())
    # A school's server hears of it at once, not at the next look.
    page.handed_in.connect(books.station.nudge)
    return page


def _remember_learner(frame: WindowFrame, keeping: Keeping) -> None:
    """Whoever is at the bench now is there at the next start."""
    learner = keeping.learner
    if learner is not None and frame.settings.learner != learner.id:
        frame.change_settings(replace(frame.settings, learner=learner.id))
