"""What is shown once a call is on record."""

from __future__ import annotations

import math
from itertools import combinations

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtWidgets import QApplication, QLabel
from shapely.geometry import Polygon

from exercises.attempt import Attempt
from exercises.coupon import Coupon
from exercises.disposition import Disposition
from exercises.grading import grade
from exercises.tray import Tray
from geometry.measures import FaceShape
from tests.trainer.bench.conftest import Person
from trainer.bench import moves
from trainer.bench import state as changes
from trainer.bench.debrief_panel import NextBar
from trainer.bench.grounds import sureness
from trainer.bench.review_picture import flaw_overlays, review_scene
from trainer.bench.state import BenchState, attempt_of, open_coupon
from trainer.bench.truth import place_of, tell, truth_of
from trainer.canvas.drawing import blade_of, drawing_of
from trainer.canvas.overlay import placed_labels
from trainer.canvas.scene import Area, Dimension, Line, Mark
from trainer.canvas.view import View, fitted
from trainer.look.tokens import LIGHT
from trainer.settings import Settings

Key = Qt.Key


def judge(person: Person, *keys: Key, face: str = "Convex", say: str = "Accept") -> None:
    for key in keys:
        person.key(key)
        person.settle()
    person.click(person.button(face))
    person.click(person.button(say))
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief"


SEATED = (Key.Key_8, Key.Key_Space, Key.Key_T)


def texts(person: Person) -> str:
    labels = person.screen.review.panel.findChildren(QLabel)
    return "\n".join(label.text() for label in labels)


def test_the_truth_lies_over_the_section(person: Person) -> None:
    judge(person, *SEATED)
    kinds = [type(overlay) for overlay in person.canvas.scene.overlays]
    assert kinds.count(Dimension) == 2
    assert kinds.count(Area) == 1
    assert kinds.count(Line) == 2
    legs = [o.label for o in person.canvas.scene.overlays if isinstance(o, Dimension)]
    assert legs == ["8.40 mm", "6.70 mm"]


def test_every_reason_stands_beside_its_place(person: Person) -> None:
    judge(person, *SEATED, face="Hollow")
    assert person.state.grade is not None
    labels = " ".join(o.label for o in person.canvas.scene.overlays if isinstance(o, Mark))
    for number, _ in enumerate(person.state.grade.reasons, start=1):
        assert f"{number} " in labels
    assert len(person.state.grade.reasons) >= 4


def test_a_call_that_doubt_covers_is_said_to_be_accepted(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-21"))
    judge(person, face="Convex", say="Refer")
    said = texts(person)
    assert "You said: Refer. That is accepted." in said
    assert "Right call" not in said


def test_the_limit_of_an_open_fit_is_explained(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-16"))
    judge(person, Key.Key_5, *SEATED[1:], face="Convex", say="Accept")
    said = texts(person)
    assert "6 mm called for + 2 mm root opening = 8 mm needed." in said
    assert "Use the 8 mm leaf." in said


def test_reasons_are_worded_for_every_code(person: Person, tray: Tray) -> None:
    """No reason that a bad call brings falls back on the core's raw keys."""
    for index, _ in enumerate(tray.coupons):
        person.screen.go_to(index)
        if person.state.coupon.task != "judge":
            continue
        judge(person, Key.Key_3, Key.Key_T, face="Flat", say="Refer")
        shown = texts(person)
        assert "leg_" not in shown
        assert "effective_" not in shown
        assert "seat-" not in shown


def test_readings_say_what_the_leaf_showed_and_can_be_looked_at(person: Person) -> None:
    judge(person, *SEATED)
    reading = person.screen.review.panel.readings[0]
    assert "Daylight, 1.3 mm" in reading.accessibleDescription()
    assert "Not right" in reading.accessibleDescription()
    person.key(Key.Key_Space)
    person.click(reading)
    assert person.canvas.scene.pose == person.state.readings[0].pose
    assert person.screen.review.player.now.reading == 0


def test_replay_shows_poses_as_recorded(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_F, Key.Key_Right, Key.Key_Escape)
    player = person.screen.review.player
    for entry in person.state.handling.entries:
        player.seek(float(entry.ms))
        frame = player.frame
        assert frame.ms == entry.ms
        if frame.leaf is None:
            assert person.canvas.scene.leaf is None
        else:
            assert person.canvas.scene.pose == frame.pose


def test_scrubber_and_keys_go_through_the_handling(person: Person) -> None:
    judge(person, Key.Key_8, Key.Key_Space, Key.Key_F)
    player, panel = person.screen.review.player, person.screen.review.replay
    panel.scrubber.setValue(0)
    assert player.now.at == 0.0
    person.canvas.setFocus()
    person.key(Key.Key_Right)
    assert player.now.at > 0.0
    person.key(Key.Key_Left)
    assert player.now.at == 0.0
    person.key(Key.Key_Space)
    assert player.now.runs
    person.qtbot.waitUntil(lambda: not player.now.runs)
    assert player.now.at == player.log.duration


def test_truth_can_be_taken_off(person: Person) -> None:
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_T)
    assert person.canvas.scene.overlays == ()


def test_page_down_goes_on_and_r_begins_again(person: Person) -> None:
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_R)
    assert person.state.coupon.id == "hf-01"
    assert person.state.phase == "handling"
    judge(person, *SEATED)
    person.canvas.setFocus()
    person.key(Key.Key_Return)
    assert person.state.phase == "debrief", "a second Enter skips no debrief"
    person.key(Key.Key_PageDown)
    assert person.state.coupon.id == "hf-02"
    assert person.state.readings == ()


