"""A leaf that is taken at the first paint, and the bench that comes while a hand holds it."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from exercises.file_faults import TrayError
from geometry.penetration import is_free
from trainer import late
from trainer.arrangement import rooms_in
from trainer.bench.first_picture import WINDOW
from trainer.bench.rack import LeafButton
from trainer.bench.screen import BenchScreen
from trainer.bench.state import BenchState
from trainer.first_hands import FirstHands
from trainer.first_paint import FirstPaint
from trainer.first_start import FirstStartCard
from trainer.ghost import LeafGhost
from trainer.loading import Loading

MARK = "8 mm"
FREE, LOW = (0.75, 0.2), (0.55, 0.95)
"""Shares of the picture: in the light; within the base."""


class Early:
    """Somebody who takes a leaf before the bench is there; it comes when told to."""

    def __init__(self, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, tray: Path | None) -> None:
        self.qtbot = qtbot
        self.gate = threading.Event()
        load = late._Opening._load

        def held_back(opening: late._Opening) -> late._Loaded:
            self.gate.wait()
            return load(opening)

        monkeypatch.setattr(late._Opening, "_load", held_back)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        self.opening = late._Opening(app, tray)
        self.window = self.opening.window
        # Whatever the test is about, the thread has to end while there is a window to fill.
        qtbot.addWidget(self.window, before_close_func=lambda _: self.end())
        self.opening.show()
        # The test's own screen may be smaller than the usual window.
        self.resize(*WINDOW)
        qtbot.waitUntil(lambda: self.opening.hands is not None)

    def resize(self, *size: int) -> None:
        self.window.resize(*size)
        self.qtbot.waitUntil(lambda: self.first.size() == QSize(*size))

    @property
    def first(self) -> FirstPaint:
        return self.opening.first

    @property
    def screen(self) -> BenchScreen:
        assert self.opening.screen is not None
        return self.opening.screen

    @property
    def state(self) -> BenchState:
        return self.screen.controller.state

    @property
    def events(self) -> list[str]:
        """What the handling says happened, repeats left out."""
        told = [entry.event for entry in self.state.handling.entries]
        return [event for at, event in enumerate(told) if at == 0 or event != told[at - 1]]

    @property
    def ghosts(self) -> list[LeafGhost]:
        return [ghost for ghost in self.window.findChildren(LeafGhost) if ghost.isVisible()]

    def bench_comes(self) -> None:
        self.gate.set()
        self.qtbot.waitUntil(lambda: self.opening.screen is not None, timeout=20000)

    def end(self) -> None:
        self.bench_comes()
        self.opening.finish()

    def leaf(self, mark: str = MARK) -> QPoint:
        return QRect(*self.first.places()[mark]).center()

    def spot(self, share: tuple[float, float]) -> QPoint:
        """A point of the picture, in the window."""
        x, y, width, height = rooms_in(self.window.width(), self.window.height()).picture
        return QPoint(round(x + share[0] * width), round(y + share[1] * height))

    def mm(self, at: QPoint) -> tuple[float, float]:
        spot = self.screen.canvas.mapFromGlobal(self.window.mapToGlobal(at))
        return self.screen.canvas.view.to_mm((spot.x(), spot.y()))

    # Through the window's own handle, so that Qt says who has the mouse, not the test.

    def press(self, at: QPoint) -> None:
        none = Qt.KeyboardModifier.NoModifier
        QTest.mousePress(self.window.windowHandle(), Qt.MouseButton.LeftButton, none, at)

    def move(self, *stops: QPoint) -> None:
        for stop in stops:
            QTest.mouseMove(self.window.windowHandle(), stop)

    def let_go(self, at: QPoint) -> None:
        none = Qt.KeyboardModifier.NoModifier
        QTest.mouseRelease(self.window.windowHandle(), Qt.MouseButton.LeftButton, none, at)

    def middle_of_ghost(self) -> QPoint:
        (ghost,) = self.ghosts
        return ghost.geometry().center()


@pytest.fixture
def settled(home: Path) -> None:
    """The first card has been read."""
    file = home / "config" / "toe-and-throat" / "settings.json"
    file.parent.mkdir(parents=True)
    file.write_text('{"first_start_seen": true}', encoding="utf-8")


@pytest.fixture(autouse=True)
def hook() -> Iterator[None]:
    before = sys.excepthook
    yield
    sys.excepthook = before


@pytest.fixture
def new(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Early:
    """Somebody who has never read the card."""
    return Early(qtbot, monkeypatch, None)


@pytest.fixture
def early(settled: None, new: Early) -> Early:
    return new


def near(one: QPoint, other: QPoint) -> bool:
    return (one - other).manhattanLength() <= 2


def test_a_leaf_follows_the_pointer_before_anything_is_loaded(early: Early) -> None:
    early.press(early.leaf())
    assert not early.ghosts
    for share in (FREE, LOW, (0.1, 0.1)):
        early.move(early.spot(share))
        assert near(early.middle_of_ghost(), early.spot(share))
    assert early.opening.screen is None


def test_the_bench_takes_a_drag_over(early: Early) -> None:
    early.press(early.leaf())
    early.move(early.spot((0.6, 0.5)), early.spot(FREE))
    early.bench_comes()
    assert not early.ghosts
    assert early.state.leaf is not None
    assert early.state.leaf.mark == MARK
    assert early.state.hand is not None
    assert early.state.hand.pointer == pytest.approx(early.mm(early.spot(FREE)))
    on = early.spot((0.7, 0.25))
    early.move(on)
    assert early.state.hand.pointer == pytest.approx(early.mm(on))
    early.let_go(on)
    assert early.state.hand is None
    assert early.events == [f"pick {MARK} leg", "grab", "drag", "release"]
    early.qtbot.waitUntil(lambda: not early.window.findChildren(FirstPaint))


def test_a_leaf_comes_in_at_the_pointer_and_stays_out_of_steel(early: Early) -> None:
    early.press(early.leaf())
    early.move(early.spot(FREE), early.spot(LOW), early.spot((0.2, 0.6)))
    early.bench_comes()
    state = early.state
    assert state.leaf is not None
    assert state.pose is not None
    assert is_free(state.section.outline, state.leaf.body, state.pose)
    assert state.touches, "it was pushed against the base and the upright"
    early.let_go(early.spot(LOW))


def test_a_leaf_let_go_over_the_picture_waits_there(early: Early) -> None:
    at = early.spot(FREE)
    early.press(early.leaf())
    early.move(early.spot((0.8, 0.3)), at)
    early.let_go(at)
    assert near(early.middle_of_ghost(), at)
    early.bench_comes()
    state = early.state
    assert not early.ghosts
    assert state.hand is None
    assert state.leaf is not None
    assert state.pose is not None
    assert state.pose.to_section(state.leaf.handle) == pytest.approx(early.mm(at), abs=1e-6)
    assert early.events == [f"pick {MARK} leg", "grab", "drag", "release"]


def test_a_leaf_let_go_elsewhere_stays_on_the_rack(early: Early) -> None:
    early.press(early.leaf())
    early.move(early.spot(FREE), early.leaf("20 mm"))
    early.let_go(early.leaf("20 mm"))
    assert not early.ghosts
    early.bench_comes()
    assert early.state.leaf is None
    assert not early.events


def test_a_click_picks(early: Early) -> None:
    early.press(early.leaf())
    early.let_go(early.leaf())
    early.bench_comes()
    assert early.events == [f"pick {MARK} leg"]
    assert early.screen.canvas.hasFocus() or not early.window.isActiveWindow()


def test_what_was_done_is_done_in_order(early: Early) -> None:
    early.press(early.leaf("5 mm"))
    early.let_go(early.leaf("5 mm"))
    early.press(early.leaf())
    early.move(early.spot(FREE))
    early.let_go(early.spot(FREE))
    early.bench_comes()
    assert early.events[0] == "pick 5 mm leg"
    assert early.state.leaf is not None
    assert early.state.leaf.mark == MARK


def test_a_leaf_still_over_the_rack_is_carried_on(early: Early) -> None:
    early.press(early.leaf("3 mm"))
    early.move(early.leaf("10 mm"))
    early.bench_comes()
    assert near(early.middle_of_ghost(), early.leaf("10 mm"))
    assert early.state.leaf is None
    early.move(early.spot((0.5, 0.9)), early.spot(FREE))
    assert early.state.leaf is not None
    assert early.state.leaf.mark == "3 mm"
    early.let_go(early.spot(FREE))
    assert early.state.hand is None
    assert not early.ghosts


def test_a_press_that_is_only_let_go_after_the_bench_came_is_a_click(early: Early) -> None:
    early.press(early.leaf())
    early.bench_comes()
    assert early.state.leaf is None
    early.let_go(early.leaf())
    assert early.events == [f"pick {MARK} leg"]


@pytest.mark.parametrize("size", [(1500, 900), (1000, 640)])
def test_the_window_may_be_resized_in_between(early: Early, size: tuple[int, int]) -> None:
    early.press(early.leaf())
    early.move(early.spot(FREE))
    early.resize(*size)
    on = early.spot((0.7, 0.3))
    early.move(on)
    early.bench_comes()
    assert early.state.hand is not None
    assert early.state.hand.pointer == pytest.approx(early.mm(on))
    early.move(early.spot(FREE))
    assert early.state.hand.pointer == pytest.approx(early.mm(early.spot(FREE)))
    early.let_go(early.spot(FREE))
    assert early.state.hand is None


@pytest.mark.parametrize("size", [(1280, 760), (1000, 640), (1600, 950)])
def test_the_rack_does_not_jump_when_the_bench_comes(early: Early, size: tuple[int, int]) -> None:
    """If this fails, record it anew: python -m trainer.bench.first_picture."""
    early.resize(*size)
    early.window.setFocus()
    before, places = early.window.grab().toImage(), early.first.places()
    early.bench_comes()
    early.qtbot.waitUntil(lambda: not early.window.findChildren(FirstPaint))
    rack = early.screen.rack_panel.rack
    at = rack.mapTo(early.window, QPoint(0, 0))
    real = {button.leaf.mark: button.geometry().translated(at) for button in rack.buttons}
    assert {mark: QRect(*place) for mark, place in places.items()} == real
    after = early.window.grab().toImage()
    assert alike(before, after, rack.geometry().translated(at - rack.pos()))


def alike(one: QImage, other: QImage, room: QRect) -> bool:
    differ = 0
    for x in range(room.left(), room.right() + 1):
        for y in range(room.top(), room.bottom() + 1):
            a, b = one.pixelColor(x, y), other.pixelColor(x, y)
            differ += abs(a.lightness() - b.lightness()) > 12
    return differ <= 20


def test_a_leaf_lights_up_under_the_pointer(early: Early) -> None:
    x, y, _, _ = early.first.places()[MARK]

    def metal() -> int:
        return early.window.grab().toImage().pixelColor(x + 5, y + 5).lightness()

    before = metal()
    early.move(early.leaf())
    early.qtbot.waitUntil(lambda: metal() > before)
    early.move(early.spot(FREE))
    early.qtbot.waitUntil(lambda: metal() == before)


def test_nothing_else_can_be_taken(early: Early) -> None:
    early.press(early.spot(FREE))
    early.move(early.spot(LOW))
    early.let_go(early.spot(LOW))
    assert not early.ghosts
    early.bench_comes()
    assert not early.events


def test_another_tray_has_no_rack_yet(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, settled: None, tmp_path: Path
) -> None:
    coupon = {"id": "b-1", "title": "One", "callout": {"size": "5/16 in"}}
    coupon["bead"] = {"leg_base": 8, "leg_upright": 8}
    file = tmp_path / "good.tray.json"
    tray = {"format": "toe-and-throat/tray", "version": 1, "title": "T", "coupons": [coupon]}
    file.write_text(json.dumps(tray), encoding="utf-8")
    early = Early(qtbot, monkeypatch, file)
    assert not early.first.places()
    early.press(early.spot(FREE))
    early.let_go(early.spot(FREE))
    early.bench_comes()
    assert early.state.coupon.id == "b-1"
    assert not early.events


def test_a_press_on_its_way_when_the_bench_comes_is_the_bench_s(
    early: Early, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first paint is taken down a turn of the loop later; until then it would swallow it."""
    beneath: list[object] = []
    settling = late._Opening._settling

    def settled(opening: late._Opening, broken: TrayError | None) -> Iterator[None]:
        spot = early.leaf()
        parts = settling(opening, broken)
        next(parts)
        beneath.append(opening.window.childAt(spot))
        yield from parts

    monkeypatch.setattr(late._Opening, "_settling", settled)
    early.bench_comes()
    (widget,) = beneath
    assert isinstance(widget, LeafButton)
    assert widget.leaf.mark == MARK


