"""Opening sealed sittings to compose them further, and sealing them; what is asked about that."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QStandardPaths, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from exercises.file_faults import FileError
from exercises.sitting.plan import Plan
from exercises.sitting.plan_file import PlanError
from trainer.fault_words import fault_rows, fault_words
from trainer.leaving import Leaving
from trainer.loading import Loading
from trainer.notices import FaultsDialog, Notice
from trainer.sealing.key import Key, SealError
from trainer.sealing.words import seal_words
from trainer.shop.question import Answer, Question
from trainer.sittings.controller import ComposeController
from trainer.sittings.draft import Draft, draft_of, new_draft, with_plan
from trainer.sittings.files import (
    SUFFIX,
    Sealed,
    file_name,
    is_another,
    open_sitting,
    renewed,
    seal_sitting,
)
from trainer.sittings.seal_dialog import SealDialog, UnsealDialog
from trainer.sittings.words import title_of
from trainer.window import WindowFrame

__all__ = ["SittingFiling"]

_KIND: Final = "sittings"


class SittingFiling(QObject):
    """Where the sitting lies sealed, and what is asked about that.

    A sitting that isn't sealed is in memory alone: so whoever closes the window is asked first.

    Parameters
    ----------
    window
        Its dialogs are used, and its closing is heard.
    controller
        Holds the sitting.

    Signals
    -------
    changed()
        The sitting has another place, or something goes on.
    said(words)
        Something was done that is worth a line.
    """

    changed = Signal()
    said = Signal(str)

    def __init__(self, window: WindowFrame, controller: ComposeController, parent: QObject) -> None:
        super().__init__(parent)
        self._window, self._controller = window, controller
        self.sealed: Sealed | None = None
        self._known: dict[str, Plan] = {}
        self._work: Loading[Sealed] | None = None
        self._leaving = Leaving(window.window, lambda: controller.dirty, self._ask_to_leave, self)
        # Then nobody may be asked; what is composed was never to lie on the disk.
        window.ending.connect(self._leaving.end)

    @property
    def parent_widget(self) -> QWidget:
        """What dialogs stand before."""
        return self._window.window

    @property
    def busy(self) -> bool:
        """Whether a key is being derived."""
        return self._work is not None

    def go_on_from(self, other: SittingFiling) -> None:
        """Take over from another one, which is given up."""
        self.sealed, self._known = other.sealed, other._known
        other._leaving.end()

    # Leaving

    def _ask_to_leave(self) -> Notice:
        if self._window.shown_screen != "sittings":
            self._window.show_screen("sittings")
        return self._ask(
            self.tr("The sitting is not sealed yet"),
            self.tr(
                "What is composed is kept in memory alone: on the disk it would lie open. If the "
                "program is closed now, it is gone."
            ),
            Answer(self.tr("Seal and save..."), partial(self.seal, self._leaving.close)),
            Answer(self.tr("Close without it"), self._leaving.close),
            Answer(self.tr("Go on composing")),
        )

    def _when_free(self, go_on: Callable[[], object]) -> None:
        """Go on once what is composed may go: sealed, or given up."""
        if not self._controller.dirty:
            go_on()
            return
        self._ask(
            self.tr("Seal what is composed first?"),
            self.tr("It is in memory alone, and would be gone."),
            Answer(self.tr("Seal and save..."), partial(self.seal, go_on)),
            Answer(self.tr("Give it up"), go_on),
            Answer(self.tr("Cancel")),
        )

    def _ask(self, title: str, text: str, *answers: Answer) -> Notice:
        question = Question(title, text, answers, self.parent_widget)
        self._window.show_dialog(question)
        return question

    # Opening

    def new(self) -> None:
        """Begin a sitting anew."""
        self._when_free(self._begin)

    def _begin(self) -> None:
        self.sealed = None
        self._controller.open(new_draft())
        self.changed.emit()

    def ask_and_open(self) -> None:
        """Let a sealed sitting be chosen, and open it."""
        name, _ = QFileDialog.getOpenFileName(
            self.parent_widget,
            self.tr("Open a sitting"),
            self._folder(),
            self.tr("Sittings (*{suffix});;All files (*)").format(suffix=SUFFIX),
        )
        if name:
            self.open_path(Path(name))

    def open_path(self, path: Path) -> None:
        """Open a sealed sitting, once what is composed may go."""
        self._when_free(lambda: self._ask_passphrase(path))

    def _ask_passphrase(self, path: Path) -> None:
        dialog = UnsealDialog(path.name, self.parent_widget)
        dialog.entered.connect(partial(self._unseal, path, dialog))
        self._window.show_dialog(dialog)

    def _unseal(self, path: Path, dialog: UnsealDialog, passphrase: str) -> None:
        if self._work is not None:
            return
        self._work = Loading(partial(open_sitting, path, passphrase))
        self._work.over.connect(partial(self._unsealed, dialog))
        self._work.start()

    def _unsealed(self, dialog: UnsealDialog) -> None:
        work, self._work = self._work, None
        if work is None or dialog not in self._window.dialogs:
            # It was called off meanwhile.
            return
        try:
            sealed = work.result
        except SealError as error:
            if error.trouble == "passphrase":
                dialog.tried(seal_words(error)[0])
                return
            dialog.reject()
            self._window.show_notice(*seal_words(error))
        except PlanError as error:
            dialog.reject()
            self._say_faults(error)
        except FileError as error:
            dialog.reject()
            lines = [". ".join(fault_words(fault)) for fault in error.faults]
            self._window.show_notice(self.tr("It can't be opened"), "\n".join(lines))
        else:
            dialog.accept()
            self._open(sealed)

    def _say_faults(self, error: PlanError) -> None:
        words = (
            self.tr("This sitting can't be opened"),
            self.tr("{file}\n\nWhat is composed stays as it was."),
        )
        file, rows = fault_rows(error)
        self._window.show_dialog(FaultsDialog(file, rows, self.parent_widget, words))

    def _open(self, sealed: Sealed) -> None:
        self._take(sealed)
        self._controller.open(draft_of(sealed.plan))
        self._remember(sealed.path)
        self.changed.emit()

    # Sealing

    def seal(self, then: Callable[[], object] | None = None) -> None:
        """Ask for a passphrase and a place, seal, and go on with `then` once it is on the disk."""
        faults = self._controller.draft.plan.faults()
        if faults:
            self.said.emit(self.tr("It can't be sealed yet: see what is missing."))
            return
        dialog = SealDialog(self._note(), self.parent_widget)
        dialog.entered.connect(lambda secret: self._ask_place(secret, then))
        self._window.show_dialog(dialog)

    def seal_again(self) -> None:
        """Seal it where it was sealed, with the same passphrase; else as `seal` does."""
        before = self.sealed
        draft = self._controller.draft
        if before is None or draft.plan.faults() or is_another(draft.plan, before.plan):
            self.seal()
        elif self._controller.dirty:
            self._seal(before.path, before.key, None)

    def _note(self) -> str:
        plan = self._controller.draft.plan
        before = self._known.get(plan.id)
        if before is None or not is_another(plan, before):
            return ""
        return self.tr(
            "It asks or marks something else than the file that was sealed before: so it becomes "
            "another sitting, and results of the earlier one are not counted with it."
        )

    def _ask_place(self, secret: Key | str, then: Callable[[], object] | None) -> None:
        title = title_of(self._controller.draft)
        begin = Path(self._folder()) / file_name(title, self.tr("sitting"))
        name, _ = QFileDialog.getSaveFileName(
            self.parent_widget,
            self.tr("Save the sealed sitting"),
            str(begin),
            self.tr("Sittings (*{suffix})").format(suffix=SUFFIX),
        )
        if name:
            path = Path(name)
            self._seal(path if path.suffix == SUFFIX else Path(name + SUFFIX), secret, then)

    def _seal(self, path: Path, secret: Key | str, then: Callable[[], object] | None) -> None:
        if self._work is not None:
            return
        draft = self._controller.draft
        plan = renewed(draft.plan, self._known.get(draft.base.id))
        if plan.id != draft.base.id:
            self._controller.do(lambda d: with_plan(d, plan), "seal")
        self._work = Loading(partial(seal_sitting, path, plan, secret))
        self._work.over.connect(
            partial(self._has_sealed, self._controller.draft, path, secret, then)
        )
        self._work.start()
        self.changed.emit()

    def _has_sealed(
        self, draft: Draft, path: Path, secret: Key | str, then: Callable[[], object] | None
    ) -> None:
        work, self._work = self._work, None
        if work is None:
            return
        try:
            self._take(work.result)
        except OSError as error:
            self._say_not_sealed(path, error.strerror or str(error), secret, then)
        except SealError as error:
            self._window.show_notice(*seal_words(error))
        else:
            self._controller.mark_saved(draft)
            self._remember(path)
            self.said.emit(self.tr("Sealed: {file}").format(file=path.name))
            if then is not None:
                then()
        self.changed.emit()

    def _take(self, sealed: Sealed) -> None:
        """Take a sitting as the one that lies on the disk."""
        self.sealed = sealed
        self._known[sealed.plan.id] = sealed.plan

    def _say_not_sealed(
        self, path: Path, reason: str, secret: Key | str, then: Callable[[], object] | None
    ) -> None:
        self._ask(
            self.tr("The sitting could not be saved"),
            self.tr(
                "{file}\n\nThe system says: {reason}. Whatever was there is as it was, and what is "
                "composed is not lost."
            ).format(file=path, reason=reason),
            # The passphrase was typed twice already.
            Answer(self.tr("Save it elsewhere..."), partial(self._ask_place, secret, then)),
            Answer(self.tr("Cancel")),
        )

    # Places

    def _folder(self) -> str:
        documents = QStandardPaths.StandardLocation.DocumentsLocation
        return self._window.settings.folder(_KIND) or QStandardPaths.writableLocation(documents)

    def _remember(self, path: Path) -> None:
        settings = self._window.settings.with_sitting(path.absolute())
        self._window.change_settings(settings.with_folder(_KIND, path.parent))

    def say_missing(self, path: Path) -> None:
        """Say that a sitting that was composed before isn't there any more."""
        notice = Notice(
            self.tr("This sitting is not there"),
            self.tr(
                "{file}\n\nIt may have been moved or renamed, or its disk is not connected."
            ).format(file=path),
            self.parent_widget,
        )
        notice.finish()
        self._window.show_dialog(notice)
