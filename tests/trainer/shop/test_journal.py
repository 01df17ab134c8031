"""Autosave: whatever moment a start ends at, the last gesture is all that can be missing."""

from __future__ import annotations

import errno
import os
import random
import signal
import subprocess
import sys
import textwrap
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exercises.strict_json import Json
from trainer.history import History, done, redone, undone
from trainer.shop import state as changes
from trainer.shop.building import NO_RULES, coupon_of
from trainer.shop.journal import Journal, JournalError, leftovers
from trainer.shop.state import PLAIN, Shop, new_shop
from trainer.shop.turning import turned

ROOT = Path(__file__).resolve().parents[3]


def leg(shop: Shop, value: float) -> Shop:
    return changes.changed(shop, turned(shop.coupon, "leg_base", value, NO_RULES).coupon)


def said(shop: Shop) -> Json:
    return {"at": shop.at, "tray": shop.tray.as_document()}


GESTURES: dict[str, Callable[[Shop], Shop]] = {
    "leg": lambda shop: leg(shop, shop.coupon.section.bead.leg_base + 0.1),
    "duplicate": changes.duplicated,
    "delete": changes.deleted,
    "up": lambda shop: changes.moved(shop, shop.at, shop.at - 1),
    "down": lambda shop: changes.moved(shop, shop.at, shop.at + 1),
    "title": lambda shop: changes.titled(shop, {"en": f"{len(shop.coupons)}", "es": "x"}),
    "untitle": lambda shop: changes.titled(shop, ""),
    "merge": lambda shop: changes.merged(shop, new_shop().tray),
    "split": lambda shop: (changes.split(shop) or (shop,))[0],
    "first": lambda shop: changes.shown(shop, 0),
}


@settings(max_examples=60)
@given(st.lists(st.sampled_from([*GESTURES, "undo", "redo", "save"]), max_size=25))
def test_what_was_done_is_read_back_with_its_steps(
    tmp_path_factory: pytest.TempPathFactory, names: list[str]
) -> None:
    folder = tmp_path_factory.mktemp("journal")
    journal = Journal(folder)
    history = History(new_shop())
    journal.begin(history.now, None)
    noted = 0
    for name in names:
        before = history
        if name == "save":
            journal.begin(history.now, None)
            noted = 0
            continue
        if name in ("undo", "redo"):
            history = undone(history) if name == "undo" else redone(history)
            kind = name
        else:
            history, kind = done(history, GESTURES[name](history.now), name), "do"
        if history is not before:
            journal.note(kind, name, history.now)
            noted += 1
    journal.leave()
    left = leftovers(folder)
    if not noted:
        assert left == ()
        return
    (one,) = left
    assert one.gestures == noted
    back = one.history()
    assert said(back.now) == said(history.now)
    if "save" not in names:
        while history.past is not None:
            history, back = undone(history), undone(back)
            assert said(back.now) == said(history.now)
        assert back.past is None


def test_a_tray_that_was_only_looked_at_leaves_nothing(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "shop")
    journal.begin(new_shop(), None)
    journal.leave()
    assert not (tmp_path / "shop").exists()


