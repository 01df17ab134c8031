"""All colours that must be told apart are: WCAG 2.2, 1.4.3 (text) and 1.4.11 (graphics)."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path

import pytest

from trainer.look import tokens
from trainer.look.tokens import DARK, LIGHT, ROLES, Bench, Theme, contrast

TEXT = 4.5
BY_NAME = ("roles", "text_sizes")
"""Asked for by what they hold."""

GRAPHICS = 3.0
THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


def test_contrast_agrees_with_published_values() -> None:
    """Source: WCAG 2.2, definition of contrast ratio; #767676 is the known 4.5:1 grey on white."""
    assert contrast("#ffffff", "#000000") == pytest.approx(21.0)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


@THEMES
@pytest.mark.parametrize("surface", ["window", "panel", "raised"])
@pytest.mark.parametrize("ink", ["ink", "muted", "accent"])
def test_text_is_legible_on_every_surface(theme: Theme, surface: str, ink: str) -> None:
    assert contrast(getattr(theme, ink), getattr(theme, surface)) >= TEXT


@THEMES
@pytest.mark.parametrize(
    ("ink", "surface"),
    [
        ("accent_ink", "accent"),
        ("accent_ink", "accent_hover"),
        ("accent_ink", "accent_pressed"),
        ("accent_wash_ink", "accent_wash"),
        ("ink", "accent_wash"),
        ("ink", "well"),
        ("muted", "well"),
    ],
)
def test_text_is_legible_on_controls(theme: Theme, ink: str, surface: str) -> None:
    assert contrast(getattr(theme, ink), getattr(theme, surface)) >= TEXT


@THEMES
def test_borders_of_controls_and_focus_stand_out(theme: Theme) -> None:
    for surface in (theme.panel, theme.raised, theme.window):
        assert contrast(theme.outline, surface) >= GRAPHICS
        assert contrast(theme.accent, surface) >= GRAPHICS
    assert contrast(theme.accent, theme.accent_wash) >= GRAPHICS


@THEMES
@pytest.mark.parametrize("role", ROLES)
def test_role_colours_are_legible_on_panels_and_casings(theme: Theme, role: str) -> None:
    colour = dict(theme.roles)[role]  # type: ignore[index]
    assert contrast(colour, theme.panel) >= TEXT


@THEMES
def test_steel_and_leaf_stand_out_from_the_light(theme: Theme) -> None:
    """A gap is told from metal everywhere on the table, in its dimmest corner too."""
    bench = theme.bench
    for light in (bench.glow, bench.light, bench.dusk):
        for metal in (
            bench.steel_near,
            bench.steel_far,
            bench.upright_near,
            bench.bead_core,
            bench.edge,
        ):
            assert contrast(light, metal) >= GRAPHICS
    assert contrast(bench.glow, bench.leaf_dark) > contrast(bench.glow, bench.leaf_bright) > 1.5


@THEMES
def test_leaf_stands_out_from_steel_and_its_mark_from_it(theme: Theme) -> None:
    bench = theme.bench
    assert contrast(bench.engraving, bench.leaf_dark) >= TEXT
    assert contrast(bench.edge, bench.leaf_dark) >= GRAPHICS
    for light in (bench.glow, bench.light, bench.dusk):
        assert contrast(bench.tether, light) >= GRAPHICS
    # The tether's casing: the pull shows over steel as well.
    assert contrast(bench.glow, bench.steel_near) >= GRAPHICS


def test_both_themes_name_every_role_once() -> None:
    for theme in (LIGHT, DARK):
        assert tuple(role for role, _ in theme.roles) == ROLES


def test_colours_are_six_hexadecimal_digits() -> None:
    for theme in (LIGHT, DARK):
        values = [*dataclasses.astuple(theme.bench), *(colour for _, colour in theme.roles)]
        values += [
            getattr(theme, field.name)
            for field in dataclasses.fields(theme)
            if isinstance(getattr(theme, field.name), str) and field.name != "name"
        ]
        for value in values:
            assert len(value) == 7
            assert value[0] == "#"
            assert int(value[1:], 16) >= 0


def test_targets_are_large_enough() -> None:
    """Source: WCAG 2.2, 2.5.8: targets of 24 by 24 CSS pixels or more."""
    assert min(LIGHT.target, DARK.target) >= 24


def test_the_type_scale_rises_and_nothing_is_smaller_than_12_px() -> None:
    sizes = [size for _, size in LIGHT.text_sizes]
    assert sizes == sorted(sizes)
    assert sizes[0] >= 12.0
    assert LIGHT.text_sizes == DARK.text_sizes


def test_every_token_is_used() -> None:
    """A role that nothing wears is one that nobody keeps right."""
    source = "\n".join(
        path.read_text(encoding="utf-8")
        for path in Path(tokens.__file__).parents[1].rglob("*.py")
        if path != Path(tokens.__file__)
    )
    names = [field.name for field in dataclasses.fields(Theme) if field.name not in BY_NAME]
    names += [field.name for field in dataclasses.fields(Bench)]
    assert not [name for name in names if not re.search(rf"\.{name}\b", source)]
    styles = [name for name, _ in LIGHT.text_sizes]
    assert not [name for name in styles if f'"{name}"' not in source]
