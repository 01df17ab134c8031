"""A sitting from its file to what is handed in, in the real window."""

from __future__ import annotations

from contextlib import closing
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from exercises.sitting.plan import Entrant
from exercises.sitting.result import Result
from exercises.sitting.result_file import read_result
from tests.trainer.taking.conftest import MINUTE, PASSPHRASE, Program, plan_of, sealed
from trainer.bench.state import open_coupon
from trainer.school.reading import ClassBook
from trainer.school.shutting import opened_by
from trainer.sealing.result_files import open_sealed
from trainer.taking.dialogs import HandInDialog

Key = Qt.Key


def result_of(program: Program) -> Result:
    (file,) = program.places.results.iterdir()
    return read_result(open_sealed(file, PASSPHRASE, "result").body)


def test_calls_are_made_changed_and_handed_in(program: Program) -> None:
    program.begin()
    first = program.state.coupon
    program.call()
    program.key(Key.Key_Return)
    assert program.state.coupon is not first
    program.key(Key.Key_PageUp)
    assert program.state.coupon is first
    assert program.state.face == "convex"
    assert [reading.state for reading in program.state.readings] == ["daylight"]
    program.key(Key.Key_P)
    program.hand_in()
    result = result_of(program)
    assert result.ended == "finished"
    assert [item.answered for item in result.items] == [True, False, False, False]
    attempt = result.items[0].attempt
    assert attempt is not None
    assert (attempt["face"], attempt["disposition"]) == ("flat", "add weld metal")
    assert result.items[0].visits == 2
    assert [row[-1] for row in result.items[0].handling][:2] == ["pick 8 mm leg", "press home"]
    assert result.items[0].zoom["picture"] > 0.0  # type: ignore[operator]
    assert not list(program.places.sittings.iterdir())


def test_what_is_handed_in_is_in_the_logbook_and_how_it_went_is_not_told(program: Program) -> None:
    spoken: list[str] = []
    program.bench.announced.connect(spoken.append)
    program.begin()
    program.running.announced.connect(spoken.append)
    program.call()
    program.hand_in()
    assert program.page.state.handed is not None
    merged = program.page.state.handed.merged
    assert merged is not None
    assert (merged.came, merged.attempts) == ("new", 1)
    said = program.words(program.page)
    assert "Your sitting is handed in" in said
    assert "1 answered, 3 not yet seen" in said
    told = " ".join([said, *spoken]).lower()
    tells = ("score", "wrong", "critical", "passed", "%", "of 100", "daylight", "touch,")
    assert not [word for word in tells if word in told]
    assert program.state.phase == "handling"


def test_the_bench_is_given_back_as_it_was(program: Program) -> None:
    program.frame.show_screen("bench")
    program.bench.canvas.setFocus()
    program.key(Key.Key_8, Key.Key_PageDown, Key.Key_6)
    before, records = program.state, program.bench.records
    program.begin()
    assert program.bench.records is None
    assert not program.frame.bar.isVisible()
    program.call()
    program.hand_in()
    assert (program.state.coupon, program.state.leaf) == (before.coupon, before.leaf)
    assert program.bench.course.index == 1
    assert program.bench.records is records
    program.click(program.page.done_step.close_button)
    program.frame.show_screen("bench")
    assert program.frame.bar.isVisible()
    program.key(Key.Key_PageUp)
    assert program.bench.course.index == 0
    assert program.state.leaf is not None
    # Practice goes on as ever: a call is judged at once, and kept.
    program.key(Key.Key_X, Key.Key_A, Key.Key_Return)
    assert program.state.phase == "debrief"


def test_a_drill_on_the_bench_ends_first(program: Program) -> None:
    program.drilling.begin(program.drilling._recipe, seed=5)
    program.begin()
    assert program.drilling.drill is None
    program.call()
    program.hand_in()
    assert program.bench.onward is None


def test_extra_time_is_in_the_rules_and_on_the_clock(program: Program) -> None:
    plan = plan_of(entrants=(Entrant("k-07", extra=0.25),))
    program.open(sealed(program.folder, plan), "K-07")
    assert "You have 50 minutes" in program.words(program.page)
    program.click(program.button("Begin: the clock starts"))
    assert program.view.bar.time.words.text() == "50 min left"


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("k-70", "not on the list"),
        ("", "Type your code"),
        ("k\u0007", "can't be a code"),
    ],
)
def test_a_code_that_may_not_sit_is_told_so(program: Program, code: str, words: str) -> None:
    plan = plan_of(entrants=(Entrant("k-07"),))
    program.open(sealed(program.folder, plan), "k-07")
    program.click(program.button("Back"))
    program.page.code_step.line.setText(code)
    program.click(program.button("Go on"))
    assert words in program.words(program.page)
    assert program.page.state.step == "code"


