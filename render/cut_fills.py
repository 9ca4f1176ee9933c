"""How cut wood is filled, told apart without colour: end grain, long grain, sheet goods, framing.

End grain has close slanting lines, long grain wide lines along the grain, a sheet fine lines along its
layers, framing crossed lines: common practice, no published source. Cut masonry is render.views'.
"""

from __future__ import annotations

from model.board import AXES, Board, StockKind
from render.drawing import Hatch, Mark, Pen, Ring

CUT_WOOD = "Cut: close slant end grain, lines along it long grain, fine lines sheet, crosses framing."
"""The key to the fills."""
END_GRAIN = 0.045
"""Spacing of the lines on end grain, inches on paper; their angles differ from board to board."""
END_ANGLES = (135.0, 115.0, 155.0)
LONG_GRAIN = 0.075
"""Spacing of the lines along the grain, inches on paper. Shop choice."""
LAYER = 0.022
"""Spacing of the lines along a sheet's layers, inches on paper. Shop choice."""
CROSSED = 0.14
"""Spacing of the crossed lines on framing, inches on paper. Shop choice."""


def hatch_cut(
    board: Board,
    rings: tuple[Ring, ...],
    axes: tuple[int, int, int],
    ratio: float,
    turn: int,
    stands_for: str = "",
) -> list[Mark]:
    """Hatches for what a plane cuts of `board`.

    `axes` are the room's axes that run right, up and towards the viewer; `turn` picks one of END_ANGLES.
    """
    grain = AXES.index(board.length_axis)
    if board.stock.kind is StockKind.PANEL:
        lines = [(_along_layers(board, axes), LAYER)]
    elif board.stock.kind is StockKind.FRAMING:
        lines = [(45.0, CROSSED), (135.0, CROSSED)]
    elif grain == axes[2]:
        lines = [(END_ANGLES[turn % len(END_ANGLES)], END_GRAIN)]
    else:
        lines = [(0.0 if grain == axes[0] else 90.0, LONG_GRAIN)]
    return [Hatch(Pen.HATCH, rings, angle, spacing * ratio, stands_for) for angle, spacing in lines]


def _along_layers(board: Board, axes: tuple[int, int, int]) -> float:
    """A sheet's layers lie along the longer way it is cut; cut through its face they show as level lines."""
    wide, high = board.extent(AXES[axes[0]]), board.extent(AXES[axes[1]])
    return 0.0 if wide >= high else 90.0
