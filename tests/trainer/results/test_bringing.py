"""Result files brought in: what came, what didn't and why; nothing is ever half there."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Sequence
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, QMimeData, QPoint, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QLabel

from exercises.sitting.result import Result, learner_id
from exercises.sitting.result_file import result_as_dict, result_bytes
from tests.trainer.results.conftest import Teacher
from trainer.logbook.keeping import Keeping
from trainer.results.bringing import Brought, BroughtDialog, PassphraseDialog, ProgressDialog
from trainer.results.opening import Opening, open_results, result_files
from trainer.sealing.key import Cost, Key
from trainer.sealing.result_files import write_sealed

PASSPHRASE = "three weathered herons"
CHEAP = Cost(log_n=4)


@pytest.fixture(autouse=True)
def _english() -> None:
    QLocale.setDefault(QLocale("en"))


@pytest.fixture(scope="session")
def key() -> Key:
    return Key.made(PASSPHRASE, CHEAP)


def written(folder: Path, results: Sequence[Result], key: Key) -> list[Path]:
    folder.mkdir(exist_ok=True)
    paths = []
    for result in results:
        path = folder / f"{result.code}_{result.id[:6]}.result"
        write_sealed(path, "result", result_bytes(result), key)
        paths.append(path)
    return paths


def bring(teacher: Teacher, paths: list[Path], passphrase: str = PASSPHRASE) -> list[Brought]:
    """Bring files in by the page's own dialogs; what the last one lists."""
    came: list[Brought] = []
    teacher.page.bringing.brought.connect(came.extend)
    teacher.page.bringing.bring(paths)
    asked = teacher.frame.dialogs[-1]
    assert isinstance(asked, PassphraseDialog)
    QTest.keyClicks(asked.field, passphrase)
    QTest.keyClick(asked.field, Qt.Key.Key_Return)
    teacher.settle()
    return came


def listed(teacher: Teacher) -> BroughtDialog:
    shown = teacher.frame.dialogs[-1]
    assert isinstance(shown, BroughtDialog)
    return shown


def counts(keeping: Keeping) -> dict[str, int]:
    with closing(sqlite3.connect(keeping.path)) as plain:
        return {
            table: int(plain.execute(f"SELECT count(*) FROM {table}").fetchone()[0])
            for table in ("sat", "attempts", "learners", "sittings", "coupons")
        }


