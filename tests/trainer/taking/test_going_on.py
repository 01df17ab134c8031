"""A sitting that was killed, suspended, slept through or met a full disk goes on where it was."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tests.trainer.taking.conftest import MINUTE, PASSPHRASE, Program, plan_of, sealed
from tests.trainer.taking.test_sitting_it import result_of
from trainer.afterwards import say_unfinished
from trainer.sealing import held_files, journal
from trainer.taking.dialogs import ProctorDialog
from trainer.taking.sitting import Sitting

Key = Qt.Key


def killed(program: Program) -> None:
    """The program is killed and started anew; its clock that can't be set begins elsewhere."""
    program.kill()
    program.clock.ran = 77
    program.start()


def test_a_kill_goes_on_at_the_same_coupon_with_its_draft(program: Program) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_Return, Key.Key_V, Key.Key_8, Key.Key_Space, Key.Key_T, Key.Key_O)
    program.clock.run(10 * MINUTE)
    program.running._keep_here()
    before = program.state
    killed(program)
    program.clock.sleep(60 * MINUTE)
    program.go_on_with_it()
    now = program.state
    assert now.coupon.id == before.coupon.id
    assert (now.leaf, now.pose, now.face, now.readings) == (
        before.leaf, before.pose, "concave", before.readings,
    )  # fmt: skip
    assert now.handling == before.handling
    assert now.touches
    assert program.view.map.buttons[1].place.flagged
    assert program.view.bar.time.words.text() == "30 min left"
    assert "60 min 0 s" in program.words(program.view.band)
    program.key(Key.Key_PageUp)
    assert (program.state.face, program.state.disposition) == ("convex", "add weld metal")
    program.hand_in()
    (stop,) = result_of(program).interruptions
    assert (stop.kind, stop.ms) == ("closed", 60 * MINUTE)
    assert "notes 1 interruption" in program.words(program.page)


def test_what_was_stated_is_kept_before_the_coupon_is_left(program: Program) -> None:
    """A kill a moment after a call costs nothing of it."""
    program.begin()
    program.call()
    program.qtbot.waitUntil(lambda: not program.running._soon.isActive())
    killed(program)
    program.go_on_with_it()
    assert (program.state.face, program.state.disposition) == ("convex", "add weld metal")


def test_the_next_start_says_that_a_sitting_waits(program: Program) -> None:
    program.begin()
    killed(program)
    say_unfinished(program.frame, program.places.sittings)
    assert "begun here and is not handed in" in program.words(program.frame.band)
    (go, _) = program.frame.band.buttons
    program.click(go)
    assert program.frame.shown_screen == "sittings"
    assert program.button("Go on with it...").isVisible()


def test_begun_again_by_its_file_it_goes_on(program: Program) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_Return)
    killed(program)
    program.open(program.folder / "friday.sitting", "K-07 ")
    assert program.page.running is not None
    assert program.running.sitting.at == 1
    assert len(list(program.places.sittings.iterdir())) == 1


def test_a_wrong_passphrase_opens_nothing_and_changes_nothing(program: Program) -> None:
    program.begin()
    killed(program)
    (path,) = program.places.sittings.iterdir()
    held = path.read_bytes()
    program.frame.show_screen("sittings")
    program.click(program.button("Go on with it..."))
    program.say_passphrase("three weathered heroes")
    program.qtbot.waitUntil(lambda: not program.page.state.busy)
    assert "does not open it" in program.words(program.page)
    assert path.read_bytes() == held
    program.say_passphrase()
    program.qtbot.waitUntil(lambda: program.page.running is not None)


def test_only_the_proctor_lets_anybody_leave(program: Program) -> None:
    program.begin()
    program.call()
    program.window.close()
    assert program.window.isVisible()
    dialog = program.dialog()
    assert isinstance(dialog, ProctorDialog)
    QTest.keyClicks(dialog.line, "let me out")
    program.click(dialog.suspend)
    program.qtbot.waitUntil(lambda: "not the passphrase" in dialog.trouble.text())
    assert program.page.running is not None
    dialog.line.setText(PASSPHRASE)
    program.click(dialog.suspend)
    program.qtbot.waitUntil(lambda: program.page.running is None)
    assert program.frame.bar.isVisible()
    program.clock.sleep(5 * MINUTE)
    program.go_on_with_it()
    assert program.state.face == "convex"
    (stop,) = program.running.sitting.progress.interruptions
    assert (stop.kind, stop.ms) == ("closed", 5 * MINUTE)


