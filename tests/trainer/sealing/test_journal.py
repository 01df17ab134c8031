"""The journal of a sitting: what was acknowledged is there, and nobody has changed it."""

from __future__ import annotations

import base64
import hashlib
import json
import os
import random
import zlib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.strict_json import Json
from trainer.sealing.journal import SUFFIX, Journal, left
from trainer.sealing.key import Cost, Key, SealError
from trainer.sealing.seal import Opener

ROOT = Path(__file__).resolve().parents[3]
KEY = Key.made("three weathered herons", Cost(log_n=4))
HEAD: dict[str, Json] = {"title": "Friday", "code": "k-07"}


def event(number: int, size: int = 10) -> dict[str, Json]:
    return {"kind": "answered", "item": number, "answer": "x" * size}


def noise(size: int) -> dict[str, Json]:
    """An event that no packing makes shorter."""
    return {"kind": "answered", "item": 0, "answer": random.Random(size).randbytes(size).hex()}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sittings" / f"a{SUFFIX}"


def written(path: Path, count: int) -> list[bytes]:
    """A journal of so many events, closed; its lines."""
    journal = Journal.create(path, KEY, HEAD)
    for number in range(count):
        journal.append(event(number))
    journal.close()
    return path.read_bytes().splitlines(keepends=True)


def events_in(path: Path) -> tuple[list[dict[str, Json]], bool]:
    resumed = Journal.resume(path, KEY)
    resumed.journal.close()
    assert resumed.head == HEAD
    return list(resumed.events), resumed.torn


def trouble(path: Path, secret: Key | str = KEY) -> str:
    before = path.read_bytes()
    with pytest.raises(SealError) as caught:
        Journal.resume(path, secret)
    assert path.read_bytes() == before, "what is refused is left as it is"
    return caught.value.trouble


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"]), max_size=20),
    lambda inner: st.lists(inner, max_size=3)
    | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@given(
    st.lists(st.lists(st.dictionaries(st.text(max_size=8), json_values, max_size=3), max_size=4))
)
def test_what_was_appended_is_read_back_over_any_number_of_starts(
    tmp_path_factory: pytest.TempPathFactory, starts: list[list[dict[str, Json]]]
) -> None:
    path = tmp_path_factory.mktemp("journal") / f"a{SUFFIX}"
    Journal.create(path, KEY, HEAD).close()
    for number, events in enumerate(starts):
        secret = KEY if number % 2 else "three weathered herons"
        resumed = Journal.resume(path, secret)
        assert not resumed.torn
        for each in events:
            resumed.journal.append(each)
        resumed.journal.close()
    assert events_in(path) == ([each for events in starts for each in events], False)


