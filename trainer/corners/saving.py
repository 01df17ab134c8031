"""Getting the picture out: to the clipboard, or to a file of a kind that was asked for."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Final, Literal

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QGuiApplication, QImageWriter
from PySide6.QtWidgets import QFileDialog, QWidget

from trainer.bench.translation import translate
from trainer.corners.composing import PRINT, SLIDE, Sheet, Subject, pdf_bytes, picture, svg_bytes
from trainer.look.tokens import LIGHT

__all__ = ["KINDS", "Kind", "ask_where", "copy_picture", "save_picture"]

Kind = Literal["slide", "print", "svg", "pdf"]
KINDS: Final[tuple[Kind, ...]] = ("slide", "print", "svg", "pdf")

_SUFFIXES: Final[dict[Kind, str]] = {
    "slide": ".png",
    "print": ".png",
    "svg": ".svg",
    "pdf": ".pdf",
}


def copy_picture(subject: Subject) -> None:
    """Put the picture on the clipboard, sized for a slide."""
    QGuiApplication.clipboard().setImage(picture(subject, SLIDE))


def save_picture(subject: Subject, kind: Kind, path: Path) -> None:
    """Write the picture whole, or leave what was there.

    Parameters
    ----------
    subject
        What it is of. A slide keeps the screen's theme; what is for print is light.
    kind
        One of `KINDS`.
    path
        Where to.

    Raises
    ------
    OSError
        If it can't be written.
    """
    made: dict[Kind, Callable[[], bytes]] = {
        "slide": lambda: _png(subject, SLIDE),
        "print": lambda: _png(_for_print(subject), PRINT),
        "svg": lambda: svg_bytes(_for_print(subject)),
        "pdf": lambda: bytes(pdf_bytes(_for_print(subject)).data()),
    }
    data = made[kind]()
    temporary = path.with_name(f".{path.name}.new")
    try:
        temporary.write_bytes(data)
        os.replace(temporary, path)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise


def _for_print(subject: Subject) -> Subject:
    return replace(subject, theme=LIGHT)


def _png(subject: Subject, sheet: Sheet) -> bytes:
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(picture(subject, sheet))
    buffer.close()
    return bytes(data.data())


def ask_where(parent: QWidget, kind: Kind, folder: Path) -> Path | None:
    """Let a file be chosen; None if that was called off. A name without an ending gets its own."""
    suffix = _SUFFIXES[kind]
    name, _ = QFileDialog.getSaveFileName(
        parent,
        translate("Corners", "Save picture"),
        str(folder / f"four-corners{suffix}"),
        translate("Corners", "Picture (*{suffix})").format(suffix=suffix),
    )
    if not name:
        return None
    path = Path(name)
    return path if path.suffix.lower() == suffix else path.with_name(path.name + suffix)
