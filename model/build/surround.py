"""The heart: site and design become one list of boards, from which everything else is derived."""

from __future__ import annotations

from model.board import Board, Stock, StockKind
from model.build.access_panel import build_access_panel
from model.build.back_band import build_back_band
from model.build.bed_mould import build_bed_mould
from model.build.bores import bore_boards
from model.build.capital import build_capitals
from model.build.column import build_columns
from model.build.frieze import build_frieze
from model.build.layout import lay_out
from model.build.level_backs import follow_level
from model.build.lines import Layout
from model.build.nailers import build_nailers
from model.build.overmantel import build_overmantel
from model.build.packing import build_packing
from model.build.panel_mould import build_over_panel_moulds, build_panel_moulds
from model.build.plinth_cap import build_plinth_caps
from model.build.shelf import build_shelf
from model.build.slip import build_slip
from model.design import Design
from model.site import Site

SHEET_WOOD = "plywood"


def build_surround(site: Site, design: Design, layout: Layout | None = None) -> tuple[Board, ...]:
    """Every board of `design` at `site`, in its place; sub-assemblies in the order they go up.

    No two boards occupy the same space. `layout` is taken when it is already worked out.
    """
    layout = layout or lay_out(site, design)
    stock = Stock(StockKind.BOARD, design.board.thickness, design.board.species)
    sheet = Stock(StockKind.PANEL, design.panel.thickness, SHEET_WOOD)
    wood = design.board.species
    boards = (
        build_nailers(layout, design.nailer)
        + build_columns(layout, stock, sheet)
        + build_plinth_caps(layout, wood)
        + build_capitals(layout, wood)
        + build_frieze(layout, stock, sheet)
        + build_panel_moulds(layout, wood)
        + build_shelf(layout, stock)
        + build_bed_mould(layout, wood)
        + build_back_band(layout, wood)
        + build_slip(layout, stock)
        + build_overmantel(layout, stock, sheet)
        + build_over_panel_moulds(layout, wood)
    )
    boards += build_packing(layout, stock, boards) + build_access_panel(design, layout, boards, sheet)
    boards = follow_level(layout, boards)
    return bore_boards(design, layout, boards)
