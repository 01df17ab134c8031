"""In a sitting there is no help but what is allowed, and nothing that depends on the truth."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QAction, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from exercises.sitting.plan import HELPS, Help
from tests.trainer.taking.conftest import MINUTE, Program, plan_of, sealed
from trainer.bench import state as bench_state
from trainer.notices import UnforeseenDialog
from trainer.settings import Settings
from trainer.unforeseen import Trouble

Key = Qt.Key


def test_with_all_helps_off_no_way_leads_to_any(program: Program) -> None:
    program.frame.change_settings(Settings(first_start_seen=True, unit="in", loupe=True))
    program.begin(plan_of(helps=frozenset()))
    rack = program.bench.rack_panel
    program.key(Key.Key_8)
    assert not rack.looking["loupe"].isVisible()
    assert not rack.steps.buttons["press home"].isVisible()
    assert not any(button.isVisible() for button in rack.units.values())
    assert program.bench.canvas.lens is None
    # What was chosen before doesn't hold either: the drawing's own unit does.
    assert "8 mm" in program.words(program.bench.job_card)
    before = program.state.pose
    program.key(Key.Key_Space)
    assert program.state.pose == before
    assert "not allowed" in program.bench.saying.text()
    program.key(Key.Key_L)
    assert program.bench.canvas.lens is None
    scene = program.bench.canvas._scene
    assert "press home" not in [action.name for action in scene.actions]
    program.bench.canvas.asked.emit("press home")
    assert program.state.pose == before


@pytest.mark.parametrize("allowed", HELPS)
def test_each_help_that_is_allowed_is_there(program: Program, allowed: Help) -> None:
    program.begin(plan_of(helps=frozenset({allowed})))
    rack = program.bench.rack_panel
    program.key(Key.Key_8)
    shown = {
        "loupe": rack.looking["loupe"].isVisible() and program.bench.canvas.lens is not None,
        "press home": rack.steps.buttons["press home"].isVisible(),
        "unit switch": all(button.isVisible() for button in rack.units.values()),
    }
    assert shown == {help_: help_ == allowed for help_ in HELPS}


def test_neither_notes_nor_reference_nor_menus_nor_other_screens(program: Program) -> None:
    program.begin()
    call, card = program.bench.call_panel, program.bench.job_card
    assert program.state.coupon.hints
    assert not call.notes.isVisible()
    assert not any(button.isVisible() for button in card.look_ups)
    program.key(Key.Key_U)
    assert program.state.hints == 0
    assert not program.frame.bar.menus.isVisible()
    assert not program.window.acceptDrops()
    on = [a for a in program.window.findChildren(QAction) if not a.shortcut().isEmpty()]
    assert on
    assert not [action.text() for action in on if action.isEnabled()]
    program.key(Key.Key_1, ctrl=True)
    program.key(Key.Key_R, ctrl=True)
    program.key(Key.Key_O, ctrl=True)
    assert program.view.isVisible()
    assert not program.frame.dialogs
    program.hand_in()
    assert all(action.isEnabled() for action in on)
    assert program.window.acceptDrops()


def test_nothing_is_graded_before_it_is_handed_in(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def refused(*_: object) -> object:
        asked.append("graded")
        raise AssertionError("nothing may depend on the truth")

    program.begin()
    with monkeypatch.context() as patched:
        patched.setattr(bench_state, "grade", refused)
        patched.setattr("exercises.sitting.result.grade", refused)
        patched.setattr("exercises.judging.judge", refused)
        program.call()
        program.key(Key.Key_Return, Key.Key_PageUp, Key.Key_V, Key.Key_G)
        program.key(Key.Key_R)
        program.clock.run(MINUTE)
        program.running.tick()
        program.key(Key.Key_H, ctrl=True)
        program.key(Key.Key_Escape)
    assert not asked
    assert program.state.phase == "handling"
    program.hand_in()


def test_the_loupe_keeps_the_cap_of_marked_work(program: Program) -> None:
    program.begin()
    program.key(Key.Key_8, *[Key.Key_Plus] * 30)
    lens = program.bench.canvas.lens
    assert lens is not None
    gap = program.state.coupon.eye_limit * lens.view.device_scale
    assert 3.0 <= gap <= 6.0


def test_trouble_that_nobody_foresaw_shows_no_report_and_loses_no_call(program: Program) -> None:
    program.begin()
    program.call()
    program.frame.show_unforeseen(Trouble("ValueError: throat 4.7 of 6", "line\nline", None))
    dialog = program.dialog()
    assert isinstance(dialog, UnforeseenDialog)
    said = program.words(dialog)
    assert not any(text.isVisible() for text in dialog.findChildren(QPlainTextEdit))
    assert "4.7" not in said
    assert "line" not in said.split()
    program.key(Key.Key_Escape)
    assert (program.state.face, program.state.disposition) == ("convex", "add weld metal")


def test_another_language_waits_until_it_is_handed_in(program: Program) -> None:
    """Its menu is not to be had, and neither is any other way to it."""
    program.begin()
    languages = list(program.frame.language_actions.values())
    assert not [action for action in program.view.menu.actions() if action in languages]
    assert not program.frame.bar.isVisible()


def test_the_look_can_be_changed_meanwhile(program: Program) -> None:
    program.begin()
    program.call()
    program.frame.look_actions["dark"].trigger()
    assert program.frame.theme.name == "dark"
    assert program.state.face == "convex"
    program.frame.look_actions["light"].trigger()


def test_a_tray_is_told_to_be_one(program: Program) -> None:
    tray = program.folder / "yard.tray.json"
    tray.write_text('{"format": "toe-and-throat/tray", "version": 1, "coupons": []}')
    program.frame.show_screen("sittings")
    program.page.open_path(tray)
    assert "is a tray to practise with" in program.words(program.page)
    asked: list[object] = []
    program.frame.tray_asked.connect(asked.append)
    program.click(program.button("Open it on the bench"))
    assert asked == [tray]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "end is missing"),
        (b"twelve coupons", "no sealed file"),
        (b"toe-and-throat/sealed 1 sitting 17", "end is missing"),
        (b"toe-and-throat/sealed 2 sitting", "newer version"),
        (None, "a.sitting"),
    ],
)
def test_what_is_no_sitting_says_why(program: Program, data: bytes | None, words: str) -> None:
    path = program.folder / "a.sitting"
    if data is not None:
        path.write_bytes(data)
    program.frame.open_tray(path)
    assert program.frame.shown_screen == "sittings"
    assert words in program.page.file_step.trouble.text()
    assert program.page.state.step == "file"


def test_a_sitting_that_was_changed_is_refused(program: Program) -> None:
    path = sealed(program.folder, plan_of())
    data = bytearray(path.read_bytes())
    data[-1] ^= 1
    path.write_bytes(bytes(data))
    program.frame.open_tray(path)
    assert "changed since it was sealed" in program.page.file_step.trouble.text()


def test_a_file_dropped_on_the_window_opens_the_page(program: Program) -> None:
    path = sealed(program.folder, plan_of())
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    event = QDropEvent(
        QPointF(200.0, 200.0),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    program.frame.eventFilter(program.window, event)
    program.qtbot.waitUntil(lambda: program.page.state.step == "passphrase")
    assert program.frame.shown_screen == "sittings"


def test_all_of_it_by_keys_alone(program: Program) -> None:
    path = sealed(program.folder, plan_of(2))
    program.frame.open_tray(path)
    QTest.keyClicks(program.window.focusWidget(), "three weathered herons")
    program.key(Key.Key_Return)
    program.qtbot.waitUntil(lambda: program.page.state.step == "code")
    QTest.keyClicks(program.window.focusWidget(), "k-07")
    program.key(Key.Key_Return)
    assert program.page.state.step == "rules"
    # The Enter that ended the code has not begun it.
    assert program.page.running is None
    program.key(Key.Key_Return)
    assert program.page.running is not None
    program.key(Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_X, Key.Key_W, Key.Key_Return)
    assert program.running.sitting.at == 1
    program.key(Key.Key_G, Key.Key_Left, Key.Key_Return)
    assert program.running.sitting.at == 0
    program.key(Key.Key_H, ctrl=True)
    assert program.dialog().isVisible()
    program.key(Key.Key_Backtab, Key.Key_Return)
    program.wait_for_the_end()


def test_tab_comes_to_every_control_of_a_sitting(program: Program) -> None:
    program.begin()
    wanted: set[QWidget] = {
        program.bench.canvas,
        program.bench.record_bar.button,
        program.view.bar.flag,
        program.view.bar.time.switch,
        program.view.bar.hand_in,
        program.view.bar.more,
        program.view.bar.next,
        program.view.map.buttons[0],
    }
    seen: set[QWidget | None] = set()
    for _ in range(120):
        seen.add(program.window.focusWidget())
        program.key(Key.Key_Tab)
    assert not {widget.accessibleName() for widget in wanted - seen}


def test_the_sheet_of_keys_has_those_of_this_sitting_alone(program: Program) -> None:
    program.begin(plan_of(2, helps=frozenset({"loupe"})))
    program.key(Key.Key_F1)
    words = program.words(program.dialog())
    for there in ("This sitting", "mark the coupon for review", "swap ends", "loupe on or off"):
        assert there in words
    for gone in ("press home", "After a call", "play your handling", "compose", "Coupon shop"):
        assert gone not in words
