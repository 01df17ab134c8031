"""The stylesheet: every ordinary widget, dressed from the tokens."""

from __future__ import annotations

from trainer.assets import asset
from trainer.look.tokens import Theme

__all__ = ["stylesheet"]


def stylesheet(theme: Theme) -> str:
    """Return the application's stylesheet.

    Examples
    --------
    >>> from trainer.look.tokens import DARK
    >>> DARK.accent in stylesheet(DARK)
    True
    """
    parts = (
        _surfaces,
        _texts,
        _buttons,
        _tools,
        _fields,
        _choosers,
        _sliders,
        _tabs,
        _bars,
        _menus,
    )
    return "\n".join(part(theme) for part in parts)


def _surfaces(t: Theme) -> str:
    return f"""
        QMainWindow, QDialog {{ background: {t.window}; }}
        QFrame#panel, QFrame[kind="panel"] {{
            background: {t.panel}; border: 1px solid {t.line}; border-radius: {t.radius}px;
        }}
        QToolTip {{
            background: {t.panel}; color: {t.ink}; border: 1px solid {t.outline};
            padding: 4px 8px;
        }}
    """


def _texts(t: Theme) -> str:
    return f"""
        QLabel {{ background: transparent; color: {t.ink}; }}
        QLabel:disabled {{ color: {t.disabled}; }}
        QLabel[tone="quiet"] {{ color: {t.muted}; }}
        QLabel[tone="caption"] {{ color: {t.muted}; font-size: {t.text_size("caption"):g}px; }}
        QLabel[tone="strong"] {{ font-weight: 600; }}
        QLabel[tone="title"] {{ font-size: {t.text_size("title"):g}px; font-weight: 600; }}
    """


def _buttons(t: Theme) -> str:
    return f"""
        QPushButton {{
            background: {t.raised}; color: {t.ink}; border: 1px solid {t.outline};
            border-radius: {t.rounding}px; padding: 4px 12px; min-height: {t.target - 10}px;
        }}
        QPushButton:hover {{ border-color: {t.accent}; background: {t.accent_wash};
            color: {t.accent_wash_ink}; }}
        QPushButton:pressed {{ background: {t.well}; color: {t.ink}; }}
        QPushButton:checked {{
            background: {t.accent_wash}; color: {t.accent_wash_ink}; border: 2px solid {t.accent};
            padding: 3px 11px;
        }}
        QPushButton:focus {{ border-color: {t.ink}; outline: none; }}
        QPushButton:disabled {{
            background: {t.panel}; color: {t.disabled}; border-color: {t.line};
        }}
        QPushButton[kind="primary"] {{
            background: {t.accent}; color: {t.accent_ink}; border: 2px solid {t.accent};
            border-radius: {t.radius}px; font-weight: 600; padding: 5px 16px;
        }}
        QPushButton[kind="primary"]:hover {{
            background: {t.accent_hover}; border-color: {t.accent_hover}; color: {t.accent_ink};
        }}
        QPushButton[kind="primary"]:pressed {{
            background: {t.accent_pressed}; border-color: {t.accent_pressed};
        }}
        QPushButton[kind="primary"]:focus {{ border-color: {t.ink}; }}
        QPushButton[kind="primary"]:disabled {{
            background: {t.well}; border-color: {t.well}; color: {t.muted};
        }}
        QPushButton[kind="quiet"] {{
            background: transparent; border: 2px solid transparent; color: {t.accent};
            font-weight: 600; padding: 3px 8px;
        }}
        QPushButton[kind="quiet"]:hover {{ background: {t.accent_wash}; }}
        QPushButton[kind="quiet"]:focus {{ border-color: {t.accent}; }}
        QPushButton[kind="quiet"]:disabled {{ color: {t.disabled}; }}
    """


