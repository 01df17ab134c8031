"""The journal of a sitting on disks that are full, taken away or failing, and between programs."""

from __future__ import annotations

import errno
import json
import os
import random
import subprocess
import sys
import textwrap
from pathlib import Path
from typing import BinaryIO

import pytest

from exercises.strict_json import Json
from trainer.sealing import held_files
from trainer.sealing import journal_lines as module
from trainer.sealing.journal import SUFFIX, Journal, JournalError, left
from trainer.sealing.key import Cost, Key, SealError
from trainer.shop.locking import hold

ROOT = Path(__file__).resolve().parents[3]
KEY = Key.made("three weathered herons", Cost(log_n=4))
HEAD: dict[str, Json] = {"title": "Friday", "code": "k-07"}


def event(number: int, size: int = 10) -> dict[str, Json]:
    return {"kind": "answered", "item": number, "answer": "x" * size}


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


# --- disks that are full, files that are taken ----------------------------------------------------

FULL = """
    import json, random, resource, signal, sys
    from pathlib import Path
    from trainer.sealing.journal import Journal, JournalError
    from trainer.sealing.key import Cost, Key
    path, limit = Path(sys.argv[1]), int(sys.argv[2])
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    journal = Journal.create(path, Key.made("herons", Cost(log_n=4)), {})
    kept, refused = [], 0
    _, most = resource.getrlimit(resource.RLIMIT_FSIZE)
    rng = random.Random(limit)
    for number in range(60):
        # Full for a while, then somebody makes room, then it is full again.
        room = most if number % 20 == 19 else limit + 1500 * (number // 20)
        resource.setrlimit(resource.RLIMIT_FSIZE, (room, most))
        try:
            journal.append({"item": number, "answer": rng.randbytes(number % 7 * 20).hex()})
        except JournalError as error:
            assert error.hindrance == "unwritable" and error.reason, error
            refused += 1
        else:
            kept.append(number)
    print(json.dumps([kept, refused]))
"""


