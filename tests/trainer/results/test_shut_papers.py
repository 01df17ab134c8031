"""Papers that were sat at this machine, before and after their passphrase is typed."""

from __future__ import annotations

from exercises.sitting.result import Result
from tests.trainer.results.conftest import Teacher
from trainer.school.merging import merge
from trainer.sealing.key import Cost, Key
from trainer.sittings.seal_dialog import UnsealDialog

PASSPHRASE = "three weathered herons"
KEY = Key.made(PASSPHRASE, Cost(log_n=4))


def sat_here(teacher: Teacher, results: list[Result]) -> None:
    logbook = teacher.keeping.logbook
    assert logbook is not None
    for result in results:
        merge(logbook, result, KEY)
    teacher.page.refresh()
    teacher.settle()


def typed(teacher: Teacher, passphrase: str) -> UnsealDialog:
    """Type a passphrase, and wait until it was tried."""
    dialogs = [one for one in teacher.frame.dialogs if isinstance(one, UnsealDialog)]
    if not dialogs:
        teacher.page.of_class.shut.button.click()
        dialogs = [one for one in teacher.frame.dialogs if isinstance(one, UnsealDialog)]
    (dialog,) = dialogs
    dialog.field.setText(passphrase)
    dialog.open_button.click()
    teacher.qtbot.waitUntil(lambda: teacher.page.shut._trying is None)
    teacher.settle()
    return dialog


def shown(teacher: Teacher) -> int:
    return teacher.page.of_class.learners.table.rows.rowCount()


def test_nothing_of_them_is_shown_before(newcomer: Teacher, results: list[Result]) -> None:
    sat_here(newcomer, results[:3])
    strip = newcomer.page.of_class.shut
    assert strip.isVisible()
    assert "3 paper" in strip.words.text()
    assert shown(newcomer) == 0
    assert newcomer.page.look.reckoned is None
    assert "shut" in newcomer.page.of_class._nothing()
    exports = newcomer.page.of_class.exports
    assert not any(exports[kind].isEnabled() for kind in ("csv", "xapi", "pdf", "html"))


def test_the_passphrase_shows_them_and_a_wrong_one_does_not(
    newcomer: Teacher, results: list[Result]
) -> None:
    sat_here(newcomer, results[:3])
    dialog = typed(newcomer, "three weathered heron")
    assert dialog.isVisible()
    assert "opens none of them" in dialog.message.text()
    assert shown(newcomer) == 0
    dialog = typed(newcomer, PASSPHRASE)
    assert not newcomer.frame.dialogs
    assert shown(newcomer) == 3
    assert newcomer.page.of_class.shut.isHidden()
    assert all(action.isEnabled() for action in newcomer.page.of_class.exports.values())
    newcomer.page.open_paper(results[0].id)
    assert newcomer.page.of_learner.paper is not None
    # Somebody sits here next.
    newcomer.keeping.shut()
    newcomer.page.refresh()
    newcomer.settle()
    assert newcomer.page.rooms.currentWidget() is newcomer.page.of_class
    assert shown(newcomer) == 0


def test_what_was_brought_in_is_shown_beside_what_is_shut(
    newcomer: Teacher, results: list[Result]
) -> None:
    assert newcomer.keeping.logbook is not None
    merge(newcomer.keeping.logbook, results[4])
    sat_here(newcomer, results[:1])
    assert shown(newcomer) == 1
    assert "1 paper" in newcomer.page.of_class.shut.words.text()
