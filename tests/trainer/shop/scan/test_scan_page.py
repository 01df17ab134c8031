"""From a scan or drawing, by pointer and by keys, from the file to the section."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from ezdxf.filemanagement import new
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import delete, isValid

from exercises.intake.traced import Traced
from geometry.bead import Bead
from geometry.curves import Vec
from geometry.joint import Joint
from geometry.section import Section
from tests.exercises.intake.scans import Kind, scan
from trainer.settings import Settings
from trainer.shop.scan.page import ScanPage
from trainer.shop.scan.state import Handle
from trainer.window import WindowFrame

WELD = Section.of(Joint(), Bead(8.0, 6.7, crown=0.9))


def table(head: str = "x [mm]\tz [mm]", scale: float = 1.0) -> str:
    points = scan(WELD, Kind(noise=0.01, frame="valley"), 3) * scale
    rows = [f"{x:.5f}\t{'NaN' if np.isnan(z) else f'{z:.5f}'}" for x, z in points]
    return "\n".join([head, *rows]) + "\n"


@pytest.fixture
def page(qtbot: QtBot) -> Iterator[ScanPage]:
    """The page, shown."""
    window = QMainWindow()
    qtbot.addWidget(window)
    window.resize(1280, 720)
    frame = WindowFrame(window, Settings(), QWidget())
    made: list[ScanPage] = []

    def make() -> QWidget:
        made.append(ScanPage(frame))
        return made[0]

    frame.add_screen("scan", "Scan", make)
    window.show()
    frame.show_screen("scan")
    qtbot.waitExposed(window)
    yield made[0]
    if isValid(made[0].controller):
        made[0].controller.wait()
    window.close()


@pytest.fixture
def opened(page: ScanPage, tmp_path: Path, qtbot: QtBot) -> ScanPage:
    """The page with a scan open."""
    file = tmp_path / "probe.tsv"
    file.write_text(table(), encoding="utf-8")
    page.open(file)
    settled(page, qtbot)
    return page


def settled(page: ScanPage, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not page.controller.busy)


def legs(page: ScanPage) -> tuple[float, float]:
    fitted = page.controller.found.fitted
    assert fitted is not None
    return fitted.toe_base.at, fitted.toe_upright.at


def on_screen(page: ScanPage, handle: Handle) -> QPoint:
    handles = page.view.plot.handles
    assert handles is not None
    return QPointF(*page.view.view.to_screen(handles[handle])).toPoint()


def drag(page: ScanPage, start: QPoint, way: QPoint) -> None:
    left = Qt.MouseButton.LeftButton
    QTest.mousePress(page.view, left, pos=start)
    for stop in (1, 2, 3):
        QTest.mouseMove(page.view, start + way * stop / 3)
    QTest.mouseRelease(page.view, left, pos=start + way)


def test_a_scan_becomes_a_section(opened: ScanPage, qtbot: QtBot) -> None:
    assert legs(opened) == pytest.approx((8.0, 6.7), abs=0.05)
    made: list[Traced] = []
    opened.made.connect(made.append)
    QTest.mouseClick(opened.panel.make, Qt.MouseButton.LeftButton)
    assert made[0].angle == pytest.approx(90.0, abs=0.1)
    assert made[0].uncertainty is not None
    assert made[0].source["file"] == "probe.tsv"
    assert made[0].source["kind"] == "scan"


def test_what_was_left_out_is_shown_and_said(opened: ScanPage) -> None:
    assert len(opened.view.plot.removed) > 0
    assert len(opened.view.plot.unseen) > 0
    assert all(opened.view.plot.legend)
    assert "farther off" in opened.panel.cleaned.text()
    assert "nothing was seen" in opened.panel.cleaned.text()


def test_a_toe_is_dragged_and_put_back(opened: ScanPage, qtbot: QtBot) -> None:
    before = legs(opened)
    ten = round(opened.view.view.scale)
    drag(opened, on_screen(opened, "toe base"), QPoint(-ten, 0))
    settled(opened, qtbot)
    assert legs(opened)[0] == pytest.approx(before[0] - 1.0, abs=0.06)
    assert legs(opened)[1] == before[1]
    QTest.keyClick(opened.view, Qt.Key.Key_Delete)
    settled(opened, qtbot)
    assert legs(opened) == before
    opened.do("undo")
    opened.do("undo")
    settled(opened, qtbot)
    assert legs(opened) == before
    assert not opened.controller.can_undo


def test_a_toe_is_put_by_single_clicks(opened: ScanPage, qtbot: QtBot) -> None:
    QTest.mouseClick(opened.panel.handles["toe upright"], Qt.MouseButton.LeftButton)
    ten = round(opened.view.view.scale)
    spot = on_screen(opened, "toe upright") + QPoint(0, ten)
    QTest.mouseClick(opened.view, Qt.MouseButton.LeftButton, pos=spot)
    settled(opened, qtbot)
    assert legs(opened)[1] == pytest.approx(5.7, abs=0.1)
    opened.panel.nudged.emit(0.0, 0.1)
    settled(opened, qtbot)
    assert legs(opened)[1] == pytest.approx(5.8, abs=0.1)


@pytest.mark.parametrize(
    ("held", "step"),
    [
        (Qt.KeyboardModifier.NoModifier, 0.1),
        (Qt.KeyboardModifier.ShiftModifier, 1.0),
        (Qt.KeyboardModifier.ControlModifier, 0.01),
    ],
)
def test_a_toe_is_moved_by_keys(
    opened: ScanPage, qtbot: QtBot, held: Qt.KeyboardModifier, step: float
) -> None:
    before = legs(opened)[0]
    opened.view.setFocus()
    QTest.keyClick(opened.view, Qt.Key.Key_Left, held)
    settled(opened, qtbot)
    assert legs(opened)[0] == pytest.approx(before - step, abs=1e-6)


@pytest.mark.parametrize("handle", ["root", "base near", "base far", "upright near", "upright far"])
def test_members_and_root_are_dragged(opened: ScanPage, qtbot: QtBot, handle: Handle) -> None:
    drag(opened, on_screen(opened, handle), QPoint(6, -6))
    settled(opened, qtbot)
    fitted = opened.controller.found.fitted
    assert fitted is not None
    assert fitted.angle == pytest.approx(90.0, abs=0.5)
    assert opened.controller.can_undo


def test_members_are_laid_by_hand_where_none_was_found(page: ScanPage, qtbot: QtBot) -> None:
    """Half a millimetre of the upright was seen: too little to be found, enough to be told."""
    points = scan(WELD, Kind(noise=0.002, frame="level", outliers=0.0, drop_outs=0.0), 3)
    low = np.nanmin(points, axis=0)
    seen = points[points[:, 1] < low[1] + 7.3]
    page.controller.open("x [mm];z [mm]\n" + "".join(f"{x:.4f};{z:.4f}\n" for x, z in seen))
    settled(page, qtbot)
    assert page.controller.found.fitted is None
    assert not page.panel.handles["root"].isEnabled()
    left, floor = (float(at) for at in low)
    for handle, at in (
        ("base near", (left + 10.0, floor)),
        ("base far", (left + 19.0, floor)),
        ("upright near", (left, floor + 6.8)),
        ("upright far", (left, floor + 7.3)),
    ):
        QTest.mouseClick(page.panel.handles[handle], Qt.MouseButton.LeftButton)  # type: ignore[index]
        spot = QPointF(*page.view.view.to_screen(page._to_plot(np.array([at]))[0])).toPoint()
        QTest.mouseClick(page.view, Qt.MouseButton.LeftButton, pos=spot)
        settled(page, qtbot)
    assert page.controller.found.fitted is not None
    assert legs(page)[0] == pytest.approx(8.0, abs=0.2)


def test_brackets_walk_the_handles(opened: ScanPage) -> None:
    opened.view.setFocus()
    QTest.keyClick(opened.view, Qt.Key.Key_BracketRight)
    assert opened.controller.state.chosen == "toe upright"
    QTest.keyClick(opened.view, Qt.Key.Key_BracketLeft)
    QTest.keyClick(opened.view, Qt.Key.Key_BracketLeft)
    assert opened.controller.state.chosen == "upright far"


def test_members_change_places(opened: ScanPage, qtbot: QtBot) -> None:
    before = legs(opened)
    QTest.keyClick(opened.view, Qt.Key.Key_X)
    settled(opened, qtbot)
    assert legs(opened) == pytest.approx(before[::-1])


def test_a_unit_that_is_not_stated_is_asked_for(page: ScanPage, qtbot: QtBot) -> None:
    QApplication.clipboard().setText(table("x\tz", 1.0 / 25.4))
    QTest.keyClick(page.view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    settled(page, qtbot)
    assert page.controller.needs_unit
    assert "unit" in page.panel.fault.text()
    assert " 0.0 mm" not in page.panel.fault.text(), "as micrometres it would be small, not nothing"
    assert not page.panel.make.isEnabled()
    unit = page.panel.unit
    unit.setCurrentIndex(unit.findData("in"))
    unit.activated.emit(unit.currentIndex())
    settled(page, qtbot)
    assert legs(page) == pytest.approx((8.0, 6.7), abs=0.05)


def test_other_columns_are_chosen(page: ScanPage, qtbot: QtBot) -> None:
    points = [row.split("\t") for row in table("").strip().split("\n")]
    rows = "\n".join(f"{x};{at * 0.3:.2f};{z}" for at, (x, z) in enumerate(points))
    page.controller.open(f"a [mm];b [mm];c [mm]\n{rows}\n")
    settled(page, qtbot)
    assert page.controller.found.fitted is None
    up = page.panel.up
    up.setCurrentIndex(2)
    up.activated.emit(2)
    settled(page, qtbot)
    assert legs(page) == pytest.approx((8.0, 6.7), abs=0.05)


def test_outlines_are_ticked(page: ScanPage, qtbot: QtBot, tmp_path: Path) -> None:
    document = new("R2010")
    document.header["$INSUNITS"] = 4
    model = document.modelspace()
    for start, end in (((-20, 0), (60, 0)), ((0, 0), (0, 50)), ((8, 0), (0, 6.7))):
        model.add_line(start, end)
    model.add_circle((30, 30), 3)
    document.saveas(tmp_path / "joint.dxf")
    page.open(tmp_path / "joint.dxf")
    settled(page, qtbot)
    assert page.controller.needs_outline
    assert len(page.view.plot.faint) == 4
    for box in page.panel.outline_boxes:
        if "18.8" not in box.text():
            box.click()
    settled(page, qtbot)
    assert legs(page) == pytest.approx((8.0, 6.7), abs=0.01)
    assert len(page.view.plot.faint) == 1


def test_tolerance_and_scatter_are_chosen(opened: ScanPage, qtbot: QtBot) -> None:
    def points() -> int:
        fitted = opened.controller.found.fitted
        assert fitted is not None
        return len(fitted.trace)

    before = points()
    opened.panel.tolerance.entered.emit(0.1)
    settled(opened, qtbot)
    assert points() < before
    opened.panel.tolerance.entered.emit(0.01)
    opened.panel.smooth.click()
    settled(opened, qtbot)
    assert points() > before


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        (
            "line.csv",
            b"x mm,z mm\n" + b"".join(b"%d,%d\n" % (i, i) for i in range(99)),
            "one member",
        ),
        ("few.csv", b"x mm,z mm\n1,2\n3,4\n", "Only 2 points"),
        ("text.csv", b"hello\n", "no line holds two numbers"),
        ("bomb.svg", b'<!DOCTYPE s [<!ENTITY a "b">]><svg>&a;</svg>', "entities"),
        ("cut.dxf", b"0\nSECTION\n2\nENT", "no line, arc"),
        ("picture.csv", b"\x89PNG\r\n\x1a\n", "a PNG picture"),
    ],
)
def test_a_bad_file_says_what_and_what_would_be_right(
    page: ScanPage, qtbot: QtBot, tmp_path: Path, name: str, data: bytes, said: str
) -> None:
    (tmp_path / name).write_bytes(data)
    page.open(tmp_path / name)
    settled(page, qtbot)
    assert said.lower() in page.panel.fault.text().lower()
    assert "Right would be" in page.panel.fault.text()
    assert not page.panel.make.isEnabled()


def test_a_bad_file_leaves_what_was_open(opened: ScanPage, qtbot: QtBot, tmp_path: Path) -> None:
    before = legs(opened)
    opened.open(tmp_path / "none.csv")
    settled(opened, qtbot)
    assert "no such file" in opened.panel.fault.text()
    assert legs(opened) == before


def test_nothing_to_paste_is_said(page: ScanPage) -> None:
    QApplication.clipboard().clear()
    page.do("paste")
    assert "copy" in page.saying.text()


def test_its_keys_go_before_the_menus(page: ScanPage) -> None:
    control = Qt.KeyboardModifier.ControlModifier
    for key, ours in ((Qt.Key.Key_O, True), (Qt.Key.Key_V, True), (Qt.Key.Key_Q, False)):
        asked = QKeyEvent(QEvent.Type.ShortcutOverride, key, control)
        asked.setAccepted(False)
        QApplication.sendEvent(page.view, asked)
        assert asked.isAccepted() is ours


def test_escape_leaves(page: ScanPage, qtbot: QtBot) -> None:
    with qtbot.waitSignal(page.left):
        QTest.keyClick(page.view, Qt.Key.Key_Escape)


def test_a_wheel_zooms_about_the_pointer(opened: ScanPage) -> None:
    at: Vec = (200.0, 150.0)
    before = opened.view.view.to_mm(at)
    opened.view.zoom(2.0, at)
    assert opened.view.view.to_mm(at) == pytest.approx(before)


def test_a_page_that_goes_while_it_reads_is_not_told(
    page: ScanPage, tmp_path: Path, qtbot: QtBot
) -> None:
    """As when another language is chosen meanwhile."""
    file = tmp_path / "probe.tsv"
    file.write_text(table(), encoding="utf-8")
    page.open(file)
    reading = page.controller._reading
    assert reading is not None
    with qtbot.captureExceptions() as errors, qtbot.waitSignal(reading.over):
        delete(page.controller)
    assert errors == []
