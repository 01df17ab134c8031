"""Sitting files, before they are sealed: written whole, read whole or not at all."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Final

from exercises.file_faults import FileError, TrayFault
from exercises.maker.recipe import Recipe
from exercises.shape import check_shape, without_private_keys
from exercises.sitting.embedded import read_chosen, tray_document
from exercises.sitting.models import (
    BELOW_PLAN,
    LARGEST,
    SITTING_FORMAT,
    PartModel,
    PlanModel,
    RecipeModel,
)
from exercises.sitting.plan import SKILLS, Chosen, Entrant, Made, Plan, Skill
from exercises.strict_json import Json, parse_json
from exercises.text import Text
from exercises.versions import SITTING_HEAD, Document, check_version
from geometry.faults import Fault

__all__ = ["PlanError", "plan_as_dict", "plan_bytes", "read_plan"]

_NO_TITLE: Final = ""


class PlanError(FileError):
    """A sitting that can't be used."""


def plan_as_dict(plan: Plan) -> dict[str, Json]:
    """Return a sitting as its file states it.

    Raises
    ------
    ValueError
        If a coupon was read out of no tray.

    Examples
    --------
    >>> plan = Plan("s-1", Text.of("Yard"), (Made(Recipe(8)),))
    >>> read_plan(plan_bytes(plan)) == plan
    True
    """
    title = plan.title.as_document() if plan.title else _NO_TITLE
    return {
        "format": SITTING_FORMAT,
        "version": SITTING_HEAD,
        "id": plan.id,
        "title": title if isinstance(title, str) else {**title},
        "parts": [_part(part) for part in plan.parts],
        "shuffled": plan.shuffled,
        "minutes": plan.minutes,
        "pass_mark": plan.pass_mark,
        "skill_marks": {s: plan.skill_marks[s] for s in SKILLS if s in plan.skill_marks},
        "critical_fails": plan.critical_fails,
        "helps": [*sorted(plan.helps)],
        "entrants": [{"code": each.code, "extra": each.extra} for each in plan.entrants],
        "seed": plan.seed,
    }


def plan_bytes(plan: Plan) -> bytes:
    """Return a sitting as the bytes of its file; raises as `plan_as_dict` does."""
    return json.dumps(plan_as_dict(plan), ensure_ascii=False, allow_nan=False).encode("utf-8")


def read_plan(data: bytes, name: str = "") -> Plan:
    """Return the sitting that a file's bytes state.

    Parameters
    ----------
    data
        UTF-8 JSON.
    name
        What faults call the file.

    Raises
    ------
    PlanError
        With every fault; nothing is half-loaded.

    Examples
    --------
    >>> try:
    ...     read_plan(b'{"format": "toe-and-throat/sitting", "version": 2}', "a.sitting")
    ... except PlanError as error:
    ...     print(error)
    a.sitting: /version: version 2 is newer than this program reads; right would be: 1, or a newer program
    """  # noqa: E501 - a fault is one line
    plan, faults = _read(data)
    if plan is None or faults:
        raise PlanError([TrayFault.of(name, fault) for fault in faults])
    return plan


def _part(part: Chosen | Made) -> Json:
    if isinstance(part, Made):
        return {"recipe": _recipe(part.recipe)}
    stated: Document = {"tray": tray_document(part)}
    if part.rules:
        stated["rules"] = [*part.rules.values()]
    return stated


def _recipe(recipe: Recipe) -> Json:
    return {
        "count": recipe.count,
        "seed": recipe.seed,
        "unit": recipe.unit,
        "measure": recipe.measure,
        "rules": recipe.rules,
        "faces": [*recipe.faces],
        "traps": [*recipe.traps],
        "sizes": [*recipe.sizes],
        "nearest": recipe.nearest,
        "farthest": recipe.farthest,
        "in_doubt": recipe.in_doubt,
    }


def _read(data: bytes) -> tuple[Plan | None, list[Fault]]:
    parsed = parse_json(data, LARGEST)
    if parsed.value is None and parsed.faults:
        return None, parsed.faults
    faults = check_version(parsed.value, SITTING_FORMAT, SITTING_HEAD)
    if faults or not isinstance(parsed.value, dict):
        return None, faults
    model, faults = check_shape(PlanModel, without_private_keys(parsed.value), below=BELOW_PLAN)
    known = {fault.at for fault in parsed.faults}
    faults = parsed.faults + [fault for fault in faults if fault.at not in known]
    if model is None or faults:
        return None, faults
    parts, faults = _parts(model, parsed.value["parts"])
    if faults:
        return None, faults
    plan = _plan(model, parts)
    return plan, plan.faults()


def _parts(model: PlanModel, sources: Json) -> tuple[tuple[Chosen | Made, ...], list[Fault]]:
    """The parts; trays as they stand in the file, with the keys that are whoever's wrote them."""
    parts: list[Chosen | Made] = []
    faults: list[Fault] = []
    assert isinstance(sources, list)
    for index, (each, source) in enumerate(zip(model.parts, sources, strict=True)):
        at = f"/parts/{index}"
        assert isinstance(source, dict)
        if not _is_one(each):
            text = "says what is asked in no way, or in two"
            faults.append(Fault(at, "sitting-part", text, 'either "tray" or "recipe"'))
        elif each.recipe is not None:
            parts.append(Made(_made(each.recipe)))
        else:
            chosen, found = read_chosen(source["tray"], each.rules, at)
            faults += found
            parts += [chosen] if chosen else []
    return tuple(parts), faults


def _is_one(part: PartModel) -> bool:
    return (part.tray is None) != (part.recipe is None) and not (part.recipe and part.rules)


def _made(model: RecipeModel) -> Recipe:
    return Recipe(
        count=model.count,
        seed=model.seed,
        unit=model.unit,
        measure=model.measure,
        rules=model.rules,
        faces=tuple(model.faces),
        traps=tuple(model.traps),
        sizes=(model.sizes[0], model.sizes[1]),
        nearest=model.nearest,
        farthest=model.farthest,
        in_doubt=model.in_doubt,
    )


def _plan(model: PlanModel, parts: tuple[Chosen | Made, ...]) -> Plan:
    return Plan(
        id=model.id,
        title=Text.of(model.title),
        parts=parts,
        shuffled=model.shuffled,
        minutes=model.minutes,
        pass_mark=model.pass_mark,
        skill_marks=_skills(model),
        helps=frozenset(model.helps),
        entrants=tuple(Entrant(each.code, each.extra) for each in model.entrants),
        seed=model.seed,
        critical_fails=model.critical_fails,
    )


def _skills(model: PlanModel) -> Mapping[Skill, float]:
    stated = {skill: getattr(model.skill_marks, skill) for skill in SKILLS}
    return {skill: float(value) for skill, value in stated.items() if value is not None}
