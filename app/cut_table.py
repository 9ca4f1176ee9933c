"""The cut list beside the drawing. What is cut and how comes from model.takeoff.cut_list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import QHeaderView, QTableView

from app.table_parts import TextModel, dress_table
from model.units import LengthStyle, format_length, without_feet

if TYPE_CHECKING:
    from model.takeoff.cut_list import Cut

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


class CutTable(QTableView):
    """The table. `chosen` hands on the marks of the boards that the line in focus stands for."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.cuts: tuple[Cut, ...] = ()
        self._texts = TextModel(HEADINGS, FIGURES)
        self._style: LengthStyle | None = None
        self.setModel(self._texts)
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
        if cuts == self.cuts and style == self._style:
            return
        self._style = style
        before = self.current_mark()
        self.cuts = cuts
        self._texts.show_texts([_texts(cut, style) for cut in cuts])
        if before:
            self.focus_mark(before)

    def current_mark(self) -> str:
        """The mark of the kind in focus, or nothing."""
        row = self.currentIndex().row()
        return self.cuts[row].mark if 0 <= row < len(self.cuts) else ""

    def current_pieces(self) -> frozenset[str]:
        """Marks of the boards that the line in focus stands for."""
        row = self.currentIndex().row()
        return frozenset(self.cuts[row].pieces) if 0 <= row < len(self.cuts) else frozenset()

    def focus_mark(self, mark: str) -> None:
        """Bring the line of a kind, or of one of its boards, into focus; none when there is no such."""
        for row, cut in enumerate(self.cuts):
            if mark == cut.mark or mark in cut.pieces:
                self.setCurrentIndex(self._texts.index(row, 0))
                return
        self.clearSelection()
        self.setCurrentIndex(QModelIndex())

    def _choose(self, _current: QModelIndex, _before: QModelIndex) -> None:
        self.chosen.emit(self.current_pieces())


def _texts(cut: Cut, style: LengthStyle) -> tuple[str, ...]:
    """As on paper: widths and thicknesses are never written in feet."""
    from render.cut_sheet import pieces_text

    across = without_feet(style, FINEST)
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
