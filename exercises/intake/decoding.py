"""From the bytes of a file to text: encodings told apart, and what is no text said by its name."""

from __future__ import annotations

import codecs
from typing import Final

from exercises.intake.refusal import refused
from geometry.faults import Fault

__all__ = ["LARGEST_SCAN", "decoded"]

LARGEST_SCAN: Final = 64 * 1024 * 1024
"""Bytes. Some two million points as text; a profile of a weld seldom has ten thousand."""

_KINDS: Final[tuple[tuple[bytes, str], ...]] = (
    (b"\x89PNG", "a PNG picture"),
    (b"\xff\xd8\xff", "a JPEG picture"),
    (b"PK\x03\x04", "a zip archive or a spreadsheet"),
    (b"\xd0\xcf\x11\xe0", "an old spreadsheet or document"),
    (b"%PDF", "a PDF"),
    (b"AC10", "a DWG drawing"),
    (b"\x1f\x8b", "a gzip archive"),
)

_MARKS: Final[tuple[tuple[bytes, str], ...]] = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)

_CONTROLS: Final = bytes(range(9)) + bytes(range(14, 32))


def decoded(data: bytes, name: str, *, largest: int = LARGEST_SCAN) -> tuple[str, str]:
    """Return the text of a file and its encoding.

    UTF-8, UTF-16 and UTF-32 are told by their marks, UTF-16 without one by its zeros; what is none
    of them is read as Windows-1252, whose digits are the same.

    Raises
    ------
    IntakeError
        If it is too large, empty, or no text; says by name what it is, where that can be seen.

    Examples
    --------
    >>> decoded("x;z [µm]".encode("cp1252"), "a.csv")
    ('x;z [µm]', 'cp1252')
    """
    if len(data) > largest:
        raise refused(
            name,
            Fault(
                "",
                "scan-too-large",
                f"the file is larger than {largest // 1024 // 1024} MiB",
                "a smaller one: one profile, or every tenth point",
                {"mib": largest // 1024 // 1024},
            ),
        )
    if not data.strip(b"\0 \t\r\n"):
        raise refused(
            name,
            Fault("", "scan-empty", "there is nothing in it", "two columns of numbers, x and z"),
        )
    for start, kind in _KINDS:
        if data.startswith(start):
            text = f"this is {kind}, not text"
            right = "points as text (CSV, TSV), or an outline as DXF or SVG"
            raise refused(name, Fault("", "scan-not-text", text, right, {"what": kind}))
    encoding = _encoding(data)
    if not encoding.startswith("utf-") or encoding == "utf-8":
        at = next((at for at, byte in enumerate(data[:4096]) if byte in _CONTROLS), None)
        if at is not None:
            text = f"byte {at + 1} (0x{data[at]:02x}) is in no text"
            right = "points as text (CSV, TSV), or an outline as DXF or SVG"
            told: dict[str, float | str] = {"byte": float(at + 1), "hex": f"{data[at]:02x}"}
            raise refused(name, Fault("", "scan-not-text", text, right, told))
    try:
        return data.decode(encoding), encoding
    except UnicodeDecodeError as error:
        raise refused(
            name,
            Fault(
                "",
                "scan-encoding",
                f"byte {error.start + 1} (0x{data[error.start]:02x}) fits no encoding of text",
                "text in UTF-8",
                {"byte": float(error.start + 1), "hex": f"{data[error.start]:02x}"},
            ),
        ) from error


def _encoding(data: bytes) -> str:
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return encoding
    head = data[:4096]
    zeros = head.count(0)
    if zeros * 3 > len(head) and len(head) >= 4:
        return "utf-16-le" if head[1::2].count(0) > head[0::2].count(0) else "utf-16-be"
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"