def test_forty_files_come_in_with_one_passphrase_and_the_page_shows_them(
    newcomer: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    few = [replace(one, items=one.items[:2]) for one in results]
    many = [
        replace(
            few[n % len(few)], code=f"M-{n:02d}", learner=learner_id(f"M-{n:02d}"),
            id=f"{n:08d}-0000-4000-8000-000000000000",
        )
        for n in range(40)
    ]  # fmt: skip
    paths = written(tmp_path / "stick", many, key)
    came = bring(newcomer, [tmp_path / "stick"])
    assert [row.came for row in came] == ["new"] * 40
    assert {row.path for row in came} == set(paths)
    assert counts(newcomer.keeping)["sat"] == 40
    shown = listed(newcomer)
    assert "40" in shown.windowTitle()
    assert not shown.again.isVisible()
    assert not any(isinstance(one, ProgressDialog) for one in newcomer.frame.dialogs)
    assert newcomer.page.of_class.learners.table.rows.rowCount() == 40
    assert newcomer.page.of_class.sittings.isEnabled()


def test_each_kind_of_bad_file_is_told_and_nothing_of_it_stays(
    newcomer: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    good, other, edited, cut, late = written(tmp_path / "in", results[:5], key)
    secret = Key.made("another passphrase", CHEAP)
    write_sealed(other, "result", result_bytes(results[1]), secret)
    data = bytearray(edited.read_bytes())
    data[-40] ^= 1
    edited.write_bytes(bytes(data))
    cut.write_bytes(cut.read_bytes()[:-100])
    said = result_as_dict(results[4]) | {"version": 99}
    write_sealed(late, "result", json.dumps(said).encode(), key)
    plain = tmp_path / "in" / "letter.result"
    plain.write_text("Dear instructor", encoding="utf-8")
    broken = tmp_path / "in" / "broken.result"
    write_sealed(broken, "result", b'{"format": "toe-and-throat/result", "version": 1}', key)
    gone = tmp_path / "in" / "gone.result"
    came = {
        row.path.name: row
        for row in bring(newcomer, [good, other, edited, cut, late, plain, broken, gone])
    }
    assert {name: row.came for name, row in came.items()} == {
        good.name: "new", other.name: "not", edited.name: "not", cut.name: "not",
        late.name: "not", plain.name: "not", broken.name: "not", gone.name: "not",
    }  # fmt: skip
    for path, words in (
        (other, "passphrase"), (edited, "changed"), (cut, "end is missing"), (late, "newer"),
        (plain, "no sealed file"), (broken, "missing"), (gone, "gone.result"),
    ):  # fmt: skip
        assert words in f"{path.name if path is gone else ''} {came[path.name].words}", path.name
    assert [name for name, row in came.items() if row.again] == [other.name]
    assert counts(newcomer.keeping)["sat"] == 1
    assert counts(newcomer.keeping)["learners"] == 2, "theirs, and the one of this bench"
    shown = listed(newcomer)
    first = shown.table.rows.row(0)
    assert first.came == "not", "what didn't come in stands on top"
    assert first.path.name in shown.whole.text()
    assert first.words in shown.whole.text()
    # Another passphrase is tried on the one that it may open, and on no other.
    QTest.mouseClick(shown.again, Qt.MouseButton.LeftButton)
    asked = newcomer.frame.dialogs[-1]
    assert isinstance(asked, PassphraseDialog)
    assert "1" in asked.windowTitle()
    QTest.keyClicks(asked.field, "another passphrase")
    QTest.mouseClick(asked.button, Qt.MouseButton.LeftButton)
    newcomer.settle()
    assert counts(newcomer.keeping)["sat"] == 2


def test_the_same_twice_changes_nothing_and_is_said(
    teacher: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    before = counts(teacher.keeping)
    came = bring(teacher, written(tmp_path / "in", results[:3], key))
    assert [row.came for row in came] == ["known"] * 3
    assert all("nothing was changed" in row.words for row in came)
    assert counts(teacher.keeping) == before
    assert listed(teacher).windowTitle().endswith(": 0")


def test_two_learners_with_one_code_are_both_kept_and_marked(
    teacher: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    twin = replace(results[0], id="aaaaaaaa-0000-4000-8000-000000000001", station="Bench 9")
    came = bring(teacher, written(tmp_path / "in", [twin], key))
    assert [row.came for row in came] == ["clash"]
    listed(teacher).reject()
    model = teacher.page.of_class.learners.table.rows
    rows = [model.row(at) for at in range(model.rowCount())]
    assert sum(row.clash for row in rows) == 2
    bar = teacher.page.of_class.learners.sieve
    bar.choosers["passed"].setCurrentText("Two of one code")
    assert model.rowCount() == 2
    assert {model.row(at).station for at in range(2)} == {results[0].station, "Bench 9"}
    notes = [one.name for one in model.columns].index("note")
    assert "another paper of this code" in str(model.data(model.index(0, notes)))


def test_a_logbook_that_takes_nothing_is_told_for_each_file(
    newcomer: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    paths = written(tmp_path / "in", results[:2], key)
    newcomer.keeping.close()
    came = bring(newcomer, paths)
    assert [row.came for row in came] == ["not", "not"]
    assert all(row.words for row in came)
    newcomer.keeping.open()
    assert counts(newcomer.keeping)["sat"] == 0


def test_stopped_halfway_what_came_in_stays_and_the_rest_is_listed(
    newcomer: Teacher, results: list[Result], key: Key, tmp_path: Path
) -> None:
    paths = written(tmp_path / "in", results[:6], key)
    came: list[Brought] = []
    bringing = newcomer.page.bringing
    bringing.brought.connect(came.extend)
    bringing.begin(paths, PASSPHRASE)
    progress = newcomer.frame.dialogs[-1]
    assert isinstance(progress, ProgressDialog)
    newcomer.qtbot.waitUntil(lambda: len(bringing._rows) >= 2, timeout=30_000)
    progress.reject()
    newcomer.settle()
    kept = [row for row in came if row.came == "new"]
    assert 2 <= len(kept) < 6
    assert len(came) == 6
    assert all("Stopped" in row.words for row in came if row.came == "not")
    assert counts(newcomer.keeping)["sat"] == len(kept)


def test_several_files_are_dropped_or_chosen_at_once(
    newcomer: Teacher, results: list[Result], key: Key, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    paths = written(tmp_path / "in", results[:3], key)
    carried = QMimeData()
    carried.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    drop = QDropEvent(
        QPoint(40, 40), Qt.DropAction.CopyAction, carried, Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    newcomer.page.dropEvent(drop)
    newcomer.qtbot.waitUntil(lambda: bool(newcomer.frame.dialogs))
    asked = newcomer.frame.dialogs[-1]
    assert isinstance(asked, PassphraseDialog)
    assert "3" in asked.windowTitle()
    assert asked.field.hasFocus()
    assert asked.field.echoMode() == asked.field.EchoMode.Password
    asked.show_it.click()
    assert asked.field.echoMode() == asked.field.EchoMode.Normal
    assert not asked.button.isEnabled()
    asked.reject()
    names = [str(path) for path in paths[:2]]
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: (names, ""))
    QTest.mouseClick(newcomer.page.of_class.bring, Qt.MouseButton.LeftButton)
    again = newcomer.frame.dialogs[-1]
    assert isinstance(again, PassphraseDialog)
    assert "2" in again.windowTitle()
    again.reject()
    assert counts(newcomer.keeping)["sat"] == 0


def test_a_folder_without_results_is_said(newcomer: Teacher, tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()
    newcomer.page.open_path(empty)
    assert ".result" in "".join(
        label.text() for label in newcomer.frame.dialogs[-1].findChildren(QLabel)
    )


def test_a_key_is_derived_once_for_all_results_of_a_sitting(
    results: list[Result], key: Key, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    paths = written(tmp_path / "in", results[:4], key)
    derived: list[str] = []
    real = Key.derived

    def counted(passphrase: str, cost: Cost, salt: bytes) -> Key:
        derived.append(passphrase)
        return real(passphrase, cost, salt)

    monkeypatch.setattr(Key, "derived", counted)
    opening = Opening(4)
    opened = open_results(paths, PASSPHRASE, opening)
    assert [one.result.code for one in opened if one.result] == [r.code for r in results[:4]]
    assert derived == [PASSPHRASE]
    assert opening.done == 4
    opening.stop()
    assert open_results(paths, PASSPHRASE, opening) == []


def test_a_folder_stands_for_its_results_and_each_file_comes_once(tmp_path: Path) -> None:
    (tmp_path / "a.result").touch()
    (tmp_path / "b.result").touch()
    (tmp_path / "c.txt").touch()
    asked = [tmp_path, tmp_path / "a.result", tmp_path / "c.txt"]
    assert [path.name for path in result_files(asked)] == ["a.result", "b.result", "c.txt"]
