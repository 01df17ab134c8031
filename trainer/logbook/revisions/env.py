"""How Alembic runs the revisions: on the connection that the logbook hands it."""

from __future__ import annotations

from alembic import context

from trainer.logbook.schema import Base

# Alembic fills its context before it runs this file; whoever merely imports it migrates nothing.
if hasattr(context, "config"):
    context.configure(
        connection=context.config.attributes["connection"],
        target_metadata=Base.metadata,
        # SQLite can change a table only by copying it.
        render_as_batch=True,
    )
    with context.begin_transaction():
        context.run_migrations()
