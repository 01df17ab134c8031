"""The two clocks of a sitting: the wall's, and one that stands still while the machine sleeps.

Python's monotonic clock stands still in sleep on Linux and macOS; on Windows it runs on, so there
the system is asked for the time that it was awake.
"""

from __future__ import annotations

import sys
import time
from typing import Protocol

__all__ = ["Clock", "SystemClock"]

if sys.platform == "win32":
    import ctypes

    def _awake() -> int:
        """Ms for which the machine has been awake since it was started."""
        ticks = ctypes.c_ulonglong()
        if not ctypes.windll.kernel32.QueryUnbiasedInterruptTime(ctypes.byref(ticks)):
            return time.monotonic_ns() // 1_000_000
        return ticks.value // 10_000  # of 100 ns

else:

    def _awake() -> int:
        """Ms by a clock that nobody can set and that stands still in sleep."""
        return time.monotonic_ns() // 1_000_000


class Clock(Protocol):
    """What a sitting's time is read from."""

    def wall(self) -> int:
        """Ms since 1970; somebody may set it."""

    def awake(self) -> int:
        """Ms since any moment; runs while the machine is awake, and nobody can set it."""


class SystemClock:
    """The clocks of this machine.

    Examples
    --------
    >>> clock = SystemClock()
    >>> before = clock.awake()
    >>> clock.awake() >= before and clock.wall() > 1_700_000_000_000
    True
    """

    def wall(self) -> int:
        """Ms since 1970; none for a clock that stands before."""
        return max(0, time.time_ns() // 1_000_000)

    def awake(self) -> int:
        """Ms for which the machine was awake, since some moment before."""
        return _awake()
