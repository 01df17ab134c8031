"""The leaf that a learner finds on a coupon: placed by its author, with what its holder says of it.

No Qt here. What is truly wrong with it is derived from this, and stands in no file.
"""

from __future__ import annotations

from dataclasses import asdict, replace
from typing import Final, cast

from exercises.coupon import Coupon
from exercises.placed import Placed
from exercises.placement_faults import placed_leaf
from exercises.strict_json import Json
from exercises.versions import Document
from geometry.joint import MEMBERS, Member
from geometry.pose import Pose, wrap_degrees
from geometry.seat import home_pose, nearest_free
from trainer.shop.answers import Answer
from trainer.shop.callouts import Value
from trainer.shop.documents import with_value, without

__all__ = ["GAUGED", "placed_document", "placed_value", "with_placed", "without_placed"]

TASK: Final = "find the fault"
GAUGED: Final = ("", "base", "upright", "both")
"""What can be said to have been gauged: no leg, one, both."""

_PLACES: Final = 3
"""Decimals of a pose in a file, mm and degrees: far less than a leaf may stand in steel."""


def with_placed(coupon: Coupon, answer: Answer) -> Document:
    """Return the coupon's document with a leaf placed as it rests, and its fault to be found.

    Parameters
    ----------
    answer
        A leaf that has been pressed home; its holder says so, and that this leg was gauged.

    Examples
    --------
    >>> from trainer.shop.answers import Answers
    >>> from trainer.shop.building import NO_RULES, coupon_of
    >>> from trainer.shop.state import PLAIN
    >>> plain, answers = coupon_of(PLAIN, NO_RULES), Answers()
    >>> answers.ask(plain, "metric")
    >>> made = with_placed(plain, answers.answer("8 mm", ("leg", "upright")))
    >>> made["task"], made["placed"]["leaf"], made["placed"]["gauged"]
    ('find the fault', '8 mm', ['upright'])
    """
    pose, throat = answer.reading.pose, answer.leaf.edge == "throat"
    gauged: list[Json] = [] if throat else [answer.on]
    placed: Json = {
        "leaf": answer.leaf.mark,
        "edge": answer.leaf.edge,
        "on": answer.on,
        "pose": _pose_document(pose),
        "gauged": gauged,
    }
    return with_value(with_value(coupon.source, ("placed",), placed), ("task",), TASK)


def without_placed(coupon: Coupon) -> Document:
    """Return the coupon's document without the placed leaf: then the weld is to be judged."""
    source = without(coupon.source, ("placed",))
    return with_value(source, ("task",), "judge") if coupon.task == TASK else source


def placed_value(coupon: Coupon, key: str) -> Value:
    """Return what a field says of the placed leaf; None where none is placed.

    Parameters
    ----------
    key
        ``placed.on``, ``placed.gauged``, ``placed.x``, ``placed.y`` (mm), ``placed.tilt``
        (degrees from how it lies flush).
    """
    placed = coupon.placed
    if placed is None:
        return None
    name = key.removeprefix("placed.")
    if name == "gauged":
        return "both" if len(placed.gauged) == len(MEMBERS) else "".join(placed.gauged)
    if name == "on":
        return placed.on
    if name == "tilt":
        return round(wrap_degrees(placed.pose.angle - _home_angle(coupon, placed)), _PLACES) + 0.0
    return placed.pose.x if name == "x" else placed.pose.y


def placed_document(coupon: Coupon, key: str, value: Value) -> Document:
    """Return the coupon's document once a field of the placed leaf says `value`.

    A leaf that is turned goes to the nearest place where it enters no steel.
    """
    placed = coupon.placed
    if placed is None:
        return dict(coupon.source)
    name = key.removeprefix("placed.")
    if name == "gauged":
        told: list[Json] = [each for each in MEMBERS if value in (each, "both")]
        return with_value(coupon.source, ("placed", "gauged"), told)
    if name == "on":
        return with_value(coupon.source, ("placed", "on"), cast("Member", value))
    number, pose = float(value or 0.0), placed.pose
    if name == "tilt":
        turned = replace(pose, angle=wrap_degrees(_home_angle(coupon, placed) + number))
        pose = nearest_free(coupon.section, placed_leaf(coupon), turned) or turned
    else:
        pose = replace(pose, x=number) if name == "x" else replace(pose, y=number)
    return with_value(coupon.source, ("placed", "pose"), _pose_document(pose))


def _home_angle(coupon: Coupon, placed: Placed) -> float:
    """The angle at which the leaf lies flush."""
    return home_pose(coupon.section.joint, placed_leaf(coupon), placed.held_on).angle


def _pose_document(pose: Pose) -> Json:
    # Adding zero makes one of a negative zero, which nobody writes.
    return {
        name: round(each, _PLACES) + 0.0 if isinstance(each, float) else each
        for name, each in asdict(pose).items()
    }
