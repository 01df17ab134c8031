"""Result files, before they are sealed: written whole, read whole or not at all."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import datetime
from typing import Any, Final
from uuid import UUID

from exercises.coupon import Coupon
from exercises.file_faults import FileError, TrayFault
from exercises.handling import HandlingLog
from exercises.rules import RuleSet
from exercises.shape import check_shape, without_private_keys
from exercises.sitting.codes import learner_id
from exercises.sitting.embedded import coupon_document, read_coupon, read_rule_sets
from exercises.sitting.models import BELOW_RESULT, LARGEST, RESULT_FORMAT, ItemModel, ResultModel
from exercises.sitting.result import Interruption, Item, Result
from exercises.strict_json import Json, parse_json, quoted
from exercises.versions import HEAD, RESULT_HEAD, Document, check_version
from geometry.faults import Fault

__all__ = ["ResultError", "read_result", "result_as_dict", "result_bytes"]

_MS: Final = "milliseconds"


class ResultError(FileError):
    """A result that can't be used."""


def result_as_dict(result: Result) -> dict[str, Json]:
    """Return a result as its file states it.

    Raises
    ------
    ValueError
        If a coupon was read out of no tray.
    """
    return {
        "format": RESULT_FORMAT,
        "version": RESULT_HEAD,
        "id": result.id,
        "plan": dict(result.plan),
        "code": result.code,
        "learner": result.learner,
        "station": result.station,
        "started": result.started.isoformat(timespec=_MS),
        "finished": result.finished.isoformat(timespec=_MS),
        "ended": result.ended,
        "tray_version": HEAD,
        "rules": [*result.shop_rules.values()],
        "items": [_item(item) for item in result.items],
        "interruptions": [
            {"at": each.at.isoformat(timespec=_MS), "ms": each.ms, "kind": each.kind}
            for each in result.interruptions
        ],
    }


def result_bytes(result: Result) -> bytes:
    """Return a result as the bytes of its file; raises as `result_as_dict` does."""
    return json.dumps(result_as_dict(result), ensure_ascii=False, allow_nan=False).encode("utf-8")


def _item(item: Item) -> Json:
    return {
        "number": item.number,
        "slot": item.slot,
        "coupon": coupon_document(item.coupon),
        "digest": item.digest,
        "rules": dict(item.rules),
        "attempt": None if item.attempt is None else dict(item.attempt),
        "grade": None if item.grade is None else dict(item.grade),
        "outcome": dict(item.outcome),
        "handling": [list(row) for row in item.handling],
        "zoom": dict(item.zoom),
        "ms": item.ms,
        "visits": item.visits,
        "flagged": item.flagged,
    }


def read_result(data: bytes, name: str = "") -> Result:
    """Return the result that a file's bytes state.

    Parameters
    ----------
    data
        UTF-8 JSON.
    name
        What faults call the file.

    Raises
    ------
    ResultError
        With every fault; nothing is half-loaded.

    Examples
    --------
    >>> try:
    ...     read_result(b'{"format": "toe-and-throat/result", "version": 1}', "a.result")
    ... except ResultError as error:
    ...     print(error.faults[0])
    a.result: /id: "id" is missing; right would be: an object with the key "id"
    """
    reading = _Reading()
    result = reading.read(data)
    if result is None or reading.faults:
        raise ResultError([TrayFault.of(name, fault) for fault in reading.faults])
    return result


