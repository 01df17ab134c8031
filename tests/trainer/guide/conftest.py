"""A bench with the guide at it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.trainer.bench.conftest import Person, person, tray
from trainer.guide.guiding import Guiding

__all__ = ["guiding", "person", "tray"]


@pytest.fixture
def guiding(person: Person) -> Guiding:
    """A guide that has just been offered, to somebody who has read the first card."""
    person.frame.settings = replace(person.frame.settings, guide_done=False)
    guiding = Guiding(person.frame, person.screen)
    guiding.offer()
    return guiding
