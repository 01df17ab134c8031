"""What the screens' own widgets add to the look's stylesheet, by their `kind` and `tone`."""

from __future__ import annotations

from trainer.look.tokens import Theme

__all__ = ["screen_sheet"]


def screen_sheet(theme: Theme) -> str:
    """Return the stylesheet of the screens in `theme`."""
    return "\n".join((_surfaces(theme), _texts(theme), _buttons(theme)))


def _surfaces(t: Theme) -> str:
    return f"""
        QMainWindow, QDialog {{ background: {t.window}; }}
        QDialog {{ background: {t.panel}; }}
        QFrame[kind="panel"] {{
            background: {t.panel}; border: 1px solid {t.line}; border-radius: {t.radius}px;
        }}
        QFrame[kind="bar"] {{
            background: {t.panel}; border: none; border-bottom: 1px solid {t.line};
        }}
        QFrame[kind="line"] {{ background: {t.line}; border: none; }}
        QWidget[kind="holder"] {{ background: transparent; }}
        QScrollArea, QScrollArea > QWidget {{ background: transparent; border: none; }}
    """


def _texts(t: Theme) -> str:
    caption, body = t.text_size("caption"), t.text_size("body")
    return f"""
        QLabel {{ background: transparent; border: none; color: {t.ink}; }}
        QLabel[tone="quiet"] {{ color: {t.muted}; font-size: {body - 1:g}px; }}
        QLabel[tone="gloss"] {{ color: {t.muted}; font-size: {caption:g}px; }}
        QLabel[tone="key"] {{
            color: {t.muted}; font-size: {caption:g}px; font-weight: 600;
        }}
        QLabel[tone="heading"] {{ font-size: {body:g}px; font-weight: 600; }}
        QLabel[tone="choice"] {{ font-size: {body:g}px; font-weight: 500; }}
        QLabel[tone="step"] {{ font-size: {body - 1:g}px; }}
        QLabel[tone="title"] {{ font-size: {t.text_size("display"):g}px; font-weight: 600; }}
        QLabel[tone="score"] {{ font-size: 28px; font-weight: 600; }}
        QLabel[tone="product"] {{ font-size: 18px; font-weight: 600; }}
        QLabel[tone="here"] {{
            color: {t.accent}; font-weight: 600; padding: 0 2px;
            border-bottom: 3px solid {t.accent};
        }}
        QPushButton:disabled QLabel {{ color: {t.disabled}; }}
    """


def _buttons(t: Theme) -> str:
    return f"""
        QPushButton[kind="choice"], QPushButton[kind="step"], QPushButton[kind="small"],
        QPushButton[kind="segment"] {{
            background: {t.raised}; border: 1px solid {t.outline}; border-radius: 6px;
            padding: 0; color: {t.ink};
        }}
        QPushButton[kind="choice"]:hover, QPushButton[kind="step"]:hover,
        QPushButton[kind="small"]:hover, QPushButton[kind="segment"]:hover {{
            border-color: {t.accent}; background: {t.accent_wash};
        }}
        QPushButton[kind="choice"]:pressed, QPushButton[kind="step"]:pressed,
        QPushButton[kind="small"]:pressed {{ background: {t.well}; }}
        QPushButton[kind="choice"]:checked, QPushButton[kind="segment"]:checked {{
            background: {t.accent_wash}; border: 2px solid {t.accent};
        }}
        QPushButton[kind="segment"] {{ padding: 0 10px; min-height: 26px; }}
        QPushButton[kind="segment"]:checked {{ color: {t.accent_wash_ink}; font-weight: 600; }}
        QPushButton[kind="choice"]:focus, QPushButton[kind="step"]:focus,
        QPushButton[kind="small"]:focus, QPushButton[kind="segment"]:focus {{
            border: 2px solid {t.accent}; outline: none;
        }}
        QPushButton[kind="choice"]:checked:focus, QPushButton[kind="segment"]:checked:focus {{
            border: 3px solid {t.accent};
        }}
        QPushButton[kind="choice"]:disabled, QPushButton[kind="step"]:disabled,
        QPushButton[kind="small"]:disabled {{
            background: {t.panel}; border-color: {t.line}; color: {t.disabled};
        }}
        QPushButton[kind="primary"] {{
            background: {t.accent}; color: {t.accent_ink}; border: 2px solid {t.accent};
            border-radius: 8px; font-weight: 600; padding: 0 16px;
        }}
        QPushButton[kind="primary"]:hover {{
            background: {t.accent_hover}; border-color: {t.accent_hover};
        }}
        QPushButton[kind="primary"]:pressed {{ background: {t.accent_pressed}; }}
        QPushButton[kind="primary"]:focus {{ border: 2px solid {t.ink}; }}
        QPushButton[kind="primary"]:disabled {{
            background: {t.well}; border-color: {t.well}; color: {t.muted};
        }}
    """