def _tools(t: Theme) -> str:
    return f"""
        QToolButton {{
            background: transparent; color: {t.ink}; border: 2px solid transparent;
            border-radius: {t.rounding}px; padding: 2px; min-width: 24px; min-height: 24px;
        }}
        QToolButton:hover {{ background: {t.accent_wash}; color: {t.accent_wash_ink}; }}
        QToolButton:pressed {{ background: {t.well}; color: {t.ink}; }}
        QToolButton:checked {{ background: {t.accent_wash}; color: {t.accent_wash_ink};
            border-color: {t.accent}; }}
        QToolButton:focus {{ border-color: {t.accent}; }}
        QToolButton:disabled {{ color: {t.disabled}; }}
    """


def _fields(t: Theme) -> str:
    fields = 'QLineEdit, QPlainTextEdit, QTextEdit, QSpinBox[kind="count"]'
    focused = ", ".join(f"{field}:focus" for field in fields.split(", "))
    disabled = ", ".join(f"{field}:disabled" for field in fields.split(", "))
    tick = asset("icons", f"tick-{t.name}.svg").as_posix()
    # Spin boxes keep Fusion's own drawing, since a sheet takes their arrows away; those that have
    # none, but a button at either side, are fields like the others.
    return f"""
        {fields} {{
            background: {t.raised}; color: {t.ink}; border: 1px solid {t.outline};
            border-radius: {t.rounding}px; padding: 3px 8px; min-height: 24px;
            selection-background-color: {t.accent}; selection-color: {t.accent_ink};
        }}
        {focused} {{ border: 2px solid {t.accent}; padding: 2px 7px; }}
        {disabled} {{ color: {t.disabled}; border-color: {t.line}; background: {t.panel}; }}
        QSpinBox QLineEdit, QSpinBox QLineEdit:focus {{
            background: transparent; border: none; padding: 0; min-height: 0;
        }}
        QCheckBox, QRadioButton {{ color: {t.ink}; spacing: 8px; min-height: 24px; }}
        QCheckBox:focus, QRadioButton:focus {{ outline: 2px solid {t.accent}; }}
        QCheckBox::indicator, QRadioButton::indicator {{
            width: 16px; height: 16px; background: {t.raised}; border: 1px solid {t.outline};
        }}
        QCheckBox::indicator {{ border-radius: 4px; }}
        QRadioButton::indicator {{ border-radius: 9px; }}
        QCheckBox::indicator:hover, QRadioButton::indicator:hover {{
            border-color: {t.accent}; background: {t.accent_wash};
        }}
        QCheckBox::indicator:checked {{
            background: {t.accent}; border-color: {t.accent}; image: url("{tick}");
        }}
        QRadioButton::indicator:checked {{
            border-color: {t.accent};
            background: qradialgradient(cx:0.5, cy:0.5, radius:0.5, fx:0.5, fy:0.5,
                stop:0 {t.accent}, stop:0.5 {t.accent}, stop:0.6 {t.raised}, stop:1 {t.raised});
        }}
        QCheckBox:disabled, QRadioButton:disabled {{ color: {t.disabled}; }}
    """


def _choosers(t: Theme) -> str:
    chevron = asset("icons", f"chevron-{t.name}.svg").as_posix()
    return f"""
        QComboBox {{
            background: {t.raised}; color: {t.ink}; border: 1px solid {t.outline};
            border-radius: {t.rounding}px; padding: 2px 4px 2px 8px; min-height: 24px;
            combobox-popup: 0;
        }}
        QComboBox:hover {{ border-color: {t.accent}; }}
        QComboBox:focus {{ border: 2px solid {t.accent}; padding: 1px 3px 1px 7px; }}
        QComboBox:disabled {{
            color: {t.disabled}; border-color: {t.line}; background: {t.panel};
        }}
        QComboBox::drop-down {{ border: none; width: 20px; }}
        QComboBox::down-arrow {{ image: url("{chevron}"); width: 12px; height: 12px; }}
        QComboBox QAbstractItemView {{
            background: {t.panel}; color: {t.ink}; border: 1px solid {t.outline};
            outline: none; padding: 3px;
            selection-background-color: {t.accent_wash};
            selection-color: {t.accent_wash_ink};
        }}
        QComboBox QAbstractItemView::item {{ min-height: 26px; padding: 0 6px; }}
        QComboBox QAbstractItemView::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink};
            border: 1px solid {t.accent}; border-radius: 4px;
        }}
    """


