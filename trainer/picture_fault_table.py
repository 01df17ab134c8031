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

_PHOTO: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "photo-file-large": (
        (
            QT_TRANSLATE_NOOP("Faults", "the file is larger than {mib} MiB"),
            QT_TRANSLATE_NOOP("Faults", "a smaller one"),
        ),
    ),
    "photo-kind": (
        (
            QT_TRANSLATE_NOOP("Faults", "this is no picture that can be read"),
            QT_TRANSLATE_NOOP("Faults", "PNG, JPEG, TIFF or WebP"),
        ),
    ),
    "photo-pixels": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture has {megapixels} megapixels"),
            QT_TRANSLATE_NOOP("Faults", "at most {at_most}"),
        ),
    ),
    "photo-sides": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture has {width} by {height} pixels"),
            QT_TRANSLATE_NOOP("Faults", "sides of {least} to {most} pixels"),
        ),
    ),
    "photo-cut": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is cut short"),
            QT_TRANSLATE_NOOP("Faults", "the whole file, copied or saved again"),
        ),
    ),
    "photo-broken": (
        (
            QT_TRANSLATE_NOOP("Faults", "the picture is broken"),
            QT_TRANSLATE_NOOP("Faults", "the file, copied or saved again"),
        ),
    ),
    "photo-memory": (
        (
            QT_TRANSLATE_NOOP("Faults", "there is too little memory for the picture"),
            QT_TRANSLATE_NOOP("Faults", "a smaller one"),
        ),
    ),
    "photo-corners": (
        (
            QT_TRANSLATE_NOOP("Faults", "the four points are no rectangle seen askew"),
            QT_TRANSLATE_NOOP("Faults", "the corners of one"),
        ),
    ),
    "photo-rectangle": (
        (
            QT_TRANSLATE_NOOP("Faults", "the rectangle's sides are not known"),
            QT_TRANSLATE_NOOP("Faults", "their lengths, or their ratio"),
        ),
    ),
    "photo-scale": (
        (
            QT_TRANSLATE_NOOP("Faults", "no length is known"),
            QT_TRANSLATE_NOOP("Faults", "two points and the length between them"),
        ),
    ),
    "photo-together": (
        (
            QT_TRANSLATE_NOOP("Faults", "the two points of the length lie together"),
            QT_TRANSLATE_NOOP("Faults", "two that are apart"),
        ),
    ),
    "photo-member": (
        (
            QT_TRANSLATE_NOOP("Faults", "the {member}'s face is not marked"),
            QT_TRANSLATE_NOOP("Faults", "two points on it, or more"),
        ),
    ),
    "photo-parallel": (
        (
            QT_TRANSLATE_NOOP("Faults", "the members are parallel"),
            QT_TRANSLATE_NOOP("Faults", "two that meet at a root"),
        ),
    ),
    "photo-angle": (
        (
            QT_TRANSLATE_NOOP("Faults", "the members meet at {angle} degrees"),
            QT_TRANSLATE_NOOP("Faults", "{lowest} to {highest} degrees"),
        ),
    ),
    "photo-face": (
        (
            QT_TRANSLATE_NOOP("Faults", "the face is not traced"),
            QT_TRANSLATE_NOOP("Faults", "two points on it or more, from toe to toe"),
        ),
    ),
    "photo-no-toe": (
        (
            QT_TRANSLATE_NOOP("Faults", "the face meets no member"),
            QT_TRANSLATE_NOOP("Faults", "a trace from one member to the other"),
        ),
    ),
}

CODES: Final[dict[str, tuple[tuple[str, str], ...]]] = {**_BACKDROP, **_PHOTO}
"""The words of every code, wrong and right."""
