"""Pictures of a class, drawn by matplotlib without Qt and without its global state.

Each learner is a dot, so that a class of six doesn't look like one of sixty; what is uncertain has
its 95 % as a line; limits are dashed lines with their name. Shapes differ as well as colours.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.ticker import FuncFormatter, MaxNLocator, MultipleLocator

from exercises.doubt import doubt
from exercises.learner.demonstration import Share
from trainer.logbook.plots import Style

__all__ = ["PLOTS", "Picture", "Spot", "Spread", "Step", "draw"]

_REACH: Final = 1.0
"""mm on either side of the limit that misses and false alarms are drawn over."""

_BOXED: Final = 5
"""Values from which quartiles say more than the values themselves."""

_GOLDEN: Final = 0.618033988749895
_FAMILIES: Final = ["Inter", "DejaVu Sans"]
_TALL: Final = 12
"""Rows beyond which only every other one is named."""


@dataclass(frozen=True, slots=True)
class Spread:
    """A row of values, one a learner, perhaps with a limit of its own."""

    name: str
    values: tuple[float, ...]
    limit: float | None = None


@dataclass(frozen=True, slots=True)
class Spot:
    """A coupon by its difficulty (share right) and its discrimination, with the 95 % of that."""

    name: str
    difficulty: float
    discrimination: float
    low: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class Step:
    """A step of the distance to the limit, mm: how many calls there were wrong."""

    distance: float
    wrong: Share


@dataclass(frozen=True, slots=True)
class Picture:
    """All that the pictures of a class show.

    Parameters
    ----------
    skills
        Scores, 0 to 1, skill by skill; the first is of the whole.
    spots
        Coupons whose difficulty and discrimination can be told.
    steps
        Of the distance to the limit: misses below 0, false alarms from there on.
    times
        Minutes, coupon by coupon.
    """

    skills: tuple[Spread, ...] = ()
    spots: tuple[Spot, ...] = ()
    steps: tuple[Step, ...] = ()
    times: tuple[Spread, ...] = ()


def draw(name: str, figure: Figure, shown: Picture, style: Style) -> None:
    """Draw the picture called `name` (a key of `PLOTS`) onto an empty figure."""
    theme = style.theme
    figure.set_facecolor(theme.panel)
    axes = figure.add_subplot()
    axes.set_facecolor(theme.panel)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    for side in ("left", "bottom"):
        axes.spines[side].set_color(theme.outline)
    axes.tick_params(colors=theme.muted, labelsize=9, length=3)
    for label in (axes.xaxis.label, axes.yaxis.label):
        label.set_color(theme.muted)
        label.set_fontsize(9.5)
    PLOTS[name](axes, shown, style)
    for text in (axes.xaxis.label, axes.yaxis.label, *axes.get_xticklabels(),
                 *axes.get_yticklabels(), *axes.texts):  # fmt: skip
        text.set_fontfamily(_FAMILIES)
    figure.set_layout_engine("constrained")


def _percent(axes: Axes, *, on: str) -> None:
    axis = axes.yaxis if on == "y" else axes.xaxis
    axis.set_major_formatter(FuncFormatter(lambda share, _: f"{100 * share:.0f} %"))


def _rows(axes: Axes, rows: Sequence[Spread], style: Style) -> None:
    """A row of dots for each spread, its middle half as a bar and its median as a line across."""
    theme = style.theme
    for at, row in enumerate(rows):
        values = np.array(row.values)
        if len(values) >= _BOXED:
            low, middle, high = np.quantile(values, [0.25, 0.5, 0.75])
            axes.barh(at, high - low, left=low, height=0.62, color=theme.accent, alpha=0.20,
                      linewidth=0, zorder=1)  # fmt: skip
            axes.vlines(middle, at - 0.34, at + 0.34, color=theme.accent, linewidth=2.2, zorder=3)
        # Set apart evenly, and the same each time: dots that lie on each other look like one.
        off = ((np.arange(len(values)) * _GOLDEN) % 1.0 - 0.5) * 0.42
        axes.scatter(values, at + off, s=13, color=theme.ink, alpha=0.65, linewidths=0, zorder=2)
        if row.limit is not None:
            axes.vlines(row.limit, at - 0.42, at + 0.42, color=theme.role("fault"), linewidth=1.8,
                        linestyle=(0, (2, 1)), zorder=4)  # fmt: skip
    names = [row.name for row in rows]
    thinned = names if len(names) <= _TALL else [n if i % 2 == 0 else "" for i, n in
                                                 enumerate(names)]  # fmt: skip
    axes.set_yticks(range(len(rows)), thinned)
    axes.set_ylim(len(rows) - 0.4, -0.6)


def _skills(axes: Axes, shown: Picture, style: Style) -> None:
    _rows(axes, shown.skills, style)
    axes.set_xlim(-0.02, 1.02)
    _percent(axes, on="x")
    axes.set_xlabel(style.words["score"])


def _times(axes: Axes, shown: Picture, style: Style) -> None:
    _rows(axes, shown.times, style)
    longest = max((max(row.values) for row in shown.times if row.values), default=1.0)
    axes.set_xlim(0.0, longest * 1.05)
    axes.xaxis.set_major_locator(MaxNLocator(nbins=6, steps=[1, 2, 5, 10]))
    axes.xaxis.set_major_formatter(FuncFormatter(lambda x, _: _plain(x, style)))
    axes.set_xlabel(style.words["minutes"])


def _plain(value: float, style: Style) -> str:
    return style.number(value, 0 if abs(value - round(value)) < 1e-9 else 1)


def _items(axes: Axes, shown: Picture, style: Style) -> None:
    """Difficulty across, discrimination up: what is low or left wants a look."""
    theme, words = style.theme, style.words
    axes.axhspan(-1.05, 0.0, color=theme.role("fault"), alpha=0.09, linewidth=0, zorder=0)
    axes.axhline(0.0, color=theme.role("fault"), linewidth=1.2, linestyle=(0, (5, 3)), zorder=1)
    for spot in _apart(shown.spots):
        if spot.low is not None and spot.high is not None:
            axes.vlines(spot.difficulty, spot.low, spot.high, color=theme.outline, linewidth=0.9,
                        zorder=2)  # fmt: skip
        below = spot.discrimination < 0.0
        axes.scatter([spot.difficulty], [spot.discrimination], s=34, zorder=3,
                     marker="D" if below else "o",
                     color=theme.role("fault") if below else theme.accent)  # fmt: skip
        axes.annotate(spot.name, (spot.difficulty, spot.discrimination), xytext=(5, 3),
                      textcoords="offset points", fontsize=8.5, color=theme.ink,
                      zorder=4)  # fmt: skip
    axes.annotate(words["backwards"], (0.0, -0.03), xytext=(4, -2), textcoords="offset points",
                  va="top", fontsize=8.5, color=theme.muted)  # fmt: skip
    axes.set_xlim(-0.03, 1.06)
    lowest = min([-0.35, *(s.low if s.low is not None else s.discrimination for s in shown.spots)])
    axes.set_ylim(max(-1.05, lowest - 0.05), 1.05)
    axes.set_xlabel(words["difficulty"])
    axes.set_ylabel(words["discrimination"])
    _percent(axes, on="x")
    axes.yaxis.set_major_locator(MultipleLocator(0.5))
    axes.yaxis.set_major_formatter(FuncFormatter(lambda y, _: style.number(y)))


def _apart(spots: Sequence[Spot]) -> list[Spot]:
    """Spots that lie on each other as one, with all their names."""
    found: dict[tuple[float, float], Spot] = {}
    for spot in spots:
        at = (round(spot.difficulty, 2), round(spot.discrimination, 2))
        before = found.get(at)
        name = f"{before.name}, {spot.name}" if before is not None else spot.name
        found[at] = replace(spot, name=name)
    return list(found.values())


def _distance(axes: Axes, shown: Picture, style: Style) -> None:
    """How often a call was wrong, by how far the weld lay from its limit."""
    theme, words = style.theme, style.words
    u = doubt("leg")
    axes.axvspan(-u, u, color=theme.well, zorder=0)
    axes.axvline(0.0, color=theme.role("limit"), linewidth=1.2, linestyle=(0, (5, 3)), zorder=1)
    for step in shown.steps:
        if abs(step.distance) > _REACH:
            continue
        miss = step.distance < 0.0
        colour = theme.role("fault") if miss else theme.accent
        axes.vlines(step.distance, step.wrong.low, step.wrong.high, color=colour, linewidth=1.1)
        axes.scatter([step.distance], [step.wrong.value], s=14.0 + 9.0 * step.wrong.of**0.5,
                     color=colour, marker="s" if miss else "o", zorder=3)  # fmt: skip
    for at, text, side in ((-0.97, "misses", "left"), (0.97, "false alarms", "right")):
        axes.annotate(words[text], (at, 1.0), ha=side, va="top", fontsize=9.5,
                      color=theme.role("fault") if side == "left" else theme.accent)  # fmt: skip
    axes.annotate(words["doubt"], (0.0, 1.0), xytext=(0, 9), textcoords="offset points",
                  ha="center", va="bottom", fontsize=8.5, color=theme.muted)  # fmt: skip
    axes.set_xlim(-_REACH, _REACH)
    axes.set_ylim(-0.03, 1.03)
    axes.set_xlabel(words["distance"])
    axes.set_ylabel(words["wrong"])
    axes.xaxis.set_major_locator(MultipleLocator(0.5))
    axes.xaxis.set_major_formatter(FuncFormatter(lambda x, _: style.number(x)))
    _percent(axes, on="y")


Plot = Callable[[Axes, Picture, Style], None]
PLOTS: Final[Mapping[str, Plot]] = {
    "skills": _skills,
    "items": _items,
    "distance": _distance,
    "times": _times,
}
"""What is drawn, in the order that it is shown in."""
