"""What the bench says to a screen reader: contacts before a call, readings after it."""

from __future__ import annotations

import re

import pytest
from PySide6.QtCore import Qt

from geometry import seat
from geometry.bead import Bead, Overlap, Spatter, Undercut
from geometry.joint import Joint
from geometry.leaf import leaf_of_mark
from geometry.pose import Pose
from geometry.reading import read
from geometry.section import Section
from tests.trainer.bench.conftest import Person
from trainer.bench.spoken import parts_of, shown_words

TELLS = re.compile(r"daylight|touch|held off|not seated|gap", re.IGNORECASE)


@pytest.fixture
def said(person: Person) -> list[str]:
    """All that is announced from now on."""
    lines: list[str] = []
    person.screen.announced.connect(lines.append)
    return lines


def spoken(person: Person) -> str:
    """All that a screen reader can find at the picture now."""
    canvas = person.canvas
    parts = [f"{part.name} {part.says}" for part in canvas.parts]
    return " ".join([canvas.accessibleName(), canvas.accessibleDescription(), *parts])


def test_before_a_call_contacts_are_told_and_after_it_the_reading(
    person: Person, said: list[str]
) -> None:
    person.key(Qt.Key.Key_8)
    person.key(Qt.Key.Key_Space)
    person.settle()
    assert said[-1].startswith("8 mm, leg edge: long edge on base")
    person.key(Qt.Key.Key_D)
    person.click(person.button("Convex"))
    person.click(person.button("Accept"))
    assert not TELLS.search(" ".join([*said, spoken(person)]))
    person.key(Qt.Key.Key_Return)
    assert person.state.phase == "debrief"
    assert said[-1].startswith("On record")
    shown = person.screen.review._told[0].shown
    assert f"8 mm, leg edge, Upright leg: {shown_words(shown, 'mm')}." in said[-1]
    assert person.canvas.accessibleDescription() == said[-1]


def test_the_parts_say_where_they_are_and_what_they_touch() -> None:
    section = Section.of(Joint(), Bead(8.0, 8.0))
    leaf = leaf_of_mark("8 mm")
    home = seat.press_home(section, leaf, Pose(6.0, 6.0))
    told = {part.key: part for part in parts_of(section, leaf, home.pose, home.touches, "mm")}
    assert told["leaf"].name == "Leaf 8 mm, leg edge"
    assert "not turned over" in told["leaf"].says
    assert told["tip"].says.startswith("about 0 mm right and 8 mm up from the root")
    assert "tip on upright" in told["tip"].says


def test_everything_that_one_sees_of_a_section_is_named() -> None:
    bead = Bead(8.0, 8.0, 0.4, undercut_upright=Undercut(0.6, 2.0), overlap_base=Overlap(1.6))
    spatter = (Spatter("base", 16.0, 0.8), Spatter("base", 20.0, 0.6))
    (part,) = parts_of(Section.of(Joint(), bead, spatter), None, None, None, "mm")
    assert part.says == "base, upright, bead, lip on the base, spatter, groove in the upright"


@pytest.mark.parametrize("crown", [-0.6, 0.0, 0.6])
@pytest.mark.parametrize("leg", [7.85, 7.95, 8.0, 8.05, 8.15])
@pytest.mark.parametrize("edge", ["leg", "throat"])
def test_no_figure_tells_what_the_eye_has_to(leg: float, crown: float, edge: str) -> None:
    """A weld a little too small and one a little too large sound the same but for contacts."""
    leaf = leaf_of_mark("8 mm")
    leaf = leaf if edge == "leg" else leaf.swapped()
    said = set()
    for other in (leg, 8.0):
        section = Section.of(Joint(), Bead(other, other, crown))
        pressed = seat.press_home(section, leaf, Pose(6.0, 6.0))
        said.add(parts_of(section, leaf, pressed.pose, None, "mm"))
        assert read(section, leaf, pressed.pose) is not None
    assert len(said) == 1
