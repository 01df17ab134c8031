"""Whatever a file of a sitting holds: it is read, or its faults are said; never anything else."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from typing import Any

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from exercises.file_faults import FileError
from exercises.sitting.plan_file import plan_bytes, read_plan
from exercises.sitting.result_file import read_result, result_bytes
from exercises.strict_json import Json
from tests.exercises.sitting.specimens import chosen, coupon_said, plan, result
from tests.exercises.test_fuzz import ANY_JSON, Place, places

RELAXED = settings(max_examples=250, suppress_health_check=[HealthCheck.too_slow])

PLAN = plan_bytes(plan(parts=(chosen(coupon_said("a"), coupon_said("b", rules="shop")),)))
RESULT = result_bytes(result(of=plan(parts=(chosen(),))))
READERS: dict[str, tuple[Callable[[bytes, str], object], bytes]] = {
    "sitting": (read_plan, PLAN),
    "result": (read_result, RESULT),
}
PLACES = {name: places(json.loads(data)) for name, (_, data) in READERS.items()}


def answer(name: str, data: bytes) -> None:
    """Read it; a refusal says what is wrong, a line a fault, and names the file."""
    reader, _ = READERS[name]
    refusal: FileError | None = None
    try:
        reader(data, "a file")
    except FileError as error:
        refusal = error
    if refusal is not None:
        assert refusal.faults
        for fault in refusal.faults:
            assert fault.file == "a file"
            assert str(fault).isprintable()
            assert fault.text
            assert fault.right


def damaged(name: str, path: Place, value: Json = None, *, drop: bool = False) -> bytes:
    whole = copy.deepcopy(json.loads(READERS[name][1]))
    holder: Any = whole
    for key in path[:-1]:
        holder = holder[key]
    if drop:
        del holder[path[-1]]
    else:
        holder[path[-1]] = value
    return json.dumps(whole).encode("utf-8", "surrogatepass")


names = st.sampled_from(sorted(READERS))


@RELAXED
@given(st.data(), names, ANY_JSON)
def test_any_value_at_any_place_is_taken_or_refused(
    data: st.DataObject, name: str, value: Json
) -> None:
    answer(name, damaged(name, data.draw(st.sampled_from(PLACES[name])), value))


@RELAXED
@given(st.data(), names)
def test_anything_left_out_is_taken_or_refused(data: st.DataObject, name: str) -> None:
    answer(name, damaged(name, data.draw(st.sampled_from(PLACES[name])), drop=True))


@RELAXED
@given(names, st.integers(0, 10**6), st.binary(max_size=3), st.integers(0, 4))
def test_any_bytes_put_in_or_taken_out_are_taken_or_refused(
    name: str, where: int, put: bytes, taken: int
) -> None:
    whole = READERS[name][1]
    at = where % len(whole)
    answer(name, whole[:at] + put + whole[at + taken :])


@RELAXED
@given(names, st.binary(max_size=200))
@example("sitting", b"")
@example("result", b"null")
@example("sitting", b"[" * 100)
@example("result", b'{"format": "toe-and-throat/result", "version": 1, "items": [[]]}')
def test_any_bytes_are_taken_or_refused(name: str, data: bytes) -> None:
    answer(name, data)


def test_every_beginning_of_a_file_is_refused() -> None:
    for name, (_, whole) in READERS.items():
        for length in range(0, len(whole) - 1, 97):
            answer(name, whole[:length])
