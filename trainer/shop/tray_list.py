"""The coupons of a tray as a list with small pictures, arranged by drag or by the keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QFontMetrics, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from exercises.coupon import Coupon
from trainer.bench.translation import translate
from trainer.bench.words import language
from trainer.look.tokens import LIGHT, Theme
from trainer.shop.thumbnails import THUMBNAIL, Thumbnails

__all__ = ["TrayList", "callout_word", "title_word"]

_KIND: Final = "application/x-toe-and-throat-place"
_Index = QModelIndex | QPersistentModelIndex
_ROW: Final = 76
_ROOMY: Final = 185


def title_word(coupon: Coupon) -> str:
    """What a coupon is called, in the user's language."""
    return coupon.title.in_language(language()) or coupon.id


def callout_word(coupon: Coupon) -> str:
    """What a coupon calls for, and what it asks: ``z 8 mm · judge``."""
    callout = coupon.callout
    size = callout.text
    if callout.unequal:
        size = f"{callout.text} \u00d7 {callout.upright_text}"
    task = {
        "read": translate("Shop", "read"),
        "size": translate("Shop", "size"),
        "judge": translate("Shop", "judge"),
        "find the fault": translate("Shop", "find the fault"),
    }[coupon.task]
    return f"{callout.prefix} {size} \u00b7 {task}"


