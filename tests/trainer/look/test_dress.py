"""Dressing the application: palette, sheet, fonts, icons."""

from __future__ import annotations

import re
import subprocess
import sys

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontInfo, QPalette
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QFrame,
    QPushButton,
    QRadioButton,
    QSlider,
    QTabBar,
    QToolButton,
    QVBoxLayout,
    QWidget,
)
from pytestqt.qtbot import QtBot

from trainer.assets import asset
from trainer.look.fonts import font, load_fonts
from trainer.look.icons import ICONS, icon_pixmap
from trainer.look.sheet import stylesheet
from trainer.look.theme import apply, theme_for
from trainer.look.tokens import DARK, LIGHT, Theme

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


@pytest.fixture
def app(qapp: QApplication) -> QApplication:
    """The application, undressed again afterwards."""
    return qapp


@pytest.fixture(autouse=True)
def _undress(qapp: QApplication) -> object:
    before = (qapp.palette(), qapp.styleSheet(), qapp.font())
    yield
    qapp.setPalette(before[0])
    qapp.setStyleSheet(before[1])
    qapp.setFont(before[2])


@THEMES
def test_palette_and_font_follow_the_theme(app: QApplication, theme: Theme) -> None:
    apply(app, theme)
    assert app.palette().color(QPalette.ColorRole.Window).name() == theme.window
    assert app.palette().color(QPalette.ColorRole.WindowText).name() == theme.ink
    assert app.font().pixelSize() == round(theme.text_size("body"))


@THEMES
def test_a_panel_and_a_primary_button_show_the_tokens(
    app: QApplication, qtbot: QtBot, theme: Theme
) -> None:
    apply(app, theme)
    window = QWidget()
    qtbot.addWidget(window)
    box = QVBoxLayout(window)
    panel, button = QFrame(), QPushButton("Record")
    panel.setObjectName("panel")
    panel.setMinimumSize(60, 60)
    button.setProperty("kind", "primary")
    button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    box.addWidget(panel)
    box.addWidget(button)
    window.show()
    picture = window.grab().toImage()
    assert picture.pixelColor(panel.geometry().center()).name() == theme.panel
    inside = button.geometry().topLeft()
    assert picture.pixelColor(inside.x() + 8, inside.y() + 8).name() == theme.accent


@THEMES
def test_targets_are_24_px_or_more(app: QApplication, qtbot: QtBot, theme: Theme) -> None:
    """Source: WCAG 2.2, 2.5.8."""
    apply(app, theme)
    tabs = QTabBar()
    tabs.addTab("Bench")
    for widget in (
        QPushButton("A"),
        QToolButton(),
        QCheckBox("A"),
        QRadioButton("A"),
        QSlider(Qt.Orientation.Horizontal),
        tabs,
    ):
        qtbot.addWidget(widget)
        widget.ensurePolished()
        assert widget.sizeHint().height() >= 24
        assert widget.sizeHint().width() >= 24


@pytest.mark.parametrize("kind", [None, "primary", "quiet"])
def test_focus_changes_what_a_button_looks_like(
    app: QApplication, qtbot: QtBot, kind: str | None
) -> None:
    apply(app, LIGHT)
    window = QWidget()
    qtbot.addWidget(window)
    box = QVBoxLayout(window)
    first, second = QPushButton("One"), QPushButton("One")
    for button in (first, second):
        button.setProperty("kind", kind)
        box.addWidget(button)
    window.show()
    window.activateWindow()
    first.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(first.hasFocus)
    assert first.grab().toImage() != second.grab().toImage()
    assert first.size() == second.size()


def test_the_sheet_names_only_colours_of_its_theme() -> None:
    for theme in (LIGHT, DARK):
        colours = set(re.findall(r"#[0-9a-f]{6}", stylesheet(theme)))
        own = set(re.findall(r"#[0-9a-f]{6}", repr(theme)))
        assert colours
        assert colours <= own


def test_the_shipped_fonts_load_and_bring_their_licence() -> None:
    assert "Inter" in load_fonts()
    assert "SIL Open Font License" in asset("fonts", "OFL.txt").read_text(encoding="utf-8")


def test_text_styles_are_set_in_the_shipped_font(app: QApplication) -> None:
    load_fonts()
    for style in ("caption", "body", "strong", "title"):
        info = QFontInfo(font(LIGHT, style))
        assert info.family() == "Inter"
        assert info.pixelSize() == round(LIGHT.text_size(style))
    assert font(LIGHT, "title").weight() > font(LIGHT, "body").weight()


def test_every_icon_file_is_listed_and_every_listed_icon_exists() -> None:
    files = {path.stem for path in asset("icons").glob("*.svg")}
    assert files == set(ICONS) | {"tick-light", "tick-dark", "chevron-light", "chevron-dark"}


@pytest.mark.parametrize("name", ICONS)
def test_icons_take_the_colour_they_are_given(app: QApplication, name: str) -> None:
    picture = icon_pixmap(name, "#ff0000", 48).toImage()
    tones = {
        picture.pixelColor(x, y).name()
        for x in range(48)
        for y in range(48)
        if picture.pixelColor(x, y).alpha() == 255
    }
    assert tones == {"#ff0000"}


def test_an_unknown_icon_is_refused(app: QApplication) -> None:
    with pytest.raises(FileNotFoundError):
        icon_pixmap("no-such-icon", "#000000", 24)


def test_the_theme_follows_the_system(app: QApplication) -> None:
    hints = app.styleHints()
    try:
        hints.setColorScheme(Qt.ColorScheme.Dark)
        dark = theme_for(app)
        hints.setColorScheme(Qt.ColorScheme.Light)
        light = theme_for(app)
    finally:
        hints.unsetColorScheme()
    # Some platforms can't be told; then both are what the system says, and that is light.
    assert light.name == "light"
    assert dark.name in ("dark", "light")


def test_the_look_loads_no_numbers_and_no_geometry() -> None:
    code = (
        "import sys, trainer.look.theme; "
        "sys.exit(any(name in sys.modules for name in ('numpy', 'shapely', 'geometry')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
