"""What the core says by code, the trainer says in Spanish: every code that the sources hold."""

from __future__ import annotations

import ast
import base64
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from exercises.file_faults import TrayFault
from exercises.tray import check_tray
from exercises.versions import HEAD
from trainer.fault_table import VALUES
from trainer.fault_words import CODES, fault_words
from trainer.language import Speech

ROOT = Path(__file__).resolve().parents[2]
CORE = sorted(path for name in ("geometry", "exercises") for path in (ROOT / name).rglob("*.py"))

MAKERS = {"Fault": 1, "_refuse": 0, "_refused": 0, "_fault": 0, "_choice": 3, "wrong": 0}
"""What makes a fault, and at which place it takes the code, or the place before that."""


def stated_codes() -> Iterator[tuple[str, str]]:
    """Yield each literal code with where it stands."""
    for path in CORE:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else ""
            name = node.func.id if isinstance(node.func, ast.Name) else name
            for given in node.args[MAKERS.get(name, 99) :][:2]:
                code = given.value if isinstance(given, ast.Constant) else None
                if isinstance(code, str) and not code.startswith("/"):
                    said = f"recipe-{code.replace('_', '-')}" if name == "wrong" else code
                    yield said, f"{path.name}:{node.lineno}"
                    break
                if code is None:
                    break


def test_every_code_has_its_words() -> None:
    found = dict(stated_codes())
    assert len(found) > 30
    assert {code: where for code, where in found.items() if code not in CODES} == {}


def coupon(**changed: Any) -> dict[str, Any]:
    whole = {"id": "a", "bead": {"leg_base": 8, "leg_upright": 7}, "callout": {"size": 8}}
    return {**whole, **changed}


def bead(**changed: Any) -> dict[str, Any]:
    return {"leg_base": 8, "leg_upright": 7, **changed}


def trace(*points: list[float]) -> dict[str, Any]:
    return {"bead": {"trace": list(points)}}


def backdrop(jpeg: bytes, **changed: Any) -> dict[str, Any]:
    text = base64.b64encode(jpeg).decode("ascii")
    return {"jpeg": text, "left": 0, "top": 0, "mm_per_pixel": 0.1, **changed}


BROKEN: list[Any] = [
    coupon(joint={"angle": 30}),
    coupon(joint={"base_thickness": 0}),
    coupon(joint={"root_opening": -1}),
    coupon(bead=bead(leg_base=70)),
    coupon(bead=bead(crown=40)),
    coupon(bead=bead(overlap_base=1, undercut_base={"depth": 0.5, "width": 2})),
    coupon(bead=bead(undercut_base={"depth": 50, "width": 2})),
    coupon(bead=bead(crown=4.5, overlap_base=1)),
    coupon(**trace([8, 0])),
    coupon(**trace([8, 3], [0, 7])),
    coupon(**trace([8, 0], [4, -4], [0, 7])),
    coupon(spatter=[{"on": "base", "at": 2, "height": 0.5}]),
    coupon(spatter=[{"on": "base", "at": 20, "height": 30}]),
    coupon(spatter=[{"on": "base", "at": 20, "height": 1}, {"on": "base", "at": 21, "height": 1}]),
    coupon(rules="nobody's"),
    coupon(angel=1),
    coupon(x=1, joint={"angel": 90}),
    coupon(id=""),
    coupon(id=5),
    coupon(task="guess"),
    coupon(extent=2),
    coupon(extent=0),
    coupon(eye_limit=-1),
    coupon(bead=bead(leg_base="8")),
    coupon(bead=5),
    coupon(spatter={}),
    coupon(title={}),
    coupon(title={"en": 5}),
    coupon(title={"?": "x"}),
    coupon(title=5),
    coupon(title="x" * 5000),
    coupon(callout={"size": "eight"}),
    coupon(callout={"size": -8}),
    coupon(callout={}),
    coupon(hints=["h"] * 500),
    coupon(backdrop=backdrop(b"", left=5000)),
    coupon(backdrop={**backdrop(b""), "jpeg": "?"}),
    coupon(backdrop=backdrop(b"GIF89a")),
    coupon(backdrop=backdrop(bytes.fromhex("ffd8 ffc0 000b 08 0010 0020 01 011100"))),
    coupon(backdrop=backdrop(bytes.fromhex("ffd8 ffc0 000b 08 ea60 ea60 01 011100 ffd9"))),
]
TEXTS = [
    b"", b"{", b'{"a" 1}', b"[1,]", b"\xff", b"\xef\xbb\xbf{}", b"[" * 60, b"5", b"{}",
    b'{"format": "x", "version": "y"}', b'{"format": "toe-and-throat/tray", "version": 99}',
    b'{"a": 1, "a": NaN}', b'{"a": "\\ud800"}', b"{} {}",
]  # fmt: skip


@pytest.fixture(scope="module")
def faults(tmp_path_factory: pytest.TempPathFactory) -> list[TrayFault]:
    """One fault or more of most codes."""
    folder = tmp_path_factory.mktemp("broken")
    found = check_tray(folder / "none.tray.json") + check_tray(folder)
    for number, broken in enumerate([*BROKEN, None]):
        coupons = [coupon(), coupon()] if broken is None else [broken]
        document = {"format": "toe-and-throat/tray", "version": HEAD, "coupons": coupons}
        file = folder / f"{number}.tray.json"
        file.write_text(json.dumps(document), encoding="utf-8")
        found += check_tray(file)
    for number, text in enumerate(TEXTS):
        file = folder / f"text-{number}.tray.json"
        file.write_bytes(text)
        found += check_tray(file)
    return found


@pytest.fixture
def speech(qapp: QApplication) -> Iterator[Speech]:
    before = QLocale()
    speech = Speech(qapp)
    yield speech
    speech.speak("en")
    QLocale.setDefault(before)


def plain(text: str) -> str:
    """Figures as the trainer rounds them, with a hyphen for a minus."""
    text = text.replace("\u2212", "-")
    return re.sub(r"\d+\.\d+", lambda match: f"{float(match[0]):g}", text)


def test_most_codes_are_tried(faults: list[TrayFault]) -> None:
    assert len({fault.code for fault in faults}) >= 35


def test_in_english_the_words_are_the_core_s(speech: Speech, faults: list[TrayFault]) -> None:
    speech.speak("en")
    said = [(fault.code, *map(plain, fault_words(fault))) for fault in faults]
    assert said == [(fault.code, plain(named(fault.text)), plain(fault.right)) for fault in faults]


def named(text: str) -> str:
    """What the core says, with the names of things in place of a file's keys."""
    names = {**VALUES, "root_opening": "the root opening"}
    key, _, rest = text.partition(" ")
    return f"{names[key]} {rest}" if key in names else text


def test_in_spanish_no_english_is_left(speech: Speech, faults: list[TrayFault]) -> None:
    speech.speak("es")
    english = re.compile(
        r"\b(the|is|are|of|than|more|less|has|have|with|one|least|most|key|number|file|it|or|and)\b"
    )
    for fault in faults:
        wrong, right = fault_words(fault)
        assert wrong != fault.text, fault.code
        for words in (wrong, right):
            bare = re.sub(r"""["'][^"']*["']|\ba 4 mm""", "", words)
            assert not english.search(bare), (fault.code, words)
