"""The words of faults of pictures, by code, in English: marked, so that they can be translated."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP

__all__ = ["CODES"]

_BACKDROP: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "backdrop-base64": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is not in base 64"),
            QT_TRANSLATE_NOOP("Faults", "a JPEG in base 64 (RFC 4648), without line breaks"),
        ),
    ),
    "backdrop-jpeg": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is no JPEG"),
            QT_TRANSLATE_NOOP("Faults", "a JPEG"),
        ),
    ),
    "backdrop-cut": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is cut short"),
            QT_TRANSLATE_NOOP("Faults", "the whole of it"),
        ),
    ),
    "backdrop-sides": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture has {width} by {height} pixels"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most} by {at_most}"),
        ),
    ),
    "backdrop-large": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is {kib} KiB long"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most} KiB"),
        ),
    ),
    "backdrop-place": (
        (
            QT_TRANSLATE_NOOP("Faults", "{key} is {value}"),
            QT_TRANSLATE_NOOP("Faults", "from {least} to {most} mm"),
        ),
    ),
}

CODES: Final[dict[str, tuple[tuple[str, str], ...]]] = {**_BACKDROP}
"""The words of every code, wrong and right."""
