"""The scene that the canvas shows for a state of the bench."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from exercises.coupon import Coupon
from geometry.lengths import Unit
from geometry.pose import Pose
from trainer.bench.spoken import leaf_actions, parts_of
from trainer.bench.state import BenchState
from trainer.bench.terms import FREE, Terms
from trainer.canvas.scene import Loupe, Scene, Tether
from trainer.look.tokens import Theme
from trainer.settings import Settings

__all__ = ["LOUPE_ZOOM", "handling_scene", "unit_of"]

LOUPE_ZOOM = 4.0
"""How much the loupe would like to magnify; in marked work the canvas holds it to its cap."""


def unit_of(coupon: Coupon, settings: Settings) -> Unit:
    """The unit that lengths are shown in: the one chosen, or else the callout's own."""
    if settings.unit is not None:
        return settings.unit
    return "in" if coupon.callout.text.endswith("in") else "mm"


def handling_scene(
    state: BenchState, pose: Pose | None, settings: Settings, theme: Theme, terms: Terms = FREE
) -> Scene:
    """What is seen before a call: the section, the leaf, the pull on it. Nothing that is read."""
    coupon, loose = state.coupon, state.can_move
    return Scene(
        section=state.section,
        leaf=state.leaf,
        pose=pose,
        theme=theme,
        unit=unit_of(coupon, settings),
        loupe=_loupe(state) if settings.loupe and state.leaf is not None else None,
        tether=_tether(state),
        eye_limit=coupon.eye_limit,
        capped=True,
        parts=parts_of(state.section, state.leaf, pose, state.touches, unit_of(coupon, settings)),
        actions=leaf_actions(terms) if state.leaf is not None and loose else (),
        loose=loose,
    )


def _loupe(state: BenchState) -> Loupe:
    on_tip = state.leaf is not None and state.leaf.edge == "leg"
    label = (
        QCoreApplication.translate("Bench", "Loupe on the tip")
        if on_tip
        else QCoreApplication.translate("Bench", "Loupe on the spur")
    )
    return Loupe(zoom=LOUPE_ZOOM, label=label)


def _tether(state: BenchState) -> Tether | None:
    if state.hand is None or state.pose is None:
        return None
    return Tether(state.pose.to_section(state.hand.grab), state.hand.pointer)
