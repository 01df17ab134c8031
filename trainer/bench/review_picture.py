"""The scene of the debrief: the truth over the section, reasons beside their places."""

from __future__ import annotations

from exercises.backdrop import Backdrop
from exercises.grading import Reason
from geometry.joint import MEMBERS, Joint, Member
from geometry.leaf import Leaf
from geometry.lengths import Unit
from geometry.pose import Pose
from geometry.section import Section
from trainer.bench.picture import unit_of
from trainer.bench.placed_picture import finding_marks
from trainer.bench.reasons import measure_word, short_reason
from trainer.bench.right import RightSeat
from trainer.bench.spoken import shown_words
from trainer.bench.state import BenchState
from trainer.bench.translation import translate
from trainer.bench.truth import Told, Truth, place_of
from trainer.bench.words import piece_word
from trainer.canvas.drawing import Vec
from trainer.canvas.scene import Area, Backing, Dimension, Line, Mark, Overlay, Scene
from trainer.figures import length_words
from trainer.look.tokens import Theme
from trainer.settings import Settings

__all__ = ["backing_of", "flaw_overlays", "review_scene", "right_words", "truth_overlays"]

_BESIDE = 20.0
"""Logical pixels between a member's face and the dimension line of its leg."""

_LIP_BESIDE = 44.0
_OPENING_BESIDE = 60.0
"""The same for a lip's length, and for the opening at the root: clear of the legs' lines."""


_NOWHERE = ("fault", "hints")
"""Marks whose reasons speak of no place: what is wrong with a placed leaf is marked by itself."""


def truth_overlays(truth: Truth, unit: Unit) -> tuple[Overlay, ...]:
    """True legs, the inscribed triangle, and both throats."""
    measures, root = truth.measures, (0.0, 0.0)
    effective = f"{measure_word('effective_throat')} {_said(measures.effective_throat, unit)}"
    actual = f"{measure_word('actual_throat')} {_said(measures.actual_throat, unit)}"
    # Dimensions first: their figures find the places beside their lines.
    return (
        Dimension(root, truth.toes[0], _said(measures.leg_base, unit), "truth", -_BESIDE),
        Dimension(root, truth.toes[1], _said(measures.leg_upright, unit), "truth", _BESIDE),
        Area(
            truth.triangle,
            "limit",
            f"{measure_word('effective_size')} {_said(measures.effective_size, unit)}",
        ),
        Line((root, truth.face_near), "shown", actual),
        Line((root, truth.throat_foot), "limit", effective),
    )


def flaw_overlays(section: Section, unit: Unit) -> tuple[Overlay, ...]:
    """What a leaf doesn't read, measured and named: grooves, lips, spatter, an open root."""
    joint, bead = section.joint, section.bead
    found: list[Overlay] = []
    for member in MEMBERS:
        side = -1.0 if member == "base" else 1.0
        groove, lip = bead.undercut(member), bead.overlap(member)
        if groove is not None:
            at = bead.leg(member) + groove.width / 2.0
            top, bottom = joint.point(member, at), _beside(joint, member, at, -groove.depth)
            words = _named(translate("Debrief", "undercut"), groove.depth, unit)
            found.append(Dimension(top, bottom, words, "fault"))
        if lip is not None:
            toe, end = section.toe(member), section.seen_toe(member)
            words = _named(translate("Debrief", "overlap"), lip.length, unit)
            found.append(Dimension(toe, end, words, "fault", side * _LIP_BESIDE))
    if joint.root_opening > 0.0:
        words = _named(translate("Debrief", "root opening"), joint.root_opening, unit)
        gap = joint.point("upright", joint.root_opening)
        found.append(Dimension((0.0, 0.0), gap, words, "note", _OPENING_BESIDE))
    for drop in section.spatter:
        words = _named(translate("Debrief", "spatter"), drop.height, unit)
        top = _beside(joint, drop.on, drop.at, drop.height)
        found.append(Mark(top, "note", words))
    return tuple(found)


def _named(name: str, length: float, unit: Unit) -> str:
    return f"{name} {_said(length, unit)}"


def _beside(joint: Joint, member: Member, at: float, off: float) -> Vec:
    """The point `at` along a member's face and `off` out of it into the air (mm)."""
    x, y = joint.point(member, at)
    out = joint.bisector
    dx, dy = joint.direction(member)
    normal = (-dy, dx) if -dy * out[0] + dx * out[1] > 0.0 else (dy, -dx)
    return x + off * normal[0], y + off * normal[1]


def _said(length: float, unit: Unit) -> str:
    return length_words(length, unit, decimals=2 if unit == "mm" else 3)


def _reason_marks(
    state: BenchState, truth: Truth, told: tuple[Told, ...], unit: Unit
) -> tuple[Overlay, ...]:
    """One mark for each place, saying every reason that speaks of it."""
    if state.grade is None:
        return ()
    places: dict[Vec, list[tuple[int, Reason]]] = {}
    for number, reason in enumerate(state.grade.reasons, start=1):
        if reason.mark in _NOWHERE:
            continue
        x, y = place_of(reason, state.coupon, truth, told)
        places.setdefault((round(x, 2), round(y, 2)), []).append((number, reason))
    return tuple(
        Mark(at, "fault", "; ".join(f"{n} {short_reason(why, unit)}" for n, why in reasons))
        for at, reasons in places.items()
    )


def right_words(seat: RightSeat) -> str:
    """A leaf and where it should have been held, in a word or two."""
    if seat.leaf.edge == "throat":
        return translate("Debrief", "{leaf}, throat").format(leaf=seat.leaf.mark)
    return translate("Debrief", "{leaf}, {member} leg").format(
        leaf=seat.leaf.mark, member=piece_word(seat.on)
    )


def backing_of(backdrop: Backdrop | None) -> Backing | None:
    """A coupon's picture as the canvas shows it."""
    if backdrop is None:
        return None
    return Backing(backdrop.jpeg, backdrop.left, backdrop.top, backdrop.mm_per_pixel)


def review_scene(
    state: BenchState,
    section: Section,
    leaf: Leaf | None,
    pose: Pose | None,
    truth: Truth,
    told: tuple[Told, ...],
    settings: Settings,
    theme: Theme,
    *,
    covered: bool,
    pictured: bool = False,
    right: RightSeat | None = None,
) -> Scene:
    """What is seen after a call.

    Parameters
    ----------
    section, leaf, pose
        What lay on the bench at the moment that is looked at.
    truth, told
        What was true, and what each reading truly showed.
    covered
        Whether the truth and the reasons lie over the picture, or it is looked at bare.
    pictured
        Whether the section is drawn over the picture that it was taken from, if there is one.
    right
        A seat of the right handling, to be outlined beside the learner's leaf.
    """
    unit = unit_of(state.coupon, settings)
    overlays = (
        (
            *flaw_overlays(section, unit),
            *truth_overlays(truth, unit),
            *_reason_marks(state, truth, told, unit),
            *(finding_marks(state.coupon) if state.coupon.task == "find the fault" else ()),
        )
        if covered
        else ()
    )
    if right is not None:
        said = f"{right_words(right)}: {shown_words(right.shown, unit)}"
        overlays = (Line(right.outline, "good", said, dashed=True), *overlays)
    return Scene(
        section=section,
        leaf=leaf,
        pose=pose,
        overlays=overlays,
        theme=theme,
        unit=unit,
        eye_limit=state.coupon.eye_limit,
        backing=backing_of(state.coupon.backdrop) if pictured else None,
    )
