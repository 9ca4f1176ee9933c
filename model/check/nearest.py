"""Every place on the boards where a clearance rule can be at its tightest. What the rules say is elsewhere.

A board is a section swept between two cuts, so its edges are straight. Along an edge a rule can only be
tightest at an end, where a boundary of the rule is crossed, or at the foot of a plumb line from a corner
of the opening; all of these are listed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.check.clearance import HAIR, Lengths
from model.corners import Corners
from model.reference.clearance import IRC_PROJECTION_PER_INCH
from model.site import Opening

Indices = NDArray[np.intp]
Plane = tuple[float, float, float, float]
"""Coefficients a, b, c and level d: the boundary where a x + b y + c z = d."""


@dataclass(frozen=True, slots=True)
class Points:
    """Places on boards: room coordinates (n, 3) and the index (n,) of the board each lies on.

    `projection` is in front of the masonry; `beside` and `above` are the level and plumb distances from
    the opening's sides and top, negative within its width and below its top. Inches, (n,) each.
    """

    room: Lengths
    board: Indices
    projection: Lengths
    beside: Lengths
    above: Lengths

    def pick(self, indices: Indices) -> Points:
        """Only the places at `indices`."""
        return Points(
            self.room[indices],
            self.board[indices],
            self.projection[indices],
            self.beside[indices],
            self.above[indices],
        )

    def with_more(self, more: Points, boards: int) -> Points:
        """These and the places on further boards, whose indices go on after `boards`."""
        return Points(
            np.concatenate((self.room, more.room)),
            np.concatenate((self.board, more.board + boards)),
            np.concatenate((self.projection, more.projection)),
            np.concatenate((self.beside, more.beside)),
            np.concatenate((self.above, more.above)),
        )


@dataclass(frozen=True, slots=True)
class _Edges:
    """Straight edges: room coordinates (m, 3) of both ends, and the board (m,) of each."""

    start: Lengths
    stop: Lengths
    board: Indices


def list_points(corners: Corners, opening: Opening, planes: Sequence[Plane] = ()) -> Points:
    """The places on boards with these `corners` where a rule can be tightest; `planes` are its boundaries.

    Corners of boards come first, then places straight above the opening's middle, so that the first of
    several equals is the plainest to point at.
    """
    low, high, following, owner = corners.low, corners.high, corners.onward, corners.owner
    edges = _Edges(
        np.concatenate((low, high, low)),
        np.concatenate((low[following], high[following], high)),
        np.concatenate((owner, owner, owner)),
    )
    on_edges = [_crossings(edges, _opening_planes(opening) + tuple(planes)), *_feet(edges, opening)]
    edge = np.concatenate([e for e, _ in on_edges])
    along = np.concatenate([t for _, t in on_edges])[:, None]
    between = edges.start[edge] * (1 - along) + edges.stop[edge] * along
    room = np.concatenate((low, high, between))
    return _measure(room, np.concatenate((owner, owner, edges.board[edge])), opening)


def list_box_corners(corners: Corners, opening: Opening) -> Points:
    """One place for each board: of the box round it the corner nearest the opening and furthest out.

    No place on the board is nearer or further out, whether there is wood at that corner or not.
    """
    low, high = (
        reach.reduceat(reach(corners.low, corners.high), corners.starts) for reach in (np.minimum, np.maximum)
    )
    across = np.maximum(low[:, 0], -high[:, 0])
    room = np.stack((across, low[:, 1], high[:, 2]), axis=1)
    beside, above = across - opening.width / 2, low[:, 1] - opening.height
    return Points(room, np.arange(len(room)), high[:, 2], beside, above)


def list_step_planes(projections: Sequence[float]) -> tuple[Plane, ...]:
    """Boundaries just past each projection at which a rule takes a step."""
    return tuple((0.0, 0.0, 1.0, step + 2 * HAIR) for step in projections)


def list_tie_planes(opening: Opening, excess: float, slope: float = 0.0) -> tuple[Plane, ...]:
    """Boundaries off both upper corners where above - beside + slope * projection = excess."""
    reach = opening.height - opening.width / 2 + excess
    return ((-1.0, 1.0, slope, reach), (1.0, 1.0, slope, reach))


def list_clearing_planes(
    opening: Opening, above: Sequence[float], beside: Sequence[float]
) -> tuple[Plane, ...]:
    """Boundaries just within the heights above the opening and the distances beside it that clear anything.

    What is clear for its height alone counts again once it is beside, and the other way about: a part
    that is moved one way only is put right by what stands at these boundaries.
    """
    side, top, within = opening.width / 2, opening.height, 2 * HAIR
    level = tuple((0.0, 1.0, 0.0, top + least - within) for least in above)
    upright = tuple((turn, 0.0, 0.0, side + least - within) for least in beside for turn in (-1.0, 1.0))
    return (*level, *upright)


def list_sloping_planes(
    opening: Opening, slope: float, excess: float = 0.0, above: bool = True
) -> tuple[Plane, ...]:
    """Boundaries where the distance beside the opening, or `above` it too, is excess + slope * projection."""
    side, top, within = opening.width / 2, opening.height, 2 * HAIR
    upright = tuple((turn, 0.0, -slope, side + excess - within) for turn in (-1.0, 1.0))
    level = ((0.0, 1.0, -slope, top + excess - within),) if above else ()
    return (*level, *upright)


def _measure(room: Lengths, board: Indices, opening: Opening) -> Points:
    beside = np.abs(room[:, 0]) - opening.width / 2
    return Points(room, board, room[:, 2], beside, room[:, 1] - opening.height)


def _opening_planes(opening: Opening) -> tuple[Plane, ...]:
    """Middle, both sides and top of the opening, just within these, and where beside and above are equal."""
    side, top, within = opening.width / 2, opening.height, 2 * HAIR
    upright = tuple((1.0, 0.0, 0.0, x) for x in (0.0, -side, side, within - side, side - within))
    level = tuple((0.0, 1.0, 0.0, y) for y in (top, top - within))
    return (*upright, *level, *list_tie_planes(opening, 0.0))


def _crossings(edges: _Edges, planes: Sequence[Plane]) -> tuple[Indices, Lengths]:
    """Edges that cross a plane between their ends, and how far along (0 to 1), plane by plane."""
    table = np.array(planes, dtype=float)
    normals, levels = table[:, :3], table[:, 3:]
    before = normals @ edges.start.T - levels
    after = normals @ edges.stop.T - levels
    plane, edge = np.nonzero(before * after < 0)
    first = before[plane, edge]
    return edge, first / (first - after[plane, edge])


def _feet(edges: _Edges, opening: Opening) -> list[tuple[Indices, Lengths]]:
    """Where edges askew in the front view come nearest the opening's upper corners.

    Where an edge comes forward more gently than the allowed projection grows with distance, the places
    a little to either side where the one outruns the other.
    """
    run = edges.stop - edges.start
    moves = np.abs(run) > HAIR
    askew = np.flatnonzero((moves[:, 0] & moves[:, 1]) | (moves[:, 2] & (moves[:, 0] | moves[:, 1])))
    start, (run_x, run_y, run_z) = edges.start[askew], run[askew].T
    level = np.hypot(run_x, run_y)
    grade = np.minimum(np.abs(run_z) / level / IRC_PROJECTION_PER_INCH.value, 1 - HAIR)
    outrun = grade / np.sqrt(1 - grade**2) / level
    to_y = opening.height - start[:, 1]
    found = []
    for side in (-opening.width / 2, opening.width / 2):
        to_x = side - start[:, 0]
        foot = (to_x * run_x + to_y * run_y) / level**2
        aside = outrun * np.abs(to_x * run_y - to_y * run_x) / level
        for along in (foot, foot + aside, foot - aside):
            within = (along > 0) & (along < 1)
            found.append((askew[within], along[within]))
    return found
