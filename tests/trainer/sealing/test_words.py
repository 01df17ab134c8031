"""What is said of sealed files and journals: every trouble has words, with all that they name."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

import pytest

from trainer.sealing.journal import Hindrance, JournalError
from trainer.sealing.key import SealError, Trouble
from trainer.sealing.words import journal_words, seal_words

PARAMS: dict[str, dict[str, float | str]] = {
    "newer": {"version": 2, "known": 1},
    "kind": {"kind": "result", "asked": "sitting"},
    "too large": {"mib": 64},
    "memory": {"mib": 128},
    "changed": {"line": 3},
}


@pytest.mark.parametrize("trouble", get_args(Trouble))
def test_every_trouble_has_words(trouble: Trouble) -> None:
    what, then = seal_words(SealError(trouble, **PARAMS.get(trouble, {})))
    assert len(what) > 10
    assert len(then) > 10
    assert "{" not in what + then


@pytest.mark.parametrize("hindrance", get_args(Hindrance))
def test_every_hindrance_has_words(hindrance: Hindrance) -> None:
    what, then = journal_words(JournalError(hindrance, Path("a {b}.sitting-journal"), "{full}"))
    assert len(what) > 10
    assert len(then) > 10
    if hindrance == "unwritable":
        assert "a {b}.sitting-journal: {full}" in then


def test_what_is_newer_says_both_versions() -> None:
    assert seal_words(SealError("newer", version=3, known=1))[1].count("3") == 1