def test_the_proctor_can_end_it(program: Program) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_Q, ctrl=True)
    dialog = program.dialog()
    assert isinstance(dialog, ProctorDialog)
    dialog.line.setText(PASSPHRASE)
    program.click(dialog.end)
    program.wait_for_the_end()
    assert result_of(program).items[0].answered


def test_the_system_s_end_is_let_through(program: Program) -> None:
    program.begin()
    program.call()
    program.frame.ending.emit()
    assert program.page.running is None
    assert program.window.close()
    program.keeping.close()
    program.start()
    program.go_on_with_it()
    assert program.state.face == "convex"


def test_a_closed_lid_is_told_and_not_counted(program: Program) -> None:
    program.begin()
    program.clock.run(2 * MINUTE)
    program.running.tick()
    program.clock.sleep(30 * MINUTE)
    program.clock.run(1000)
    program.running.tick()
    assert program.view.bar.time.words.text() == "37 min left"
    assert "The machine slept for 30 min" in program.words(program.view.band)
    program.hand_in()
    (stop,) = result_of(program).interruptions
    assert stop.kind == "asleep"


class FullDisk:
    """Takes no more until room is made."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.full = False
        write = held_files.write_out

        def checked(file: object, line: bytes) -> None:
            if self.full:
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            write(file, line)  # type: ignore[arg-type]

        monkeypatch.setattr(journal, "write_out", checked)


def test_a_full_disk_keeps_the_call_on_the_bench(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    disk = FullDisk(monkeypatch)
    program.begin()
    program.call()
    disk.full = True
    program.key(Key.Key_Return)
    assert program.running.sitting.at == 0
    assert program.state.face == "convex"
    said = program.words(program.view.band)
    assert "No space left" in said
    assert "still on the bench" in said
    # It can be changed meanwhile, and nothing of that is lost.
    program.key(Key.Key_P)
    program.key(Key.Key_Return)
    assert program.running.sitting.at == 0
    disk.full = False
    program.click(program.button("Try again"))
    assert not program.view.band.isVisible()
    program.key(Key.Key_Return)
    assert program.running.sitting.at == 1
    program.hand_in()
    attempt = result_of(program).items[0].attempt
    assert attempt is not None
    assert attempt["face"] == "flat"


def test_room_that_is_made_is_found_by_itself(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    disk = FullDisk(monkeypatch)
    program.begin()
    program.call()
    disk.full = True
    program.key(Key.Key_PageDown)
    assert program.view.band.isVisible()
    disk.full = False
    program.running.tick()
    assert not program.view.band.isVisible()


def test_the_time_is_up_on_a_full_disk(program: Program, monkeypatch: pytest.MonkeyPatch) -> None:
    disk = FullDisk(monkeypatch)
    program.begin()
    disk.full = True
    program.call()
    program.clock.run(41 * MINUTE)
    program.running.tick()
    program.clock.run(MINUTE)
    program.running.tick()
    assert not program.bench.bench.isEnabled()
    disk.full = False
    program.running.tick()
    program.wait_for_the_end()
    result = result_of(program)
    assert result.ended == "time up"
    assert result.items[0].answered


def test_a_result_that_can_t_be_written_waits(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    program.begin()
    program.call()
    program.places.results.parent.mkdir(exist_ok=True)
    program.places.results.write_bytes(b"in the way")
    program.click(program.view.bar.hand_in)
    program.click(program.button("Hand in now"))
    program.qtbot.waitUntil(lambda: "can't be written" in program.words(program.page))
    assert list(program.places.sittings.iterdir())
    program.places.results.unlink()
    program.click(program.button("Try again"))
    program.wait_for_the_end()
    assert result_of(program).items[0].answered


def test_one_that_had_ended_is_handed_in_at_the_next_start(program: Program) -> None:
    program.begin()
    program.call()
    program.places.results.parent.mkdir(exist_ok=True)
    program.places.results.write_bytes(b"in the way")
    program.click(program.view.bar.hand_in)
    program.click(program.button("Hand in now"))
    program.qtbot.waitUntil(lambda: "can't be written" in program.words(program.page))
    program.click(program.button("Done"))
    program.places.results.unlink()
    program.click(program.button("Go on with it..."))
    program.say_passphrase()
    program.wait_for_the_end()
    result = result_of(program)
    assert result.ended == "finished"
    assert result.items[0].answered


_CHILD = """
import sys, time
from pathlib import Path
from trainer.taking.drafts import Draft
from trainer.taking.opening import open_sitting
from trainer.taking.sitting import Sitting
folder = Path(sys.argv[1])
opened = open_sitting(folder / "friday.sitting", sys.argv[2])
sitting = Sitting.begin(folder / "sittings", opened.key, opened.plan, "k-07")
for item in range(sitting.count):
    sitting.show(item)
    said = {"coupon": sitting.questions[item].coupon.id, "face": "flat",
            "disposition": "accept", "readings": []}
    sitting.keep(item, Draft(said, [[0, 40.0, 40.0, 0.0, False, "pick 8 mm leg"]], {}, True))
    print(item, flush=True)
