"""A picture that lies behind a section: a JPEG, where it lies, and how large its pixels are.

It was straightened and turned into the section's frame before it was kept, so its place is two
lengths and a scale. It is looked at after the call only, and nothing is judged by it.
"""

from __future__ import annotations

import base64
import binascii
from dataclasses import dataclass, field
from typing import Final

from exercises.strict_json import Json
from geometry.curves import Vec
from geometry.faults import Fault, GeometryError, number_faults

__all__ = [
    "LARGEST_PICTURE",
    "LARGEST_PIXEL",
    "LARGEST_SIDE",
    "LONGEST_JPEG",
    "SMALLEST_PIXEL",
    "Backdrop",
    "jpeg_size",
]

LARGEST_PICTURE: Final = 192 * 1024
"""Bytes of one JPEG: some thirty coupons with a picture each fit into one tray."""

LARGEST_SIDE: Final = 1600
"""Pixels: what a canvas on a large screen shows of a bead, and 10 MB once it is unpacked."""

LONGEST_JPEG: Final = 4 * LARGEST_PICTURE // 3
"""Characters of the largest picture in base 64."""

SMALLEST_PIXEL: Final = 1e-3
LARGEST_PIXEL: Final = 10.0
"""mm: from a microscope's pixel to a sketch's."""

_FURTHEST: Final = 1000.0
"""mm from the root, as for every length of a tray."""

_AT: Final = "/backdrop"
_FRAMES: Final = frozenset({0xC0, 0xC1, 0xC2})
"""Start of frame: baseline, extended, progressive. Lossless and arithmetic ones few can show."""

_BARE: Final = frozenset({0x01, *range(0xD0, 0xD8)})
"""Markers that nothing belongs to."""


