"""Rules files on the command line: checked, and their schema printed."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from exercises.rules.shipped import rules_text
from trainer.commands import run


def test_rules_files_are_checked_among_trays(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = rules_text("iso-5817-c").decode().replace('"iso-5817-c"', '"shop"')
    sound, faulty = tmp_path / "a.rules.json", tmp_path / "b.rules.json"
    sound.write_text(text, encoding="utf-8")
    faulty.write_text(text.replace('"at_least": 100', '"at_least": 300'), encoding="utf-8")
    assert run(["check", str(sound)]) == 0
    assert capsys.readouterr().out == ""
    assert run(["check", str(sound), str(faulty)]) == 2
    said = capsys.readouterr().out
    assert said.startswith(f"{faulty}: /limits/2/at_least: is 300")
    assert said.count("\n") == 1


def test_the_schema_of_rules_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["schema", "--rules"]) == 0
    schema = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(schema).validate(json.loads(rules_text("aws-d1.1-static")))
    assert run(["schema"]) == 0
    assert json.loads(capsys.readouterr().out)["title"] != schema["title"]
