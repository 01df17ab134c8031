"""What a state is worth, over everything that the knobs can make."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exercises.doubt import doubt
from geometry.joint import MEMBERS
from geometry.leaf import Edge, rack
from geometry.lengths import Unit
from trainer.corners.pressing import PLACES, Pressing
from trainer.corners.state import Corners, Pair
from trainer.corners.verdict import CODES, TRUSTS, Verdict
from trainer.corners.words import heading, sentence, spoken, trust_word

MARKS = [leaf.mark for leaf in rack("metric")]


@st.composite
def states(draw: st.DrawFn) -> Corners:
    """Any state; half of them near the leaf's own size, where verdicts turn."""
    mark = draw(st.sampled_from(MARKS))
    size = next(leaf.size for leaf in rack("metric") if leaf.mark == mark)
    near = st.floats(max(3.0, size - 0.8), min(25.0, size + 0.8))
    leg = near | st.floats(3.0, 25.0)
    base = draw(leg)
    upright = draw(st.just(base) | leg)
    angle = draw(st.just(90.0) | st.floats(60.0, 135.0))
    crown = st.just(0.0) | st.floats(-4.0, 4.0)
    on = draw(st.sampled_from(MEMBERS))
    return Corners(base, upright, draw(crown), draw(crown), angle, mark, on, equal=False)


@given(states())
@settings(max_examples=120)
def test_trust_is_the_truth(state: Corners) -> None:
    """A comfort is false only if the size is too small; an honest one is never too small."""
    for corner in Pressing().corners(state):
        shown, verdict = corner.reading.state, corner.verdict
        size, wanted = corner.measures.effective_size, corner.leaf.size
        least = wanted - doubt(corner.edge)
        assert verdict.code in CODES
        assert verdict.code.startswith(f"{corner.edge}-")
        assert (verdict.trust == "silent") == (shown == "not seated")
        if verdict.trust == "false comfort":
            assert shown in ("touch", "held off")
            assert size < least
        elif shown in ("touch", "held off"):
            assert size >= least
        if shown == "daylight":
            assert (verdict.trust == "false alarm") == (size >= wanted - 1e-6)


@given(states())
@settings(max_examples=40)
def test_every_sentence_is_whole(state: Corners) -> None:
    for corner in Pressing().corners(state):
        units: tuple[Unit, ...] = ("mm", "in")
        for unit in units:
            words = sentence(corner.verdict, unit)
            assert words.endswith(".")
            assert "{" not in words
            assert len(words) < 130
            assert words in spoken(corner, unit)
            assert heading(corner) in spoken(corner, unit)


@pytest.mark.parametrize("code", CODES)
def test_every_code_has_words(code: str) -> None:
    numbers = ("leg", "other_leg", "short_leg", "square", "size", "gap", "angle", "crown")
    params: dict[str, float | str] = dict.fromkeys(numbers, 8.0)
    params |= {"leaf": "8 mm", "member": "base", "other": "upright"}
    assert "{" not in sentence(Verdict(code, "honest", params), "mm")


def test_every_trust_has_a_word() -> None:
    assert len({trust_word(trust) for trust in TRUSTS}) == len(TRUSTS)


def verdict(state: Corners, pair: Pair, edge: Edge) -> tuple[str, str]:
    found = Pressing().corners(state)[PLACES.index((pair, edge))].verdict
    return found.code, found.trust


@pytest.mark.parametrize(
    ("state", "pair", "edge", "code", "trust"),
    [
        (Corners(), "crown", "leg", "leg-touch-convex", "honest"),
        (Corners(), "crown", "throat", "throat-off-convex", "half"),
        (Corners(), "hollow", "leg", "leg-touch-false-hollow", "false comfort"),
        (Corners(), "hollow", "throat", "throat-daylight-hollow", "honest"),
        # Legs parted: the leg that is looked at is there, the other one is short.
        (
            Corners(6.5, 8.0, equal=False),
            "crown",
            "leg",
            "leg-touch-other-short",
            "false comfort",
        ),
        (
            Corners(10.0, 6.67, 0.0, equal=False),
            "crown",
            "throat",
            "throat-touch-false-parted",
            "false comfort",
        ),
        # A short leg under a high crown: the spur is content, the legs are not.
        (Corners(7.0, 7.0, 1.5), "crown", "throat", "throat-off-false-legs", "false comfort"),
        (Corners(7.0, 7.0, 0.7), "crown", "throat", "throat-touch-false-legs", "false comfort"),
        # Larger than the leaf.
        (Corners(9.0, 9.0), "crown", "leg", "leg-off", "honest"),
        (Corners(9.0, 9.0), "hollow", "leg", "leg-off-false-hollow", "false comfort"),
        (Corners(11.0, 11.0), "hollow", "leg", "leg-off-hollow", "half"),
        (Corners(11.0, 11.0, 0.0), "crown", "throat", "throat-off-flat", "honest"),
        # Smaller than the leaf.
        (Corners(6.0, 6.0), "crown", "leg", "leg-daylight", "honest"),
        (Corners(6.0, 6.0, 0.0), "crown", "throat", "throat-daylight-flat", "honest"),
        (Corners(6.0, 6.0), "hollow", "leg", "leg-daylight-hollow", "half"),
        # Far larger: legs beneath the edges, a crown that fills the relief.
        (
            Corners(12.6, 12.6, hollow=-3.6, mark="4 mm"),
            "hollow",
            "leg",
            "leg-carried-leg",
            "silent",
        ),
        (Corners(5.0, 5.0, 3.0, mark="4 mm"), "crown", "leg", "leg-off", "honest"),
        (Corners(14.0, 14.0, hollow=-4.0), "hollow", "throat", "throat-carried-legs", "silent"),
        # Out of square.
        (Corners(angle=75.0), "crown", "leg", "leg-leaning", "silent"),
        (Corners(angle=115.0), "crown", "leg", "leg-daylight-skewed", "false alarm"),
        (Corners(angle=115.0), "hollow", "leg", "leg-daylight-skewed-short", "half"),
        (Corners(angle=115.0), "crown", "throat", "throat-skewed", "silent"),
    ],
)
def test_situations(state: Corners, pair: Pair, edge: Edge, code: str, trust: str) -> None:
    """Each is worked out by hand from section 3 of the design."""
    assert verdict(state, pair, edge) == (code, trust)
