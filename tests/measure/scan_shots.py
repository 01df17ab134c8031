"""Pictures of the page that takes a section from a scan or a drawing."""

from __future__ import annotations

import numpy as np
from PySide6.QtWidgets import QApplication

from geometry.bead import Bead, Spatter, Undercut
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.intake.scans import Kind, scan
from tests.measure.stage import Stage
from trainer.shop.scan.page import ScanPage
from trainer.shop.screen import ShopScreen

__all__ = ["scan_asks", "scan_found", "scan_refused"]

WELD = Section.of(
    Joint(),
    Bead(8.0, 6.7, crown=0.9, undercut_base=Undercut(0.5, 1.5)),
    (Spatter("upright", 11.0, 0.8),),
)


def page_of(on: Stage) -> ScanPage:
    """The page, shown in the shop."""
    on.frame.show_screen("shop")
    shop = on.frame.make_screen("shop")
    assert isinstance(shop, ShopScreen)
    shop.show_page("scan")
    on.settle()
    page = shop.rooms.currentWidget()
    assert isinstance(page, ScanPage)
    return page


def pasted(on: Stage, head: str) -> ScanPage:
    """The page with a scan whose columns are headed so."""
    points = scan(WELD, Kind(noise=0.03, outliers=0.02), 3)
    rows = (f"{x:.4f};{'NaN' if np.isnan(z) else f'{z:.4f}'}" for x, z in points)
    page = page_of(on)
    page.controller.open("\n".join([head, *rows, "the end; here"]) + "\n")
    while page.controller.busy:
        QApplication.processEvents()
    return page


def scan_found(on: Stage) -> None:
    """A section found in a scan, with points left out."""
    pasted(on, "x [mm];z [mm]")


def scan_asks(on: Stage) -> None:
    """The unit is asked for."""
    pasted(on, "x;z")


def scan_refused(on: Stage) -> None:
    """A scan of one line only."""
    page = page_of(on)
    page.controller.open("x [mm]\tz [mm]\n" + "".join(f"{at}\t{at / 2}\n" for at in range(90)))
    while page.controller.busy:
        QApplication.processEvents()
