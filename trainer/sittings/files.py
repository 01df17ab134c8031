"""Sealed sittings on the disk, as they are composed: opened, and sealed again. No Qt here."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, replace
from pathlib import Path
from uuid import uuid4

from exercises.sitting.plan import Plan
from exercises.sitting.plan_file import plan_bytes, read_plan
from trainer.sealing.key import Key
from trainer.sealing.result_files import SUFFIXES, open_sealed, write_sealed

__all__ = ["SUFFIX", "Sealed", "file_name", "is_another", "open_sitting", "renewed", "seal_sitting"]

SUFFIX = SUFFIXES["sitting"]


@dataclass(frozen=True, slots=True)
class Sealed:
    """A sitting that lies sealed on the disk.

    Parameters
    ----------
    path, plan
        Where, and what it holds.
    key
        That it is sealed with.
    """

    path: Path
    plan: Plan
    key: Key


def open_sitting(path: Path, passphrase: str) -> Sealed:
    """Return the sitting in a sealed file.

    Raises
    ------
    FileError
        If it can't be read, or is no sitting that can be used (`PlanError`).
    SealError
        If it can't be unsealed.
    """
    unsealed = open_sealed(path, passphrase, "sitting")
    return Sealed(path, read_plan(unsealed.body, path.name), unsealed.key)


def seal_sitting(path: Path, plan: Plan, secret: Key | str) -> Sealed:
    """Seal a sitting into a file, whole or not at all.

    Raises
    ------
    OSError
        If it can't be written; what was there before is untouched.
    SealError
        If it is too large.
    """
    return Sealed(path, plan, write_sealed(path, "sitting", plan_bytes(plan), secret))


def is_another(plan: Plan, before: Plan) -> bool:
    """Return whether a plan asks or marks anything else than it did: results don't go together.

    Another title, another learner or more time for one are the same sitting still.

    Examples
    --------
    >>> from exercises.sitting.plan import Entrant
    >>> from exercises.text import NO_TEXT
    >>> plan = Plan("s-1", NO_TEXT, ())
    >>> is_another(replace(plan, entrants=(Entrant("k-07"),)), plan)
    False
    >>> is_another(replace(plan, minutes=30.0), plan)
    True
    """
    return replace(plan, title=before.title, entrants=before.entrants) != before


def renewed(plan: Plan, before: Plan | None) -> Plan:
    """Return a plan as it is to be sealed: with an id of its own where it is another sitting now.

    Examples
    --------
    >>> from exercises.text import NO_TEXT
    >>> plan = Plan("s-1", NO_TEXT, ())
    >>> renewed(plan, None).id, renewed(plan, plan).id
    ('s-1', 's-1')
    >>> renewed(replace(plan, minutes=30.0), plan).id == "s-1"
    False
    """
    if before is None or plan.id != before.id or not is_another(plan, before):
        return plan
    return replace(plan, id=str(uuid4()))


def file_name(title: str, otherwise: str) -> str:
    """Return a file's name for a sitting of that title.

    Examples
    --------
    >>> file_name("Friday: railings", "sitting"), file_name("???", "sitting")
    ('friday-railings.sitting', 'sitting.sitting')
    """
    plain = "".join(c if c.isalnum() else "-" for c in unicodedata.normalize("NFC", title.lower()))
    stem = "-".join(part for part in plain.split("-") if part)[:60]
    return (stem or otherwise) + SUFFIX
