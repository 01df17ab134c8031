"""What is stated, by button or by key, turned into calls on the controller."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, cast

from PySide6.QtCore import QObject, Signal

from exercises.coupon import Disposition
from exercises.placed import PLACEMENT_FAULTS, PlacementFault
from geometry.measures import FaceShape
from geometry.reading import State
from trainer.bench import state as changes
from trainer.bench.call_panel import CallPanel
from trainer.bench.controller import BenchController

__all__ = ["Stating"]

_SURER: Final = 0.1
"""How much surer one press of the key makes a call."""


class Stating(QObject):
    """Takes what the call panel and the keys state.

    Parameters
    ----------
    controller
        Holds the state.
    panel
        Its choices are listened to.

    Signals
    -------
    said
        Why something that was asked for did nothing, or what it came to.
    noted
        A bench note was turned up.
    """

    said = Signal(str)
    noted = Signal()

    def __init__(self, controller: BenchController, panel: CallPanel, parent: QObject) -> None:
        super().__init__(parent)
        self._controller = controller
        panel.hint_asked.connect(self.note)
        panel.face_named.connect(self.face)
        panel.state_stated.connect(self.reading)
        panel.disposition_named.connect(self.disposition)
        panel.fault_named.connect(self.fault)
        panel.size_named.connect(self.size)
        panel.sureness_named.connect(self.sureness)

    def do(self, name: str, *, shift: bool) -> bool:
        """State by a key what a button of the call states; whether the key meant that here."""
        kind, _, value = name.partition(" ")
        finding = "fault" in changes.asked_of(self._controller.state.coupon)
        if finding and kind == "leaf" and value.isdigit():
            # The leaf lies there already: here the digits count the answers.
            if int(value) <= len(PLACEMENT_FAULTS):
                self.fault(PLACEMENT_FAULTS[int(value) - 1])
            return True
        taken: dict[str, Callable[[], None]] = {
            "state": lambda: self.reading(value),
            "face": lambda: self.face(value),
            "call": lambda: self.disposition(value),
            "note": self.note,
            "sure": lambda: self._surer(-_SURER if shift else _SURER),
            "size": self.size_in_hand,
        }
        if kind not in taken:
            return False
        taken[kind]()
        return True

    def note(self) -> None:
        """Turn up one bench note more."""
        self._controller.do(lambda state, _: changes.hinted(state))
        self.noted.emit()

    def face(self, face: str) -> None:
        """Name the face."""
        wanted = cast(FaceShape, face)
        self._controller.do(lambda state, now: changes.name_face(state, wanted, now))

    def disposition(self, value: str) -> None:
        """Choose what should happen to the weld."""
        wanted = cast(Disposition, value)
        self._controller.do(lambda state, now: changes.name_disposition(state, wanted, now))

    def fault(self, value: str) -> None:
        """Say what is wrong with the leaf that lies there."""
        wanted = cast(PlacementFault, value)
        self._controller.do(lambda state, now: changes.name_fault(state, wanted, now))

    def size(self, mark: str) -> None:
        """State the largest leaf that the weld meets."""
        self._controller.do(lambda state, now: changes.name_size(state, mark, now))

    def size_in_hand(self) -> None:
        """State the leaf that is out as the largest that the weld meets."""
        state = self._controller.state
        if "size" not in changes.asked_of(state.coupon):
            return
        if state.leaf is None:
            self.said.emit(self.tr("Take a leaf off the rack first."))
        else:
            self.size(state.leaf.mark)

    def sureness(self, sure: float) -> None:
        """Say how sure the call is, 0 to 1."""
        self._controller.do(lambda state, now: changes.name_sureness(state, sure, now))

    def _surer(self, by: float) -> None:
        self._controller.do(lambda state, now: changes.surer(state, by, now))

    def reading(self, shown: str) -> None:
        """State what the leaf shows where it lies."""
        before = self._controller.state
        if "reading" not in changes.asked_of(before.coupon):
            return
        if before.leaf is None:
            self.said.emit(self.tr("Take a leaf off the rack first."))
            return
        wanted = cast(State, shown)
        self._controller.do(lambda state, now: changes.state_reading(state, wanted, now))
        state = self._controller.state
        if state is not before and changes.lies_in_the_air(state, state.readings[-1]):
            self.said.emit(
                self.tr(
                    "In mid-air: the leaf touches nothing. Your earlier reading there stands; "
                    "take back either on the job card."
                )
                if len(state.readings) > len(before.readings) and changes.also_seated(state)
                else self.tr("In mid-air: the leaf touches nothing.")
            )
