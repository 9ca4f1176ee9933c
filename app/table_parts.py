"""How tables look: quiet headings, cells with room beside their text, and the line in focus."""

from __future__ import annotations

from collections.abc import Container, Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter
from PySide6.QtWidgets import (
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from app.theme import BAR, RHYTHM, ROW_HEIGHT, SMALL_POINTS, colours, text_font
from app.thin_bar import ThinBar

Index = QModelIndex | QPersistentModelIndex


class TextModel(QAbstractTableModel):
    """Lines of texts under headings; columns numbered in `figures` stand to the right."""

    def __init__(self, headings: Sequence[str], figures: Container[int]) -> None:
        super().__init__()
        self._headings, self._figures = headings, figures
        self._texts: Sequence[Sequence[str]] = ()
        self._tips: Sequence[str] = ()

    def show_texts(self, texts: Sequence[Sequence[str]], tips: Sequence[str] = ()) -> None:
        """Take other lines. A line's tip is shown when it is pointed at; without tips each cell's text is."""
        self.beginResetModel()
        self._texts, self._tips = texts, tips
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each line."""
        return 0 if parent.isValid() else len(self._texts)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """As many as there are headings."""
        return 0 if parent.isValid() else len(self._headings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The text of a cell, its tip, or on which side it stands."""
        if role == Qt.ItemDataRole.ToolTipRole and self._tips:
            return self._tips[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self._texts[index.row()][index.column()]
        return self._side(index.column()) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The column's name."""
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self._side(section)
        shown = orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole
        return self._headings[section] if shown else None

    def _side(self, column: int) -> Qt.AlignmentFlag:
        side = Qt.AlignmentFlag.AlignRight if column in self._figures else Qt.AlignmentFlag.AlignLeft
        return side | Qt.AlignmentFlag.AlignVCenter


class QuietHeader(QHeaderView):
    """Headings in the small type over a hairline."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setHighlightSections(False)
        self.setSectionsClickable(False)

    def sectionSizeFromContents(self, column: int) -> QSize:
        """As wide as the heading."""
        words = str(self.model().headerData(column, Qt.Orientation.Horizontal) or "")
        width = QFontMetrics(text_font(SMALL_POINTS)).horizontalAdvance(words) + 2 * RHYTHM
        return QSize(width, ROW_HEIGHT - RHYTHM // 2)

    def paintSection(self, painter: QPainter, box: QRect, column: int) -> None:
        """One heading."""
        c = colours()
        words = str(self.model().headerData(column, Qt.Orientation.Horizontal) or "")
        role = Qt.ItemDataRole.TextAlignmentRole
        side = self.model().headerData(column, Qt.Orientation.Horizontal, role)
        painter.fillRect(box, QColor(c.entry))
        painter.setFont(text_font(SMALL_POINTS))
        painter.setPen(QColor(c.soft))
        painter.drawText(box.adjusted(RHYTHM, 0, -RHYTHM, 0), _flags(side), words)
        painter.setPen(QColor(c.rule))
        painter.drawLine(box.bottomLeft(), box.bottomRight())


class PaddedCell(QStyledItemDelegate):
    """Text with room beside it; a hairline below."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """One cell; the first of the line in focus carries the bar."""
        c = colours()
        box = option.rect
        painter.save()
        if self.is_lit(option, index):
            painter.fillRect(box, QColor(c.lit_ground))
            if index.column() == 0:
                painter.fillRect(QRect(box.left(), box.top(), BAR, box.height()), QColor(c.lit))
        painter.setPen(QColor(c.rule))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        room = box.adjusted(RHYTHM, 0, -RHYTHM, -1)
        enabled = option.state & QStyle.StateFlag.State_Enabled
        painter.setPen(QColor(c.ink if enabled else c.faint))
        text = option.fontMetrics.elidedText(
            str(index.data() or ""), Qt.TextElideMode.ElideRight, room.width()
        )
        painter.drawText(room, _flags(index.data(Qt.ItemDataRole.TextAlignmentRole)), text)
        painter.restore()

    def is_lit(self, option: QStyleOptionViewItem, index: Index) -> bool:
        """Whether the line is in focus: Qt selects none when the keyboard first comes to a table."""
        if option.state & QStyle.StateFlag.State_Selected:
            return True
        table = option.widget
        return isinstance(table, QTableView) and table.currentIndex().row() == index.row()


def _flags(side: object) -> int:
    right = isinstance(side, Qt.AlignmentFlag) and bool(side & Qt.AlignmentFlag.AlignRight)
    return int(
        Qt.AlignmentFlag.AlignVCenter | (Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft)
    )


def dress_table(table: QTableView) -> None:
    """Give a table of whole lines the looks above."""
    table.setFrameShape(QTableView.Shape.NoFrame)
    table.setHorizontalHeader(QuietHeader(table))
    table.setItemDelegate(PaddedCell(table))
    table.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
    table.setHorizontalScrollBar(ThinBar(Qt.Orientation.Horizontal))
    table.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
    table.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QTableView.SelectionMode.SingleSelection)
    table.setShowGrid(False)
    table.setTabKeyNavigation(False)
    table.setWordWrap(False)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(ROW_HEIGHT)
