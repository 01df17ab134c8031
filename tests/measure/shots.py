"""The pictures of one size, taken in one process; `tests.measure.screens` starts it."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Final

import numpy as np
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage

from tests.measure.likeness import Picture, reduced, unlikeness
from tests.measure.logbook_shots import leave_logbook, logbook, logbook_empty
from tests.measure.photo_shots import (
    debrief_photo,
    photo_check,
    photo_straighten,
    photo_trace,
)
from tests.measure.placed_shots import fault_asked, fault_found, size_stated
from tests.measure.results_shots import RESULTS_SHOTS, results_brought, results_override
from tests.measure.scan_shots import scan_asks, scan_found, scan_refused
from tests.measure.screens import KEPT, OUT
from tests.measure.shop_shots import (
    dice,
    shop,
    shop_doubt,
    shop_leaves,
    shop_traced,
    shop_wrong,
)
from tests.measure.sitting_shots import SHOTS as SITTING_SHOTS
from tests.measure.sitting_shots import seal
from tests.measure.stage import Stage, stage
from tests.measure.taking_shots import SHOTS as TAKING_SHOTS
from tests.measure.taking_shots import end_sitting, sitting_hand_in, sitting_leave
from trainer.notices import FaultRow
from trainer.settings import Appearance

__all__ = ["DIALOGS", "SCREENS", "SPANISH", "main", "picture_of"]

WIDTH: Final = 180
"""Pixels that a reference is wide."""

_LOSSLESS: Final = 100
"""The quality of a WebP picture that loses nothing: an encoder's noise would be no likeness."""

LOOKS: Final[tuple[Appearance, ...]] = ("light", "dark")
Key = Qt.Key
Wanted = Callable[[str], bool]
"""Whether a picture of that name is to be taken."""


def waiting(on: Stage) -> None:
    """A coupon laid out, all leaves on the rack."""
    on.lay_out(0)


def focus(on: Stage) -> None:
    """The keyboard's focus on a control."""
    on.lay_out(0)
    on.tab_to(on.bench.rack_panel.sets["inch"])


def guide_offer(on: Stage) -> None:
    """The guide is offered."""
    on.lay_out(0)
    on.frame.settings = replace(on.frame.settings, guide_done=False)
    on.guiding.offer()


def guide_step(on: Stage) -> None:
    """The guide, on the way."""
    on.lay_out(0)
    on.guiding.begin()
    on.click(on.bench.call_panel.faces.buttons["convex"])
    on.key(Key.Key_8)


def seated(on: Stage) -> None:
    """A leaf pressed home, one reading stated."""
    on.lay_out(0)
    on.key(Key.Key_8, Key.Key_Space, Key.Key_D)


def loupe(on: Stage) -> None:
    """As close as marked work may look, at the throat edge of another coupon."""
    on.lay_out(1)
    on.key(Key.Key_6, Key.Key_E, Key.Key_Space, *[Key.Key_Plus] * 4)


def debrief_right(on: Stage) -> None:
    """All of it right."""
    on.lay_out(0)
    on.key(Key.Key_8, Key.Key_Space, Key.Key_D, Key.Key_F, Key.Key_Space, Key.Key_H)
    on.state_call("convex", "add weld metal")


def debrief_wrong(on: Stage) -> None:
    """Nearly all of it wrong."""
    on.lay_out(0)
    on.key(Key.Key_8, Key.Key_Space, Key.Key_T)
    on.state_call("flat", "accept")


def replay(on: Stage) -> None:
    """A moment of the handling, the truth taken off."""
    debrief_right(on)
    on.key(Key.Key_T, Key.Key_Left, Key.Key_Left)


def corners(on: Stage) -> None:
    """The four corners, as they are first seen."""
    on.frame.show_screen("corners")


def reference(on: Stage) -> None:
    """The table of a rule set, found by its name."""
    on.frame.look_up("rules.aws-d1.1-static")
    on.settle()


def reference_search(on: Stage) -> None:
    """What was found, and an entry with its formula; the keys are in the search."""
    on.frame.look_up("doubt.eye")
    on.look_for("eye limit")


SCREENS: Final[dict[str, Callable[[Stage], object]]] = {
    "waiting": waiting,
    "focus": focus,
    "guide-offer": guide_offer,
    "guide-step": guide_step,
    "seated": seated,
    "loupe": loupe,
    "debrief-right": debrief_right,
    "debrief-wrong": debrief_wrong,
    "replay": replay,
    "corners": corners,
    "reference": reference,
    "reference-search": reference_search,
    "photo-straighten": photo_straighten,
    "photo-trace": photo_trace,
    "photo-check": photo_check,
    "debrief-photo": debrief_photo,
    "fault-asked": fault_asked,
    "fault-found": fault_found,
    "size-stated": size_stated,
    "scan-found": scan_found,
    "scan-asks": scan_asks,
    "scan-refused": scan_refused,
    "shop": shop,
    "shop-doubt": shop_doubt,
    "shop-leaves": shop_leaves,
    "shop-wrong": shop_wrong,
    "shop-traced": shop_traced,
    "logbook-empty": logbook_empty,
    "logbook": logbook,
    **SITTING_SHOTS,
    **TAKING_SHOTS,
    **RESULTS_SHOTS,
}

