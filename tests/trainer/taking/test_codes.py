"""A code as it is typed at the start of a sitting: meant as it was given out, and a slip told."""

from __future__ import annotations

from pathlib import Path

import pytest

from exercises.sitting.plan import Entrant
from tests.trainer.taking.conftest import Program, plan_of, sealed
from trainer.sealing.key import USUAL, Key
from trainer.taking.opening import Opened
from trainer.taking.state import Taking, code_trouble, meant_code


def taking(*codes: str) -> Taking:
    plan = plan_of(1, entrants=tuple(Entrant(code) for code in codes))
    return Taking().unsealed(Opened(Path("a.sitting"), plan, Key(USUAL, b"", b"")))


@pytest.mark.parametrize("typed", ["AAA-AAN", "aaa-aan", " AAAAAN ", "aaa aan", "aaa aa n"])
def test_a_code_on_the_list_is_meant_with_its_hyphen_or_without(typed: str) -> None:
    listed = taking("AAA-AAN", "K-07")
    assert code_trouble(listed, meant_code(listed, typed)) is None
    assert listed.opened is not None
    assert meant_code(listed, typed) == "AAA-AAN"


def test_a_code_of_the_school_s_own_is_meant_as_it_is() -> None:
    assert meant_code(taking("AAAAAN", "AAA-AAN"), "AAAAAN") == "AAAAAN"
    assert meant_code(taking("K-07"), "aaaaan") == "aaaaan"
    # Where anybody may sit nobody knows which codes there are.
    assert meant_code(taking(), "AAAAAN") == "AAAAAN"
    assert meant_code(taking(), "aaa-aan") == "AAA-AAN"
    assert meant_code(taking(), "kestrel 7") == "kestrel 7"


@pytest.mark.parametrize(
    ("codes", "typed", "trouble"),
    [
        ((), "AAA-ACN", "mistyped"),
        (("AAA-AAN",), "AAA-ACN", "mistyped"),
        (("AAA-AAN",), "K-07", "not listed"),
        ((), "AAA-AAN", None),
        ((), "BUS-012", None),
        ((), "", "empty"),
    ],
)
def test_a_slip_in_a_code_is_told(codes: tuple[str, ...], typed: str, trouble: str | None) -> None:
    assert code_trouble(taking(*codes), typed) == trouble


def test_a_slip_is_told_where_anybody_may_sit(program: Program) -> None:
    program.open(sealed(program.folder, plan_of(1)), "AAA-ACN")
    assert "A sign of it is wrong" in program.words(program.page)
    assert program.page.state.step == "code"


def test_whoever_leaves_the_hyphen_out_sits_as_they_are_listed(program: Program) -> None:
    plan = plan_of(1, entrants=(Entrant("AAA-AAN", extra=0.25),))
    program.open(sealed(program.folder, plan), "aaaaan")
    assert program.page.state.code == "AAA-AAN"
    assert "You have 50 minutes" in program.words(program.page)
