"""Work in turns of the event loop."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QTimer
from pytestqt.qtbot import QtBot

from trainer.turns import in_turns


def test_what_is_asked_for_meanwhile_comes_between(qtbot: QtBot) -> None:
    done: list[str] = []

    def work() -> Iterator[None]:
        done.append("first")
        QTimer.singleShot(0, lambda: done.append("between"))
        yield
        done.append("second")

    in_turns(work())
    assert done == ["first"]
    qtbot.waitUntil(lambda: len(done) == 3)
    assert done == ["first", "between", "second"]


def test_work_that_raises_is_not_gone_on_with(qtbot: QtBot) -> None:
    done: list[str] = []

    def work() -> Iterator[None]:
        yield
        done.append("tried")
        raise RuntimeError("no")

    in_turns(work())
    with qtbot.captureExceptions() as caught:
        qtbot.waitUntil(lambda: bool(done))
        qtbot.wait(5)
    assert [kind for kind, *_ in caught] == [RuntimeError]
    assert done == ["tried"]


def test_the_first_part_is_done_at_once_and_may_raise_there() -> None:
    def work() -> Iterator[None]:
        raise RuntimeError("no")
        yield

    with pytest.raises(RuntimeError):
        in_turns(work())
