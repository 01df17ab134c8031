"""What came of a sitting: every coupon as it was judged, what was stated, and how the time went."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from datetime import datetime
from typing import Any, Final, get_args

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.grading import grade
from exercises.learner.outcome import Outcome, outcome_of
from exercises.sitting.codes import learner_id
from exercises.sitting.plan import SKILLS, Chosen, Made, PassMarks, Plan
from exercises.sitting.progress import Ended, Interruption, InterruptionKind
from exercises.strict_json import Json

__all__ = ["Ended", "Interruption", "Item", "Result", "item_of", "learner_id", "plan_head"]

ENDINGS: Final[tuple[Ended, ...]] = get_args(Ended)
KINDS: Final[tuple[InterruptionKind, ...]] = get_args(InterruptionKind)

Object = Mapping[str, Json]


@dataclass(frozen=True, slots=True)
class Item:
    """One coupon of a paper, and what was made of it.

    Parameters
    ----------
    number
        Its place in the learner's own order, from 1.
    slot
        Its place in the plan, the same for every learner: see `exercises.sitting.paper.Question`.
    coupon
        As it was judged, without the picture behind it.
    digest, rules
        What names the coupon; id and version of its rule set, and the digest of a shop's file.
    attempt, grade
        What was stated, and what it came to; both None where nothing was stated. A call that was
        left incomplete is kept and has no grade: it counts as unanswered.
    outcome
        What statistics count it as: the fields of `exercises.learner.outcome.Outcome`.
    handling
        ``[ms, x, y, angle, turned, event]`` rows.
    zoom
        Device pixels per mm of the picture, and of the loupe, at the call.
    ms
        Milliseconds that it was before the learner, all visits together.
    visits
        How often it was.
    flagged
        Whether it was still marked for review at the end.
    """

    number: int
    slot: str
    coupon: Coupon
    digest: str
    rules: Object
    attempt: Object | None
    grade: Object | None
    outcome: Object
    handling: Sequence[Sequence[Json]]
    zoom: Object
    ms: int
    visits: int
    flagged: bool = False

    @property
    def answered(self) -> bool:
        """Whether a call was made, with nothing missing."""
        return self.grade is not None

    @property
    def counted(self) -> Outcome:
        """What statistics count it as."""
        stated: Any = self.outcome
        return Outcome(**stated)

    @property
    def hints(self) -> int:
        """How many hints the coupon has."""
        return len(self.coupon.hints)


@dataclass(frozen=True, slots=True)
class Result:
    """One learner's sitting.

    Parameters
    ----------
    id
        A UUID: the same result taken in twice is there once.
    plan
        What `plan_head` says of the plan.
    code, learner
        Whose it is: the pseudonymous code, and `learner_id` of it.
    station
        The machine that it was sat at.
    started, finished
        With their zone, by the wall clock.
    ended
        How: ``finished`` by the learner, or ``time up``.
    items
        Every coupon of the paper, in the learner's order.
    interruptions
        In order.
    shop_rules
        The documents of the shop's own rule sets that coupons were judged by, by their digests.
    """

    id: str
    plan: Object
    code: str
    learner: str
    station: str
    started: datetime
    finished: datetime
    ended: Ended
    items: tuple[Item, ...]
    interruptions: tuple[Interruption, ...] = ()
    shop_rules: Mapping[str, Json] = field(default_factory=dict, compare=False, repr=False)

    @property
    def marks(self) -> PassMarks:
        """What passes, by the plan as it was sat."""
        stated: Any = self.plan
        skills = {name: float(stated["skill_marks"][name]) for name in SKILLS
                  if name in stated["skill_marks"]}  # fmt: skip
        return PassMarks(float(stated["pass_mark"]), skills, bool(stated["critical_fails"]))


def plan_head(plan: Plan, code: str) -> dict[str, Json]:
    """Return what a result says of its plan: no coupons, and nobody else's code.

    Examples
    --------
    >>> from exercises.maker.recipe import Recipe
    >>> from exercises.text import Text
    >>> head = plan_head(Plan("s-1", Text.of("Yard"), (Made(Recipe(8)),), minutes=40.0), "k-07")
    >>> head["title"], head["minutes"], head["parts"]
    ('Yard', 40.0, [{'made': 8}])
    """
    found = plan.entrant(code)
    parts: list[Json] = [
        {"made": part.recipe.count}
        if isinstance(part, Made)
        else {"chosen": len(part.coupons), "title": _text(part)}
        for part in plan.parts
    ]
    return {
        "id": plan.id,
        "title": _json(plan.title.as_document()),
        "parts": parts,
        "shuffled": plan.shuffled,
        "minutes": plan.minutes,
        "extra": found.extra if found else 0.0,
        "pass_mark": plan.pass_mark,
        "skill_marks": {name: plan.skill_marks[name] for name in SKILLS
                        if name in plan.skill_marks},
        "critical_fails": plan.critical_fails,
        "helps": [*sorted(plan.helps)],
        "seed": plan.seed,
    }  # fmt: skip


def item_of(
    number: int,
    slot: str,
    coupon: Coupon,
    attempt: Attempt | None,
    *,
    handling: Sequence[Sequence[Json]] = (),
    zoom: Object | None = None,
    ms: int = 0,
    visits: int = 0,
    flagged: bool = False,
) -> Item:
    """Return an item, graded as the bench grades; an attempt of None is none.

    Examples
    --------
    >>> from exercises.callout import Callout
    >>> from geometry.bead import Bead
    >>> from geometry.joint import Joint
    >>> from geometry.section import Section
    >>> coupon = Coupon("a", Section.of(Joint(), Bead(8.0, 6.7)), Callout(8.0, "leg", "8 mm"))
    >>> item = item_of(1, "1-001", coupon, Attempt("a", disposition="accept"))
    >>> item.grade["critical"], item.outcome["bad"], item_of(1, "1-001", coupon, None).answered
    (True, True, False)
    """
    rules = coupon.rule_set
    named: dict[str, Json] = {"id": rules.id, "version": rules.version}
    if rules.digest:
        named["digest"] = rules.digest
    disposition = attempt.disposition if attempt is not None else None
    return Item(
        number=number,
        slot=slot,
        coupon=_without_picture(coupon),
        digest=coupon.digest,
        rules=named,
        attempt=None if attempt is None else _json(asdict(attempt)),
        grade=None if attempt is None else _json(grade(coupon, attempt).as_dict()),
        outcome=_json(asdict(outcome_of(coupon, disposition))),
        handling=tuple(tuple(row) for row in handling),
        zoom=dict(zoom or {}),
        ms=ms,
        visits=visits,
        flagged=flagged,
    )


def _without_picture(coupon: Coupon) -> Coupon:
    """The coupon for a record: the picture behind it is large, and nothing is judged by it."""
    source = {key: value for key, value in coupon.source.items() if key != "backdrop"}
    return replace(coupon, backdrop=None, source=source)


def _text(part: Chosen) -> Json:
    title: Json = _json(part.title.as_document())
    return title


def _json(value: object) -> Any:  # noqa: ANN401 - plain values have no narrower type
    """The value in lists and objects, as a file gives it back."""
    return json.loads(json.dumps(value, allow_nan=False))
