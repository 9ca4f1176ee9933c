"""Shapes without what is too narrow to be real: strips that come of rounding, whose edges pass for joints."""

from __future__ import annotations

import numpy as np

from model.takeoff.overlay import Shapes, share

NARROW = 1 / 512
"""Half the width under which a strip is none, in.: faces no further apart lie on each other."""
SPIKE = 10
"""How far a sharp corner may reach past what is offset, in offsets."""
SAME = 1e-8
"""Square inches by which a shape may change when nothing was taken off it."""


def without_slivers(shapes: Shapes) -> Shapes:
    """Each of `shapes` where it is wider than twice NARROW; the same shape when all of it is."""
    import shapely

    # Offsets of edges that nearly run on meet nowhere, and are not mitred.
    with np.errstate(invalid="ignore", divide="ignore"):
        shrunk = shapely.buffer(shapes, -NARROW, join_style="mitre")
        opened: Shapes = shapely.buffer(shrunk, NARROW, join_style="mitre", mitre_limit=SPIKE)
    # Offsets leave out corners that hardly turn, so that an area that stays the same is not enough.
    kept = np.abs(shapely.area(shapes) - shapely.area(opened)) < SAME
    kept &= shapely.get_num_coordinates(shapes) == shapely.get_num_coordinates(opened)
    opened[kept] = shapes[kept]
    # A collection of slivers and lines has no place in an intersection.
    cut = np.flatnonzero(~kept & ~shapely.is_empty(opened))
    opened[cut] = share(opened[cut], shapes[cut])
    return opened
