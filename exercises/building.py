"""From a coupon's checked shape to the coupon itself, with a section that can be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from exercises.backdrop import Backdrop
from exercises.callout import Callout, Intermittent
from exercises.conditions import Conditions
from exercises.coupon import Coupon
from exercises.models import (
    BackdropModel,
    CalloutModel,
    CouponModel,
    DrawnBeadModel,
    IntermittentModel,
    PlacedModel,
    PoseModel,
    TracedBeadModel,
)
from exercises.placed import Placed
from exercises.strict_json import Json
from exercises.text import NO_TEXT, Text
from geometry.bead import Bead, Overlap, Spatter, Undercut, trace_end_faults
from geometry.faults import Fault, GeometryError
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.lengths import format_length, parse_length
from geometry.pose import Pose, wrap_degrees
from geometry.section import Section

__all__ = ["build_coupon", "pose_of"]


def build_coupon(model: CouponModel, source: Mapping[str, Json]) -> Coupon:
    """Return the coupon that `model` states; `source` is what its file says, to be kept.

    Raises
    ------
    GeometryError
        With a `Fault` for each thing that no section can be, placed below the coupon.
    """
    found = _callout_faults(model.callout)
    backdrop: Backdrop | None = None
    try:
        backdrop = _backdrop(model.backdrop)
    except GeometryError as error:
        found += error.faults
    try:
        section = _section(model)
    except GeometryError as error:
        raise GeometryError([*error.faults, *found]) from error
    if found:
        raise GeometryError(found)
    return Coupon(
        id=model.id,
        title=Text.of(model.title) if model.title else Text.of(model.id),
        task=model.task,
        section=section,
        callout=_callout(model.callout),
        rules=model.rules,
        extent=model.extent,
        eye_limit=model.eye_limit,
        leaf_wear=model.leaf_wear,
        hints=tuple(Text.of(hint) for hint in model.hints),
        teaches=Text.of(model.teaches) if model.teaches else NO_TEXT,
        conditions=Conditions(**model.conditions.model_dump()),
        backdrop=backdrop,
        placed=_placed_leaf(model.placed),
        source=source,
    )


def pose_of(model: PoseModel) -> Pose:
    """Return the pose that `model` states, its angle in (-180, 180]."""
    return Pose(model.x, model.y, wrap_degrees(model.angle), model.turned)


def _placed_leaf(model: PlacedModel | None) -> Placed | None:
    if model is None:
        return None
    # One spelling of each mark, so that marks can be compared.
    mark = leaf_of_mark(model.leaf).mark
    return Placed(mark, model.edge, model.on, pose_of(model.pose), tuple(model.gauged))


def _backdrop(model: BackdropModel | None) -> Backdrop | None:
    if model is None:
        return None
    return Backdrop.from_text(model.jpeg, model.left, model.top, model.mm_per_pixel)


def _section(model: CouponModel) -> Section:
    joint = Joint(**model.joint.model_dump())
    found = joint.faults()
    if isinstance(model.bead, TracedBeadModel):
        points = tuple((x, y) for x, y in model.bead.trace)
        # Projecting the ends would hide how far off they were, so they are looked at before.
        found += [] if found else trace_end_faults(points, joint)
    if found:
        raise GeometryError(found)
    drops = tuple(Spatter(drop.on, drop.at, drop.height) for drop in model.spatter)
    try:
        return Section.of(joint, _bead(model.bead, joint), drops)
    except GeometryError as error:
        raise GeometryError([_placed(fault) for fault in error.faults]) from error


def _bead(model: DrawnBeadModel | TracedBeadModel, joint: Joint) -> Bead:
    if isinstance(model, TracedBeadModel):
        bead = Bead.traced(tuple((x, y) for x, y in model.trace), joint)
    else:
        bead = Bead(model.leg_base, model.leg_upright, model.crown)
    cuts = {"base": model.undercut_base, "upright": model.undercut_upright}
    grooves = {
        member: Undercut(cut.depth, cut.width) if cut else None for member, cut in cuts.items()
    }
    laps = {"base": model.overlap_base, "upright": model.overlap_upright}
    # An overlap of no length is none: said so in a file, it need not be a fault.
    lips = {member: Overlap(length) if length else None for member, length in laps.items()}
    return replace(
        bead,
        undercut_base=grooves["base"],
        undercut_upright=grooves["upright"],
        overlap_base=lips["base"],
        overlap_upright=lips["upright"],
    )


def _placed(fault: Fault) -> Fault:
    """The fault with the place that it has in a file: an overlap is a bare number there."""
    at = fault.at
    if at.startswith("/bead/overlap_") and at.endswith("/length"):
        at = at.removesuffix("/length")
    return replace(fault, at=at)


def _length(stated: float | str) -> float:
    # parse_length took it when the shape was checked.
    return parse_length(stated) if isinstance(stated, str) else float(stated)


def _words(stated: float | str) -> str:
    return " ".join(stated.split()) if isinstance(stated, str) else format_length(float(stated))


def _callout(model: CalloutModel) -> Callout:
    upright = model.upright_size
    return Callout(
        _length(model.size),
        model.measure,
        _words(model.size),
        upright_size=None if upright is None else _length(upright),
        upright_text="" if upright is None else _words(upright),
        intermittent=None if model.intermittent is None else _intermittent(model.intermittent),
        side=model.side,
        all_around=model.all_around,
        site=model.site,
        built_out=model.built_out,
        tail=model.tail,
    )


def _intermittent(model: IntermittentModel) -> Intermittent:
    length, staggered = _length(model.length), model.staggered
    if model.gap is not None:
        return Intermittent.of_gap(length, _length(model.gap), model.count, staggered=staggered)
    # One of the two is there: `_callout_faults` saw to it.
    return Intermittent(length, _length(model.pitch or 0.0), model.count, staggered)


def _callout_faults(model: CalloutModel) -> list[Fault]:
    found: list[Fault] = []
    if model.upright_size is not None and model.measure == "throat":
        text = "a throat has no second leg"
        at = "/callout/upright_size"
        found.append(Fault(at, "unequal-throat", text, 'no such key, or "measure": "leg"'))
    weld = model.intermittent
    if weld is None:
        return found
    at = "/callout/intermittent"
    if (weld.pitch is None) == (weld.gap is None):
        text = "says the spacing in no way, or in two"
        found.append(Fault(at, "pitch-or-gap", text, 'either "pitch" or "gap"'))
    elif weld.pitch is not None and _length(weld.pitch) <= _length(weld.length):
        text = f"the pitch is {_words(weld.pitch)}, no more than a piece is long"
        params = {"pitch": _words(weld.pitch), "length": _words(weld.length)}
        right = f"more than {_words(weld.length)}, from centre to centre"
        found.append(Fault(f"{at}/pitch", "pitch-short", text, right, params))
    return found
