"""Less motion: asked for by the system's files, or by oneself."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from trainer.look.motion import calm, files_ask
from trainer.look.theme import theme_for

# The keys are those that KDE's and GTK's own settings write; from memory, no source.
ASKING = {
    "kdeglobals": "[General]\nname=x\n[KDE]\nAnimationDurationFactor=0\n",
    "gtk-3.0/settings.ini": "[Settings]\ngtk-enable-animations=0\n",
    "gtk-4.0/settings.ini": "[Settings]\ngtk-enable-animations=false\n",
}


def put(folder: Path, name: str, text: bytes) -> None:
    """Write one of a desktop's files."""
    (folder / name).parent.mkdir(parents=True, exist_ok=True)
    (folder / name).write_bytes(text)


@pytest.mark.parametrize("name", sorted(ASKING))
def test_a_desktop_that_has_animations_off_is_heard(tmp_path: Path, name: str) -> None:
    put(tmp_path, name, ASKING[name].encode())
    assert files_ask(tmp_path)


@pytest.mark.parametrize(
    "text",
    [
        b"[KDE]\nAnimationDurationFactor=1\n",
        b"[KDE]\n",
        b"no section\n",
        b"\xff\xfe\x00",
        b"[KDE\nAnimationDurationFactor=0",
    ],
)
def test_what_asks_for_nothing_or_is_broken_changes_nothing(tmp_path: Path, text: bytes) -> None:
    put(tmp_path, "kdeglobals", text)
    assert not files_ask(tmp_path)


def test_the_theme_follows_the_file(
    qapp: QApplication, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    assert not theme_for(qapp).reduced_motion
    put(tmp_path, "kdeglobals", ASKING["kdeglobals"].encode())
    assert theme_for(qapp).reduced_motion


def test_what_qt_itself_animates_is_stilled(qapp: QApplication) -> None:
    calm(qapp)
    effects = (Qt.UIEffect.UI_AnimateMenu, Qt.UIEffect.UI_FadeTooltip, Qt.UIEffect.UI_AnimateCombo)
    assert not any(qapp.isEffectEnabled(effect) for effect in effects)
