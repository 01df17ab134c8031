"""Putting a theme on: which one the system asks for, and dressing the application in it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from trainer.look.fonts import font, load_fonts
from trainer.look.motion import calm, wants_less_motion
from trainer.look.sheet import stylesheet
from trainer.look.tokens import DARK, LIGHT, Theme

__all__ = ["DARK", "LIGHT", "Theme", "apply", "palette_of", "theme_for"]


def theme_for(app: QGuiApplication) -> Theme:
    """Return the theme that the system's colour scheme and motion preference ask for."""
    hints = app.styleHints()
    theme = DARK if hints.colorScheme() == Qt.ColorScheme.Dark else LIGHT
    return replace(theme, reduced_motion=wants_less_motion(app))


def palette_of(theme: Theme) -> QPalette:
    """Return the palette of `theme`, for everything that the stylesheet leaves alone."""
    palette = QPalette()
    role = QPalette.ColorRole
    pairs = {
        role.Window: theme.window,
        role.WindowText: theme.ink,
        role.Base: theme.raised,
        role.AlternateBase: theme.panel,
        role.Text: theme.ink,
        role.Button: theme.raised,
        role.ButtonText: theme.ink,
        role.BrightText: theme.accent_ink,
        role.Light: theme.raised,
        role.Midlight: theme.line,
        role.Mid: theme.outline,
        role.Dark: theme.well,
        role.Shadow: theme.ink,
        role.Highlight: theme.accent,
        role.HighlightedText: theme.accent_ink,
        role.Link: theme.accent,
        role.LinkVisited: theme.accent,
        role.ToolTipBase: theme.panel,
        role.ToolTipText: theme.ink,
        role.PlaceholderText: theme.muted,
        role.Accent: theme.accent,
    }
    for each, colour in pairs.items():
        palette.setColor(each, QColor(colour))
    disabled = QPalette.ColorGroup.Disabled
    for each in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(disabled, each, QColor(theme.disabled))
    return palette


def apply(app: QApplication, theme: Theme) -> None:
    """Dress every ordinary widget of `app` in `theme`.

    The shipped fonts are loaded the first time. Widgets draw in Qt's own Fusion style, the one
    that a stylesheet may recolour everywhere.
    """
    load_fonts()
    if app.style().name() != "fusion":
        app.setStyle("Fusion")
    app.setFont(font(theme))
    app.setPalette(palette_of(theme))
    app.setStyleSheet(stylesheet(theme))
    if theme.reduced_motion:
        calm(app)
