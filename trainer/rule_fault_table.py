"""The words of the faults of rules, callouts and recipes, and of what geometry refuses outright."""

from __future__ import annotations

from typing import Final

from trainer.bench.translation import QT_TRANSLATE_NOOP
from trainer.fault_table import Variant

__all__ = ["CODES", "VALUES"]

CODES: Final[dict[str, tuple[Variant, ...]]] = {
    "no-direction": (
        (
            QT_TRANSLATE_NOOP("Faults", "the line has no direction"),
            QT_TRANSLATE_NOOP("Faults", "two distinct points"),
        ),
    ),
    "radius-short": (
        (
            QT_TRANSLATE_NOOP("Faults", "the points lie on no circle of that radius"),
            QT_TRANSLATE_NOOP("Faults", "a larger radius"),
        ),
    ),
    "empty-piece": (
        (
            QT_TRANSLATE_NOOP("Faults", "{body} has a piece of no length"),
            QT_TRANSLATE_NOOP("Faults", "distinct points"),
        ),
    ),
    "no-such-edge": (
        (
            QT_TRANSLATE_NOOP("Faults", "the leaf has no such edge"),
            QT_TRANSLATE_NOOP("Faults", "leg or throat"),
        ),
    ),
    "pose-far": (
        (
            QT_TRANSLATE_NOOP("Faults", "({x}, {y}) is no place"),
            QT_TRANSLATE_NOOP("Faults", "a place nearer to the section"),
        ),
    ),
    "no-length": (
        (
            QT_TRANSLATE_NOOP("Faults", "is no length"),
            QT_TRANSLATE_NOOP("Faults", "a length such as 8 mm or 5/16 in"),
        ),
    ),
    "no-such-leaf": (
        (
            QT_TRANSLATE_NOOP("Faults", "no rack has such a leaf"),
            QT_TRANSLATE_NOOP("Faults", "the mark of a leaf, with its unit"),
        ),
    ),
    "no-such-rack": (
        (
            QT_TRANSLATE_NOOP("Faults", "there is no such rack"),
            QT_TRANSLATE_NOOP("Faults", "metric, inch or throat"),
        ),
    ),
    "eye-limit": (
        (
            QT_TRANSLATE_NOOP("Faults", "the eye limit is no length above 0 mm"),
            QT_TRANSLATE_NOOP("Faults", "a length above 0 mm"),
        ),
    ),
    "no-such-member": (
        (
            QT_TRANSLATE_NOOP("Faults", "the spatter is on neither member"),
            QT_TRANSLATE_NOOP("Faults", "base or upright"),
        ),
    ),
    "no-number": (
        (
            QT_TRANSLATE_NOOP("Faults", "is no number"),
            QT_TRANSLATE_NOOP("Faults", "a finite number"),
        ),
    ),
    "leaf-size": (
        (
            QT_TRANSLATE_NOOP("Faults", "the leaf can't have that size"),
            QT_TRANSLATE_NOOP("Faults", "a size of a rack"),
        ),
    ),
    "amount": ((QT_TRANSLATE_NOOP("Faults", "is {value}"), "{wanted}"),),
    "quantity": (
        (QT_TRANSLATE_NOOP("Faults", "is {value}"), QT_TRANSLATE_NOOP("Faults", "one of {known}")),
    ),
    "fact": (
        (QT_TRANSLATE_NOOP("Faults", "is {value}"), QT_TRANSLATE_NOOP("Faults", "one of {known}")),
    ),
    "row": ((QT_TRANSLATE_NOOP("Faults", "has {keys}"), "{wanted}"),),
    "unequal-throat": (
        (
            QT_TRANSLATE_NOOP("Faults", "a throat has no second leg"),
            QT_TRANSLATE_NOOP("Faults", 'no such key, or "measure": "leg"'),
        ),
    ),
    "pitch-or-gap": (
        (
            QT_TRANSLATE_NOOP("Faults", "says the spacing in no way, or in two"),
            QT_TRANSLATE_NOOP("Faults", 'either "pitch" or "gap"'),
        ),
    ),
    "pitch-short": (
        (
            QT_TRANSLATE_NOOP("Faults", "the pitch is {pitch}, no more than a piece is long"),
            QT_TRANSLATE_NOOP("Faults", "more than {length}, from centre to centre"),
        ),
    ),
    "angle": (
        (
            QT_TRANSLATE_NOOP("Faults", "is {value}"),
            QT_TRANSLATE_NOOP("Faults", "degrees from 0 to 180"),
        ),
    ),
    "shipped-id": (
        (
            QT_TRANSLATE_NOOP("Faults", '"{id}" is the id of a rule set that ships'),
            QT_TRANSLATE_NOOP("Faults", "an id of your own"),
        ),
    ),
    "wrong-bound": (
        (QT_TRANSLATE_NOOP("Faults", '"{key}" says nothing of "{measure}"'), '"{other}"'),
    ),
    "short-within": (
        (
            QT_TRANSLATE_NOOP("Faults", '"short" and "within" belong together'),
            QT_TRANSLATE_NOOP("Faults", "both, or neither"),
        ),
    ),
    "within": (
        (
            QT_TRANSLATE_NOOP("Faults", "the length is none, or more than what it is in"),
            QT_TRANSLATE_NOOP("Faults", 'a "length" above 0, and no more than "each"'),
        ),
    ),
    "within/unsaid": (
        (
            QT_TRANSLATE_NOOP("Faults", "says the share in no way, or in two"),
            QT_TRANSLATE_NOOP("Faults", '"share"; or "length" and "each"'),
        ),
    ),
    "repeated-limit": (
        (
            QT_TRANSLATE_NOOP("Faults", '"{measure}" is limited twice'),
            QT_TRANSLATE_NOOP("Faults", "one limit for each"),
        ),
    ),
    "repeated-rules": (
        (
            QT_TRANSLATE_NOOP("Faults", "{rules} is the id of another of these files too"),
            QT_TRANSLATE_NOOP("Faults", "an id of its own"),
        ),
    ),
    "rules-file-name": (
        (
            QT_TRANSLATE_NOOP("Faults", "{name} is no plain name of a rules file"),
            QT_TRANSLATE_NOOP("Faults", 'the name of a file beside the tray, as "shop.rules.json"'),
        ),
    ),
    "rules-no-folder": (
        (
            QT_TRANSLATE_NOOP("Faults", "{name} can't be looked for: the tray has no folder"),
            QT_TRANSLATE_NOOP("Faults", "a tray that is read from a file"),
        ),
    ),
    "later-key": (
        (
            QT_TRANSLATE_NOOP("Faults", "{key} is a key of version {version}"),
            '"version": {version}',
        ),
    ),
    "recipe-unmet": (
        (
            QT_TRANSLATE_NOOP("Faults", "no weld was found whose right call is {disposition}"),
            QT_TRANSLATE_NOOP(
                "Faults",
                "another rule set, more faces, more traps, or sizes farther from their limits",
            ),
        ),
    ),
    "recipe-balance": (
        (
            QT_TRANSLATE_NOOP(
                "Faults",
                "{count} coupons, {doubtful} in doubt, with {answers} kinds of answer are uneven",
            ),
            QT_TRANSLATE_NOOP(
                "Faults",
                "more coupons, fewer in doubt, or the traps overlap and out of square as well",
            ),
        ),
    ),
    "recipe-count": (
        (
            QT_TRANSLATE_NOOP("Faults", "{count} coupons"),
            QT_TRANSLATE_NOOP("Faults", "1 to {most}"),
        ),
    ),
    "recipe-rules": (
        (
            QT_TRANSLATE_NOOP("Faults", "no rule set is called {value}"),
            QT_TRANSLATE_NOOP("Faults", "a rule set that there is"),
        ),
    ),
    "recipe-faces": (
        (
            QT_TRANSLATE_NOOP("Faults", "no face is named"),
            QT_TRANSLATE_NOOP("Faults", "one face or more"),
        ),
    ),
    "recipe-sizes": (
        (
            QT_TRANSLATE_NOOP("Faults", "sizes from {low} to {high} mm"),
            QT_TRANSLATE_NOOP("Faults", "from 3 to 25 mm, the lesser first"),
        ),
    ),
    "recipe-nearest": (
        (
            QT_TRANSLATE_NOOP("Faults", "the nearest size lies {value} doubts off its limit"),
            QT_TRANSLATE_NOOP("Faults", "a number of doubts that a leaf can tell"),
        ),
    ),
    "recipe-farthest": (
        (
            QT_TRANSLATE_NOOP("Faults", "the farthest size lies {value} doubts off its limit"),
            QT_TRANSLATE_NOOP("Faults", "half a doubt farther than the nearest, or more"),
        ),
    ),
    "recipe-in-doubt": (
        (
            QT_TRANSLATE_NOOP("Faults", "too many coupons, or too few, in doubt"),
            QT_TRANSLATE_NOOP("Faults", "0 to 30 %"),
        ),
    ),
}

VALUES: Final = {
    "a number above 0": QT_TRANSLATE_NOOP("Faults", "a number above 0"),
    "a list of rows": QT_TRANSLATE_NOOP("Faults", "a list of rows"),
    "a list of amounts": QT_TRANSLATE_NOOP("Faults", "a list of amounts"),
    'an object with "amount"': QT_TRANSLATE_NOOP("Faults", 'an object with "amount"'),
    '"amount" alone, for all the rest': QT_TRANSLATE_NOOP(
        "Faults", '"amount" alone, for all the rest'
    ),
    'either "up_to" or "below"': QT_TRANSLATE_NOOP("Faults", 'either "up_to" or "below"'),
    'mm, "1/16 in", or both columns as {"mm": 2, "in": "1/16 in"}': QT_TRANSLATE_NOOP(
        "Faults", 'mm, "1/16 in", or both columns as {"mm": 2, "in": "1/16 in"}'
    ),
}
"""What is wanted, where the core says it in words."""
