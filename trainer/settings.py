"""What one person prefers, kept between starts. No Qt here."""

from __future__ import annotations

import json
import os
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Final, Literal

__all__ = [
    "Appearance",
    "LengthUnit",
    "Settings",
    "SymbolStandard",
    "load_settings",
    "save_settings",
]

Appearance = Literal["system", "light", "dark"]
LengthUnit = Literal["mm", "in"]
SymbolStandard = Literal["a2.4", "iso-a", "iso-b"]

_CHOICES: Final[dict[str, tuple[object, ...]]] = {
    "appearance": ("system", "light", "dark"),
    "unit": ("mm", "in", None),
    # "qps" is the pseudo-locale: for looking, so no menu offers it.
    "language": ("en", "es", "qps", None),
    "symbols": ("a2.4", "iso-a", "iso-b", None),
    "loupe": (True, False),
    "less_motion": (True, False),
    "first_start_seen": (True, False),
    "guide_done": (True, False),
}


@dataclass(frozen=True, slots=True)
class Settings:
    """Preferences, replaced whole.

    Parameters
    ----------
    appearance
        Light, dark, or as the system has it.
    unit
        What lengths are shown in; None is the unit of the coupon's own callout.
    language
        The tag of the language to speak; None is the system's, if there is a translation.
    symbols
        The standard that weld symbols are drawn by: AWS A2.4, ISO 2553 system A or B; None is the
        one that the drawing's unit suggests.
    loupe
        Whether the loupe stands on the tip.
    less_motion
        Whether nothing should glide or shake, even if the system doesn't ask for that.
    first_start_seen
        Whether the card of the first start has been read.
    guide_done
        Whether the guide to the first coupon has been followed or declined.
    """

    appearance: Appearance = "system"
    unit: LengthUnit | None = None
    language: str | None = None
    symbols: SymbolStandard | None = None
    loupe: bool = True
    less_motion: bool = False
    first_start_seen: bool = False
    guide_done: bool = False


def load_settings(path: Path) -> Settings:
    """Return the settings at `path`; whatever is missing or unreadable there is the default.

    Examples
    --------
    >>> load_settings(Path("nowhere.json")) == Settings()
    True
    """
    try:
        found = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return Settings()
    if not isinstance(found, dict):
        return Settings()
    known = {field.name for field in fields(Settings)}
    # Alone, == would take 1 for True.
    kept = {
        key: value
        for key, value in found.items()
        if key in known
        and any(value == choice and type(value) is type(choice) for choice in _CHOICES[key])
    }
    return replace(Settings(), **kept)


def save_settings(path: Path, settings: Settings) -> bool:
    """Write the settings whole (temp file, fsync, replace); return whether that worked.

    Preferences are not worth a message: a read-only home only means that they aren't kept.
    """
    temporary = path.with_name(path.name + ".new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with temporary.open("w", encoding="utf-8") as file:
            json.dump(asdict(settings), file)
            file.flush()
            os.fsync(file.fileno())
        os.replace(temporary, path)
    except OSError:
        return False
    return True
