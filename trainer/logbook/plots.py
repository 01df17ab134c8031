"""Pictures of what a logbook says, drawn by matplotlib without Qt and without its global state.

Each takes a figure and draws one finding in the colours of a theme: what was seen as marks whose
size tells how much they rest on, what is believed as a line with its 95 % about it, limits as
dashed lines with their name. Shapes differ as well as colours.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from matplotlib import font_manager
from matplotlib.axes import Axes
from matplotlib.dates import AutoDateLocator, ConciseDateFormatter
from matplotlib.figure import Figure
from matplotlib.ticker import FuncFormatter, MaxNLocator, MultipleLocator

from exercises.doubt import doubt
from exercises.learner.demonstration import Share
from trainer.assets import asset
from trainer.logbook.findings import Findings, SureStep, Week
from trainer.look.tokens import Theme

__all__ = ["PLOTS", "Plot", "Style", "draw", "style_of"]

_FAULTS_SHOWN: Final = 7
_REACH: Final = 1.0
"""mm on either side of the limit that the line is drawn over."""


@dataclass(frozen=True, slots=True)
class Style:
    """How a picture looks: colours of a theme, and words in one language.

    Parameters
    ----------
    theme
        Colours.
    words
        Every word of the pictures by its key; see `trainer.logbook.words.plot_words`.
    decimal
        The decimal sign.
    """

    theme: Theme
    words: Mapping[str, str]
    decimal: str = "."

    def number(self, value: float, digits: int = 1) -> str:
        """A number as it is written here."""
        return f"{value:.{digits}f}".replace("-", "\N{MINUS SIGN}").replace(".", self.decimal)


def style_of(theme: Theme, words: Mapping[str, str], decimal: str = ".") -> Style:
    """Return a style, with our own font known to matplotlib."""
    known = {entry.fname for entry in font_manager.fontManager.ttflist}
    for file in sorted(asset("fonts").glob("*.ttf")):
        if str(file) not in known:
            font_manager.fontManager.addfont(str(file))
    return Style(theme, words, decimal)


def draw(name: str, figure: Figure, findings: Findings, style: Style) -> None:
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
    axes.xaxis.label.set_color(theme.muted)
    axes.yaxis.label.set_color(theme.muted)
    PLOTS[name](axes, findings, style)
    for text in (axes.xaxis.label, axes.yaxis.label, *axes.get_xticklabels(),
                 *axes.get_yticklabels(), *axes.texts):  # fmt: skip
        text.set_fontfamily(["Inter", "DejaVu Sans"])
    figure.set_layout_engine("constrained")


def _percent(axes: Axes, *, on: str = "y") -> None:
    axis = axes.yaxis if on == "y" else axes.xaxis
    axis.set_major_formatter(FuncFormatter(lambda share, _: f"{100 * share:.0f} %"))


def _line(axes: Axes, findings: Findings, style: Style) -> None:
    """Share called short against distance: what was called, and the line that explains it."""
    theme, words = style.theme, style.words
    at = np.linspace(-_REACH, _REACH, 201)
    u = doubt("leg")
    axes.axvspan(-u, u, color=theme.well, zorder=0)
    axes.axvline(0.0, color=theme.role("limit"), linewidth=1.2, linestyle=(0, (5, 3)), zorder=1)
    if findings.belief is not None:
        low, middle, high = findings.belief.curves(at, (0.025, 0.5, 0.975))
        axes.fill_between(at, low, high, color=theme.accent, alpha=0.18, linewidth=0)
        axes.plot(at, middle, color=theme.accent, linewidth=2.0)
    for middle_at, share in findings.shares():
        if abs(middle_at) <= _REACH:
            size = 14.0 + 10.0 * share.of**0.5
            axes.vlines(middle_at, share.low, share.high, color=theme.muted, linewidth=1.0)
            axes.scatter([middle_at], [share.value], s=size, color=theme.ink, zorder=3)
    if findings.line is not None:
        bias = findings.line.bias
        axes.plot([bias.low, bias.high], [0.5, 0.5], color=theme.role("fault"), linewidth=3.0,
                  solid_capstyle="round", zorder=4)  # fmt: skip
        axes.scatter([bias.middle], [0.5], marker="D", s=46, color=theme.role("fault"), zorder=5)
    axes.set_xlim(-_REACH, _REACH)
    axes.set_ylim(-0.03, 1.03)
    axes.set_xlabel(words["distance"])
    axes.set_ylabel(words["called short"])
    axes.xaxis.set_major_locator(MultipleLocator(0.5))
    axes.xaxis.set_major_formatter(FuncFormatter(lambda x, _: style.number(x)))
    _percent(axes)
    axes.annotate(words["doubt"], (-u, -0.03), xytext=(-4, 3), textcoords="offset points",
                  ha="right", fontsize=8.5, color=theme.muted)  # fmt: skip
    axes.annotate(words["limit"], (0.0, 1.03), xytext=(4, -1), textcoords="offset points",
                  va="top", fontsize=8.5, color=theme.muted)  # fmt: skip


def _rates(axes: Axes, findings: Findings, style: Style) -> None:
    """Misses and false alarms with the limits for appraisers."""
    theme, words = style.theme, style.words
    rows = [
        (words["misses"], findings.rates.misses, (0.02, 0.05)),
        (words["false alarms"], findings.rates.false_alarms, (0.05, 0.10)),
    ]
    top = max([0.12, *(share.high for _, share, _ in rows if share is not None)])
    for row, (_, share, (good, fair)) in enumerate(rows):
        axes.barh(row, good, height=0.62, color=theme.role("good"), alpha=0.20, linewidth=0)
        axes.barh(row, fair - good, left=good, height=0.62, color=theme.role("daylight"),
                  alpha=0.16, linewidth=0)  # fmt: skip
        for limit in (good, fair):
            axes.vlines(limit, row - 0.31, row + 0.31, color=theme.muted, linewidth=1.0,
                        linestyle=(0, (3, 2)))  # fmt: skip
        if share is not None:
            _whisker(axes, share, row, theme)
    for key, colour, alpha in (("acceptable", "good", 0.20), ("marginal", "daylight", 0.16)):
        axes.barh([-9], [0], color=theme.role(colour), alpha=alpha, label=words[key])  # type: ignore[arg-type]
    legend = axes.legend(
        frameon=False, fontsize=9, labelcolor=theme.ink, ncols=2, loc="lower left",
        bbox_to_anchor=(0.0, 1.0), borderaxespad=0.2,
    )  # fmt: skip
    for text in legend.get_texts():
        text.set_fontfamily(["Inter", "DejaVu Sans"])
    axes.set_yticks(range(len(rows)), [name for name, _, _ in rows])
    axes.set_ylim(len(rows) - 0.5, -0.5)
    axes.set_xlim(0.0, min(1.0, top * 1.05))
    _percent(axes, on="x")


def _whisker(axes: Axes, share: Share, row: float, theme: Theme) -> None:
    axes.plot([share.low, share.high], [row, row], color=theme.ink, linewidth=1.6)
    axes.scatter([share.value], [row], s=52, color=theme.accent, edgecolor=theme.panel, zorder=3)
    axes.annotate(f"{share.count} / {share.of}", (share.value, row), xytext=(0, 9), ha="center",
                  textcoords="offset points", fontsize=8.5, color=theme.ink)  # fmt: skip


def _sure(axes: Axes, findings: Findings, style: Style) -> None:
    """How sure against how often right: on the diagonal one knows what one knows."""
    theme, words = style.theme, style.words
    steps: Sequence[SureStep] = findings.sure
    axes.plot([0, 1], [0, 1], color=theme.role("limit"), linewidth=1.2, linestyle=(0, (5, 3)))
    for step in steps:
        axes.vlines(step.sure, step.right.low, step.right.high, color=theme.muted, linewidth=1.0)
        axes.scatter([step.sure], [step.right.value], s=14.0 + 10.0 * step.right.of**0.5,
                     color=theme.accent, zorder=3)  # fmt: skip
    axes.set_xlim(-0.03, 1.03)
    axes.set_ylim(-0.03, 1.03)
    axes.set_xlabel(words["sure"])
    axes.set_ylabel(words["right"])
    _percent(axes)
    _percent(axes, on="x")


def _faults(axes: Axes, findings: Findings, style: Style) -> None:
    """Handling faults by kind, commonest on top."""
    theme = style.theme
    counts: Counter[str] = Counter()
    for code, count in findings.faults:
        counts[style.words.get(code, code)] += count
    shown = counts.most_common(_FAULTS_SHOWN)
    axes.barh(range(len(shown)), [count for _, count in shown], height=0.6, color=theme.accent)
    for row, (_, count) in enumerate(shown):
        axes.annotate(str(count), (count, row), xytext=(4, 0), textcoords="offset points",
                      va="center", fontsize=9, color=theme.ink)  # fmt: skip
    axes.set_yticks(range(len(shown)), [label for label, _ in shown])
    axes.set_ylim(max(len(shown), 1) - 0.4, -0.6)
    axes.xaxis.set_major_locator(MaxNLocator(integer=True, steps=[1, 2, 5, 10]))
    axes.set_xlabel(style.words["times"])


def _weeks(axes: Axes, findings: Findings, style: Style) -> None:
    """Marks over the weeks, and how often a bad weld was let go."""
    theme, words = style.theme, style.words
    weeks: Sequence[Week] = findings.weeks
    days = np.array([week.monday for week in weeks], dtype="datetime64[D]")
    axes.plot(days, [week.score for week in weeks], color=theme.accent, linewidth=2.0, marker="o",
              markersize=5, label=words["score"])  # fmt: skip
    missed = [(day, week.misses) for day, week in zip(days, weeks, strict=True) if week.misses]
    for day, share in missed:
        axes.vlines(day, share.low, share.high, color=theme.role("fault"), linewidth=1.0)
    axes.plot([day for day, _ in missed], [share.value for _, share in missed], linewidth=1.4,
              color=theme.role("fault"), linestyle=(0, (4, 2)), marker="s", markersize=5,
              label=words["misses"])  # fmt: skip
    axes.set_ylim(-0.03, 1.03)
    _percent(axes)
    # matplotlib leaves these two without types.
    locator = AutoDateLocator(minticks=2, maxticks=7)  # type: ignore[no-untyped-call]
    axes.xaxis.set_major_locator(locator)
    axes.xaxis.set_major_formatter(ConciseDateFormatter(locator))  # type: ignore[no-untyped-call]
    legend = axes.legend(
        frameon=False, fontsize=9, labelcolor=theme.ink, ncols=2, loc="lower left",
        bbox_to_anchor=(0.0, 1.0), borderaxespad=0.2,
    )  # fmt: skip
    for text in legend.get_texts():
        text.set_fontfamily(["Inter", "DejaVu Sans"])


Plot = Callable[[Axes, Findings, Style], None]
PLOTS: Final[Mapping[str, Plot]] = {
    "line": _line,
    "rates": _rates,
    "faults": _faults,
    "sure": _sure,
    "weeks": _weeks,
}
"""What is drawn, in the order that it is shown in."""
