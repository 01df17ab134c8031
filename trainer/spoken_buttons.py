"""Push buttons to a screen reader: pressing one that stays down does what a click on it does.

Qt's own interface offers them Toggle first, which checks the button and tells nobody that it was
clicked: the screen would show a choice that was never made. Qt asks for an interface as soon as a
button has a name, before it is known to stay down; so every push button gets this one.
"""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleActionInterface, QAccessibleInterface
from PySide6.QtWidgets import QAccessibleWidget, QPushButton

__all__ = ["speak_buttons"]


class _ButtonInterface(QAccessibleWidget):
    """What a screen reader asks about a button."""

    def __init__(self, button: QPushButton) -> None:
        super().__init__(button, QAccessible.Role.Button)
        self._button = button

    def text(self, kind: QAccessible.Text) -> str:
        """Its name, or else the word on it; its description."""
        said = str(super().text(kind))
        if kind == QAccessible.Text.Name and not said:
            return self._button.text().replace("&", "")
        return said

    def state(self) -> QAccessible.State:
        """Whether it is down, beside what any widget has."""
        state = super().state()
        state.checkable = int(self._button.isCheckable())
        state.checked = int(self._button.isChecked())
        state.pressed = int(self._button.isDown())
        state.defaultButton = int(self._button.isDefault())
        return state

    def actionNames(self) -> list[str]:
        """Press, and what any widget can do."""
        press = QAccessibleActionInterface.pressAction()
        if not self._button.isEnabled():
            return []
        return [press, *(name for name in super().actionNames() if name != press)]

    def doAction(self, name: str) -> None:
        """Click it."""
        if name == QAccessibleActionInterface.pressAction():
            self._button.click()
        else:
            super().doAction(name)


def _interface(_: str, thing: QObject) -> QAccessibleInterface | None:
    return _ButtonInterface(thing) if isinstance(thing, QPushButton) else None


@cache
def speak_buttons() -> None:
    """Have Qt ask us about push buttons; once a process is enough."""
    QAccessible.installFactory(_interface)