FAULTS: Final = (
    FaultRow("/coupons/0/bead/crown", "a crown of -9 enters a member", "greater than -4.2"),
    FaultRow("/coupons/3", 'there is a key "colour" that trays don\'t have', "no such key"),
)


def keys(on: Stage) -> None:
    """The sheet of keys, of all screens: one that was never shown has said none yet."""
    for screen in ("corners", "reference", "shop"):
        on.frame.show_screen(screen)
    on.frame.show_screen("bench")
    on.frame.show_keys()


DIALOGS: Final[dict[str, Callable[[Stage], object]]] = {
    "first-start": lambda on: on.frame.show_first_start(),
    "keys": keys,
    "faults": lambda on: on.frame.show_faults("railings.tray.json", FAULTS),
    "dice": dice,
    "rules": lambda on: on.click(on.bench.job_card.rules),
    "results-override": results_override,
    "results-brought": results_brought,
    "seal": seal,
    "sitting-hand-in": sitting_hand_in,
    "sitting-leave": sitting_leave,
}

SPANISH: Final = frozenset({
    "waiting", "seated", "debrief-wrong", "guide-step", "corners", "reference", "shop",
    "shop-doubt", "logbook", "compose-tray", "compose-learners", "taking-rules", "sitting-middle",
    "class-room", "class-server", "results-coupons", "results-paper", "keys", "seal", "dice",
})  # fmt: skip
"""The screens and dialogs that have the least room to spare: the longer language shows it."""


def picture_of(image: QImage) -> Picture:
    """Return an image's values, (height, width, 3)."""
    image = image.convertToFormat(QImage.Format.Format_RGB888)
    flat = np.frombuffer(image.constBits(), dtype=np.uint8)
    rows = flat.reshape(image.height(), image.bytesPerLine())[:, : 3 * image.width()]
    return rows.reshape(image.height(), image.width(), 3).copy()


def shots(on: Stage, *, dialogs: bool, wanted: Wanted) -> Iterator[tuple[str, QImage]]:
    """Yield each screen's name and picture, and each dialog's, in the look that is on."""
    first = on.bench.course.tray
    for name, play in SCREENS.items():
        if wanted(name):
            play(on)
            yield name, on.picture()
            on.guiding.close()
            end_sitting(on)
            leave_logbook(on)
            on.frame.show_screen("bench")
            if on.bench.course.tray is not first:
                on.bench.open_tray(first)
    for name, show in DIALOGS.items():
        if dialogs and wanted(name):
            end_sitting(on)
            on.lay_out(0)
            yield name, on.dialog(lambda show=show: show(on))  # type: ignore[misc]  # bound now
            # A sitting that was left open would lend the next look's bench its coupons.
            end_sitting(on)
            on.frame.show_screen("bench")


def kept_file(name: str) -> Path:
    """Where the reference of a picture is."""
    file: Path = KEPT / f"{name}.webp"
    return file


def keep(name: str, picture: Picture) -> None:
    """Make a picture the reference."""
    small = np.ascontiguousarray(reduced(picture, min(WIDTH, picture.shape[1])))
    height, width = small.shape[:2]
    image = QImage(small.tobytes(), width, height, 3 * width, QImage.Format.Format_RGB888)
    image.save(str(kept_file(name)), quality=_LOSSLESS)


def judged(name: str, picture: Picture) -> str:
    """Return what is wrong with a picture, beside its reference; empty if nothing is."""
    reference = QImage(str(kept_file(name)))
    if reference.isNull():
        return "has no reference"
    try:
        found = unlikeness(picture, picture_of(reference))
    except ValueError as error:
        return str(error)
    across, down = (round(100 * share) for share in found.at)
    told = f"worst {found.worst:.1f} at {across} %, {down} %; mean {found.mean:.2f}"
    print(f"{name}: {told}")
    return "" if found.alike else told


def arguments() -> argparse.Namespace:
    """Read the command line."""
    parser = argparse.ArgumentParser()
    for number in ("width", "height", "scale"):
        parser.add_argument(number, type=int)
    parser.add_argument("word", nargs="?", default="")
    parser.add_argument("--renew", action="store_true")
    parser.add_argument("--language", default="en", choices=("en", "es"))
    return parser.parse_args()


def main() -> int:
    """Take this size's pictures and keep or compare them."""
    asked = arguments()
    OUT.mkdir(parents=True, exist_ok=True)
    KEPT.mkdir(exist_ok=True)
    english = asked.language == "en"
    size = f"{asked.width}x{asked.height}-{asked.scale}x"
    # Dialogs are as large as they are, whatever the window is.
    dialogs = (asked.width, asked.height) == (1280, 720)
    faults = []
    with stage("light", language=asked.language) as on:
        on.resize(asked.width, asked.height)
        # Words take the same room in both looks.
        for look in LOOKS if english else LOOKS[:1]:
            on.wear(look)
            names = shots(
                on,
                dialogs=dialogs,
                wanted=lambda name: asked.word in name and (english or name in SPANISH),
            )
            for name, image in names:
                whole = f"{name}-{size}-{look}{'' if english else '-es'}"
                image.save(str(OUT / f"{whole}.png"))
                picture = picture_of(image)
                if asked.renew:
                    keep(whole, picture)
                    continue
                wrong = judged(whole, picture)
                faults += [f"{whole}: {wrong}"] if wrong else []
    for fault in faults:
        print(f"UNLIKE  {fault}", file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
