"""What lies on the bench as it is kept in a sitting's journal, and the bench out of that. No Qt.

A draft holds all that has been stated of a coupon so far, the handling, and where the leaf lies. It
holds no grade and nothing else that depends on the truth.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Final, cast

from exercises.attempt import StatedReading
from exercises.coupon import DISPOSITIONS, Coupon
from exercises.handling import HandlingLog
from exercises.placed import PLACEMENT_FAULTS
from exercises.strict_json import Json
from geometry.contact import touches
from geometry.leaf import RACKS, Leaf, RackName, leaf_of_mark
from geometry.leaf import rack as rack_of
from geometry.pose import Pose
from trainer.bench.state import BenchState, attempt_of, open_coupon

__all__ = ["Draft", "draft_of", "laid_out", "stated_of"]


@dataclass(frozen=True, slots=True)
class Draft:
    """What has been done with one coupon.

    Parameters
    ----------
    attempt
        What has been stated, in the keys of an attempt.
    handling
        ``[ms, x, y, angle, turned, event]`` rows.
    zoom
        Device pixels per mm of the picture, and of the loupe.
    whole
        Whether nothing is missing from the call.
    spent
        ms that the handling's clock has run; None while it hasn't begun.
    leaf, edge, pose, cleaned
        What lies where, and whether the toes are clean.
    """

    attempt: Mapping[str, Json]
    handling: Sequence[Sequence[Json]]
    zoom: Mapping[str, Json]
    whole: bool
    spent: float | None = None
    leaf: str | None = None
    edge: str | None = None
    pose: tuple[float, float, float, bool] | None = None
    cleaned: bool = False

    def as_dict(self) -> dict[str, Json]:
        """The draft as the journal keeps it."""
        return cast("dict[str, Json]", asdict(self))

    @classmethod
    def of(cls, said: Mapping[str, Json]) -> Draft:
        """Return the draft that `as_dict` gave.

        Raises
        ------
        ValueError
            If it is something else.
        """
        try:
            draft = cls(**said)  # type: ignore[arg-type]  # looked at below, and when laid out
        except TypeError as error:
            raise ValueError(f"no draft: {error}") from error
        parts = (draft.attempt, draft.zoom)
        if not all(isinstance(part, Mapping) for part in parts):
            raise ValueError("no draft: attempt and zoom are objects")
        HandlingLog.from_json(cast("Json", draft.handling))
        pose = draft.pose
        return replace(draft, pose=None if pose is None else _four(pose))

    @property
    def begun(self) -> bool:
        """Whether anything has been stated."""
        stated = (self.attempt.get(key) for key in _STATED)
        return any(each not in (None, [], ()) for each in stated)


_STATED: Final = ("face", "readings", "disposition", "size", "fault")


def _four(pose: Sequence[object]) -> tuple[float, float, float, bool]:
    x, y, angle, turned = pose
    if not isinstance(turned, bool):
        raise ValueError("no draft: a pose ends with whether the leaf is turned over")
    return float(cast(float, x)), float(cast(float, y)), float(cast(float, angle)), turned


def stated_of(state: BenchState) -> tuple[object, ...]:
    """Return what has been stated, to be compared: it is kept as soon as it is another."""
    return (
        state.face, state.readings, state.disposition, state.sure, state.size, state.fault,
    )  # fmt: skip


def draft_of(state: BenchState, zoom: Mapping[str, Json], now: float) -> Draft:
    """Return what lies on the bench, as it is kept.

    Parameters
    ----------
    zoom
        Device pixels per mm of the picture, and of the loupe.
    now
        ms of the clock that the handling goes by.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 8.0)), Callout(8.0, "leg", "8 mm"))
    >>> state = replace(open_coupon(coupon), face="flat")
    >>> draft = draft_of(state, {}, 0.0)
    >>> draft.begun, draft.whole, laid_out(coupon, Draft.of(draft.as_dict()), 0.0) == state
    (True, False, False)
    >>> laid_out(coupon, draft, 0.0).face
    'flat'
    """
    leaf, pose = state.leaf, state.pose
    attempt = asdict(attempt_of(state))
    if attempt["readings"] is not None:
        attempt["readings"] = list(attempt["readings"])
    return Draft(
        attempt=attempt,
        handling=state.handling.as_json(),
        zoom=dict(zoom),
        whole=not state.missing,
        spent=None if state.began is None else now - state.began,
        leaf=None if leaf is None else leaf.mark,
        edge=None if leaf is None else leaf.edge,
        pose=None if pose is None else (pose.x, pose.y, pose.angle, pose.turned),
        cleaned=state.cleaned and bool(state.coupon.section.spatter),
    )


def laid_out(coupon: Coupon, draft: Draft, now: float, rack: RackName | None = None) -> BenchState:
    """Return the bench with `coupon` as `draft` has left it; there is nothing to undo then.

    Raises
    ------
    ValueError
        If the draft isn't one of this coupon's.
    """
    leaf = _leaf(coupon, draft)
    set_of_leaf = None if leaf is None else _rack_of(leaf.mark)
    state = open_coupon(coupon, rack or set_of_leaf or "metric")
    if draft.cleaned:
        state = replace(state, section=state.section.cleaned())
    said = draft.attempt
    stated = replace(
        state,
        face=_choice(said.get("face"), ("convex", "flat", "concave")),  # type: ignore[arg-type]
        disposition=_choice(said.get("disposition"), DISPOSITIONS),  # type: ignore[arg-type]
        fault=_choice(said.get("fault"), PLACEMENT_FAULTS),  # type: ignore[arg-type]
        size=_text(said.get("size")),
        sure=_share(said.get("sure")),
        readings=tuple(_reading(each) for each in _listed(said.get("readings"))),
        handling=HandlingLog.from_json(cast("Json", draft.handling)),
        began=None if draft.spent is None else now - draft.spent,
    )
    if leaf is None or draft.pose is None or not state.can_move:
        return stated
    pose = Pose(*draft.pose)
    met = touches(stated.section.outline, leaf.body, pose)
    return replace(stated, leaf=leaf, pose=pose, touches=met)


def _leaf(coupon: Coupon, draft: Draft) -> Leaf | None:
    if draft.leaf is None:
        return None
    edge = "throat" if draft.edge == "throat" else "leg"
    return leaf_of_mark(draft.leaf, edge, coupon.leaf_wear)  # type: ignore[arg-type]


def _rack_of(mark: str) -> RackName | None:
    """The set that a leaf hangs in."""
    return next((name for name in RACKS if mark in {leaf.mark for leaf in rack_of(name)}), None)


def _choice(value: Json, choices: Sequence[str]) -> str | None:
    if value is None or value in choices:
        return cast("str | None", value)
    raise ValueError(f"{value!r} is not one of {', '.join(choices)}")


def _text(value: Json) -> str | None:
    if value is None or isinstance(value, str):
        return value
    raise ValueError(f"{value!r} is no text")


def _share(value: Json) -> float | None:
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0.0 <= value <= 1.0:
        raise ValueError(f"{value!r} is no share")
    return float(value)


def _listed(value: Json) -> list[Json]:
    if value is None:
        return []
    if isinstance(value, (list, tuple)):
        return list(value)
    raise ValueError("readings are a list")


def _reading(said: Json) -> StatedReading:
    if not isinstance(said, Mapping):
        raise ValueError("a reading is an object")
    pose = said.get("pose")
    if pose is not None and not isinstance(pose, Mapping):
        raise ValueError("a pose is an object")
    return StatedReading(
        leaf=_text(said.get("leaf")),
        edge=_choice(said.get("edge"), ("leg", "throat")),  # type: ignore[arg-type]
        on=_choice(said.get("on"), ("base", "upright")),  # type: ignore[arg-type]
        pose=None if pose is None else Pose(**pose),  # type: ignore[arg-type]
        state=_choice(  # type: ignore[arg-type]
            said.get("state"), ("touch", "daylight", "held off", "not seated")
        ),
    )