def test_the_first_card_waits_until_the_hand_is_free(new: Early) -> None:
    new.press(new.leaf())
    new.move(new.spot(FREE))
    new.bench_comes()
    assert new.opening.frame is not None
    assert not new.opening.frame.dialogs
    new.let_go(new.spot(FREE))
    frame = new.opening.frame
    new.qtbot.waitUntil(lambda: bool(frame.dialogs))
    (card,) = frame.dialogs
    assert isinstance(card, FirstStartCard)
    card.reject()


def test_the_look_is_put_right_once_the_scheme_is_known(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, settled: None
) -> None:
    monkeypatch.setattr(late._Opening, "_likely_look", lambda _: "dark")
    early = Early(qtbot, monkeypatch, None)
    assert early.first.look == "light"
    early.bench_comes()


def test_hands_are_there_before_the_core(early: Early) -> None:
    assert isinstance(early.opening.hands, FirstHands)
    assert early.opening.frame is None


def test_an_error_in_the_thread_is_raised_where_the_result_is_asked_for(qtbot: QtBot) -> None:
    def fails() -> int:
        raise RuntimeError("nobody foresaw this")

    loading = Loading(fails)
    with qtbot.waitSignal(loading.over):
        loading.start()
    with pytest.raises(RuntimeError, match="foresaw"):
        _ = loading.result


