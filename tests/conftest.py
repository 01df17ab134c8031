"""What every test stands on: no screen needed, no home touched, no unexpected word in the log.

This file imports no Qt: the core's tests run where Qt isn't installed.
"""

from __future__ import annotations

import logging
import os
import re
from collections.abc import Iterator
from pathlib import Path

import hypothesis
import pytest

# Before anything creates an application. Someone who wants to watch the tests sets it themself.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# The same examples every time, so that a run tells of the change and not of its luck; a slow
# example is no failure, since machines differ and are shared. The search for new ones is a run of
# its own: --hypothesis-profile=search.
hypothesis.settings.register_profile("house", deadline=None, derandomize=True, print_blob=True)
hypothesis.settings.register_profile("search", deadline=None, max_examples=1000, print_blob=True)
hypothesis.settings.load_profile("house")


class _Ear(logging.Handler):
    """Keeps every record at warning level and above."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.records: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def silence(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that logs a warning or worse, unless its `logs` marker expects that line."""
    marker = request.node.get_closest_marker("logs")
    expected = re.compile(marker.args[0]) if marker else None
    ear = _Ear()
    root = logging.getLogger()
    root.addHandler(ear)
    try:
        yield
    finally:
        root.removeHandler(ear)
    lines = [f"{record.name}: {record.getMessage()}" for record in ear.records]
    unexpected = [line for line in lines if not (expected and expected.search(line))]
    if unexpected:
        pytest.fail("unexpected log lines:\n" + "\n".join(unexpected), pytrace=False)
    if expected and not lines:
        pytest.fail(f"no log line matches {expected.pattern!r}", pytrace=False)


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A home of the test's own, so that no test reads or writes the records of whoever runs it."""
    folder = tmp_path / "home"
    for variable, name in (
        ("HOME", "."),
        ("XDG_CONFIG_HOME", "config"),
        ("XDG_DATA_HOME", "data"),
        ("XDG_CACHE_HOME", "cache"),
        ("XDG_STATE_HOME", "state"),
        ("APPDATA", "config"),
        ("LOCALAPPDATA", "data"),
    ):
        monkeypatch.setenv(variable, str(folder / name))
    return folder
