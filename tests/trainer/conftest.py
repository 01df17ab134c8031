"""What every test of the program stands on. It imports no Qt: the commands are tested without."""

from __future__ import annotations

import sys

import pytest


@pytest.fixture(autouse=True)
def cleared() -> None:
    """The windows of the tests before are gone for good.

    Qt deletes what is to be deleted later only from within a loop of events, which a test that is
    over no longer runs; and a change of theme goes through every widget that there still is.
    """
    core = sys.modules.get("PySide6.QtCore")
    if core is not None and core.QCoreApplication.instance() is not None:
        core.QCoreApplication.sendPostedEvents(None, core.QEvent.Type.DeferredDelete.value)
