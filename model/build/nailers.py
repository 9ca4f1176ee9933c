"""The framing fixed to the masonry that the surround is nailed to."""

from __future__ import annotations

from dataclasses import replace

from model.board import Board, Point2, Stock, StockKind, block
from model.build.behind import OLD_LEDGER, find_used, part_strip, part_upright, turn_over
from model.build.frieze import frieze_hollow
from model.build.lines import LEAST_LAYER, STRIP, Layout, Overmantel, Side
from model.fixing import Nailer

NAILERS, SHELF_NAILER, PACKING = "nailers", "shelf nailer", "old ledger packing"
CALLED = {SHELF_NAILER: "ledger", "soffit nailer": "cleat", "column nailer": "uprights"}
"""What nailers are called where they are fixed, by their role, in the order in which they are."""
FRAMING = 1.5
"""Dressed thickness of two-by framing, in. American Softwood Lumber Standard PS 20."""
THINNEST = 0.5
"""A hollow behind an overmantel that is less deep, in., takes no nailer worth fixing. Shop choice."""
BETWEEN_UPRIGHTS = 0.25
"""Least between two uprights of one column, in.; with less they are one. Shop choice."""


def build_nailers(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    """Uprights in the columns, strips under the shelf and over the soffit, and the overmantel's own.

    Each only where there is room.
    """
    left = tuple(board.mirrored(NAILERS) for board in _uprights(layout, layout.left, nailer))
    right = _uprights(layout, layout.right, nailer)
    return left + right + _frieze_strips(layout, nailer) + _over_nailers(layout, nailer)


def list_once_moved(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    """Those that may be there once columns or shelf are moved: whole where an old ledger parts them now, and
    uprights left out behind returns that stop at the masonry. None where it has neither.
    """
    left_out = [
        (side, spans[0])
        for side in layout.sides
        if (spans := _fit_spans(layout.board, side, nailer)) != _list_spans(layout, side, nailer)
    ]
    if not left_out and not any(obstacle.kind == OLD_LEDGER for obstacle in layout.behind):
        return ()
    clear = replace(layout, behind=())
    more = [
        board if side is layout.right else board.mirrored(NAILERS)
        for side, span in left_out
        for board in _upright(clear, side, span, _hollow(clear, side))
    ]
    return (*build_nailers(clear, nailer), *more)


def _thickness(room: float) -> float:
    """The thickest stock that the hollow takes; planed to the hollow where even a strip is too thick."""
    return FRAMING if room >= FRAMING else min(STRIP, room)


def _stock(thickness: float) -> Stock:
    bought = FRAMING if thickness > STRIP else STRIP
    return Stock(StockKind.FRAMING, bought, "framing")


def _uprights(layout: Layout, side: Side, nailer: Nailer) -> tuple[Board, ...]:
    hollow = _hollow(layout, side)
    spans = _list_spans(layout, side, nailer)
    return tuple(board for span in spans for board in _upright(layout, side, span, hollow))


def _list_spans(layout: Layout, side: Side, nailer: Nailer) -> list[Point2]:
    """Where across x there are uprights in a column."""
    spans = _fit_spans(layout.board, side, nailer)
    thickness = _thickness(_hollow(layout, side))
    out_of_reach = len(spans) == 2 and _is_out_of_reach(layout, side, spans[0][0], thickness)
    return spans[1:] if out_of_reach else spans


def _fit_spans(board: float, side: Side, nailer: Nailer) -> list[Point2]:
    """One on each side of a column's hollow, or one that fills a narrow one, clear of the returns."""
    t = board + nailer.clearance
    low, high = side.narrowest[0] + t, side.narrowest[1] - t
    two = high - low >= 2 * nailer.width + BETWEEN_UPRIGHTS
    return [(low, low + nailer.width), (high - nailer.width, high)] if two else [(low, high)]


def _hollow(layout: Layout, side: Side) -> float:
    """How deep a column is behind its face, in."""
    return layout.column_front - max(layout.board, side.frame.thickness(layout.panel))


def _upright(layout: Layout, side: Side, span: Point2, hollow: float) -> list[Board]:
    """A nailer on the facing or the wall; over a proud facing's top a second one goes on on the wall."""
    back = layout.wall if span[0] >= layout.facing_side else 0.0
    step = layout.step_up(side.base, back)
    top = layout.shelf_bottom if step is None else step
    notch = layout.foot_notch(side, span)
    foot = side.foot_at(span[0]) if notch is None else notch[0]
    pieces = [((foot, top), back, _thickness(hollow))]
    if step is not None:
        pieces.append(((step, layout.shelf_bottom), layout.wall, _thickness(hollow - layout.wall)))
    behind = turn_over(layout.behind, side.sign)
    return [
        block("column nailer", NAILERS, _stock(thick), "y", span, left, (start, start + thick))
        for y, start, thick in pieces
        for left in part_upright(behind, span, y, (start, start + thick))
    ]


def _is_out_of_reach(layout: Layout, side: Side, low: float, thickness: float) -> bool:
    """Whether the inner nailer, on the wall, would lie wholly behind its return that stops at the masonry."""
    return_stops = side.narrowest[0] < layout.facing_side <= low
    return return_stops and layout.wall + thickness < LEAST_LAYER


def _frieze_strips(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    top, over_soffit = layout.strips
    if not top:
        return ()
    thickness = _thickness(frieze_hollow(layout))
    y1, low = layout.shelf_bottom, layout.frieze_bottom + layout.board
    x1 = layout.column_inner - nailer.clearance
    strips = ((SHELF_NAILER, y1 - top, y1), ("soffit nailer", low, low + over_soffit))
    boards = [
        board
        for role, bottom, top in strips
        for board in _strip(layout, role, (-x1, x1), (bottom, top), thickness)
    ]
    return (*boards, *_packing(layout, (-x1, x1)))


def _strip(layout: Layout, role: str, x: Point2, y: Point2, thickness: float) -> list[Board]:
    """What an old ledger leaves room for of one level strip."""
    back = layout.wall if y[0] >= layout.facing_top else 0.0
    z = (back, back + thickness)
    parts = part_strip(layout.behind, x, y, z, role == SHELF_NAILER) if layout.behind else [(x, y)]
    return [block(role, NAILERS, _stock(thickness), "x", span, level, z) for span, level in parts]


def _packing(layout: Layout, x: Point2) -> list[Board]:
    """What fills up between an old ledger that is used and the shelf."""
    old = find_used(layout.behind)
    if old is None or layout.shelf_bottom - old.y[1] < LEAST_LAYER:
        return []
    span, y = (max(x[0], old.x[0]), min(x[1], old.x[1])), (old.y[1], layout.shelf_bottom)
    return [block(PACKING, NAILERS, _stock(old.z[1] - old.z[0]), "x", span, y, old.z)]


def overmantel_hollow(layout: Layout, over: Overmantel) -> float:
    """How deep the hollow behind an overmantel's face is, in.; below 0 where its panels lie on the wall."""
    return over.frame.front - max(layout.board, over.frame.thickness(layout.panel)) - over.back


def _over_nailers(layout: Layout, nailer: Nailer) -> tuple[Board, ...]:
    """An upright inside each end of the overmantel and a strip between them under its top."""
    over = layout.over
    if over is None:
        return ()
    hollow = overmantel_hollow(layout, over)
    if hollow < THINNEST:
        return ()
    x0, y0, x1, y1 = over.frame.outline
    off, top = layout.board + nailer.clearance, y1 - layout.board
    spans = ((x0 + off, x0 + off + nailer.width), (x1 - off - nailer.width, x1 - off))
    uprights = tuple(
        board for span in spans for board in _over_upright(layout, over, span, (y0, top), hollow)
    )
    between, strip = (spans[0][1], spans[1][0]), (top - nailer.width, top)
    back = layout.wall if strip[0] >= layout.facing_top else over.back
    thick = _thickness(hollow + over.back - back)
    level = block("overmantel top nailer", NAILERS, _stock(thick), "x", between, strip, (back, back + thick))
    return (*uprights, level)


def _over_upright(layout: Layout, over: Overmantel, span: Point2, y: Point2, hollow: float) -> list[Board]:
    """On the facing or on the wall beside it; on over a proud facing's top as a second one on the wall."""
    beside = min(abs(span[0]), abs(span[1])) >= layout.facing_side
    back = layout.wall if beside else over.back
    step = layout.facing_top
    pieces = [(y, back)]
    if back != layout.wall and y[0] + LEAST_LAYER <= step <= y[1] - LEAST_LAYER:
        pieces = [((y[0], step), back), ((step, y[1]), layout.wall)]
    boards = []
    for reach, start in pieces:
        thick = _thickness(hollow + over.back - start)
        role, z = "overmantel nailer", (start, start + thick)
        left = part_upright(layout.behind, span, reach, z)
        boards += [block(role, NAILERS, _stock(thick), "y", span, y, z) for y in left]
    return boards
