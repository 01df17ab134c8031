"""Python's own import, beneath the one that Qt's binding puts over it."""

from __future__ import annotations

import builtins
import os
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

__all__ = ["swift_imports"]

_PLAIN_IMPORT: Final = builtins.__import__
"""Taken before Qt is there: nothing of Qt may be imported before this module."""


@contextmanager
def swift_imports() -> Iterator[None]:
    """Let the core be imported by Python's own import.

    Qt's binding puts a function of its own before every import, for a feature that we don't use:
    it makes numpy's thousands of imports half as slow again.

    Examples
    --------
    >>> with swift_imports():
    ...     import math
    """
    # Our arrays are small: threads for linear algebra would only take time to start.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    qt_import, builtins.__import__ = builtins.__import__, _PLAIN_IMPORT
    try:
        yield
    finally:
        builtins.__import__ = qt_import