def run(code: str) -> subprocess.CompletedProcess[str]:
    begin = (
        "import sys\n"
        "from PySide6.QtCore import QTimer\n"
        "from PySide6.QtWidgets import QApplication\n"
        "from trainer import late\n"
    )
    root = Path(late.__file__).parents[1]
    command = [sys.executable, "-c", begin + code]
    return subprocess.run(command, capture_output=True, text=True, check=False, cwd=root)


def test_a_core_that_cannot_be_loaded_ends_the_program_and_says_why() -> None:
    done = run(
        "from trainer.notices import Notice\n"
        "from trainer.start import StartError\n"
        "Notice.open = lambda notice: (print(notice.windowTitle()), notice.reject())\n"
        "sys.modules['numpy'] = None\n"
        "try:\n"
        "    late.open_window(['x'], None)\n"
        "except StartError as error:\n"
        "    print(error)\n"
    )
    assert done.returncode == 0, done.stderr
    title, *lines = done.stdout.splitlines()
    assert title == lines[0] == "The program can't start: numpy isn't installed."
    assert lines[-1].endswith("numpy")
    assert "Traceback" not in done.stderr


def test_what_nobody_foresaw_while_it_starts_is_said_before_the_program_ends() -> None:
    done = run(
        "from trainer.notices import UnforeseenDialog\n"
        "UnforeseenDialog.open = lambda dialog: (print(dialog.details.toPlainText()), "
        "dialog.reject())\n"
        "late._Opening._make_bench = lambda *_: 1 / 0\n"
        "sys.exit(late.open_window(['x'], None))\n"
    )
    assert done.returncode == 1
    assert "ZeroDivisionError" in done.stdout
    assert done.stderr.count("Traceback") == 1


def test_the_window_may_be_closed_while_the_core_is_loaded() -> None:
    done = run(
        "begin = late._Opening._begin\n"
        "def begun(opening):\n"
        "    begin(opening)\n"
        "    opening.window.close()\n"
        "late._Opening._begin = begun\n"
        "sys.exit(late.open_window(['x'], None))\n"
    )
    assert (done.returncode, done.stderr.replace(OFFSCREEN, "")) == (0, "")


OFFSCREEN = "This plugin does not support propagateSizeHints()\n"
