"""The framing fixed to the masonry that the surround is nailed to."""

from __future__ import annotations

from model.board import Board, Point2, Stock, StockKind, block
from model.build.frieze import frieze_hollow
from model.build.layout import LEAST_LAYER, STRIP, Layout, Side
from model.fixing import Nailer

NAILERS = "nailers"
FRAMING = 1.5
"""Dressed thickness of two-by framing, in. American Softwood Lumber Standard PS 20."""
BETWEEN_UPRIGHTS = 0.25
"""Least between two uprights of one column, in.; with less they are one. Shop choice."""


def build_nailers(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    """Uprights in the columns, one strip under the shelf and one over the soffit where there is room."""
    left = tuple(board.mirrored(NAILERS) for board in _uprights(layout, layout.left, nailer))
    return left + _uprights(layout, layout.right, nailer) + _frieze_strips(layout, nailer)


def _thickness(room: float) -> float:
    """The thickest stock that the hollow takes; planed to the hollow where even a strip is too thick."""
    return FRAMING if room >= FRAMING else STRIP if room >= STRIP else room


def _stock(thickness: float) -> Stock:
    bought = FRAMING if thickness > STRIP else STRIP
    return Stock(StockKind.FRAMING, bought, "framing")


def _uprights(layout: Layout, side: Side, nailer: Nailer) -> tuple[Board, ...]:
    """One on each side of a column's hollow, or one that fills a narrow one, clear of the returns."""
    t = layout.board + nailer.clearance
    low, high = side.inner + t, side.outer - t
    hollow = layout.column_front - max(layout.board, side.frame.thickness(layout.panel))
    two = high - low >= 2 * nailer.width + BETWEEN_UPRIGHTS
    spans = [(low, low + nailer.width), (high - nailer.width, high)] if two else [(low, high)]
    if two and _is_out_of_reach(layout, side, low, _thickness(hollow)):
        spans = spans[1:]
    return tuple(board for span in spans for board in _upright(layout, side, span, hollow))


def _upright(layout: Layout, side: Side, span: Point2, hollow: float) -> list[Board]:
    """A nailer on the facing or the wall; over a proud facing's top a second one goes on on the wall."""
    back = layout.wall if span[0] >= layout.facing_side else 0.0
    step = layout.step_up(side.base, back)
    top = layout.shelf_bottom if step is None else step
    notch = layout.foot_notch(side, back)
    foot = side.base if notch is None else notch[0]
    pieces = [((foot, top), back, _thickness(hollow))]
    if step is not None:
        pieces.append(((step, layout.shelf_bottom), layout.wall, _thickness(hollow - layout.wall)))
    return [
        block("column nailer", NAILERS, _stock(thick), "y", span, y, (start, start + thick))
        for y, start, thick in pieces
    ]


def _is_out_of_reach(layout: Layout, side: Side, low: float, thickness: float) -> bool:
    """Whether the inner nailer, on the wall, would lie wholly behind its return that stops at the masonry."""
    return_stops = side.inner < layout.facing_side <= low
    return return_stops and layout.wall + thickness < LEAST_LAYER


def _frieze_strips(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    top, over_soffit = layout.strips
    if not top:
        return ()
    thickness = _thickness(frieze_hollow(layout))
    y1, low = layout.shelf_bottom, layout.frieze_bottom + layout.board
    x1 = layout.column_inner - nailer.clearance
    strips = (("shelf nailer", y1 - top, y1), ("soffit nailer", low, low + over_soffit))
    return tuple(_strip(layout, role, (-x1, x1), (bottom, top), thickness) for role, bottom, top in strips)


def _strip(layout: Layout, role: str, x: Point2, y: Point2, thickness: float) -> Board:
    back = layout.wall if y[0] >= layout.facing_top else 0.0
    return block(role, NAILERS, _stock(thickness), "x", x, y, (back, back + thickness))
