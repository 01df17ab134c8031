"""One learner's sitting that runs: what is on its paper, how each coupon stands, what time is left.

No Qt here. Everything that is done is on the disk before it counts; see `trainer.sealing`.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Final, Literal, cast
from uuid import uuid4

from exercises.file_faults import FileError
from exercises.sitting.paper import Question, questions_of
from exercises.sitting.plan import Chosen, Plan
from exercises.sitting.plan_file import plan_as_dict, read_plan
from exercises.sitting.progress import Ended, Progress
from exercises.sitting.result import Item, Result, item_of, learner_id, plan_head
from exercises.strict_json import Json
from trainer.bench.state import BenchState, attempt_of
from trainer.sealing.clocks import Clock
from trainer.sealing.key import Key, SealError
from trainer.sealing.timekeeper import Timekeeper
from trainer.sealing.whose import journal_name
from trainer.taking.drafts import Draft, laid_out

__all__ = ["STANDINGS", "Place", "Sitting", "Standing", "counts", "journal_of"]

Standing = Literal["unseen", "seen", "begun", "answered"]
STANDINGS: Final[tuple[Standing, ...]] = ("answered", "begun", "seen", "unseen")


@dataclass(frozen=True, slots=True)
class Place:
    """How one coupon of the paper stands.

    Parameters
    ----------
    number
        Its place, from 1.
    standing
        Not seen yet; seen, and nothing stated; a call that is begun; a call with nothing missing.
    flagged
        Whether it is marked for review.
    here
        Whether it is the one on the bench.
    """

    number: int
    standing: Standing
    flagged: bool = False
    here: bool = False


def journal_of(folder: Path, plan: Plan, code: str) -> Path:
    """Return where the journal of a code in a sitting lies: one, however often it is begun."""
    return folder / journal_name(plan.id, code)


def counts(places: Sequence[Place]) -> dict[str, int]:
    """Return how many coupons there are of each standing, and how many are ``flagged``.

    Examples
    --------
    >>> counts([Place(1, "answered", flagged=True), Place(2, "unseen")])
    {'answered': 1, 'begun': 0, 'seen': 0, 'unseen': 1, 'flagged': 1}
    """
    found: dict[str, int] = {each: sum(p.standing == each for p in places) for each in STANDINGS}
    return {**found, "flagged": sum(place.flagged for place in places)}


class Sitting:
    """A sitting from its beginning, or from where it was left, until it is handed in.

    Parameters
    ----------
    keeper
        Writes it down.
    plan, code
        What is sat, and by whom.
    """

    def __init__(self, keeper: Timekeeper, plan: Plan, code: str) -> None:
        self.keeper, self.plan, self.code = keeper, plan, code
        self.questions: tuple[Question, ...] = questions_of(plan, code)
        self._held: dict[int, Draft] = {}
        self._drafts = {
            item: Draft.of(cast("Mapping[str, Json]", answer))
            for item, answer in keeper.progress.answers.items()
        }

    @classmethod
    def begin(
        cls,
        folder: Path,
        key: Key,
        plan: Plan,
        code: str,
        *,
        station: str = "",
        clock: Clock | None = None,
    ) -> Sitting:
        """Begin a sitting; its journal is made in `folder`.

        Raises
        ------
        JournalError
            If that can't be written.
        """
        questions = questions_of(plan, code)
        head: dict[str, Json] = {
            "plan": cast("Json", plan_as_dict(plan)),
            "code": code,
            "result": str(uuid4()),
            "station": station,
            "paper": [each.coupon.digest for each in questions],
        }
        keeper = Timekeeper.begin(
            journal_of(folder, plan, code),
            key,
            head,
            limit_ms=round(plan.minutes_for(code) * 60_000.0),
            items=len(questions),
            clock=clock,
        )
        return cls(keeper, plan, code)

    @classmethod
    def resume(cls, path: Path, secret: Key | str, clock: Clock | None = None) -> Sitting:
        """Go on with a sitting that was left.

        Raises
        ------
        JournalError, SealError
            As the journal says; `SealError` ``changed`` too if what it holds is no sitting.
        ValueError
            If this version of the program would lay out another paper.
        """
        keeper = Timekeeper.resume(path, secret, clock)
        try:
            return cls._taken_up(keeper, path)
        except BaseException:
            keeper.journal.close()
            raise

    @classmethod
    def _taken_up(cls, keeper: Timekeeper, path: Path) -> Sitting:
        head = keeper.head
        try:
            document = json.dumps(head["plan"]).encode("utf-8")
            plan = read_plan(document, path.name)
            made = cls(keeper, plan, str(head["code"]))
        except (KeyError, ValueError, FileError) as error:
            raise SealError("changed") from error
        if [each.coupon.digest for each in made.questions] != head.get("paper"):
            raise ValueError("another version of the program has laid out another paper")
        return made

    # How it stands

    @property
    def progress(self) -> Progress:
        """How far it is, by what is on the disk."""
        return self.keeper.progress

    @property
    def result_id(self) -> str:
        """The id of what will be handed in; the same from the first to the last."""
        return str(self.keeper.head["result"])

    @property
    def count(self) -> int:
        """How many coupons there are."""
        return len(self.questions)

    @property
    def at(self) -> int:
        """The coupon on the bench, from 0; the first before any is shown."""
        return self.progress.at or 0

    @property
    def left_ms(self) -> int:
        """The time that is left now."""
        return self.keeper.left_ms

    @property
    def places(self) -> tuple[Place, ...]:
        """Every coupon of the paper, in order."""
        return tuple(
            Place(item + 1, self.standing(item), item in self.progress.flagged,
                  item == self.progress.at)
            for item in range(self.count)
        )  # fmt: skip

    def standing(self, item: int) -> Standing:
        """How one coupon stands, from 0."""
        draft = self._drafts.get(item)
        if draft is not None and draft.begun:
            return "answered" if draft.whole else "begun"
        return "seen" if item in self.progress.visits else "unseen"

    def draft(self, item: int) -> Draft | None:
        """What has been done with a coupon, if anything."""
        return self._drafts.get(item)

    def state(self, item: int, now: float) -> BenchState | None:
        """The bench as a coupon was left; None if nothing was done with it.

        Parameters
        ----------
        now
            ms of the clock that handlings go by.
        """
        draft = self._drafts.get(item)
        return None if draft is None else laid_out(self.questions[item].coupon, draft, now)

    # What is done; each raises `JournalError` if it can't be put on the disk

    def keep(self, item: int, draft: Draft) -> None:
        """Keep what has been done with a coupon; on the disk when this returns."""
        if self.is_kept(item, draft):
            return
        before = len(self.progress.given)
        self.keeper.answer(item, draft.as_dict())
        self._drafts[item] = draft
        self._held.pop(item, None)
        if len(self.progress.given) == before:
            # The window stood still until after the end: it goes in with that.
            self._held[item] = draft

    def is_kept(self, item: int, draft: Draft) -> bool:
        """Whether the disk has all of it; a clock that has run on is no change."""
        before = self._drafts.get(item)
        if before is None:
            return not draft.begun and not draft.handling
        return replace(before, spent=None, zoom={}) == replace(draft, spent=None, zoom={})

    def hold(self, item: int, draft: Draft) -> None:
        """Count a draft that the disk would not take: the time is up, and it was stated before.

        It is written down together with the end.
        """
        self._drafts[item] = self._held[item] = draft

    def show(self, item: int) -> None:
        """Note that a coupon is laid out."""
        self.keeper.show(item)

    def flag(self, item: int, *, on: bool) -> None:
        """Mark a coupon for review, or no more."""
        self.keeper.flag(item, on=on)

    def finish(self, ended: Ended) -> None:
        """Note the end."""
        if self.progress.ended is None:
            self.keeper.finish(ended, {item: d.as_dict() for item, d in self._held.items()})

    # What comes of it

    def result(self) -> Result:
        """Return what is handed in: graded as at the bench, by the paper as it was laid out.

        A call that is not complete is kept as it was stated, and has no grade: it counts as
        unanswered.

        Raises
        ------
        ValueError
            If it hasn't ended.
        """
        progress = self.progress
        if progress.ended is None or progress.finished is None:
            raise ValueError("a sitting is handed in once it has ended")
        return Result(
            id=self.result_id,
            plan=plan_head(self.plan, self.code),
            code=self.code,
            learner=learner_id(self.code),
            station=str(self.keeper.head.get("station", "")),
            started=progress.started,
            finished=progress.finished,
            ended=progress.ended,
            items=tuple(self._item(item) for item in range(self.count)),
            interruptions=progress.interruptions,
            shop_rules=_shop_rules(self.plan),
        )

    def _item(self, item: int) -> Item:
        question, draft, progress = self.questions[item], self._drafts.get(item), self.progress
        stated = None
        if draft is not None and draft.begun:
            stated = attempt_of(laid_out(question.coupon, draft, 0.0))
        made = item_of(
            item + 1,
            question.slot,
            question.coupon,
            stated if draft is not None and draft.whole else None,
            handling=() if draft is None else draft.handling,
            zoom={} if draft is None else draft.zoom,
            ms=progress.spent_ms.get(item, 0),
            visits=progress.visits.get(item, 0),
            flagged=item in progress.flagged,
        )
        if stated is None or made.attempt is not None:
            return made
        return replace(made, attempt=json.loads(json.dumps(asdict(stated))))


def _shop_rules(plan: Plan) -> dict[str, Json]:
    """The documents of the shop's own rule sets that coupons are judged by, by their digests."""
    return {
        coupon.shop_rules.digest: part.rules[coupon.rules]
        for part in plan.parts
        if isinstance(part, Chosen)
        for coupon in part.coupons
        if coupon.shop_rules is not None
    }
