"""The picture to a screen reader: a canvas whose children are the parts of its scene.

Each part is a QObject in the picture, so that Qt makes, keeps and drops its interface as it does a
widget's; an interface without an object would be freed by Qt and by Python both.

Qt's own description of its classes for Python forgets that there may be no child or parent, which
in Qt is a null pointer: hence the exemptions from the type check.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from PySide6.QtCore import QObject, QPoint, QRect, QRectF, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface, QAccessibleObject
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from trainer.canvas.spoken import Action, Part, PartKey, differing

__all__ = ["SpokenPicture"]

_KEYS: Final[tuple[PartKey, ...]] = ("section", "leaf", "tip")


class SpokenPicture(QWidget):
    """A widget that is told to a screen reader part by part.

    Signals
    -------
    asked
        The name of an action that a screen reader asked for.
    """

    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        _install()
        self._told: tuple[Part, ...] = ()
        self.things = {key: _Thing(key, self) for key in _KEYS}

    @property
    def parts(self) -> tuple[Part, ...]:
        """What is there, in the order in which it is told: nothing, until there is a scene."""
        return ()

    @property
    def offered(self) -> tuple[Action, ...]:
        """What can be done."""
        return ()

    def part_rect(self, key: PartKey) -> QRectF:
        """Where a part is, logical pixels of this widget."""
        return QRectF()

    def present(self) -> list[_Thing]:
        """The objects of the parts that are there."""
        return [self.things[part.key] for part in self.parts]

    def tell_changes(self) -> None:
        """Let a screen reader know which parts came, went or have something else said of them."""
        if self._told == self.parts or not QAccessible.isActive():
            return
        gone, come, named, said = differing(self._told, self.parts)
        kind = QAccessible.Event
        for keys, event in (
            (gone, kind.ObjectHide),
            (come, kind.ObjectCreated),
            (named, kind.NameChanged),
            (said, kind.DescriptionChanged),
            (said, kind.LocationChanged),
        ):
            for key in keys:
                QAccessible.updateAccessibility(QAccessibleEvent(self.things[key], event))
        self._told = self.parts


class _Thing(QObject):
    """The object that stands for one part."""

    def __init__(self, key: PartKey, picture: SpokenPicture) -> None:
        super().__init__(picture)
        self.key: PartKey = key
        self.picture = picture

    @property
    def part(self) -> Part | None:
        """What is told of it, while it is there."""
        return next((part for part in self.picture.parts if part.key == self.key), None)


class _PartInterface(QAccessibleObject):
    """What a screen reader asks about one part."""

    def __init__(self, thing: _Thing) -> None:
        super().__init__(thing)
        self._thing = thing

    def parent(self) -> QAccessibleInterface | None:  # type: ignore[override]
        """The picture."""
        return QAccessible.queryAccessibleInterface(self._thing.picture)

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """A part has no parts."""
        return None

    def childCount(self) -> int:
        """None."""
        return 0

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """No child of this."""
        return -1

    def text(self, kind: QAccessible.Text) -> str:
        """Its name, and what is said of it."""
        part = self._thing.part
        if part is None:
            return ""
        return {QAccessible.Text.Name: part.name, QAccessible.Text.Description: part.says}.get(
            kind, ""
        )

    def role(self) -> QAccessible.Role:
        """A picture within the picture."""
        return QAccessible.Role.Graphic

    def state(self) -> QAccessible.State:
        """Whether it can be seen."""
        state = QAccessible.State()
        picture = self._thing.picture
        if self._thing.part is None or not picture.isVisible():
            state.invisible = 1
        elif not picture.part_rect(self._thing.key).intersects(QRectF(picture.rect())):
            state.offscreen = 1
        return state

    def rect(self) -> QRect:
        """Where it is on the screen, as far as the picture shows it."""
        picture = self._thing.picture
        if self._thing.part is None:
            return QRect()
        seen = picture.part_rect(self._thing.key).toAlignedRect().intersected(picture.rect())
        return seen.translated(picture.mapToGlobal(QPoint(0, 0)))


class _PictureInterface(QAccessibleWidget):
    """What a screen reader asks about the picture."""

    def __init__(self, picture: SpokenPicture) -> None:
        super().__init__(picture, QAccessible.Role.Canvas)
        self._picture = picture

    def childCount(self) -> int:
        """How many parts are there, and widgets that lie on the picture."""
        return len(self._picture.parts) + int(super().childCount())

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """A part, or after the parts a widget."""
        things = self._picture.present()
        if 0 <= index < len(things):
            return QAccessible.queryAccessibleInterface(things[index])
        return super().child(index - len(things)) if index >= 0 else None

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """The place of a part or of a widget."""
        thing, things = child.object(), self._picture.present()
        for index, other in enumerate(things):
            if other is thing:
                return index
        among = int(super().indexOfChild(child))
        return among + len(things) if among >= 0 else -1

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """What is at a point of the screen; of several the last, which lies uppermost."""
        for index in reversed(range(self.childCount())):
            part = self.child(index)
            if part is None or part.state().invisible:
                continue
            if part.rect().contains(x, y):
                return part
        return None

    def _action(self, name: str) -> Action | None:
        return next((each for each in self._picture.offered if each.name == name), None)

    def actionNames(self) -> list[str]:
        """What can be done to the leaf, and what to any widget."""
        return [*(action.name for action in self._picture.offered), *super().actionNames()]

    def localizedActionName(self, name: str) -> str:
        """An action in the user's language."""
        action = self._action(name)
        return action.words if action is not None else str(super().localizedActionName(name))

    def keyBindingsForAction(self, name: str) -> list[str]:
        """The key of an action."""
        action = self._action(name)
        if action is not None:
            return [action.key] if action.key else []
        return list(super().keyBindingsForAction(name))

    def doAction(self, name: str) -> None:
        """Pass it on to the screen."""
        if self._action(name) is not None:
            self._picture.asked.emit(name)
        else:
            super().doAction(name)


def _interface(_: str, thing: QObject) -> QAccessibleInterface | None:
    if isinstance(thing, SpokenPicture):
        return _PictureInterface(thing)
    if isinstance(thing, _Thing):
        return _PartInterface(thing)
    return None


@cache
def _install() -> None:
    """Have Qt ask us first; once a process is enough."""
    QAccessible.installFactory(_interface)
