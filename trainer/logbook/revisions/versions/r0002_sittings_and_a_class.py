"""Codes, groups, sittings and what was handed in of them, overrides, and what a server has.

No table is copied, as Alembic's batch mode would: to drop the old copy of a table that others hang
on would erase what hangs on it. Both SQLite and PostgreSQL can add what is added here in place.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables, and add the columns."""
    op.add_column("learners", sa.Column("code", sa.String(64), nullable=True))
    op.create_index("uq_learners_code", "learners", ["code"], unique=True)
    _groups()
    _sittings()
    # Alembic has no way to add a column with its foreign key to a table of SQLite's in place.
    op.execute(
        "ALTER TABLE attempts ADD COLUMN sat_id VARCHAR(36)"
        " CONSTRAINT fk_attempts_sat_id_sat REFERENCES sat (id) ON DELETE CASCADE"
    )
    op.add_column("attempts", sa.Column("item", sa.Integer(), nullable=True))
    op.add_column("attempts", sa.Column("spent_ms", sa.BigInteger(), nullable=True))
    op.create_index("ix_attempts_sat_id", "attempts", ["sat_id"])
    _overrides()
    op.create_table(
        "sent",
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("at_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_sent"),
    )


def _groups() -> None:
    op.create_table(
        "groups",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("keep_days", sa.Integer(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_groups"),
        sa.UniqueConstraint("name", name="uq_groups_name"),
    )
    op.create_table(
        "members",
        sa.Column("group_id", sa.String(36), nullable=False),
        sa.Column("learner_id", sa.String(36), nullable=False),
        sa.ForeignKeyConstraint(
            ["group_id"], ["groups.id"],
            name="fk_members_group_id_groups", ondelete="CASCADE",
        ),
        sa.ForeignKeyConstraint(
            ["learner_id"], ["learners.id"],
            name="fk_members_learner_id_learners", ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("group_id", "learner_id", name="pk_members"),
    )  # fmt: skip
    op.create_index("ix_members_learner_id", "members", ["learner_id"])


def _sittings() -> None:
    op.create_table(
        "sittings",
        sa.Column("id", sa.String(200), nullable=False),
        sa.Column("title", sa.JSON(), nullable=False),
        sa.Column("body", sa.JSON(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_sittings"),
    )
    op.create_table(
        "sat",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("sitting_id", sa.String(200), nullable=False),
        sa.Column("learner_id", sa.String(36), nullable=False),
        sa.Column("station", sa.String(200), nullable=False),
        sa.Column("started_ms", sa.BigInteger(), nullable=False),
        sa.Column("finished_ms", sa.BigInteger(), nullable=False),
        sa.Column("ended", sa.String(20), nullable=False),
        sa.Column("body", sa.JSON(), nullable=False),
        sa.Column("handed_in", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(
            ["sitting_id"], ["sittings.id"], name="fk_sat_sitting_id_sittings"
        ),
        sa.ForeignKeyConstraint(
            ["learner_id"], ["learners.id"],
            name="fk_sat_learner_id_learners", ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name="pk_sat"),
    )  # fmt: skip
    op.create_index("ix_sat_sitting_id", "sat", ["sitting_id"])
    op.create_index("ix_sat_learner_id", "sat", ["learner_id"])


def _overrides() -> None:
    op.create_table(
        "overrides",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("sat_id", sa.String(36), nullable=False),
        sa.Column("item", sa.Integer(), nullable=False),
        sa.Column("mark", sa.String(20), nullable=False),
        sa.Column("value", sa.Float(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("by_whom", sa.String(200), nullable=False),
        sa.Column("at_ms", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(
            ["sat_id"], ["sat.id"], name="fk_overrides_sat_id_sat", ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_overrides"),
    )  # fmt: skip
    op.create_index("ix_overrides_sat_id", "overrides", ["sat_id"])
