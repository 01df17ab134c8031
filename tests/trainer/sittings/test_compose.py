"""Composing a sitting through the real widgets: by mouse, and by keys alone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from exercises.sitting.paper import paper_of
from exercises.sitting.plan import Made
from exercises.tray import load_tray
from tests.trainer.sittings.conftest import HERON, Instructor
from trainer.notices import FaultsDialog, Notice
from trainer.open_trays import OpenTray
from trainer.school.people import Newcomer
from trainer.school.roster import Roster
from trainer.shop.recipe_dialog import RecipeDialog
from trainer.sittings.draft import FromDice, FromTray

Key = Qt.Key


def test_an_empty_sitting_says_what_is_missing_and_offers_where_to_begin(
    instructor: Instructor,
) -> None:
    page = instructor.compose
    instructor.wait_for_paper()
    assert page.part.empty.isVisible()
    assert "no title" in page.faults.text()
    assert "nothing is asked" in page.faults.text().lower()
    assert not page.seal.isEnabled()
    instructor.choose_in(page.part.from_tray.menu(), "Shipped trays", "Heron")
    assert instructor.draft.count == 26
    instructor.fill(page.parts.title, "Friday")
    instructor.wait_for_paper()
    assert page.faults.isHidden()
    assert page.seal.isEnabled()


def test_coupons_are_ticked_by_click_and_by_space(instructor: Instructor) -> None:
    instructor.add_heron()
    table = instructor.compose.part.table
    instructor.click_cell(table, 1, 0)
    assert instructor.draft.count == 25
    instructor.click_cell(table, 1, 0)
    assert instructor.draft.count == 26
    instructor.click_cell(table, 2, 2)
    assert instructor.draft.count == 26, "a click beside the box only chooses"
    instructor.click_cell(table, 4, 2, more=True)
    table.setFocus()
    instructor.key(Key.Key_Space)
    part = instructor.draft.part
    assert isinstance(part, FromTray)
    assert set(range(26)) - part.picked == {2, 4}
    assert table.chosen_keys == [2, 4], "what is chosen stays so"
    instructor.key(Key.Key_Space)
    assert instructor.draft.count == 26
    instructor.click(instructor.compose.part.none)
    assert instructor.draft.count == 0
    instructor.wait_for_paper()
    assert "no coupon is chosen" in instructor.compose.faults.text().lower()


def test_undo_goes_back_step_by_step_and_names_the_step(instructor: Instructor) -> None:
    instructor.add_heron()
    page = instructor.compose
    instructor.click_cell(page.part.table, 0, 0)
    assert "other coupons" in page.bar.undo.toolTip()
    page.part.table.setFocus()
    instructor.control(Key.Key_Z)
    assert instructor.draft.count == 26
    instructor.control(Key.Key_Z)
    assert str(instructor.draft.base.title) == ""
    instructor.control(Key.Key_Z)
    assert instructor.draft.parts == ()
    assert not page.bar.undo.isEnabled()
    for _ in range(3):
        instructor.control(Key.Key_Y)
    assert instructor.draft.count == 25


def test_dice_are_a_recipe_and_each_learner_has_their_own(instructor: Instructor) -> None:
    page = instructor.compose
    instructor.click(page.parts.from_dice)
    dialog = instructor.dialog(RecipeDialog)
    instructor.fill(dialog._entries["count"].field, "8")
    instructor.answer("Add")
    part = instructor.draft.part
    assert isinstance(part, FromDice)
    assert part.recipe.count == 8
    assert page.part.recipe.isVisible()
    instructor.click(page.part.recipe)
    instructor.fill(instructor.dialog(RecipeDialog)._entries["count"].field, "12")
    instructor.answer("Change")
    assert instructor.draft.count == 12
    assert isinstance(instructor.draft.plan.parts[0], Made)


def test_the_paper_that_is_shown_is_the_one_that_is_asked(instructor: Instructor) -> None:
    page = instructor.compose
    roster = Roster(instructor.keeping)
    roster.add([Newcomer("Pia", "K-07", 1), Newcomer("Odo", "K-08", 2)])
    page.show()
    instructor.screen.show_page("class")
    instructor.screen.show_page("compose")
    instructor.click(page.parts.from_dice)
    instructor.fill(instructor.dialog(RecipeDialog)._entries["count"].field, "8")
    instructor.answer("Add")
    page.do("entrants")
    instructor.click(page.entrants.all)
    page.do("paper")
    instructor.wait_for_paper()
    shown: dict[str, list[str]] = {}
    for at, code in ((1, "K-07"), (2, "K-08")):
        assert page.paper.whose.itemText(at).startswith(code)
        page.paper.whose.setCurrentIndex(at)
        page.paper.whose.activated.emit(at)
        instructor.wait_for_paper()
        shown[code] = [row.cells[1] for row in page.paper.table.rows]
        asked = paper_of(instructor.draft.plan, code)
        assert shown[code] == [str(coupon.title) for coupon in asked]
        assert [row.cells[2] for row in page.paper.table.rows] == [
            f"z {coupon.callout.text}" for coupon in asked
        ]
    assert shown["K-07"] != shown["K-08"]
    assert "Right calls: accept\u00a02, add weld metal\u00a02" in page.paper.said.text()
    before = instructor.draft.base.seed
    instructor.click(page.paper.others)
    assert instructor.draft.base.seed != before


def test_terms_are_entered_and_what_cannot_be_is_refused_beside_the_field(
    instructor: Instructor,
) -> None:
    instructor.add_heron()
    fields = instructor.compose.terms.fields
    minutes = fields["minutes"]
    instructor.fill(minutes.field, "45")  # type: ignore[union-attr]
    assert instructor.draft.base.minutes == 45.0
    instructor.fill(minutes.field, "601")  # type: ignore[union-attr]
    assert instructor.draft.base.minutes == 45.0
    assert minutes.message.text() == "Right would be: 1 to 600"
    instructor.fill(minutes.field, "30 + 10")  # type: ignore[union-attr]
    assert instructor.draft.base.minutes == 40.0
    instructor.click(minutes.steps[1])  # type: ignore[union-attr]
    assert instructor.draft.base.minutes == 45.0
    instructor.fill(fields["pass"].field, "75")  # type: ignore[union-attr]
    assert instructor.draft.base.pass_mark == 0.75
    instructor.click(fields["skill face"].steps[1])  # type: ignore[union-attr]
    assert instructor.draft.base.skill_marks == {"face": 0.8}
    instructor.fill(fields["skill face"].field, "")  # type: ignore[union-attr]
    assert instructor.draft.base.skill_marks == {}
    instructor.click(fields["critical"].box)  # type: ignore[union-attr]
    assert not instructor.draft.base.critical_fails


def test_helps_stay_that_are_ticked(instructor: Instructor) -> None:
    form = instructor.compose.terms
    assert instructor.draft.base.helps == {"loupe", "unit switch"}
    for name, helps in (
        ("press home", {"loupe", "unit switch", "press home"}),
        ("loupe", {"unit switch", "press home"}),
    ):
        box = form.fields[f"help {name}"].box  # type: ignore[union-attr]
        form.ensureWidgetVisible(box)
        at = QPoint(10, box.height() // 2)
        QTest.mouseClick(box, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
        assert instructor.draft.base.helps == helps


def test_entrants_come_from_the_class_with_their_time(instructor: Instructor) -> None:
    page = instructor.compose
    page.do("entrants")
    assert page.entrants.empty.isVisible()
    instructor.click(page.entrants.to_class)
    assert instructor.screen.shown_page == "class"
    roster = Roster(instructor.keeping)
    group = roster.add_group("Tuesday")
    roster.add([Newcomer("Pia", "K-07", 1), Newcomer("Odo", "K-08", 2)], group.id)
    roster.add([Newcomer("Ana", "K-09", 3)])
    instructor.screen.show_page("compose")
    table = page.entrants.table
    assert [row.cells[:2] for row in table.rows] == [
        ("K-09", "Ana"), ("K-08", "Odo"), ("K-07", "Pia"),
    ]  # fmt: skip
    page.entrants.groups.setCurrentText("Tuesday")
    page.entrants.groups.activated.emit(1)
    instructor.click(page.entrants.all)
    assert [one.code for one in instructor.draft.base.entrants] == ["K-07", "K-08"]
    assert not page.entrants.extras[1].isEnabled(), "nobody is chosen yet"
    instructor.click_cell(table, 1, 2)
    instructor.click(page.entrants.extras[1])
    assert instructor.draft.plan.minutes_for("k-07") == 75.0
    assert table.rows[1].cells[2] == "+25 %"
    instructor.fill(page.entrants.other.field, "40")
    assert instructor.draft.plan.minutes_for("k-07") == pytest.approx(84.0)
    instructor.fill(page.entrants.other.field, "400")
    assert page.entrants.other.message.text() == "Right would be: 0 to 300"
    assert page.side.tabText(1) == "Learners (2)"


def test_by_keys_alone(instructor: Instructor, monkeypatch: pytest.MonkeyPatch) -> None:
    page = instructor.compose
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(HERON), ""))
    page.parts.list.setFocus()
    instructor.key(Key.Key_T)
    assert instructor.draft.count == 26
    instructor.key(Key.Key_1)
    assert page.part.table.hasFocus()
    for key in (Key.Key_Down, Key.Key_Space):
        instructor.key(key)
    assert instructor.draft.count == 25
    instructor.key(Key.Key_4)
    assert page.side.currentIndex() == 1
    instructor.key(Key.Key_2)
    assert page.middle.currentIndex() == 1
    instructor.control(Key.Key_PageDown)
    assert instructor.screen.shown_page == "class"
    instructor.control(Key.Key_PageUp)
    assert instructor.screen.shown_page == "compose"
    page.parts.list.setFocus()
    instructor.key(Key.Key_Delete)
    assert instructor.draft.parts == ()


def test_a_broken_tray_is_refused_whole_and_says_why(
    instructor: Instructor, tmp_path: Path
) -> None:
    instructor.add_heron()
    broken = tmp_path / "broken.tray.json"
    stated = json.loads(HERON.read_text(encoding="utf-8"))
    stated["coupons"][0]["bead"]["leg_base"] = -1
    broken.write_text(json.dumps(stated), encoding="utf-8")
    instructor.screen.open_path(broken)
    assert isinstance(instructor.frame.dialogs[-1], FaultsDialog)
    assert instructor.draft.count == 26


def test_the_tray_of_another_screen_is_taken_as_it_is_now(instructor: Instructor) -> None:
    tray = load_tray(HERON)
    instructor.frame.open_trays["bench"] = lambda: OpenTray(tray, None)
    instructor.choose_in(instructor.compose.parts.from_tray.menu(), "The tray on the bench")
    assert instructor.draft.count == 26
    instructor.choose_in(instructor.compose.parts.from_tray.menu(), "The tray in the coupon shop")
    assert len(instructor.draft.parts) == 1
    assert "visit it first" in instructor.compose.saying.text()


def test_a_tray_whose_rules_are_not_at_hand_is_not_taken(
    instructor: Instructor, tmp_path: Path
) -> None:
    found = Path(__file__).parents[2] / "exercises" / "golden" / "version-1.rules.json"
    sets = json.loads(found.read_text(encoding="utf-8"))
    (tmp_path / found.name).write_text(json.dumps(sets), encoding="utf-8")
    stated = json.loads(HERON.read_text(encoding="utf-8"))
    stated["rule_files"] = [found.name]
    stated["coupons"] = [{**stated["coupons"][0], "rules": sets["id"]}]
    path = tmp_path / "shop.tray.json"
    path.write_text(json.dumps(stated), encoding="utf-8")
    tray = load_tray(path)
    instructor.frame.open_trays["bench"] = lambda: OpenTray(tray, None)
    menu = instructor.compose.parts.from_tray.menu()
    instructor.choose_in(menu, "The tray on the bench")
    assert instructor.draft.parts == ()
    assert instructor.dialog(Notice).windowTitle() == "Its rules are not at hand"
    instructor.dialog(Notice).reject()
    instructor.frame.open_trays["bench"] = lambda: OpenTray(tray, tmp_path)
    instructor.choose_in(menu, "The tray on the bench")
    assert instructor.draft.count == 1
    instructor.wait_for_paper()
    assert not [f for f in instructor.draft.plan.faults() if f.at.startswith("/parts")]


def test_the_paper_is_tried_on_the_bench_on_no_record(instructor: Instructor) -> None:
    instructor.add_heron()
    tried: list[tuple[object, int]] = []
    instructor.frame.trial_asked.connect(lambda tray, at: tried.append((tray, at)))
    instructor.compose.part.table.setFocus()
    instructor.control(Key.Key_B)
    ((tray, at),) = tried
    assert at == 0
    assert tray.coupons == paper_of(instructor.draft.plan, "")  # type: ignore[attr-defined]