class _Reading:
    """One file being read, and the faults found so far."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self.shop: dict[str, RuleSet] = {}

    def read(self, data: bytes) -> Result | None:
        parsed = parse_json(data, LARGEST)
        self.faults += parsed.faults
        if parsed.value is None and parsed.faults:
            return None
        found = check_version(parsed.value, RESULT_FORMAT, RESULT_HEAD)
        if found or not isinstance(parsed.value, dict):
            self.faults = found
            return None
        bare = without_private_keys(parsed.value)
        model, shape = check_shape(ResultModel, bare, below=BELOW_RESULT)
        known = {fault.at for fault in self.faults}
        self.faults += [fault for fault in shape if fault.at not in known]
        if model is None or self.faults:
            return None
        if model.tray_version > HEAD:
            self.faults.append(_newer(model.tray_version))
            return None
        sets, found = read_rule_sets([*model.rules], "/rules")
        self.faults += found
        self.shop = {each.digest: each for each in sets}
        self._head(model)
        documents: dict[str, Json] = {}
        for each, document in zip(sets, model.rules, strict=False):
            documents[each.digest] = document
        return self._result(model, parsed.value, documents)

    def _head(self, model: ResultModel) -> None:
        if not _is_uuid(model.id):
            text, params = f"{quoted(model.id)} is no id", {"value": quoted(model.id)}
            self.faults.append(Fault("/id", "result-id", text, "a UUID", params))
        if model.learner != learner_id(model.code):
            text = f"the learner is not whose code is {quoted(model.code)}"
            right = "the code and the id of one learner"
            params = {"code": quoted(model.code)}
            self.faults.append(Fault("/learner", "result-learner", text, right, params))
        numbers = [item.number for item in model.items]
        if sorted(numbers) != list(range(1, len(numbers) + 1)):
            text, right = "the items' numbers don't run from 1", "each number once"
            self.faults.append(Fault("/items", "result-numbers", text, right))
        if len({item.slot for item in model.items}) < len(model.items):
            text, right = "two items fill one place of the plan", "one item for each"
            self.faults.append(Fault("/items", "result-slots", text, right))

    def _result(
        self, model: ResultModel, source: Document, documents: dict[str, Json]
    ) -> Result | None:
        items = self._items(model, source["items"])
        started = self._time(model.started, "/started")
        finished = self._time(model.finished, "/finished")
        interruptions: list[Interruption] = []
        for index, each in enumerate(model.interruptions):
            at = self._time(each.at, f"/interruptions/{index}/at")
            if at is not None:
                interruptions.append(Interruption(at, each.ms, each.kind))
        if started is None or finished is None or self.faults:
            return None
        plan = source["plan"]
        assert isinstance(plan, dict)
        return Result(
            id=model.id,
            plan=plan,
            code=model.code,
            learner=model.learner,
            station=model.station,
            started=started,
            finished=finished,
            ended=model.ended,
            items=tuple(items),
            interruptions=tuple(interruptions),
            shop_rules=documents,
        )

    def _time(self, stated: str, at: str) -> datetime | None:
        try:
            found = datetime.fromisoformat(stated)
        except ValueError:
            found = None
        if found is not None and found.tzinfo is not None:
            return found
        text, params = f"is {quoted(stated)}", {"value": quoted(stated)}
        right = "a date and time with its zone, as 2026-03-02T09:00:00.000+00:00"
        self.faults.append(Fault(at, "result-time", text, right, params))
        return None

    def _items(self, model: ResultModel, sources: Json) -> list[Item]:
        assert isinstance(sources, list)
        found: list[Item] = []
        for index, (each, source) in enumerate(zip(model.items, sources, strict=True)):
            assert isinstance(source, dict)
            item = self._one(each, source, model.tray_version, f"/items/{index}")
            found += [item] if item else []
        return found

    def _one(self, model: ItemModel, source: Document, version: int, at: str) -> Item | None:
        coupon = self._coupon(model, source, version, at)
        handling: Any = source["handling"]
        try:
            HandlingLog.from_json(handling)
        except ValueError:
            text = "is no record of a leaf's path"
            right = "rows of ms, x, y, angle, turned and event, in order of time"
            self.faults.append(Fault(f"{at}/handling", "result-handling", text, right))
        if model.attempt is None and model.grade is not None:
            text, right = "a grade of nothing that was stated", "the attempt too, or neither"
            self.faults.append(Fault(at, "result-grade", text, right))
        if coupon is None or self.faults:
            return None
        stated: Any = source
        return Item(
            number=model.number,
            slot=model.slot,
            coupon=coupon,
            digest=model.digest,
            rules=stated["rules"],
            attempt=stated["attempt"],
            grade=stated["grade"],
            outcome=stated["outcome"],
            handling=_rows(handling),
            zoom=stated["zoom"],
            ms=model.ms,
            visits=model.visits,
            flagged=model.flagged,
        )

    def _coupon(self, model: ItemModel, source: Document, version: int, at: str) -> Coupon | None:
        """The coupon as it was judged; one whose digest is another's was changed since."""
        rules: dict[str, RuleSet] = {}
        if model.rules.digest is not None:
            found = self.shop.get(model.rules.digest)
            if found is None:
                text = f"the shop's rules {quoted(model.rules.id)} are not in the file"
                params: dict[str, float | str] = {"rules": quoted(model.rules.id)}
                right = "a result with the rules that it was judged by"
                fault = Fault(f"{at}/rules/digest", "result-rules-missing", text, right, params)
                self.faults.append(fault)
                return None
            rules[found.id] = found
        coupon, faults = read_coupon(source["coupon"], version, rules, f"{at}/coupon")
        self.faults += faults
        if coupon is None:
            return None
        named = {each.coupon for each in (model.attempt, model.grade) if each is not None}
        if named - {coupon.id}:
            text, params = "an answer to another coupon", {"coupon": quoted(coupon.id)}
            right = f"one to {quoted(coupon.id)}"
            self.faults.append(Fault(at, "result-stranger", text, right, params))
        if coupon.digest != model.digest:
            text, right = "the coupon is not the one that was judged", "the coupon of that digest"
            self.faults.append(Fault(f"{at}/digest", "result-digest", text, right))
        return coupon


def _newer(version: int) -> Fault:
    text = f"version {version} is newer than this program reads"
    params: dict[str, float | str] = {"head": HEAD, "version": version}
    right = f"{HEAD}, or a newer program"
    return Fault("/tray_version", "newer-version", text, right, params)


def _rows(handling: Sequence[Sequence[Json]]) -> tuple[tuple[Json, ...], ...]:
    return tuple(tuple(row) for row in handling)


def _is_uuid(stated: str) -> bool:
    try:
        return str(UUID(stated)) == stated
    except ValueError:
        return False
