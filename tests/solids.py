"""Boards as solids of independent libraries, for tests of what space they fill and share."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import trimesh
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


def build_trimesh(boards: Sequence[Board]) -> trimesh.Trimesh:
    """The surfaces of `boards` as one mesh of another library: its area and volume are all of theirs."""
    meshes = [tuple(map(np.array, build_mesh(board))) for board in boards]
    first = np.cumsum([0, *(len(corners) for corners, _ in meshes)])
    faces = [triangles + start for (_, triangles), start in zip(meshes, first, strict=False)]
    return trimesh.Trimesh(np.vstack([corners for corners, _ in meshes]), np.vstack(faces), process=False)
