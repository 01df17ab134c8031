"""How Alembic runs the revisions: on the connection that the logbook hands it."""

from __future__ import annotations

from alembic import context

from trainer.logbook.schema import Base

# Alembic fills its context before it runs this file; whoever merely imports it migrates nothing.
if hasattr(context, "config"):
    if context.is_offline_mode():
        # Only what would be run is asked for.
        context.configure(
            dialect_name=context.config.attributes["dialect"],
            target_metadata=Base.metadata,
            literal_binds=True,
        )
    else:
        context.configure(
            connection=context.config.attributes["connection"],
            target_metadata=Base.metadata,
            # SQLite can change a table only by copying it.
            render_as_batch=True,
        )
    with context.begin_transaction():
        context.run_migrations()
