"""The reference, put together: a search, a list, a page, and the way back."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from trainer.bench.worded import toned, wrapped
from trainer.landing import Landing
from trainer.language import spoken
from trainer.look.tokens import Theme
from trainer.reference import state as changes
from trainer.reference.article import Article
from trainer.reference.book import FIRST, Book
from trainer.reference.contents import Contents
from trainer.reference.keys import KEYS, key_groups
from trainer.reference.page import page_html
from trainer.reference.printing import copy_entry, print_entry, save_pdf
from trainer.reference.state import Lookup
from trainer.window import WindowFrame

__all__ = ["ReferenceScreen"]

_LIST: Final = 340
"""Logical pixels: how wide the list begins."""
_SAID_FOR: Final = 4000
"""ms that a word on what was done stays."""


class SearchField(QLineEdit):
    """Where words are typed that are searched for; the arrow down goes on into the list."""

    def __init__(self, contents: Contents, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._contents = contents
        self.setPlaceholderText(self.tr("Search: a limit, a measure, a word, a source"))
        self.setAccessibleName(self.tr("Search the reference"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Down to what was found."""
        if event.key() == Qt.Key.Key_Down and self._contents.keys:
            self._contents.setFocus()
            first = self._contents.keys[0]
            if self._contents.current not in self._contents.keys or self.text().strip():
                self._contents.stand_at(first)
                self._contents.browsed.emit(first)
            return
        super().keyPressEvent(event)


