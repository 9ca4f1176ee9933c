"""The frieze under the shelf, its tablet, and the soffit and end returns that close what is behind it."""

from __future__ import annotations

from model.board import Board, End, Point2, Stock, block
from model.build.behind import list_notches, notch_edge
from model.build.frame import FrameWords, build_frame
from model.build.lines import LEAST_LAYER, PANEL_LAP, Layout

FRIEZE = "frieze"
HAIR = 1e-6
"""Lengths that differ by less are equal, in."""


def build_frieze(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """The face; a soffit where it stands off the masonry, and returns where its hollow passes the columns."""
    y0 = layout.frieze_bottom
    face = _face(layout, stock, sheet) + _tablet(layout, stock) + _end_returns(layout, stock)
    if not soffit_depth(layout):
        return face
    y = (y0, y0 + stock.thickness)
    back = layout.wall if y0 >= layout.facing_top else 0.0
    return (*face, _soffit(layout, stock, y, (back, soffit_depth(layout))))


def _soffit(layout: Layout, stock: Stock, y: Point2, z: Point2) -> Board:
    """Back to the masonry, notched there round what was left on it."""
    x = (-layout.column_inner, layout.column_inner)
    notches = list_notches(layout.behind, (y, 1), 0, z[1]) if layout.behind else []
    edge = notch_edge(((x[0], z[0]), (x[1], z[0])), notches) if notches else ((x[0], z[0]), (x[1], z[0]))
    if len(edge) == 2:
        return block("soffit", FRIEZE, stock, "x", x, y, (edge[0][1], z[1]))
    section = ((z[1], x[0]), (z[1], x[1]), *((back, at) for at, back in reversed(edge)))
    return Board("soffit", FRIEZE, stock, "y", section, End(y[0]), End(y[1]), grain="x")


def _face(layout: Layout, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """One board, or frame and panels; the soffit reaches behind these but where they run over the columns."""
    frame = layout.frieze_frame
    x0, y0, x1, y1 = frame.outline
    if not frame.openings:
        z = (frame.front - stock.thickness, frame.front)
        return (block("frieze board", FRIEZE, stock, "x", (x0, x1), (y0, y1), z),)
    closed = soffit_depth(layout) > 0 and not layout.frieze_over
    ends = _end_thickness(layout, stock)
    area = (x0 + ends, y0 + stock.thickness if closed else y0, x1 - ends, y1)
    lap = min(PANEL_LAP, frame.rails[0][3] - y0 - stock.thickness) if closed else PANEL_LAP
    return build_frame(frame, FrameWords(FRIEZE, "frieze"), stock, sheet, area, lap)


def _tablet(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """The raised field on a plain frieze, if any."""
    if layout.tablet is None:
        return ()
    x0, y0, x1, y1 = layout.tablet.outline
    z = (layout.frieze_front, layout.frieze_front + layout.tablet.thickness)
    return (block("frieze tablet", FRIEZE, stock, "x", (x0, x1), (y0, y1), z),)


def _end_returns(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """A board behind each end of a face that stands proud of the columns, from the soffit to the shelf.

    It reaches back along the column by half a board.
    """
    thick, inner = _end_thickness(layout, stock), layout.column_inner
    if not thick:
        return ()
    y = (layout.frieze_bottom + stock.thickness, layout.shelf_bottom)
    z = (layout.column_front - stock.thickness / 2, layout.frieze_frame.front - stock.thickness)
    return tuple(
        block("frieze end return", FRIEZE, stock, "y", x, y, z)
        for x in ((-inner, thick - inner), (inner - thick, inner))
    )


def _end_thickness(layout: Layout, stock: Stock) -> float:
    """How thick the end returns are, beside a panel as much as a lap leaves; 0 where none are built."""
    frame = layout.frieze_frame
    if layout.frieze_over or frame.front - stock.thickness <= layout.column_front + HAIR:
        return 0.0
    if not frame.openings:
        return stock.thickness
    stile = frame.stiles[0][2] - frame.stiles[0][0]
    return min(stock.thickness, stile - PANEL_LAP)


def soffit_depth(layout: Layout) -> float:
    """How far what the soffit meets is off the masonry; 0 when none is built."""
    if layout.frieze_over:
        return layout.column_front
    gap = layout.frieze_front - layout.board
    return gap if gap >= LEAST_LAYER else 0.0


def frieze_hollow(layout: Layout) -> float:
    """Clear depth behind the frieze's panels and frame, where nailers find room."""
    frame = layout.frieze_frame
    return layout.frieze_front - max(layout.board, frame.thickness(layout.panel))
