"""Faces laid over each other on a grid of many cells, each in turn inside its own window of it.

On fewer cells it pays to find once which triangles are in which face, as render.outlines does, and to keep
that; here nothing is kept, and what lies behind everything there already is never looked at closely.
"""

from __future__ import annotations

import numpy as np

from render.laying import GRAIN, Face, Floats, Ints, Mask, Point, Window, in_polygon

Centres = tuple[Floats, Floats]
"""Where triangles' middles are: (columns, 4) across and (rows, 4) up."""


def lay_windows(
    faces: list[Face], windows: list[Window], centres: Centres, on_edge: float, seen: Ints, depth: Floats
) -> None:
    """Lay all faces but upright rectangles parallel to the picture into (rows, columns, 4) `seen`, `depth`.

    A middle within `on_edge` of a sloping edge is in the faces on both its hands.
    """
    for index, (face, (rows, columns)) in enumerate(zip(faces, windows, strict=True)):
        if face.upright and face.flat:
            continue
        a, b, c = face.plane
        h, v = centres[0][columns], centres[1][rows]
        near = b * v[:, None] + c if a == 0 else a * h[None] + b * v[:, None] + c
        old = depth[rows, columns]
        wins = near > old + GRAIN
        if wins.any():
            if not face.upright:
                _keep_inside(wins, face, (h, v), on_edge)
            np.copyto(seen[rows, columns], index, where=wins)
            np.copyto(old, near, where=wins)


def _keep_inside(points: Mask, face: Face, at: Centres, on_edge: float) -> None:
    """Leave of the `points` of a polygon's own window those that lie in it or within `on_edge` of it.

    Four-sided faces are convex: what is to the left of every sloping edge is in them; the window keeps the
    other edges.
    """
    edges: list[tuple[Point, Point]] = face.edges
    if len(edges) != 4:
        points &= in_polygon(edges, *at, on_edge)
        return
    h, v = at[0][None], at[1][:, None]
    for (h0, v0), (h1, v1) in edges:
        if h0 != h1 and v0 != v1:
            reach = h0 * (v1 - v0) - v0 * (h1 - h0) + on_edge * abs(v1 - v0)
            points &= h * (v1 - v0) < v * (h1 - h0) + reach
