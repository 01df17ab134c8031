"""A sitting from its file to what is handed in, in the real window."""

from __future__ import annotations

from PySide6.QtCore import Qt

from exercises.sitting.result_file import read_result
from tests.trainer.taking.conftest import PASSPHRASE, Program
from trainer.sealing.result_files import open_sealed

Key = Qt.Key


def test_calls_are_made_changed_and_handed_in(program: Program) -> None:
    program.begin()
    first = program.state.coupon
    program.call()
    program.key(Key.Key_Return)
    assert program.state.coupon is not first
    program.key(Key.Key_PageUp)
    assert program.state.coupon is first
    assert program.state.face == "convex"
    program.key(Key.Key_P)
    program.hand_in()
    (file,) = program.places.results.iterdir()
    result = read_result(open_sealed(file, PASSPHRASE, "result").body)
    assert result.ended == "finished"
    assert [item.answered for item in result.items] == [True, False, False, False]
    assert result.items[0].attempt["face"] == "flat"
    assert result.items[0].visits == 2
    assert not list(program.places.sittings.iterdir())
