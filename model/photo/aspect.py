"""The proportion of a rectangle of which only a photo is known."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

import numpy as np
from numpy.typing import ArrayLike, NDArray

from model.photo.homography import check_corners

Real = NDArray[np.float64]
STRAIGHT = 1e-3
"""How near to 1 both ratios are in a photo taken straight on: it shows proportions as they are."""


@dataclass(frozen=True, slots=True)
class Aspect:
    """Width over height, and the focal length in pixels it was found with; None where that is no matter."""

    ratio: float
    focal: float | None


def find_aspect(corners: ArrayLike, centre: tuple[float, float], focal: float | None = None) -> Aspect | None:
    """Width over height of a rectangle whose corners (4, 2) lie at these pixels: low left, low right, high
    right, high left. None where the photo does not tell: then the focal length must be given.

    Z. Zhang and L. He, "Whiteboard Scanning and Image Enhancement", Microsoft Research MSR-TR-2003-39,
    section 3.2. Raises Refused for corners that make no quadrilateral.
    """
    pixels = np.asarray(corners, dtype=np.float64)
    check_corners(pixels)
    low_left, low_right, high_right, high_left = np.column_stack([pixels - centre, np.ones(4)])
    across = np.cross(low_left, high_right)
    two = across @ high_left / (np.cross(low_right, high_right) @ high_left)
    three = across @ low_right / (np.cross(high_left, high_right) @ low_right)
    wide, tall = two * low_right - low_left, three * high_left - low_left
    if abs(two - 1) < STRAIGHT and abs(three - 1) < STRAIGHT:
        return Aspect(float(np.hypot(*wide[:2]) / np.hypot(*tall[:2])), focal)
    if focal is None and (focal := _find_focal(wide, tall)) is None:
        return None
    by_focal = np.array([1 / focal, 1 / focal, 1.0])
    return Aspect(float(np.linalg.norm(wide * by_focal) / np.linalg.norm(tall * by_focal)), focal)


def _find_focal(wide: Real, tall: Real) -> float | None:
    """From the two sides being square to each other; None where that says nothing or what cannot be."""
    if min(abs(wide[2]), abs(tall[2])) < STRAIGHT:
        return None
    squared = -(wide[0] * tall[0] + wide[1] * tall[1]) / (wide[2] * tall[2])
    return sqrt(squared) if squared > 0 else None
