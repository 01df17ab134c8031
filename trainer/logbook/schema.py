"""Tables of the logbook, the same for SQLite on a station and PostgreSQL at a school.

Every row that a station makes has an id of the station's own making, so that the same row sent
twice is the same row.
"""

from __future__ import annotations

from typing import Final, cast

from sqlalchemy import (
    JSON,
    BigInteger,
    Boolean,
    CheckConstraint,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

__all__ = [
    "BIN",
    "AttemptRow",
    "Base",
    "CouponRow",
    "GroupRow",
    "LearnerRow",
    "MemberRow",
    "OverrideRow",
    "SatRow",
    "SentRow",
    "SittingRow",
    "TallyRow",
    "table_of",
]

BIN: Final = 0.02
"""mm: how finely distances are counted in tallies, a sixth of what a leaf can tell."""

_NAMES: Final = {
    # Alembic can only drop or change what has a name, and SQLite gives none by itself.
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}


class Base(DeclarativeBase):
    """What every table is."""

    metadata = MetaData(naming_convention=_NAMES)


def table_of(row: type[Base]) -> Table:
    """Return the table behind a class of rows."""
    return cast("Table", row.__table__)


class LearnerRow(Base):
    """Somebody who makes calls here, by a name of their own choosing."""

    __tablename__ = "learners"
    # An index, not a constraint: SQLite can add it without copying the table, and to copy the
    # table that attempts hang on would cascade to them.
    __table_args__ = (Index("uq_learners_code", "code", unique=True),)

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    name: Mapped[str] = mapped_column(String(200), unique=True)
    made_ms: Mapped[int] = mapped_column(BigInteger)
    code: Mapped[str | None] = mapped_column(String(64))
    """What the school knows them by; who has none stays on this machine."""


class CouponRow(Base):
    """A coupon as it was judged, kept once for all attempts at it."""

    __tablename__ = "coupons"

    digest: Mapped[str] = mapped_column(String(64), primary_key=True)
    body: Mapped[dict[str, object]] = mapped_column(JSON)


class AttemptRow(Base):
    """One attempt, never changed once it is there."""

    __tablename__ = "attempts"
    __table_args__ = (
        CheckConstraint("score >= 0 AND score <= 1", name="score"),
        Index("ix_attempts_learner_id_order_made", "learner_id", "order_made"),
        Index("ix_attempts_order_made", "order_made"),
        Index("ix_attempts_sat_id", "sat_id"),
    )

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    learner_id: Mapped[str] = mapped_column(ForeignKey("learners.id", ondelete="CASCADE"))
    digest: Mapped[str] = mapped_column(ForeignKey("coupons.digest"), index=True)
    at_ms: Mapped[int] = mapped_column(BigInteger)
    """Milliseconds since 1970, UTC, by the station's clock."""
    order: Mapped[int] = mapped_column("order_made", BigInteger)
    """Rises with each attempt of a station even where its clock was set back."""
    day: Mapped[str] = mapped_column(String(10))
    """The learner's own date, as 2026-03-01."""
    coupon: Mapped[str] = mapped_column(String(200))
    source: Mapped[str] = mapped_column(String(20))
    rules: Mapped[dict[str, object]] = mapped_column(JSON)
    score: Mapped[float] = mapped_column(Float)
    critical: Mapped[bool] = mapped_column(Boolean)
    before_feedback: Mapped[bool] = mapped_column(Boolean)
    distance: Mapped[float | None] = mapped_column(Float)
    short: Mapped[bool | None] = mapped_column(Boolean)
    bad: Mapped[bool] = mapped_column(Boolean)
    clean: Mapped[bool] = mapped_column(Boolean)
    called_bad: Mapped[bool | None] = mapped_column(Boolean)
    in_doubt: Mapped[bool] = mapped_column(Boolean)
    sure: Mapped[float | None] = mapped_column(Float)
    attempt: Mapped[dict[str, object]] = mapped_column(JSON)
    grade: Mapped[dict[str, object]] = mapped_column(JSON)
    zoom: Mapped[dict[str, object]] = mapped_column(JSON)
    handling: Mapped[bytes] = mapped_column(LargeBinary)
    """The rows of the handling as JSON, deflated."""
    sat_id: Mapped[str | None] = mapped_column(ForeignKey("sat.id", ondelete="CASCADE"))
    item: Mapped[int | None] = mapped_column(Integer)
    """Which coupon of its sitting it was, from 1."""
    spent_ms: Mapped[int | None] = mapped_column(BigInteger)


class TallyRow(Base):
    """How many attempts of a learner's day were alike: what curves and rates are drawn from.

    Written in the transaction of the attempt, so that a logbook of a million attempts opens by
    reading some thousands of rows.
    """

    __tablename__ = "tallies"

    learner_id: Mapped[str] = mapped_column(
        ForeignKey("learners.id", ondelete="CASCADE"), primary_key=True
    )
    day: Mapped[str] = mapped_column(String(10), primary_key=True)
    kind: Mapped[str] = mapped_column(String(20), primary_key=True)
    """``line``, ``call``, ``fault`` or ``sure``: see `trainer.logbook.tallies`."""
    key: Mapped[str] = mapped_column(Text, primary_key=True)
    count: Mapped[int] = mapped_column("counted", Integer)
    total: Mapped[float] = mapped_column("summed", Float)


class GroupRow(Base):
    """A class, a shift, whoever is looked at together."""

    __tablename__ = "groups"

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    name: Mapped[str] = mapped_column(String(200), unique=True)
    keep_days: Mapped[int | None] = mapped_column(Integer)
    """How long what its members did is kept; None is for good."""


class MemberRow(Base):
    """A learner in a group."""

    __tablename__ = "members"

    group_id: Mapped[str] = mapped_column(
        ForeignKey("groups.id", ondelete="CASCADE"), primary_key=True
    )
    learner_id: Mapped[str] = mapped_column(
        ForeignKey("learners.id", ondelete="CASCADE"), primary_key=True, index=True
    )


class SittingRow(Base):
    """A sitting's plan, without its coupons and without who was to sit it."""

    __tablename__ = "sittings"

    id: Mapped[str] = mapped_column(String(200), primary_key=True)
    title: Mapped[str | dict[str, str]] = mapped_column(JSON)
    body: Mapped[dict[str, object]] = mapped_column(JSON)


class SatRow(Base):
    """What one learner handed in of a sitting; its answers are attempts."""

    __tablename__ = "sat"

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    sitting_id: Mapped[str] = mapped_column(ForeignKey("sittings.id"), index=True)
    learner_id: Mapped[str] = mapped_column(
        ForeignKey("learners.id", ondelete="CASCADE"), index=True
    )
    station: Mapped[str] = mapped_column(String(200))
    started_ms: Mapped[int] = mapped_column(BigInteger)
    finished_ms: Mapped[int] = mapped_column(BigInteger)
    ended: Mapped[str] = mapped_column(String(20))
    body: Mapped[dict[str, object]] = mapped_column(JSON)
    """What lists show of it beside its attempts: `trainer.school.merging`."""
    handed_in: Mapped[bytes] = mapped_column(LargeBinary)
    """The result as its file states it, deflated."""


class OverrideRow(Base):
    """A mark that an instructor set, beside the original; of several the latest holds."""

    __tablename__ = "overrides"

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    sat_id: Mapped[str] = mapped_column(ForeignKey("sat.id", ondelete="CASCADE"), index=True)
    item: Mapped[int] = mapped_column(Integer)
    """Which coupon of its paper, from 1; it may have been left unanswered."""
    mark: Mapped[str] = mapped_column(String(20))
    value: Mapped[float] = mapped_column(Float)
    reason: Mapped[str] = mapped_column(Text)
    by_whom: Mapped[str] = mapped_column(String(200))
    at_ms: Mapped[int] = mapped_column(BigInteger)


class SentRow(Base):
    """Something that the school's server has for certain, by its id there."""

    __tablename__ = "sent"

    id: Mapped[str] = mapped_column(String(64), primary_key=True)
    at_ms: Mapped[int] = mapped_column(BigInteger)