def test_what_was_saved_is_no_leftover(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    shop = new_shop()
    journal.begin(shop, None)
    journal.note("do", "duplicate", changes.duplicated(shop))
    assert list(tmp_path.iterdir())
    journal.begin(shop, tmp_path / "a.tray.json")
    assert list(tmp_path.iterdir()) == []
    journal.finish()


def test_one_that_is_being_written_is_no_leftover(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    journal.begin(new_shop(), None)
    journal.note("do", "duplicate", changes.duplicated(new_shop()))
    assert leftovers(tmp_path) == ()
    journal.leave()
    assert len(leftovers(tmp_path)) == 1


def test_torn_anywhere_it_lacks_the_last_gesture_at_most(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    shop = new_shop()
    journal.begin(shop, None)
    sizes = []
    for count in range(1, 6):
        shop = leg(shop, 8.0 + count)
        journal.note("do", "leg_base", shop)
        sizes.append(journal.path.stat().st_size)
    journal.leave()
    data = journal.path.read_bytes()
    for cut in range(sizes[0], len(data)):
        journal.path.write_bytes(data[:cut])
        (left,) = leftovers(tmp_path)
        whole = sum(size <= cut for size in sizes)
        assert left.history().now.coupon.section.bead.leg_base == 8.0 + whole
    for cut in (0, 5, sizes[0] // 2):
        journal.path.write_bytes(data[:cut])
        assert leftovers(tmp_path) == ()


def test_a_line_that_is_damaged_ends_what_is_read(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    shop = new_shop()
    journal.begin(shop, None)
    for count in range(1, 5):
        shop = leg(shop, 8.0 + count)
        journal.note("do", "leg_base", shop)
    journal.leave()
    lines = journal.path.read_bytes().split(b"\n")
    for wrong in (b"{}", b"[]", b"\xff", b'{"kind":"do","at":0,"from":0,"to":9,"put":[{}]}'):
        journal.path.write_bytes(b"\n".join([*lines[:3], wrong, *lines[4:]]))
        assert leftovers(tmp_path)[0].history().now.coupon.section.bead.leg_base == 10.0


def test_a_full_disk_loses_nothing_that_comes_later(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    journal = Journal(tmp_path)
    shop = new_shop()
    journal.begin(shop, None)
    shop = leg(shop, 9.0)
    journal.note("do", "leg_base", shop)

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr("trainer.shop.journal.os.fsync", full)
        for value in (10.0, 11.0):
            shop = leg(shop, value)
            with pytest.raises(JournalError, match="No space left"):
                journal.note("do", "leg_base", shop)
    # Half a line is on the disk, as a disk that fills up leaves it.
    with journal.path.open("ab") as file:
        file.write(b'{"kind":"do","wh')
    shop = leg(shop, 12.0)
    journal.note("do", "leg_base", shop)
    journal.leave()
    (left,) = leftovers(tmp_path)
    back = left.history()
    legs = []
    while True:
        legs.append(back.now.coupon.section.bead.leg_base)
        if back.past is None:
            break
        back = undone(back)
    assert legs == [12.0, 11.0, 10.0, 9.0, 8.0]


def test_a_journal_that_grew_too_long_begins_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("trainer.shop.journal._LARGEST", 3000)
    journal = Journal(tmp_path)
    shop = new_shop()
    journal.begin(shop, tmp_path / "my.tray.json")
    for count in range(1, 60):
        shop = leg(shop, 8.0 + count / 10.0)
        journal.note("do", "leg_base", shop)
        (file,) = tmp_path.iterdir()
        assert file.stat().st_size < 4000
    journal.leave()
    (left,) = leftovers(tmp_path)
    assert left.file == tmp_path / "my.tray.json"
    assert left.history().now.coupon.section.bead.leg_base == pytest.approx(13.9)


CHILD = """
    import sys
    from pathlib import Path
    from trainer.shop import state as changes
    from trainer.shop.building import NO_RULES
    from trainer.shop.journal import Journal
    from trainer.shop.turning import turned

    shop = changes.new_shop()
    for _ in range(20):
        shop = changes.duplicated(shop)
    journal = Journal(Path(sys.argv[1]))
    journal.begin(shop, None)
    for count in range(1, 100000):
        coupon = turned(shop.coupon, "leg_base", 8.0 + count / 1000.0, NO_RULES).coupon
        shop = changes.changed(shop, coupon)
        journal.note("do", "leg_base", shop)
        print(count, flush=True)
"""


def test_killed_at_any_moment_it_has_lost_the_last_gesture_at_most(tmp_path: Path) -> None:
    """The child says a gesture's number once it is over; killed, it may just not have said it."""
    rng = random.Random(5)
    for kill in range(8):
        folder = tmp_path / str(kill)
        child = subprocess.Popen(
            [sys.executable, "-c", textwrap.dedent(CHILD), str(folder)],
            stdout=subprocess.PIPE,
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )
        assert child.stdout is not None
        first = child.stdout.readline()
        time.sleep(rng.uniform(0.0, 0.15))
        child.send_signal(signal.SIGKILL)
        rest = child.stdout.read()
        child.wait()
        child.stdout.close()
        # A number that was cut off in the pipe isn't counted.
        told = int((first + rest).decode().split("\n")[-2])
        (left,) = leftovers(folder)
        back = left.history()
        found = round((back.now.coupon.section.bead.leg_base - 8.0) * 1000.0)
        assert told <= found <= told + 1
        assert len(back.now.coupons) == 21
        steps = 0
        while back.past is not None:
            back, steps = undone(back), steps + 1
        assert steps == found


def test_plain_is_what_the_shop_says_it_is() -> None:
    assert coupon_of(PLAIN, NO_RULES).section.bead.leg_base == 8.0
