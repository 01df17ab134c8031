"""Design tokens: colour roles, type scale, roundings, in light and dark.

Colours are ``#rrggbb`` strings, so that this module needs no Qt and a test can check every pair
that must be told apart.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final, Literal

__all__ = ["DARK", "LIGHT", "ROLES", "Bench", "Role", "Theme", "contrast"]

Role = Literal[
    "truth",
    "limit",
    "shown",
    "fault",
    "good",
    "note",
    "touch",
    "daylight",
    "held off",
    "not seated",
]
ROLES: Final[tuple[Role, ...]] = (
    "truth",
    "limit",
    "shown",
    "fault",
    "good",
    "note",
    "touch",
    "daylight",
    "held off",
    "not seated",
)
"""What an overlay speaks of. Each has a colour and, for marks, a shape of its own."""


@dataclass(frozen=True, slots=True)
class Bench:
    """Colours of the light table and what stands before it."""

    glow: str
    light: str
    dusk: str
    grid: str
    grid_strong: str
    steel_near: str
    steel_far: str
    upright_near: str
    upright_far: str
    hatch: str
    edge: str
    bead_core: str
    bead_rim: str
    grain: str
    heat: str
    leaf_bright: str
    leaf_dark: str
    leaf_lit: str
    engraving: str
    engraving_light: str
    shadow: str
    tether: str
    brass: str


@dataclass(frozen=True, slots=True)
class Theme:
    """Every colour and measure that a screen may use.

    Parameters
    ----------
    name
        ``light`` or ``dark``.
    window, panel, raised, well
        Surfaces: behind the panels, the panels, controls that stand on them, and sunk grooves.
    line, outline
        Quiet separators, and the borders of controls (3:1 against every surface they stand on).
    ink, muted, disabled
        Text; `ink` and `muted` reach 4.5:1 on every surface.
    accent, accent_hover, accent_pressed, accent_ink, accent_wash, accent_wash_ink
        The one accent, what is written on it, and its pale tint for what is chosen.
    roles
        Colour of each overlay role (4.5:1 on a panel).
    bench
        The light table.
    text_sizes
        The type scale, logical pixels.
    radius, rounding
        Of the corners of panels, and of controls, logical pixels.
    target
        Height of a control that has room, logical pixels.
    reduced_motion
        Whether anything that moves of its own accord must stand still.
    """

    name: Literal["light", "dark"]
    window: str
    panel: str
    raised: str
    well: str
    line: str
    outline: str
    ink: str
    muted: str
    disabled: str
    accent: str
    accent_hover: str
    accent_pressed: str
    accent_ink: str
    accent_wash: str
    accent_wash_ink: str
    roles: tuple[tuple[Role, str], ...]
    bench: Bench
    reduced_motion: bool = False
    families: tuple[str, ...] = ("Inter", "Segoe UI Variable", "SF Pro Text", "Noto Sans")
    text_sizes: tuple[tuple[str, float], ...] = field(
        default=(
            ("caption", 12.0),
            ("small", 13.0),
            ("body", 14.0),
            ("strong", 14.0),
            ("title", 16.0),
            ("product", 18.0),
        )
    )
    radius: int = 8
    rounding: int = 6
    target: int = 32

    def role(self, role: Role) -> str:
        """The colour of an overlay role.

        Examples
        --------
        >>> LIGHT.role("note") == LIGHT.ink
        True
        """
        return dict(self.roles)[role]

    def text_size(self, name: str) -> float:
        """Size of a text style in logical pixels: caption, small, body, strong, title and so on.

        Examples
        --------
        >>> LIGHT.text_size("body")
        14.0
        """
        return dict(self.text_sizes)[name]


def _luminance(colour: str) -> float:
    channels = (int(colour[i : i + 2], 16) / 255.0 for i in (1, 3, 5))
    red, green, blue = (
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first: str, second: str) -> float:
    """Return the contrast ratio of two ``#rrggbb`` colours, 1 to 21 (WCAG 2.2, relative luminance).

    Examples
    --------
    >>> round(contrast("#000000", "#ffffff"), 6), contrast("#336699", "#336699")
    (21.0, 1.0)
    """
    lighter, darker = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


LIGHT: Final = Theme(
    name="light",
    window="#e7e8e5",
    panel="#fbfaf7",
    raised="#ffffff",
    well="#d9dcda",
    line="#dcddd8",
    outline="#798288",
    ink="#1a2027",
    muted="#57616a",
    disabled="#8d959b",
    accent="#0b5cad",
    accent_hover="#0a5099",
    accent_pressed="#084380",
    accent_ink="#ffffff",
    accent_wash="#dce9f6",
    accent_wash_ink="#0a3f78",
    roles=(
        ("truth", "#00695c"),
        ("limit", "#0b5cad"),
        ("shown", "#6a3fa0"),
        ("fault", "#b23a0e"),
        ("good", "#0b6b45"),
        ("note", "#1a2027"),
        ("touch", "#0b6b45"),
        ("daylight", "#b23a0e"),
        ("held off", "#6a3fa0"),
        ("not seated", "#4a545d"),
    ),
    bench=Bench(
        glow="#fffef7",
        light="#fbf2da",
        dusk="#e6d5ab",
        grid="#e0d2a8",
        grid_strong="#cfbc8a",
        steel_near="#4b5763",
        steel_far="#3a444e",
        upright_near="#55616d",
        upright_far="#465260",
        hatch="#8b98a5",
        edge="#1c242c",
        bead_core="#6b5143",
        bead_rim="#8a6c58",
        grain="#c9ab92",
        heat="#a9744c",
        leaf_bright="#b9c3ca",
        leaf_dark="#8d99a5",
        leaf_lit="#cfd8dd",
        engraving="#242c34",
        engraving_light="#e4eaee",
        shadow="#2b2418",
        tether="#0b5cad",
        brass="#c9a227",
    ),
)

DARK: Final = Theme(
    name="dark",
    window="#14171a",
    panel="#1d2125",
    raised="#262b30",
    well="#3a4148",
    line="#31373d",
    outline="#78838d",
    ink="#eceef0",
    muted="#a9b2ba",
    disabled="#6d767e",
    accent="#7ab8f5",
    accent_hover="#93c6f8",
    accent_pressed="#5fa6ea",
    accent_ink="#0a1b2c",
    accent_wash="#1f3b57",
    accent_wash_ink="#d5e8fb",
    roles=(
        ("truth", "#5cc8b6"),
        ("limit", "#7ab8f5"),
        ("shown", "#c3a2ee"),
        ("fault", "#f59a6c"),
        ("good", "#63cf9a"),
        ("note", "#eceef0"),
        ("touch", "#63cf9a"),
        ("daylight", "#f59a6c"),
        ("held off", "#c3a2ee"),
        ("not seated", "#b9c2ca"),
    ),
    bench=Bench(
        glow="#fff9e6",
        light="#eadab8",
        dusk="#ab9874",
        grid="#ccbb93",
        grid_strong="#b5a279",
        steel_near="#39434d",
        steel_far="#2a323a",
        upright_near="#414c57",
        upright_far="#333d47",
        hatch="#74818e",
        edge="#0d1115",
        bead_core="#553f34",
        bead_rim="#745a49",
        grain="#b2937b",
        heat="#9a683f",
        leaf_bright="#a3adb5",
        leaf_dark="#76828e",
        leaf_lit="#bcc6cd",
        engraving="#10161b",
        engraving_light="#d3dbe0",
        shadow="#120d06",
        tether="#0a4885",
        brass="#d8b23a",
    ),
)
