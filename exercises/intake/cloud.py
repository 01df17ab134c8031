"""Points in order, cleaned: what is kept, what is left out and why, how much they scatter."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from exercises.intake.outline import Outline
from exercises.intake.refusal import refused
from geometry.faults import Fault

__all__ = ["FEWEST", "Cloud", "Why", "cloud_of_outlines", "cloud_of_points", "scatter"]

FloatArray = NDArray[np.float64]
Why = Literal["outlier", "stray"]

FEWEST: Final = 30
"""Points below which no fit says anything."""

_MOST_FITTED: Final = 6000
"""Points that are fitted to: a profile seldom has more, and the time rises with the square."""

_DENSE: Final = 3000
_SMALLEST, _LARGEST = 1.0, 2000.0
_SIDE: Final = 7


@dataclass(frozen=True, slots=True, eq=False)
class Cloud:
    """Points of a profile in millimetres.

    Parameters
    ----------
    runs
        What is kept: each (N, 2), in order along the profile.
    closed
        Whether each run closes on itself.
    removed, whys
        What is left out (M, 2), and why: a lone ``outlier``, or a ``stray`` patch.
    unseen
        Where across nothing was seen, mm.
    noise
        Scatter square to the profile, mm, standard.
    every
        Of so many points one is used.
    exact
        Whether it was drawn, not scanned.
    """

    runs: tuple[FloatArray, ...]
    closed: tuple[bool, ...]
    removed: FloatArray
    whys: tuple[Why, ...]
    unseen: FloatArray
    noise: float
    every: int = 1
    exact: bool = False

    @property
    def kept(self) -> FloatArray:
        """All points that are kept, (N, 2)."""
        return np.vstack(self.runs)


def cloud_of_points(x: FloatArray, z: FloatArray, name: str = "") -> Cloud:
    """Return the cloud of a scan: `x` and `z` in mm, NaN where nothing was seen.

    Raises
    ------
    IntakeError
        If too few points are left, or they reach too far or not far enough for a weld.

    Examples
    --------
    >>> x = np.linspace(0.0, 10.0, 101)
    >>> z = np.where(x == 5.0, 4.0, 0.0)
    >>> cloud_of_points(x, z).removed.tolist()
    [[5.0, 4.0]]
    """
    seen = np.isfinite(z)
    unseen, points = x[~seen], np.column_stack([x[seen], z[seen]])
    points, sentinels = _without_sentinels(points)
    unseen = np.concatenate([unseen, sentinels])
    every = max(1, -(-len(points) // _MOST_FITTED))
    points = _in_order(points[::every])
    _check_count(points, name)
    kept, whys = _sorted_out(points)
    _check_count(points[kept], name)
    _check_size(points[kept], name)
    return Cloud(
        (points[kept],),
        (False,),
        points[~kept],
        whys,
        unseen,
        scatter(points[kept]),
        every,
    )


def cloud_of_outlines(outlines: Sequence[Outline], scale: float, name: str = "") -> Cloud:
    """Return the cloud of drawn outlines, in which one unit is `scale` mm.

    Their sides are filled with points, so that long ones weigh as much as curves do.

    Raises
    ------
    IntakeError
        If they reach too far or not far enough for a weld.
    """
    total = sum(one.length for one in outlines) * scale
    step = max(total / _DENSE, 1e-9)
    runs = tuple(_filled(one.points * scale, step, closed=one.closed) for one in outlines)
    _check_size(np.vstack(runs), name)
    nothing = np.zeros((0, 2))
    shut = tuple(one.closed for one in outlines)
    return Cloud(runs, shut, nothing, (), np.zeros(0), 0.0, exact=True)


def _check_count(points: FloatArray, name: str) -> None:
    if len(points) < FEWEST:
        text = f"only {len(points)} points are left to fit to"
        right = f"{FEWEST} or more, over both members and the face"
        told: dict[str, float | str] = {"count": len(points), "least": FEWEST}
        raise refused(name, Fault("", "fit-few-points", text, right, told))


def _check_size(points: FloatArray, name: str) -> None:
    size = float(np.ptp(points, axis=0).max())
    if not _SMALLEST <= size <= _LARGEST:
        text = f"the points reach over {size:.3g} mm"
        right = f"a section of {_SMALLEST:g} to {_LARGEST:g} mm; is the unit the right one?"
        told: dict[str, float | str] = {"size": size, "lowest": _SMALLEST, "highest": _LARGEST}
        raise refused(name, Fault("", "fit-size", text, right, told))


def _filled(points: FloatArray, step: float, *, closed: bool) -> FloatArray:
    ends = np.vstack([points, points[:1]]) if closed else points
    parts = []
    for start, end in itertools.pairwise(ends):
        count = max(1, int(np.ceil(np.hypot(*(end - start)) / step)))
        parts.append(start + np.outer(np.arange(count) / count, end - start))
    return np.vstack(parts if closed else [*parts, ends[-1:]])


def _without_sentinels(points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Points less those at a height that only stands for "nothing seen", and where those were."""
    if len(points) < FEWEST:
        return points, np.zeros(0)
    z = points[:, 1]
    low, high = np.quantile(z, [0.1, 0.9])
    reach = max(high - low, 1e-9)
    gone = np.zeros(len(z), bool)
    for end in (z.min(), z.max()):
        same = z == end
        if same.sum() >= 3 and same.mean() < 0.5 and not low - 5 * reach < end < high + 5 * reach:
            gone |= same
    return points[~gone], points[gone, 0]


