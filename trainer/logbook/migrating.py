"""Bringing a logbook's tables to the version that this program knows, by Alembic.

A module of its own, since Alembic takes a third of a second to load and is needed only for a file
that is new or old.
"""

from __future__ import annotations

import io
from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy.engine import Connection, Engine

from trainer.logbook.opening import HEAD

__all__ = ["bring_up_to_date", "upgrade", "upgrade_as_sql"]


def bring_up_to_date(engine: Engine) -> None:
    """Run every revision that the file behind `engine` lacks, all or none of them."""
    with engine.begin() as connection:
        upgrade(connection)


def upgrade(connection: Connection, revision: str = HEAD) -> None:
    """Run every revision that is lacking, in the transaction that is under way."""
    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, revision)


def upgrade_as_sql() -> str:
    """Return what makes all tables in an empty PostgreSQL database."""
    written = io.StringIO()
    config = _config(written)
    config.attributes["dialect"] = "postgresql"
    command.upgrade(config, HEAD, sql=True)
    return written.getvalue()


def _config(output: io.StringIO | None = None) -> Config:
    config = Config(output_buffer=output)
    folder = str(Path(__file__).parent / "revisions")
    # It would take a per cent sign in a folder's name for one of its own.
    config.set_main_option("script_location", folder.replace("%", "%%"))
    return config
