"""The materials beside the drawing. What is needed of them comes from model.takeoff.materials."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHeaderView, QTableView

from app.table_parts import TextModel, dress_table
from model.units import LengthStyle

if TYPE_CHECKING:
    from model.takeoff.materials import Material

HEADINGS = ("Material", "Measured on", "Amount", "Take", "By these rates")
WIDTHS = (136, 296, 120, 120)
FIGURES = (2, 3)


class MaterialsTable(QTableView):
    """The table."""

    def __init__(self) -> None:
        super().__init__()
        self.materials: tuple[Material, ...] = ()
        self._texts = TextModel(HEADINGS, FIGURES)
        self.setModel(self._texts)
        dress_table(self)
        self.setAccessibleName("Materials")
        for column, width in enumerate(WIDTHS):
            self.setColumnWidth(column, width)
        last = len(HEADINGS) - 1
        self.horizontalHeader().setSectionResizeMode(last, QHeaderView.ResizeMode.ResizeToContents)

    def show_materials(self, materials: tuple[Material, ...], style: LengthStyle) -> None:
        """Show another list; the line in focus stays where it is."""
        row = self.currentIndex().row()
        self.materials = materials
        texts = [_texts(material, style) for material in materials]
        self._texts.show_texts(texts, [_sources(material) for material in materials])
        if 0 <= row < len(materials):
            self.setCurrentIndex(self._texts.index(row, 0))


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
