"""A program that is killed again and again in the midst of a sitting."""

from __future__ import annotations

from pathlib import Path

from tests.measure.sitting_kills import kill_often


def test_no_kill_loses_an_answer_or_makes_the_time_wrong(tmp_path: Path) -> None:
    """Eight kills here; tests.measure.sitting_kills does two hundred."""
    found = kill_often(tmp_path, 8, seed=7)
    assert found.is_sound, found
    assert found.acknowledged > 8
