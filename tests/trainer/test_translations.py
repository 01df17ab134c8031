"""Every text of the sources is translated, and what is translated is what the program loads."""

from __future__ import annotations

import ast
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from exercises.tray import load_tray
from trainer.assets import asset
from trainer.bench.first_picture import rack_told
from trainer.figures import figures, length_words, number_words
from trainer.language import (
    LANGUAGES,
    PSEUDO,
    FileTranslator,
    Speech,
    language_for,
    pseudo,
    spoken,
)
from trainer.translating import catalogue, compile_file, counted, extract

ROOT = Path(__file__).resolve().parents[2]
SPANISH = asset("translations", "es.ts")
WORDS = catalogue(SPANISH)


@pytest.fixture
def speech(qapp: QApplication) -> Iterator[Speech]:
    before = QLocale()
    speech = Speech(qapp)
    yield speech
    speech.speak("en")
    QLocale.setDefault(before)


@pytest.fixture(scope="module")
def fresh(tmp_path_factory: pytest.TempPathFactory) -> dict[tuple[str, str], str]:
    """What the file of translations becomes when the texts are taken out of the sources now."""
    file = tmp_path_factory.mktemp("ts") / "es.ts"
    shutil.copy(SPANISH, file)
    extract(file, "es")
    return catalogue(file)


def test_no_text_of_the_sources_is_missing(fresh: dict[tuple[str, str], str]) -> None:
    """`python -m trainer.translating` adds what is."""
    assert sorted(fresh.keys() - WORDS.keys()) == []


def test_nothing_is_kept_that_no_source_says(fresh: dict[tuple[str, str], str]) -> None:
    assert sorted(WORDS.keys() - fresh.keys()) == []


def test_every_text_is_translated() -> None:
    assert [key for key, words in WORDS.items() if not words] == []
    assert len(WORDS) > 500


def test_the_compiled_file_says_the_same(qapp: QApplication) -> None:
    compiled = QTranslator()
    assert compiled.load("es.qm", str(asset("translations")))
    # Of what is counted the catalogue has the plural.
    said = {
        key: compiled.translate(*key, "", 2) if "%n" in key[1] else compiled.translate(*key)
        for key in WORDS
    }
    assert {key: (said[key], words) for key, words in WORDS.items() if said[key] != words} == {}


def test_english_knows_one_from_several(speech: Speech, tmp_path: Path) -> None:
    """`python -m trainer.translating` writes its file anew."""
    counted(SPANISH, tmp_path / "en.ts")
    assert catalogue(tmp_path / "en.ts") == catalogue(asset("translations", "en.ts"))
    speech.speak("en")
    said = QCoreApplication.translate("LogbookScreen", "%n call(s) kept aside.", "", 1)
    assert said == "1 call kept aside."
    said = QCoreApplication.translate("LogbookScreen", "%n call(s) kept aside.", "", 3)
    assert said == "3 calls kept aside."


