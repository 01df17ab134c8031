"""What a composed sitting is called and said to be, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Sequence

from exercises.coupon import Coupon
from exercises.maker import FACES, TRAPS, Recipe
from exercises.rules import RULE_SETS
from geometry.faults import Fault
from trainer.bench.placed_words import fault_list
from trainer.bench.translation import translate
from trainer.bench.words import disposition_word, face_word, language, length_word, rules_word
from trainer.figures import number_words
from trainer.shop.dice import difficulty_of
from trainer.shop.recipe_dialog import trap_word
from trainer.shop.tray_list import callout_word
from trainer.shop.words import fault_sentence
from trainer.sittings.counts import SittingCounts
from trainer.sittings.draft import Draft, FromDice, Part
from trainer.sittings.truths import Outline, Truth

__all__ = [
    "callout_short",
    "coupons_word",
    "duration_words",
    "faults_words",
    "gesture_word",
    "help_gloss",
    "help_word",
    "learners_word",
    "mark_words",
    "outline_words",
    "part_lines",
    "recipe_lines",
    "right_words",
    "skill_word",
    "title_of",
]


def coupons_word(count: int) -> str:
    """How many coupons."""
    return SittingCounts().coupons(count)


def learners_word(count: int) -> str:
    """How many learners."""
    return SittingCounts().learners(count)


def duration_words(minutes: float) -> str:
    """How long something takes.

    Examples
    --------
    >>> duration_words(75.0), duration_words(0.5)
    ('75 min', '0.5 min')
    """
    return translate("Sittings", "{n} min").format(n=number_words(round(minutes, 1)))


def mark_words(mark: float) -> str:
    """A mark or a share, as per cent.

    Examples
    --------
    >>> mark_words(0.8)
    '80 %'
    """
    return translate("Sittings", "{n} %").format(n=number_words(round(100.0 * mark, 1)))


def title_of(draft: Draft) -> str:
    """What the sitting is called, in the language that is spoken."""
    return draft.base.title.in_language(language())


def skill_word(skill: str) -> str:
    """What a mark is of."""
    return {
        "face": translate("Sittings", "Face"),
        "leaf": translate("Sittings", "Leaf"),
        "edge": translate("Sittings", "Edge"),
        "seat": translate("Sittings", "Seat"),
        "legs": translate("Sittings", "Both legs"),
        "reading": translate("Sittings", "Reading"),
        "disposition": translate("Sittings", "Disposition"),
    }[skill]


def help_word(name: str) -> str:
    """What a help is called."""
    return {
        "loupe": translate("Sittings", "Loupe"),
        "press home": translate("Sittings", "Press home"),
        "unit switch": translate("Sittings", "Switching units"),
    }[name]


def help_gloss(name: str) -> str:
    """What a help does."""
    return {
        "loupe": translate("Sittings", "the round magnifier on the leaf's tip"),
        "press home": translate("Sittings", "pushing the leaf into the corner in one go"),
        "unit switch": translate("Sittings", "lengths in the unit one likes, not the drawing's"),
    }[name]


# Parts


def part_lines(part: Part) -> tuple[str, str]:
    """What a part is called, and how much of it is asked."""
    if isinstance(part, FromDice):
        asked = translate("Sittings", "{coupons}, each learner their own")
        return translate("Sittings", "From dice"), asked.format(coupons=coupons_word(part.count))
    title = part.title.in_language(language()) or translate("Sittings", "A tray without a title")
    if part.count == len(part.coupons):
        whole = translate("Sittings", "all {coupons}")
        return title, whole.format(coupons=coupons_word(part.count))
    asked = translate("Sittings", "{n} of {coupons}")
    return title, asked.format(n=part.count, coupons=coupons_word(len(part.coupons)))


def recipe_lines(recipe: Recipe) -> list[tuple[str, str]]:
    """What the dice are asked for, as names and values."""
    low, high = (length_word(size, recipe.unit) for size in recipe.sizes)
    level = {
        "plain": translate("Sittings", "plain to see"),
        "middling": translate("Sittings", "middling"),
        "hard": translate("Sittings", "hard"),
    }.get(difficulty_of(recipe.nearest, recipe.farthest))
    if level is None:
        level = translate("Sittings", "{least} to {most} times what a leaf can tell").format(
            least=number_words(recipe.nearest), most=number_words(recipe.farthest)
        )
    quotas = recipe.quotas() or {}
    answers = [f"{disposition_word(call)}\u00a0{n}" for call, n in quotas.items() if n]
    if recipe.doubtful():
        inside = translate("Sittings", "inside the doubt {n}").format(n=recipe.doubtful())
        answers.append(inside)
    traps = [trap_word(trap) for trap in TRAPS if trap in recipe.traps]
    none = translate("Sittings", "none")
    return [
        (translate("Sittings", "How many"), coupons_word(recipe.count)),
        (translate("Sittings", "Right calls"), _listed(answers) or none),
        (
            translate("Sittings", "Faces"),
            _listed([face_word(face) for face in FACES if face in recipe.faces]) or none,
        ),
        (translate("Sittings", "Traps"), _listed(traps) or none),
        (translate("Sittings", "Difficulty"), level),
        (
            translate("Sittings", "Sizes by leg"),
            translate("Sittings", "{low} to {high}").format(low=low, high=high),
        ),
        (translate("Sittings", "Rules"), rules_word(RULE_SETS[recipe.rules])),
    ]


def _lowered(words: Sequence[str]) -> str:
    """Words after a colon."""
    listed = _listed(words)
    return listed[:1].lower() + listed[1:]


def _listed(words: Sequence[str]) -> str:
    return ", ".join([*words[:1], *(word[:1].lower() + word[1:] for word in words[1:])])


# Papers


def callout_short(coupon: Coupon) -> str:
    """What a coupon calls for; and what it asks, where that isn't the usual."""
    words = callout_word(coupon)
    return words.partition(" \u00b7 ")[0] if coupon.task == "judge" else words


