"""The window: first paint, opening trays, broken files, themes, the first start, the unforeseen."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDragEnterEvent, QDropEvent, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from exercises.tray import load_tray
from trainer import late
from trainer.arrangement import rooms_in
from trainer.assets import asset
from trainer.bench.first_picture import WINDOW, first_view, record
from trainer.canvas.drawing import drawing_of
from trainer.first_paint import FirstPaint, MainWindow
from trainer.first_start import FirstStartCard
from trainer.late import shipped_tray
from trainer.look.tokens import DARK, LIGHT, Theme
from trainer.notices import FaultsDialog, UnforeseenDialog
from trainer.window import WindowFrame

GOOD = {
    "format": "toe-and-throat/tray",
    "version": 1,
    "title": "Brackets",
    "coupons": [
        {"id": "b-1", "title": "One", "bead": {"leg_base": 8, "leg_upright": 8},
         "callout": {"size": 8}},
        {"id": "b-2", "title": "Two", "bead": {"leg_base": 6, "leg_upright": 8},
         "callout": {"size": "5/16 in"}},
    ],
}  # fmt: skip


class Opened:
    """The program as `open_window` opens it, but within the test's own loop."""

    def __init__(self, qtbot: QtBot, tray: Path | None = None) -> None:
        self.app = QApplication.instance()
        assert isinstance(self.app, QApplication)
        self.opening = late._Opening(self.app, tray)
        self.window = self.opening.window
        # Its logbook is closed before the next one's is opened.
        qtbot.addWidget(self.window, before_close_func=lambda _: self.opening.finish())
        self.opening.show()
        qtbot.waitUntil(lambda: self.opening.settled, timeout=20000)

    @property
    def frame(self) -> WindowFrame:
        assert self.opening.frame is not None
        return self.opening.frame

    @property
    def coupon(self) -> str:
        assert self.opening.screen is not None
        return self.opening.screen.controller.state.coupon.id


@pytest.fixture(autouse=True)
def hook() -> Iterator[None]:
    before = sys.excepthook, threading.excepthook
    yield
    sys.excepthook, threading.excepthook = before


@pytest.fixture
def settled(home: Path) -> Path:
    """A home where the first card has been read."""
    file = home / "config" / "toe-and-throat" / "settings.json"
    file.parent.mkdir(parents=True)
    file.write_text('{"first_start_seen": true}', encoding="utf-8")
    return file


@pytest.fixture
def good(tmp_path: Path) -> Path:
    file = tmp_path / "good.tray.json"
    file.write_text(json.dumps(GOOD), encoding="utf-8")
    return file


@pytest.fixture
def broken(tmp_path: Path) -> Path:
    tray = json.loads(json.dumps(GOOD))
    tray["coupons"][0]["bead"]["leg_base"] = -8
    tray["coupons"][1]["colour"] = "red"
    file = tmp_path / "broken.tray.json"
    file.write_text(json.dumps(tray), encoding="utf-8")
    return file


@pytest.mark.usefixtures("settled")
def test_opens_on_the_shipped_tray(qtbot: QtBot) -> None:
    opened = Opened(qtbot)
    assert opened.coupon == "hf-01"
    assert not opened.frame.dialogs
    chooser = opened.frame.bar.chooser
    assert chooser.count() == len(load_tray(shipped_tray()).coupons)


@pytest.mark.usefixtures("settled")
def test_opens_on_a_tray_that_is_named(qtbot: QtBot, good: Path) -> None:
    opened = Opened(qtbot, good)
    assert opened.coupon == "b-1"
    assert opened.frame.bar.chooser.count() == 2


@pytest.mark.usefixtures("settled")
def test_a_broken_tray_that_is_named_says_why_beside_the_shipped_one(
    qtbot: QtBot, broken: Path
) -> None:
    opened = Opened(qtbot, broken)
    assert opened.coupon == "hf-01"
    assert isinstance(opened.frame.dialogs[0], FaultsDialog)
    opened.frame.dialogs[0].reject()


@pytest.mark.usefixtures("settled")
def test_a_broken_tray_leaves_the_open_one_as_it_was(
    qtbot: QtBot, good: Path, broken: Path
) -> None:
    opened = Opened(qtbot, good)
    assert opened.opening.screen is not None
    opened.opening.screen.go_to(1)
    before = opened.opening.screen.controller.state
    opened.frame.tray_asked.emit(broken)
    assert opened.opening.screen.controller.state is before
    dialog = opened.frame.dialogs[0]
    shown = "\n".join(label.text() for label in dialog.findChildren(QLabel))
    assert str(broken) in shown
    assert "/coupons/0/bead/leg_base" in shown
    assert "/coupons/1/colour" in shown
    dialog.reject()