class ReferenceScreen(QWidget):
    """The reference.

    Parameters
    ----------
    window
        Its theme, dialogs and a shop's own rules are used.
    """

    def __init__(self, window: WindowFrame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.window_frame = window
        self.book = Book(spoken(), window.shop_rules)
        self.state = Lookup(FIRST)
        self._listed = self._shown = ("", "")
        self._fill()
        self._listen()
        self.dress()

    def _fill(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 12)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.setHandleWidth(10)
        split.addWidget(self._side())
        split.addWidget(self._main())
        split.setStretchFactor(1, 1)
        split.setSizes([_LIST, 3 * _LIST])
        column.addWidget(split)
        Landing(self, lambda: self.search)
        self.setAccessibleName(self.tr("Reference"))
        self.window_frame.add_keys(self.tr("Reference"), key_groups)

    def _side(self) -> QFrame:
        """The search over the list."""
        side = QFrame()
        side.setProperty("kind", "panel")
        side.setMinimumWidth(240)
        box = QVBoxLayout(side)
        box.setContentsMargins(12, 12, 6, 6)
        box.setSpacing(8)
        self.contents = Contents()
        self.search = SearchField(self.contents)
        self.count = toned("", "caption")
        self.all = QPushButton(self.tr("Show all"))
        self.all.setProperty("kind", "link")
        self.all.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.all.setFixedHeight(24)
        self.all.clicked.connect(self.search.clear)
        # It keeps its room: the list must not move as the first letter is typed.
        size = self.all.sizePolicy()
        size.setRetainSizeWhenHidden(True)
        self.all.setSizePolicy(size)
        counted = QHBoxLayout()
        counted.addWidget(self.count, 1)
        counted.addWidget(self.all)
        top = QVBoxLayout()
        top.setContentsMargins(0, 0, 6, 0)
        top.setSpacing(4)
        top.addWidget(self.search)
        top.addLayout(counted)
        self.nothing = wrapped(
            self.tr(
                "Nothing says that. Try one word of it, or another word for it: leg, undercut, "
                "throat, the name of a standard."
            ),
            "quiet",
        )
        self.nothing.hide()
        box.addLayout(top)
        box.addWidget(self.nothing)
        box.addWidget(self.contents, 1)
        return side

    def _main(self) -> QFrame:
        """The page under its bar."""
        main = QFrame()
        main.setProperty("kind", "panel")
        box = QVBoxLayout(main)
        box.setContentsMargins(1, 8, 1, 1)
        box.setSpacing(4)
        row = QHBoxLayout()
        row.setContentsMargins(12, 0, 12, 0)
        row.setSpacing(6)
        self.back = self._button("\u2190", self.tr("Back (Alt+Left)"), self.tr("Back"))
        self.forward = self._button("\u2192", self.tr("Forward (Alt+Right)"), self.tr("Forward"))
        self.leave = self._button("", self.tr("Back to where you were (Esc)"))
        self.said = toned("", "quiet")
        self.copy = self._button(self.tr("Copy"), self.tr("Copy this entry (Ctrl+Shift+C)"))
        self.pdf = self._button(self.tr("Save as PDF..."), self.tr("Save this entry as a PDF"))
        self.print = self._button(self.tr("Print..."), self.tr("Print this entry (Ctrl+P)"))
        for button in (self.back, self.forward, self.leave):
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.said)
        for button in (self.copy, self.pdf, self.print):
            row.addWidget(button)
        box.addLayout(row)
        self.article = Article()
        box.addWidget(self.article, 1)
        return main

    def _button(self, words: str, tip: str, name: str = "") -> QPushButton:
        button = QPushButton(words)
        button.setProperty("kind", "segment")
        button.setToolTip(tip)
        button.setAccessibleName(name or words)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        if name:
            button.setFixedWidth(36)
        return button

    def _listen(self) -> None:
        self.search.textChanged.connect(self.search_for)
        self.search.returnPressed.connect(self._read_first)
        self.contents.browsed.connect(lambda key: self._go(changes.browsed(self.state, key)))
        self.contents.asked.connect(self._read)
        self.article.asked.connect(self.open)
        pairs = (
            (self.back, "back"),
            (self.forward, "forward"),
            (self.leave, "leave"),
            (self.copy, "copy"),
            (self.pdf, "pdf"),
            (self.print, "print"),
        )
        for button, name in pairs:
            button.clicked.connect(lambda _=False, name=name: self.do(name))
        for key in KEYS:
            for each in key.keys:
                shortcut = QShortcut(QKeySequence(each), self)
                shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
                shortcut.activated.connect(lambda key=key: self._press(key.name))
                if each == "/":
                    self._slash = shortcut
        self.window_frame.theme_changed.connect(self.dress)
        self.window_frame.screen_shown.connect(self._see_rules)
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(_SAID_FOR)
        self._quiet.timeout.connect(lambda: self.said.setText(""))

    # What is asked for

    def _press(self, name: str) -> None:
        """A stroke that is typed into the search is no key."""
        if name == "search" and self.search.hasFocus():
            if self.sender() is self._slash:
                self.search.insert("/")
            self.search.selectAll()
            return
        # The key empties a search first; the button leads back at once.
        self.do("escape" if name == "leave" else name)

    def do(self, name: str) -> None:
        """Do what a key or a button asks for."""
        deeds: dict[str, Callable[[], None]] = {
            "search": self._search,
            "back": lambda: self._go(changes.back(self.state)),
            "forward": lambda: self._go(changes.forward(self.state)),
            "copy": self._copy,
            "pdf": self._ask_for_pdf,
            "print": self._ask_for_printer,
            "escape": self._escape,
            "leave": self._leave,
        }
        deeds[name]()

    def _search(self) -> None:
        self.search.setFocus()
        self.search.selectAll()

    def search_for(self, words: str) -> None:
        """List what holds every one of some words."""
        self._go(changes.searched(self.state, words))

    def open(self, key: str) -> None:
        """Show an entry."""
        self._go(changes.opened(self.state, key))

    def look_up(self, key: str, came_from: str) -> None:
        """Show an entry that a link on another screen leads to; Esc leads back there."""
        self._see_rules()
        self.search.clear()
        wanted = key if key in self.book.entries else FIRST
        self._go(changes.led(changes.opened(self.state, wanted), came_from))
        self.article.setFocus()

    def _read(self, key: str) -> None:
        self.open(key)
        self.article.setFocus()

    def _read_first(self) -> None:
        if self.contents.keys:
            self._read(self.contents.keys[0])

    def _escape(self) -> None:
        """Empty the search; without one go back to where a link led from."""
        if self.state.words:
            self.search.clear()
            self.search.setFocus()
        else:
            self._leave()

    def _leave(self) -> None:
        """Go back to where a link led from."""
        if self.state.came_from:
            came_from = self.state.came_from
            self._go(changes.led(self.state, ""))
            self.window_frame.show_screen(came_from)

    def _copy(self) -> None:
        copy_entry(self.book, self.state.shown)
        self._say(self.tr("Copied"))

    def _say(self, words: str) -> None:
        self.said.setText(words)
        self._quiet.start()

    # On paper

    def _ask_for_pdf(self) -> None:
        settings = self.window_frame.settings
        name, _ = QFileDialog.getSaveFileName(
            self,
            self.tr("Save as PDF"),
            str(Path(settings.folder("pictures")) / f"{self.state.shown}.pdf"),
            self.tr("PDF (*.pdf)"),
        )
        if name:
            path = Path(name)
            self.save_pdf(path if path.suffix.lower() == ".pdf" else Path(f"{name}.pdf"))

    def save_pdf(self, path: Path) -> None:
        """Save the entry that is shown, or say why that can't be."""
        try:
            save_pdf(self.book, self.state.shown, path)
        except OSError as error:
            self.window_frame.show_notice(
                self.tr("The entry could not be saved"),
                self.tr(
                    "{file}: {reason}\n\nWhatever was there is as it was. Choose another folder, "
                    "or free some space in this one."
                ).format(file=path, reason=error.strerror or error),
            )
            return
        frame = self.window_frame
        frame.change_settings(frame.settings.with_folder("pictures", path.parent))
        self._say(self.tr("Saved: {file}").format(file=path.name))

    def _ask_for_printer(self) -> None:
        printer = QPrinter()
        dialog = QPrintDialog(printer, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.accepted.connect(lambda: print_entry(self.book, self.state.shown, printer))
        # Its own `open` would take a slot by name.
        QDialog.open(dialog)

    # What is shown

    def _go(self, state: Lookup) -> None:
        """Have another state, and repaint from it."""
        self.state = state
        self.show_state()

    def go_on_from(self, other: ReferenceScreen) -> None:
        """Go on where another reference was, which is given up."""
        self.search.setText(other.state.words)
        self._go(changes.known(other.state, frozenset(self.book.entries), FIRST))

    def _see_rules(self, _: str = "") -> None:
        """A tray may have brought a shop's own rules, or taken them with it."""
        if self.book.shop != self.window_frame.shop_rules:
            self.book = Book(spoken(), self.window_frame.shop_rules)
            self._listed = self._shown = ("", "")
            self._go(changes.known(self.state, frozenset(self.book.entries), FIRST))

    def dress(self) -> None:
        """Wear the theme that is on."""
        self.setStyleSheet(_sheet(self.window_frame.theme))
        self._shown = ("", "")
        self.show_state()

    def show_state(self) -> None:
        """Repaint every view from the state."""
        state, words = self.state, self.state.words.strip()
        if self._listed != ("listed", words):
            self._listed = ("listed", words)
            self.contents.show_lines(self.book.lines(words), found=bool(words))
            self.all.setVisible(bool(words))
            count = len(self.contents.keys)
            self.nothing.setVisible(bool(words) and not count)
            self.count.setText(
                self.tr("%n found", "entries", count)
                if words
                else self.tr("%n entries", "in all", count)
            )
        if self._shown != ("shown", state.shown):
            self._shown = ("shown", state.shown)
            html = page_html(self.book, state.shown, self.window_frame.theme)
            self.article.show_page(self.book.title(state.shown), html)
        self.contents.stand_at(state.shown)
        self.back.setEnabled(bool(state.before))
        self.forward.setEnabled(bool(state.after))
        self.leave.setVisible(bool(state.came_from))
        self.leave.setText(self._way_back(state.came_from))

    def _way_back(self, screen: str) -> str:
        known = {
            "bench": self.tr("To the bench"),
            "corners": self.tr("To the four corners"),
            "shop": self.tr("To the coupon shop"),
        }
        return known.get(screen, self.tr("Back to where you were"))


def _sheet(t: Theme) -> str:
    """What this screen's widgets add to the look."""
    return f"""
        QTextBrowser {{ background: {t.panel}; border: 2px solid transparent; padding: 0;
            border-radius: {t.radius}px; }}
        QTextBrowser:focus {{ border: 2px solid {t.accent}; padding: 0; }}
        QTreeView {{ background: transparent; color: {t.ink}; border: 2px solid transparent;
            border-radius: {t.rounding}px; outline: none; }}
        QTreeView:focus {{ border-color: {t.accent}; }}
        QTreeView::item {{ padding: 0 4px; border: none; }}
        QTreeView::item:hover {{ background: {t.well}; color: {t.ink}; }}
        QTreeView::item:selected {{ background: {t.accent_wash}; color: {t.accent_wash_ink}; }}
    """