def _in_order(points: FloatArray) -> FloatArray:
    """The points as the file has them, or across, whichever way is the shorter."""
    across = points[np.argsort(points[:, 0], kind="stable")]
    return across if _way(across) < 0.8 * _way(points) else points


def _way(points: FloatArray) -> float:
    steps = np.hypot(*np.diff(points, axis=0).T)
    return float(np.minimum(steps, 20.0 * np.median(steps) + 1e-12).sum()) if len(steps) else 0.0


def scatter(points: FloatArray) -> float:
    """Return how much points scatter square to their profile, mm, standard; robustly.

    Each is compared with the middle of two neighbours a little way off, so that no curve counts.

    Examples
    --------
    >>> rng = np.random.default_rng(1)
    >>> x = np.linspace(0.0, 30.0, 2000)
    >>> bool(abs(scatter(np.column_stack([x, rng.normal(0.0, 0.05, 2000)])) - 0.05) < 0.005)
    True
    """
    if len(points) < 5:
        return 0.0
    # Smoothed ends of the chord would mix in the curve; raw ones are white, and so is their mean.
    before, middle, after = points[:-4], points[2:-2], points[4:]
    along = _directions(points)[2:-2]
    off = middle - (before + after) / 2.0
    square = np.abs(off[:, 0] * along[:, 1] - off[:, 1] * along[:, 0])
    return float(np.median(square) * 1.4826 / np.sqrt(1.5))


def _directions(points: FloatArray, side: int = 12) -> FloatArray:
    """Which way the profile runs at each point, from the means of a dozen on both sides."""
    padded = np.pad(points, ((side, side), (0, 0)), mode="edge")
    sums = np.vstack([np.zeros(2), np.cumsum(padded, axis=0)])
    count = len(points)
    ahead = sums[2 * side + 1 : 2 * side + 1 + count] - sums[side + 1 : side + 1 + count]
    behind = sums[side : side + count] - sums[:count]
    way = ahead - behind
    return np.asarray(way / np.maximum(np.hypot(*way.T), 1e-12)[:, None], float)


def _sorted_out(points: FloatArray) -> tuple[NDArray[np.bool_], tuple[Why, ...]]:
    """Which points are kept, and why each of the others isn't."""
    why = np.zeros(len(points), np.int8)
    for _ in range(3):
        kept = np.flatnonzero(why == 0)
        if len(kept) < FEWEST:
            break
        bad = _lone(points[kept])
        if not bad.any():
            break
        why[kept[bad]] = 1
    kept = np.flatnonzero(why == 0)
    if len(kept) >= FEWEST:
        why[kept[_patches(points[kept])]] = 2
    words: tuple[Why, ...] = tuple("outlier" if code == 1 else "stray" for code in why[why > 0])
    return why == 0, words


def _lone(points: FloatArray) -> NDArray[np.bool_]:
    """Points farther off the line between their neighbours' middles than these scatter."""
    noise = scatter(points)
    padded = np.pad(points, ((_SIDE, _SIDE), (0, 0)), mode="edge")
    windows = sliding_window_view(padded, _SIDE, axis=0)
    before = np.median(windows[: len(points)], axis=2)
    after = np.median(windows[_SIDE + 1 :], axis=2)
    chord = after - before
    reach = np.hypot(*chord.T)
    off = points - (before + after) / 2.0
    unit = chord / np.maximum(reach, 1e-12)[:, None]
    square = np.abs(off[:, 0] * unit[:, 1] - off[:, 1] * unit[:, 0])
    return np.asarray(square > 6.0 * noise + 0.8 * np.maximum(reach, 1e-9), bool)


def _patches(points: FloatArray) -> NDArray[np.int64]:
    """Short runs that stand off both neighbours, where those join up without them."""
    steps = np.hypot(*np.diff(points, axis=0).T)
    far = max(12.0 * float(np.median(steps)), 10.0 * scatter(points))
    starts = np.concatenate([[0], np.flatnonzero(steps > far) + 1, [len(points)]])
    most = max(6, int(0.015 * len(points)))
    found: list[NDArray[np.int64]] = []
    for first, last in itertools.pairwise(starts):
        if last - first > most or last - first == len(points):
            continue
        if first > 0 and last < len(points):
            gap = float(np.hypot(*(points[last] - points[first - 1])))
            if gap > steps[first - 1] or gap > steps[last - 1]:
                continue
        found.append(np.arange(first, last))
    return np.concatenate(found) if found else np.zeros(0, np.int64)