def test_an_event_is_on_the_disk_when_append_returns(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    synced: list[int] = []
    true = os.fsync

    def fsync(descriptor: int) -> None:
        true(descriptor)
        synced.append(os.fstat(descriptor).st_size)

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(os, "fsync", fsync)
        for number in range(3):
            journal.append(event(number))
            assert synced[-1] == path.stat().st_size
    assert len(synced) == 3
    journal.close()


def test_nothing_of_it_can_be_read_without_the_passphrase(path: Path) -> None:
    lines = written(path, 3)
    raw = b"".join(base64.b64decode(line) for line in lines[1:])
    for each in (b"Friday", b"k-07", b"answered", b"item"):
        assert each not in b"".join(lines)
        assert each not in raw
    assert trouble(path, "three weathered heroes") == "passphrase"
    assert trouble(path, Key.made("three weathered herons", Cost(log_n=4))) == "passphrase"
    Journal.resume(path, Opener("three weathered herons")).journal.close()


def test_a_handling_takes_little_room(path: Path) -> None:
    """Calls are kept again and again, each with all of its handling so far."""
    rows: list[Json] = [[16 * n, 40.0 - n / 100, 8.25, 90.0, False, "drag"] for n in range(3000)]
    journal = Journal.create(path, KEY, HEAD)
    journal.append({"kind": "answered", "answer": rows})
    journal.close()
    assert path.stat().st_size < len(json.dumps(rows)) / 4
    assert events_in(path)[0][0]["answer"] == rows


def test_what_the_key_s_owner_seals_is_looked_at_too(path: Path) -> None:
    """Packed to almost nothing, or no event at all: said, and no memory filled."""
    journal = Journal.create(path, KEY, HEAD)
    chain = journal._chain
    journal.close()
    data = path.read_bytes()
    for packed, expected in (
        (zlib.compress(b" " * (65 * 1024 * 1024)), "too large"),
        (zlib.compress(b"[1]"), "changed"),
        (zlib.compress(b"{"), "changed"),
        (zlib.compress(b"[" * 100_000), "changed"),
        (zlib.compress(b"\xff"), "changed"),
        (b"no packing", "changed"),
    ):
        path.write_bytes(data + chain.closed(packed)[0])
        assert trouble(path) == expected


def test_a_journal_of_the_first_version_is_resumed_for_ever(path: Path) -> None:
    path.parent.mkdir()
    path.write_bytes((Path(__file__).parent / "golden" / f"herons{SUFFIX}").read_bytes())
    resumed = Journal.resume(path, "three weathered herons")
    resumed.journal.close()
    assert (resumed.head, resumed.torn) == (HEAD, False)
    assert list(resumed.events) == [event(0), event(1)]


# --- changed --------------------------------------------------------------------------------------


def test_every_changed_byte_is_refused_or_said(path: Path) -> None:
    """Within the last line a byte may look torn; then it is as if the file had been cut there.

    That is said; and whoever can change it could as well have cut it.
    """
    lines = written(path, 3)
    data = b"".join(lines)
    last = len(data) - len(lines[-1])
    for at in range(len(data)):
        for other in (data[at] ^ 1, 0, 0x0A):
            if other == data[at]:
                continue
            path.write_bytes(data[:at] + bytes([other]) + data[at + 1 :])
            try:
                events, torn = events_in(path)
            except SealError:
                continue
            assert at >= last - 1, at
            whole = [event(0), event(1)] if at >= last else [event(0)]
            assert (events, torn) == (whole, True), at


def test_a_byte_changed_into_another_of_the_alphabet_is_never_taken_for_torn(path: Path) -> None:
    lines = written(path, 2)
    for number, line in enumerate(lines[1:], start=1):
        for at in range(len(line) - 1):
            changed = bytearray(line)
            changed[at] = ord("B") if line[at] == ord("A") else ord("A")
            if line[at] == ord("="):
                continue
            path.write_bytes(b"".join([*lines[:number], bytes(changed), *lines[number + 1 :]]))
            if base64.b64encode(base64.b64decode(changed)) == changed.rstrip():
                assert trouble(path) == "changed"
            else:
                # Some bits of a line's last letter must be nought, and no line of ours has others.
                assert at == len(line.rstrip(b"=\n")) - 1
                assert number == len(lines) - 1 or trouble(path) == "changed"


@pytest.mark.parametrize("line", [1, 2, 3, 4])
def test_a_line_taken_out_is_refused(path: Path, line: int) -> None:
    lines = written(path, 4)
    path.write_bytes(b"".join(lines[:line] + lines[line + 1 :]))
    assert trouble(path) == "changed"


@pytest.mark.parametrize(("one", "other"), [(1, 2), (2, 3), (2, 5), (4, 5)])
def test_lines_that_changed_places_are_refused(path: Path, one: int, other: int) -> None:
    lines = written(path, 4)
    lines[one], lines[other] = lines[other], lines[one]
    path.write_bytes(b"".join(lines))
    assert trouble(path) == "changed"


@pytest.mark.parametrize("line", [1, 2, 5])
def test_a_line_that_is_there_twice_is_refused(path: Path, line: int) -> None:
    lines = written(path, 4)
    path.write_bytes(b"".join([*lines[: line + 1], lines[line], *lines[line + 1 :]]))
    assert trouble(path) == "changed"


def test_lines_of_another_journal_of_the_same_sitting_are_refused(path: Path) -> None:
    mine, other = written(path, 3), written(path.with_name(f"b{SUFFIX}"), 3)
    for number in range(1, 5):
        path.write_bytes(b"".join([*mine[:number], other[number], *mine[number + 1 :]]))
        assert trouble(path) == "changed"
    path.write_bytes(b"".join([mine[0], *other[1:]]))
    assert trouble(path) == "changed"


def test_the_first_line_can_t_be_changed_even_with_its_sum(path: Path) -> None:
    lines = written(path, 2)
    head = lines[0].rpartition(b" ")[0]
    changed = head[:-1] + (b"0" if head[-1:] != b"0" else b"1")
    forged = b"%s %s\n" % (changed, hashlib.sha256(changed).hexdigest().encode())
    path.write_bytes(forged + b"".join(lines[1:]))
    assert trouble(path) == "changed"


def test_a_bomb_in_the_first_line_is_refused(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lines = written(path, 1)
    head = lines[0].rpartition(b" ")[0].replace(b" 4 8 1 ", b" 40 8 1 ", 1)
    forged = b"%s %s\n" % (head, hashlib.sha256(head).hexdigest().encode())
    path.write_bytes(forged + b"".join(lines[1:]))
    monkeypatch.setattr("trainer.sealing.key.Scrypt", None)
    assert trouble(path, "three weathered herons") == "cost"


@pytest.mark.parametrize("version", [2, 999_999])
def test_a_journal_of_a_newer_version_is_refused_as_newer(path: Path, version: int) -> None:
    lines = written(path, 1)
    path.write_bytes(b"".join(lines).replace(b"journal 1 ", b"journal %d " % version, 1))
    assert trouble(path) == "newer"


@pytest.mark.parametrize("data", [b"{}\n", b"\0" * 900, b"SQLite format 3\0"])
def test_what_is_no_journal_is_said_to_be_none(path: Path, data: bytes) -> None:
    path.parent.mkdir()
    path.write_bytes(data)
    assert trouble(path) == "not sealed"


# --- torn -----------------------------------------------------------------------------------------


def test_a_journal_cut_anywhere_gives_what_was_whole_and_goes_on(path: Path) -> None:
    """At every length: a crash can stop it at any byte."""
    lines = written(path, 3)
    data, begun = b"".join(lines), len(lines[0]) + len(lines[1])
    for length in range(len(data) + 1):
        path.write_bytes(data[:length])
        if length < begun:
            assert trouble(path) == "truncated"
            continue
        resumed = Journal.resume(path, KEY)
        whole = data[:length].count(b"\n") - 2
        assert list(resumed.events) == [event(number) for number in range(whole)]
        assert resumed.torn is not data[:length].endswith(b"\n")
        resumed.journal.append(event(9))
        resumed.journal.close()
        assert events_in(path) == ([event(number) for number in range(whole)] + [event(9)], False)


@pytest.mark.parametrize(
    "tail", [b"\0" * 4096, b"AAAA", b"\0\0\0\n", b"garbage\n", b"\n", b"QUJD\n"]
)
def test_what_a_power_cut_may_leave_behind_is_dropped_and_said(path: Path, tail: bytes) -> None:
    data = b"".join(written(path, 2))
    path.write_bytes(data + tail)
    assert events_in(path) == ([event(0), event(1)], True)
    assert path.read_bytes() == data


def test_a_hole_in_the_last_line_is_dropped_and_said(path: Path) -> None:
    """A long line's sectors reach a disk in any order: its end is there, its middle is not."""
    journal = Journal.create(path, KEY, HEAD)
    journal.append(event(0))
    journal.append(noise(9000))
    journal.close()
    data = path.read_bytes()
    hole = len(data) - 6000
    path.write_bytes(data[:hole] + b"\0" * 512 + data[hole + 512 :])
    assert events_in(path) == ([event(0)], True)


# --- the sound part of a damaged one --------------------------------------------------------------


def damaged(path: Path, count: int, line: int) -> list[bytes]:
    """A journal of so many events, a byte of one line changed; its lines before that."""
    lines = written(path, count)
    changed = bytearray(lines[line])
    changed[20] ^= 1
    path.write_bytes(b"".join([*lines[:line], bytes(changed), *lines[line + 1 :]]))
    return lines


@pytest.mark.parametrize("line", [2, 3, 6])
def test_what_stands_before_the_damage_can_be_gone_on_with(path: Path, line: int) -> None:
    lines = damaged(path, 6, line)
    before = path.read_bytes()
    part = Journal.sound_part(path, KEY)
    assert path.read_bytes() == before, "looking changes nothing"
    assert part.head == HEAD
    assert list(part.events) == [event(number) for number in range(line - 2)]
    assert part.lost == sum(map(len, lines[line:]))
    kept = Journal.cut_to_sound_part(path, part.key)
    assert kept.read_bytes() == before, "the damaged one is kept as it was"
    assert kept.parent == path.parent
    assert left(path.parent) == (path,), "and isn't taken for a sitting that waits"
    resumed = Journal.resume(path, KEY)
    resumed.journal.append(event(99))
    resumed.journal.close()
    assert events_in(path) == ([*(event(number) for number in range(line - 2)), event(99)], False)


def test_each_damaged_one_is_kept(path: Path) -> None:
    damaged(path, 6, 5)
    first = Journal.cut_to_sound_part(path, KEY)
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join([*lines[:3], b"AAAA\n", *lines[4:]]))
    second = Journal.cut_to_sound_part(path, KEY)
    assert first != second
    assert first.exists()
    assert second.exists()


def test_a_whole_one_has_lost_nothing(path: Path) -> None:
    written(path, 3)
    assert Journal.sound_part(path, KEY).lost == 0


def test_without_a_sound_beginning_or_the_passphrase_nothing_is_cut(path: Path) -> None:
    damaged(path, 3, 1)
    before = path.read_bytes()
    for secret, trouble_of in ((KEY, "changed"), (Key.made("another", KEY.cost), "passphrase")):
        for act in (Journal.sound_part, Journal.cut_to_sound_part):
            with pytest.raises(SealError) as caught:
                act(path, secret)
            assert caught.value.trouble == trouble_of
    assert path.read_bytes() == before
    assert [each.name for each in path.parent.iterdir()] == [path.name]
