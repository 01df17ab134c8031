"""Learners, the coupons they judged, their attempts and what these come to."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables."""
    _learners_and_coupons()
    _attempts()
    _tallies()


def _learners_and_coupons() -> None:
    op.create_table(
        "learners",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("made_ms", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_learners"),
        sa.UniqueConstraint("name", name="uq_learners_name"),
    )
    op.create_table(
        "coupons",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("body", sa.JSON(), nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_coupons"),
    )


def _attempts() -> None:
    op.create_table(
        "attempts",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("learner_id", sa.String(36), nullable=False),
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("at_ms", sa.BigInteger(), nullable=False),
        sa.Column("order_made", sa.BigInteger(), nullable=False),
        sa.Column("day", sa.String(10), nullable=False),
        sa.Column("coupon", sa.String(200), nullable=False),
        sa.Column("source", sa.String(20), nullable=False),
        sa.Column("rules", sa.JSON(), nullable=False),
        sa.Column("score", sa.Float(), nullable=False),
        sa.Column("critical", sa.Boolean(), nullable=False),
        sa.Column("before_feedback", sa.Boolean(), nullable=False),
        sa.Column("distance", sa.Float(), nullable=True),
        sa.Column("short", sa.Boolean(), nullable=True),
        sa.Column("bad", sa.Boolean(), nullable=False),
        sa.Column("clean", sa.Boolean(), nullable=False),
        sa.Column("called_bad", sa.Boolean(), nullable=True),
        sa.Column("in_doubt", sa.Boolean(), nullable=False),
        sa.Column("sure", sa.Float(), nullable=True),
        sa.Column("attempt", sa.JSON(), nullable=False),
        sa.Column("grade", sa.JSON(), nullable=False),
        sa.Column("zoom", sa.JSON(), nullable=False),
        sa.Column("handling", sa.LargeBinary(), nullable=False),
        sa.CheckConstraint("score >= 0 AND score <= 1", name=op.f("ck_attempts_score")),
        sa.ForeignKeyConstraint(
            ["learner_id"], ["learners.id"],
            name="fk_attempts_learner_id_learners", ondelete="CASCADE",
        ),
        sa.ForeignKeyConstraint(
            ["digest"], ["coupons.digest"], name="fk_attempts_digest_coupons"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_attempts"),
    )  # fmt: skip
    op.create_index("ix_attempts_digest", "attempts", ["digest"])
    op.create_index("ix_attempts_learner_id_order_made", "attempts", ["learner_id", "order_made"])
    op.create_index("ix_attempts_order_made", "attempts", ["order_made"])


def _tallies() -> None:
    op.create_table(
        "tallies",
        sa.Column("learner_id", sa.String(36), nullable=False),
        sa.Column("day", sa.String(10), nullable=False),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("counted", sa.Integer(), nullable=False),
        sa.Column("summed", sa.Float(), nullable=False),
        sa.ForeignKeyConstraint(
            ["learner_id"], ["learners.id"],
            name="fk_tallies_learner_id_learners", ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("learner_id", "day", "kind", "key", name="pk_tallies"),
    )  # fmt: skip
