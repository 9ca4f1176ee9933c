"""Holes for cords, bored and sawn in the boards they go through. Where they lie is model.build.cord_way's."""

from __future__ import annotations

from dataclasses import replace
from math import pi

from model.board import AXES, CROSS, Board, Point2
from model.bore import Bore
from model.build.access_panel import LIP
from model.build.cord_way import HAIR, Hole, find_way, list_pierced
from model.build.lines import Layout
from model.carving import bite_of, find_sides
from model.design import Design


def bore_boards(design: Design, layout: Layout, boards: tuple[Board, ...]) -> tuple[Board, ...]:
    """`boards` with the holes of the cord way and what is sawn out behind its loose panel.

    A piece that a hole would part in two, or whose moulded face it would come out of, is left whole:
    model.check.cord_way says so. A rib under the shelf of which a hole leaves nothing is left out.
    """
    way = find_way(design, layout, boards)
    if way is None:
        return boards
    bored = list(boards)
    for hole in way.holes:
        for i in list_pierced(boards, hole):
            bored[i] = bore_hole(bored[i], hole)
    if way.loose is not None and way.sheet is not None and way.cut_out is not None:
        bored[way.sheet] = _saw_out(bored[way.sheet], boards[way.loose], way.cut_out)
    return tuple(board for board in bored if not _is_gone(board))


def _is_gone(board: Board) -> bool:
    """Whether a hole that breaks out takes away all of a board."""
    if not board.bores:
        return False
    low, high = board.bounds
    faces = {axis: (high[u] - low[u]) * (high[v] - low[v]) for axis, (u, v) in CROSS.items()}
    return any(bore.breaks and bore.area >= faces[bore.axis] - HAIR for bore in board.bores)


def bore_hole(board: Board, hole: Hole) -> Board:
    """`board` with a hole right through it, or whole where there can be none."""
    along, (iu, iv) = AXES.index(hole.axis), CROSS[hole.axis]
    low, high = board.bounds[0][along], board.bounds[1][along]
    if low < hole.span[0] - HAIR or high > hole.span[1] + HAIR:
        return board
    at, size = (hole.centre[iu], hole.centre[iv]), (hole.diameter, hole.diameter)
    bore = Bore(hole.axis, at, size, (low, high), True, pi / 4 * hole.diameter**2, at)
    return _with_bore(board, bore)


def _with_bore(board: Board, bore: Bore) -> Board:
    sides = find_sides(board, bore)
    if sides is not None:
        return replace(board, bores=(*board.bores, replace(bore, span=_between(board, bore, sides))))
    bite = bite_of(board, bore.ring, bore.axis)
    alone = all(other.axis == bore.axis for other in board.bores)
    if bite is None or not alone:
        return board
    return replace(board, bores=(*board.bores, replace(bore, area=bite[0], taken_at=bite[1], breaks=True)))


def _between(board: Board, bore: Bore, sides: tuple[int, int]) -> Point2:
    """Where along its axis a hole enters and leaves by two faces."""
    if board.axis == bore.axis:
        return board.low.at, board.high.at
    k = CROSS[board.axis].index(AXES.index(bore.axis))
    first, last = (board.section[side][k] for side in sides)
    return first, last


def _saw_out(sheet: Board, panel: Board, size: Point2) -> Board:
    """The fixed sheet with the opening behind its loose panel, a lip narrower all round."""
    (x, y, _), (z0, z1) = panel.bounds[0], (sheet.bounds[0][2], sheet.bounds[1][2])
    middle = x + LIP + size[0] / 2, y + LIP + size[1] / 2
    bore = Bore("z", middle, size, (z0, z1), False, size[0] * size[1], middle)
    return _with_bore(sheet, bore)


def is_bored(board: Board, hole: Hole) -> bool:
    """Whether a board has been given that hole, wholly or out of an edge."""
    return any(is_of(bore, hole) for bore in board.bores)


def is_of(bore: Bore, hole: Hole) -> bool:
    """Whether a bore is a board's part of that hole."""
    return bore.axis == hole.axis and bore.at == tuple(hole.centre[i] for i in CROSS[hole.axis])
