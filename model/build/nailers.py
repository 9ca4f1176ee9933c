"""The framing fixed to the masonry that the surround is nailed to."""

from __future__ import annotations

from model.board import Board, Point2, Stock, StockKind, block
from model.build.frieze import frieze_hollow, soffit_depth
from model.build.layout import LEAST_LAYER, Layout

NAILERS = "nailers"
FRAMING = 1.5
"""Dressed thickness of two-by framing, in. American Softwood Lumber Standard PS 20."""
STRIP = 0.75
"""Dressed thickness of one-by strips, in. American Softwood Lumber Standard PS 20."""
UPRIGHT_WIDTH = 1.5
"""Width of a column's nailer, in. Shop choice."""
TOP_HEIGHT = 3.5
"""Height of the nailer under the shelf, in.: a dressed two-by-four, PS 20."""


def build_nailers(layout: Layout) -> tuple[Board, ...]:
    """Uprights in the columns, one strip under the shelf and one over the soffit where there is room."""
    right = _uprights(layout)
    return tuple(board.mirrored(NAILERS) for board in right) + right + _frieze_strips(layout)


def _thickness(room: float) -> float:
    """The thickest stock that the hollow takes; planed to the hollow where even a strip is too thick."""
    return FRAMING if room >= FRAMING else STRIP if room >= STRIP else room


def _stock(thickness: float) -> Stock:
    bought = FRAMING if thickness > STRIP else STRIP
    return Stock(StockKind.FRAMING, bought, "framing")


def _uprights(layout: Layout) -> tuple[Board, ...]:
    t = layout.board
    low, high = layout.column_inner + t, layout.column_outer - t
    hollow = layout.column_front - max(t, layout.column_frame.reveal + layout.panel)
    thickness = _thickness(hollow)
    two = high - low >= 2 * UPRIGHT_WIDTH + 0.25
    spans = [(low, low + UPRIGHT_WIDTH), (high - UPRIGHT_WIDTH, high)] if two else [(low, high)]
    if two and _is_out_of_reach(layout, low, thickness):
        spans = spans[1:]
    y = (layout.column_base, layout.shelf_bottom)
    return tuple(
        block("column nailer", NAILERS, _stock(thickness), "y", span, y, _against(layout, span, thickness))
        for span in spans
    )


def _is_out_of_reach(layout: Layout, low: float, thickness: float) -> bool:
    """Whether the inner nailer, on the wall, would lie wholly behind its return that stops at the masonry."""
    return_stops = layout.column_inner < layout.facing_side <= low
    return return_stops and layout.wall + thickness < LEAST_LAYER


def _against(layout: Layout, span: Point2, thickness: float) -> Point2:
    """z of a nailer lying on the wall where it is clear of the facing, else on the masonry."""
    back = layout.wall if span[0] >= layout.facing_side else 0.0
    return (back, back + thickness)


def _frieze_strips(layout: Layout) -> tuple[Board, ...]:
    hollow = frieze_hollow(layout)
    if hollow < STRIP or not soffit_depth(layout):
        return ()
    thickness = _thickness(hollow)
    x0, y0, x1, y1 = layout.frieze_frame.outline
    low = y0 + layout.board
    top = min(TOP_HEIGHT, (y1 - low) / 2)
    over_soffit = min(UPRIGHT_WIDTH, (y1 - low) / 2)
    stock, x, z = _stock(thickness), (x0, x1), (0.0, thickness)
    return (
        block("shelf nailer", NAILERS, stock, "x", x, (y1 - top, y1), z),
        block("soffit nailer", NAILERS, stock, "x", x, (low, low + over_soffit), z),
    )