@dataclass(frozen=True, slots=True)
class Backdrop:
    """The picture behind a section.

    Parameters
    ----------
    jpeg
        The picture, as a JPEG of at most `LARGEST_PICTURE` bytes.
    left, top
        Where its upper left corner lies in the section frame, mm.
    mm_per_pixel
        How large a pixel is, mm.
    size
        Width and height, pixels.

    Examples
    --------
    >>> header = bytes.fromhex("ffd8 ffc0 000b 08 0010 0020 01 011100 ffd9")
    >>> picture = Backdrop.of(header, left=-4.0, top=12.0, mm_per_pixel=0.5)
    >>> picture.size, picture.box
    ((32, 16), (-4.0, 4.0, 12.0, 12.0))
    """

    jpeg: bytes = field(repr=False)
    left: float
    top: float
    mm_per_pixel: float
    size: tuple[int, int]

    @classmethod
    def of(cls, jpeg: bytes, left: float, top: float, mm_per_pixel: float) -> Backdrop:
        """Return a backdrop whose picture is what it says it is, as far as its header tells.

        Raises
        ------
        GeometryError
            With a `Fault` for each thing that is wrong, placed below ``/backdrop``.
        """
        found = _placing_faults(left, top, mm_per_pixel)
        if len(jpeg) > LARGEST_PICTURE:
            found.append(_too_large(len(jpeg)))
            raise GeometryError(found)
        try:
            size = jpeg_size(jpeg)
        except GeometryError as error:
            raise GeometryError([*found, *error.faults]) from error
        if found:
            raise GeometryError(found)
        return cls(jpeg, left, top, mm_per_pixel, size)

    @classmethod
    def from_text(cls, jpeg: str, left: float, top: float, mm_per_pixel: float) -> Backdrop:
        """Return a backdrop whose picture is stated in base 64.

        Raises
        ------
        GeometryError
            As `of`, and if the text is no base 64.
        """
        if len(jpeg) > LONGEST_JPEG:
            raise GeometryError([_too_large(3 * len(jpeg) // 4)])
        try:
            data = base64.b64decode(jpeg, validate=True)
        except (binascii.Error, ValueError) as error:
            words = "the picture is not in base 64"
            right = "a JPEG in base 64 (RFC 4648), without line breaks"
            fault = Fault(f"{_AT}/jpeg", "backdrop-base64", words, right)
            raise GeometryError([fault]) from error
        return cls.of(data, left, top, mm_per_pixel)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Least x, least y, greatest x, greatest y, mm."""
        width, height = (side * self.mm_per_pixel for side in self.size)
        return self.left, self.top - height, self.left + width, self.top

    @property
    def middle(self) -> Vec:
        """The point in its middle, mm."""
        left, low, right, high = self.box
        return (left + right) / 2.0, (low + high) / 2.0

    def as_document(self) -> dict[str, Json]:
        """The backdrop as a tray states it."""
        return {
            "jpeg": base64.b64encode(self.jpeg).decode("ascii"),
            "left": self.left,
            "top": self.top,
            "mm_per_pixel": self.mm_per_pixel,
        }


def jpeg_size(data: bytes) -> tuple[int, int]:
    """Return width and height (pixels) as a JPEG's header states them; nothing is unpacked.

    Raises
    ------
    GeometryError
        If it is no JPEG of one or three colours, is cut short, or larger than `LARGEST_SIDE`.

    Examples
    --------
    >>> jpeg_size(bytes.fromhex("ffd8 ffc0 000b 08 0010 0020 01 011100 ffd9"))
    (32, 16)
    >>> jpeg_size(b"GIF89a")
    Traceback (most recent call last):
    ...
    geometry.faults.GeometryError: /backdrop/jpeg: the picture is no JPEG; right would be: a JPEG
    """
    frame = _frame(data)
    if frame is None:
        words = "the picture is no JPEG"
        raise GeometryError([Fault(f"{_AT}/jpeg", "backdrop-jpeg", words, "a JPEG")])
    if not data.rstrip(b"\x00").endswith(b"\xff\xd9"):
        words, right = "the picture is cut short", "the whole of it"
        raise GeometryError([Fault(f"{_AT}/jpeg", "backdrop-cut", words, right)])
    width, height = frame
    if max(width, height) > LARGEST_SIDE:
        words = f"the picture has {width} by {height} pixels"
        right = f"at most {LARGEST_SIDE} by {LARGEST_SIDE}"
        params = {"width": width, "height": height, "at_most": LARGEST_SIDE}
        raise GeometryError([Fault(f"{_AT}/jpeg", "backdrop-sides", words, right, params)])
    return width, height


def _frame(data: bytes) -> tuple[int, int] | None:
    """Width and height out of the start of frame; None if there is no sound one."""
    if not data.startswith(b"\xff\xd8\xff"):
        return None
    at = 2
    while at + 4 <= len(data) and data[at] == 0xFF:
        marker = data[at + 1]
        if marker == 0xFF or marker in _BARE:
            at += 1 if marker == 0xFF else 2
            continue
        length = int.from_bytes(data[at + 2 : at + 4], "big")
        body = data[at + 4 : at + 2 + length]
        if marker in _FRAMES and len(body) >= 6:
            height, width = (int.from_bytes(body[i : i + 2], "big") for i in (1, 3))
            sound = body[0] == 8 and body[5] in (1, 3) and width and height
            return (width, height) if sound else None
        if marker == 0xDA or length < 2:
            return None
        at += 2 + length
    return None


def _too_large(size: int) -> Fault:
    words = f"the picture is {size // 1024} KiB long"
    right = f"at most {LARGEST_PICTURE // 1024} KiB"
    params = {"kib": size // 1024, "at_most": LARGEST_PICTURE // 1024}
    return Fault(f"{_AT}/jpeg", "backdrop-large", words, right, params)


def _placing_faults(left: float, top: float, mm_per_pixel: float) -> list[Fault]:
    values = {"left": left, "top": top, "mm_per_pixel": mm_per_pixel}
    found = number_faults(_AT, values)
    if found:
        return found
    limits = {
        "left": (-_FURTHEST, _FURTHEST),
        "top": (-_FURTHEST, _FURTHEST),
        "mm_per_pixel": (SMALLEST_PIXEL, LARGEST_PIXEL),
    }
    for key, (least, most) in limits.items():
        if not least <= values[key] <= most:
            words = f"{key} is {values[key]:g}"
            right = f"from {least:g} to {most:g} mm"
            params: dict[str, float | str] = {"key": key, "value": values[key]}
            params |= {"least": least, "most": most}
            found.append(Fault(f"{_AT}/{key}", "backdrop-place", words, right, params))
    return found