time.sleep(600)
"""


def test_a_process_that_is_really_killed_has_lost_no_call(tmp_path: Path) -> None:
    sealed(tmp_path, plan_of(3))
    command = [sys.executable, "-c", _CHILD, str(tmp_path), PASSPHRASE]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert child.stdout is not None
    seen = [child.stdout.readline().strip() for _ in range(3)]
    child.send_signal(signal.SIGKILL)
    child.wait()
    child.stdout.close()
    assert seen == ["0", "1", "2"]
    (path,) = (tmp_path / "sittings").iterdir()
    until = time.monotonic() + 30.0
    while not journal.left(tmp_path / "sittings") and time.monotonic() < until:
        time.sleep(0.05)
    sitting = Sitting.resume(path, PASSPHRASE)
    assert [sitting.standing(item) for item in range(3)] == ["answered"] * 3
    assert sitting.at == 2
    sitting.keeper.leave()


def test_after_a_kill_the_keys_are_at_what_waits(program: Program) -> None:
    program.begin()
    killed(program)
    program.frame.show_screen("sittings")
    program.qtbot.waitUntil(lambda: bool(program.page.file_step.buttons))
    program.qtbot.wait(20)
    assert program.window.focusWidget() is program.page.file_step.buttons[0]
    # What waits is listed anew each time that the page is shown.
    program.page.hide()
    program.page.show()
    program.page.file_step.begin()
    program.page._list_unfinished()
    assert program.window.focusWidget() is program.page.file_step.buttons[0]
    program.go_on_with_it()


def damage(program: Program, line: int) -> None:
    """A byte of the journal that waits is changed."""
    (path,) = journal.left(program.places.sittings)
    lines = path.read_bytes().splitlines(keepends=True)
    changed = bytearray(lines[line])
    changed[30] ^= 1
    path.write_bytes(b"".join([*lines[:line], bytes(changed), *lines[line + 1 :]]))


def test_the_sound_part_of_a_damaged_journal_is_gone_on_with_if_the_proctor_says_so(
    program: Program,
) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_Return)
    program.call(Key.Key_P, Key.Key_A)
    (path,) = program.places.sittings.glob(f"*{journal.SUFFIX}")
    whole = len(path.read_bytes().splitlines())
    program.key(Key.Key_Return)
    program.clock.run(3 * MINUTE)
    program.call()
    program.running._keep_here()
    killed(program)
    damage(program, whole + 1)
    before = path.read_bytes()
    program.clock.sleep(60 * MINUTE)
    program.frame.show_screen("sittings")
    program.click(program.button("Go on with it..."))
    program.say_passphrase()
    program.qtbot.waitUntil(lambda: bool(program.frame.dialogs))
    assert "2 of 4 coupons are answered" in program.words(program.dialog())
    program.click(program.button("Leave it as it is"))
    assert program.page.running is None
    assert path.read_bytes() == before
    assert program.page.passphrase_step.trouble.text() == "", "nothing is being opened any more"
    program.say_passphrase()
    program.qtbot.waitUntil(lambda: bool(program.frame.dialogs))
    program.click(program.button("Go on from there"))
    program.qtbot.waitUntil(lambda: program.page.running is not None)
    assert sorted(program.running.sitting.progress.answered) == [0, 1]
    (kept,) = program.places.sittings.glob(f"*{journal.DAMAGED}")
    assert kept.read_bytes() == before
    program.hand_in()
    (stop,) = result_of(program).interruptions
    assert stop.ms is not None
    assert stop.ms >= 60 * MINUTE
