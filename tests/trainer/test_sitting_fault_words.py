"""What is wrong with sittings, results and overrides is said in both languages."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from exercises.file_faults import FileError, TrayFault
from exercises.maker import Recipe
from exercises.sitting.marking import LONGEST_REASON, override_faults
from exercises.sitting.plan import Chosen, Entrant, Made
from exercises.sitting.plan_file import read_plan
from exercises.sitting.result_file import read_result
from exercises.text import NO_TEXT, Text
from tests.exercises.sitting.specimens import SHOP, chosen, plan
from tests.exercises.sitting.test_files import HANDED_IN, SITTING, changed
from trainer.fault_words import CODES, fault_words
from trainer.language import Speech

PLANS: list[dict[str, Any]] = [
    {"id": ""}, {"title": NO_TEXT}, {"seed": -1}, {"parts": ()}, {"minutes": 0.0},
    {"pass_mark": math.nan}, {"skill_marks": {"seat": 2.0}},
    {"parts": (chosen({"id": "a", "task": "read", "bead": {"leg_base": 8, "leg_upright": 7},
                       "callout": {"size": 8}}),), "skill_marks": {"legs": 0.5}},
    {"entrants": (Entrant(""),)}, {"entrants": (Entrant("a"), Entrant("A"))},
    {"entrants": (Entrant("a", -1.0),)},
    {"entrants": tuple(Entrant(f"k-{n}") for n in range(2001))},
    {"parts": (Chosen(Text.of("T"), ()),)},
    {"parts": (Chosen(Text.of("T"), chosen().coupons),)},
    {"parts": (Made(Recipe(300)), Made(Recipe(300)))},
]  # fmt: skip
SITTINGS: list[tuple[str, Any]] = [
    ("/parts/2", {}), ("/parts/0/rules", [SHOP, SHOP]), ("/version", 9), ("/helps", ["x"]),
]  # fmt: skip
RESULTS: list[tuple[str, Any]] = [
    ("/id", "5"), ("/code", "z"), ("/items/0/number", 7), ("/items/0/slot", "1-002"),
    ("/started", "x"), ("/items/0/handling/1", []), ("/items/0/attempt", None),
    ("/items/0/attempt/coupon", "z"), ("/rules", []), ("/items/0/digest", "0" * 64),
    ("/tray_version", 99),
]  # fmt: skip
OVERRIDES: list[tuple[str, float, str, str]] = [
    ("x", 1.0, "a", "b"), ("seat", 2.0, "a", "b"), ("critical", 0.5, "a", "b"),
    ("seat", 1.0, "", "b"), ("seat", 1.0, "x" * (LONGEST_REASON + 1), "b"), ("seat", 1.0, "a", ""),
]  # fmt: skip


@pytest.fixture(scope="module")
def faults() -> list[TrayFault]:
    """One fault or more of every code of sittings, results and overrides."""
    plain = [fault for changes in PLANS for fault in plan(**changes).faults()]
    plain += [fault for given in OVERRIDES for fault in override_faults(*given)]
    found = [TrayFault.of("", fault) for fault in plain]
    for read, document, places in (
        (read_plan, SITTING, SITTINGS),
        (read_result, HANDED_IN, RESULTS),
    ):
        for pointer, value in places:
            with pytest.raises(FileError) as caught:
                read(json.dumps(changed(document, pointer, value)).encode(), "")
            found += caught.value.faults
    return found


@pytest.fixture
def speech(qapp: QApplication) -> Iterator[Speech]:
    before = QLocale()
    speech = Speech(qapp)
    yield speech
    speech.speak("en")
    QLocale.setDefault(before)


def test_every_code_is_tried(faults: list[TrayFault]) -> None:
    told = {fault.code for fault in faults}
    ours = {code for code in CODES if code.startswith(("sitting-", "result-", "override-"))}
    assert {code for code in ours if "/" not in code} - told == set()


def test_in_english_the_words_are_the_core_s(speech: Speech, faults: list[TrayFault]) -> None:
    speech.speak("en")
    said = [(fault.code, *fault_words(fault)) for fault in faults]
    assert said == [(fault.code, fault.text, fault.right) for fault in faults]


def test_in_spanish_no_english_is_left(speech: Speech, faults: list[TrayFault]) -> None:
    speech.speak("es")
    english = re.compile(r"\b(the|is|are|of|than|more|less|has|with|one|least|most|it|or|and)\b")
    for fault in faults:
        wrong, right = fault_words(fault)
        assert wrong != fault.text, fault.code
        for words in (wrong, right):
            bare = re.sub(r"""["'][^"']*["']""", "", words)
            assert not english.search(bare), (fault.code, words)
