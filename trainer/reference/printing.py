"""Putting an entry on paper, in a PDF, on the clipboard: always in ink on white."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QMimeData, QSizeF
from PySide6.QtGui import (
    QGuiApplication,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPdfWriter,
    QTextDocument,
)

from trainer.look.fonts import font
from trainer.look.tokens import LIGHT
from trainer.reference.book import Book
from trainer.reference.page import page_html, plain_page

__all__ = ["copy_entry", "document_of", "pdf_bytes", "print_entry", "save_pdf"]

_MARGIN: Final = 18.0
"""mm."""


def document_of(book: Book, key: str) -> QTextDocument:
    """Return an entry as a document to print."""
    document = QTextDocument()
    document.setDefaultFont(font(LIGHT))
    document.setDocumentMargin(0.0)
    document.setHtml(page_html(book, key, LIGHT))
    return document


def print_entry(book: Book, key: str, device: QPagedPaintDevice) -> None:
    """Print an entry on a device that has pages."""
    document = document_of(book, key)
    layout = document.documentLayout()
    layout.setPaintDevice(device)
    area = device.pageLayout().paintRectPixels(device.logicalDpiX())
    document.setPageSize(QSizeF(area.size()))
    document.print_(device)


def pdf_bytes(book: Book, key: str) -> bytes:
    """Return an entry as a PDF on A4."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(book.title(key))
    writer.setCreator("Toe & Throat")
    margins = QMarginsF(_MARGIN, _MARGIN, _MARGIN, _MARGIN)
    size = QPageSize(QPageSize.PageSizeId.A4)
    upright = QPageLayout.Orientation.Portrait
    writer.setPageLayout(QPageLayout(size, upright, margins, QPageLayout.Unit.Millimeter))
    print_entry(book, key, writer)
    buffer.close()
    return bytes(data.data())


def save_pdf(book: Book, key: str, path: Path) -> None:
    """Write an entry as a PDF, whole, or leave what was there.

    Raises
    ------
    OSError
        If it can't be written.
    """
    temporary = path.with_name(f".{path.name}.new")
    try:
        temporary.write_bytes(pdf_bytes(book, key))
        os.replace(temporary, path)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise


def copy_entry(book: Book, key: str) -> None:
    """Put an entry on the clipboard, as text and with its type."""
    data = QMimeData()
    data.setText(plain_page(book, key))
    data.setHtml(page_html(book, key, LIGHT))
    QGuiApplication.clipboard().setMimeData(data)
