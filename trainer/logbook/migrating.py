"""Bringing a logbook's tables to the version that this program knows, by Alembic.

A module of its own, since Alembic takes a third of a second to load and is needed only for a file
that is new or old.
"""

from __future__ import annotations

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy.engine import Engine

from trainer.logbook.store import HEAD

__all__ = ["bring_up_to_date"]


def bring_up_to_date(engine: Engine) -> None:
    """Run every revision that the file behind `engine` lacks, all or none of them."""
    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "revisions"))
    with engine.begin() as connection:
        config.attributes["connection"] = connection
        command.upgrade(config, HEAD)