@pytest.mark.parametrize("limit", [900, 1111, 1500, 2048])
def test_a_full_disk_loses_nothing_that_was_acknowledged(path: Path, limit: int) -> None:
    """The kernel itself refuses to let the file grow (RLIMIT_FSIZE), in the midst of a line."""
    script = textwrap.dedent(FULL)
    done = subprocess.run(
        [sys.executable, "-c", script, str(path), str(limit)],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    kept, refused = json.loads(done.stdout)
    resumed = Journal.resume(path, "herons")
    resumed.journal.close()
    assert [each["item"] for each in resumed.events] == kept
    assert refused > 10
    assert len(kept) > 3
    assert not resumed.torn


def failing(monkeypatch: pytest.MonkeyPatch, name: str, errors: list[int | None]) -> None:
    """Let calls of `os` fail one after the other, as a disk does that comes and goes."""
    true = getattr(os, name)

    def call(*arguments: object) -> object:
        number = errors.pop(0) if errors else None
        if number is not None:
            raise OSError(number, os.strerror(number))
        return true(*arguments)

    monkeypatch.setattr(os, name, call)


def test_an_event_whose_sync_failed_is_written_anew(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """After a failed fsync the system may have thrown the pages away: nothing of it is trusted."""
    journal = Journal.create(path, KEY, HEAD)
    journal.append(event(0))
    failing(monkeypatch, "fsync", [errno.EIO, errno.ENOSPC])
    for _ in range(2):
        with pytest.raises(JournalError, match=r"Input/output|No space"):
            journal.append(event(1, size=500))
    journal.append(event(2))
    journal.close()
    assert events_in(path) == ([event(0), event(2)], False)


def test_what_could_not_be_cut_off_is_overwritten(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    journal = Journal.create(path, KEY, HEAD)
    failing(monkeypatch, "fsync", [errno.EIO])
    with monkeypatch.context() as patched:
        patched.setattr(Journal, "_cut", lambda _: None)
        with pytest.raises(JournalError):
            journal.append(event(0, size=500))
    journal.append(event(1))
    journal.close()
    assert events_in(path) == ([event(1)], False)


def test_a_journal_that_was_removed_is_made_anew_whole(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    journal.append(event(0))
    path.unlink()
    path.parent.rmdir()
    journal.append(event(1))
    with pytest.raises(JournalError) as caught:
        Journal.resume(path, KEY)
    assert caught.value.hindrance == "held", "made anew, it is held again"
    journal.close()
    assert events_in(path) == ([event(0), event(1)], False)


def test_a_journal_that_was_cut_short_is_written_anew(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    journal.append(event(0))
    os.truncate(path, 100)
    journal.append(event(1))
    journal.close()
    assert events_in(path) == ([event(0), event(1)], False)


def test_another_file_in_its_place_is_not_overwritten(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    path.rename(path.with_name("moved"))
    path.write_bytes(b"a letter")
    with pytest.raises(JournalError) as caught:
        journal.append(event(0))
    assert caught.value.hindrance == "gone"
    assert path.read_bytes() == b"a letter"
    path.unlink()
    journal.append(event(0))
    journal.close()
    assert events_in(path) == ([event(0)], False)


def test_a_journal_that_can_t_be_begun_leaves_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tries: list[list[int | None]] = [[errno.ENOSPC], [None, errno.EIO]]
    for errors in tries:
        failing(monkeypatch, "fsync", errors)
        with pytest.raises(JournalError) as caught:
            Journal.create(path, KEY, HEAD)
        assert caught.value.hindrance == "unwritable"
        assert list(path.parent.iterdir()) == []
    Journal.create(path, KEY, HEAD).close()
    with pytest.raises(JournalError):
        Journal.create(path, KEY, HEAD)
    assert events_in(path) == ([], False)


def test_a_journal_that_isn_t_there_is_said_to_be_gone(path: Path) -> None:
    with pytest.raises(JournalError) as caught:
        Journal.resume(path, KEY)
    assert caught.value.hindrance == "gone"
    path.mkdir(parents=True)
    with pytest.raises(JournalError) as caught:
        Journal.resume(path, KEY)
    assert caught.value.hindrance == "unwritable"


def test_a_disk_that_shows_itself_full_at_resuming_loses_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = b"".join(written(path, 2)) + b"torn"
    path.write_bytes(data)
    with monkeypatch.context() as patched:
        failing(patched, "fsync", [errno.EIO])
        with pytest.raises(JournalError):
            Journal.resume(path, KEY)
    assert events_in(path)[0] == [event(0), event(1)]


def test_a_mistaken_file_doesn_t_fill_the_memory(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written(path, 20)
    monkeypatch.setattr(module, "_LARGEST", 2000)
    assert trouble(path) == "too large"


# --- two programs ---------------------------------------------------------------------------------

HOLDER = """
    import sys
    from pathlib import Path
    from trainer.sealing.journal import Journal
    journal = Journal.resume(Path(sys.argv[1]), "three weathered herons").journal
    print("held", flush=True)
    sys.stdin.readline()
    journal.append({"kind": "beat"})
    print("done", flush=True)
    sys.stdin.readline()
"""


def test_two_programs_never_write_to_one_journal(path: Path) -> None:
    written(path, 1)
    command = [sys.executable, "-c", textwrap.dedent(HOLDER), str(path)]
    with subprocess.Popen(
        command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdin is not None
        assert other.stdout is not None
        assert other.stdout.readline() == "held\n"
        assert left(path.parent) == ()
        with pytest.raises(JournalError) as caught:
            Journal.resume(path, KEY)
        assert caught.value.hindrance == "held"
        other.stdin.write("\n")
        other.stdin.flush()
        assert other.stdout.readline() == "done\n"
        # However it ends, it lets go.
        other.kill()
    assert left(path.parent) == (path,)
    assert events_in(path) == ([event(0), {"kind": "beat"}], False)


def test_one_program_holds_its_own_journal_against_itself(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    assert left(path.parent) == ()
    with pytest.raises(JournalError):
        Journal.resume(path, KEY)
    journal.close()
    assert left(path.parent) == (path,)


def test_a_journal_that_another_program_is_making_is_left_alone(path: Path) -> None:
    """Both would write the same file before it takes its name."""
    path.parent.mkdir()
    part = path.with_name(f"{path.name}.part")
    with part.open("w+b") as other:
        other.write(b"half")
        other.flush()
        assert hold(other)
        with pytest.raises(JournalError, match="another program"):
            Journal.create(path, KEY, HEAD)
        assert part.read_bytes() == b"half"
    Journal.create(path, KEY, HEAD).close()
    assert not part.exists()


def test_a_journal_in_the_making_that_became_one_is_not_emptied(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Between opening and holding the other program gave its file the name, and let go of it."""
    true = held_files.hold_soon

    def late(file: BinaryIO) -> bool:
        path.with_name(f"{path.name}.part").rename(path)
        path.write_bytes(b"a journal of the other program")
        return true(file)

    monkeypatch.setattr(held_files, "hold_soon", late)
    with pytest.raises(JournalError):
        Journal.create(path, KEY, HEAD)
    assert path.read_bytes() == b"a journal of the other program"


def test_who_only_looks_whether_a_journal_is_free_keeps_nobody_out(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written(path, 1)
    answers = [False, False, True]
    monkeypatch.setattr(held_files, "hold", lambda _: answers.pop(0))
    Journal.resume(path, KEY).journal.close()
    assert answers == []


def test_what_was_left_comes_with_the_last_changed_first(path: Path) -> None:
    order = random.Random(3).sample("abcdef", 6)
    for number, name in enumerate(order):
        written(path.with_name(f"{name}{SUFFIX}"), 0)
        os.utime(path.with_name(f"{name}{SUFFIX}"), (number, number))
    path.with_name("letter.txt").write_bytes(b"")
    assert [each.name[0] for each in left(path.parent)] == order[::-1]


def test_a_journal_is_removed_when_its_result_is_safe(path: Path) -> None:
    journal = Journal.create(path, KEY, HEAD)
    journal.discard()
    assert not path.exists()
    assert left(path.parent) == ()


def test_a_disk_that_can_t_be_read_is_said_and_nothing_is_cut(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written(path, 3)
    before = path.read_bytes()

    def fails(_: object) -> bytes:
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr("trainer.sealing.journal.all_of", fails)
    for act in (Journal.sound_part, Journal.cut_to_sound_part, Journal.resume):
        with pytest.raises(JournalError) as caught:
            act(path, KEY)
        assert caught.value.hindrance == "unwritable"
        assert "Input/output" in caught.value.reason
    assert path.read_bytes() == before
