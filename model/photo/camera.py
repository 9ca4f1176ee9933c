"""A camera in the room: square pixels, the middle of the photo straight ahead, no distortion."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

import numpy as np
from numpy.typing import ArrayLike, NDArray

Real = NDArray[np.float64]
FRAME_DIAGONAL = hypot(36.0, 24.0)
"""Millimetres across a 36 x 24 mm frame, which equivalent focal lengths are given for: CIPA DCG-001."""


@dataclass(frozen=True, slots=True, eq=False)
class Camera:
    """`focal` in pixels, `centre` (2,) the middle of the photo in pixels.

    A point of the room (x, y, z), inches, lies at ``turn @ point + shift`` before the camera: to the right,
    down, and away from it. `turn` is (3, 3), `shift` (3,).
    """

    focal: float
    centre: Real
    turn: Real
    shift: Real

    def project(self, points: ArrayLike) -> Real:
        """Pixels (n, 2) of points of the room (n, 3); those behind the camera are not a number."""
        seen = self.place(points)
        with np.errstate(divide="ignore", invalid="ignore"):
            flat = self.focal * seen[:, :2] / seen[:, 2:] + self.centre
        flat[seen[:, 2] <= 0] = np.nan
        return np.asarray(flat)

    def place(self, points: ArrayLike) -> Real:
        """Points of the room (n, 3) as seen from the camera (n, 3): right, down, and how far off."""
        return np.asarray(np.atleast_2d(np.asarray(points, dtype=np.float64)) @ self.turn.T + self.shift)

    @property
    def stands_at(self) -> Real:
        """Where in the room the camera is, (3,)."""
        return np.asarray(-self.turn.T @ self.shift)


def focal_of_equivalent(millimetres: float, size: tuple[int, int]) -> float:
    """Focal length in pixels of a photo of `size` from the one that is equivalent on a 36 x 24 mm frame.

    Equivalent means the same angle across the diagonal, CIPA DCG-001.
    """
    return millimetres / FRAME_DIAGONAL * hypot(*size)


def equivalent_of_focal(focal: float, size: tuple[int, int]) -> float:
    """The other way: millimetres on a 36 x 24 mm frame."""
    return focal * FRAME_DIAGONAL / hypot(*size)
