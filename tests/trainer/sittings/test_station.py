"""The station: another server is pushed to, and the one before is waited for by nobody."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from trainer.logbook.keeping import Keeping
from trainer.school.address import Address
from trainer.school.pushing import Pusher
from trainer.sittings.station import Station

ONE, OTHER = (Address(f"postgresql://{name}@127.0.0.1:9/school") for name in ("bench", "ann"))


def test_a_server_that_is_left_holds_up_nothing_and_the_end_waits_for_a_batch(
    qtbot: QtBot, keeping: Keeping, monkeypatch: pytest.MonkeyPatch
) -> None:
    station = Station(keeping.path)
    waited: list[float] = []
    stop = Pusher.stop

    def noted(self: Pusher, within_s: float = 1.0) -> None:
        waited.append(within_s)
        stop(self, 10.0)

    monkeypatch.setattr(Pusher, "stop", noted)
    station.serve(ONE)
    with qtbot.waitSignal(station.changed):
        station.serve(OTHER)
    station.serve(OTHER)
    assert station.address == OTHER
    assert waited == [0.0]
    station.stop()
    assert waited == [0.0, 1.0]
    assert station.state is None


def test_without_a_logbook_nothing_is_pushed(qtbot: QtBot, tmp_path: Path) -> None:
    station = Station(tmp_path / "nowhere.sqlite3")
    with qtbot.waitSignal(station.changed):
        station.serve(ONE)
    assert station.state is None
    station.stop()
