"""Whatever a file holds, the loader answers with a tray or with faults: never with a traceback."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from exercises.attempt import AttemptsError, load_attempts
from exercises.file_faults import TrayFault
from exercises.strict_json import Json
from exercises.tray import Tray, TrayError, check_tray, load_tray, read_tray, save_tray
from tests.exercises.trays import GOLDEN

RELAXED = settings(
    max_examples=300,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)

ANY_JSON: st.SearchStrategy[Any] = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**6), 10**6)
    | st.sampled_from([10**400, -1, 0, 1, 8, 90, 1e-300, 1e300, -0.0])
    | st.floats()
    | st.text(max_size=8)
    | st.sampled_from(["8 mm", "5/16 in", "base", "leg", "judge", "a 5 mm"]),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=6), inner),
    max_leaves=8,
)


Place = tuple[str | int, ...]


def places(value: Json, path: Place = ()) -> list[Place]:
    """Every place in a document, by the keys that lead there."""
    found = [path] if path else []
    if isinstance(value, dict):
        for key, below in value.items():
            found += places(below, (*path, key))
    elif isinstance(value, list):
        for index, below in enumerate(value):
            found += places(below, (*path, index))
    return found


DOCUMENT = json.loads(GOLDEN.read_text(encoding="utf-8"))
PLACES = places(DOCUMENT)


def changed(path: Place, value: Json = None, *, drop: bool = False) -> Json:
    """The golden document with another value at a place, or without it."""
    document: Json = copy.deepcopy(DOCUMENT)
    holder: Any = document
    for key in path[:-1]:
        holder = holder[key]
    if drop:
        del holder[path[-1]]
    else:
        holder[path[-1]] = value
    return document


def answer(document: Json) -> Tray | tuple[TrayFault, ...]:
    """What the loader says of a document."""
    try:
        return read_tray(document)
    except TrayError as error:
        return error.faults


def is_said(faults: tuple[TrayFault, ...]) -> bool:
    return bool(faults) and all(str(fault).isprintable() for fault in faults)


@RELAXED
@given(data=st.binary(max_size=400))
def test_any_bytes(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "a.tray.json"
    path.write_bytes(data)
    faults = check_tray(path)
    assert faults
    assert all(str(fault).isprintable() for fault in faults)


@RELAXED
@given(st.sampled_from(PLACES), ANY_JSON)
def test_any_value_at_any_place(place: Place, value: Json) -> None:
    said = answer(changed(place, value))
    assert isinstance(said, Tray) or is_said(said)


@RELAXED
@given(st.sampled_from([place for place in PLACES if isinstance(place[-1], str)]))
def test_any_key_may_be_missing(place: Place) -> None:
    said = answer(changed(place, drop=True))
    assert isinstance(said, Tray) or is_said(said)


@RELAXED
@given(st.data())
def test_a_file_cut_or_scrambled_anywhere(tmp_path: Path, data: st.DataObject) -> None:
    text = bytearray(GOLDEN.read_bytes())
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(text) - 1))
        text[at] = data.draw(st.integers(0, 255))
    path = tmp_path / "a.tray.json"
    path.write_bytes(bytes(text[: data.draw(st.integers(0, len(text)))]))
    faults = check_tray(path)
    if faults:
        assert is_said(tuple(faults))
    else:
        tray = load_tray(path)
        save_tray(path, tray)
        assert load_tray(path) == tray


NUMBERS = st.floats(-1500.0, 1500.0) | st.floats(0.0, 20.0) | st.sampled_from([0.0, 8.0, 1e-12])


@RELAXED
@given(
    st.fixed_dictionaries({}, optional={"angle": st.floats(50, 140), "root_opening": NUMBERS,
                                        "upright_thickness": NUMBERS, "base_length": NUMBERS}),
    st.fixed_dictionaries(
        {"leg_base": NUMBERS, "leg_upright": NUMBERS},
        optional={"crown": NUMBERS, "overlap_base": NUMBERS,
                  "undercut_upright": st.fixed_dictionaries({"depth": NUMBERS, "width": NUMBERS})},
    )
    | st.fixed_dictionaries({"trace": st.lists(st.tuples(NUMBERS, NUMBERS).map(list), max_size=9)}),
    st.lists(st.fixed_dictionaries({"on": st.sampled_from(["base", "upright"]), "at": NUMBERS,
                                    "height": NUMBERS}), max_size=3),
)  # fmt: skip
def test_any_shape_is_a_section_or_a_fault(joint: Json, bead: Json, spatter: Json) -> None:
    stated: Json = {
        "id": "a", "joint": joint, "bead": bead, "spatter": spatter, "callout": {"size": 8},
    }  # fmt: skip
    said = answer({"format": "toe-and-throat/tray", "version": 3, "coupons": [stated]})
    if isinstance(said, Tray):
        assert said.coupons[0].section.outline.polygon.is_valid
    else:
        assert is_said(said)
        assert all(fault.pointer.startswith("/coupons/0/") for fault in said)


@RELAXED
@given(st.lists(ANY_JSON | st.fixed_dictionaries({"coupon": ANY_JSON}, optional={
    "readings": ANY_JSON, "face": ANY_JSON, "sure": ANY_JSON}), max_size=4))  # fmt: skip
def test_any_lines_of_attempts(tmp_path: Path, lines: list[Json]) -> None:
    path = tmp_path / "a.jsonl"
    header = {"format": "toe-and-throat/attempts", "version": 1}
    path.write_text("\n".join(json.dumps(line) for line in [header, *lines]), encoding="utf-8")
    faults: tuple[TrayFault, ...] = ()
    try:
        assert len(load_attempts(path)) == len(lines)
    except AttemptsError as error:
        faults = error.faults
    assert all(str(fault).isprintable() and fault.line for fault in faults)


@pytest.mark.parametrize("fault", ["NaN", "1e999", '"\\ud800"', "[[[[", "{}}"])
def test_no_coupon_of_a_broken_file_gets_through(tmp_path: Path, fault: str) -> None:
    path = tmp_path / "a.tray.json"
    path.write_text(
        GOLDEN.read_text(encoding="utf-8").replace("0.9}", f"{fault}}}"), encoding="utf-8"
    )
    with pytest.raises(TrayError):
        load_tray(path)
