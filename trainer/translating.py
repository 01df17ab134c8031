"""Renews the translations: takes the texts out of the sources, and compiles what is translated.

``python -m trainer.translating`` adds new texts to ``assets/translations/es.ts`` and takes out
those that are gone, compiles ``es.qm`` from it, and says what is still to be translated. English
itself needs a file for what is counted: ``3 coupon(s)`` is said as ``3 coupons``. The tools are
Qt's own and come with PySide6.
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET

import PySide6

from trainer.assets import asset
from trainer.language import LANGUAGES

__all__ = ["catalogue", "compile_file", "counted", "extract", "main"]

_SOURCES: Final = Path(__file__).parent
_COUNTED: Final = re.compile(r"(?<=\w)\(s\)")


def _run(tool: str, *words: str) -> None:
    """Run one of Qt's tools; what it complains of is shown."""
    program = next(Path(PySide6.__file__).parent.glob(f"{tool}*"))
    # A tool may quote a source that is being written in that moment, cut anywhere.
    done = subprocess.run(
        [program, *words], check=False, capture_output=True, text=True, errors="replace"
    )
    if done.returncode:
        raise RuntimeError(f"{tool} failed:\n{done.stdout}{done.stderr}")


def extract(file: Path, language: str) -> None:
    """Bring a ``.ts`` file up to date with the sources; what was translated stays so.

    Raises
    ------
    RuntimeError
        If the tool fails, with what it said.
    """
    sources = sorted(str(path) for path in _SOURCES.rglob("*.py"))
    # Without line numbers: else every change of a source would change this file too.
    settled = ("-locations", "none", "-no-obsolete", "-source-language", "en")
    _run("lupdate", *settled, "-target-language", language, *sources, "-ts", str(file))


def compile_file(file: Path, to: Path) -> None:
    """Compile a ``.ts`` file to the ``.qm`` file that the program loads; half of it is never there.

    Raises
    ------
    RuntimeError
        If the tool fails, with what it said.
    """
    arriving = to.with_suffix(".qm.new")
    _run("lrelease", "-silent", str(file), "-qm", str(arriving))
    arriving.replace(to)


def catalogue(file: Path) -> dict[tuple[str, str], str]:
    """Return what a ``.ts`` file holds: by context and English, the words; "" if there are none.

    Of a text with a number it is the plural.
    """
    found: dict[tuple[str, str], str] = {}
    for context in ET.parse(file).getroot().iter("context"):
        name = context.findtext("name", "")
        for message in context.iter("message"):
            given = message.find("translation")
            forms = [] if given is None else [form.text or "" for form in given.iter("numerusform")]
            plain = "" if given is None or given.get("type") == "unfinished" else given.text or ""
            found[name, message.findtext("source", "")] = forms[-1] if forms else plain
    return found


def counted(file: Path, to: Path) -> None:
    """Write a ``.ts`` file of English with one and several of all that is counted in `file`."""
    found = ET.parse(file)
    root = found.getroot()
    root.set("language", "en")
    for context in list(root.iter("context")):
        for message in list(context.iter("message")):
            text = message.findtext("source", "")
            given = message.find("translation")
            if message.get("numerus") != "yes" or given is None or not _COUNTED.search(text):
                context.remove(message)
                continue
            given.clear()
            for ending in ("", "s"):
                ET.SubElement(given, "numerusform").text = _COUNTED.sub(ending, text)
        if context.find("message") is None:
            root.remove(context)
    ET.indent(found)
    found.write(to, encoding="utf-8", xml_declaration=True)


def main() -> int:
    """Renew every language, and return 0 if nothing is left to translate."""
    left = 0
    for language in LANGUAGES:
        if language == "en":
            continue
        file = asset("translations") / f"{language}.ts"
        extract(file, language)
        compile_file(file, file.with_suffix(".qm"))
        english = file.with_stem("en")
        counted(file, english)
        compile_file(english, english.with_suffix(".qm"))
        for (context, text), words in catalogue(file).items():
            if not words:
                left += 1
                sys.stdout.write(f"{language}: {context}: {text!r}\n")
    sys.stdout.write(f"{left} left to translate\n")
    return 1 if left else 0


if __name__ == "__main__":
    raise SystemExit(main())
