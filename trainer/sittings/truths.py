"""What is true of a coupon, told in a line: for the instructor's eyes, never for a learner's.

No widgets here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, TypeVar

from exercises.coupon import DISPOSITIONS, Coupon, Disposition
from exercises.judging import judge, preferred_rack
from exercises.largest_leaf import largest_leaf
from exercises.maker import FACES
from exercises.placement_faults import true_faults
from geometry.measures import FaceShape

__all__ = ["Outline", "Truth", "Truths", "outline_of"]

Key = TypeVar("Key")

_MOST: Final = 4000


@dataclass(frozen=True, slots=True)
class Truth:
    """What is true of a coupon.

    Parameters
    ----------
    face, disposition, in_doubt
        The face's shape, the right call, and whether another one is right as well.
    faults
        What is wrong with the leaf that was placed, where that is asked; empty if nothing is.
    leaf
        The mark of the largest leaf that the weld meets, where that is asked; empty if none.
    """

    face: FaceShape
    disposition: Disposition
    in_doubt: bool
    faults: tuple[str, ...] = ()
    leaf: str = ""


class Truths:
    """Keeps what was found out, since judging a paper anew with each change would be felt.

    May be asked in any thread: what is found twice is the same.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7, 0.9)), Callout(8.0, "leg", "8 mm"))
    >>> Truths().of(coupon)
    Truth(face='convex', disposition='add weld metal', in_doubt=False, faults=(), leaf='')
    """

    def __init__(self) -> None:
        self._kept: dict[int, tuple[Coupon, Truth]] = {}

    def of(self, coupon: Coupon) -> Truth:
        """Return what is true of a coupon."""
        known = self._kept.get(id(coupon))
        # The coupon is kept beside it, so that no other one can have its address meanwhile.
        if known is not None and known[0] is coupon:
            return known[1]
        found = _found(coupon)
        if len(self._kept) >= _MOST:
            self._kept.clear()
        self._kept[id(coupon)] = coupon, found
        return found


def _found(coupon: Coupon) -> Truth:
    right = judge(coupon)
    faults = true_faults(coupon) if coupon.task == "find the fault" else ()
    leaf = largest_leaf(coupon, preferred_rack(coupon)) if coupon.task == "size" else ""
    return Truth(right.face, right.disposition, right.in_doubt, tuple(faults), leaf or "")


@dataclass(frozen=True, slots=True)
class Outline:
    """How many of which answers and faces a paper has.

    Parameters
    ----------
    count
        All its coupons.
    answers, faces, tasks
        How many there are of each that there is any of; of answers only where a weld is judged.
    in_doubt
        How many have more than one right call.
    """

    count: int
    answers: Mapping[Disposition, int]
    faces: Mapping[FaceShape, int]
    tasks: Mapping[str, int]
    in_doubt: int


def outline_of(coupons: Sequence[Coupon], truths: Truths) -> Outline:
    """Return how many of which answers and faces there are.

    Examples
    --------
    >>> from exercises.maker import Recipe, make_tray
    >>> outline_of(make_tray(Recipe(8, seed=7)).coupons, Truths()).answers
    {'accept': 2, 'add weld metal': 2, 'dress back': 2, 'refer': 2}
    """
    found = [(coupon, truths.of(coupon)) for coupon in coupons]
    judged = [truth for coupon, truth in found if coupon.task == "judge"]
    return Outline(
        len(found),
        _counted((truth.disposition for truth in judged), DISPOSITIONS[::-1]),
        _counted((truth.face for _, truth in found), FACES),
        _counted((coupon.task for coupon, _ in found), ()),
        sum(truth.in_doubt for truth in judged),
    )


def _counted(keys: Iterable[Key], order: Sequence[Key]) -> dict[Key, int]:
    counted = Counter(keys)
    listed = [key for key in order if key in counted]
    listed += [key for key in counted if key not in listed]
    return {key: counted[key] for key in listed}