# Qt 6.12 has another constructor and calls this one old; before it there is only this one.
@pytest.mark.filterwarnings("ignore:Function. 'QDragEnterEvent:DeprecationWarning")
@pytest.mark.usefixtures("settled")
def test_a_tray_that_is_dropped_opens(qtbot: QtBot, good: Path) -> None:
    opened = Opened(qtbot)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(good))])
    copy, left = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    none = Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(9, 9), copy, data, left, none)
    QApplication.sendEvent(opened.window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(opened.window, QDropEvent(QPointF(9, 9), copy, data, left, none))
    qtbot.waitUntil(lambda: opened.coupon == "b-1")


@pytest.mark.usefixtures("settled")
def test_coupons_are_gone_through_from_the_bar(qtbot: QtBot, good: Path) -> None:
    opened = Opened(qtbot, good)
    bar = opened.frame.bar
    assert not bar.previous.isEnabled()
    QTest.mouseClick(bar.next, Qt.MouseButton.LeftButton)
    assert opened.coupon == "b-2"
    assert bar.chooser.currentIndex() == 1
    assert not bar.next.isEnabled()
    bar.chooser.setFocus()
    for key in (Qt.Key.Key_Up, Qt.Key.Key_1, Qt.Key.Key_Home):
        QTest.keyClick(bar.chooser, key)
    assert opened.coupon == "b-2", "a closed list changes nothing"
    QTest.mouseClick(bar.previous, Qt.MouseButton.LeftButton)
    assert opened.coupon == "b-1"


def test_first_start_card_is_shown_once(qtbot: QtBot, home: Path) -> None:
    opened = Opened(qtbot)
    card = opened.frame.dialogs[0]
    assert isinstance(card, FirstStartCard)
    words = " ".join(label.text() for label in card.findChildren(QLabel))
    for needed in ("training aid", "governing code", "checks of its own", "Arc radiation", "Fumes"):
        assert needed.lower() in words.lower()
    QTest.mouseClick(card.begin, Qt.MouseButton.LeftButton)
    assert not opened.frame.dialogs
    file = home / "config" / "toe-and-throat" / "settings.json"
    assert json.loads(file.read_text(encoding="utf-8"))["first_start_seen"] is True
    again = Opened(qtbot)
    assert not again.frame.dialogs
    again.frame.card_action.trigger()
    assert isinstance(again.frame.dialogs[0], FirstStartCard)
    again.frame.dialogs[0].reject()


def test_look_and_unit_are_kept(qtbot: QtBot, settled: Path) -> None:
    opened = Opened(qtbot)
    opened.frame.look_actions["dark"].trigger()
    assert opened.frame.theme.name == "dark"
    opened.frame.unit_actions["in"].trigger()
    kept = json.loads(settled.read_text(encoding="utf-8"))
    assert (kept["appearance"], kept["unit"]) == ("dark", "in")
    opened.frame.look_actions["light"].trigger()


@pytest.mark.usefixtures("settled")
def test_the_unforeseen_says_what_to_do_and_the_window_lives(
    qtbot: QtBot, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    opened = Opened(qtbot)
    error = RuntimeError("nobody foresaw this")
    sys.excepthook(RuntimeError, error, None)
    qtbot.waitUntil(lambda: bool(opened.frame.dialogs))
    dialog = opened.frame.dialogs[0]
    assert isinstance(dialog, UnforeseenDialog)
    assert "nobody foresaw this" in dialog.details.toPlainText()
    sys.excepthook(RuntimeError, error, None)
    sys.excepthook(ValueError, ValueError("another"), None)
    qtbot.wait(20)
    assert len(opened.frame.dialogs) == 1
    assert "nobody foresaw this" in capsys.readouterr().err
    reports = (home / "data" / "toe-and-throat" / "reports").iterdir()
    first, second = sorted(reports, key=lambda path: path.stat().st_mtime_ns)
    assert str(first) in dialog.place.text()
    assert "another" in second.read_text(encoding="utf-8")
    dialog.reject()
    button = next(
        b for b in opened.window.findChildren(QPushButton) if b.accessibleName() == "Convex"
    )
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert opened.opening.screen is not None
    assert opened.opening.screen.controller.state.face == "convex"


@pytest.mark.usefixtures("settled")
def test_the_section_does_not_jump_when_the_bench_fills(qtbot: QtBot) -> None:
    """The first paint stands where the canvas's own fit puts the section: within a pixel."""
    opened = Opened(qtbot)
    assert opened.opening.screen is not None
    canvas = opened.opening.screen.canvas
    # The test's own screen may be smaller than the usual window.
    opened.window.resize(*WINDOW)
    place = canvas.mapTo(opened.window, QPoint(0, 0))
    told = json.loads((asset("stills") / "first.json").read_text(encoding="utf-8"))
    assert (place.x(), place.y(), canvas.width(), canvas.height()) == rooms_in(*WINDOW).picture
    assert canvas.view.scale == pytest.approx(told["scale"], rel=1e-3)
    assert tuple(told["size"]) == canvas.view.size


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
def test_stored_picture_is_what_the_painter_paints(qtbot: QtBot, theme: Theme) -> None:
    """If this fails, record it anew: python -m trainer.bench.first_picture."""
    coupon = load_tray(shipped_tray()).coupons[0]
    folder = asset("stills")
    told = json.loads((folder / "first.json").read_text(encoding="utf-8"))
    assert told["of"] == coupon.digest
    view = first_view(drawing_of(coupon.section), coupon.eye_limit)
    assert told["scale"] == pytest.approx(view.scale)
    window = MainWindow()
    qtbot.addWidget(window)
    window.resize(*WINDOW)
    first = FirstPaint(folder, theme.name, window, pictured=True)
    stored = first.grab().toImage()
    assert stored.pixelColor(2, WINDOW[1] - 2) == QColor(theme.window)
    assert stored.pixelColor(2, 2) == QColor(theme.panel)
    x, y, width, height = rooms_in(*WINDOW).picture
    fresh = QImage(width, height, QImage.Format.Format_RGB32)
    fresh.fill(QColor(theme.bench.light))
    painter = QPainter(fresh)
    painter.drawPicture(0, 0, record(coupon, theme))
    painter.end()
    differ = 0
    for column in range(0, width, 7):
        for row in range(0, height, 7):
            one, other = stored.pixelColor(x + column, y + row), fresh.pixelColor(column, row)
            differ += abs(one.lightness() - other.lightness()) > 12
    assert differ <= 20


def test_a_damaged_picture_is_no_reason_not_to_start(qtbot: QtBot, tmp_path: Path) -> None:
    for text in ("", "{}", '{"looks": {"light": {}}}'):
        (tmp_path / "first.json").write_text(text, encoding="utf-8")
        window = MainWindow()
        qtbot.addWidget(window)
        first = FirstPaint(tmp_path, "light", window, pictured=True)
        window.grab()
        assert not first.pictured


def before_the_first_paint(ask: str) -> str:
    """Run a program up to its first paint, then `ask`; return what that prints."""
    code = (
        "import enum, sys\n"
        "from PySide6.QtWidgets import QApplication\n"
        "from trainer import late\n"
        "def made(kind):\n"
        "    below = type.__subclasses__(kind)\n"
        "    return [*below, *(one for each in below for one in made(each))]\n"
        "app = QApplication([])\n"
        "opening = late._Opening(app, None)\n"
        "opening.keep_on_screen()\n"
        "def painted():\n"
        f"    print({ask})\n"
        "    app.quit()\n"
        "opening.first.painted.connect(painted)\n"
        "opening.window.show()\n"
        "app.exec()\n"
    )
    root = Path(late.__file__).parents[1]
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=root
    )
    return done.stdout.strip()


def test_nothing_heavy_is_loaded_before_the_first_paint() -> None:
    heavy = ("numpy", "shapely", "pydantic", "geometry", "exercises", "trainer.bench")
    ask = f"[name for name in sys.modules if name.startswith({heavy})]"
    assert before_the_first_paint(ask) == "[]"


def test_the_namespace_of_enumerations_is_not_loaded_before_the_first_paint() -> None:
    """It costs a fifth of a bare window's time; a colour that is painted with loads it."""
    ask = "[kind for kind in made(enum.Enum) if kind.__qualname__.startswith('Qt.')]"
    assert before_the_first_paint(ask) == "[]"


@pytest.mark.usefixtures("settled")
def test_window_is_no_larger_than_the_screen(qtbot: QtBot) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    opening = late._Opening(app, None)
    opening.keep_on_screen()
    window = opening.window
    qtbot.addWidget(window)
    room = app.primaryScreen().availableSize()
    assert window.width() <= room.width()
    assert window.height() <= room.height()