def right_words(coupon: Coupon, truth: Truth) -> str:
    """What is right on a coupon, by its task."""
    if coupon.task == "find the fault":
        return fault_list(truth.faults)
    if coupon.task == "size":
        return truth.leaf or translate("Sittings", "no leaf")
    if coupon.task == "read":
        return translate("Sittings", "What the leaf shows")
    call = disposition_word(truth.disposition)
    return translate("Sittings", "{call} (in doubt)").format(call=call) if truth.in_doubt else call


def outline_words(outline: Outline, minutes: float) -> list[str]:
    """How much a paper is, and how many of which answers and faces it has."""
    each = minutes / outline.count if outline.count else 0.0
    lines = [
        translate("Sittings", "{coupons} in {time}: {each} for each").format(
            coupons=coupons_word(outline.count),
            time=duration_words(minutes),
            each=duration_words(each),
        )
    ]
    answers = [f"{disposition_word(call)}\u00a0{n}" for call, n in outline.answers.items()]
    if outline.in_doubt:
        answers.append(translate("Sittings", "in doubt {n}").format(n=outline.in_doubt))
    if answers:
        words = translate("Sittings", "Right calls: {answers}")
        lines.append(words.format(answers=_lowered(answers)))
    faces = [f"{face_word(face)}\u00a0{n}" for face, n in outline.faces.items()]
    lines.append(translate("Sittings", "Faces: {faces}").format(faces=_lowered(faces)))
    return lines


def faults_words(faults: Sequence[Fault], shown: int) -> list[str]:
    """What keeps a sitting from being sealed: the first of it, and how much more there is."""
    said = [fault_sentence(fault) for fault in faults[:shown]]
    lines = ["\u2013 " + words[:1].upper() + words[1:] for words in said]
    more = len(faults) - len(lines)
    if more > 0:
        lines.append("\u2013 " + SittingCounts().faults(more))
    return lines


def gesture_word(what: str) -> str:
    """What a step was, for undo and redo."""
    return {
        "add tray": translate("Sittings", "coupons from a tray"),
        "add dice": translate("Sittings", "coupons from dice"),
        "remove": translate("Sittings", "a part taken out"),
        "move": translate("Sittings", "a part moved"),
        "pick": translate("Sittings", "other coupons"),
        "recipe": translate("Sittings", "another recipe"),
        "title": translate("Sittings", "the title"),
        "order": translate("Sittings", "the order"),
        "minutes": translate("Sittings", "the time"),
        "pass": translate("Sittings", "a pass mark"),
        "critical": translate("Sittings", "critical calls"),
        "help": translate("Sittings", "a help"),
        "entrants": translate("Sittings", "who sits"),
        "extra": translate("Sittings", "extra time"),
        "seed": translate("Sittings", "other papers"),
        "seal": translate("Sittings", "sealed as another sitting"),
    }[what]
