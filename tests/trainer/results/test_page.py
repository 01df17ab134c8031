"""The page of results, driven through its own widgets on a class that handed in."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLabel, QLineEdit

from exercises.sitting.marking import mark, marked
from exercises.sitting.result import Result
from tests.trainer.results.conftest import LEARNERS, Teacher
from trainer.results.class_results import VIEWS
from trainer.results.figures_of import percent
from trainer.results.override_dialog import OverrideDialog
from trainer.results.rows import LearnerRow


@pytest.fixture(autouse=True)
def _english() -> None:
    QLocale.setDefault(QLocale("en"))


def shown(teacher: Teacher) -> list[LearnerRow]:
    model = teacher.page.of_class.learners.table.rows
    return [model.row(at) for at in range(model.rowCount())]


def cell(teacher: Teacher, row: int, name: str) -> str:
    model = teacher.page.of_class.learners.table.rows
    column = [one.name for one in model.columns].index(name)
    return str(model.data(model.index(row, column)))


def dialog(teacher: Teacher) -> OverrideDialog:
    found = teacher.frame.dialogs[-1]
    assert isinstance(found, OverrideDialog)
    return found


def labels(teacher: Teacher) -> str:
    return "\n".join(
        one.text() for one in teacher.page.findChildren(QLabel) if one.isVisibleTo(teacher.page)
    )


def test_every_paper_is_there_with_what_it_came_to(teacher: Teacher, results: list[Result]) -> None:
    by_code = {result.code: mark(result.marks, result.items) for result in results}
    assert len(shown(teacher)) == LEARNERS
    for at, row in enumerate(shown(teacher)):
        standing = by_code[row.code]
        assert cell(teacher, at, "score") == percent(standing.score)
        assert cell(teacher, at, "passed") == ("Passed" if standing.passed else "Not passed")
        assert bool(cell(teacher, at, "why")) is not standing.passed
        assert row.unanswered == standing.unanswered
        assert cell(teacher, at, "skill seat").split(" \u2193")[0] == percent(
            standing.by_skill["seat"]
        )
    assert len({row.passed for row in shown(teacher)}) == 2, "the class has both"
    named = {row.code: row.name for row in shown(teacher)}
    assert named["K-01"] == "Learner 1"
    assert named["K-02"] == "", "who is known by a code alone isn't given it for a name"


def test_it_sifts_by_group_verdict_and_skill_and_sorts_by_score(teacher: Teacher) -> None:
    bar = teacher.page.of_class.learners.sieve
    bar.choosers["group"].setCurrentText("Tuesday")
    assert {row.code for row in shown(teacher)} == {f"K-{n:02d}" for n in range(1, LEARNERS, 2)}
    bar.clear()
    bar.choosers["passed"].setCurrentText("Not passed")
    failed = shown(teacher)
    assert failed
    assert not any(row.passed for row in failed)
    bar.choosers["below"].setCurrentText("Some skill below")
    assert all(row.below for row in shown(teacher))
    bar.clear()
    teacher.page.of_class.learners.table.sort("score")
    scores = [row.score for row in shown(teacher)]
    assert scores == sorted(scores)


def test_what_a_column_means_is_said_where_the_focus_is(teacher: Teacher) -> None:
    tabled = teacher.page.of_class.learners
    names = [one.name for one in tabled.table.rows.columns]
    tabled.table.setFocus()
    for _ in range(names.index("score")):
        QTest.keyClick(tabled.table, Qt.Key.Key_Right)
    assert tabled.means.text().startswith("Score: ")
    assert "total score" in tabled.means.text()
    for view in (teacher.page.of_class.coupons, teacher.page.of_class.ready):
        for column in view.table.rows.columns:
            assert column.means.endswith("."), column.title


def test_a_paper_opens_by_return_and_esc_leads_back_to_the_same_learner(teacher: Teacher) -> None:
    table = teacher.page.of_class.learners.table
    table.setFocus()
    QTest.keyClick(table, Qt.Key.Key_End, Qt.KeyboardModifier.ControlModifier)
    asked = table.current
    assert asked is not None
    QTest.keyClick(table, Qt.Key.Key_Return)
    page = teacher.page.of_learner
    assert page.isVisible()
    assert page.title.text().startswith(asked.code)
    assert page.items.hasFocus()
    QTest.keyClick(page.items, Qt.Key.Key_Escape)
    assert teacher.page.of_class.isVisible()
    assert table.current is not None
    assert table.current.id == asked.id
    assert table.hasFocus()


def test_a_handling_is_looked_at_again(teacher: Teacher, results: list[Result]) -> None:
    result = next(one for one in results if one.code == "K-01")
    teacher.page.open_paper(result.id)
    page = teacher.page.of_learner
    for at, item in enumerate(result.items):
        page.items.selectRow(at)
        player = page.handling.player
        assert len(player.log) == len(item.handling)
        assert page.handling.canvas.scene.overlays, "truth and reasons lie over it"
        if not item.handling:
            continue
        assert page.handling.canvas.scene.leaf is not None
        page.handling.canvas.setFocus()
        QTest.keyClick(page.handling.canvas, Qt.Key.Key_Home)
        assert player.now.at == 0.0
        QTest.keyClick(page.handling.canvas, Qt.Key.Key_Right)
        assert player.now.at > 0.0
        QTest.keyClick(page.handling.canvas, Qt.Key.Key_T)
        assert not page.handling.canvas.scene.overlays


def test_each_mark_below_one_has_its_reason_beside_it(
    teacher: Teacher, results: list[Result]
) -> None:
    result = next(one for one in results if one.code == "K-04")
    teacher.page.open_paper(result.id)
    page = teacher.page.of_learner
    at = next(
        at for at, item in enumerate(result.items) if (marked(item).marks.get("reading") or 0) < 1
    )
    page.items.selectRow(at)
    said = "\n".join(one.text() for one in page.marks.findChildren(QLabel))
    assert "Reading" in said
    assert "you said" in said


def test_tab_goes_from_the_items_to_their_marks_and_then_to_the_picture(
    teacher: Teacher, results: list[Result]
) -> None:
    teacher.page.open_paper(results[0].id)
    page = teacher.page.of_learner
    for _ in range(2):
        page.items.setFocus()
        stops = page.marks.stops()
        assert len(stops) >= 7
        for stop in (*stops, page.handling.canvas, page.handling.replay.play):
            QTest.keyClick(teacher.window.windowHandle(), Qt.Key.Key_Tab)
            assert stop.hasFocus(), stop
        QTest.keyClick(page.items, Qt.Key.Key_Down)


def override(teacher: Teacher, reason: str, by: str, step: int) -> None:
    """State an override in the dialog that is open, by its own keys and buttons."""
    asked = dialog(teacher)
    assert not asked.save.isEnabled(), "without a reason and a name nothing is overridden"
    QTest.mouseClick(asked.steps[step], Qt.MouseButton.LeftButton)
    asked.reason.setFocus()
    QTest.keyClicks(asked.reason, reason)
    if not asked.by.text():
        assert not asked.save.isEnabled()
        QTest.keyClicks(asked.by, by)
    assert asked.save.isEnabled()
    QTest.mouseClick(asked.save, Qt.MouseButton.LeftButton)
    teacher.settle()


def test_a_mark_set_by_hand_stands_beside_what_was_graded_and_can_be_put_back(
    teacher: Teacher, results: list[Result]
) -> None:
    result = next(
        one for one in results
        if any(item.grade is not None and item.grade["critical"] for item in one.items)
    )  # fmt: skip
    number = next(
        item.number for item in result.items
        if item.grade is not None and item.grade["critical"]
    )  # fmt: skip
    before = mark(result.marks, result.items)
    teacher.page.open_paper(result.id)
    page = teacher.page.of_learner
    page.items.selectRow(number - 1)
    QTest.mouseClick(page.marks.buttons["critical"], Qt.MouseButton.LeftButton)
    override(teacher, "the section was cut off at the side", "Instructor 2", 0)
    assert page.shown is not None
    assert page.shown.number == number, "whoever overrides stays at the item"
    said = labels(teacher)
    assert "<s>yes</s> <b>no</b>" in said
    assert "the section was cut off at the side" in said
    assert "Instructor 2" in said
    row = page.items.current
    assert row is not None
    assert row.was == 0.0
    assert row.score > 0.0
    after = teacher.page.look.reckoned
    assert after is not None
    at = [paper.id for paper in after.papers].index(result.id)
    assert after.standings[at].critical == before.critical - 1
    assert after.standings[at].score > before.score
    # Undoing it is another override: both stay.
    QTest.mouseClick(page.marks.backs["critical"], Qt.MouseButton.LeftButton)
    override(teacher, "it was not, seen again", "Instructor 2", 100)
    again = teacher.page.look.reckoned
    assert again is not None
    assert again.standings[at] == before
    assert "it was not, seen again" in labels(teacher)
    assert "the section was cut off at the side" in labels(teacher)
    assert len(again.papers[at].overrides) == 2
    # As handed in it is as it was.
    teacher.page.show_class()
    assert cell(teacher, [row.id for row in shown(teacher)].index(result.id), "note") != ""


def test_coupons_are_told_with_what_the_class_made_of_each(
    teacher: Teacher, results: list[Result]
) -> None:
    teacher.page.of_class.show_view("coupons")
    model = teacher.page.of_class.coupons.table.rows
    assert model.rowCount() == 9
    for at in range(model.rowCount()):
        row = model.row(at)
        items = [item for one in results for item in one.items if item.slot == row.id]
        assert row.papers == len(items) == LEARNERS
        right = sum(marked(item).marks.get("disposition") == 1.0 for item in items)
        assert row.right.count == right
        assert row.unanswered == sum(not item.answered for item in items)
    assert "rough" in teacher.page.of_class.coupons.said.text()
    assert "KR-20" in teacher.page.of_class.coupons.said.text()
    by_dice = [model.row(at) for at in range(9) if model.row(at).title.startswith("by dice")]
    assert len(by_dice) == 3


def test_every_view_is_reached_by_the_keyboard_and_drawn_in_both_looks(teacher: Teacher) -> None:
    page = teacher.page.of_class
    for look in ("light", "dark"):
        teacher.frame.change_settings(replace(teacher.frame.settings, appearance=look))
        for name in VIEWS:
            page.buttons[name].setFocus()
            QTest.keyClick(page.buttons[name], Qt.Key.Key_Space)
            assert page.shown_view == name
            QTest.qWait(80)
    for name, card in page.pictures.cards.items():
        assert card.said.text(), name
        assert card.view.accessibleDescription() == " ".join(card.said.text().split("\n"))
    page.show_view("pictures")
    QTest.qWait(120)
    panel = teacher.frame.theme.panel
    for name, card in page.pictures.cards.items():
        image = card.view.grab().toImage()
        assert image.pixelColor(1, 1).name() == panel, name
        colours = {image.pixelColor(x, y).name() for x in range(0, image.width(), 3)
                   for y in range(0, image.height(), 3)}  # fmt: skip
        assert len(colours) > 20, name


def test_nothing_handed_in_yet_is_said_and_nothing_is_offered_that_needs_it(
    newcomer: Teacher,
) -> None:
    page = newcomer.page.of_class
    assert "Nothing was handed in yet" in page.learners.empty.text()
    assert page.learners.empty.isVisible()
    assert not page.sittings.isEnabled()
    assert not page.buttons["pictures"].isEnabled()
    assert not page.learners.open.isEnabled()
    assert not page.learners.copy.isEnabled()
    page.show_view("ready")
    assert page.ready.table.rows.rowCount() == 1, "whoever is at this bench is somebody"


def test_a_shut_logbook_is_told(newcomer: Teacher) -> None:
    keeping = newcomer.keeping
    keeping.close()
    keeping.path.write_bytes(b"no logbook at all" * 100)
    keeping.open()
    newcomer.page.refresh()
    newcomer.settle()
    assert newcomer.page.of_class.trouble.isVisible()
    assert "damaged" in newcomer.page.of_class.trouble.text()


def test_another_page_goes_on_where_this_one_was(teacher: Teacher, results: list[Result]) -> None:
    teacher.page.of_class.show_view("coupons")
    teacher.page.open_paper(results[3].id)
    page = type(teacher.page)(teacher.frame, teacher.keeping)
    teacher.qtbot.addWidget(page)
    page.go_on_from(teacher.page)
    assert page.of_class.shown_view == "coupons"
    assert page.of_learner.paper is not None
    assert page.of_learner.paper.id == results[3].id
    page.wait()


def test_controls_are_large_enough_and_have_names(teacher: Teacher, results: list[Result]) -> None:
    teacher.page.open_paper(results[0].id)
    seen = 0
    for room in (teacher.page.of_learner, teacher.page.of_class):
        if room is teacher.page.of_class:
            teacher.page.show_class()
        for kind in (QAbstractButton, QComboBox, QLineEdit):
            for one in room.findChildren(kind):
                if not one.isVisible() or one.objectName().startswith("qt_"):
                    continue
                seen += 1
                assert one.height() >= 24, one
                assert one.accessibleName() or getattr(one, "text", str)(), one
    assert seen > 20
