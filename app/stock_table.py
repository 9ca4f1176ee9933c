"""A table that is typed in by keyboard or pointer: Enter goes down a row, Tab on, refused cells stand out."""

from __future__ import annotations

from PySide6.QtCore import QAbstractItemModel, QEvent, QModelIndex, QPersistentModelIndex, QRect, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QComboBox,
    QLineEdit,
    QStyle,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from app.stock_model import StockModel
from app.table_parts import PaddedCell, dress_table
from app.theme import BAR, RHYTHM, colours
from model.cutting.stock_fields import Holds
from model.cutting.stock_list import HEADINGS

Index = QModelIndex | QPersistentModelIndex
CHOICES = {Holds.KIND: tuple(HEADINGS.values()), Holds.YES_NO: ("yes", "no")}
WIDTHS = {
    "kind": 88,
    "wood": 128,
    "name": 112,
    "thickness": 88,
    "width": 72,
    "length": 72,
    "price": 80,
    "limit": 64,
    "count": 72,
    "clear": 112,
    "spare": 88,
    "section": 104,
    "heading": 112,
    "bought": 72,
    "pack": 128,
    "whole": 96,
}
SUPPLY_NAME = 256
Hint = QAbstractItemDelegate.EndEditHint
TRIGGERS = (
    QTableView.EditTrigger.DoubleClicked
    | QTableView.EditTrigger.SelectedClicked
    | QTableView.EditTrigger.EditKeyPressed
    | QTableView.EditTrigger.AnyKeyPressed
)


class StockCell(PaddedCell):
    """A cell that can be typed in; a refused entry has a bar and a ground of its own."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """One cell, the one in focus with an edge round it."""
        super().paint(painter, option, index)
        c, box = colours(), option.rect
        model = index.model()
        wrong = model.wrong_at(index.row(), index.column()) if isinstance(model, StockModel) else None
        painter.save()
        if wrong is not None:
            painter.fillRect(box.adjusted(0, 0, 0, -1), QColor(c.wrong_ground))
            painter.fillRect(QRect(box.left(), box.top(), BAR, box.height()), QColor(c.wrong))
            self._write(painter, option, index, wrong.text, c.wrong)
        elif isinstance(model, StockModel) and not index.data():
            self._write(painter, option, index, model.stand_in(index.column()), c.faint)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(QColor(c.lit), 2))
            painter.drawRect(box.adjusted(1, 1, -1, -2))
        painter.restore()

    def _write(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index, text: str, ink: str
    ) -> None:
        side = index.data(Qt.ItemDataRole.TextAlignmentRole)
        painter.setPen(QColor(ink))
        room = option.rect.adjusted(RHYTHM, 0, -RHYTHM, -1)
        shown = option.fontMetrics.elidedText(text, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, int(side), shown)

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A line to type in, or a box to choose from."""
        model = index.model()
        assert isinstance(model, StockModel)
        field = model.fields[index.column()]
        name = str(model.headerData(index.column(), Qt.Orientation.Horizontal))
        if field.holds in CHOICES:
            chooser = QComboBox(parent)
            chooser.addItems(CHOICES[field.holds])
            chooser.activated.connect(lambda _i: self._take(chooser))
            editor: QWidget = chooser
        else:
            editor = QLineEdit(parent)
        editor.setAccessibleName(name)
        editor.setAccessibleDescription(field.wanted)
        return editor

    def _take(self, editor: QWidget) -> None:
        self.commitData.emit(editor)
        self.closeEditor.emit(editor, Hint.NoHint)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """What stands in the cell, the refused text where there is one."""
        if isinstance(editor, QComboBox):
            editor.setCurrentText(str(index.data()))
        elif isinstance(editor, QLineEdit):
            editor.setText(str(index.data()))
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Hand on what was typed."""
        text = editor.currentText() if isinstance(editor, QComboBox) else ""
        model.setData(index, editor.text() if isinstance(editor, QLineEdit) else text)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, _index: Index) -> None:
        """The whole cell."""
        editor.setGeometry(option.rect)


class StockTable(QTableView):
    """The rows of one kind. `moved` says that another cell is in focus."""

    moved = Signal()

    def __init__(self, model: StockModel, name: str) -> None:
        super().__init__()
        self.stock = model
        self.setModel(model)
        dress_table(self)
        self.setItemDelegate(StockCell(self))
        self.setSelectionMode(QTableView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(TRIGGERS)
        self.setTabKeyNavigation(False)
        self.setAccessibleName(name)
        for column, field in enumerate(model.fields):
            own = model.has_own_rows or field.name != "name"
            self.setColumnWidth(column, WIDTHS[field.name] if own else SUPPLY_NAME)
        self.horizontalHeader().setStretchLastSection(True)
        self.selectionModel().currentChanged.connect(lambda *_: self.moved.emit())
        model.modelReset.connect(self.moved)

    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        """Enter goes down to the next row, so that a column of prices is typed in one go."""
        super().closeEditor(editor, hint)
        at = self.currentIndex()
        if hint == Hint.SubmitModelCache and not self.stock.wrong_at(at.row(), at.column()):
            below = at.siblingAtRow(at.row() + 1)
            if below.isValid():
                self.setCurrentIndex(below)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter types in a cell, Delete empties it, Escape takes back what was refused."""
        at = self.currentIndex()
        typing = self.state() == QTableView.State.EditingState
        if at.isValid() and not typing and event.modifiers() == Qt.KeyboardModifier.NoModifier:
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self.edit(at)
                return
            if event.key() == Qt.Key.Key_Delete:
                self.stock.empty(at)
                return
            if event.key() == Qt.Key.Key_Escape:
                self.stock.give_up(at)
                return
        super().keyPressEvent(event)

    def commit(self) -> None:
        """Enter what is being typed."""
        if self.state() == QTableView.State.EditingState:
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def add_row(self) -> None:
        """Add a row like the one in focus, and put the focus into it."""
        column = max(self.currentIndex().column(), 0)
        at = self.stock.add_row(self.currentIndex().row())
        self.focus_cell(at, column)

    def remove_rows(self) -> None:
        """Take the selected rows out, or else the one in focus."""
        rows = {index.row() for index in self.selectionModel().selectedRows()}
        at = self.currentIndex()
        rows = rows or ({at.row()} if at.isValid() else set())
        if rows:
            self.stock.remove_rows(rows)
            left = len(self.stock.rows)
            if left:
                self.focus_cell(min(min(rows), left - 1), max(at.column(), 0))

    def focus_cell(self, row: int, column: int) -> None:
        """Bring a cell into focus and into view."""
        index = self.stock.index(row, column)
        self.setCurrentIndex(index)
        self.scrollTo(index)
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def changeEvent(self, event: QEvent) -> None:
        """Other colours."""
        if event.type() == QEvent.Type.PaletteChange:
            self.viewport().update()
        super().changeEvent(event)
