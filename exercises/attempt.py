"""Attempts: what a learner stated of a coupon, and files of them, one a line."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from exercises.building import pose_of
from exercises.coupon import Disposition
from exercises.file_faults import FileError, TrayFault, read_bytes
from exercises.models import ATTEMPTS_FORMAT, AttemptModel, HeaderModel, ReadingModel
from exercises.placed import PlacementFault
from exercises.shape import check_shape, without_private_keys
from exercises.strict_json import LARGEST_FILE, Json, parse_json, quoted
from exercises.versions import (
    ATTEMPTS_HEAD,
    ATTEMPTS_LATER_KEYS,
    check_version,
    later_keys,
    migrate_attempt,
)
from geometry.faults import Fault
from geometry.joint import Member
from geometry.leaf import Edge, leaf_of_mark
from geometry.measures import FaceShape
from geometry.pose import Pose
from geometry.reading import State

__all__ = ["Attempt", "AttemptsError", "StatedReading", "load_attempts"]


@dataclass(frozen=True, slots=True)
class StatedReading:
    """What a learner says that a leaf shows at one seat.

    Parameters
    ----------
    leaf
        Its mark.
    edge
        The end that faced the joint.
    on
        The member whose leg it reads.
    pose
        Where it was held.
    state
        What it is said to show.

    What is None was not stated, and can't be marked.

    Examples
    --------
    >>> StatedReading("8 mm", "leg", "upright", Pose(0.0, 0.0), "daylight").state
    'daylight'
    """

    leaf: str | None
    edge: Edge | None
    on: Member | None
    pose: Pose | None = None
    state: State | None = None


@dataclass(frozen=True, slots=True)
class Attempt:
    """One attempt at one coupon.

    Parameters
    ----------
    coupon
        Id of the coupon.
    face, disposition
        What was stated, or None.
    readings
        In the order they were taken; None if they were not kept, empty if none was taken.
    sure
        0 to 1, or None.
    fault
        What is said to be wrong with the leaf that lies there, where that is the task.
    size
        The mark of the largest leaf that the weld is said to meet, where that is the task.
    hints
        How many of the coupon's hints were asked for; None if that wasn't kept.

    Examples
    --------
    >>> Attempt("hb-04", face="convex", readings=(), disposition="accept").sure is None
    True
    """

    coupon: str
    face: FaceShape | None = None
    readings: tuple[StatedReading, ...] | None = None
    disposition: Disposition | None = None
    sure: float | None = None
    fault: PlacementFault | None = None
    size: str | None = None
    hints: int | None = None


class AttemptsError(FileError):
    """An attempts file that can't be used."""


def load_attempts(path: Path | str, known: Collection[str] | None = None) -> list[Attempt]:
    """Return the attempts in the file at `path`, in file order.

    Lines that are empty are passed over. If `known` names the coupons that there are, an attempt
    at another is a fault.

    Raises
    ------
    AttemptsError
        With every fault of the file, each with its line; nothing is half-loaded.
    """
    file = str(path)
    try:
        data = read_bytes(Path(path))
    except FileError as error:
        raise AttemptsError(error.faults) from error
    if len(data) > LARGEST_FILE:
        raise AttemptsError([TrayFault.of(file, fault) for fault in parse_json(data).faults])
    lines = [(i, line) for i, line in enumerate(data.split(b"\n"), start=1) if line.strip()]
    if not lines:
        right = f'a first line with "format": "{ATTEMPTS_FORMAT}" and "version"'
        fault = Fault("", "empty-file", "the file is empty", right, {"expected": ATTEMPTS_FORMAT})
        raise AttemptsError([TrayFault.of(file, fault, line=1)])
    version, head = _header(lines[0][1])
    faults = [TrayFault.of(file, fault, line=lines[0][0]) for fault in head]
    # After a header of another format or a newer version, faults of its lines would mislead.
    if faults:
        raise AttemptsError(faults)
    attempts: list[Attempt] = []
    for number, line in lines[1:]:
        model, found = _examine(line, known, version)
        faults += [TrayFault.of(file, fault, line=number) for fault in found]
        if model is not None:
            attempts.append(_attempt(model))
    if faults:
        raise AttemptsError(faults)
    return attempts


def _header(line: bytes) -> tuple[int, list[Fault]]:
    """The version that a first line states, and every fault of that line."""
    parsed = parse_json(line)
    if parsed.faults:
        return ATTEMPTS_HEAD, parsed.faults
    faults = check_version(parsed.value, ATTEMPTS_FORMAT, ATTEMPTS_HEAD)
    if faults:
        return ATTEMPTS_HEAD, faults
    model, found = check_shape(HeaderModel, without_private_keys(parsed.value))
    return ATTEMPTS_HEAD if model is None else model.version, found


def _examine(
    line: bytes, known_coupons: Collection[str] | None, version: int
) -> tuple[AttemptModel | None, list[Fault]]:
    parsed = parse_json(line)
    if parsed.value is None and parsed.faults:
        return None, parsed.faults
    bare: Json = without_private_keys(parsed.value)
    later: list[Fault] = []
    if isinstance(bare, dict):
        later = later_keys(bare, version, ATTEMPTS_LATER_KEYS)
        bare = migrate_attempt(bare, version)
    model, shape = check_shape(AttemptModel, bare)
    known = {fault.at for fault in parsed.faults}
    faults = parsed.faults + later + [fault for fault in shape if fault.at not in known]
    if known_coupons is not None:
        faults += _stranger(bare, known_coupons)
    return model, faults


def _stranger(bare: Json, known: Collection[str]) -> list[Fault]:
    """The fault of an attempt at a coupon that isn't there, whatever else is wrong with it."""
    name = bare.get("coupon") if isinstance(bare, dict) else None
    if not isinstance(name, str) or name in known:
        return []
    listed = ", ".join(known)
    text = f"the tray has no coupon {quoted(name)}"
    params = {"coupon": name, "named": quoted(name), "known": listed}
    return [Fault("/coupon", "unknown-coupon", text, listed, params)]


def _attempt(model: AttemptModel) -> Attempt:
    readings = None
    if model.readings is not None:
        readings = tuple(_stated(reading) for reading in model.readings)
    return Attempt(
        coupon=model.coupon,
        face=model.face,
        readings=readings,
        disposition=model.disposition,
        sure=model.sure,
        fault=model.fault,
        size=_mark(model.size),
        hints=model.hints,
    )


def _mark(stated: str | None) -> str | None:
    """A leaf's mark in one spelling, so that marks can be compared."""
    return None if stated is None else leaf_of_mark(stated).mark


def _stated(model: ReadingModel) -> StatedReading:
    pose = pose_of(model.pose) if model.pose is not None else None
    return StatedReading(_mark(model.leaf), model.edge, model.on, pose, model.state)
