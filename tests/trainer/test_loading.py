"""Several pieces of work beside the window at a time: none endangers what is the window's."""

from __future__ import annotations

import gc
import sys
import threading
import weakref
from collections.abc import Iterator
from functools import partial

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from trainer.loading import Loading


class Gate:
    """Work that goes on until it is let through."""

    def __init__(self) -> None:
        self._open = threading.Event()

    def open(self) -> None:
        self._open.set()

    def work(self, _: object = None) -> str:
        self._open.wait()
        return "through"


@pytest.fixture
def gates() -> Iterator[tuple[Gate, Gate]]:
    pair = Gate(), Gate()
    yield pair
    for gate in pair:
        gate.open()


def test_rubbish_stays_until_the_last_has_ended(qtbot: QtBot, gates: tuple[Gate, Gate]) -> None:
    turn = sys.getswitchinterval()
    loadings = [Loading(gate.work) for gate in gates]
    for loading in loadings:
        loading.start()
    assert not gc.isenabled()
    for gate, loading, collects in zip(gates, loadings, (False, True), strict=True):
        with qtbot.waitSignal(loading.over):
            gate.open()
        assert loading.result == "through"
        assert gc.isenabled() is collects
    assert sys.getswitchinterval() == turn


def test_one_made_meanwhile_leaves_nothing_changed(gates: tuple[Gate, Gate]) -> None:
    turn = sys.getswitchinterval()
    first = Loading(gates[0].work)
    first.start()
    second = Loading(gates[1].work)
    second.start()
    for gate in gates:
        gate.open()
    for loading in (first, second, first):
        loading.wait()
    assert gc.isenabled()
    assert sys.getswitchinterval() == turn


def test_who_collects_no_rubbish_is_left_to_it(gates: tuple[Gate, Gate]) -> None:
    loading = Loading(gates[0].work)
    gc.disable()
    try:
        loading.start()
        gates[0].open()
        loading.wait()
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_what_the_work_holds_ends_in_the_window_s_thread(
    qtbot: QtBot, gates: tuple[Gate, Gate]
) -> None:
    """Nobody but the work has it any more; the thread mustn't be the one that takes it down."""
    gate, ended = gates[0], list[threading.Thread]()
    held = QObject()
    weakref.finalize(held, lambda: ended.append(threading.current_thread()))
    loading = Loading(partial(gate.work, held))
    loading.start()
    (thread,) = (each for each in threading.enumerate() if each.name == "loading")
    del loading, held
    gate.open()
    thread.join()
    assert not ended
    qtbot.waitUntil(lambda: bool(ended))
    assert ended == [threading.main_thread()]
    assert gc.isenabled()
