"""The one map of a plane onto a photo that takes four given points to four others."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from model.errors import Refused

Real = NDArray[np.float64]
LEAST_PART = 0.02
"""Of the square on the longest side: the least area of a triangle of three corners. Shop choice."""


def find_homography(places: ArrayLike, pixels: ArrayLike) -> Real:
    """The 3 x 3 matrix, its last element 1, that takes four places (4, 2) to four pixels (4, 2).

    Hartley & Zisserman, "Multiple View Geometry in Computer Vision", 2nd ed., algorithm 4.2: both are moved
    to their middle and scaled first. Raises Refused where three corners lie nearly on a line.
    """
    places, pixels = np.asarray(places, dtype=np.float64), np.asarray(pixels, dtype=np.float64)
    check_corners(pixels)
    from_places, from_pixels = _normaliser(places), _normaliser(pixels)
    rows: list[list[float]] = []
    for (x, y), (u, v) in zip(_moved(from_places, places), _moved(from_pixels, pixels), strict=True):
        rows.append([x, y, 1, 0, 0, 0, -u * x, -u * y, -u])
        rows.append([0, 0, 0, x, y, 1, -v * x, -v * y, -v])
    normal: Real = np.linalg.svd(np.array(rows))[2][-1].reshape(3, 3)
    matrix = np.linalg.inv(from_pixels) @ normal @ from_places
    return np.asarray(matrix / matrix[2, 2])


def apply_homography(matrix: Real, places: ArrayLike) -> Real:
    """Where places (n, 2) come to lie, (n, 2)."""
    return _moved(matrix, np.asarray(places, dtype=np.float64))


def check_corners(pixels: Real) -> None:
    """Raise Refused unless four corners (4, 2), in their order round, make a convex quadrilateral."""
    turns = [_turn(pixels[i], pixels[(i + 1) % 4], pixels[(i + 2) % 4]) for i in range(4)]
    sides = [float(np.hypot(*(pixels[(i + 1) % 4] - pixels[i]))) for i in range(4)]
    least = LEAST_PART * max(sides) ** 2
    if any(abs(turn) / 2 <= least for turn in turns) or len({turn > 0 for turn in turns}) > 1:
        raise Refused("corners", "crossed or nearly on a line", "mark the four in their order round")


def _turn(one: Sequence[float] | Real, two: Sequence[float] | Real, three: Sequence[float] | Real) -> float:
    return float((two[0] - one[0]) * (three[1] - two[1]) - (two[1] - one[1]) * (three[0] - two[0]))


def _normaliser(points: Real) -> Real:
    """Moves points round the origin, at a mean distance of the root of 2."""
    middle = points.mean(axis=0)
    scale = np.sqrt(2) / max(float(np.hypot(*(points - middle).T).mean()), 1e-12)
    return np.array([[scale, 0, -scale * middle[0]], [0, scale, -scale * middle[1]], [0, 0, 1]])


def _moved(matrix: Real, points: Real) -> Real:
    moved = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    return np.asarray(moved[:, :2] / moved[:, 2:])
