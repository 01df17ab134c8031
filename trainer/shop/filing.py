"""Opening and saving trays in the shop, autosave, and taking up what a bad end has left."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QDateTime, QLocale, QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.file_faults import TrayError
from exercises.tray import Tray, load_tray
from trainer.bench.words import language
from trainer.fault_words import fault_rows, fault_words
from trainer.history import History
from trainer.leaving import Leaving
from trainer.notices import Notice
from trainer.shop import state as changes
from trainer.shop.controller import ShopController
from trainer.shop.files import SaveError, Stamp, changed_since, stamp_of, write_tray
from trainer.shop.history import ShopHistory
from trainer.shop.journal import Journal, JournalError, Leftover, held_by_others, leftovers
from trainer.shop.question import Answer, Question
from trainer.shop.state import RulesClashError, TooManyError, new_shop, shop_of
from trainer.window import WindowFrame

__all__ = ["Filing"]

TRAY_SUFFIX: Final = ".tray.json"


class Filing(QObject):
    """Where the open tray is on the disk, and what is asked about that.

    Parameters
    ----------
    window
        Its dialogs are used.
    controller
        Holds the tray.
    folder
        Where journals are kept.

    Signals
    -------
    changed()
        The tray has another place, or the autosave another state.
    opened()
        Another tray is open.
    said(words)
        Something was done that is worth a line.
    settling()
        What is still being typed is to be taken now.
    """

    changed = Signal()
    opened = Signal()
    said = Signal(str)
    settling = Signal()

    def __init__(
        self, window: WindowFrame, controller: ShopController, folder: Path, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._window, self._controller = window, controller
        self.path: Path | None = None
        self.trouble = ""
        self._stamp: Stamp | None = None
        self._journal = Journal(folder)
        self._journal.begin(controller.shop, None)
        self._folder = folder
        self._last = Path(
            QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        )
        self._leaving = Leaving(window.window, self._unsaved, self._ask_to_leave, self)
        # Then nobody may be asked; what is unsaved is kept for the next start.
        window.ending.connect(self._leaving.end)
        controller.finished.connect(self._keep)

    @property
    def parent_widget(self) -> QWidget:
        """What dialogs stand before."""
        return self._window.window

    def go_on_from(self, other: Filing) -> None:
        """Take over from another one, which is given up."""
        self.path, self._stamp, self._journal = other.path, other._stamp, other._journal
        self.trouble, self._last = other.trouble, other._last
        other._leaving.end()

    # Autosave

    def _keep(self, kind: str) -> None:
        """Put a finished gesture on the disk before the next one."""
        if kind == "open":
            return
        history = self._controller.history
        step = history.past if kind != "undo" else history.future
        trouble = ""
        try:
            self._journal.note(kind, step.what if step is not None else "", history.now)
        except JournalError as error:
            trouble = self.tr(
                "Autosave does not work ({reason}). Nothing is lost while the program runs: free "
                "some space, or save the tray elsewhere."
            ).format(reason=error.reason)
        if trouble != self.trouble:
            self.trouble = trouble
            self.changed.emit()

    def leave(self) -> None:
        """The program ends: what isn't saved, nor given up, stays for the next start."""
        self._controller.end_gesture()
        if self._controller.dirty and not self._leaving.going:
            self._journal.leave()
        else:
            self._journal.finish()

    def _unsaved(self) -> bool:
        self.settling.emit()
        return self._controller.dirty

    def _ask_to_leave(self) -> Notice:
        window = self._window
        if window.has_screen("shop") and window.shown_screen != "shop":
            window.show_screen("shop")
        return self._ask(
            self.tr("Save the tray before closing?"),
            self.tr("The tray in the coupon shop has changes that are not saved."),
            Answer(self.tr("Save and close"), lambda: self._save(self._leaving.close)),
            Answer(self.tr("Close without saving"), self._leaving.close),
            Answer(self.tr("Stay here")),
        )

    def offer_recovery(self) -> None:
        """Offer what an earlier start has left unsaved, if it has."""
        left = leftovers(self._folder)
        if left:
            self._offer(left[0], len(left) - 1)

    def _offer(self, left: Leftover, more: int) -> None:
        when = QDateTime.fromSecsSinceEpoch(round(left.changed))
        text = self.tr(
            "{title}\n{file}\nLast change: {when}; steps that can be undone: {steps}."
        ).format(
            title=left.title.in_language(language()) or self.tr("A tray without a title"),
            file=left.file if left.file is not None else self.tr("Never saved"),
            when=QLocale().toString(when, QLocale.FormatType.ShortFormat),
            steps=left.gestures,
        )
        if more:
            text += "\n\n" + self.tr("Older ones that wait: {n}.").format(n=more)
        self._ask(
            self.tr("Unsaved coupons from an earlier start"),
            text,
            Answer(self.tr("Take it up again"), lambda: self._take_up(left)),
            Answer(self.tr("Throw it away"), lambda: self._throw_away(left)),
            Answer(self.tr("Later")),
        )

    def _take_up(self, left: Leftover) -> None:
        try:
            history = self._journal.take_up(left)
        except (ValueError, OSError) as error:
            self._window.show_notice(
                self.tr("It can't be taken up"),
                self.tr("{file}: {reason}\n\nThe file stays where it is.").format(
                    file=left.path, reason=error
                ),
            )
            return
        self.path = left.file
        self._stamp = Stamp(0, 0, left.digest) if left.digest else None
        self._controller.open(history, saved=False)
        self._has_opened()

    def _throw_away(self, left: Leftover) -> None:
        try:
            left.discard()
        except OSError as error:
            self.said.emit(str(error))
            return
        self.offer_recovery()

    # Opening

    def new(self) -> None:
        """Begin a tray anew."""
        self._when_free(lambda: self._begin(History(new_shop()), None))

    def ask_and_open(self) -> None:
        """Let a tray be chosen, and open it."""
        path = self._chosen_to_open(self.tr("Open tray"))
        if path is not None:
            self.open_path(path)

    def open_path(self, path: Path) -> None:
        """Open a tray, once the open one may go; a broken one is refused whole, and says why."""
        tray = self._loaded(path)
        if tray is not None:
            self._when_free(lambda: self._open(path, tray))

    def _open(self, path: Path, tray: Tray) -> None:
        self._begin(History(shop_of(tray)), path)
        if held_by_others(self._folder, path):
            self._window.show_notice(
                self.tr("This tray is being worked on elsewhere"),
                self.tr(
                    "{file}\n\nAnother window of the coupon shop has unsaved changes of it. "
                    "Whoever saves last is asked before anything is overwritten."
                ).format(file=path),
            )

    def _begin(self, history: ShopHistory, path: Path | None) -> None:
        self.path, self._stamp = path, stamp_of(path) if path is not None else None
        self._controller.open(history, saved=True)
        self._begin_journal()
        self._has_opened()

    def _begin_journal(self) -> None:
        digest = self._stamp.digest if self._stamp is not None else ""
        self._journal.begin(self._controller.shop, self.path, digest=digest)
        self.trouble = ""

    def _has_opened(self) -> None:
        if self.path is not None:
            self._last = self.path.parent
            settings = self._window.settings
            self._window.change_settings(settings.with_recent(self.path.absolute()))
        self.opened.emit()
        self.changed.emit()

    def _loaded(self, path: Path) -> Tray | None:
        try:
            return load_tray(path)
        except TrayError as error:
            self._window.show_faults(*fault_rows(error))
            return None

    def _when_free(self, go_on: Callable[[], object]) -> None:
        """Go on once the open tray may go: saved, or given up."""
        self.settling.emit()
        self._controller.end_gesture()
        if not self._controller.dirty:
            go_on()
            return
        self._ask(
            self.tr("Save the open tray first?"),
            self.tr("It has changes that are not saved."),
            Answer(self.tr("Save"), lambda: self._save(go_on)),
            Answer(self.tr("Give the changes up"), go_on),
            Answer(self.tr("Cancel")),
        )

    def _ask(self, title: str, text: str, *answers: Answer) -> Notice:
        question = Question(title, text, answers, self.parent_widget)
        self._window.show_dialog(question)
        return question

    # Saving

    def save(self) -> None:
        """Save the tray where it is; a new one where it is said to."""
        self._save(None)

    def save_as(self) -> None:
        """Save the tray under another name."""
        self.settling.emit()
        self._save_as(None)

    def _save(self, then: Callable[[], object] | None) -> None:
        self.settling.emit()
        self._controller.end_gesture()
        path = self.path
        if path is None:
            self._save_as(then)
        elif changed_since(path, self._stamp):
            self._ask(
                self.tr("The file has changed meanwhile"),
                self.tr(
                    "{file}\n\nAnother program has changed it since it was opened here. Saving "
                    "over it would lose that change."
                ).format(file=path),
                Answer(self.tr("Save under another name"), lambda: self._save_as(then)),
                Answer(self.tr("Save over it"), lambda: self._write(path, then)),
                Answer(self.tr("Cancel")),
            )
        else:
            self._write(path, then)

    def _save_as(self, then: Callable[[], object] | None) -> None:
        path = self._chosen_to_save(self.tr("Save tray"), self.path or self._last / self._name())
        if path is not None:
            self._write(path, then)

    def _name(self) -> str:
        title = str(self._controller.shop.tray.title) or self.tr("coupons")
        plain = "".join(c if c.isalnum() else "-" for c in title.lower())
        return "-".join(part for part in plain.split("-") if part)[:60] + TRAY_SUFFIX

    def _write(self, path: Path, then: Callable[[], object] | None) -> None:
        shop = self._controller.shop
        if not self._wrote(path, shop.tray, lambda: self._write(path, then)):
            return
        self.path = path
        self._controller.mark_saved(shop.tray)
        self._begin_journal()
        self._last = path.parent
        self.changed.emit()
        self.said.emit(self.tr("Saved: {file}").format(file=path.name))
        if then is not None:
            then()

    def _wrote(self, path: Path, tray: Tray, again: Callable[[], object]) -> bool:
        """Write a tray, or say why that can't be and offer what can be done."""
        try:
            stamp = write_tray(path, tray)
        except SaveError as error:
            self._say_not_saved(error, again)
            return False
        except TrayError as error:
            lines = [
                "{}: {}".format(fault.pointer or path.name, ". ".join(fault_words(fault)))
                for fault in error.faults[:8]
            ]
            self._window.show_notice(self.tr("The tray could not be saved"), "\n\n".join(lines))
            return False
        if tray is self._controller.shop.tray:
            self._stamp = stamp
        return True

    def _say_not_saved(self, error: SaveError, again: Callable[[], object]) -> None:
        why = {
            "forbidden": self.tr("Nobody may write there, or you may not."),
            "read-only": self.tr("The file is protected against changes."),
            "full": self.tr("The disk is full. Free some space, or choose another disk."),
            "locked": self.tr("Another program holds the file. Close it there first."),
            "gone": self.tr("Its folder is not there any more."),
            "other": self.tr("The system says: {reason}.").format(reason=error.reason),
        }[error.trouble]
        self._ask(
            self.tr("The tray could not be saved"),
            self.tr(
                "{file}\n\n{why}\n\nWhatever was there is as it was, and what you have here is "
                "not lost."
            ).format(file=error.path, why=why),
            Answer(self.tr("Save under another name"), self.save_as),
            Answer(self.tr("Try again"), again),
            Answer(self.tr("Cancel")),
        )

    # Two trays

    def split(self) -> None:
        """Put the open coupon and all after it into a tray of their own, and save that."""
        self.settling.emit()
        parts = changes.split(self._controller.shop)
        if parts is None:
            self.said.emit(self.tr("The first coupon can't be split off: nothing would be left."))
            return
        kept, rest = parts
        suggested = self._last / self._name().replace(TRAY_SUFFIX, f"-2{TRAY_SUFFIX}")
        path = self._chosen_to_save(self.tr("Save what is split off"), suggested)
        if path is None:
            return
        if path == self.path:
            self._window.show_notice(
                self.tr("The tray could not be saved"),
                self.tr("That is the file of the tray that is open: choose another name."),
            )
            return
        if self._wrote(path, rest, self.split):
            self._controller.do(lambda _: kept, "split")
            self.said.emit(
                self.tr("Split off into {file}: {n} of them").format(
                    file=path.name, n=len(rest.coupons)
                )
            )

    def merge(self) -> None:
        """Take the coupons of another tray in, after those that are there."""
        path = self._chosen_to_open(self.tr("Merge a tray in"))
        tray = self._loaded(path) if path is not None else None
        if path is None or tray is None:
            return
        try:
            before = self._controller.shop
            self._controller.do(lambda shop: changes.merged(shop, tray), "merge")
        except TooManyError:
            self._window.show_notice(
                self.tr("The trays can't be merged"),
                self.tr("Together they hold too many coupons."),
            )
            return
        except RulesClashError as error:
            self._window.show_notice(
                self.tr("The trays can't be merged"),
                self.tr("Both have a rule set called {name}, and the two differ.").format(
                    name=error.name
                ),
            )
            return
        changed = sum(coupon.id in before.ids for coupon in tray.coupons)
        self.said.emit(
            self.tr("Merged in: {n}; with another id, since theirs was taken: {changed}").format(
                n=len(tray.coupons), changed=changed
            )
        )
        folder = self.path.parent if self.path is not None else None
        if any(coupon.shop_rules for coupon in tray.coupons) and path.parent != folder:
            self._window.show_notice(
                self.tr("Rules files go with it"),
                self.tr(
                    "Some of these coupons are judged by rules from a file beside their tray, in "
                    "{folder}. Copy that file beside this tray before you save it."
                ).format(folder=path.parent),
            )

    def _chosen_to_open(self, title: str) -> Path | None:
        kinds = self.tr("Trays (*{suffix});;All files (*)").format(suffix=TRAY_SUFFIX)
        name, _ = QFileDialog.getOpenFileName(self.parent_widget, title, str(self._last), kinds)
        return Path(name) if name else None

    def _chosen_to_save(self, title: str, suggested: Path) -> Path | None:
        kinds = self.tr("Trays (*{suffix});;All files (*)").format(suffix=TRAY_SUFFIX)
        name, _ = QFileDialog.getSaveFileName(self.parent_widget, title, str(suggested), kinds)
        if not name:
            return None
        path = Path(name)
        return path if path.suffix else path.with_name(path.name + TRAY_SUFFIX)
