"""Shapes laid over each other: exactly, or on a grid where their nearly equal edges defeat the exact way."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

Shapes = NDArray[Any]
GRID = 2.0**-20
"""As fine, in., as shapes are laid on where they must be."""


def share(shapes: Shapes, others: Shapes) -> Shapes:
    """Where each shape and its other lie on each other."""
    from shapely import intersection

    return _lay(intersection, shapes, others)


def take_away(shapes: Shapes, others: Shapes) -> Shapes:
    """What of each shape its other leaves."""
    from shapely import difference

    return _lay(difference, shapes, others)


def _lay(way: Callable[..., Any], shapes: Shapes, others: Shapes) -> Shapes:
    from shapely import errors

    # Lines that nearly run on meet nowhere that is tried first; another way is tried then.
    with np.errstate(invalid="ignore", divide="ignore"):
        try:
            found: Shapes = way(shapes, others)
        except errors.GEOSException:
            found = way(shapes, others, grid_size=GRID)
    return found
