"""How a leaf feels in the hand: stored pointer paths played through the real window.

Each path in ``tests/measure/paths`` brings its own coupon, leaf and first pose. It is played twice
with real X events: once to measure, once to photograph the screen. For each path this writes to
``tests/out/feel``

- ``NAME.chart.png``: pointer, grabbed point, angle and contacts over time;
- ``NAME.film.png``: the section as the screen showed it, frame by frame;

and prints input to paint (from an X event's own stamp to the flush of the frame that shows it), how
often the angle turned back under a steady push, and how far the grab strayed from a free pointer.

Run it as ``python -m tests.measure.feel [NAME...]``; it needs the extra ``measure``.
"""

from __future__ import annotations

import json
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import matplotlib as mpl
from matplotlib import pyplot as plt

from tests.measure.child import Child
from tests.measure.xscreen import Pointer, sampled, virtual_screen

__all__ = ["main"]

HERE: Final = Path(__file__).resolve().parent
OUT: Final = HERE.parent / "out" / "feel"

RATE: Final = 250.0
"""Pointer events a second, as a good mouse sends them."""

STILL: Final = 0.01
"""Degrees: a change of angle below this is none."""

FRAMES: Final = 12
"""Pictures in a film strip."""

REST: Final = 0.5
"""Seconds that the hand stays after the last move."""

Frame = dict[str, Any]
Row = tuple[float, float, float]


@dataclass(frozen=True)
class Stored:
    """One stored path: a coupon, a leaf laid at a pose and grabbed, and where the pointer goes.

    Rows of `moves` are ms from the press and mm from where the pointer pressed.
    """

    name: str
    title: str
    steady: bool
    tray: dict[str, Any]
    lay: dict[str, Any]
    press: tuple[float, float]
    moves: tuple[Row, ...]

    @classmethod
    def load(cls, file: Path) -> Stored:
        """Read a file of `paths`."""
        held = json.loads(file.read_text(encoding="utf-8"))
        coupon = {"id": file.stem, "title": held["title"], **held["coupon"]}
        tray = {"format": "toe-and-throat/tray", "version": 1, "title": "Feel", "coupons": [coupon]}
        return cls(
            name=file.stem,
            title=held["title"],
            steady=held["steady"],
            tray=tray,
            lay=held["lay"],
            press=(held["press"][0], held["press"][1]),
            moves=tuple((row[0], row[1], row[2]) for row in held["moves"]),
        )


def on_screen(view: dict[str, Any], x: float, y: float) -> tuple[float, float]:
    """Return a point of the section (mm) in device pixels of the screen."""
    width, height = view["size"]
    across = width / 2.0 + (x - view["centre"][0]) * view["scale"]
    down = height / 2.0 - (y - view["centre"][1]) * view["scale"]
    ratio = view["ratio"]
    return (view["origin"][0] + across) * ratio, (view["origin"][1] + down) * ratio


def play(
    stored: Stored, pointer: Pointer, film: Path | None = None
) -> tuple[list[Frame], dict[str, Any]]:
    """Play one path in a fresh program; return its frames and how the section was looked at."""
    with tempfile.TemporaryDirectory() as made:
        tray = Path(made) / "feel.tray.json"
        tray.write_text(json.dumps(stored.tray), encoding="utf-8")
        with Child(str(tray)) as child:
            child.awaited("ready")
            child.awaited("paint")
            view = child.tell("lay", **stored.lay)
            if film is not None:
                last = stored.moves[-1][0]
                at = [last * i / (FRAMES - 1) for i in range(FRAMES)]
                child.tell("film", at=at, folder=str(film))
            x, y = stored.press
            rows = [
                (ms, *on_screen(view, x + dx, y + dy))
                for ms, dx, dy in sampled([(0.0, 0.0, 0.0), *stored.moves], RATE)
            ]
            pointer.move(*rows[0][1:])
            time.sleep(0.3)
            pointer.press()
            pointer.play(rows)
            time.sleep(REST)
            pointer.release()
            time.sleep(REST)
            return child.notes("frame"), view


def delays(frames: list[Frame]) -> list[float]:
    """Return input to paint of every pointer event, ms."""
    return [(frame["at"] - stamp) * 1000.0 for frame in frames for stamp in frame["events"]]


def reversals(frames: list[Frame]) -> int:
    """Return how often the angle turned back, by more than `STILL`."""
    count, way, turning = 0, 0, frames[0]["angle"]
    for frame in frames:
        step = frame["angle"] - turning
        if abs(step) < STILL:
            continue
        now = 1 if step > 0.0 else -1
        count += now == -way
        way, turning = now, frame["angle"]
    return count


def strayed(frames: list[Frame], scale: float) -> float | None:
    """Return how far the grab was from the pointer at most while nothing touched, pixels."""
    apart = [
        ((f["grab"][0] - f["pointer"][0]) ** 2 + (f["grab"][1] - f["pointer"][1]) ** 2) ** 0.5
        for f in frames
        if not f["touches"]
    ]
    return max(apart) * scale if apart else None


