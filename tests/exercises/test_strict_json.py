"""The strict reader: what a lenient one lets pass is a fault here, with its place."""

from __future__ import annotations

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.strict_json import LARGEST_FILE, extend_pointer, parse_json, quoted


def faults(data: bytes) -> list[tuple[str, str]]:
    return [(fault.at, fault.code) for fault in parse_json(data).faults]


def test_plain_values_come_back_as_they_are() -> None:
    value = {"a": [1, 2.5, -0.0, True, None], "b": {"c": "ü \u2028 \U0001f600"}, "": []}
    parsed = parse_json(json.dumps(value).encode())
    assert parsed.faults == []
    assert parsed.value == value
    assert type(parsed.value) is dict


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        (b"", [("", "not-json")]),
        (b"{", [("", "not-json")]),
        (b'{"a": 1,}', [("", "not-json")]),
        (b"{} {}", [("", "not-json")]),
        (b"{'a': 1}", [("", "not-json")]),
        (b'{"a": 01}', [("", "not-json")]),
        (b'"\x01"', [("", "not-json")]),
        (b"\xff{}", [("", "not-utf-8")]),
        (b'"\xc0\xaf"', [("", "not-utf-8")]),
        (b'"\xed\xa0\x80"', [("", "not-utf-8")]),
        (b"\xef\xbb\xbf{}", [("", "byte-order-mark")]),
        ("{}".encode("utf-16"), [("", "not-utf-8")]),
        (b'{"a": 1, "a": 2}', [("/a", "repeated-key")]),
        (b'{"a": {"b/c": 1, "b/c": 2}}', [("/a/b~1c", "repeated-key")]),
        (b"[NaN, Infinity, -Infinity]", [(f"/{i}", "not-finite") for i in range(3)]),
        (b"[1e999, -1e999]", [("/0", "not-finite"), ("/1", "not-finite")]),
        (b"[" + b"9" * 5000 + b"]", [("/0", "not-finite")]),
        (b'["\\ud800"]', [("/0", "lone-surrogate")]),
        (b'{"\\udfff": 1}', [("/\udfff", "lone-surrogate")]),
    ],
)
def test_each_fault_has_its_place(data: bytes, expected: list[tuple[str, str]]) -> None:
    assert faults(data) == expected


def test_all_faults_of_a_text_are_said_at_once() -> None:
    data = b'{"a": NaN, "b": {"c": 1, "c": 1e999}, "a": "\\udc00"}'
    assert faults(data) == [
        ("/a", "repeated-key"),
        ("/a", "lone-surrogate"),
        ("/b/c", "repeated-key"),
        ("/b/c", "not-finite"),
    ]


@pytest.mark.parametrize("opening", [b"[", b'{"a":', b'[{"a":'])
def test_depth_is_refused_before_it_can_hurt(opening: bytes) -> None:
    assert faults(opening * 100_000) == [("", "too-deep")]


def test_brackets_in_text_are_no_depth() -> None:
    assert faults(json.dumps(["[" * 500, '\\"' + "{" * 500]).encode()) == []


def test_depth_up_to_the_cap_is_read() -> None:
    assert faults(b"[" * 40 + b"]" * 40) == []
    assert faults(b"[" * 41 + b"]" * 41) == [("", "too-deep")]


def test_size_is_capped() -> None:
    assert faults(b" " * LARGEST_FILE + b"1") == [("", "too-large")]
    assert faults(b" " * (LARGEST_FILE - 1) + b"1") == []


def test_a_fault_says_where_in_the_text_the_json_ends() -> None:
    fault = parse_json(b'{"a": 1,\n "b" 2}').faults[0]
    assert (fault.params["line"], fault.params["column"]) == (2.0, 6.0)


def test_pointers_are_escaped_as_rfc_6901_says() -> None:
    # RFC 6901, section 5: the pointers to "a/b" and "m~n".
    assert extend_pointer("", "a/b") == "/a~1b"
    assert extend_pointer("", "m~n") == "/m~0n"


def test_quoting_keeps_a_line_short_and_plain() -> None:
    assert quoted("\x1b[31m\n") == '"\\u001b[31m\\n"'
    assert len(quoted("x" * 10_000)) == 48
    assert quoted(math.nan) == "no finite number"
    assert (quoted(None), quoted(1.5), quoted([])) == ("null", "1.5", "a list")


JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    max_leaves=30,
)


@given(JSON)
def test_it_reads_what_the_lenient_reader_reads(value: object) -> None:
    parsed = parse_json(json.dumps(value).encode())
    assert parsed.value == value
    assert parsed.faults == []


@given(st.binary(max_size=200))
def test_no_bytes_make_it_fall_over(data: bytes) -> None:
    parsed = parse_json(data)
    assert parsed.faults or parsed.value == json.loads(data)