def _sliders(t: Theme) -> str:
    return f"""
        QSlider {{ min-height: 28px; }}
        QSlider::groove:horizontal {{
            height: 6px; border-radius: 3px; background: {t.well};
        }}
        QSlider::sub-page:horizontal {{ background: {t.accent}; border-radius: 3px; }}
        QSlider::handle:horizontal {{
            background: {t.raised}; border: 2px solid {t.accent}; border-radius: 9px;
            width: 14px; height: 14px; margin: -6px 0;
        }}
        QSlider::handle:horizontal:hover {{ background: {t.accent_wash}; }}
        QSlider::handle:horizontal:focus {{ background: {t.accent}; border-color: {t.ink}; }}
        QSlider::sub-page:horizontal:disabled {{ background: {t.outline}; }}
        QSlider::handle:horizontal:disabled {{ border-color: {t.outline}; }}
    """


def _tabs(t: Theme) -> str:
    return f"""
        QTabWidget::pane {{ border: none; border-top: 1px solid {t.line}; }}
        QTabBar {{ background: transparent; outline: none; }}
        QTabBar::tab {{
            background: transparent; color: {t.muted}; padding: 8px 12px; min-height: 24px;
            border: none; border-bottom: 3px solid transparent;
        }}
        QTabBar::tab:hover {{ color: {t.ink}; }}
        QTabBar::tab:selected {{
            color: {t.accent}; font-weight: 600; border-bottom-color: {t.accent};
        }}
        QTabBar::tab:focus {{ border: 2px solid {t.accent}; border-radius: 4px; }}
        QTabBar::tab:disabled {{ color: {t.disabled}; }}
    """


def _bars(t: Theme) -> str:
    return f"""
        QScrollBar {{ background: transparent; border: none; margin: 0; }}
        QScrollBar:vertical {{ width: 12px; }}
        QScrollBar:horizontal {{ height: 12px; }}
        QScrollBar::handle {{
            background: {t.outline}; border-radius: 4px; margin: 2px;
        }}
        QScrollBar::handle:vertical {{ min-height: 32px; }}
        QScrollBar::handle:horizontal {{ min-width: 32px; }}
        QScrollBar::handle:hover {{ background: {t.muted}; }}
        QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
        QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
        QAbstractScrollArea::corner {{ background: transparent; border: none; }}
        QProgressBar {{
            background: {t.well}; border: none; border-radius: 3px; height: 6px; color: {t.ink};
            text-align: center;
        }}
        QProgressBar::chunk {{ background: {t.accent}; border-radius: 3px; }}
    """


def _menus(t: Theme) -> str:
    return f"""
        QMenuBar {{ background: transparent; color: {t.ink}; }}
        QMenuBar::item {{
            padding: 5px 9px; border: 1px solid transparent; border-radius: 4px;
            background: transparent;
        }}
        QMenuBar::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink}; border-color: {t.accent};
        }}
        QMenu {{
            background: {t.panel}; color: {t.ink}; border: 1px solid {t.outline}; padding: 4px;
        }}
        QMenu::item {{
            padding: 5px 23px 5px 11px; border: 1px solid transparent; border-radius: 4px;
        }}
        QMenu::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink}; border-color: {t.accent};
        }}
        QMenu::item:disabled {{ color: {t.disabled}; }}
        QMenu::separator {{ height: 1px; background: {t.line}; margin: 4px 8px; }}
        QHeaderView::section {{
            background: {t.panel}; color: {t.muted}; border: none;
            border-bottom: 1px solid {t.line}; padding: 6px 8px;
        }}
        QAbstractItemView {{
            background: {t.raised}; color: {t.ink}; border: 1px solid {t.line};
            selection-background-color: {t.accent}; selection-color: {t.accent_ink};
        }}
        QStatusBar {{ background: {t.panel}; color: {t.muted}; }}
    """