def draw_chart(stored: Stored, frames: list[Frame], file: Path) -> None:
    """Draw pointer, grab, angle, contacts and delay over time."""
    t = [frame["ms"] for frame in frames]
    figure, (place, angle, contact, delay) = plt.subplots(
        4, 1, sharex=True, figsize=(11, 11), height_ratios=[3, 2, 2, 2], layout="constrained"
    )
    for axis, name in ((0, "x"), (1, "y")):
        colour = ("tab:blue", "tab:orange")[axis]
        place.plot(
            t, [f["pointer"][axis] for f in frames], ":", color=colour, label=f"pointer {name}"
        )
        place.plot(t, [f["grab"][axis] for f in frames], color=colour, label=f"grab {name}")
    place.set(title=stored.title, ylabel="mm")
    place.legend(ncols=2)
    angle.plot(t, [f["angle"] for f in frames], "k.-", markersize=3)
    angle.set(ylabel="angle, degrees")
    names = sorted({name for f in frames for name in f["touches"]})
    for row, name in enumerate(names):
        hits = [at for at, f in zip(t, frames, strict=True) if name in f["touches"]]
        contact.plot(hits, [row] * len(hits), "|", markersize=8)
    contact.set(yticks=range(len(names)), yticklabels=names, ylabel="contacts")
    shown = [(at, max(delays([f]))) for at, f in zip(t, frames, strict=True) if f["events"]]
    delay.plot(*zip(*shown, strict=True), "k.", markersize=3)
    delay.axhline(1000.0 / 60.0, color="tab:green", label="one frame at 60 Hz")
    delay.axhline(2000.0 / 60.0, color="tab:red", label="two")
    delay.set(ylabel="input to paint, ms", xlabel="ms", ylim=(0, None))
    delay.legend()
    figure.savefig(file, dpi=110)
    plt.close(figure)


def draw_film(stored: Stored, view: dict[str, Any], pictures: Path, file: Path) -> None:
    """Lay the photographs of the canvas side by side."""
    left, top = (round(part * view["ratio"]) for part in view["origin"])
    width, height = (round(part * view["ratio"]) for part in view["size"])
    shots = sorted(pictures.glob("*.png"))
    columns = 4
    rows = max(1, -(-len(shots) // columns))
    size = (16, 0.3 + rows * 4 * height / width)
    figure, axes = plt.subplots(rows, columns, figsize=size, layout="constrained", squeeze=False)
    for cell in axes.flat:
        cell.axis("off")
    for cell, shot in zip(axes.flat, shots, strict=False):
        cell.imshow(plt.imread(shot)[top : top + height, left : left + width])
        cell.set_title(f"{int(shot.stem)} ms", fontsize=9)
    figure.suptitle(stored.title)
    figure.savefig(file, dpi=110)
    plt.close(figure)


def report(stored: Stored, frames: list[Frame], view: dict[str, Any]) -> str:
    """Return a line of figures."""
    late = sorted(delays(frames))
    rare = late[int(0.99 * (len(late) - 1))]
    first, last = frames[0]["angle"], frames[-1]["angle"]
    parts = [
        f"{stored.name:<8} {len(frames):4d} frames",
        f"input to paint {statistics.median(late):5.1f} ms, 99th percentile {rare:5.1f}",
        f"angle {first:.2f} to {last:.2f}, turned back {reversals(frames)} times",
    ]
    apart = strayed(frames, view["scale"] * view["ratio"])
    if apart is not None:
        parts.append(f"free grab within {apart:.2f} px")
    return "; ".join(parts)


def main() -> None:
    """Play, print and draw."""
    mpl.use("agg")
    OUT.mkdir(parents=True, exist_ok=True)
    wanted = sys.argv[1:]
    files = [f for f in sorted((HERE / "paths").glob("*.json")) if not wanted or f.stem in wanted]
    bad = False
    everything: list[float] = []
    with virtual_screen(), Pointer() as pointer:
        for stored in map(Stored.load, files):
            frames, view = play(stored, pointer)
            everything += delays(frames)
            print(report(stored, frames, view), flush=True)
            bad |= stored.steady and reversals(frames) > 0
            draw_chart(stored, frames, OUT / f"{stored.name}.chart.png")
            with tempfile.TemporaryDirectory() as made:
                _, view = play(stored, pointer, Path(made))
                draw_film(stored, view, Path(made), OUT / f"{stored.name}.film.png")
    everything.sort()
    median, last = statistics.median(everything), everything[int(0.99 * (len(everything) - 1))]
    print(f"all: input to paint {median:.1f} ms, 99th percentile {last:.1f}; charts in {OUT}")
    if bad:
        sys.exit("the angle turned back under a steady push")


if __name__ == "__main__":
    main()