def test_after_the_last_coupon_comes_the_first(person: Person, tray: Tray) -> None:
    person.screen.go_to(len(tray.coupons) - 1)
    assert not person.frame.bar.next.isEnabled()
    person.screen.go_to(person.screen.course.index + 1)
    assert person.screen.course.index == 0


def test_grade_is_the_commands_own(person: Person) -> None:
    judge(person, *SEATED)
    assert person.state.grade == grade(person.state.coupon, attempt_of(person.state))


def test_a_right_call_is_told_why(person: Person) -> None:
    """Measure, limit, margin, rule and source; what was held right; what the coupon teaches."""
    for key in (Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_H):
        person.key(key)
        person.settle()
    for key in (Key.Key_X, Key.Key_W, Key.Key_S, Key.Key_Return):
        person.key(key)
    said = texts(person)
    for part in (
        "That is right",
        "Leg on the base: 8.40 mm; 8.00 mm needed: 0.40 mm over",
        "Leg on the upright: 6.70 mm; 8.00 mm needed: 1.30 mm short",
        "Judged by: As drawn (this trainer's own rule)",
        "Face: convex, 0.90 mm beyond",
        "Leaf: 8 mm, the size that is called for",
        "Edge: the leg edge",
        "Both legs: gauged",
        "You said 60 % sure, and were right",
        str(person.state.coupon.teaches.in_language("en")),
        "7 of 7 held right",
    ):
        assert part in said
    assert "To do otherwise" not in said
    assert "Nothing to add" not in said


@pytest.mark.parametrize(
    ("sure", "right", "part"),
    [
        (None, True, "did not say"),
        (0.9, True, "trust what you saw"),
        (0.6, True, "what made you doubt"),
        (0.2, True, "right all the same"),
        (0.9, False, "costly"),
        (0.6, False, "one more seat"),
        (0.2, False, "your doubt was right"),
    ],
)
def test_sureness_is_weighed_against_what_came_out(
    tray: Tray, sure: float | None, right: bool, part: str
) -> None:
    coupon = tray.coupons[0]
    call: Disposition = "add weld metal" if right else "dress back"
    said = sureness(sure, grade(coupon, Attempt(coupon.id, disposition=call, sure=sure)))
    assert part in said
    assert sure is None or f"about {round(10 * sure)} should" in said


def test_what_a_leaf_does_not_read_is_marked(tray: Tray) -> None:
    """Each groove, lip, drop and opening is measured in the picture, at its own place."""
    seen = set()
    for coupon in tray.coupons:
        section = coupon.section
        for overlay in flaw_overlays(section, "mm"):
            word, number = overlay.label.removesuffix(" mm").rsplit(" ", 1)
            seen.add(word)
            if isinstance(overlay, Dimension):
                assert math.dist(overlay.start, overlay.end) == pytest.approx(float(number))
    assert seen == {"undercut", "overlap", "root opening", "spatter"}
    sound = next(c for c in tray.coupons if c.id == "hf-02")
    assert flaw_overlays(sound.section, "mm") == ()


