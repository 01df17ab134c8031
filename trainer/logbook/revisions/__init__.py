"""Revisions of the logbook's tables, run by Alembic."""
