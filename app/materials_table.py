"""The materials beside the drawing. What is needed of them comes from model.takeoff.materials."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QHeaderView, QTableView

from app.table_parts import dress_table
from model.units import LengthStyle

if TYPE_CHECKING:
    from model.takeoff.materials import Material

Index = QModelIndex | QPersistentModelIndex
HEADINGS = ("Material", "Measured on", "Amount", "Take", "By these rates")
WIDTHS = (136, 296, 120, 120)
FIGURES = (2, 3)


class MaterialsModel(QAbstractTableModel):
    """Materials as a table of texts; each line tells where its rates come from when it is pointed at."""

    def __init__(self) -> None:
        super().__init__()
        self.materials: tuple[Material, ...] = ()
        self._texts: list[tuple[str, ...]] = []
        self._sources: list[str] = []

    def show(self, materials: tuple[Material, ...], style: LengthStyle) -> None:
        """Take another list."""
        self.beginResetModel()
        self.materials = materials
        self._texts = [_texts(material, style) for material in materials]
        self._sources = [_sources(material) for material in materials]
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each material."""
        return 0 if parent.isValid() else len(self.materials)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """As many as there are headings."""
        return 0 if parent.isValid() else len(HEADINGS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The text of a cell; figures stand to the right."""
        if role == Qt.ItemDataRole.DisplayRole:
            return self._texts[index.row()][index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._sources[index.row()]
        return _alignment(index.column()) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The column's name."""
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(section)
        shown = orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole
        return HEADINGS[section] if shown else None


class MaterialsTable(QTableView):
    """The table."""

    def __init__(self) -> None:
        super().__init__()
        self._materials = MaterialsModel()
        self.setModel(self._materials)
        dress_table(self)
        self.setAccessibleName("Materials")
        for column, width in enumerate(WIDTHS):
            self.setColumnWidth(column, width)
        last = len(HEADINGS) - 1
        self.horizontalHeader().setSectionResizeMode(last, QHeaderView.ResizeMode.ResizeToContents)

    def show_materials(self, materials: tuple[Material, ...], style: LengthStyle) -> None:
        """Show another list; the line in focus stays where it is."""
        row = self.currentIndex().row()
        self._materials.show(materials, style)
        if 0 <= row < len(materials):
            self.setCurrentIndex(self._materials.index(row, 0))


def _alignment(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column in FIGURES else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


def _texts(material: Material, style: LengthStyle) -> tuple[str, ...]:
    """As on paper."""
    from model.takeoff.packages import format_package
    from render.materials_sheet import describe_amount, describe_basis, describe_rates

    return (
        material.name,
        describe_basis(material.basis, style),
        describe_amount(material, style),
        format_package(material, style),
        describe_rates(material, style),
    )


def _sources(material: Material) -> str:
    """Each rate's source on a line of its own."""
    from render.checks_sheet import source_text

    return "\n".join(
        f"{rate.row.label}: {source_text('', rate.source, rate.standing)}" for rate in material.rates
    )
