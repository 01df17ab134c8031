"""A screen of our own under X, and a hand on its pointer: real events, no synthetic ones.

XTest is reached through ctypes, since an event a millisecond is too much for a process each.
"""

from __future__ import annotations

import contextlib
import ctypes
import ctypes.util
import itertools
import math
import os
import subprocess
import time
from collections.abc import Iterator, Sequence
from typing import Self

__all__ = ["Pointer", "sampled", "virtual_screen"]


@contextlib.contextmanager
def virtual_screen(width: int = 1600, height: int = 1000) -> Iterator[str]:
    """Start an X server on a free display, point this process at it, and stop it at the end.

    Parameters
    ----------
    width, height
        Pixels.

    Raises
    ------
    FileNotFoundError
        If there is no Xvfb; Debian has it in the package xvfb.
    """
    reading, writing = os.pipe()
    command = ["Xvfb", "-displayfd", str(writing), "-nolisten", "tcp"]
    command += ["-screen", "0", f"{width}x{height}x24"]
    server = subprocess.Popen(command, pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    before = {name: os.environ.get(name) for name in ("DISPLAY", "QT_QPA_PLATFORM")}
    try:
        with os.fdopen(reading, encoding="ascii") as said:
            display = ":" + said.readline().strip()
        os.environ.update(DISPLAY=display, QT_QPA_PLATFORM="xcb")
        yield display
    finally:
        for name, value in before.items():
            os.environ.pop(name, None) if value is None else os.environ.update({name: value})
        server.terminate()
        server.wait()


class Pointer:
    """The pointer of the display in ``DISPLAY``, moved through XTest.

    Places are device pixels of the whole screen.
    """

    def __init__(self) -> None:
        x11 = ctypes.util.find_library("X11")
        xtst = ctypes.util.find_library("Xtst")
        if x11 is None or xtst is None:
            raise FileNotFoundError("libX11 or libXtst is missing; Debian: libx11-6 libxtst6")
        self._x11 = ctypes.CDLL(x11)
        self._xtst = ctypes.CDLL(xtst)
        self._x11.XOpenDisplay.restype = ctypes.c_void_p
        self._x11.XKeysymToKeycode.restype = ctypes.c_ubyte
        self._x11.XGetImage.restype = ctypes.c_void_p
        self._x11.XGetPixel.restype = ctypes.c_ulong
        self._x11.XDefaultRootWindow.restype = ctypes.c_ulong
        self._display = ctypes.c_void_p(self._x11.XOpenDisplay(None))
        if self._display.value is None:
            raise OSError("no X display answers")

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._x11.XCloseDisplay(self._display)

    def move(self, x: float, y: float) -> None:
        """Move to a place."""
        self._xtst.XTestFakeMotionEvent(self._display, -1, round(x), round(y), 0)
        self._x11.XFlush(self._display)

    def press(self, button: int = 1) -> None:
        """Press a button: 1 left, 2 middle, 3 right."""
        self._button(button, 1)

    def release(self, button: int = 1) -> None:
        """Let a button go."""
        self._button(button, 0)

    def _button(self, button: int, down: int) -> None:
        self._xtst.XTestFakeButtonEvent(self._display, button, down, 0)
        self._x11.XFlush(self._display)

    def pixel(self, x: float, y: float) -> tuple[int, int, int]:
        """Return the colour of a pixel as it stands on the screen, the pointer not counted."""
        root = ctypes.c_ulong(self._x11.XDefaultRootWindow(self._display))
        every = ctypes.c_ulong(0xFFFFFF)
        pixmap = 2
        got = self._x11.XGetImage(self._display, root, round(x), round(y), 1, 1, every, pixmap)
        image = ctypes.c_void_p(got)
        value = int(self._x11.XGetPixel(image, 0, 0))
        self._x11.XDestroyImage(image)
        return value >> 16 & 255, value >> 8 & 255, value & 255

    def play(self, path: Sequence[tuple[float, float, float]]) -> list[float]:
        """Go through `path`, rows of (ms from the start, x, y), each at its time.

        Returns
        -------
        list of float
            When each was sent, seconds of `time.monotonic`.
        """
        start = time.monotonic()
        sent = []
        for ms, x, y in path:
            wait = start + ms / 1000.0 - time.monotonic()
            if wait > 0.0:
                time.sleep(wait)
            self.move(x, y)
            sent.append(time.monotonic())
        return sent


def sampled(
    corners: Sequence[tuple[float, float, float]], rate: float
) -> list[tuple[float, float, float]]:
    """Fill the straight lines between rows of (ms, x, y) at `rate` rows a second.

    Examples
    --------
    >>> sampled([(0.0, 0.0, 0.0), (20.0, 2.0, 4.0)], 100.0)
    [(0.0, 0.0, 0.0), (10.0, 1.0, 2.0), (20.0, 2.0, 4.0)]
    """
    rows = [corners[0]]
    for (t0, x0, y0), (t1, x1, y1) in itertools.pairwise(corners):
        count = max(1, math.ceil((t1 - t0) * rate / 1000.0))
        for i in range(1, count + 1):
            part = i / count
            rows.append((t0 + (t1 - t0) * part, x0 + (x1 - x0) * part, y0 + (y1 - y0) * part))
    return rows
