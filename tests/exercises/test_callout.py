"""Callouts: legs and throats of any joint, and an intermittent weld's two ways of being spaced."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exercises.callout import Callout, Intermittent
from exercises.coupon import Coupon
from exercises.tray import TrayError, read_tray
from geometry.joint import Joint
from tests.exercises.trays import COUPON, coupon, document


def called(**callout: object) -> Coupon:
    return coupon(callout={"size": 6, **callout})


def faults(**callout: object) -> list[tuple[str, str]]:
    try:
        read_tray(document({**COUPON, "callout": {"size": 6, **callout}}))
    except TrayError as error:
        return [(f.pointer.removeprefix("/coupons/0/callout"), f.code) for f in error.faults]
    return []


def test_pitch_is_centre_to_centre_and_the_gap_is_clear() -> None:
    """Computed: l = 50, e = 100 is P = 150; three welds are 50 + 2 * 150 = 350 overall."""
    by_gap = called(intermittent={"length": 50, "gap": 100, "count": 3}).callout.intermittent
    by_pitch = called(intermittent={"length": 50, "pitch": 150, "count": 3}).callout.intermittent
    assert by_gap == by_pitch == Intermittent(50.0, 150.0, 3)
    assert by_gap is not None
    assert (by_gap.gap, by_gap.overall) == (100.0, 350.0)
    assert Intermittent(50.0, 150.0).overall is None
    assert Intermittent(50.0, 150.0, 1).overall == 50.0


@given(st.integers(1, 99_999), st.integers(1, 99_999))
def test_a_spacing_in_hundredths_is_exact_both_ways(length: int, gap: int) -> None:
    weld = Intermittent.of_gap(length / 100, gap / 100)
    assert weld.pitch == float(Fraction(length + gap, 100))
    assert weld.gap == gap / 100


def test_inches_are_spaced_in_inches() -> None:
    weld = called(size="1/4 in", intermittent={"length": "2 in", "pitch": "5 in"})
    assert weld.callout.intermittent == Intermittent(50.8, 127.0)
    assert weld.callout.intermittent.gap == 76.2
    assert weld.callout.unit == "in"
    assert called().callout.unit == "mm"


@pytest.mark.parametrize(
    ("callout", "wanted"),
    [
        ({"intermittent": {"length": 50}}, [("/intermittent", "pitch-or-gap")]),
        ({"intermittent": {"length": 50, "pitch": 150, "gap": 100}},
         [("/intermittent", "pitch-or-gap")]),
        ({"intermittent": {"length": 50, "pitch": 50}}, [("/intermittent/pitch", "pitch-short")]),
        ({"intermittent": {"length": 50, "pitch": 50.1}}, []),
        ({"intermittent": {"length": 50, "gap": 0.5}}, []),
        ({"intermittent": {"pitch": 50}}, [("/intermittent/length", "missing-key")]),
        ({"intermittent": {"length": 50, "gap": 9, "count": 0}},
         [("/intermittent/count", "out-of-range")]),
        ({"measure": "throat", "upright_size": 8}, [("/upright_size", "unequal-throat")]),
        ({"upright_size": "8 cm"}, [("/upright_size", "size")]),
        ({"side": "far"}, [("/side", "not-a-choice")]),
        ({"site": 1}, [("/site", "bool-type")]),
        ({"tail": "x" * 201}, [("/tail", "wrong-count")]),
    ],
)  # fmt: skip
def test_what_a_callout_can_t_say(callout: dict[str, object], wanted: object) -> None:
    assert faults(**callout) == wanted


def test_a_callout_s_faults_and_the_section_s_are_said_together() -> None:
    stated = {
        **COUPON,
        "callout": {"size": 6, "intermittent": {"length": 5}},
        "joint": {"angle": 9},
    }
    with pytest.raises(TrayError) as caught:
        read_tray(document(stated))
    assert {fault.code for fault in caught.value.faults} == {"pitch-or-gap", "joint-angle"}


def test_the_marks_of_a_symbol() -> None:
    bare = called().callout
    assert (bare.side, bare.all_around, bare.site, bare.built_out, bare.tail) == (
        "arrow", False, False, False, "",
    )  # fmt: skip
    full = called(side="both", all_around=True, site=True, built_out=True, tail="MAG 135").callout
    assert (full.side, full.all_around, full.site, full.built_out, full.tail) == (
        "both", True, True, True, "MAG 135",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("base", "upright", "throat"),
    # check_values, section 3: a = z1 z2 / sqrt(z1^2 + z2^2).
    [(3, 4, 2.400), (6, 8, 4.800), (6, 9, 4.992), (5, 10, 4.472), (8, 12, 6.656), (6, 6, 4.243)],
)
def test_a_flat_face_s_throat(base: float, upright: float, throat: float) -> None:
    callout = called(size=base, upright_size=upright).callout
    assert callout.throat(Joint()) == pytest.approx(throat, abs=5e-4)
    assert callout.unequal == (base != upright)
    assert (callout.leg("base", Joint()), callout.leg("upright", Joint())) == (base, upright)


@given(st.floats(60.0, 135.0), st.floats(3.0, 20.0))
def test_in_a_skewed_joint_equal_legs_and_nearly_equal_ones_agree(angle: float, leg: float) -> None:
    joint = Joint(angle=angle)
    equal = Callout(leg, "leg", "").throat(joint)
    nearly = Callout(leg, "leg", "", upright_size=leg * (1 + 1e-9)).throat(joint)
    assert equal == pytest.approx(leg * math.cos(math.radians(angle / 2)))
    assert nearly == pytest.approx(equal, rel=1e-6)
    back = Callout(equal, "throat", "").leg("upright", joint)
    assert back == pytest.approx(leg)


def test_a_callout_says_its_words() -> None:
    callout = called(size="1/4  in", upright_size=" 5/16 in").callout
    assert (callout.text, callout.upright_text) == ("1/4 in", "5/16 in")
    assert called(upright_size=8.5).callout.upright_text == "8.5 mm"
