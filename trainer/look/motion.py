"""Less motion: whether the system asks for it, and keeping Qt's own widgets still."""

from __future__ import annotations

import configparser
import os
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

__all__ = ["calm", "files_ask", "wants_less_motion"]

_WISHES: Final = (
    ("kdeglobals", "kde", "animationdurationfactor", ("0", "0.0")),
    ("gtk-4.0/settings.ini", "settings", "gtk-enable-animations", ("0", "false")),
    ("gtk-3.0/settings.ini", "settings", "gtk-enable-animations", ("0", "false")),
)
"""Where desktops keep it: file, section, key, and the values that ask for less motion."""

_EFFECTS: Final = (
    Qt.UIEffect.UI_AnimateMenu,
    Qt.UIEffect.UI_FadeMenu,
    Qt.UIEffect.UI_AnimateCombo,
    Qt.UIEffect.UI_AnimateTooltip,
    Qt.UIEffect.UI_FadeTooltip,
    Qt.UIEffect.UI_AnimateToolBox,
)


def wants_less_motion(app: QGuiApplication) -> bool:
    """Return whether the system asks for less motion: Qt says so from 6.12 on, files before."""
    accessibility = getattr(app.styleHints(), "accessibility", None)
    hints = accessibility() if accessibility is not None else None
    preference = getattr(hints, "motionPreference", None)
    if preference is not None and str(preference()).endswith("ReducedMotion"):
        return True
    return files_ask(Path(os.environ.get("XDG_CONFIG_HOME") or Path.home() / ".config"))


def files_ask(config: Path) -> bool:
    """Return whether a desktop's file in `config` asks for less motion.

    What can't be read asks for nothing.

    Examples
    --------
    >>> files_ask(Path("nowhere"))
    False
    """
    for name, section, key, values in _WISHES:
        parser = configparser.ConfigParser(interpolation=None, strict=False)
        try:
            parser.read(config / name, encoding="utf-8")
            found = {each.lower(): each for each in parser.sections()}
            asked = parser.get(found.get(section, section), key, fallback="")
        except (configparser.Error, UnicodeDecodeError, OSError):
            continue
        if asked.strip().lower() in values:
            return True
    return False


def calm(app: QApplication) -> None:
    """Let menus, lists and tips of Qt's own come up at once."""
    for effect in _EFFECTS:
        if app.isEffectEnabled(effect):
            app.setEffectEnabled(effect, False)
