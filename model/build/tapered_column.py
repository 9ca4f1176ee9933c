"""The frame and the returns of a column whose edges lean, as if it stood on the right.

How far they lean and between which levels is model.build.taper's; a face without panels is
model.build.plain_face's, whether its edges lean or not.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, Point2, Stock, block
from model.build.lines import LEAST_LAYER, Side
from model.build.taper import Edges, Line, build_strip, clip_between


def build_tapered_frame(side: Side, taper: Edges, stock: Stock, sheet: Stock) -> tuple[Board, ...]:
    """Stiles sawn to shape, rails cut to the stiles, and one sheet between the returns."""
    words, frame, inside = f"{side.name} column", side.frame, side.frame.inside
    assert inside is not None
    z = (frame.front - stock.thickness, frame.front)
    foot, head = frame.outline[1], frame.outline[3]
    sides = (Edges(taper.inner, inside.inner), Edges(inside.outer, taper.outer))
    stiles = [build_strip("column stile", words, stock, edges, (foot, head), z) for edges in sides]
    names = ("bottom", *(("middle",) * (len(frame.rails) - 2)), "top")
    rails = [
        _rail(f"column {name} rail", words, stock, inside, (rect[1], rect[3]), z)
        for name, rect in zip(names, frame.rails, strict=True)
    ]
    behind = (z[0] - sheet.thickness, z[0])
    reach = (frame.rails[0][1], head)
    panel = build_strip("column panel", words, sheet, taper.inset(stock.thickness), reach, behind)
    return (*stiles, *rails, panel)


def _rail(role: str, words: str, stock: Stock, inside: Edges, y: Point2, z: Point2) -> Board:
    section = ((y[0], z[0]), (y[1], z[0]), (y[1], z[1]), (y[0], z[1]))
    return Board(role, words, stock, "x", section, inside.inner.cut(y), inside.outer.cut(y))


def build_tapered_returns(taper: Edges, straight: Sequence[Board]) -> tuple[Board, ...]:
    """The inner and the outer return: `straight`, each in up to three pieces along an edge that leans."""
    inner, outer = straight
    t = inner.extent("x")
    inner_lines, outer_lines = (taper.inner, taper.inner.moved(t)), (taper.outer.moved(-t), taper.outer)
    return (*_cut_return(inner, *inner_lines), *_cut_return(outer, *outer_lines))


def _cut_return(board: Board, near: Line, far: Line) -> tuple[Board, ...]:
    if not near.leans:
        return (board,)
    profile = _profile(board)
    low, high = board.bounds[0][1], board.bounds[1][1]
    levels = (
        ("foot return", low, near.low),
        ("return", near.low, near.high),
        ("head return", near.high, high),
    )
    return tuple(
        _piece(
            board, board.role.replace("return", word), clip_between(profile, (y0, y1)), (near, far), (y0, y1)
        )
        for word, y0, y1 in levels
        if y1 - y0 > LEAST_LAYER / 8
    )


def _profile(board: Board) -> tuple[Point2, ...]:
    """The (y, z) outline of a return, counter-clockwise; its section as it lies across x."""
    if board.axis == "x":
        return board.section
    (_, y0, z0), (_, y1, z1) = board.bounds
    return ((y0, z0), (y1, z0), (y1, z1), (y0, z1))


def _piece(
    board: Board, role: str, profile: tuple[Point2, ...], lines: tuple[Line, Line], y: Point2
) -> Board:
    near, far = lines
    if not near.cut(y).slope_u and len(profile) == 4 and board.axis != "x":
        zs = [z for _, z in profile]
        x = (near.at(y[0]), far.at(y[0]))
        return block(role, board.assembly, board.stock, "y", x, y, (min(zs), max(zs)))
    return Board(role, board.assembly, board.stock, "x", profile, near.cut(y), far.cut(y), grain="y")
