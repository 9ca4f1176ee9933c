"""Boards for the takeoff's tests, and a plain look at them by rays. No expectations here."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from export.mesh import build_mesh
from model.board import Board, Point2, Stock, StockKind, block

Floats = NDArray[np.float64]
POPLAR = Stock(StockKind.BOARD, 0.75, "poplar")
SHEET = Stock(StockKind.PANEL, 0.25, "plywood")
FRAMING = Stock(StockKind.FRAMING, 1.5, "framing")


def board(
    x: Point2, y: Point2, z: Point2, axis: str = "x", stock: Stock = POPLAR, role: str = "board"
) -> Board:
    """A square-cut piece of one sub-assembly."""
    return block(role, "box", stock, axis, x, y, z)


def triangles_of(boards: Sequence[Board]) -> Floats:
    """(n, 3, 3) corners of all boards' triangles."""
    meshes = [np.array(corners)[np.array(found)] for corners, found in map(build_mesh, boards)]
    return np.concatenate(meshes)


def is_free(points: Floats, lines: Floats, triangles: Floats) -> NDArray[np.bool_]:
    """(points, lines): whether a ray from each point meets no triangle. Moller and Trumbore's test."""
    a, b, c = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    first, second = b - a, c - a
    free = np.ones((len(points), len(lines)), dtype=bool)
    for j, line in enumerate(lines):
        across = np.cross(line, second)
        size = (first * across).sum(axis=1)
        facing = np.abs(size) > 1e-12
        inverse = 1 / np.where(facing, size, 1.0)
        for i, point in enumerate(points):
            off = point - a
            u = (off * across).sum(axis=1) * inverse
            turned = np.cross(off, first)
            v = (turned @ line) * inverse
            along = (second * turned).sum(axis=1) * inverse
            hit = facing & (u >= -1e-9) & (v >= -1e-9) & (u + v <= 1 + 1e-9) & (along > 1e-6)
            free[i, j] = not hit.any()
    return free