class _Coupons(QAbstractListModel):
    """The coupons, replaced whole; a drop asks, and changes nothing by itself."""

    dropped = Signal(int, int)

    def __init__(self) -> None:
        super().__init__()
        self.coupons: tuple[Coupon, ...] = ()

    def show(self, coupons: tuple[Coupon, ...]) -> None:
        if len(coupons) != len(self.coupons):
            self.beginResetModel()
            self.coupons = coupons
            self.endResetModel()
            return
        before, self.coupons = self.coupons, coupons
        pairs = enumerate(zip(before, coupons, strict=True))
        rows = [row for row, (one, other) in pairs if one is not other]
        if rows:
            self.dataChanged.emit(self.index(rows[0], 0), self.index(rows[-1], 0))

    def rowCount(self, parent: _Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.coupons)

    def data(self, index: _Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> object:
        if not 0 <= index.row() < len(self.coupons):
            return None
        coupon = self.coupons[index.row()]
        spoken = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
        if role in spoken:
            return f"{index.row() + 1}. {title_word(coupon)}, {coupon.id}, {callout_word(coupon)}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return f"{title_word(coupon)}\n{coupon.id}"
        if role == Qt.ItemDataRole.UserRole:
            return coupon
        return None

    def flags(self, index: _Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        if index.isValid():
            return flags | Qt.ItemFlag.ItemIsDragEnabled
        return flags | Qt.ItemFlag.ItemIsDropEnabled

    def supportedDropActions(self) -> Qt.DropAction:
        return Qt.DropAction.MoveAction

    def mimeTypes(self) -> list[str]:
        return [_KIND]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        data = QMimeData()
        data.setData(_KIND, str(indexes[0].row() if indexes else -1).encode())
        return data

    def dropMimeData(
        self, data: QMimeData, action: Qt.DropAction, row: int, column: int, parent: _Index
    ) -> bool:
        start = int(bytes(data.data(_KIND).data()).decode() or -1)
        to = row if row >= 0 else parent.row() if parent.isValid() else len(self.coupons)
        self.dropped.emit(start, to)
        # Said to have failed: else the view would take the row away that it thinks it has copied.
        return False


class _Row(QStyledItemDelegate):
    """A row: number, picture, title, id and callout."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT
        self._pictures = Thumbnails()

    def sizeHint(self, option: QStyleOptionViewItem, index: _Index) -> QSize:
        return QSize(120, _ROW)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        coupon = index.data(Qt.ItemDataRole.UserRole)
        if not isinstance(coupon, Coupon):
            return
        theme, rect = self.theme, QRect(option.rect)
        state = option.state
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        over = bool(state & QStyle.StateFlag.State_MouseOver)
        focused = bool(state & QStyle.StateFlag.State_HasFocus)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        body = QRectF(rect).adjusted(1.5, 1.5, -1.5, -1.5)
        painter.setPen(Qt.PenStyle.NoPen)
        if chosen or over:
            painter.setBrush(QColor(theme.accent_wash if chosen else theme.raised))
            painter.drawRoundedRect(body, 6.0, 6.0)
        if chosen:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.ink if focused else theme.accent), 2.0))
            painter.drawRoundedRect(body.adjusted(1.0, 1.0, -1.0, -1.0), 6.0, 6.0)
        size = THUMBNAIL if rect.width() > _ROOMY else THUMBNAIL * 0.62
        picture = self._pictures.of(
            coupon.section, theme, painter.device().devicePixelRatioF(), size
        )
        at = QPointF(rect.left() + 8.0, rect.top() + (_ROW - size.height()) / 2.0)
        painter.drawPixmap(at, picture)
        left = rect.left() + size.width() + 15
        self._write(painter, rect, left, coupon, index.row() + 1, chosen=chosen)
        painter.restore()

    def _write(
        self,
        painter: QPainter,
        rect: QRect,
        left: int,
        coupon: Coupon,
        number: int,
        *,
        chosen: bool,
    ) -> None:
        theme = self.theme
        wide = rect.right() - left - 6
        font = QFont(painter.font())
        font.setPixelSize(round(theme.text_size("small")))
        font.setWeight(QFont.Weight.DemiBold)
        painter.setFont(font)
        painter.setPen(QColor(theme.accent_wash_ink if chosen else theme.ink))
        metrics, y = QFontMetrics(font), rect.top() + 6
        for line in _two_lines(f"{number}  {title_word(coupon)}", metrics, wide):
            painter.drawText(left, y + metrics.ascent(), line)
            y += metrics.height()
        font.setPixelSize(round(theme.text_size("caption")))
        font.setWeight(QFont.Weight.Normal)
        painter.setFont(font)
        painter.setPen(QColor(theme.accent_wash_ink if chosen else theme.muted))
        metrics, y = QFontMetrics(font), y + 2
        for line in (coupon.id, callout_word(coupon)):
            short = metrics.elidedText(line, Qt.TextElideMode.ElideRight, wide)
            painter.drawText(left, y + metrics.ascent(), short)
            y += metrics.height()


def _two_lines(text: str, metrics: QFontMetrics, wide: int) -> list[str]:
    """A text in two lines at most, the second cut off where it is longer."""
    words = text.split(" ")
    count = len(words)
    while count > 1 and metrics.horizontalAdvance(" ".join(words[:count])) > wide:
        count -= 1
    first, rest = " ".join(words[:count]), " ".join(words[count:])
    lines = [metrics.elidedText(first, Qt.TextElideMode.ElideRight, wide)]
    return [*lines, metrics.elidedText(rest, Qt.TextElideMode.ElideRight, wide)] if rest else lines


class TrayList(QListView):
    """The list.

    Signals
    -------
    opened(at)
        A coupon is to be opened.
    move_asked(start, to)
        A coupon is wanted at another place.
    delete_asked(), duplicate_asked()
        The keys for that.
    """

    opened = Signal(int)
    move_asked = Signal(int, int)
    delete_asked = Signal()
    duplicate_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._coupons = _Coupons()
        self._row = _Row(self)
        self.setProperty("kind", "tray")
        self.setModel(self._coupons)
        self.setItemDelegate(self._row)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.setDropIndicatorShown(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setUniformItemSizes(True)
        self.setMouseTracking(True)
        self.setAccessibleName(self.tr("Coupons of the tray"))
        self._coupons.dropped.connect(self._drop)
        self.selectionModel().currentChanged.connect(self._open)
        self._shows = False

    def show_coupons(self, coupons: tuple[Coupon, ...], at: int, theme: Theme) -> None:
        """Show the coupons, and which is open."""
        self._shows = True
        if theme is not self._row.theme:
            self._row.theme = theme
            self.viewport().update()
        self._coupons.show(coupons)
        index = self._coupons.index(at, 0)
        if self.currentIndex() != index:
            self.setCurrentIndex(index)
            self.scrollTo(index)
        self._shows = False

    def _open(self, index: QModelIndex) -> None:
        if not self._shows and index.isValid():
            self.opened.emit(index.row())

    def _drop(self, start: int, to: int) -> None:
        # It is taken out of its place before it is put in: the places after it move up.
        self.move_asked.emit(start, to - 1 if to > start else to)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """With Alt the arrows move the coupon; Delete deletes it, Ctrl+D duplicates it."""
        key = Qt.Key(event.key())
        alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        at = self.currentIndex().row()
        if alt and key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.move_asked.emit(at, at + (1 if key == Qt.Key.Key_Down else -1))
        elif key == Qt.Key.Key_Delete:
            self.delete_asked.emit()
        elif key == Qt.Key.Key_D and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.duplicate_asked.emit()
        else:
            super().keyPressEvent(event)