def test_no_text_hides_in_an_f_string() -> None:
    """Qt's tool doesn't look into them."""
    hidden = []
    for path in sorted((ROOT / "trainer").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            for inner in ast.walk(node) if isinstance(node, ast.JoinedStr) else ():
                called = inner.func if isinstance(inner, ast.Call) else None
                name = getattr(called, "attr", getattr(called, "id", ""))
                if name in ("tr", "translate", "QT_TRANSLATE_NOOP"):
                    hidden.append(f"{path.name}: {ast.unparse(inner)}")
    assert hidden == []


def test_what_is_counted_is_said_by_a_classs_own_tr() -> None:
    """Of a `translate` that counts Qt's tool sees no plural, or nothing at all."""
    unseen = []
    for path in sorted((ROOT / "trainer").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            called = node.func if isinstance(node, ast.Call) else None
            name = getattr(called, "attr", getattr(called, "id", ""))
            if not isinstance(node, ast.Call) or name != "translate" or len(node.args) < 4:
                continue
            if isinstance(node.args[0], ast.Constant):
                unseen.append(f"{path.name}: {ast.unparse(node)}")
    assert unseen == []


def test_what_is_filled_in_is_the_same() -> None:
    def places(text: str) -> list[str]:
        return sorted(set(re.findall(r"\{[^}]*\}|%n", text)))

    wrong = [key for key, words in WORDS.items() if words and places(key[1]) != places(words)]
    assert wrong == []


def test_a_menu_letter_stays_one() -> None:
    def letters(text: str) -> int:
        return len(re.findall(r"&(?=\w)", text.replace("&&", "")))

    wrong = [key for key, words in WORDS.items() if words and letters(key[1]) != letters(words)]
    assert wrong == []


def test_spanish_figures_have_a_comma_and_no_point() -> None:
    # A moment as files state it (ISO 8601) is the same in every language.
    said = (re.sub(r"T\d\d:\d\d:\d\d\.\d+", "", words) for words in WORDS.values())
    wrong = [words for words in said if re.search(r"\d\.\d", words)]
    assert [words for words in wrong if "A2.4" not in words] == []


def test_one_word_for_one_thing() -> None:
    """What the glossary of DEVELOPERS.md gave up: other words for the same thing would puzzle."""
    given_up = re.compile(
        r"pierna|leng\u00fceta|socavad|solapamiento|hueca\b|pie del cord|chafl\u00e1n"
        r"|borde (?:de cateto|de garganta|largo|del extremo)"
    )
    files = [path for name in ("exercises", "assets/trays") for path in (ROOT / name).rglob("*.*")]
    texts = [*WORDS.values()]
    texts += [path.read_text("utf-8") for path in files if path.suffix in (".py", ".json")]
    assert [match[0] for text in texts for match in given_up.finditer(text)] == []


@pytest.mark.parametrize(
    ("chosen", "system", "language"),
    [
        (None, "es_MX", "es"), (None, "es", "es"), (None, "de_DE", "en"), (None, "C", "en"),
        ("en", "es_ES", "en"), ("es", "en_GB", "es"), ("xx", "es_ES", "es"), (PSEUDO, "es", PSEUDO),
    ],
)  # fmt: skip
def test_what_was_chosen_is_spoken_or_else_what_the_system_speaks(
    chosen: str | None, system: str, language: str
) -> None:
    assert language_for(chosen, system) == language


def test_spanish_is_spoken_and_english_again(speech: Speech) -> None:
    def word() -> str:
        return QCoreApplication.translate("Bench", "Held off")

    assert speech.speak("es")
    assert not speech.speak("es")
    assert (word(), spoken()) == ("Apartada", "es_ES")
    # Qt's own words too.
    assert QCoreApplication.translate("QPlatformTheme", "Close") == "Cerrar"
    assert speech.speak("en")
    assert (word(), spoken()) == ("Held off", "en_GB")


def test_a_file_that_is_written_anew_meanwhile_does_no_harm(tmp_path: Path) -> None:
    """In a process of its own: Qt's own way of loading ends it with a bus error."""
    file = tmp_path / "es.qm"
    compile_file(SPANISH, file)
    assert [path.name for path in tmp_path.iterdir()] == ["es.qm"]
    code = (
        "import sys\n"
        "from pathlib import Path\n"
        "from PySide6.QtCore import QCoreApplication\n"
        "from trainer.language import FileTranslator\n"
        "app, file = QCoreApplication([]), Path(sys.argv[1])\n"
        "translator = FileTranslator(file, app)\n"
        "app.installTranslator(translator)\n"
        "file.write_bytes(b'')\n"
        "assert app.translate('Bench', 'Held off') == 'Apartada'\n"
    )
    command = [sys.executable, "-c", code, str(file)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=ROOT)
    assert done.returncode == 0, done.stderr


def test_a_file_that_is_damaged_or_gone_says_nothing(qapp: QApplication, tmp_path: Path) -> None:
    half = tmp_path / "half.qm"
    half.write_bytes(asset("translations", "es.qm").read_bytes()[:5000])
    for file in (half, tmp_path / "gone.qm"):
        assert FileTranslator(file).translate("Bench", "Held off") == ""


@pytest.mark.parametrize(
    ("language", "metric", "decimal", "fraction", "angle"),
    [
        ("en", "6.75 mm", "0.266 in", "1 5/16 in", "82.5"),
        ("es", "6,75 mm", "0,266 in", "1 5/16 in", "82,5"),
    ],
)
def test_figures_go_with_the_language(
    speech: Speech, language: str, metric: str, decimal: str, fraction: str, angle: str
) -> None:
    speech.speak(language)
    assert length_words(6.75, "mm") == metric
    assert length_words(6.75, "in") == decimal
    assert length_words(1.3125 * 25.4, "in") == fraction
    assert number_words(82.5) == angle
    assert figures("8.") == "8."


def test_pseudo_english_shows_what_a_translation_reaches(speech: Speech) -> None:
    speech.speak(PSEUDO)
    assert QCoreApplication.translate("Bench", "Held off") == pseudo("Held off") != "Held off"
    assert QCoreApplication.translate("QPlatformTheme", "Close") == pseudo("Close")
    assert QCoreApplication.translate("Bench", "never written") == "never written"
    assert len(pseudo("Held off")) >= 1.35 * len("Held off")


@pytest.mark.parametrize("path", sorted(asset("trays").glob("*.tray.json")), ids=lambda p: p.name)
def test_shipped_trays_speak_every_language(path: Path) -> None:
    tray = load_tray(path)
    texts = [tray.title]
    for coupon in tray.coupons:
        texts += [coupon.title, *coupon.hints, *([coupon.teaches] if coupon.teaches else [])]
    for text in texts:
        tags = dict(text.versions)
        assert [tag for tag in LANGUAGES if not tags.get(tag)] == []
        assert tags["en"] != tags["es"]


def test_leaves_hang_where_the_first_paint_shows_them_in_every_language(speech: Speech) -> None:
    first = load_tray(asset("trays", "heron-footbridge.tray.json")).coupons[0]
    insets = []
    for language in LANGUAGES:
        speech.speak(language)
        insets.append(rack_told(first)["insets"])
    assert insets[1:] == insets[:-1]