def test_the_list_before_handing_in_leads_back_to_what_is_open(program: Program) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_Return, Key.Key_V, Key.Key_Return)
    program.key(Key.Key_H, ctrl=True)
    dialog = program.dialog()
    assert isinstance(dialog, HandInDialog)
    rows = [row.text() for row in dialog.rows]
    assert rows == [
        "Coupon 2: seen, marked for review",
        "Coupon 3: seen, on the bench now",
        "Coupon 4: not yet seen",
    ]
    program.click(dialog.rows[0])
    assert program.running.sitting.at == 1
    # Enter in the next one goes on with the sitting, whoever pressed it without reading.
    program.key(Key.Key_H, ctrl=True)
    program.key(Key.Key_Return)
    assert program.page.running is not None


def test_after_the_last_coupon_all_are_looked_over(program: Program) -> None:
    program.begin(plan_of(1))
    assert program.bench.record_bar.button.accessibleName() == "Look over, and hand in..."
    program.call()
    program.key(Key.Key_Return)
    assert "Nothing is left open" in program.words(program.dialog())


def test_an_incomplete_call_is_kept_and_counts_as_unanswered(program: Program) -> None:
    program.begin()
    program.key(Key.Key_X)
    program.hand_in()
    item = result_of(program).items[0]
    assert item.attempt is not None
    assert (item.attempt["face"], item.grade, item.answered) == ("convex", None, False)


def test_the_time_that_is_up_ends_it_with_what_was_stated(program: Program) -> None:
    program.begin()
    program.call()
    program.key(Key.Key_H, ctrl=True)
    program.clock.run(40 * MINUTE)
    program.running.tick()
    program.wait_for_the_end()
    assert not [d for d in program.frame.dialogs if d.isVisible()]
    assert "The time is up" in program.words(program.page)
    result = result_of(program)
    assert result.ended == "time up"
    assert result.items[0].answered


def test_a_copy_can_be_saved(program: Program, monkeypatch: pytest.MonkeyPatch) -> None:
    program.begin()
    program.hand_in()
    to = program.folder / "stick.result"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to), ""))
    program.click(program.button("Save a copy..."))
    (file,) = program.places.results.iterdir()
    assert to.read_bytes() == file.read_bytes()
    assert str(to) in program.words(program.page)


def test_the_same_code_again_is_told_and_both_are_kept(program: Program) -> None:
    program.begin()
    program.hand_in()
    program.click(program.button("Done"))
    program.open(sealed(program.folder, plan_of()), "K-07")
    assert "before" in program.page.rules_step.trouble.text()
    program.click(program.button("Begin: the clock starts"))
    program.hand_in()
    handed = program.page.state.handed
    assert handed is not None
    assert handed.merged is not None
    assert handed.merged.came == "clash"
    assert len(list(program.places.results.iterdir())) == 2


def test_a_logbook_that_is_not_open_leaves_the_result_in_its_file(program: Program) -> None:
    program.begin()
    program.keeping.logbook = None
    program.hand_in()
    assert "could not be taken into the logbook" in program.words(program.page)
    assert result_of(program).items


def test_coupons_with_one_id_are_told_apart(program: Program) -> None:
    """Two trays may call a coupon alike; here one tray is asked twice."""
    part = plan_of(1).parts[0]
    program.begin(replace(plan_of(1), parts=(part, part)))
    program.call()
    program.key(Key.Key_Return)
    assert program.state.face is None
    assert program.state.leaf is None
    assert program.state.handling == open_coupon(program.state.coupon).handling


def test_it_fills_the_screen_unless_unticked_and_the_window_is_as_it_was_after(
    program: Program,
) -> None:
    program.page.rules_step.fill.setChecked(True)
    program.begin()
    assert program.window.isFullScreen()
    program.key(Key.Key_F11)
    assert not program.window.isFullScreen()
    program.key(Key.Key_F11)
    assert program.window.isFullScreen()
    program.call()
    program.hand_in()
    assert not program.window.isFullScreen()
    assert program.window.isVisible()


def test_whoever_unticks_it_sits_in_the_window(program: Program) -> None:
    program.page.rules_step.fill.setChecked(False)
    program.begin()
    assert not program.window.isFullScreen()


def test_what_was_handed_in_is_shut_until_the_passphrase_is_typed_and_again_for_the_next(
    program: Program,
) -> None:
    program.begin(plan_of(2))
    program.call()
    program.hand_in()
    logbook = program.keeping.logbook
    assert logbook is not None
    with closing(ClassBook.of_logbook(logbook.path, logbook.opened)) as book:
        assert book.papers() == []
        logbook.opened |= opened_by(PASSPHRASE, book.shut())
    with closing(ClassBook.of_logbook(logbook.path, logbook.opened)) as book:
        assert len(book.papers()) == 1
    program.click(program.button("Done"))
    program.begin(plan_of(2), "k-08")
    assert logbook.opened == set()
