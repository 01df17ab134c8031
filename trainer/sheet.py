"""What the screens' own widgets add to the look's stylesheet, by their `kind` and `tone`."""

from __future__ import annotations

from trainer.look.tokens import Theme

__all__ = ["screen_sheet"]


def screen_sheet(theme: Theme) -> str:
    """Return the stylesheet of the screens in `theme`."""
    return "\n".join((_surfaces(theme), _rows(theme), _texts(theme), _buttons(theme)))


def _surfaces(t: Theme) -> str:
    return f"""
        QDialog {{ background: {t.panel}; }}
        QFrame[kind="bar"] {{
            background: {t.panel}; border: none; border-bottom: 1px solid {t.line};
        }}
        QFrame[kind="card"] {{
            background: {t.panel}; border: 2px solid {t.accent}; border-radius: {t.radius}px;
        }}
        QFrame[kind="band"] {{
            background: {t.accent_wash}; border: none; border-bottom: 1px solid {t.line};
        }}
        QFrame[kind="band"] QLabel {{ color: {t.accent_wash_ink}; }}
        QFrame[kind="line"] {{ background: {t.line}; border: none; }}
        QWidget[kind="holder"] {{ background: transparent; }}
        QScrollArea {{ background: transparent; border: none; }}
        QTableWidget, QListView[kind="tray"] {{
            background: transparent; color: {t.ink}; border: 2px solid transparent;
            border-radius: {t.rounding}px; outline: none;
            alternate-background-color: {t.raised}; font-size: {t.text_size("small"):g}px;
        }}
        QTableWidget:focus, QListView[kind="tray"]:focus {{ border-color: {t.accent}; }}
        QTableWidget::item {{ padding: 0 4px; border: none; }}
        QTableWidget::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink};
        }}
        QTableWidget::item:focus {{ border: 2px solid {t.accent}; padding: 0 2px; }}
        QTableWidget[kind="close"] {{ font-size: {t.text_size("caption"):g}px; }}
        QTableWidget[kind="close"]::item {{ padding: 0; }}
        QTableWidget[kind="close"]::item:focus {{ border-width: 1px; }}
        QListWidget[kind="tray"]::item {{
            padding: 0 5px; border: 1px solid transparent; border-radius: {t.rounding}px;
        }}
        QListWidget[kind="tray"]::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink}; border-color: {t.accent};
        }}
        QHeaderView {{ background: transparent; border: none; }}
        QHeaderView::section {{
            background: transparent; color: {t.muted}; border: none;
            border-bottom: 1px solid {t.line}; padding: 3px 7px;
            font-size: {t.text_size("caption"):g}px;
        }}
        QTableWidget[kind="close"] QHeaderView::section {{ padding: 3px; }}
        QSplitter::handle:vertical {{ height: 10px; }}
    """


def _rows(t: Theme) -> str:
    """Long tables that are sorted and sifted."""
    return f"""
        QTableView[kind="rows"] {{
            background: {t.raised}; color: {t.ink}; border: 2px solid transparent; outline: none;
            alternate-background-color: {t.panel}; font-size: {t.text_size("small"):g}px;
            border-radius: {t.rounding}px;
        }}
        QTableView[kind="rows"]:focus {{ border-color: {t.accent}; }}
        QTableView[kind="rows"]::item {{ padding: 0 8px; border: none; }}
        QTableView[kind="rows"]::item:selected {{
            background: {t.accent_wash}; color: {t.accent_wash_ink};
        }}
        QTableView[kind="rows"]::item:focus {{ border: 2px solid {t.accent}; padding: 0 6px; }}
        QTableView[kind="rows"] QHeaderView::section {{ padding: 5px 11px; }}
        QTableView[kind="rows"] QHeaderView::section:hover {{
            background: {t.accent_wash}; color: {t.accent_wash_ink};
        }}
    """


def _texts(t: Theme) -> str:
    caption, small = t.text_size("caption"), t.text_size("small")
    return f"""
        QLabel[tone="quiet"] {{ font-size: {small:g}px; }}
        QLabel[tone="gloss"] {{ color: {t.muted}; font-size: {caption:g}px; }}
        QLabel[tone="key"] {{ color: {t.muted}; font-size: {caption:g}px; font-weight: 600; }}
        QLabel[tone="gloss"]:disabled, QLabel[tone="key"]:disabled {{ color: {t.disabled}; }}
        QLabel[tone="heading"] {{ font-weight: 600; }}
        QLabel[tone="word"], QLabel[tone="step"] {{ font-size: {small:g}px; }}
        QLabel[tone="saying"] {{
            background: {t.panel}; border: 1px solid {t.outline}; border-radius: {t.rounding}px;
            padding: 5px 10px;
        }}
        QLabel[tone="wrong"] {{
            color: {t.role("fault")}; font-size: {caption:g}px; padding: 0 0 4px 0;
        }}
        QLabel[tone="warning"] {{
            background: {t.well}; color: {t.ink}; font-size: {small:g}px;
            border-left: 4px solid {t.role("fault")}; padding: 5px 8px;
        }}
        QLineEdit[wrong="true"] {{ border: 2px solid {t.role("fault")}; }}
        QLabel[tone="product"] {{ font-size: {t.text_size("product"):g}px; font-weight: 600; }}
    """


def _buttons(t: Theme) -> str:
    return f"""
        QPushButton[kind="choice"], QPushButton[kind="step"], QPushButton[kind="small"] {{
            padding: 0; min-height: 24px;
        }}
        QPushButton[kind="segment"] {{ padding: 0 9px; min-height: 24px; }}
        QPushButton[kind="segment"]:checked {{ padding: 0 8px; font-weight: 600; }}
        QPushButton[kind="primary"], QPushButton[kind="tall"] {{ min-height: 28px; }}
        QPushButton[kind="tab"] {{
            background: transparent; color: {t.muted}; border: none; border-radius: 0;
            padding: 3px 2px 0 2px; border-bottom: 3px solid transparent;
        }}
        QPushButton[kind="tab"]:hover {{ color: {t.ink}; }}
        QPushButton[kind="tab"]:checked {{
            color: {t.accent}; font-weight: 600; border-bottom-color: {t.accent};
        }}
        QPushButton[kind="tab"]:focus {{ background: {t.accent_wash}; }}
        QPushButton[kind="link"] {{
            background: transparent; border: 2px solid transparent; color: {t.accent};
            font-size: {t.text_size("small"):g}px; padding: 0 2px; min-height: 20px;
        }}
        QPushButton[kind="cue"] {{
            background: {t.panel}; border: 2px solid {t.accent}; color: {t.ink};
            padding: 2px 10px; min-height: 24px;
        }}
        QPushButton[kind="cue"]:hover {{
            background: {t.accent_wash}; color: {t.accent_wash_ink};
        }}
        QPushButton[kind="link"]:hover {{ background: {t.accent_wash}; }}
    """
