"""The cut list beside the drawing. What is cut and how comes from model.takeoff.cut_list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import QHeaderView, QTableView

from app.table_parts import dress_table
from model.units import INCHES, MILLIMETRES_ONLY, LengthStyle, format_length

if TYPE_CHECKING:
    from model.takeoff.cut_list import Cut

Index = QModelIndex | QPersistentModelIndex
HEADINGS = (
    "Mark",
    "Piece",
    "Sub-assembly",
    "Pieces",
    "Length",
    "Width",
    "Thickness",
    "Ends",
    "Stock",
    "Notes",
)
WIDTHS = (64, 176, 120, 64, 104, 88, 88, 168, 176)
FIGURES = range(3, 7)
FINEST = 32


class CutModel(QAbstractTableModel):
    """Cuts as a table of texts."""

    def __init__(self) -> None:
        super().__init__()
        self.cuts: tuple[Cut, ...] = ()
        self._texts: list[tuple[str, ...]] = []

    def show(self, cuts: tuple[Cut, ...], style: LengthStyle) -> None:
        """Take another list."""
        self.beginResetModel()
        self.cuts = cuts
        self._texts = [_texts(cut, style) for cut in cuts]
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each kind of piece."""
        return 0 if parent.isValid() else len(self.cuts)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """As many as there are headings."""
        return 0 if parent.isValid() else len(HEADINGS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The text of a cell; figures stand to the right."""
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self._texts[index.row()][index.column()]
        return _alignment(index.column()) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The column's name."""
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(section)
        shown = orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole
        return HEADINGS[section] if shown else None


class CutTable(QTableView):
    """The table. `chosen` hands on the marks of the boards that the line in focus stands for."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._cuts = CutModel()
        self._style: LengthStyle | None = None
        self.setModel(self._cuts)
        dress_table(self)
        self.setAccessibleName("Cut list")
        for column, width in enumerate(WIDTHS):
            self.setColumnWidth(column, width)
        self.horizontalHeader().setSectionResizeMode(
            len(HEADINGS) - 1, QHeaderView.ResizeMode.ResizeToContents
        )
        self.selectionModel().currentRowChanged.connect(self._choose)

    def show_cuts(self, cuts: tuple[Cut, ...], style: LengthStyle) -> None:
        """Show another list; the same kind of piece stays in focus if it is still there."""
        if cuts == self._cuts.cuts and style == self._style:
            return
        self._style = style
        before = self.current_mark()
        self._cuts.show(cuts, style)
        if before:
            self.focus_mark(before)

    def current_mark(self) -> str:
        """The mark of the kind in focus, or nothing."""
        row = self.currentIndex().row()
        return self._cuts.cuts[row].mark if 0 <= row < len(self._cuts.cuts) else ""

    def current_pieces(self) -> frozenset[str]:
        """Marks of the boards that the line in focus stands for."""
        row = self.currentIndex().row()
        return frozenset(self._cuts.cuts[row].pieces) if 0 <= row < len(self._cuts.cuts) else frozenset()

    def focus_mark(self, mark: str) -> None:
        """Bring the line of a kind, or of one of its boards, into focus; none when there is no such."""
        for row, cut in enumerate(self._cuts.cuts):
            if mark == cut.mark or mark in cut.pieces:
                self.setCurrentIndex(self._cuts.index(row, 0))
                return
        self.clearSelection()
        self.setCurrentIndex(QModelIndex())

    def _choose(self, _current: QModelIndex, _before: QModelIndex) -> None:
        self.chosen.emit(self.current_pieces())


def _alignment(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column in FIGURES else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


def _texts(cut: Cut, style: LengthStyle) -> tuple[str, ...]:
    """As on paper: widths and thicknesses are never written in feet."""
    from render.cut_sheet import pieces_text

    across = style if style.units == MILLIMETRES_ONLY else LengthStyle(INCHES, max(style.denominator, FINEST))
    sizes = (
        format_length(cut.length, style),
        *(format_length(s, across) for s in (cut.width, cut.thickness)),
    )
    return (
        pieces_text(cut),
        cut.name,
        cut.assembly,
        str(cut.quantity),
        *sizes,
        cut.ends,
        cut.stock,
        cut.notes,
    )
