"""What made coupons are to be like: a recipe, entered and checked."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import replace
from typing import get_args

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from exercises.callout import CalloutMeasure
from exercises.maker import FACES, TRAPS, Recipe, Trap
from exercises.rules import RULE_SETS
from geometry.lengths import Unit
from geometry.measures import FaceShape
from trainer.bench.translation import translate
from trainer.bench.worded import wrapped
from trainer.bench.words import face_word, rules_word
from trainer.notices import Notice
from trainer.shop.choices import Check, Choice
from trainer.shop.dice import DIFFICULTIES, difficulty_of
from trainer.shop.entry import Entry, Measure
from trainer.shop.form import grid_of
from trainer.shop.words import fault_sentence

__all__ = ["RecipeDialog", "trap_word"]


def trap_word(trap: str) -> str:
    """What may be wrong or in the way, beside the size."""
    return {
        "unequal legs": translate("Dice", "Unequal legs"),
        "undercut": translate("Dice", "Undercut"),
        "overlap": translate("Dice", "Overlap"),
        "oversize crown": translate("Dice", "Oversize crown"),
        "spatter": translate("Dice", "Spatter"),
        "root opening": translate("Dice", "Root opening"),
        "out of square": translate("Dice", "Joint out of square"),
        "worn leaf": translate("Dice", "Worn leaf"),
    }[trap]


class RecipeDialog(Notice):
    """Asks for a recipe.

    Parameters
    ----------
    recipe
        What it begins with.
    title, text
        What it is about.
    button
        What takes the recipe.

    Signals
    -------
    taken(recipe)
        It is taken.
    """

    taken = Signal(object)

    def __init__(
        self, recipe: Recipe, title: str, text: str, button: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(title, text, parent)
        self.recipe = recipe
        self._entries: dict[str, Entry] = {}
        self._choices: dict[str, Choice] = {}
        self._checks: dict[str, Check] = {}
        columns = QHBoxLayout()
        columns.setSpacing(28)
        columns.addLayout(self._figures())
        columns.addLayout(self._kinds())
        self.body.addLayout(columns)
        self.message = QLabel()
        self.message.setWordWrap(True)
        self.message.setProperty("tone", "warning")
        self.message.hide()
        self.body.addWidget(self.message)
        self._add_buttons(button)
        self.finish()
        self.show_recipe()
        self._entries["count"].field.setFocus()

    def _add_buttons(self, words: str) -> None:
        self.buttons.clear()
        self.take = QPushButton(words)
        self.take.setProperty("kind", "primary")
        self.take.setDefault(True)
        self.take.clicked.connect(self._take)
        self.leave = QPushButton(translate("Dice", "Cancel"))
        self.leave.setAutoDefault(False)
        self.leave.clicked.connect(self.reject)
        self.buttons.addButton(self.take, QDialogButtonBox.ButtonRole.ActionRole)
        self.buttons.addButton(self.leave, QDialogButtonBox.ButtonRole.ActionRole)

    @property
    def busy(self) -> bool:
        """Whether something is being done with the recipe."""
        return False

    def _take(self) -> None:
        """Take the recipe."""
        self.taken.emit(self.recipe)
        self.accept()

    def _figures(self) -> QVBoxLayout:
        column = QVBoxLayout()
        grid = grid_of(None)
        column.addLayout(grid)
        row = 0
        entries: tuple[tuple[str, str, Measure], ...] = (
            ("count", translate("Dice", "How many"), "count"),
            ("seed", translate("Dice", "Seed"), "count"),
            ("least", translate("Dice", "Least size, by leg"), "length"),
            ("most", translate("Dice", "Greatest size, by leg"), "length"),
            ("nearest", translate("Dice", "Nearest to a limit, \u00d7 doubt"), "count"),
            ("farthest", translate("Dice", "Farthest from it, \u00d7 doubt"), "count"),
            ("in_doubt", translate("Dice", "Share too near to tell"), "share"),
        )
        units = (("mm", translate("Dice", "millimetres")), ("in", translate("Dice", "inches")))
        measures = (
            ("leg", translate("Dice", "leg (z)")),
            ("throat", translate("Dice", "throat (a)")),
        )
        levels = [
            ("plain", translate("Dice", "plain to see")),
            ("middling", translate("Dice", "middling")),
            ("hard", translate("Dice", "hard")),
            ("", translate("Dice", "as stated below")),
        ]
        rules = [(name, rules_word(RULE_SETS[name])) for name in RULE_SETS]
        choices: Mapping[str, tuple[str, list[tuple[str, str]]]] = {
            "unit": (translate("Dice", "Drawn in"), list(units)),
            "measure": (translate("Dice", "Sized by"), list(measures)),
            "rules": (translate("Dice", "Rules"), rules),
            "difficulty": (translate("Dice", "Difficulty"), levels),
        }
        order = ("count", "seed", "unit", "measure", "rules", "least", "most", "difficulty",
                 "nearest", "farthest", "in_doubt")  # fmt: skip
        known = {key: (name, measure) for key, name, measure in entries}
        for key in order:
            grid.setRowMinimumHeight(row, 34)
            if key in known:
                entry = Entry(key, known[key][0], known[key][1], self._enter)
                entry.setParent(self)
                self._entries[key] = entry
                row = entry.put(grid, row)
            else:
                choice = Choice(key, choices[key][0], choices[key][1], self._enter)
                self._choices[key] = choice
                row = choice.put(grid, row)
        column.addLayout(self._below())
        column.addStretch(1)
        return column

    def _below(self) -> QHBoxLayout:
        """What a doubt is, and another seed."""
        line = QHBoxLayout()
        line.setSpacing(12)
        words = translate(
            "Dice", "Doubt: what a leaf can\u2019t tell, 0.13 mm at a leg, 0.17 mm at the throat."
        )
        line.addWidget(wrapped(words, "gloss"), 1)
        another = QPushButton(translate("Dice", "Another seed"))
        another.setProperty("kind", "segment")
        another.setAutoDefault(False)
        another.clicked.connect(lambda: self._enter("seed", float(random.randint(1, 9999))))
        line.addWidget(another, 0, Qt.AlignmentFlag.AlignTop)
        return line

    def _kinds(self) -> QVBoxLayout:
        column = QVBoxLayout()
        grid = QGridLayout()
        grid.setVerticalSpacing(2)
        row = 0
        groups = (
            (translate("Dice", "Faces"), [(f"face {face}", face_word(face)) for face in FACES]),
            (translate("Dice", "Traps"), [(f"trap {trap}", trap_word(trap)) for trap in TRAPS]),
        )
        for title, boxes in groups:
            heading = QLabel(title)
            heading.setProperty("tone", "heading")
            if row:
                grid.setRowMinimumHeight(row, 12)
                row += 1
            grid.addWidget(heading, row, 0)
            row += 1
            for key, words in boxes:
                check = Check(key, words, self._enter)
                self._checks[key] = check
                row = check.put(grid, row)
        column.addLayout(grid)
        column.addStretch(1)
        return column

    # The recipe

    def _enter(self, key: str, value: object) -> str:
        """Take one choice; what is wrong with the whole is said below."""
        recipe = self.recipe
        number = float(value) if isinstance(value, (int, float)) else 0.0
        if key in ("count", "seed"):
            counts = {"count": recipe.count, "seed": recipe.seed, key: round(number)}
            recipe = replace(recipe, count=counts["count"], seed=counts["seed"])
        elif key in ("least", "most"):
            low, high = recipe.sizes
            recipe = replace(recipe, sizes=(number, high) if key == "least" else (low, number))
        elif key in ("nearest", "farthest", "in_doubt"):
            shares = {
                "nearest": recipe.nearest,
                "farthest": recipe.farthest,
                "in_doubt": recipe.in_doubt,
                key: number,
            }
            recipe = replace(recipe, **shares)  # type: ignore[arg-type]
        elif key == "difficulty":
            nearest, farthest = DIFFICULTIES.get(str(value), (recipe.nearest, recipe.farthest))
            recipe = replace(recipe, nearest=nearest, farthest=farthest)
        elif key == "unit":
            recipe = replace(recipe, unit=next(u for u in get_args(Unit) if u == value))
        elif key == "measure":
            measure = next(m for m in get_args(CalloutMeasure) if m == value)
            recipe = replace(recipe, measure=measure)
        elif key == "rules":
            recipe = replace(recipe, rules=str(value))
        else:
            recipe = self._switched(key)
        self.recipe = recipe
        self.show_recipe()
        return ""

    def _switched(self, key: str) -> Recipe:
        """The recipe with a face or a trap more, or less; always in the one order."""
        kind, _, name = key.partition(" ")
        if kind == "face":
            faces: list[FaceShape] = [f for f in FACES if (f in self.recipe.faces) != (f == name)]
            return replace(self.recipe, faces=tuple(faces))
        traps: list[Trap] = [t for t in TRAPS if (t in self.recipe.traps) != (t == name)]
        return replace(self.recipe, traps=tuple(traps))

    def show_recipe(self) -> None:
        """Show what was chosen, and what keeps coupons from being made so."""
        recipe = self.recipe
        values: dict[str, object] = {
            "count": float(recipe.count),
            "seed": float(recipe.seed),
            "least": recipe.sizes[0],
            "most": recipe.sizes[1],
            "nearest": recipe.nearest,
            "farthest": recipe.farthest,
            "in_doubt": recipe.in_doubt,
        }
        for key, entry in self._entries.items():
            entry.show_value("", values[key], recipe.unit)
        self._choices["unit"].show_value(recipe.unit)
        self._choices["measure"].show_value(recipe.measure)
        self._choices["rules"].show_value(recipe.rules)
        self._choices["difficulty"].show_value(difficulty_of(recipe.nearest, recipe.farthest))
        for key, check in self._checks.items():
            kind, _, name = key.partition(" ")
            check.show_value(name in (recipe.faces if kind == "face" else recipe.traps))
        faults = recipe.faults()
        self._say("\n".join(fault_sentence(fault) for fault in faults))
        self.take.setEnabled(not faults and not self.busy)

    def _say(self, words: str) -> None:
        self.message.setText(words)
        self.message.setVisible(bool(words))
