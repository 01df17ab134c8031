"""The program's own icon: a leaf that stands on a bead, in all sizes that desktops ask for.

The drawings are ``assets/icons/program/large.svg`` and, for 32 pixels and less, ``small.svg``. What
the window shows and a shortcut can use is made of them by

    python -m trainer.look.program_icon
"""

from __future__ import annotations

import struct
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QRectF, Qt
from PySide6.QtGui import QGuiApplication, QIcon, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from trainer.assets import asset

__all__ = ["ICO_SIZES", "SIZES", "as_ico", "drawn", "main", "program_icon"]

SIZES: Final = (16, 24, 32, 48, 64, 128, 256)
"""Of the pictures, px."""

ICO_SIZES: Final = (16, 24, 32, 48, 256)
"""Of those in the .ico file, px."""

_SMALL: Final = 32
"""px: up to here the drawing with few and thick lines is used."""


def program_icon() -> QIcon:
    """Return the icon, from the pictures that lie beside its drawings."""
    icon = QIcon()
    for size in SIZES:
        icon.addFile(str(asset("icons", "program", f"{size}.png")))
    return icon


def drawn(size: int) -> QImage:
    """Return the icon as its drawing says, `size` pixels wide and high."""
    name = "small.svg" if size <= _SMALL else "large.svg"
    image = QImage(size, size, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer = QSvgRenderer(str(asset("icons", "program", name)))
    renderer.render(painter, QRectF(0.0, 0.0, size, size))
    painter.end()
    return image.convertToFormat(QImage.Format.Format_ARGB32)


def as_ico(pictures: dict[int, bytes]) -> bytes:
    """Return an .ico file of PNG pictures by their size in pixels.

    Examples
    --------
    >>> as_ico({16: b"picture"})[:6].hex(), len(as_ico({16: b"picture"}))
    ('000001000100', 29)
    """
    head = struct.pack("<HHH", 0, 1, len(pictures))
    at = len(head) + 16 * len(pictures)
    rows, bodies = b"", b""
    for size, picture in pictures.items():
        # 256 is written as 0.
        side = size % 256
        rows += struct.pack("<BBBBHHII", side, side, 0, 0, 1, 32, len(picture), at)
        bodies += picture
        at += len(picture)
    return head + rows + bodies


def _as_png(image: QImage) -> bytes:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    # The stubs want bytes for the format's name, the binding takes nothing but text.
    image.save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())


def main() -> None:
    """Make the pictures and the .ico file from the drawings."""
    QGuiApplication([])
    folder = Path(str(asset("icons", "program")))
    pictures = {size: _as_png(drawn(size)) for size in SIZES}
    for size, picture in pictures.items():
        (folder / f"{size}.png").write_bytes(picture)
    icon = as_ico({size: pictures[size] for size in ICO_SIZES})
    (folder / "toe-and-throat.ico").write_bytes(icon)


if __name__ == "__main__":
    main()
