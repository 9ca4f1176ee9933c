"""Boards as solids of an independent library, for tests of what space they share."""

from __future__ import annotations

import numpy as np
from manifold3d import Manifold, Mesh64

from export.mesh import build_mesh
from model.board import Board

GRID = 2.0**16
"""Corners are laid on a grid this fine where what meets but for rounding is to meet for the solid library."""


def build_solid(board: Board, grid: float | None = None) -> Manifold:
    """The board's space, inches; its corners on a `grid` where one is given."""
    corners, triangles = build_mesh(board)
    placed = np.array(corners)
    placed = placed if grid is None else np.round(placed * grid) / grid
    return Manifold(Mesh64(placed, np.array(triangles, dtype=np.uint64)))
