"""Which rows of a stock list serve a material: of its wood, as thick, and for a moulding of its section."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from model.board import StockKind
from model.cutting.pieces import Material
from model.cutting.stock_list import ANY_SIZE, HandRow, SoldRow, StockList
from model.cutting.task import round_down, round_up

AS_THICK = 1 / 32 + 1e-6
"""A thickness as measured may differ so far from the listed one, in. Shop choice; it is what performance
categories of plywood are wide, PS 1."""


class Serving:
    """A stock list's rows under keys that are unique in it: "s" and "h" with the row's place, from 1 on."""

    def __init__(self, stock_list: StockList) -> None:
        self.stock_list = stock_list
        sold = {f"s{i}": row for i, row in enumerate(stock_list.sold, start=1)}
        hand = {f"h{i}": row for i, row in enumerate(stock_list.on_hand, start=1)}
        self.rows: Mapping[str, SoldRow | HandRow] = {**hand, **sold}
        self._of: dict[tuple[StockKind, str], list[str]] = {}
        for key, row in self.rows.items():
            self._of.setdefault((row.kind, row.wood), []).append(key)

    def listed(self, material: Material) -> Material:
        """The material as it is listed: the nearest thickness as sold, or the next that is planed down to it.

        A moulding's is left as it is; where nothing is listed, so is any.
        """
        if material.kind is StockKind.MOULDING:
            return replace(material, thickness=_grid(material.thickness), width=_grid(material.width))
        there = sorted({self.rows[key].thickness for key in self._of.get((material.kind, material.wood), ())})
        near = [t for t in there if abs(t - material.thickness) <= AS_THICK]
        thicker = [t for t in there if t > material.thickness and material.kind is StockKind.BOARD]
        if near:
            return replace(material, thickness=min(near, key=lambda t: abs(t - material.thickness)))
        return replace(material, thickness=thicker[0] if thicker else _grid(material.thickness))

    def keys_for(self, material: Material) -> tuple[str, ...]:
        """The rows that serve a material as `listed` gives it, what lies there first."""
        return tuple(
            key
            for key in self._of.get((material.kind, material.wood), ())
            if _serves(self.rows[key], material)
        )

    def widest(self, material: Material) -> float:
        """How wide a board of a material is to be had, in; 0 where none is."""
        return max((self.rows[key].width for key in self.keys_for(self.listed(material))), default=0.0)

    def usable(self, row: SoldRow | HandRow) -> int:
        """Units of a board's length that pieces may come out of."""
        ends = row.clear if isinstance(row, HandRow) else self.stock_list.trim_end
        return round_down(row.length) - 2 * round_up(ends)


def _grid(size: float) -> float:
    """A size to the 64th, so that what jobs in inches and in millimetres ask for is one."""
    return round(size * 64) / 64


def _serves(row: SoldRow | HandRow, material: Material) -> bool:
    if material.kind is not StockKind.MOULDING:
        return abs(row.thickness - material.thickness) <= AS_THICK
    own = not row.section or row.section.casefold() == material.section.casefold()
    sizes = ((row.thickness, material.thickness), (row.width, material.width))
    return own and all(sold == ANY_SIZE or abs(sold - size) <= AS_THICK for sold, size in sizes)