@pytest.mark.parametrize("size", [(700, 380), (860, 494), (1500, 900)])
def test_no_label_lies_over_another(qapp: QApplication, tray: Tray, size: tuple[int, int]) -> None:
    """Over every coupon, with all the reasons that a bad call brings; figures may be as long."""
    for coupon in tray.coupons:
        state = bad_call(coupon)
        truth, told = truth_of(coupon.section), tell(state)
        leaf, pose = told[0].leaf, told[0].pose
        scene = review_scene(
            state, coupon.section, leaf, pose, truth, told, Settings(), LIGHT, covered=True
        )
        view = fitted(
            View((0.0, 0.0), 10.0, (float(size[0]), float(size[1]))),
            drawing_of(coupon.section),
            blade_of(leaf),
            largest=60.0,
        )
        labels = placed_labels(scene.overlays, view, LIGHT)
        assert len(labels) >= 5
        frame = QRectF(0.0, 0.0, float(size[0]), float(size[1]))
        for label in labels:
            assert frame.contains(label.rect), (coupon.id, label.text)
        for one, other in combinations(labels, 2):
            assert not one.rect.intersects(other.rect), (coupon.id, one.text, other.text)


def bad_call(coupon: Coupon) -> BenchState:
    """A call with a wrong face, a wrong leaf in mid-air, and no other leg."""
    state = moves.pick(open_coupon(coupon), "14 mm", 0.0)
    state = changes.state_reading(state, "touch", 10.0)
    face: FaceShape = "convex" if coupon.section.bead.crown < 0.0 else "concave"
    state = changes.name_face(state, face, 20.0)
    state = changes.name_disposition(state, "refer", 30.0)
    return changes.call(state, 40.0)


def test_places_of_reasons_lie_at_what_they_speak_of(person: Person) -> None:
    judge(person, *SEATED)
    state = person.state
    assert state.grade is not None
    truth = truth_of(state.coupon.section)
    told = tell(state)
    places = {
        reason.code: place_of(reason, state.coupon, truth, told) for reason in state.grade.reasons
    }
    assert places["reading-other"] == pytest.approx((0.0, 8.0), abs=1e-3)
    assert places["leg-not-gauged"] == pytest.approx((8.4, 0.0))
    assert places["right-add-weld-metal"] == pytest.approx((0.0, 6.7))


def test_triangle_is_the_largest_with_equal_legs(tray: Tray) -> None:
    for coupon in tray.coupons:
        truth = truth_of(coupon.section)
        size = truth.measures.effective_size
        assert truth.triangle[1] == pytest.approx((size, 0.0))
        weld = coupon.section.body("weld").polygon.buffer(2e-3)
        assert weld.covers(Polygon(truth.triangle))


def test_a_size_is_stated_by_two_leaves(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-26"))
    for mark, state in ((Key.Key_8, Key.Key_H), (Key.Key_BracketRight, Key.Key_D)):
        for key in (mark, Key.Key_Space, state, Key.Key_F, Key.Key_Space, state):
            person.key(key)
            person.settle()
    person.key(Key.Key_A)
    assert person.state.disposition is None, "no call is asked for"
    person.key(Key.Key_X)
    person.key(Key.Key_BracketLeft)
    person.key(Key.Key_M)
    assert person.state.size == "8 mm"
    person.key(Key.Key_Return)
    assert person.state.grade is not None
    assert person.state.grade.score == 1.0
    said = texts(person)
    assert "The largest leaf that the weld meets: 8 mm. You have it." in said
    assert "What the weld measures, and must" not in said


def test_a_reading_alone_is_asked_and_told(person: Person, tray: Tray) -> None:
    person.screen.go_to([coupon.id for coupon in tray.coupons].index("hf-25"))
    for key in (Key.Key_6, Key.Key_Space, Key.Key_T, Key.Key_X, Key.Key_Return):
        person.key(key)
        person.settle()
    said = texts(person)
    assert "Not all that you said of the leaf is what it showed." in said
    assert "the leaf shows daylight (0.3 mm); you said touch" in said


@pytest.mark.parametrize("width", [230, 372])
def test_the_way_on_is_never_cut(qapp: QApplication, width: int) -> None:
    """Where the words and their key have no room side by side, the key is left to the tip."""
    bar = NextBar()
    bar.resize(width, 44)
    bar.show_last(last=False)
    room = width - bar.again.sizeHint().width()
    assert bar.next.fontMetrics().horizontalAdvance(bar.next.text()) < max(room, 150)
    assert "PgDn" in bar.next.toolTip()
    assert ("PgDn" in bar.next.text()) == (width > 300)
