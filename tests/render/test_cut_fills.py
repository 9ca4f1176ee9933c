"""Fills of cut wood: end grain, long grain, sheets and framing differ without any colour."""

from itertools import combinations

from model.board import Stock, StockKind, block
from render.cut_fills import hatch_cut
from render.drawing import Hatch

RING = (((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)),)
FRONT = (0, 1, 2)
SIDE = (2, 1, 0)


def piece(kind, axis="x", z=(0.0, 0.75)):
    return block("piece", "part", Stock(kind, 0.75, "poplar"), axis, (0.0, 4.0), (0.0, 2.0), z)


def fill(board, axes, turn=0):
    return tuple(
        (h.angle, h.spacing) for h in hatch_cut(board, RING, axes, 4.0, turn) if isinstance(h, Hatch)
    )


def test_end_grain_long_grain_sheets_and_framing_are_told_apart():
    fills = [
        fill(piece(StockKind.BOARD, "x"), SIDE),
        fill(piece(StockKind.BOARD, "x"), FRONT),
        fill(piece(StockKind.PANEL, "x"), FRONT),
        fill(piece(StockKind.FRAMING, "x"), SIDE),
    ]
    assert all(one != other for one, other in combinations(fills, 2))


def test_lines_of_long_grain_and_layers_run_along_the_piece():
    upright = block("piece", "part", Stock(StockKind.BOARD, 0.75, "poplar"), "y", (0, 1), (0, 9), (0, 1))
    assert [angle for angle, _ in fill(upright, FRONT)] == [90.0]
    sheet = block("piece", "part", Stock(StockKind.PANEL, 0.25, "plywood"), "y", (0, 9), (0, 9), (0, 0.25))
    assert [angle for angle, _ in fill(sheet, SIDE)] == [90.0]
    assert [angle for angle, _ in fill(sheet, (0, 2, 1))] == [0.0]


def test_end_grain_of_neighbours_turns():
    board = piece(StockKind.BOARD, "x")
    assert len({fill(board, SIDE, turn) for turn in range(3)}) == 3
