"""A mark set by hand: its value, why, and who says so."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QSpinBox,
    QWidget,
)

from exercises.sitting.marking import LONGEST_REASON, override_faults
from trainer.bench.reasons import mark_word
from trainer.bench.translation import translate
from trainer.notices import Notice
from trainer.results.figures_of import percent

__all__ = ["OverrideDialog", "Setting", "overridable_word"]

_STEPS: Final = (0, 50, 100)


@dataclass(frozen=True, slots=True)
class Setting:
    """What was set: a mark, 0 to 1, why, and by whom."""

    mark: str
    value: float
    reason: str
    by: str


def overridable_word(mark: str) -> str:
    """What a mark is called, the whole item's score and its being critical among them."""
    return {
        "score": translate("Results", "Score of the coupon"),
        "critical": translate("Results", "Critical call"),
    }.get(mark) or mark_word(mark)


class OverrideDialog(Notice):
    """Asks for a mark's value, the reason for it, and who says so.

    Parameters
    ----------
    mark
        Which.
    graded, value
        What it was graded, and what holds now; None where it didn't apply.
    back
        Whether the mark goes back to what it was graded.
    by
        Who did it last here.

    Signals
    -------
    stated(setting)
        It is to be so. Whoever hears it says what came of it, by `accept` or `refuse`.
    """

    stated = Signal(object)

    def __init__(
        self, mark: str, graded: float | None, value: float | None, by: str,
        *, back: bool = False, parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        name = overridable_word(mark)
        title = (
            translate("OverrideDialog", "Put back as graded: {mark}")
            if back
            else translate("OverrideDialog", "Override: {mark}")
        ).format(mark=name)
        text = translate(
            "OverrideDialog",
            "Graded {graded}, now {value}. The grade stays beside the override, and nothing that "
            "was overridden before is erased.",
        ).format(graded=_said(mark, graded), value=_said(mark, value))
        super().__init__(title, text, parent)
        self._mark = mark
        self._waits = False
        begin = graded if back else value
        self.steps: dict[int, QPushButton] = {}
        self.value = QSpinBox()
        self.body.addWidget(self._caption(self.tr("Mark"), self.value))
        self.body.addLayout(self._values(round(100.0 * (begin or 0.0))))
        self.reason = QPlainTextEdit()
        self.reason.setTabChangesFocus(True)
        self.reason.setFixedHeight(72)
        self.reason.setAccessibleName(self.tr("Reason"))
        self.body.addWidget(self._caption(self.tr("Reason (needed)"), self.reason))
        self.body.addWidget(self.reason)
        self.by = QLineEdit(by)
        self.by.setMaxLength(200)
        self.by.setAccessibleName(self.tr("Who says so"))
        self.body.addWidget(self._caption(self.tr("Who says so (needed)"), self.by))
        self.body.addWidget(self.by)
        self.wrong = QLabel()
        self.wrong.setProperty("tone", "gloss")
        self.wrong.setWordWrap(True)
        self.body.addWidget(self.wrong)
        words = self.tr("Put back") if back else self.tr("Override")
        self.save = self.buttons.addButton(words, QDialogButtonBox.ButtonRole.AcceptRole)
        self.save.setDefault(True)
        self.buttons.accepted.connect(self._state)
        for changed in (self.reason.textChanged, self.by.textChanged, self.value.valueChanged):
            changed.connect(self._check)
        self._check()
        self.finish()
        (self.reason if back else self.value).setFocus()

    def _caption(self, words: str, of: QWidget) -> QLabel:
        label = QLabel(words)
        label.setBuddy(of)
        return label

    def _values(self, begin: int) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.value.setMinimumHeight(28)
        self.value.setRange(0, 100)
        self.value.setSuffix(self.tr(" %"))
        self.value.setAccessibleName(overridable_word(self._mark))
        self.value.setValue(begin)
        steps: tuple[tuple[int, str], ...] = tuple((one, f"{one} %") for one in _STEPS)
        if self._mark == "critical":
            steps = ((0, self.tr("Not critical")), (100, self.tr("Critical")))
            self.value.hide()
        group = QButtonGroup(self)
        for step, words in steps:
            button = QPushButton(words)
            button.setProperty("kind", "segment")
            button.setCheckable(True)
            button.clicked.connect(self._setter(step))
            group.addButton(button)
            self.steps[step] = button
            row.addWidget(button)
        row.addWidget(self.value)
        row.addStretch(1)
        self.value.valueChanged.connect(self._show_value)
        self._group = group
        self._show_value(begin)
        return row

    def _setter(self, step: int) -> Callable[[], None]:
        return lambda: self.value.setValue(step)

    def _show_value(self, value: int) -> None:
        self._group.setExclusive(False)
        for step, button in self.steps.items():
            button.setChecked(step == value)
        self._group.setExclusive(True)

    def _setting(self) -> Setting:
        reason = self.reason.toPlainText().strip()
        return Setting(self._mark, self.value.value() / 100.0, reason, self.by.text().strip())

    def _check(self) -> None:
        """What is missing is said; the button waits for it."""
        if self._waits:
            return
        said = self._setting()
        self._tone("gloss")
        faults = override_faults(said.mark, said.value, said.reason, said.by)
        self.save.setEnabled(not faults)
        words = {
            "override-reason": self.tr("A reason of 1 to {most} characters is needed.").format(
                most=LONGEST_REASON
            ),
            "override-by": self.tr("Who says so is needed."),
        }
        self.wrong.setText(" ".join(words.get(fault.code, fault.text) for fault in faults))

    def _state(self) -> None:
        if self.save.isEnabled():
            self._wait(waits=True)
            self.wrong.setText(self.tr("Being kept..."))
            self.stated.emit(self._setting())

    def refuse(self, trouble: str) -> None:
        """Say why it was not kept; what was typed stays, to be tried again."""
        self._wait(waits=False)
        self._check()
        self._tone("wrong")
        self.wrong.setText(trouble)
        self.save.setFocus()

    def _wait(self, *, waits: bool) -> None:
        """While it is being kept nothing of it can be changed."""
        self._waits = waits
        for part in (*self.steps.values(), self.value, self.reason, self.by, self.save):
            part.setEnabled(not waits)

    def _tone(self, tone: str) -> None:
        if self.wrong.property("tone") != tone:
            self.wrong.setProperty("tone", tone)
            self.wrong.style().unpolish(self.wrong)
            self.wrong.style().polish(self.wrong)


def _said(mark: str, value: float | None) -> str:
    if mark == "critical":
        critical = translate("OverrideDialog", "critical")
        return critical if value else translate("OverrideDialog", "not critical")
    return translate("OverrideDialog", "not marked") if value is None else percent(value)
